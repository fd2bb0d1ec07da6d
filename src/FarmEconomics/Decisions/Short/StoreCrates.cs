using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Decisions.Short;

/// <summary>
/// Crates in each store by day, lot by lot: from the day of the pick to the day before it left, as crate-days are counted, so that the days
/// sum to the store's crate-days. Lots of every crop year count
/// while they lie there.
/// </summary>
internal sealed class StoreCrates
{
    private readonly SeasonReview season;
    private readonly List<Pool> stores;
    private readonly Dictionary<int, CrateSizes> sizes;

    internal StoreCrates(SeasonReview season)
    {
        this.season = season;
        stores = [.. season.Records.Pools.Where(pool => pool.Basis.Kind == BasisKind.CrateDays)];
        sizes = season.Trace.Enterprises.GroupBy(one => one.CropYear).ToDictionary(year => year.Key, year => new CrateSizes([.. year]));
    }

    internal IEnumerable<ResourceUse> Find(SeasonDays days, WrittenLimits limits, decimal shortAt, List<NotChecked> notChecked)
    {
        foreach (Pool store in stores)
        {
            if (!limits.PoolsOf(ScarceKind.Crates).Contains(store))
            {
                notChecked.Add(new NotChecked(store.Name, "no row of limits says how many crates it holds"));
                continue;
            }

            DayLine held = new(days.First, days.Days);
            foreach (Lot lot in season.Trace.Lots)
            {
                foreach ((DateOnly from, DateOnly to, decimal crates) in Held(lot, store, days))
                {
                    held.Add(from, to, crates);
                }
            }

            List<ScarceSpan> spans = [];
            decimal[] byDay = held.ByDay();
            for (int i = 0; i < byDay.Length; i++)
            {
                if (limits.On(ScarceKind.Crates, store, days.First.AddDays(i)) is { } limit)
                {
                    spans.Add(new ScarceSpan(days.First.AddDays(i), byDay[i], limit, LimitSource.Limits));
                }
            }

            yield return new ResourceUse(new ScarceResource(ScarceKind.Crates, store.Name, spans, shortAt), set => Use(store, days, set));
        }
    }

    /// <summary>The parts of a lot that lay in a store on days of the season.</summary>
    private IEnumerable<(DateOnly From, DateOnly To, decimal Crates)> Held(Lot lot, Pool store, SeasonDays days)
    {
        if (lot.Date >= days.First.AddDays(days.Days)
            || CrateDays.ShareIn(store, lot.Enterprise.Crop, stores.Count) is not (> 0m and { } share))
        {
            yield break;
        }

        if (sizes[lot.Enterprise.CropYear].Of(lot.Enterprise.Crop) is not { } size)
        {
            yield break;
        }

        foreach (Holding part in Holding.Of(lot, season.Records.AsOf))
        {
            DateOnly to = lot.Date.AddDays((int)part.Days);
            if (part.Quantity > 0m && part.Days > 0m && to > days.First)
            {
                yield return (lot.Date, to, part.Quantity / size * share);
            }
        }
    }

    private IEnumerable<EnterpriseUse> Use(Pool store, SeasonDays days, DaySet set)
    {
        Dictionary<Enterprise, decimal> use = [];
        foreach (Lot lot in season.Lots)
        {
            foreach ((DateOnly from, DateOnly to, decimal crates) in Held(lot, store, days))
            {
                use[lot.Enterprise] = use.GetValueOrDefault(lot.Enterprise) + (set.Between(from, to) * crates);
            }
        }

        return use.Where(pair => pair.Value > 0m).Select(pair => new EnterpriseUse(pair.Key, pair.Value));
    }
}
