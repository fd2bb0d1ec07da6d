using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

/// <content>Rows of <c>labor</c>.</content>
public sealed partial class RecordTables
{
    /// <summary>Rows of <c>labor</c>.</summary>
    public Rows<LaborRow> Labor => Of<LaborRow>();
}

/// <summary>A row of <c>labor</c>: hours worked.</summary>
/// <param name="Home">The table it stands in.</param>
/// <param name="Index">Its place in the table, from 0.</param>
public readonly record struct LaborRow(RecordTable Home, int Index) : IRecordRow<LaborRow>
{
    private static readonly TableDeclaration Declared = new("labor", 200,
        "hours worked; names at most one of crop, planting, channel, pool")
    {
        RowsOnce = true,
        AtMostOneOf = ["crop", "planting", "channel", "pool"],
        Without = "Without labor.csv no hours are known: margin per labor hour and labor cost by crop are not available.",
    };

    internal static readonly DayColumn DateColumn = Declared.Day(new("date", ColumnType.Date, "The day.") { Required = true });
    internal static readonly TextColumn WorkerColumn = Declared.Text(
        new("worker", ColumnType.Name, "Who worked.") { Required = true, RefersTo = "workers" });
    internal static readonly NumberColumn HoursColumn = Declared.Number(
        new("hours", ColumnType.Hours, "Hours worked.") { Required = true, Range = new NumberRange(0.001m, 10_000m), Unit = "hours" });
    internal static readonly TextColumn TaskColumn = Declared.Text(
        new("task", ColumnType.Name, "What was done.") { Required = true, RefersTo = "tasks" });
    internal static readonly TextColumn CropColumn = Declared.Text(
        new("crop", ColumnType.Name, "The crop worked on.") { RefersTo = "crops" });
    internal static readonly TextColumn PlantingColumn = Declared.Text(
        new("planting", ColumnType.Name, "The planting worked on.") { RefersTo = "plantings" });
    internal static readonly TextColumn ChannelColumn = Declared.Text(
        new("channel", ColumnType.Name, "The channel worked for.") { RefersTo = "channels" });
    internal static readonly TextColumn PoolColumn = Declared.Text(
        new("pool", ColumnType.Name, "The pool worked for.") { RefersTo = "pools" });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<LaborRow>();

    /// <summary>The day.</summary>
    public DateOnly Date => DateColumn.Of(Home, Index);

    /// <summary>Who worked.</summary>
    public string Worker => WorkerColumn.Of(Home, Index);

    /// <summary>Hours.</summary>
    public decimal Hours => HoursColumn.Of(Home, Index);

    /// <summary>What was done.</summary>
    public string Task => TaskColumn.Of(Home, Index);

    /// <summary>The crop worked on, if one.</summary>
    public string? Crop => CropColumn.Maybe(Home, Index);

    /// <summary>The planting worked on, if one.</summary>
    public string? Planting => PlantingColumn.Maybe(Home, Index);

    /// <summary>The channel worked for, if one.</summary>
    public string? Channel => ChannelColumn.Maybe(Home, Index);

    /// <summary>The pool worked for, if one.</summary>
    public string? Pool => PoolColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static LaborRow At(RecordTable table, int index) => new(table, index);
}
