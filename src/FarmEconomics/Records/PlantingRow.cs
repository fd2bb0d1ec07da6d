using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>plantings</c>.</summary>
    public Rows<PlantingRow> Plantings => Of<PlantingRow>();
}

/// <summary>A row of <c>plantings</c>: one sowing or transplanting in one bed.</summary>
public readonly record struct PlantingRow(RecordTable Home, int Index) : IRecordRow<PlantingRow>
{
    private static readonly TableDeclaration Declared = new("plantings", 140,
        "one sowing or transplanting in one bed; the same planting may repeat with other beds")
    {
        Required = true,
        UnknownName = ProblemCodes.UnknownPlanting,
        Day = "in_bed",
        Checks = () => LandChecks.OfPlantings,
    };

    internal static readonly TextColumn PlantingColumn = Declared.Text(
        new("planting", ColumnType.Name, "The planting's name; blank: named by crop, year and number, such as Lettuce 2025, sowing 3."));
    internal static readonly TextColumn CropColumn = Declared.MustRef("crop", "crops", "The crop.");
    internal static readonly TextColumn BedColumn = Declared.MustRef("bed", "beds", "The bed.");
    internal static readonly NumberColumn BedFeetColumn = Declared.Number(
        new("bed_feet", ColumnType.Number, "Length of bed it takes.")
        { Required = true, Range = NumberRanges.Length, Unit = ColumnUnits.Feet, MetricName = "bed_meters" });
    internal static readonly DayColumn InBedColumn = Declared.Date(
        new("in_bed", ColumnType.Date, "The day it was sown or set in the bed.") { Required = true });
    internal static readonly DayColumn OutOfBedColumn = Declared.Date(
        new("out_of_bed", ColumnType.Date, "The day the bed was free again; blank: the day after the last harvest."));
    internal static readonly DayColumn SownColumn = Declared.Date(
        new("sown", ColumnType.Date, "The day it was sown in the nursery; blank: sown in place."));
    internal static readonly NumberColumn TraysColumn = Declared.Number(
        new("trays", ColumnType.Number, "Trays in the nursery.")
        { Range = new NumberRange(0.001m, 100_000m) { OrZero = true }, Unit = "trays", Later = true });
    internal static readonly TextColumn MethodColumn = Declared.Text(
        new("method", ColumnType.Text, "Sown in place, transplanted, and the like.") { Later = true });
    internal static readonly TextColumn VarietyColumn = Declared.Text(new("variety", ColumnType.Text, "The variety.") { Later = true });
    internal static readonly YearColumn CropYearColumn = Declared.Year(
        new("crop_year", ColumnType.Year, "The crop year, when it isn't that of the first harvest.") { Later = true });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<PlantingRow>();

    /// <summary>The planting's name; the same planting may repeat with other beds.</summary>
    public string Planting => PlantingColumn.Of(Home, Index);

    /// <summary>The crop.</summary>
    public string Crop => CropColumn.Of(Home, Index);

    /// <summary>The bed.</summary>
    public string Bed => BedColumn.Of(Home, Index);

    /// <summary>Feet of bed length planted.</summary>
    public decimal BedFeet => BedFeetColumn.Of(Home, Index);

    /// <summary>The day it was sown or set in the bed.</summary>
    public DateOnly InBed => InBedColumn.Of(Home, Index);

    /// <summary>The day the bed was free again; blank: the day after the last harvest.</summary>
    public DateOnly? OutOfBed => OutOfBedColumn.Maybe(Home, Index);

    /// <summary>The day it was sown in the nursery; blank: sown in place.</summary>
    public DateOnly? Sown => SownColumn.Maybe(Home, Index);

    /// <summary>Trays in the nursery.</summary>
    public decimal? Trays => TraysColumn.Maybe(Home, Index);

    /// <summary>Sown in place, transplanted, ... free text.</summary>
    public string? Method => MethodColumn.Maybe(Home, Index);

    /// <summary>The variety, free text.</summary>
    public string? Variety => VarietyColumn.Maybe(Home, Index);

    /// <summary>The crop year, when it isn't that of the first harvest.</summary>
    public int? CropYear => CropYearColumn.Maybe(Home, Index);

    /// <summary>The number of the crop's name in the tables; 0 for a blank.</summary>
    internal int CropName => CropColumn.Id(Home, Index);

    /// <inheritdoc/>
    public static PlantingRow At(RecordTable table, int index) => new(table, index);
}
