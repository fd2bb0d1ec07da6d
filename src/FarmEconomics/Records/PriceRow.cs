using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>prices</c>.</summary>
    public Rows<PriceRow> Prices => Of<PriceRow>();
}

/// <summary>A row of <c>prices</c>: a list price.</summary>
public readonly record struct PriceRow(RecordTable Home, int Index) : IRecordRow<PriceRow>
{
    private static readonly TableDeclaration Declared = new("prices", 180, "a list price")
    {
        Without = "Without prices.csv goods that carry no price are valued at the crop's average realized price only.",
        Checks = () => ProduceChecks.OfPrices,
    };

    internal static readonly TextColumn CropColumn = Declared.MustRef("crop", "crops", "The crop.");
    internal static readonly NumberColumn PriceColumn = Declared.Number(
        new("price", ColumnType.Price, "Price of one unit.")
        { Required = true, Range = NumberRanges.PriceFromZero, Unit = "currency per unit of the row" });
    internal static readonly TextColumn UnitColumn = Declared.Ref("unit", "units", "The unit; blank: the crop's own.");
    internal static readonly TextColumn ChannelColumn = Declared.Ref("channel", "channels", "The channel; blank: all channels.");
    internal static readonly DayColumn FromColumn = Declared.Date(
        new("from", ColumnType.Date, "First day the price holds; blank: always."));
    internal static readonly YesNoColumn ReferenceColumn = Declared.YesNo(
        new("reference", ColumnType.YesNo, "Yes for somebody else's price, such as a published market report; kept apart."));

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<PriceRow>();

    /// <summary>The crop.</summary>
    public string Crop => CropColumn.Of(Home, Index);

    /// <summary>Price per unit.</summary>
    public decimal Price => PriceColumn.Of(Home, Index);

    /// <summary>The unit; blank: the crop's own.</summary>
    public string? Unit => UnitColumn.Maybe(Home, Index);

    /// <summary>The channel; blank: all channels.</summary>
    public string? Channel => ChannelColumn.Maybe(Home, Index);

    /// <summary>First day the price holds; blank: always.</summary>
    public DateOnly? From => FromColumn.Maybe(Home, Index);

    /// <summary>True for somebody else's price (a published market report): kept apart.</summary>
    public bool? Reference => ReferenceColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static PriceRow At(RecordTable table, int index) => new(table, index);
}
