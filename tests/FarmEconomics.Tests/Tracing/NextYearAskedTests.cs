using FarmEconomics.Budgets;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>
/// docs/methods.md 1: which plantings that stand unpicked at the closing date, December 31, 2025, are asked about, because by the crop's
/// median days from the first bed to the first picking they are a later year's (92 days without any: on December 31 counted from
/// September 30).
/// </summary>
public class NextYearAskedTests
{
    private static FarmBuilder Farm(bool perennial = false) =>
        new FarmBuilder().Crop("garlic", perennial: perennial).Bed("bed", 1000).Bed("other").AsOf("2025-12-31");

    private static string[] Asked(FarmBuilder farm) =>
        [.. farm.Review().Trace.Problems.Where(problem => problem.Code == "W420").Select(problem => problem.Message)];

    /// <summary>Set on September 30 the 92 days end on December 31; a day later they end in 2026.</summary>
    [Theory]
    [InlineData("2025-09-30", false)]
    [InlineData("2025-10-01", true)]
    public void NinetyTwoDays_CountFromTheDayInBed(string set, bool asked) =>
        Assert.Equal(asked ? 1 : 0, Asked(Farm().Planting("new", "garlic", "bed", 10, set)).Length);

    /// <summary>
    /// Two beds: the days count from the first, and that is the day told. From September 1 they end on December 2; from October 5, in 2026.
    /// </summary>
    [Fact]
    public void PlantingInTwoBeds_CountsFromItsFirst()
    {
        static FarmBuilder Two(string first) => Farm().Planting("new", "garlic", "bed", 10, "2025-10-20")
            .Planting("new", "garlic", "other", 10, first);
        Assert.Empty(Asked(Two("2025-09-01")));
        Assert.Equal(
            ["new came into its bed on 2025-10-05 and nothing is picked of it yet: it counts in 2025, but looks like 2026's."],
            Asked(Two("2025-10-05")));
    }

    /// <summary>
    /// The crop before stood in a second bed from June on, and was picked 296 days after it came into the first (October 5 to July 28). The
    /// new one of May 5 is due on February 25, 2026; 57 days from the second bed would be July 1, 2025.
    /// </summary>
    [Fact]
    public void HistoryInTwoBeds_CountsFromItsFirst() => Assert.Single(Asked(Farm()
        .Planting("old", "garlic", "bed", 10, "2024-10-05", "2025-08-01").Planting("old", "garlic", "other", 10, "2025-06-01", "2025-08-01")
        .Pick("2025-07-28", "old", 5).Planting("new", "garlic", "bed", 10, "2025-05-05")));

    /// <summary>
    /// One picked on the day it came in, another after 200 days: the median is 100, and what was set on August 1 is due on November 9;
    /// by the 200 alone it would be due in 2026.
    /// </summary>
    [Fact]
    public void PickedOnItsFirstDay_IsAWaitOfNoDays() => Assert.Empty(Asked(Farm()
        .Planting("same day", "garlic", "bed", 10, "2024-04-01", "2024-12-01").Pick("2024-04-01", "same day", 5)
        .Planting("slow", "garlic", "bed", 10, "2024-04-01", "2024-12-01").Pick("2024-10-18", "slow", 5)
        .Planting("new", "garlic", "bed", 10, "2025-08-01")));

    /// <summary>
    /// A perennial stands in every year: it isn't asked about, nor is what was picked already, if only on the closing date.
    /// </summary>
    [Fact]
    public void PerennialsAndWhatWasPicked_AreNotAskedAbout()
    {
        Assert.Empty(Asked(Farm(true).Planting("new", "garlic", "bed", 10, "2025-10-05")));

        // Waits of 296 and 87 days: 191.5 on the median, in April from October 5.
        Assert.Empty(Asked(Farm().Planting("old", "garlic", "bed", 10, "2024-10-05", "2025-08-01").Pick("2025-07-28", "old", 5)
            .Planting("new", "garlic", "bed", 10, "2025-10-05").Pick("2025-12-31", "new", 5)));
    }

    /// <summary>Set in October, and a crop year written or out of its bed by December 31: the grower has said all that is asked.</summary>
    [Fact]
    public void CropYearOrEndWritten_IsNotAskedAbout()
    {
        Assert.Empty(Asked(Farm().Planting("new", "garlic", "bed", 10, "2025-10-05", cropYear: 2025)));
        Assert.Empty(Asked(Farm().Planting("new", "garlic", "bed", 10, "2025-10-05", "2025-12-31")));
    }

    /// <summary>
    /// Plantings of this crop stood 10 days: one set on October 5 is taken as gone after 60, on December 4. It no longer stands, so
    /// only its end is told.
    /// </summary>
    [Fact]
    public void WhatIsTakenAsGone_IsNotAskedAbout()
    {
        FarmBuilder farm = Farm().Planting("old", "garlic", "bed", 10, "2025-03-01", "2025-03-11")
            .Planting("new", "garlic", "bed", 10, "2025-10-05");
        Assert.Empty(Asked(farm));
        string told = Assert.Single(farm.Review().Trace.Problems, problem => problem.Code == "W416").Message;
        Assert.Contains("2025-12-04", told, StringComparison.Ordinal);
    }

    /// <summary>
    /// The crop's 60 days end on the closing date itself (November 1 to December 31): nothing is cut off what stood until then, so
    /// nothing is told. Set a day earlier, it is.
    /// </summary>
    [Theory]
    [InlineData("2025-11-01", 60, 0)]
    [InlineData("2025-10-31", 60, 1)]
    [InlineData("2025-11-02", 59, 0)]
    public void LongestStayThatEndsOnTheClosingDate_CutsNothingOff(string set, int days, int told)
    {
        FarmTrace trace = Farm().Planting("old", "garlic", "bed", 10, "2025-03-01", "2025-03-11").Planting("new", "garlic", "bed", 1, set)
            .Review().Trace;
        Assert.Equal(days, trace.Enterprises[1].BedFootDays.Value);
        Assert.Equal(told, trace.Problems.Count(problem => problem.Code == "W416"));
    }

    /// <summary>
    /// Picked on its first day in bed alone: the bed is free on the next one, after 1 day and 10 bed-foot-days, not after 300.
    /// </summary>
    [Fact]
    public void PickedOnItsFirstDayAlone_LeavesItsBedTheDayAfter() => Assert.Equal(
        10m,
        Farm().Planting("new", "garlic", "bed", 10, "2025-02-01").Pick("2025-02-01", "new", 5)
            .Review().Trace.Enterprises[0].BedFootDays.Value);

    /// <summary>
    /// Two young plantings stand when the crop is picked: what is told names the older one, and the 20 days the crop takes.
    /// </summary>
    [Fact]
    public void HarvestTooSoon_NamesTheOldestThatStood()
    {
        FarmTrace trace = Farm().Planting("second", "garlic", "bed", 10, "2025-06-05", "2025-09-01")
            .Planting("first", "garlic", "other", 10, "2025-06-01", "2025-09-01").PickCrop("2025-06-10", "garlic", 4).Review().Trace;
        Assert.Contains(
            "but first came into its bed only on 2025-06-01 and garlic takes at least 20 days",
            Assert.Single(trace.Problems, problem => problem.Code == "W417").Message,
            StringComparison.Ordinal);
    }

    /// <summary>A harvest of nothing, and nothing culled, that names only its crop is no lot, and none of a planting's first.</summary>
    [Fact]
    public void CropHarvestOfNothing_IsNoLot()
    {
        FarmTrace trace = Farm().Planting("new", "garlic", "bed", 10, "2024-06-01", "2025-06-01").PickCrop("2024-08-01", "garlic", 0)
            .PickCrop("2025-01-10", "garlic", 5).Review().Trace;
        Assert.Equal([5m], trace.Lots.Select(lot => lot.Quantity));
        Assert.Equal(2025, trace.Enterprises[0].CropYear);
    }

    /// <summary>The only planting of the crop takes all of a harvest that names the crop, even where its bed-feet are 0.</summary>
    [Fact]
    public void CropHarvestOfOnePlanting_IsAllOfIt()
    {
        // The checks of the records refuse 0 bed-feet; records made by a program may hold them.
        SeasonReview season = Farm().Planting("new", "garlic", "bed", 0, "2025-04-01", "2025-09-01")
            .PickCrop("2025-07-01", "garlic", 5).Season(2025);
        Assert.Equal(5m, season.PlantingNamed("new").Sums.Harvested);
    }
}
