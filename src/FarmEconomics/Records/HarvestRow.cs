using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>harvests</c>.</summary>
    public Rows<HarvestRow> Harvests => Of<HarvestRow>();
}

/// <summary>A row of <c>harvests</c>: what was picked on a day.</summary>
public readonly record struct HarvestRow(RecordTable Home, int Index) : IRecordRow<HarvestRow>
{
    private static readonly TableDeclaration Declared = new("harvests", 150, "what was picked on a day")
    {
        RowsOnce = true,
        Required = true,
        OneOf = ["crop", "planting"],
        Day = "date",
        Checks = () => ProduceChecks.OfHarvests,
    };

    internal static readonly DayColumn DateColumn = Declared.Date(
        new("date", ColumnType.Date, "The day of the harvest.") { Required = true });
    internal static readonly TextColumn CropColumn = Declared.Ref("crop", "crops", "The crop; may be blank when the planting is named.");
    internal static readonly TextColumn PlantingColumn = Declared.Text(
        new("planting", ColumnType.Name, "The planting; may be blank when the crop is named.") { RefersTo = "plantings" });
    internal static readonly NumberColumn QuantityColumn = Declared.Number(
        new("quantity", ColumnType.Number, "What was picked, without what was culled.")
        { Required = true, Range = NumberRanges.QuantityOrNone, Unit = ColumnUnits.CropUnit });
    internal static readonly TextColumn UnitColumn = Declared.Ref("unit", "units", "The unit; blank: the crop's own.");
    internal static readonly NumberColumn CulledColumn = Declared.Number(
        new("culled", ColumnType.Number, "Further quantity thrown out in the field.")
        { Range = NumberRanges.QuantityOrNone, Unit = ColumnUnits.CropUnit });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<HarvestRow>();

    /// <summary>The day of the harvest.</summary>
    public DateOnly Date => DateColumn.Of(Home, Index);

    /// <summary>The crop; may be blank when the planting is named.</summary>
    public string? Crop => CropColumn.Maybe(Home, Index);

    /// <summary>The planting; may be blank when the crop is named.</summary>
    public string? Planting => PlantingColumn.Maybe(Home, Index);

    /// <summary>What was picked, without what was culled.</summary>
    public decimal Quantity => QuantityColumn.Of(Home, Index);

    /// <summary>The unit; blank: the crop's own.</summary>
    public string? Unit => UnitColumn.Maybe(Home, Index);

    /// <summary>Further quantity thrown out in the field, in the same unit.</summary>
    public decimal? Culled => CulledColumn.Maybe(Home, Index);

    /// <summary>The number of the crop's name in the tables; 0 for a blank.</summary>
    internal int CropName => CropColumn.Id(Home, Index);

    /// <summary>The number of the planting's name in the tables; 0 for a blank.</summary>
    internal int PlantingName => PlantingColumn.Id(Home, Index);

    /// <summary>The number of the unit's name in the tables; 0 for a blank.</summary>
    internal int UnitName => UnitColumn.Id(Home, Index);

    /// <inheritdoc/>
    public static HarvestRow At(RecordTable table, int index) => new(table, index);
}
