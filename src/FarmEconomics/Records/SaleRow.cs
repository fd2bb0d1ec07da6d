using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>sales</c>.</summary>
    public Rows<SaleRow> Sales => Of<SaleRow>();
}

/// <summary>A row of <c>sales</c>: what left the farm through any channel, the household's and the compost heap's included.</summary>
public readonly record struct SaleRow(RecordTable Home, int Index) : IRecordRow<SaleRow>
{
    private static readonly TableDeclaration Declared = new("sales", 160,
        "what left the farm through any channel, the household's and the compost heap's included")
    {
        RowsOnce = true,
        Required = true,
        Money = "amount",
        Day = "date",
        Checks = () => ProduceChecks.OfSales,
    };

    internal static readonly DayColumn DateColumn = Declared.Date(new("date", ColumnType.Date, "The day it left.") { Required = true });
    internal static readonly TextColumn CropColumn = Declared.MustRef("crop", "crops", "The crop.");
    internal static readonly TextColumn ChannelColumn = Declared.MustRef("channel", "channels", "The channel it left through.");
    internal static readonly NumberColumn QuantityColumn = Declared.Number(
        new("quantity", ColumnType.Number, "The quantity.")
        { Required = true, Range = NumberRanges.QuantityOrNone, Unit = ColumnUnits.CropUnit });
    internal static readonly TextColumn UnitColumn = Declared.Ref("unit", "units", "The unit; blank: the crop's own.");
    internal static readonly NumberColumn UnitPriceColumn = Declared.Number(
        new("unit_price", ColumnType.Price, "Price of one unit.")
        { Range = NumberRanges.PriceFromZero, Unit = "currency per unit of the row" });
    internal static readonly NumberColumn AmountColumn = Declared.Number(
        new("amount", ColumnType.Money,
            "Money for the whole row; counts before unit_price. Below 0 with quantity 0: a credit, money given back for what was "
            + "sold.")
        { Range = NumberRanges.AnyAmount, Unit = ColumnUnits.Currency });
    internal static readonly TextColumn PlantingColumn = Declared.Ref("planting", "plantings", "The planting it came from, when known.");

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<SaleRow>();

    /// <summary>The day it left.</summary>
    public DateOnly Date => DateColumn.Of(Home, Index);

    /// <summary>The crop.</summary>
    public string Crop => CropColumn.Of(Home, Index);

    /// <summary>The channel it left through.</summary>
    public string Channel => ChannelColumn.Of(Home, Index);

    /// <summary>The quantity.</summary>
    public decimal Quantity => QuantityColumn.Of(Home, Index);

    /// <summary>The unit; blank: the crop's own.</summary>
    public string? Unit => UnitColumn.Maybe(Home, Index);

    /// <summary>Price per unit of this row.</summary>
    public decimal? UnitPrice => UnitPriceColumn.Maybe(Home, Index);

    /// <summary>Money for the row; counts before <see cref="UnitPrice"/>.</summary>
    public decimal? Amount => AmountColumn.Maybe(Home, Index);

    /// <summary>The planting it came from, when known.</summary>
    public string? Planting => PlantingColumn.Maybe(Home, Index);

    /// <summary>The number of the crop's name in the tables; 0 for a blank.</summary>
    internal int CropName => CropColumn.Id(Home, Index);

    /// <summary>The number of the unit's name in the tables; 0 for a blank.</summary>
    internal int UnitName => UnitColumn.Id(Home, Index);

    /// <summary>The number of the planting's name in the tables; 0 for a blank.</summary>
    internal int PlantingName => PlantingColumn.Id(Home, Index);

    /// <summary>True for a row of goods that brought no less than nothing.</summary>
    internal bool IsOfGoods => QuantityColumn.Cells(Home).Sign(Index) > 0 && AmountColumn.Cells(Home).Sign(Index) >= 0;

    /// <summary>True for a row with an amount and a price per unit.</summary>
    internal bool IsPricedTwice => !UnitPriceColumn.Cells(Home).IsBlank(Index) && !AmountColumn.Cells(Home).IsBlank(Index);

    /// <inheritdoc/>
    public static SaleRow At(RecordTable table, int index) => new(table, index);
}
