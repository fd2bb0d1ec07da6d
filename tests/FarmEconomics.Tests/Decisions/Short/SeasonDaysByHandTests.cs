using FarmEconomics.Decisions.Short;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Short;

/// <summary>
/// Days and weeks that are looked at: a week is its Monday's, nothing after the closing date counts (docs/methods.md, section 16).
/// </summary>
public class SeasonDaysByHandTests
{
    private static readonly DateOnly First = new(2025, 5, 1);

    private static SeasonDays Days(string asOf, int year = 2025) => new(new FarmBuilder().AsOf(asOf).Crop("Kale").Bed("One")
        .Planting("K1", "Kale", "One", 50m, $"{year}-01-02", $"{year}-01-03").Season(year));

    /// <summary>
    /// January 6 is the first Monday of 2025. Closed on Wednesday, May 14: 134 days; 19 Mondays to May 12, the last week cut to 3 days.
    /// </summary>
    [Theory]
    [InlineData("2025-05-14", 134, 19, 129, 3)]
    [InlineData("2025-05-12", 132, 19, 127, 1)] // a Monday
    [InlineData("2025-12-31", 365, 52, 360, 3)]
    [InlineData("2026-06-30", 365, 52, 364, 7)] // the week of December 29 goes on into January
    [InlineData("2025-01-03", 3, 0, 0, 0)] // no Monday yet
    public void SeasonDays_UpToTheClosingDate(string asOf, int days, int weeks, int weekDays, int last)
    {
        SeasonDays season = Days(asOf);

        Assert.Equal((new DateOnly(2025, 1, 1), days, new DateOnly(2025, 1, 6)), (season.First, season.Days, season.FirstMonday));
        Assert.Equal((weeks, weekDays), (season.Mondays.Count, season.WeekDays));
        Assert.Equal(last, weeks == 0 ? 0 : season.DaysOf(season.Mondays[^1]));
        Assert.All(season.Mondays.SkipLast(1), monday => Assert.Equal(7, season.DaysOf(monday)));
    }

    /// <summary>January 1, 2024 is a Monday, and the first of the next crop year's.</summary>
    [Fact]
    public void SeasonDays_YearThatEndsOnASunday_LeavesTheNextMondayToTheNextYear() =>
        Assert.Equal((new DateOnly(2023, 12, 25), 52), (Days("2024-06-30", 2023).Mondays[^1], Days("2024-06-30", 2023).Mondays.Count));

    /// <summary>A day of its own before the first Monday counts where a thing is looked at by day; a week is its seven days.</summary>
    [Fact]
    public void ShortDays_ByDayAndByWeek()
    {
        SeasonDays season = Days("2025-12-31");
        DaySet crates = season.ShortDays(Short(ScarceKind.Crates, new DateOnly(2025, 1, 2)));
        DaySet beds = season.ShortDays(Short(ScarceKind.BedLength, new DateOnly(2025, 5, 12)));

        Assert.Equal((false, true, false), (crates.Has(new(2025, 1, 1)), crates.Has(new(2025, 1, 2)), crates.Has(new(2025, 1, 3))));
        Assert.Equal((false, true, true, false),
            (beds.Has(new(2025, 5, 11)), beds.Has(new(2025, 5, 12)), beds.Has(new(2025, 5, 18)), beds.Has(new(2025, 5, 19))));
        Assert.Equal(7, beds.Between(new(2025, 1, 1), new(2026, 1, 1)));

        static ScarceResource Short(ScarceKind kind, DateOnly day) =>
            new(kind, "thing", [new ScarceSpan(day, 85m, 100m, LimitSource.Limits), new ScarceSpan(day.AddDays(7), 84m, 100m,
                LimitSource.Limits)], 0.85m);
    }

    /// <summary>5 from the day before the stretch to its second day, 2 from its second day on and past its end.</summary>
    [Fact]
    public void DayLine_SpansBeyondTheStretch_CountOnItsDays()
    {
        DayLine line = new(First, 3);
        line.Add(First.AddDays(-1), First.AddDays(2), 5m);
        line.Add(First.AddDays(1), First.AddDays(9), 2m);
        line.Add(First.AddDays(3), First.AddDays(9), 100m);
        line.Add(First.AddDays(-9), First, 100m);
        line.Add(First.AddDays(2), First.AddDays(1), 100m);

        Assert.Equal([5m, 7m, 2m], line.ByDay());
    }

    /// <summary>Of ten days the 2nd, 3rd and 6th; a span before the stretch and one past its end count with their part inside.</summary>
    [Fact]
    public void DaySet_Between_CountsDaysFromTheFirstToTheDayBeforeTheLast()
    {
        DaySet set = new(First, 10, [(First.AddDays(1), 2), (First.AddDays(5), 1), (First.AddDays(-3), 2), (First.AddDays(9), 4)]);

        Assert.Equal((0, 1, 2, 2, 4), (Between(0, 1), Between(1, 2), Between(1, 5), Between(2, 6), Between(-5, 30)));
        Assert.Equal((0, 0, 1), (Between(6, 2), Between(3, 3), Between(9, 10)));

        int Between(int from, int to) => set.Between(First.AddDays(from), First.AddDays(to));
    }
}
