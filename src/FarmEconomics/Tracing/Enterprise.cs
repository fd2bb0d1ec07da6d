using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// A planting in one crop year: where every cent, hour and pound lands. Most plantings are one enterprise; a perennial is one
/// per crop year it stands in its bed.
/// </summary>
public sealed class Enterprise
{
    internal Enterprise(int index, Planting planting, int cropYear, IReadOnlyList<BedStay> stays)
    {
        Stays = stays;
        Index = index;
        Planting = planting;
        CropYear = cropYear;
    }

    /// <summary>Position by first row in the file, then by crop year.</summary>
    public int Index { get; }

    /// <summary>The planting.</summary>
    public Planting Planting { get; }

    /// <summary>Its planting's stays in beds, in file order.</summary>
    public IReadOnlyList<BedStay> Stays { get; }

    /// <summary>The crop.</summary>
    public Crop Crop => Planting.Crop;

    /// <summary>The crop year it belongs to.</summary>
    public int CropYear { get; }

    /// <summary>Bed-feet planted.</summary>
    public BedFeet BedFeet { get; internal set; }

    /// <summary>Bed-feet times days in bed (for a perennial: inside the crop year).</summary>
    public BedFootDays BedFootDays { get; internal set; }

    /// <summary>Trays times days from sowing to bed.</summary>
    public decimal TrayDays { get; internal set; }

    /// <summary>Trays raised.</summary>
    public decimal Trays { get; internal set; }

    /// <summary>Bed-foot-days row by row, in the order of <see cref="Stays"/>.</summary>
    public IReadOnlyList<decimal> BedFootDaysByRow { get; internal set; } = [];

    /// <summary>Picked, in the crop's unit, without what was culled.</summary>
    public decimal Harvested { get; internal set; }

    /// <summary>True when a harvest row is of it, be it of nothing.</summary>
    internal bool IsPicked { get; set; }

    /// <summary>Thrown out in the field.</summary>
    public decimal Culled { get; internal set; }

    /// <summary>Sold through market, stand, wholesale or share.</summary>
    public decimal Sold { get; internal set; }

    /// <summary>Left through household, donation, waste or another channel.</summary>
    public decimal OtherUse { get; internal set; }

    /// <summary>Left without a lot to draw on.</summary>
    public decimal Unmatched { get; internal set; }

    /// <summary>Still there or lost at the closing date.</summary>
    public decimal Unsold { get; internal set; }

    /// <summary>The part of <see cref="Unsold"/> young enough to be stock on hand.</summary>
    public decimal OnHand { get; internal set; }

    /// <summary>Quantity sold for a price of its own (market, stand, wholesale).</summary>
    public decimal PricedQuantity { get; internal set; }

    /// <summary>Money for <see cref="PricedQuantity"/>.</summary>
    public Money PricedAmount { get; internal set; }

    /// <summary>Sale amounts and share income: the sales-value basis. No household use, closing stock or other income.</summary>
    public Money SalesValue { get; internal set; }

    /// <summary>True when a part of the output carries no list value.</summary>
    public bool ValueIncomplete { get; internal set; }

    /// <summary>Planting and crop year.</summary>
    public override string ToString() => $"{Planting.Name} ({CropYear})";
}
