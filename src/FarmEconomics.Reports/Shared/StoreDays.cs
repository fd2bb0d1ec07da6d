using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Reports.Shared;

/// <summary>Crates in a store day by day, added up by crop and month: the same count the pool is shared out by, laid out over the year.</summary>
public static class StoreDays
{
    /// <summary>The stores: pools shared out by crate-days.</summary>
    public static IReadOnlyList<Pool> Stores(SeasonReview season) => season.Records.Pools.Where(pool => pool.Basis.Kind == BasisKind.CrateDays).ToList();

    /// <summary>Crate-days by crop and month for produce of the crop year, also where it was held after the year's end.</summary>
    public static IReadOnlyDictionary<(Crop Crop, DateOnly Month), decimal> Of(SeasonReview season, Pool store)
    {
        Dictionary<(Crop, DateOnly), decimal> days = [];
        int stores = Stores(season).Count;
        foreach (Lot lot in season.Lots)
        {
            Crop crop = lot.Enterprise.Crop;
            decimal share = crop.Stores.Count == 0 ? (stores == 1 ? 1m : 0m)
                : (decimal)crop.Stores.Count(name => string.Equals(name, store.Name, StringComparison.OrdinalIgnoreCase)) / crop.Stores.Count;
            if (share <= 0m || crop.Row.UnitsPerCrate is not > 0m)
            {
                continue;
            }

            decimal perUnit = share / crop.Row.UnitsPerCrate.Value;
            foreach (LeavingPart part in lot.Draws)
            {
                Add(days, crop, lot.Date, part.DaysHeld!.Value, part.Quantity * perUnit);
            }

            int left = season.Records.AsOf.DayNumber - lot.Date.DayNumber;
            Add(days, crop, lot.Date, Math.Min(left, lot.KeptUntil.DayNumber - lot.Date.DayNumber), lot.Remaining * perUnit);
        }

        return days;
    }

    private static void Add(Dictionary<(Crop, DateOnly), decimal> days, Crop crop, DateOnly from, int held, decimal crates)
    {
        for (int day = 0; day < held && crates > 0m; day++)
        {
            DateOnly at = from.AddDays(day);
            (Crop, DateOnly) key = (crop, new DateOnly(at.Year, at.Month, 1));
            days[key] = days.GetValueOrDefault(key) + crates;
        }
    }
}
