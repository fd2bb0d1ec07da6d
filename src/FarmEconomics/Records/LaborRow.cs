using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>labor</c>.</summary>
    public Rows<LaborRow> Labor => Of<LaborRow>();
}

/// <summary>A row of <c>labor</c>: hours worked.</summary>
public readonly record struct LaborRow(RecordTable Home, int Index) : IRecordRow<LaborRow>
{
    private static readonly TableDeclaration Declared = new("labor", 200,
        "hours worked; names at most one of crop, planting, channel, pool")
    {
        RowsOnce = true,
        AtMostOneOf = ["crop", "planting", "channel", "pool"],
        ComesNext = true,
        Without = "Without labor.csv no hours are known: margin per labor hour and labor cost by crop are not available.",
        Day = "date",
        Checks = () => WorkChecks.OfLabor,
    };

    internal static readonly DayColumn DateColumn = Declared.Date(new("date", ColumnType.Date, "The day.") { Required = true });
    internal static readonly TextColumn WorkerColumn = Declared.MustRef("worker", "workers", "Who worked.");
    internal static readonly NumberColumn HoursColumn = Declared.Number(
        new("hours", ColumnType.Hours, "Hours worked.") { Required = true, Range = new NumberRange(0.001m, 10_000m), Unit = "hours" });
    internal static readonly TextColumn TaskColumn = Declared.MustRef("task", "tasks", "What was done.");
    internal static readonly TextColumn CropColumn = Declared.Ref("crop", "crops", "The crop worked on.");
    internal static readonly TextColumn PlantingColumn = Declared.Ref("planting", "plantings", "The planting worked on.");
    internal static readonly TextColumn ChannelColumn = Declared.Ref("channel", "channels", "The channel worked for.");
    internal static readonly TextColumn PoolColumn = Declared.Ref("pool", "pools", "The pool worked for.");

    internal static readonly DayColumn ThroughColumn = Declared.Date(
        new(
            "through",
            ColumnType.Date,
            "The last day, where the hours are those of several days, such as a week's total; blank: one day. They count on the first day."
        )
    );

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<LaborRow>();

    /// <summary>The day.</summary>
    public DateOnly Date => DateColumn.Of(Home, Index);

    /// <summary>The last day of hours of several days; null: they are those of one day.</summary>
    public DateOnly? Through => ThroughColumn.Maybe(Home, Index);

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
