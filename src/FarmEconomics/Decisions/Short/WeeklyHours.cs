using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Short;

/// <summary>
/// Hours by week as logged, all of them, the owners' own and hired ones, against the limits table, else against the most ever worked in a
/// week on record.
/// Hours filled in from standards carry no day and are left out.
/// </summary>
internal sealed class WeeklyHours
{
    private readonly SeasonCosts costs;
    private readonly SeasonReview season;
    private readonly Dictionary<ScarceKind, Dictionary<DateOnly, decimal>> worked = new()
    {
        [ScarceKind.Hours] = [],
        [ScarceKind.OwnHours] = [],
        [ScarceKind.HiredHours] = [],
    };

    internal WeeklyHours(SeasonCosts costs)
    {
        this.costs = costs;
        season = costs.Season;
        foreach (LaborRow row in season.Records.Labor)
        {
            DateOnly monday = WeeklyUse.MondayOf(row.Date);
            foreach (ScarceKind kind in worked.Keys.Where(kind => Counts(kind, row)))
            {
                worked[kind][monday] = worked[kind].GetValueOrDefault(monday) + row.Hours;
            }
        }
    }

    internal bool IsLogged(SeasonDays days) => days.Mondays.Exists(monday => worked[ScarceKind.Hours].GetValueOrDefault(monday) > 0m);

    internal IEnumerable<ResourceUse> Find(SeasonDays days, WrittenLimits limits, decimal shortAt)
    {
        foreach ((ScarceKind kind, Dictionary<DateOnly, decimal> weeks) in worked)
        {
            decimal most = weeks.Count == 0 ? 0m : weeks.Values.Max();
            List<ScarceSpan> spans = [];
            foreach (DateOnly monday in most > 0m ? days.Mondays : [])
            {
                decimal? written = limits.On(kind, null, monday);
                spans.Add(new ScarceSpan(monday, weeks.GetValueOrDefault(monday), written ?? most, written is null ? LimitSource.MostEver
                    : LimitSource.Limits));
            }

            // All hours and the owners' own are the same list where nobody else works: the one with a limit is told, else all hours.
            bool limited = limits.PoolsOf(kind).Any();
            bool again = kind == ScarceKind.Hours ? worked.Keys.Any(one => IsAllHours(one) && limits.PoolsOf(one).Any()) : IsAllHours(kind);
            if (spans.Exists(span => span.Used > 0m) && (limited || !again))
            {
                yield return new ResourceUse(new ScarceResource(kind, NameOf(kind), spans, shortAt), set => Use(kind, set));
            }
        }
    }

    private bool IsAllHours(ScarceKind kind) => kind != ScarceKind.Hours && worked[kind].Count == worked[ScarceKind.Hours].Count
        && worked[kind].All(week => worked[ScarceKind.Hours][week.Key] == week.Value);

    /// <summary>
    /// Hours that come and go with a planting, its own and those through pools; general work and overhead stay whatever is grown.
    /// </summary>
    private IEnumerable<EnterpriseUse> Use(ScarceKind kind, DaySet days)
    {
        decimal[] hours = new decimal[season.Network.Enterprises.Count];
        for (int i = 0; i < hours.Length; i++)
        {
            hours[i] = costs.DirectCharges(season.Network.Enterprises[i]).Where(charge => Moves(charge, charge.VariesWith, kind, days))
                .Sum(charge => charge.Hours);
        }

        foreach (PoolResult pool in season.Pools.Where(pool => !pool.Pool.IsOverhead && pool.Hours > 0m))
        {
            decimal all = pool.Rows.Where(charge => Moves(charge, pool.Pool.VariesWith, kind, days)).Sum(charge => charge.Hours);
            for (int i = 0; all > 0m && i < hours.Length; i++)
            {
                hours[i] += all * season.Network.Running.Shares[pool.Pool.Index, i];
            }
        }

        for (int i = 0; i < hours.Length; i++)
        {
            if (hours[i] > 0m)
            {
                yield return new EnterpriseUse(season.Network.Enterprises[i], hours[i]);
            }
        }
    }

    private bool Moves(Charge charge, CostDriver otherwise, ScarceKind kind, DaySet days) => charge.Hours > 0m
        && charge.Origin is LaborRow row
        && (charge.Stage is { } stage ? StageBehavior.Of(stage, namesCrop: charge.Enterprise is not null) : otherwise)
            is not (CostDriver.Fixed or CostDriver.Trips)
        && days.Has(row.Date)
        && Counts(kind, row);

    private bool Counts(ScarceKind kind, LaborRow row) => kind switch
    {
        ScarceKind.OwnHours => season.Records.WorkerOn(row.Worker, row.Date).Kind == WorkerKind.Owner,
        ScarceKind.HiredHours => season.Records.WorkerOn(row.Worker, row.Date).Kind == WorkerKind.Hired,
        _ => true,
    };

    private static string NameOf(ScarceKind kind) => kind switch
    {
        ScarceKind.OwnHours => "your own hours",
        ScarceKind.HiredHours => "hired hours",
        _ => "hours",
    };
}
