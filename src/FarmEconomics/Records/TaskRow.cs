using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>tasks</c>.</summary>
    public Rows<TaskRow> Tasks => Of<TaskRow>();
}

/// <summary>A row of <c>tasks</c>.</summary>
public readonly record struct TaskRow(RecordTable Home, int Index) : IRecordRow<TaskRow>
{
    private static readonly TableDeclaration Declared = new("tasks", 220, "a kind of work")
    {
        UnknownName = ProblemCodes.UnknownTask,
        Shipped = _ => Defaults.Tasks.Select(row => row.Task),
        NamesOnce = true,
        Without = "Without tasks.csv only the tasks shipped with the program are known.",
    };

    internal static readonly TextColumn TaskColumn = Declared.Text(new("task", ColumnType.Name, "The task's name.") { Required = true });
    internal static readonly ChoiceColumn<Stage> StageColumn = Declared.Choice<Stage>(
        new("stage", ColumnType.Choice, "The stage of work it belongs to.") { Required = true });
    internal static readonly TextColumn PoolColumn = Declared.Text(
        new("pool", ColumnType.Name, "Where hours go that name no crop; blank: the work pool of the stage.") { RefersTo = "pools" });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<TaskRow>();

    /// <summary>The task's name.</summary>
    public string Task => TaskColumn.Of(Home, Index);

    /// <summary>The stage of work it belongs to.</summary>
    public Stage Stage => StageColumn.Of(Home, Index);

    /// <summary>Where hours go that name no crop; blank: the stage's work pool.</summary>
    public string? Pool => PoolColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static TaskRow At(RecordTable table, int index) => new(table, index);
}
