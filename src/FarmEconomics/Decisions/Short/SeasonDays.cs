using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Changes;

namespace FarmEconomics.Decisions.Short;

/// <summary>
/// The days and weeks of a crop year that are looked at: a week belongs to the crop year of its Monday, so that each is looked at once and
/// whole;
/// nothing after the closing date counts, and a week it cuts short is looked at up to it.
/// </summary>
internal sealed class SeasonDays
{
    internal SeasonDays(SeasonReview season)
    {
        DateOnly closing = season.Records.AsOf;
        First = season.Settings.StartOf(season.CropYear);
        DateOnly end = season.Settings.EndOf(season.CropYear);
        Days = Math.Max(0, Math.Min(end.DayNumber, closing.DayNumber + 1) - First.DayNumber);
        FirstMonday = WeeklyUse.MondayOf(First.AddDays(6));
        for (DateOnly monday = FirstMonday; monday < end && monday <= closing; monday = monday.AddDays(7))
        {
            Mondays.Add(monday);
        }

        WeekDays = Mondays.Count == 0 ? 0 : Math.Min(7 * Mondays.Count, closing.DayNumber + 1 - FirstMonday.DayNumber);
    }

    /// <summary>The first day of the crop year.</summary>
    internal DateOnly First { get; }

    /// <summary>How many days of it there are up to the closing date.</summary>
    internal int Days { get; }

    internal DateOnly FirstMonday { get; }

    internal List<DateOnly> Mondays { get; } = [];

    /// <summary>Days from the first Monday to the end of the last week, up to the closing date.</summary>
    internal int WeekDays { get; }

    /// <summary>How many days of a week are looked at.</summary>
    internal int DaysOf(DateOnly monday) => Math.Min(7, WeekDays - (monday.DayNumber - FirstMonday.DayNumber));

    /// <summary>The days in which a thing was short.</summary>
    internal DaySet ShortDays(ScarceResource resource) => resource.ByWeek
        ? new DaySet(FirstMonday, WeekDays, resource.Short.Select(span => (span.From, 7)))
        : new DaySet(First, Days, resource.Short.Select(span => (span.From, 1)));
}
