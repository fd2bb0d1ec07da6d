using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Costing;

/// <summary>
/// Crates times days in store, lot by lot: from pick to leaving (0 on the same day); what never left counts up to the day it stopped
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

    internal void Fill(PoolUsers users, PoolUserFinder finder)
    {
        foreach (Lot lot in trace.LotsByYear[year])
        {
            // A crop that is never held needs no store, so only one that was held is worth a warning.
            decimal unitDays = UnitDays(lot);
            decimal share = unitDays > 0m ? ShareOf(users.Pool, lot.Enterprise.Crop, finder) : 0m;
            if (share > 0m)
            {
                users.OfEnterprise[finder.PositionOf(lot.Enterprise)] += share * finder.Crates(users.Pool, lot.Enterprise.Crop, unitDays);
            }
        }
    }

    /// <summary>Units of the crop times days held.</summary>
    private decimal UnitDays(Lot lot)
    {
        decimal sum = 0m;
        for (LeavingPart? part = lot.FirstDraw; part is not null; part = part.NextDraw)
        {
            sum += part.Quantity * part.DaysHeld!.Value;
        }

        decimal days = trace.Records.AsOf.DayNumber - lot.Date.DayNumber;
        if (lot.Enterprise.Crop.Row.StorageDays is { } limit)
        {
            days = Math.Min(days, limit);
        }

        return sum + (lot.Remaining * days);
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
