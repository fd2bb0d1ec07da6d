using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>projects</c>.</summary>
    public Rows<ProjectRow> Projects => Of<ProjectRow>();
}

/// <summary>A row of <c>projects</c>: what something to be bought or built would save.</summary>
public readonly record struct ProjectRow(RecordTable Home, int Index) : IRecordRow<ProjectRow>
{
    private static readonly TableDeclaration Declared = new("projects", 430, "something to be bought or built, and what it would save")
    {
        NamesOnce = true,
        Money = "cost",
        Without =
            "Without projects.csv the projects of funding.csv are compared by what they cost and what the records hold of their pool.",
    };

    internal static readonly TextColumn ProjectColumn = Declared.Text(
        new("project", ColumnType.Name, "The project; its lines may stand in funding.") { Required = true });
    internal static readonly NumberColumn CostColumn = Declared.Number(
        new("cost", ColumnType.Money, "What it costs; blank: the sum of its lines in funding.")
        {
            Range = NumberRanges.AmountFromZero,
            Unit = ColumnUnits.Currency,
        }
    );
    internal static readonly TextColumn TaskColumn = Declared.Ref("task", "tasks", "The task it makes quicker.");
    internal static readonly TextColumn PoolColumn = Declared.Ref(
        "pool",
        "pools",
        "The pool it replaces or improves: its hours, losses and power."
    );
    internal static readonly NumberColumn HoursSavedColumn = Declared.Number(
        new("hours_saved_percent", ColumnType.Percent, "Part of the hours of that task (without a task: of that pool) it saves.")
        {
            Range = NumberRanges.Part,
            Unit = "%",
        }
    );
    internal static readonly NumberColumn LossesSavedColumn = Declared.Number(
        new("losses_saved_percent", ColumnType.Percent, "Part of what was lost or thrown out in that pool that would be sold.")
        {
            Range = NumberRanges.Part,
            Unit = "%",
        }
    );
    internal static readonly NumberColumn PowerSavedColumn = Declared.Number(
        new("power_saved_kwh", ColumnType.Number, "Electricity it saves a year; below 0: it uses more.")
        {
            Range = new NumberRange(-1_000_000m, 1_000_000m),
            Unit = "kWh a year",
        }
    );
    internal static readonly NumberColumn LifeYearsColumn = Declared.Number(
        new("life_years", ColumnType.Number, "Years it serves; blank: 15.") { Range = new NumberRange(0.1m, 100m), Unit = "years" });
    internal static readonly NumberColumn SalvageColumn = Declared.Number(
        new("salvage", ColumnType.Money, "What it fetches at the end; blank: 0.")
        {
            Range = NumberRanges.AmountFromZero,
            Unit = ColumnUnits.Currency,
        }
    );

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<ProjectRow>();

    /// <summary>The project.</summary>
    public string Project => ProjectColumn.Of(Home, Index);

    /// <summary>What it costs; blank: the sum of its lines in funding.</summary>
    public decimal? Cost => CostColumn.Maybe(Home, Index);

    /// <summary>The task it makes quicker; blank: none.</summary>
    public string? Task => TaskColumn.Maybe(Home, Index);

    /// <summary>The pool it replaces or improves; blank: none.</summary>
    public string? Pool => PoolColumn.Maybe(Home, Index);

    /// <summary>Part of the hours it saves, 0 to 100; blank: not known.</summary>
    public decimal? HoursSavedPercent => HoursSavedColumn.Maybe(Home, Index);

    /// <summary>Part of the losses it saves, 0 to 100; blank: not known.</summary>
    public decimal? LossesSavedPercent => LossesSavedColumn.Maybe(Home, Index);

    /// <summary>Electricity it saves, kWh a year; blank: not known.</summary>
    public decimal? PowerSavedKwh => PowerSavedColumn.Maybe(Home, Index);

    /// <summary>Years it serves; blank: 15.</summary>
    public decimal? LifeYears => LifeYearsColumn.Maybe(Home, Index);

    /// <summary>What it fetches at the end; blank: 0.</summary>
    public decimal? Salvage => SalvageColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static ProjectRow At(RecordTable table, int index) => new(table, index);
}
