using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records;

public sealed partial class RecordTables
{
    /// <summary>Rows of <c>plan_sales</c>.</summary>
    public Rows<PlanSaleRow> PlanSales => Of<PlanSaleRow>();
}

/// <summary>A row of <c>plan_sales</c>: what a crop is meant to sell through a channel.</summary>
public readonly record struct PlanSaleRow(RecordTable Home, int Index) : IRecordRow<PlanSaleRow>
{
    private static readonly TableDeclaration Declared = new("plan_sales", 444, "what a crop is planned to sell through a channel")
    {
        Without = "Without plan_sales.csv a plan has no money.",
        Day = "from",
        Checks = () => PlanChecks.OfPlanSales,
    };

    internal static readonly YearColumn CropYearColumn = Declared.Year(
        new("crop_year", ColumnType.Year, "The crop year it is planned for.") { Required = true });
    internal static readonly TextColumn CropColumn = Declared.MustRef("crop", "crops", "The crop.");
    internal static readonly TextColumn ChannelColumn = Declared.MustRef("channel", "channels", "The channel.");
    internal static readonly NumberColumn QuantityColumn = Declared.Number(
        new("quantity", ColumnType.Number, "The quantity over the whole time.")
        { Required = true, Range = NumberRanges.QuantityOrNone, Unit = ColumnUnits.CropUnit });
    internal static readonly TextColumn UnitColumn = Declared.Ref("unit", "units", "The unit; blank: the crop's own.");
    internal static readonly NumberColumn PriceColumn = Declared.Number(
        new("price", ColumnType.Price, "Price of one unit; for a share what the box is worth, 0 where nothing is paid.")
        { Required = true, Range = NumberRanges.PriceFromZero, Unit = "currency per unit of the row" });
    internal static readonly DayColumn FromColumn = Declared.Date(
        new("from", ColumnType.Date, "The first day of the first week.") { Required = true });
    internal static readonly NumberColumn WeeksColumn = Declared.Number(
        new("weeks", ColumnType.Number, "Over how many weeks; blank: 1.") { Range = new NumberRange(1m, 60m), Unit = "weeks" });

    /// <inheritdoc/>
    public static TableSchema Schema => Declared.SchemaOf<PlanSaleRow>();

    /// <summary>The crop year it is planned for.</summary>
    public int CropYear => CropYearColumn.Maybe(Home, Index).GetValueOrDefault();

    /// <summary>The crop.</summary>
    public string Crop => CropColumn.Of(Home, Index);

    /// <summary>The channel.</summary>
    public string Channel => ChannelColumn.Of(Home, Index);

    /// <summary>The quantity over the whole time.</summary>
    public decimal Quantity => QuantityColumn.Of(Home, Index);

    /// <summary>The unit; blank: the crop's own.</summary>
    public string? Unit => UnitColumn.Maybe(Home, Index);

    /// <summary>Price of one unit.</summary>
    public decimal Price => PriceColumn.Of(Home, Index);

    /// <summary>The first day of the first week.</summary>
    public DateOnly From => FromColumn.Of(Home, Index);

    /// <summary>Over how many weeks; blank: 1.</summary>
    public decimal? Weeks => WeeksColumn.Maybe(Home, Index);

    /// <inheritdoc/>
    public static PlanSaleRow At(RecordTable table, int index) => new(table, index);
}
