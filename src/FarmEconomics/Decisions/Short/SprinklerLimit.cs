using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Short;

/// <summary>
/// How much can be watered with sprinklers on a day, by the limits table: sprinklers at once times the hours they may run ("sprinklers, 12,
/// sprinklers at once" and "watering, 6, hours a day"), or one row in sprinkler-hours a day.
/// </summary>
internal sealed class SprinklerLimit
{
    private static readonly string[] Runs = ["water", "sprinkler", "pump", "irrigation"];

    private readonly List<LimitRow> atOnce = [];
    private readonly List<LimitRow> hours = [];
    private readonly List<LimitRow> together = [];

    /// <summary>True when a row tells of sprinklers or of how long they run.</summary>
    internal bool IsThere => atOnce.Count + hours.Count + together.Count > 0;

    /// <summary>Why no day's sprinkler-hours can be told, and of which row; null where they can.</summary>
    internal NotChecked? NotChecked =>
        together.Count > 0 || (atOnce.Count > 0 && hours.Count > 0) ? null
        : atOnce.Count > 0
            ? new NotChecked(atOnce[0].Limit.Trim(), "no row of limits says how many hours a day they run (watering, hours a day)")
        : hours.Count > 0 ? new NotChecked(hours[0].Limit.Trim(), "no row of limits says how many sprinklers run at once")
        : null;

    /// <summary>Takes a row that tells of sprinklers.</summary>
    /// <param name="row">A row of a positive amount that names no pool.</param>
    /// <returns>Whether it does.</returns>
    internal bool Takes(LimitRow row)
    {
        string unit = row.Unit ?? "";
        bool sprinklers = WrittenLimits.Says(row.Limit, "sprinkler");
        List<LimitRow>? place = sprinklers && WrittenLimits.Says(unit, "sprinkler-hour") ? together
            : WrittenLimits.Says(unit, "hour") && WrittenLimits.Says(unit, "day") && !WrittenLimits.Says(row.Limit, "labor")
                && Array.Exists(Runs, word => WrittenLimits.Says(row.Limit, word)) ? hours
            : sprinklers ? atOnce : null;
        place?.Add(row);
        return place is not null;
    }

    /// <summary>Sprinklers that can run at once on a day; null: no row says so.</summary>
    internal decimal? AtOnce(DateOnly day) => Least(atOnce, day);

    /// <summary>Hours they may run on a day; null: no row says so.</summary>
    internal decimal? HoursOn(DateOnly day) => Least(hours, day);

    /// <summary>Sprinkler-hours there are on a day; null: not limited, or not known.</summary>
    internal decimal? On(DateOnly day) => Least(together, day) is { } told ? Math.Min(told, AtOnce(day) * HoursOn(day) ?? told)
        : AtOnce(day) * HoursOn(day);

    private static decimal? Least(List<LimitRow> rows, DateOnly day)
    {
        decimal? least = null;
        foreach (LimitRow row in rows)
        {
            least = WrittenLimits.Holds(row, day) && !(row.Amount >= least) ? row.Amount : least;
        }

        return least;
    }
}
