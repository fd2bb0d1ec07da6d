using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What several plantings of a crop say together, by hand (docs/methods.md, section 20): beets of two seasons in two weeks, one of which
/// gave nothing; chard of two beds; okra that never gave any.
/// </summary>
public class SowingsByHandTests
{
    // Worked out for every test, not kept: a mutation tester sees only what happens while a test runs.
    private static PlanSowing[] Of(string crop) => PlanByHandTests.SowingsOf(PlanByHandTests.ModelOf(Farm()), crop);

    private static PlanSowing Beets(int week) => Of("Beets").Single(sowing => sowing.Week == week);

    /// <summary>
    /// In bed on day 119 (week 17) of both years and on day 161 (week 23): a sowing for every week between, each with its bed-feet of 2025.
    /// </summary>
    [Fact]
    public void Sowings_OfACrop_StandForEveryWeekFromItsEarliestToItsLatest()
    {
        PlanSowing[] beets = Of("Beets");
        Assert.Equal([17, 18, 19, 20, 21, 22, 23], beets.Select(sowing => sowing.Week));
        Assert.Equal([45.0, 0.0, 0.0, 0.0, 0.0, 0.0, 55.0], beets.Select(sowing => sowing.Today));
    }

    /// <summary>
    /// Kale came in on March 12, April 23 and June 4, weeks 10, 16 and 22: from one to the next are six weeks, in which it may be sown; the
    /// first and the last lie twelve apart.
    /// </summary>
    [Fact]
    public void Sowings_BetweenThreePlantings_LieInTheGapsBetweenNeighbors()
    {
        FarmBuilder farm = Farm().Crop("Kale");
        foreach ((string name, string day) in new[] { ("K1", "2025-03-12"), ("K2", "2025-04-23"), ("K3", "2025-06-04") })
        {
            farm.Planting(name, "Kale", "A", 1m, day, "2025-09-30").Pick("2025-09-01", name, 1m);
        }

        PlanSowing[] kale = PlanByHandTests.SowingsOf(PlanByHandTests.ModelOf(farm), "Kale");
        Assert.Equal(Enumerable.Range(10, 13), kale.Select(sowing => sowing.Week));
    }

    /// <summary>
    /// 2024: 25 + 190 lb of 60 + 40 feet, 2.15; 2025: 80 + 0 of 45 + 55, 0.80; the mean of the seasons is 1.475. Within two weeks of week
    /// 17 stand 25 + 80 lb of 60 + 45 feet, 1 lb a foot; of week 23 190 + 0 of 40 + 55, 2 lb; two plantings count 2 / (2 + 4), a third.
    /// Three weeks from either no planting is near.
    /// </summary>
    [Theory]
    [InlineData(17, 1.475 + ((1.0 - 1.475) / 3.0))]
    [InlineData(19, 1.475 + ((1.0 - 1.475) / 3.0))]
    [InlineData(20, 1.475)]
    [InlineData(21, 1.475 + ((2.0 - 1.475) / 3.0))]
    [InlineData(23, 1.475 + ((2.0 - 1.475) / 3.0))]
    public void Yield_OfAWeek_LeansOnThePlantingsWithinTwoWeeks(int week, double yield) =>
        Assert.Equal(yield, Beets(week).Yield.Sum(), 9);

    /// <summary>
    /// First picked 10, 9 and 10 weeks on (a day on which all was culled is none): 10. Picked in 1, 2 and 3 weeks: 2, what came later with
    /// the last. First weeks 25 + 63 + 30 = 118 of 295 lb, 0.4. In bed 10, 10, 12 and 5 weeks, the middle 10; but picking ends in the 12th.
    /// </summary>
    [Fact]
    public void Picking_IsTheMedianOfThePlantingsThatGave()
    {
        PlanSowing beets = Beets(20);
        Assert.Equal(12, beets.WeeksInBed);
        Assert.Equal(
            [(30, 0.59), (31, 0.885)], // 0.4 and 0.6 of 1.475
            beets.Yield.Select((units, week) => (week, Math.Round(units, 9))).Where(one => one.Item2 != 0.0)
        );
    }

    /// <summary>
    /// 3 + 1 + 5 + 1 trays over 60 + 40 + 45 + 55 feet. Two weeks in the nursery before three of the four plantings, none before the other.
    /// </summary>
    [Fact]
    public void Trays_AreThoseOfAllPlantingsOverTheirFeet()
    {
        PlanSowing beets = Beets(17);
        Assert.Equal(2, beets.NurseryWeeks);
        Assert.Equal(
            [(15, 0.05), (16, 0.05)],
            beets.Trays.Select((trays, week) => (week, Math.Round(trays, 9))).Where(one => one.Item2 != 0.0)
        );
    }

    /// <summary>
    /// Chard came into D on May 14 (day 133: week 19), sown April 30, and into E two weeks later, sown a week later; it left D on July 9,
    /// E on August 6. From the first day in to the last one out: 84 days, 12 weeks; 14 days in the nursery; picked July 2, 49 days on.
    /// </summary>
    [Fact]
    public void Planting_InTwoBeds_StandsFromItsFirstDayInToItsLastOut()
    {
        PlanSowing chard = Assert.Single(Of("Chard"));
        Assert.Equal((19, 12, 2, 40.0), (chard.Week, chard.WeeksInBed, chard.NurseryWeeks, chard.Today));
        Assert.Equal((26, 2.0), (chard.Yield.ToList().FindIndex(units => units > 0.0), chard.Yield.Sum()));
    }

    /// <summary>Okra stood three weeks and gave nothing: that is what is expected of it.</summary>
    [Fact]
    public void Crop_ThatGaveNothing_IsExpectedToGiveNothing()
    {
        PlanSowing okra = Assert.Single(Of("Okra"));
        Assert.Equal((19, 3), (okra.Week, okra.WeeksInBed));
        Assert.All(okra.Yield, units => Assert.Equal(0.0, units));
    }

    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 15m })
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("B")
            .Bed("C")
            .Bed("D")
            .Bed("E")
            .Crop("Beets")
            .Crop("Chard")
            .Crop("Okra")
            .Channel("Market", ChannelKind.Market)
            .Worker("Ann", WorkerKind.Owner)
            .Spend("2024-05-01", 9m, "seed")
            .Spend("2025-05-01", 9m, "seed")
            .Planting("B24a", "Beets", "A", 60m, "2024-04-29", "2024-07-08", sown: "2024-04-15", trays: 3m)
            .Planting("B24b", "Beets", "B", 40m, "2024-06-10", "2024-08-19", sown: "2024-05-27", trays: 1m)
            .Planting("B25a", "Beets", "A", 45m, "2025-04-30", "2025-07-23", sown: "2025-04-16", trays: 5m)
            .Planting("B25b", "Beets", "C", 55m, "2025-06-11", "2025-07-16", trays: 1m)
            .Planting("C25", "Chard", "D", 20m, "2025-05-14", "2025-07-09", sown: "2025-04-30")
            .Planting("C25", "Chard", "E", 20m, "2025-05-28", "2025-08-06", sown: "2025-05-07")
            .Planting("O25", "Okra", "B", 30m, "2025-05-14", "2025-06-04")
            .Pick("2024-06-10", "B24a", 0m, culled: 5m)
            .Pick("2024-07-08", "B24a", 25m)
            .Pick("2024-08-12", "B24b", 63m)
            .Pick("2024-08-19", "B24b", 127m)
            .Pick("2025-07-09", "B25a", 30m)
            .Pick("2025-07-16", "B25a", 20m)
            .Pick("2025-07-23", "B25a", 30m)
            .Pick("2025-07-02", "C25", 80m)
            .Sell("2024-08-20", "Beets", "Market", 215m, price: 2m)
            .Sell("2025-07-24", "Beets", "Market", 80m, price: 2m)
            .Sell("2025-07-03", "Chard", "Market", 80m, price: 2m)
            .Work("2025-05-14", "Ann", 4m, "grow", crop: "Beets");
}
