using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Hours of two seasons with several plantings, weeks and workers, by hand (docs/methods.md, section 20). Kale: 50 feet in 2024, 60 and 40
/// in 2025, all from May 1 (week 17) to July 31 (91 days, 13 weeks), 100 lb of each picked ten weeks on.
/// </summary>
public class WorkOfSeveralByHandTests
{
    /// <summary>
    /// Raising: 2 of 2024, 3 + 1 of 2025, 6 over 150 feet. Growing: 6, 10 and 5, and 3 of the beds' common work on the 100 feet of 2025:
    /// 24. All of it logged by crop lies in the week of planting, which counts 20 of 20 + 12; general overhead's in July are no weeding.
    /// No day of sowing is on record: the week before the bed counts all of raising.
    /// </summary>
    [Fact]
    public void Hours_OfABedFoot_AreThoseOfAllPlantingsOverAllTheirFeet()
    {
        PlanModel model = PlanByHandTests.ModelOf(Farm());
        PlanSowing kale = Assert.Single(model.Sowings);
        Assert.Equal((17, 13, 100.0), (kale.Week, kale.WeeksInBed, kale.Today));
        Assert.Equal(6.0 / 150.0, kale.Hours[16], 9);
        Assert.Equal(24.0 / 150.0 * 20.0 / 32.0, kale.Hours[17], 9);
        Assert.All(Enumerable.Range(18, 12), week => Assert.Equal(24.0 / 150.0 / 32.0, kale.Hours[week], 9));
        Assert.Equal((6.0 + 24.0) / 150.0, kale.Hours.Sum(), 9);
    }

    /// <summary>
    /// Picking: 5 hours in 2024; 3 + 4 and 6 in 2025: 18 for 300 lb. The office's 7 for kale and the 40 for general overhead are no work of
    /// a pound of it.
    /// </summary>
    [Fact]
    public void Hours_OfAPound_AreThoseOfAllPlantingsOverAllTheyGave() =>
        Assert.Equal(18.0 / 300.0, PlanByHandTests.ModelOf(Farm()).Crops[0].HandlingHours, 9);

    /// <summary>
    /// Whatever is grown: 40 growing hours of general overhead and the 7 of the office in week 27, one on December 31, day 365, which the
    /// last week holds as well; means of two seasons.
    /// </summary>
    [Fact]
    public void Hours_ThatComeWhateverIsGrown_AreTheMeanOfTheSeasons()
    {
        IReadOnlyList<double> come = PlanByHandTests.ModelOf(Farm()).Hours.Fixed;
        Assert.Equal([(27, 23.5), (51, 0.5)], come.Select((hours, week) => (week, Math.Round(hours, 9))).Where(one => one.Item2 != 0.0));
    }

    /// <summary>
    /// Ann's weeks of the first half: 2 and 6 of 2024; 3, 4 and 15 of 2025. The 90th percentile of 2, 3, 4, 6, 15 lies at 0.9 x 4 = 3.6:
    /// 6 + 0.6 x 9. Of the second half 1 and 3 + 40 + 7: 1 + 0.9 x 49.
    /// </summary>
    [Fact]
    public void Hours_ThereAre_LieBetweenTheWeeksAroundTheir90thPercentile()
    {
        PlanHours hours = PlanByHandTests.ModelOf(Farm()).Hours;
        Assert.Equal((11.4, 45.1), (Math.Round(hours.Own[0], 9), Math.Round(hours.Own[51], 9)));
    }

    /// <summary>
    /// The last season paid 4 hours at 20 and 6 at 30, and a tenth on top: 286 for 10; the one before 5 at 18. The most hired in a week: 6.
    /// </summary>
    [Fact]
    public void HiredHour_CostsTheMeanOfAllThatTheLastSeasonPaid()
    {
        PlanHours hours = PlanByHandTests.ModelOf(Farm()).Hours;
        Assert.Equal(28.6, hours.HiredCost, 9);
        Assert.All(hours.Hired, hired => Assert.Equal(6.0, hired));
    }

    /// <summary>Hours were logged in 2025 alone, and okra grown in 2024 alone: nothing is known of its hours.</summary>
    [Fact]
    public void Hours_OfACropOfASeasonWithoutALog_AreNone()
    {
        PlanModel model = PlanByHandTests.ModelOf(
            PlanByHandTests
                .Farm()
                .Crop("Okra")
                .Planting("O24", "Okra", "B", 50m, "2024-05-15", "2024-08-01")
                .Pick("2024-07-15", "O24", 40m)
                .Sell("2024-07-16", "Okra", "Market", 40m, price: 3m)
        );
        Assert.All(Assert.Single(PlanByHandTests.SowingsOf(model, "Okra")).Hours, hours => Assert.Equal(0.0, hours));
        Assert.Equal(0.0, model.Crops.Single(crop => crop.Name == "Okra").HandlingHours);
    }

    /// <summary>
    /// Cress stands one week and is cut at its end: in every week as much came in as stood, so nothing tells the first week's hours from
    /// another's, and it counts as one: 5 hours of 100 feet, half in each of the two weeks to the end of picking.
    /// </summary>
    [Fact]
    public void FirstWeek_WhereNothingTellsItFromOthers_CountsAsOne() =>
        Hours(
            Log("2025-05-08", "2025-05-08", (0, 5m)),
            (17, 0.025),
            (18, 0.025)
        );

    /// <summary>
    /// No hours in the first week, 2 in each of the 12 after: least squares would give the first week none. It counts as one all the same:
    /// 24 hours of 100 feet over 13 weeks.
    /// </summary>
    [Fact]
    public void FirstWeek_ThatTookLessThanOthers_CountsAsOne() =>
        Hours(
            Log("2025-07-31", "2025-07-24", [.. Enumerable.Range(1, 12).Select(week => (week, 2m))]),
            [.. Enumerable.Range(17, 13).Select(week => (week, 0.24 / 13.0))]
        );

    /// <summary>
    /// 10 hours in the week 100 feet come in, none when 100 more come in beside them a week later: least squares give a week's weeding less
    /// than nothing (1,000 x 20,000 - 1,000 x 30,000), so the first counts 20 of 32. 10 hours of 200 feet.
    /// </summary>
    [Fact]
    public void FirstWeek_WhereWeedingWouldTakeLessThanNothing_CountsTwenty()
    {
        FarmBuilder farm = Log("2025-07-31", "2025-07-24", (0, 10m))
            .Planting("Late", "Cress", "B", 100m, "2025-05-08", "2025-08-07")
            .Pick("2025-07-31", "Late", 100m);
        PlanSowing[] cress = [.. PlanByHandTests.ModelOf(farm).Sowings];
        Assert.Equal([(17, 13), (18, 13)], cress.Select(sowing => (sowing.Week, sowing.WeeksInBed)));
        Assert.Equal(0.05 * 20.0 / 32.0, cress[0].Hours[17], 9);
        Assert.Equal(0.05 / 32.0, cress[0].Hours[29], 9);
    }

    private static void Hours(FarmBuilder farm, params (int Week, double Hours)[] expected) =>
        Assert.Equal(
            expected.Select(one => (one.Week, Math.Round(one.Hours, 9))),
            Assert
                .Single(PlanByHandTests.ModelOf(farm).Sowings)
                .Hours.Select((hours, week) => (week, Math.Round(hours, 9)))
                .Where(one => one.Item2 != 0.0)
        );

    /// <summary>100 feet of one crop in bed on May 1, with growing hours so many weeks on.</summary>
    private static FarmBuilder Log(string outOfBed, string picked, params (int Week, decimal Hours)[] worked)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = 10m })
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("B")
            .Crop("Cress")
            .Channel("Market", ChannelKind.Market)
            .Worker("Ann", WorkerKind.Owner)
            .Spend("2025-04-01", 10m, "seed")
            .Planting("C25", "Cress", "A", 100m, "2025-05-01", outOfBed)
            .Pick(picked, "C25", 100m)
            .Sell("2025-08-01", "Cress", "Market", 100m, price: 2m);
        foreach ((int week, decimal hours) in worked)
        {
            farm.Work($"{new DateOnly(2025, 5, 1).AddDays(7 * week):yyyy-MM-dd}", "Ann", hours, "grow", planting: "C25");
        }

        return farm;
    }

    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 10m, PayrollBurdenPercent = 10m })
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("B")
            .Crop("Kale")
            .Channel("Market", ChannelKind.Market)
            .Worker("Ann", WorkerKind.Owner)
            .Worker("Bo", WorkerKind.Hired, 18m)
            .Worker("Bo", WorkerKind.Hired, 20m, "2025-01-01")
            .Worker("Cy", WorkerKind.Hired, 30m)
            .Pool("Beds", "bed-feet")
            .Planting("K24", "Kale", "A", 50m, "2024-05-01", "2024-07-31")
            .Planting("K25a", "Kale", "A", 60m, "2025-05-01", "2025-07-31")
            .Planting("K25b", "Kale", "B", 40m, "2025-05-01", "2025-07-31")
            .Pick("2024-07-10", "K24", 100m)
            .Pick("2025-07-10", "K25a", 100m)
            .Pick("2025-07-10", "K25b", 100m)
            .Sell("2024-07-12", "Kale", "Market", 100m, price: 2m)
            .Sell("2025-07-12", "Kale", "Market", 200m, price: 2m)
            .Spend("2024-04-20", 20m, "seed", crop: "Kale")
            .Spend("2025-04-20", 20m, "seed", crop: "Kale")
            .Work("2024-04-18", "Ann", 2m, "seeding", planting: "K24")
            .Work("2024-05-01", "Ann", 6m, "grow", planting: "K24")
            .Work("2024-07-10", "Bo", 5m, "harvest", planting: "K24")
            .Work("2025-04-10", "Ann", 3m, "grow", pool: "Beds")
            .Work("2025-04-17", "Ann", 3m, "seeding", planting: "K25a")
            .Work("2025-04-17", "Ann", 1m, "seeding", planting: "K25b")
            .Work("2025-05-01", "Ann", 10m, "grow", planting: "K25a")
            .Work("2025-05-01", "Ann", 5m, "grow", planting: "K25b")
            .Work("2025-07-10", "Ann", 3m, "harvest", planting: "K25a")
            .Work("2025-07-10", "Bo", 4m, "harvest", planting: "K25a")
            .Work("2025-07-17", "Cy", 6m, "harvest", planting: "K25b")
            .Work("2025-07-10", "Ann", 40m, "grow", pool: "general overhead")
            .Work("2025-07-10", "Ann", 7m, "office", crop: "Kale")
            .Work("2025-12-31", "Ann", 1m, "office");
}
