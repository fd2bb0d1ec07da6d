using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// What is sown over the turn of the year, and what stands when a plan is made, by hand (docs/methods.md, section 20): weeks of picking,
/// hours, trays and what the year after earns. Weeks count from January 1.
/// </summary>
public class SownAndStandingByHandTests
{
    /// <summary>
    /// Garlic of 40 feet each year. 2024: 120 sold, 20 of seed, 4 hours of weeding and 2 of picking at 10: 40, 1 a foot. 2025: 180 sold, 20
    /// of seed, 1 hour of raising, 5 of weeding, 2 of packing: 80, 2 a foot. Mean 1.50; 140 of wages over 14 hours: 10 an hour. Of the year
    /// planned: 1 / 80 of raising, all before the fall it is set in; 9 / 80 of weeding, even over 40 weeks (what came in took no hours),
    /// 11 of them up to its end: 0.0125 + 0.1125 x 11 / 40 = 0.0434375. Seed is 0.50 a foot. It earns 1.50 + 0.50 + 0.434375.
    /// </summary>
    [Fact]
    public void Garlic_ForTheYearAfter_EarnsTheMeanWithTheHoursOfThisYearPutBack()
    {
        PlanSowing garlic = Assert.Single(Of(Garlic(), "Garlic"));
        Assert.Equal((41, 40), (garlic.Week, garlic.WeeksInBed));
        Assert.Equal(0.0434375, garlic.Hours.Sum(), 9);
        Assert.Equal(0.125 - 0.0434375, garlic.HoursBeside, 9);
        Assert.Equal(2.434375, garlic.Later!.Value, 9);
    }

    /// <summary>
    /// Without a log of 2024 that year tells no contribution: 2 of 2025 alone, with 0.025 + 0.125 x 11 / 40 = 0.059375 hours at 10, and
    /// seed.
    /// </summary>
    [Fact]
    public void Garlic_OfASeasonWithoutALog_CountsInNoContribution()
    {
        PlanSowing garlic = Assert.Single(Of(Garlic().Without<LaborRow>(row => row.Date.Year == 2024), "Garlic"));
        Assert.Equal(2.0 + 0.5 + 0.59375, garlic.Later!.Value, 9);
    }

    /// <summary>
    /// Kale in bed on September 5, 2024, day 248: week 35. Picked 105, 113 and 120 days on, in weeks 15, 16 and 17: 20 and 10 lb of 50 feet
    /// in weeks 50 and 51, the 10 lb of week 52 after the year.
    /// </summary>
    [Fact]
    public void Sowing_PickedOverTheTurnOfTheYear_GivesInItWhatIsPickedInIt()
    {
        FarmBuilder farm = Mache()
            .Crop("Kale")
            .Planting("K24", "Kale", "B", 50m, "2024-09-05", "2025-01-31", cropYear: 2024)
            .Pick("2024-12-19", "K24", 20m)
            .Pick("2024-12-27", "K24", 10m)
            .Pick("2025-01-03", "K24", 10m);
        PlanSowing kale = Assert.Single(Of(farm, "Kale"));
        Assert.Equal((35, null), (kale.Week, kale.Later));
        Assert.Equal([(50, 0.4), (51, 0.2)], Told(kale.Yield));
        Assert.Equal(0.2, kale.LaterUnits, 9);
    }

    /// <summary>
    /// Onions in bed on January 2, week 0, sown 28 days before: their 4 weeks in 1 tray of 10 feet, and 2 hours of raising, lie in the
    /// last four weeks of the year, where the next year's are raised. Mache is sown in place: 2 trays that somebody noted are none of it.
    /// </summary>
    [Fact]
    public void Nursery_OfTheFirstWeek_LiesAtTheEndOfTheYear()
    {
        FarmBuilder farm = Mache()
            .Crop("Onions")
            .Bed("C", 10m)
            .Planting("O25", "Onions", "C", 10m, "2025-01-02", "2025-06-05", sown: "2024-12-05", trays: 1m)
            .Pick("2025-06-04", "O25", 10m)
            .Work("2025-01-02", "Ann", 2m, "nursery", planting: "O25");
        PlanSowing onions = Assert.Single(Of(farm, "Onions"));
        Assert.Equal((0, 4, 0.1, 0.0), (onions.Week, onions.NurseryWeeks, onions.TraysAFoot, onions.Trays.Sum()));
        Assert.Equal([(48, 0.05), (49, 0.05), (50, 0.05), (51, 0.05)], Told(onions.Hours));

        PlanSowing mache = Assert.Single(Of(Mache(), "Mache"));
        Assert.Equal((0, 0, 0.0), (mache.Week, mache.NurseryWeeks, mache.TraysAFoot));
    }

    /// <summary>
    /// Mache came in on the first day of the year planned: that of week 0 isn't sown once more. Where two plantings have come in, in weeks
    /// 9 and 19, the second on the closing date itself, what is sown up to week 19 has been.
    /// </summary>
    [Fact]
    public void Sowings_DuringTheYear_AreThoseAfterTheLastThatCameIn()
    {
        FarmBuilder farm = Mache().AsOf("2026-01-05").Planting("M26", "Mache", "A", 50m, "2026-01-01", "2026-03-10", cropYear: 2026);
        Assert.Equal("M26", Assert.Single(Assert.Single(Of(farm, "Mache")).Standing).Planting);

        FarmBuilder two = Mache()
            .AsOf("2026-05-20")
            .Crop("Beets")
            .Planting("B1", "Beets", "B", 40m, "2025-04-30", "2025-07-09")
            .Planting("B2", "Beets", "B", 40m, "2025-06-11", "2025-08-20")
            .Pick("2025-07-09", "B1", 40m)
            .Pick("2025-08-20", "B2", 40m)
            .Planting("M26", "Mache", "A", 50m, "2026-03-05", "2026-04-10", cropYear: 2026)
            .Planting("N26", "Mache", "A", 50m, "2026-05-20", "2026-06-10", cropYear: 2026);
        Assert.Equal([20, 21, 22, 23], Of(two, "Beets").Select(sowing => sowing.Week));
    }

    /// <summary>
    /// Mache gives 8 weeks on, in one week. What came in on December 4 (28 days before: week -4) leaves bed A on February 26, 84 days on,
    /// and B on March 5, 91: 13 weeks. What came in on December 11 is to leave on January 15, 5 weeks on.
    /// </summary>
    [Fact]
    public void Standing_LeavesWithItsLastRow()
    {
        FarmBuilder farm = Mache()
            .Planting("M26", "Mache", "A", 20m, "2025-12-04", "2026-02-26", cropYear: 2026)
            .Planting("M26", "Mache", "B", 20m, "2025-12-04", "2026-03-05", cropYear: 2026)
            .Planting("N26", "Mache", "B", 10m, "2025-12-11", "2026-01-15", cropYear: 2026);
        Assert.Equal(
            [(-4, 13), (-3, 5)],
            Of(farm, "Mache").Where(one => one.Standing.Count > 0).Select(one => (one.Week, one.WeeksInBed))
        );
    }

    /// <summary>
    /// Mache of December 11, week -3, is picked in week 5, February 5 to 11, 0.50 a foot. It leaves on January 29, the first day of week 4:
    /// weeks of picking are medians, so it is picked in week 3, two weeks early. With January 22 it would be three: nothing is picked, and
    /// all of it lost. Without a day it stands 10 weeks. Gone on the first day of the year it is no part of it.
    /// </summary>
    [Theory]
    [InlineData("2026-01-29", 7, 3, 0.0)]
    [InlineData("2026-01-22", 6, -1, 0.5)]
    [InlineData("2026-01-02", 4, -1, 0.5)]
    [InlineData(null, 10, 5, 0.0)]
    public void Standing_ThatLeavesBeforeItIsPicked_IsPickedWhereItIsNearAndElseLost(string? leaves, int weeks, int picked, double lost)
    {
        PlanSowing mache = Assert.Single(
            Of(Mache().Planting("N26", "Mache", "B", 10m, "2025-12-11", leaves, cropYear: 2026), "Mache"),
            one => one.Standing.Count > 0
        );
        Assert.Equal(weeks, mache.WeeksInBed);
        Assert.Equal(picked < 0 ? [] : [(picked, 0.5)], Told(mache.Yield));
        Assert.Equal(lost, mache.Lost?.Units ?? 0.0, 9);
    }

    [Fact]
    public void Standing_ThatLeftBeforeTheYear_IsNoPartOfIt() =>
        Assert.DoesNotContain(
            Of(Mache().Planting("N26", "Mache", "B", 10m, "2025-12-11", "2026-01-01", cropYear: 2026), "Mache"),
            one => one.Standing.Count > 0
        );

    /// <summary>
    /// 5 hours of growing on 50 feet, even over 10 weeks: 0.01 a week and foot. Of N26's, of December 11, those of weeks -3 to -1 are done:
    /// 0.03; it leaves with week 1: 0.02. Its 10 feet then take 0.5 hours and give nothing, and the plan tells of the 5 lb lost; its row
    /// has the day it leaves.
    /// </summary>
    [Fact]
    public void Standing_ThatLeavesBeforeItIsPicked_IsTold()
    {
        FarmBuilder farm = Mache()
            .Work("2025-01-16", "Ann", 5m, "weeding", planting: "M25")
            .Planting("N26", "Mache", "B", 10m, "2025-12-11", "2026-01-15", cropYear: 2026);
        FarmReview review = FarmReview.Of(farm.Link());
        SeasonReview season = review.Season(2025);
        PlanModel model = PlanFacts.Of(review, SeasonCosts.Of(season));
        PlanSowing mache = Assert.Single(model.Sowings, one => one.Standing.Count > 0);
        Assert.Equal([(0, 0.01), (1, 0.01)], Told(mache.Hours));
        Assert.Equal(0.03, mache.HoursBeside, 9);

        PlanDraft draft = LikeLastYear.Of(season, model);
        DraftPlanting row = Assert.Single(draft.Plantings, one => one.Planting == "N26");
        Assert.Equal((0m, 0.5m, new DateOnly(2026, 1, 15)), (row.Yield, row.Hours, row.Out));
        PlanProblem told = Assert.Single(PlanOutlook.Of(season, model, draft).Problems, one => one.Kind == PlanProblemKind.LeavesEarly);
        Assert.Equal(("Mache", new DateOnly(2026, 1, 15), 5m, "lb", "N26"),
            (told.Where, told.Day, told.Short, told.Unit, Assert.Single(told.Plantings)));
        PlanDraft without = draft with { Plantings = [] };
        Assert.DoesNotContain(PlanOutlook.Of(season, model, without).Problems, one => one.Kind == PlanProblemKind.LeavesEarly);
    }

    /// <summary>
    /// Rhubarb in three beds: one stays; one leaves on April 16, day 105, with the end of week 14; one on the first day of the year
    /// planned: of that nothing stands in it. 30 lb of each of weeks 14 and 15 of 60 feet, 0.50 a foot; what leaves gives none in week 15.
    /// </summary>
    [Fact]
    public void Perennials_ThatLeave_GiveUpToThatDay()
    {
        FarmBuilder farm = Mache()
            .Perennial("Rhubarb")
            .Planting("R1", "Rhubarb", "A", 20m, "2022-04-01", "2026-04-16")
            .Planting("R2", "Rhubarb", "A", 20m, "2022-04-01")
            .Planting("R3", "Rhubarb", "B", 20m, "2022-04-01", "2026-01-01")
            .Pick("2025-04-15", "R1", 10m).Pick("2025-04-15", "R2", 10m).Pick("2025-04-15", "R3", 10m)
            .Pick("2025-04-16", "R1", 10m).Pick("2025-04-16", "R2", 10m).Pick("2025-04-16", "R3", 10m);
        PlanSowing[] rhubarb = Of(farm, "Rhubarb");
        Assert.Equal([("R2", 53), ("R1", 16)], rhubarb.Select(one => (Assert.Single(one.Standing).Planting, one.WeeksInBed)));
        Assert.Equal([(14, 0.5), (15, 0.5)], Told(rhubarb[0].Yield));
        Assert.Equal([(14, 0.5)], Told(rhubarb[1].Yield));
        Assert.Equal((null, new LostPicking(new DateOnly(2026, 4, 16), 0.5)), (rhubarb[0].Lost, rhubarb[1].Lost));
    }

    private static IEnumerable<(int Week, double Value)> Told(IReadOnlyList<double> weeks) =>
        weeks.Select((value, week) => (week, Math.Round(value, 9))).Where(one => one.Item2 != 0.0);

    private static PlanSowing[] Of(FarmBuilder farm, string crop) => PlanByHandTests.SowingsOf(PlanByHandTests.ModelOf(farm), crop);

    /// <summary>50 feet of mache from January 2, picked 58 days on, 8 weeks; a log and bills in both seasons.</summary>
    private static FarmBuilder Mache() =>
        Farm()
            .Crop("Mache")
            .Planting("M25", "Mache", "A", 50m, "2025-01-02", "2025-03-10", trays: 2m)
            .Pick("2025-03-01", "M25", 25m)
            .Sell("2025-03-02", "Mache", "Market", 25m, price: 3m)
            .Spend("2024-06-01", 9m, "fuel")
            .Spend("2025-06-01", 9m, "fuel")
            .Work("2024-06-01", "Ann", 1m, "office")
            .Work("2025-06-01", "Ann", 1m, "office");

    private static FarmBuilder Garlic() =>
        Farm()
            .Crop("Garlic")
            .Planting("G24", "Garlic", "A", 40m, "2023-10-16", "2024-07-20", cropYear: 2024)
            .Planting("G25", "Garlic", "B", 40m, "2024-10-16", "2025-07-20", cropYear: 2025)
            .Pick("2024-07-18", "G24", 60m)
            .Pick("2025-07-18", "G25", 60m)
            .Sell("2024-07-20", "Garlic", "Market", 60m, price: 2m)
            .Sell("2025-07-20", "Garlic", "Market", 60m, price: 3m)
            .Spend("2024-01-10", 20m, "seed", planting: "G24")
            .Spend("2025-01-10", 20m, "seed", planting: "G25")
            .Work("2024-05-15", "Ann", 4m, "weeding", planting: "G24")
            .Work("2024-07-18", "Ann", 2m, "harvest", planting: "G24")
            .Work("2025-01-14", "Ann", 1m, "nursery", planting: "G25")
            .Work("2025-05-14", "Ann", 5m, "weeding", planting: "G25")
            .Work("2025-07-18", "Ann", 2m, "pack", planting: "G25");

    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 10m })
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("B")
            .Channel("Market", ChannelKind.Market)
            .Worker("Ann", WorkerKind.Owner);
}
