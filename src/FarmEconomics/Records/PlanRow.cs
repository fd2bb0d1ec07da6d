using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>plan</c>.</summary>
    public Rows<PlanRow> Plan => Of<PlanRow>();
}

/// <summary>A row of <c>plan</c>: a sowing meant for a crop year, in one bed.</summary>
public readonly record struct PlanRow(RecordTable Home, int Index) : IRecordRow<PlanRow>
{
    private static readonly TableDeclaration Declared = new("plan", 435,
        "a sowing planned, in one bed; the same planting may repeat with other beds")
    {
        Without = "Without plan.csv the season is held against no plan.",
        Day = "in_bed",
        Checks = () => PlanChecks.OfPlan,
    };

    internal static readonly YearColumn CropYearColumn = Declared.Year(
        new("crop_year", ColumnType.Year, "The crop year it is planned for.") { Required = true });
    internal static readonly TextColumn PlantingColumn = Declared.Text(
        new("planting", ColumnType.Name, "The name of the planting to be.") { Required = true });
    internal static readonly TextColumn CropColumn = Declared.MustRef("crop", "crops", "The crop.");
    internal static readonly TextColumn BedColumn = Declared.MustRef("bed", "beds", "The bed.");
    internal static readonly NumberColumn BedFeetColumn = Declared.Number(
        new("bed_feet", ColumnType.Number, "Length of bed it takes.")
        { Required = true, Range = NumberRanges.Length, Unit = ColumnUnits.Feet, MetricName = "bed_meters" });
    internal static readonly DayColumn InBedColumn = Declared.Date(
        new("in_bed", ColumnType.Date, "The day it is sown or set in the bed.") { Required = true });
    internal static readonly DayColumn OutOfBedColumn = Declared.Date(
        new("out_of_bed", ColumnType.Date, "The day the bed is free again.") { Required = true });
    internal static readonly DayColumn SownColumn = Declared.Date(
        new("sown", ColumnType.Date, "The day it is sown in the nursery; blank: sown in place."));
    internal static readonly NumberColumn TraysColumn = Declared.Number(
        new("trays", ColumnType.Number, "Trays in the nursery.")
        { Range = new NumberRange(0.001m, 100_000m) { OrZero = true }, Unit = "trays" });
    internal static readonly NumberColumn YieldColumn = Declared.Number(
        new("yield", ColumnType.Number, "What it is expected to give in its crop year, without what is culled.")
        { Required = true, Range = NumberRanges.QuantityOrNone, Unit = "the crop's unit" });
    internal static readonly NumberColumn HoursColumn = Declared.Number(
        new("hours", ColumnType.Hours, "Hours expected for raising, growing, picking and packing it; blank: not known, which isn't 0.")
        { Range = new NumberRange(0m, 100_000m), Unit = "hours" });
    internal static readonly NumberColumn CostColumn = Declared.Number(
        new("cost", ColumnType.Money, "Seed, supplies and packaging expected; blank: not known, which isn't 0.")
        { Range = NumberRanges.AmountFromZero, Unit = ColumnUnits.Currency });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<PlanRow>();

    /// <summary>The crop year it is planned for.</summary>
    public int CropYear => CropYearColumn.Maybe(Home, Index).GetValueOrDefault();

    /// <summary>The name of the planting to be.</summary>
    public string Planting => PlantingColumn.Of(Home, Index);

    /// <summary>The crop.</summary>
    public string Crop => CropColumn.Of(Home, Index);

    /// <summary>The bed.</summary>
    public string Bed => BedColumn.Of(Home, Index);

    /// <summary>Feet of bed length it takes.</summary>
    public decimal BedFeet => BedFeetColumn.Of(Home, Index);

    /// <summary>The day it is sown or set in the bed.</summary>
    public DateOnly InBed => InBedColumn.Of(Home, Index);

    /// <summary>The day the bed is free again.</summary>
    public DateOnly OutOfBed => OutOfBedColumn.Of(Home, Index);

    /// <summary>The day it is sown in the nursery; blank: sown in place.</summary>
    public DateOnly? Sown => SownColumn.Maybe(Home, Index);

    /// <summary>Trays in the nursery.</summary>
    public decimal? Trays => TraysColumn.Maybe(Home, Index);

    /// <summary>What it is expected to give, in the crop's unit.</summary>
    public decimal Yield => YieldColumn.Of(Home, Index);

    /// <summary>Hours expected; blank: not known.</summary>
    public decimal? Hours => HoursColumn.Maybe(Home, Index);

    /// <summary>Seed, supplies and packaging expected; blank: not known.</summary>
    public decimal? Cost => CostColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static PlanRow At(RecordTable table, int index) => new(table, index);
}
