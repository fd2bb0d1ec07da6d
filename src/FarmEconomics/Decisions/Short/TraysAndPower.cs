using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Water.Power;

namespace FarmEconomics.Decisions.Short;

/// <summary>
/// Nursery trays by day, from the sowing to the day before the bed, and kWh by day from the loads table, each against its row of limits.
/// </summary>
internal sealed class TraysAndPower
{
    private readonly SeasonReview season;
    private readonly SeasonDays days;
    private readonly WrittenLimits limits;
    private readonly decimal shortAt;

    internal TraysAndPower(SeasonReview season, SeasonDays days, WrittenLimits limits, decimal shortAt)
    {
        this.season = season;
        this.days = days;
        this.limits = limits;
        this.shortAt = shortAt;
    }

    internal IEnumerable<ResourceUse> Trays(List<NotChecked> notChecked)
    {
        List<BedPlanting> rows = [.. season.Records.Plantings.SelectMany(planting => planting.Beds)
            .Where(row => row.Row.Trays > 0m && row.Row.Sown < row.In)];
        List<Pool?> limited = [.. limits.PoolsOf(ScarceKind.Trays)];
        if (rows.Count == 0 || limited.Count == 0)
        {
            notChecked.AddRange(limited.Select(pool =>
                new NotChecked(pool?.Name ?? "trays", "no planting says how many trays it had and when they were sown")));
            if (rows.Count > 0)
            {
                notChecked.Add(new NotChecked("trays", "no row of limits says how many there is room for"));
            }

            yield break;
        }

        DayLine line = new(days.First, days.Days);
        rows.ForEach(row => line.Add(row.Row.Sown!.Value, row.In, row.Row.Trays!.Value));
        foreach (Pool? pool in limited)
        {
            yield return new ResourceUse(
                new ScarceResource(ScarceKind.Trays, pool?.Name ?? "trays", Spans(ScarceKind.Trays, pool, line.ByDay()), shortAt),
                Use
            );
        }
    }

    internal IEnumerable<ResourceUse> Power(PowerSeason supply, List<NotChecked> notChecked)
    {
        List<Pool?> limited = [.. limits.PoolsOf(ScarceKind.Power)];
        if (limited.Count == 0 && supply.WhyUnknown is null)
        {
            List<ScarceSpan> spans = [.. supply.Days.Select((day, i) => Span(supply.First.AddDays(i), day))];
            yield return new ResourceUse(new ScarceResource(ScarceKind.Power, supply.Pool!, spans, shortAt), _ => []);
            yield break;
        }

        if (limited.Count == 0 && season.Records.Tables.Loads.Count > 0)
        {
            notChecked.Add(new NotChecked("kWh", $"no row of limits says how many there are a day, and {supply.WhyUnknown}"));
        }

        foreach (Pool? pool in limited)
        {
            List<LoadRow> loads = season.Records.Tables.Loads.FindAll(load => pool is null || season.Records.FindPool(load.Pool) == pool);
            if (loads.Count == 0)
            {
                notChecked.Add(new NotChecked("kWh", "no row of loads")); // a pool's row is one of power only where the pool has loads
                continue;
            }

            DayLine line = new(days.First, days.Days);
            loads.ForEach(load =>
                line.Add(load.From, load.To < DateOnly.MaxValue ? load.To.AddDays(1) : load.To, load.KilowattHours(load.From, load.From))
            );
            yield return new ResourceUse(
                new ScarceResource(ScarceKind.Power, pool?.Name ?? "kWh", Spans(ScarceKind.Power, pool, line.ByDay()), shortAt),
                _ => []
            );
        }
    }

    // What there was: what panels made, and what the battery held that morning.
    private static ScarceSpan Span(DateOnly date, PowerDay day)
    {
        decimal there = (decimal)(day.Made + day.Held + day.FromBattery - day.Stored);
        return new ScarceSpan(date, (decimal)day.Load, Math.Max(there, 0.0001m), LimitSource.Supply);
    }

    private List<ScarceSpan> Spans(ScarceKind kind, Pool? pool, decimal[] byDay)
    {
        List<ScarceSpan> spans = [];
        for (int i = 0; i < byDay.Length; i++)
        {
            if (limits.On(kind, pool, days.First.AddDays(i)) is { } limit)
            {
                spans.Add(new ScarceSpan(days.First.AddDays(i), byDay[i], limit, LimitSource.Limits));
            }
        }

        return spans;
    }

    private IEnumerable<EnterpriseUse> Use(DaySet set)
    {
        foreach (Enterprise enterprise in season.Plantings.Select(planting => planting.Enterprises[0]))
        {
            decimal use = enterprise.Planting.Beds.Where(row => row.Row.Trays > 0m && row.Row.Sown < row.In)
                .Sum(row => set.Between(row.Row.Sown!.Value, row.In) * row.Row.Trays!.Value);
            if (use > 0m)
            {
                yield return new EnterpriseUse(enterprise, use);
            }
        }
    }
}
