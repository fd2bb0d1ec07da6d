using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>What one planting gave on one day: the thing sales draw on, first in first out.</summary>
public sealed class Lot
{
    internal Lot(HarvestRow row, Enterprise enterprise, decimal quantity, decimal culled, DateOnly keptUntil)
    {
        KeptUntil = keptUntil;
        Row = row;
        Enterprise = enterprise;
        Quantity = quantity;
        Culled = culled;
        Remaining = quantity;
    }

    /// <summary>The harvest row it came from.</summary>
    public HarvestRow Row { get; }

    /// <summary>The enterprise it belongs to.</summary>
    public Enterprise Enterprise { get; }

    /// <summary>The day it was picked.</summary>
    public DateOnly Date => Row.Date;

    /// <summary>The last day it keeps: storage_days after the pick; without storage_days the last day of the crop year it was picked in.</summary>
    public DateOnly KeptUntil { get; }

    /// <summary>Quantity in the crop's unit, without what was culled.</summary>
    public decimal Quantity { get; }

    /// <summary>Quantity culled in the field.</summary>
    public decimal Culled { get; }

    /// <summary>What no leaving has drawn.</summary>
    public decimal Remaining { get; internal set; }

    /// <summary>The leavings that drew on it, in order.</summary>
    public IReadOnlyList<LeavingPart> Draws
    {
        get
        {
            List<LeavingPart> draws = [];
            for (LeavingPart? part = FirstDraw; part is not null; part = part.NextDraw)
            {
                draws.Add(part);
            }

            return draws;
        }
    }

    // Draws hang together as a chain: a list for each of a million lots would take more room than the draws themselves.
    internal LeavingPart? FirstDraw { get; private set; }

    private LeavingPart? LastDraw { get; set; }

    internal void AddDraw(LeavingPart part)
    {
        FirstDraw ??= part;
        if (LastDraw is { } last)
        {
            last.NextDraw = part;
        }

        LastDraw = part;
    }

    /// <summary>Days in store of what never left: to the day it stopped keeping, or to the closing date.</summary>
    internal int DaysKept(DateOnly closing) => (KeptUntil < closing ? KeptUntil : closing).DayNumber - Date.DayNumber;

    /// <summary>True when older than the crop keeps.</summary>
    internal bool IsTooOldOn(DateOnly day) => day > KeptUntil;

    /// <summary>Whether what left on a day can have come from it.</summary>
    internal LotAge AgeOn(DateOnly day, TracingLimits limits)
    {
        if (day < Date)
        {
            return Date.DayNumber - day.DayNumber <= limits.DaysNotedEarly ? LotAge.Coming : LotAge.OutOfReach;
        }

        return !IsTooOldOn(day) ? LotAge.Young
            : day.DayNumber - KeptUntil.DayNumber <= limits.DaysBeyondKeeping ? LotAge.Old : LotAge.OutOfReach;
    }
}

/// <summary>What a lot is to something that left on a day, in the order lots are drawn on.</summary>
internal enum LotAge
{
    /// <summary>Picked by then and keeping.</summary>
    Young,

    /// <summary>Older than the crop keeps, by a few days.</summary>
    Old,

    /// <summary>Picked a few days later: the row was noted early.</summary>
    Coming,

    /// <summary>Too old or too far ahead to be drawn on.</summary>
    OutOfReach,
}

/// <summary>A row of the sales table with its quantity, money and value worked out.</summary>
public sealed class Leaving
{
    internal Leaving(SaleRow row, Crop crop, Channel channel, decimal quantity, int window)
    {
        Row = row;
        Crop = crop;
        Channel = channel;
        Quantity = quantity;
        Window = window;
    }

    /// <summary>The row.</summary>
    public SaleRow Row { get; }

    /// <summary>The crop.</summary>
    public Crop Crop { get; }

    /// <summary>The channel.</summary>
    public Channel Channel { get; }

    /// <summary>
    /// Sold for money: through a market, stand, wholesale or share channel, and through one of kind other where the row carries money of its
    /// own. Quantity and money then both count in the average price; of any other row neither does.
    /// </summary>
    public bool IsSold => Channel.IsSold || (Channel.Kind == ChannelKind.Other && (Row.Amount is not null || Row.UnitPrice is not null));

    /// <summary>Quantity in the crop's unit.</summary>
    public decimal Quantity { get; }

    /// <summary>The crop-year window of its date.</summary>
    public int Window { get; }

    /// <summary>Money: the sale's amount, or what a share payment's split gave it, or 0.</summary>
    public Money Amount { get; internal set; }

    /// <summary>The channel's fee.</summary>
    public Money Fee { get; internal set; }

    /// <summary>What it is worth at list price: household use and the weights of share income; otherwise 0.</summary>
    public Money ListValue { get; internal set; }

    /// <summary>True when it should carry a value but no list price was found.</summary>
    public bool ValueIncomplete { get; internal set; }

    /// <summary>What it drew on, in drawing order; an unmatched part stands last, one share per planting it was spread over.</summary>
    public IReadOnlyList<LeavingPart> Parts => OwnParts;

    /// <summary>The same, as a stretch of the ledger's one array of parts: nearly every leaving has a single part.</summary>
    internal ArraySegment<LeavingPart> OwnParts { get; set; } = ArraySegment<LeavingPart>.Empty;
}

/// <summary>A part of a leaving that landed on one enterprise.</summary>
public sealed class LeavingPart
{
    private PartMoney? own;

    internal LeavingPart(Leaving leaving, Lot? lot, Enterprise? enterprise, decimal quantity)
    {
        Leaving = leaving;
        Lot = lot;
        Enterprise = enterprise;
        Quantity = quantity;
    }

    /// <summary>The leaving.</summary>
    public Leaving Leaving { get; }

    /// <summary>The lot drawn on, or null for an unmatched part.</summary>
    public Lot? Lot { get; }

    /// <summary>Where it landed; null: not assigned.</summary>
    public Enterprise? Enterprise { get; }

    /// <summary>Quantity in the crop's unit.</summary>
    public decimal Quantity { get; }

    /// <summary>Its part of the money.</summary>
    public Money Amount => own is null ? Leaving.Amount : own.Amount;

    /// <summary>Its part of the fee.</summary>
    public Money Fee => own is null ? Leaving.Fee : own.Fee;

    /// <summary>Its part of the list value.</summary>
    public Money ListValue => own is null ? Leaving.ListValue : own.ListValue;

    /// <summary>Days from harvest to leaving, 0 when it was noted before its harvest; null when unmatched.</summary>
    public int? DaysHeld => Lot is null ? null : Math.Max(0, Leaving.Row.Date.DayNumber - Lot.Date.DayNumber);

    /// <summary>The crop year it landed in; the window of its date when it isn't assigned.</summary>
    internal int CropYear => Enterprise?.CropYear ?? Leaving.Window;

    /// <summary>The next draw on the same lot.</summary>
    internal LeavingPart? NextDraw { get; set; }

    /// <summary>The money of a part that is not the whole leaving. Nearly every leaving has a single part, and that one carries the leaving's.</summary>
    internal PartMoney OwnMoney() => own ??= new PartMoney();

    /// <summary>What a part has of its leaving's money.</summary>
    internal sealed class PartMoney
    {
        internal Money Amount { get; set; }

        internal Money Fee { get; set; }

        internal Money ListValue { get; set; }
    }
}
