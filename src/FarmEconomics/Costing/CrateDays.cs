using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Costing;

/// <summary>A part of a lot that was held for the same time, from the day it was picked.</summary>
/// <param name="Quantity">Quantity in the crop's unit.</param>
/// <param name="Days">Days held; 0 when it left on the day it was picked.</param>
public readonly record struct Holding(decimal Quantity, decimal Days)
{
    /// <summary>How long each part of a lot was held: up to the day it left; what never left, up to the day it stopped keeping or the closing date.</summary>
    /// <param name="lot">The lot.</param>
    /// <param name="closing">The closing date.</param>
    /// <returns>Its parts; their quantities sum to the lot's.</returns>
    public static IEnumerable<Holding> Of(Lot lot, DateOnly closing)
    {
        ArgumentNullException.ThrowIfNull(lot);
        for (LeavingPart? part = lot.FirstDraw; part is not null; part = part.NextDraw)
        {
            yield return new Holding(part.Quantity, part.DaysHeld!.Value);
        }

        yield return new Holding(lot.Remaining, lot.DaysKept(closing));
    }
}

/// <summary>
/// Quantities times days in store, lot by lot: from pick to leaving (0 on the same day); what never left counts up to the day it stopped
/// keeping or the closing date. Only crops whose store names the pool; several stores share equally.
/// </summary>
internal sealed class CrateDays
{
    private readonly FarmTrace trace;
    private readonly int crateDayPools;
    private readonly int year;

    internal CrateDays(FarmTrace trace, int crateDayPools, int year)
    {
        this.trace = trace;
        this.crateDayPools = crateDayPools;
        this.year = year;
    }

    /// <summary>Units of its crop times days in the store, of each enterprise.</summary>
    internal decimal[] UnitDays(Pool pool, PoolUserFinder finder)
    {
        decimal[] held = new decimal[finder.Enterprises.Count];
        foreach (Lot lot in trace.LotsByYear[year])
        {
            // A crop that is never held needs no store, so only one that was held is worth a warning.
            decimal unitDays = Holding.Of(lot, trace.Records.AsOf).Sum(part => part.Quantity * part.Days);
            decimal share = unitDays > 0m ? ShareOf(pool, lot.Enterprise.Crop, finder) : 0m;
            if (share > 0m)
            {
                held[finder.PositionOf(lot.Enterprise)] += share * unitDays;
            }
        }

        return held;
    }

    /// <summary>The part of a crop that lies in a store: all of it in the only store there is, else equal parts in those it names; null when it names none of several.</summary>
    internal static decimal? ShareIn(Pool pool, Crop crop, int crateDayPools) =>
        crop.Stores.Count == 0 ? crateDayPools > 1 ? null : crateDayPools
            : (decimal)crop.Stores.Count(store => string.Equals(store, pool.Name, StringComparison.OrdinalIgnoreCase)) / crop.Stores.Count;

    private decimal ShareOf(Pool pool, Crop crop, PoolUserFinder finder)
    {
        if (ShareIn(pool, crop, crateDayPools) is { } share)
        {
            return share;
        }

        finder.WarnOnce(pool, CostingProblems.MissingStore(pool, crop));
        return 0m;
    }
}
