using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>watering</c>.</summary>
    public Rows<WateringRow> Watering => Of<WateringRow>();
}

/// <summary>A row of <c>watering</c>: water put on a block or a bed.</summary>
public readonly record struct WateringRow(RecordTable Home, int Index) : IRecordRow<WateringRow>
{
    private static readonly TableDeclaration Declared = new("watering", 342, "water put on a block, or on one bed, on one day")
    {
        Without = "Without watering.csv it isn't known what the crops got, only what they needed.",
        OneOf = ["gallons", "sprinkler_hours"],
        AtMostOneOf = ["block", "bed"],
        Day = "date",
        Checks = () => WaterChecks.OfWatering,
    };

    internal static readonly DayColumn DateColumn = Declared.Date(new("date", ColumnType.Date, "The day.") { Required = true });
    internal static readonly TextColumn BlockColumn = Declared.Ref("block", "blocks", "The block that was watered; or name one bed.");
    internal static readonly TextColumn BedColumn = Declared.Ref("bed", "beds",
        "The bed that was watered, where it wasn't the whole block.");
    internal static readonly NumberColumn GallonsColumn = Declared.Number(
        new("gallons", ColumnType.Number, "Water put on.")
        { Range = new NumberRange(0m, 100_000_000m), Unit = "gallons", MetricName = "liters", MetricUnit = "liters" });
    internal static readonly NumberColumn SprinklerHoursColumn = Declared.Number(
        new("sprinkler_hours", ColumnType.Number, "Sprinklers running times hours; the block says what one gives an hour.")
        { Range = new NumberRange(0m, 100_000m), Unit = "sprinkler-hours" });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<WateringRow>();

    /// <summary>The day.</summary>
    public DateOnly Date => DateColumn.Of(Home, Index);

    /// <summary>The block that was watered.</summary>
    public string? Block => BlockColumn.Maybe(Home, Index);

    /// <summary>The bed that was watered, where it wasn't the whole block.</summary>
    public string? Bed => BedColumn.Maybe(Home, Index);

    /// <summary>Water put on, in gallons; in liters on a farm in meters.</summary>
    public decimal? Gallons => GallonsColumn.Maybe(Home, Index);

    /// <summary>Sprinklers running times hours.</summary>
    public decimal? SprinklerHours => SprinklerHoursColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static WateringRow At(RecordTable table, int index) => new(table, index);
}
