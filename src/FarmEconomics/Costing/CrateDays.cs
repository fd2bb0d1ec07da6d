using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Costing;

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
            decimal unitDays = UnitDays(lot);
            decimal share = unitDays > 0m ? ShareOf(pool, lot.Enterprise.Crop, finder) : 0m;
            if (share > 0m)
            {
                held[finder.PositionOf(lot.Enterprise)] += share * unitDays;
            }
        }

        return held;
    }

    /// <summary>Units of the crop times days held.</summary>
    private decimal UnitDays(Lot lot)
    {
        decimal sum = 0m;
        for (LeavingPart? part = lot.FirstDraw; part is not null; part = part.NextDraw)
        {
            sum += part.Quantity * part.DaysHeld!.Value;
        }

        return sum + (lot.Remaining * lot.DaysKept(trace.Records.AsOf));
    }

    private decimal ShareOf(Pool pool, Crop crop, PoolUserFinder finder)
    {
        if (crop.Stores.Count == 0)
        {
            if (crateDayPools > 1)
            {
                finder.WarnOnce(pool, CostingProblems.MissingStore(pool, crop));
            }

            return crateDayPools == 1 ? 1m : 0m;
        }

        int named = crop.Stores.Count(store => string.Equals(store, pool.Name, StringComparison.OrdinalIgnoreCase));
        return (decimal)named / crop.Stores.Count;
    }
}
