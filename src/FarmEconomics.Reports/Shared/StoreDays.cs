using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Reports.Shared;

/// <summary>The crate-days a store is divided by, laid out over the months in which the produce lay there.</summary>
public static class StoreDays
{
    /// <summary>The stores: pools divided by crate-days.</summary>
    public static IReadOnlyList<Pool> Stores(SeasonReview season) =>
        season.Records.Pools.Where(pool => pool.Basis.Kind == BasisKind.CrateDays).ToList();

    /// <summary>
    /// Crate-days by crop and month for produce of the crop year, also where it was held after the year's end. The crate-days are those of
    /// the pool's users; only when they fell is added here. A crop whose use is written down without a day of holding in the records has no
    /// months and isn't in it.
    /// </summary>
    public static IReadOnlyDictionary<(Crop Crop, DateOnly Month), decimal> Of(SeasonReview season, Pool store)
    {
        Dictionary<(Crop, DateOnly), decimal> days = [];
        PoolUsers users = season.Network.Users[store.Index];
        ILookup<Enterprise, Lot> lots = season.Lots.ToLookup(lot => lot.Enterprise);
        for (int i = 0; i < season.Network.Enterprises.Count; i++)
        {
            Enterprise enterprise = season.Network.Enterprises[i];
            Dictionary<DateOnly, decimal> unitDays = users.OfEnterprise[i] > 0m ? ByMonth(lots[enterprise], season.Records.AsOf) : [];
            decimal all = unitDays.Values.Sum();
            foreach ((DateOnly month, decimal held) in unitDays)
            {
                days[(enterprise.Crop, month)] = days.GetValueOrDefault((enterprise.Crop, month)) + (users.OfEnterprise[i] * held / all);
            }
        }

        return days;
    }

    private static Dictionary<DateOnly, decimal> ByMonth(IEnumerable<Lot> lots, DateOnly closing)
    {
        Dictionary<DateOnly, decimal> days = [];
        foreach (Lot lot in lots)
        {
            foreach (Holding part in Holding.Of(lot, closing).Where(part => part.Quantity > 0m))
            {
                // The last day of a storage life may be a part of one.
                for (decimal left = part.Days, day = 0m; left > 0m; left--, day++)
                {
                    DateOnly at = lot.Date.AddDays((int)day);
                    DateOnly month = new(at.Year, at.Month, 1);
                    days[month] = days.GetValueOrDefault(month) + (part.Quantity * Math.Min(1m, left));
                }
            }
        }

        return days;
    }
}
