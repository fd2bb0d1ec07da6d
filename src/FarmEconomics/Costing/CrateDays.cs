using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Costing;

/// <summary>A part of a lot that was held for the same time, from the day it was picked.</summary>
/// <param name="Quantity">Quantity in the crop's unit.</param>
/// <param name="Days">Days held; 0 when it was sold or used on the day it was picked.</param>
public readonly record struct Holding(decimal Quantity, int Days)
{
    /// <summary>How long each part of a lot was held: up to the day it was sold or used; what never was, up to the day it stopped keeping or the closing date.</summary>
    /// <param name="lot">The lot.</param>
    /// <param name="closing">The closing date.</param>
    /// <returns>Its parts; their quantities sum to the lot's.</returns>
    public static IEnumerable<Holding> Of(Lot lot, DateOnly closing)
    {
        foreach (DispositionPart part in lot.Draws)
        {
            yield return new Holding(part.Quantity, part.DaysHeld!.Value);
        }

        yield return new Holding(lot.Remaining, lot.DaysKept(closing));
    }
}

/// <summary>The days produce lay in a store: only crops whose store names the pool; several stores share equally.</summary>
internal sealed class CrateDays(FarmTrace trace, int crateDayPools)
{
    /// <summary>Units of its crop times days in the store, of each enterprise.</summary>
    internal decimal[] UnitDays(Pool pool, PoolUserFinder finder)
    {
        decimal[] held = new decimal[finder.Enterprises.Count];
        for (int i = 0; i < held.Length; i++)
        {
            // A crop that is never held needs no store, so only one that was held is worth a warning.
            decimal unitDays = trace.UnitDaysOf(finder.Enterprises[i]);
            held[i] = unitDays > 0m ? ShareOf(pool, finder.Enterprises[i].Crop, finder) * unitDays : 0m;
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
