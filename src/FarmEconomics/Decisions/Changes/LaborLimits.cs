using FarmEconomics.Budgets;
using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Changes;

/// <summary>Whose hours a limit is on.</summary>
internal enum LaborOf
{
    /// <summary>All hours of the farm.</summary>
    All,

    /// <summary>The owners' own.</summary>
    Own,

    /// <summary>Hired people's.</summary>
    Hired,
}

/// <summary>Weekly limits on hours, and which limits can't be checked against the records.</summary>
internal sealed class LaborLimits
{
    private readonly SeasonReview season;
    private readonly List<LimitRow> hours = [];
    private readonly List<LimitRow> own = [];
    private readonly Lazy<decimal> mostOwn;

    internal LaborLimits(SeasonReview season)
    {
        this.season = season;
        Farm = WeeklyUse.OfFarm(season);
        mostOwn = new(() => season.Records.Labor.Where(row => season.Records.WorkerOn(row.Worker, row.Date).Kind == WorkerKind.Owner)
            .GroupBy(row => WeeklyUse.MondayOf(row.Date)).Select(week => week.Sum(row => row.Hours)).DefaultIfEmpty().Max());
        foreach (LimitRow row in season.Records.Tables.Limits)
        {
            LaborOf? whose = Whose(row.Limit, row.Unit ?? "");
            if (whose is LaborOf.All or LaborOf.Own)
            {
                (whose == LaborOf.Own ? own : hours).Add(row);
            }
            else
            {
                NotChecked.Add(row.Limit.Trim());
            }
        }
    }

    /// <summary>Whose hours a week a row of limits is on; null for one on anything else.</summary>
    internal static LaborOf? Whose(string limit, string unit)
    {
        bool Says(string word) => limit.Contains(word, StringComparison.OrdinalIgnoreCase);
        return !Says("labor") || !unit.Contains("week", StringComparison.OrdinalIgnoreCase) ? null
            : Says("own") ? LaborOf.Own
            : Says("hired") ? LaborOf.Hired
            : LaborOf.All;
    }

    /// <summary>Limits a partial budget can't check: no record says how much of them each crop takes.</summary>
    internal List<string> NotChecked { get; } = [];

    /// <summary>All hours of the farm week by week, as logged.</summary>
    internal Dictionary<DateOnly, WeeklyUse> Farm { get; }

    internal bool Any => hours.Count > 0;

    /// <summary>Weeks in which a change goes beyond the limit on hours and the season as it was did not, or goes further beyond.</summary>
    /// <param name="added">Hours by week that come (positive) or go (negative).</param>
    internal List<WeekBeyondLimit> Beyond(IReadOnlyDictionary<DateOnly, decimal> added)
    {
        List<WeekBeyondLimit> beyond = [];
        foreach ((DateOnly week, decimal more) in added.OrderBy(pair => pair.Key))
        {
            decimal after = (Farm.GetValueOrDefault(week)?.Hours ?? 0m) + more;
            if (more > 0m && LimitOn(week, hours) is { } limit && after > limit)
            {
                beyond.Add(new WeekBeyondLimit(week, after, limit));
            }
        }

        return beyond;
    }

    /// <summary>How many hours the farm's own people can work in a week: the limit of own labor, else the most they ever did.</summary>
    internal decimal OwnLimitOn(DateOnly week) => LimitOn(week, own) ?? mostOwn.Value;

    /// <summary>The limit of a week. A change is for the next season, so a limit written for the year after counts as well.</summary>
    private static decimal? LimitOn(DateOnly week, List<LimitRow> rows)
    {
        decimal? least = null;
        foreach (LimitRow row in rows)
        {
            if (Holds(row, week))
            {
                least = least is null ? row.Amount : Math.Min(least.Value, row.Amount);
            }
        }

        return least;
    }

    /// <summary>True when a limit holds on a day, or on the day a year later.</summary>
    internal static bool Holds(LimitRow row, DateOnly day) => Covers(row, day) || Covers(row, day.AddYears(1));

    private static bool Covers(LimitRow row, DateOnly day) => (row.From is null || row.From <= day) && (row.To is null || row.To >= day);
}
