using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>power_made</c>.</summary>
    public Rows<PowerMadeRow> PowerMade => Of<PowerMadeRow>();
}

/// <summary>A row of <c>power_made</c>: what panels made on one day.</summary>
public readonly record struct PowerMadeRow(RecordTable Home, int Index) : IRecordRow<PowerMadeRow>
{
    private static readonly TableDeclaration Declared = new("power_made", 344, "what panels made on one day, as a logger tells it")
    {
        Without = "Without power_made.csv panels are taken to make what farm.csv says of a month, day by day alike.",
        Day = "date",
        Checks = () => WaterChecks.OfPowerMade,
    };

    internal static readonly DayColumn DateColumn = Declared.Date(new("date", ColumnType.Date, "The day.") { Required = true });
    internal static readonly TextColumn PoolColumn = Declared.MustRef("pool", "pools", "The power pool the panels belong to.");
    internal static readonly NumberColumn KwhColumn = Declared.Number(
        new("kwh", ColumnType.Number, "What the panels made.")
        { Required = true, Range = new NumberRange(0m, 1_000_000m), Unit = "kWh" });
    internal static readonly NumberColumn GeneratorHoursColumn = Declared.Number(
        new("generator_hours", ColumnType.Number, "Hours a generator ran.")
        { Range = new NumberRange(0m, 24m), Unit = "hours" });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<PowerMadeRow>();

    /// <summary>The day.</summary>
    public DateOnly Date => DateColumn.Of(Home, Index);

    /// <summary>The power pool the panels belong to.</summary>
    public string Pool => PoolColumn.Of(Home, Index);

    /// <summary>What the panels made, kWh.</summary>
    public decimal Kwh => KwhColumn.Of(Home, Index);

    /// <summary>Hours a generator ran.</summary>
    public decimal? GeneratorHours => GeneratorHoursColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static PowerMadeRow At(RecordTable table, int index) => new(table, index);
}
