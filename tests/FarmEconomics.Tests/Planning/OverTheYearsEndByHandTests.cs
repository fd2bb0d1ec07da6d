using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Kale that is first picked within the year and stands past its end, by hand: 50 feet from September 5, 2024 (week 35), picked 20, 10 and
/// 10 lb in weeks 50, 51 and 52, out on January 31, 148 days on: 22 weeks, 17 of them within the year. 11 hours of weeding, 0.22 a foot and
/// 0.01 a week; 4 of picking, 0.1 a lb; 10 of seed, 0.20 a foot. 40 lb sold at 6 bring 240; less 10 of seed and 150 of wages 80, 1.60 a
/// foot.
/// </summary>
public class OverTheYearsEndByHandTests
{
    /// <summary>
    /// A quarter of the harvest falls after the year: it earns a quarter of 1.60 + 0.20 of seed + 2.20 of weeding, 1.00, less the 5 weeks
    /// of weeding left for then, 0.50. So much are its 0.2 lb at 6, 1.20, less 0.02 hours of picking and 0.05 of weeding at 10.
    /// </summary>
    [Fact]
    public void Sowing_PickedOverTheTurnOfTheYear_EarnsWhatIsPickedAfterIt()
    {
        PlanSowing kale = Kale(Model());
        Assert.Equal((35, 22), (kale.Week, kale.WeeksInBed));
        Assert.Equal(0.17, kale.Hours.Sum(), 9);
        Assert.Equal(0.05, kale.HoursBeside, 9);
        Assert.Equal(0.2, kale.LaterUnits, 9);
        Assert.Equal(0.2, kale.Cost, 9);
        Assert.Equal(0.5, kale.EarnsAfter, 9);
    }

    /// <summary>
    /// The row of 50 feet holds the whole: 40 lb, 11 + 4 hours, 10 of seed, in bed from September 3, 2026 (week 35) to February 4. Of its
    /// 15 hours the year has 8.5 of weeding and 3 of picking: 11.5.
    /// </summary>
    [Fact]
    public void Row_HoldsTheWhole_AndTheYearItsPart()
    {
        SeasonReview season = FarmReview.Of(Farm().Link()).Season(2025);
        PlanModel model = Model();
        int crop = model.Crops.ToList().FindIndex(one => one.Name == "Kale");
        double[] feet = [.. model.Sowings.Select(one => one.Crop == crop ? 50.0 : 0.0)];
        Dictionary<(int, int), double> picked = new() { [(crop, 50)] = 20.0, [(crop, 51)] = 10.0 };
        PlanDraft draft = DraftMaker.Of(season.Records, model, feet, PlanQuantities.OfSales(picked, []));

        DraftPlanting row = Assert.Single(draft.Plantings);
        Assert.Equal((2026, 40m, 15m, 10m), (row.CropYear, row.Yield, row.Hours, row.Cost));
        Assert.Equal((new DateOnly(2026, 9, 3), new DateOnly(2027, 2, 4)), (row.In, row.Out));
        PlanOutlook outlook = PlanOutlook.Of(season, model, draft);
        Assert.Equal(11.5m, outlook.Weeks.Sum(week => week.Hours) - (decimal)model.Hours.Fixed.Sum(), 3);

        // Out with the year's last day, it is all of the year.
        PlanDraft within = draft with { Plantings = [row with { Out = new DateOnly(2027, 1, 1) }] };
        Assert.Equal(15m, PlanOutlook.Of(season, model, within).Weeks.Sum(week => week.Hours) - (decimal)model.Hours.Fixed.Sum(), 3);
    }

    [Fact]
    public void Model_SaysThatWhatIsPickedAfterTheYearHasNoSales() =>
        Assert.Contains(
            Model().NotChecked,
            one => one.StartsWith("sales of what is picked of Kale after the year", StringComparison.Ordinal)
        );

    /// <summary>
    /// Of 3 units a foot 1 comes after the year and earns 4; the 2 within it bring nothing. A third of each foot counts as picked after it,
    /// against the 10 feet of the crop this year: 30 feet, 120.
    /// </summary>
    [Fact]
    public void Mix_HoldsWhatIsPickedAfterTheYearToThisYearsLength()
    {
        PlanModel farm = SmallFarm.Of();
        PlanSowing sowing = farm.Sowings[0] with
        {
            Yield = SmallFarm.At((SmallFarm.SoldWeek, 2.0)),
            LaterUnits = 1.0,
            EarnsAfter = 4.0,
            Cost = 0.0,
            Today = 10.0,
        };
        IReadOnlyList<IReadOnlyList<PlanStep>> nothing = [.. Enumerable.Range(0, PlanModel.Weeks).Select(_ => (IReadOnlyList<PlanStep>)[])];
        BestMix mix = BestMix.Of(
            farm with { Sowings = [sowing], Crops = [farm.Crops[0] with { Steps = nothing }] },
            Programs.Solver
        );
        Programs.Near([30.0], mix.Best!.Feet, 1e-5);
        Programs.Near(120.0, mix.Best.Worth, 1e-4);
    }

    private static PlanModel Model()
    {
        FarmReview review = FarmReview.Of(Farm().Link());
        return PlanFacts.Of(review, SeasonCosts.Of(review.Season(2025)));
    }

    private static PlanSowing Kale(PlanModel model) => Assert.Single(model.Sowings, one => model.Crops[one.Crop].Name == "Kale");

    private static FarmBuilder Farm() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 10m })
            .AsOf("2025-12-31")
            .Bed("A")
            .Bed("B")
            .Channel("Market", ChannelKind.Market)
            .Worker("Ann", WorkerKind.Owner)
            .Crop("Kale")
            .Crop("Mache")
            .Planting("K24", "Kale", "B", 50m, "2024-09-05", "2025-01-31", cropYear: 2024)
            .Pick("2024-12-19", "K24", 20m)
            .Pick("2024-12-27", "K24", 10m)
            .Pick("2025-01-03", "K24", 10m)
            .Sell("2024-12-20", "Kale", "Market", 20m, price: 6m)
            .Sell("2024-12-28", "Kale", "Market", 10m, price: 6m)
            .Sell("2025-01-04", "Kale", "Market", 10m, price: 6m)
            .Spend("2024-01-10", 10m, "seed", planting: "K24")
            .Work("2024-06-01", "Ann", 1m, "office")
            .Work("2024-10-15", "Ann", 11m, "weeding", planting: "K24")
            .Work("2024-12-19", "Ann", 4m, "harvest", planting: "K24")
            .Planting("M25", "Mache", "A", 50m, "2025-01-02", "2025-03-10")
            .Pick("2025-03-01", "M25", 25m)
            .Sell("2025-03-02", "Mache", "Market", 25m, price: 3m)
            .Spend("2025-01-02", 5m, "seed", planting: "M25")
            .Work("2025-03-01", "Ann", 1m, "harvest", planting: "M25");
}
