using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>blocks</c>.</summary>
    public Rows<BlockRow> Blocks => Of<BlockRow>();
}

/// <summary>A row of <c>blocks</c>: a block of beds that is watered together.</summary>
public readonly record struct BlockRow(RecordTable Home, int Index) : IRecordRow<BlockRow>
{
    private static readonly TableDeclaration Declared = new("blocks", 343, "a block of beds that is watered together")
    {
        UnknownName = ProblemCodes.UnknownBlock,
        NamesOnce = true,
        Without = "Without blocks.csv nothing tells what the soil holds and what a sprinkler gives, so no bed's water is followed.",
        Checks = () => WaterChecks.OfBlocks,
    };

    internal static readonly TextColumn BlockColumn = Declared.Text(new("block", ColumnType.Name,
        "The block's name, as in beds.csv.")
    { Required = true });
    internal static readonly NumberColumn SoilWaterInFtColumn = Declared.Number(
        new("soil_water_in_ft", ColumnType.Number, "Water the soil holds for plants: docs/methods.md tells it for common soils.")
        {
            Required = true,
            Range = new NumberRange(0.1m, 400m),
            Unit = "inches per foot",
            MetricName = "soil_water_mm_m",
            MetricUnit = "mm per m"
        });
    internal static readonly NumberColumn EfficiencyPercentColumn = Declared.Number(
        new("efficiency_percent", ColumnType.Percent, "Part of the water that reaches the roots; blank: 75.")
        { Range = new NumberRange(1m, 100m), Unit = "percent" });
    internal static readonly NumberColumn SprinklerGphColumn = Declared.Number(
        new("sprinkler_gph", ColumnType.Number, "What one sprinkler gives an hour.")
        {
            Range = new NumberRange(0.1m, 100_000m),
            Unit = "gallons per hour",
            MetricName = "sprinkler_lph",
            MetricUnit = "liters per hour"
        });
    internal static readonly NumberColumn SetGallonsColumn = Declared.Number(
        new("set_gallons", ColumnType.Number, "Water of one whole set, where the block can't be watered in part; blank: it can.")
        { Range = new NumberRange(1m, 100_000_000m), Unit = "gallons", MetricName = "set_liters", MetricUnit = "liters" });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<BlockRow>();

    /// <summary>The block's name, as in beds.csv.</summary>
    public string Block => BlockColumn.Of(Home, Index);

    /// <summary>Water the soil holds for plants, in inches per foot of depth; in mm per m on a farm in meters.</summary>
    public decimal SoilWaterInFt => SoilWaterInFtColumn.Of(Home, Index);

    /// <summary>Part of the water that reaches the roots, percent; blank: 75.</summary>
    public decimal? EfficiencyPercent => EfficiencyPercentColumn.Maybe(Home, Index);

    /// <summary>What one sprinkler gives an hour, in gallons; in liters on a farm in meters.</summary>
    public decimal? SprinklerGph => SprinklerGphColumn.Maybe(Home, Index);

    /// <summary>Water of one whole set, where the block can't be watered in part, in gallons; in liters on a farm in meters.</summary>
    public decimal? SetGallons => SetGallonsColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static BlockRow At(RecordTable table, int index) => new(table, index);
}
