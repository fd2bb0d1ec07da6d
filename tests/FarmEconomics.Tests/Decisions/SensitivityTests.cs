using CsCheck;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Generators;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

public class SensitivityTests
{
    private static readonly long Farms = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms) ? farms : 200;

    /// <summary>Four crop-years of money that every cost behavior has a part in.</summary>
    private static FarmBuilder SmallFarm() => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31")
        .Bed("One").Bed("Two").Channel("stall", ChannelKind.Market, fee: 5m).Worker("me", WorkerKind.Owner)
        .Task("weed", Stage.Grow).Task("pick", Stage.Harvest).Task("office", Stage.Overhead)
        .Crop("Beets").Planting("B1", "Beets", "One", 100m, "2025-05-01", "2025-08-01").Pick("2025-07-01", "B1", 200m).Sell("2025-07-02", "Beets", "stall", 200m, price: 2m)
        .Crop("Kale").Planting("K1", "Kale", "Two", 100m, "2025-05-01", "2025-09-01").Pick("2025-07-01", "K1", 150m).Sell("2025-07-02", "Kale", "stall", 150m, price: 4m)
        .Work("2025-06-01", "me", 5m, "weed", crop: "Beets").Work("2025-07-01", "me", 4m, "pick", crop: "Beets").Work("2025-07-01", "me", 6m, "pick", crop: "Kale")
        .Work("2025-07-20", "me", 9m, "office").Spend("2025-05-01", 30m, "seed", crop: "Beets").Spend("2025-05-01", 12m, "seed", crop: "Kale").Spend("2025-03-01", 100m, "rent");

    private static IEnumerable<SeasonReview> Seasons(FarmReview review) => review.CropYears.Select(year => review.Season(year));

    [Fact]
    public void CostLines_EveryBudgetOfARandomFarm_SumToItsTotalCostByBehavior() => RandomFarm.Gen.Sample(
        farm =>
        {
            foreach (SeasonReview season in Seasons(farm.Farm.Review()))
            {
                SeasonCosts costs = SeasonCosts.Of(season);
                foreach (EnterpriseBudget budget in season.Plantings.Concat(season.Crops).Append(season.Farm))
                {
                    IReadOnlyList<CostLine> lines = costs.Of(budget);
                    Assert.Equal(budget.TotalCost.Amount, lines.Sum(line => line.Amount.Amount));
                    foreach (CostDriver behavior in Enum.GetValues<CostDriver>())
                    {
                        // Labor of a pool that mixes stages is split into cents here and not in the budget: a cent per charge at most.
                        Close.To(budget.Sums.CostByBehavior[(int)behavior], lines.Where(line => line.VariesWith == behavior).Sum(line => line.Amount.Amount), 0.01m * (1 + (budget.Enterprises.Count * season.Pools.Count)));
                    }
                }
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    [Fact]
    public void Grid_AtFactorsOneAndOne_IsTheBudgetToTheCent() => RandomFarm.Gen.Sample(
        farm =>
        {
            foreach (SeasonReview season in Seasons(farm.Farm.Review()))
            {
                SeasonCosts costs = SeasonCosts.Of(season);
                foreach (EnterpriseBudget budget in season.Crops.Append(season.Farm))
                {
                    SensitivityGrid grid = SensitivityGrid.Of(costs.Model(budget), [0.5m, 1m, 2m], [0.8m, 1m]);
                    Assert.Equal(budget.NetReturn, grid.NetReturn[1][1]);
                    Assert.Equal((budget.GrossMargin / budget.BedFootWeeks).Value, grid.MarginPerBedFootWeek[1][1].Value);
                }
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    [Fact]
    public void BreakEvenPrice_FedBack_LeavesZeroWithinACent() => RandomFarm.Gen.Sample(
        farm =>
        {
            foreach (SeasonReview season in Seasons(farm.Farm.Review()))
            {
                SeasonCosts costs = SeasonCosts.Of(season);
                foreach (EnterpriseBudget budget in season.Crops)
                {
                    SensitivityModel model = costs.Model(budget);
                    if (model.PriceFactorFor(1m, longRun: true).Value is { } price)
                    {
                        Close.To(0m, model.NetReturn(price, 1m), 0.01m);
                    }

                    if (model.YieldFactorFor(1m, longRun: false).Value is { } yield)
                    {
                        Close.To(0m, model.Contribution(1m, yield), 0.01m);
                    }

                    // The break-even of the result tables is the grid's.
                    decimal near = 0.01m * (1 + (budget.Enterprises.Count * season.Pools.Count));
                    foreach (BreakEvenPair pair in BreakEvenPair.Of(budget, model).Where(pair => pair.Form == BreakEvenForm.Full))
                    {
                        Func<decimal, decimal, decimal> left = pair.Run == Run.Long ? model.NetReturn : model.Contribution;
                        if (pair.Price.Value is { } full)
                        {
                            Close.To(0m, left(full / (pair.Run == Run.Long ? model.Price : model.PriceOutsideBoxes).Value!.Value, 1m), near);
                        }

                        if (pair.YieldPerBedFoot.Value is { } feet && left(1m, feet * budget.Sums.BedFeet.Value / budget.Sums.Sold) is var atYield && Math.Abs(feet) < 1000m)
                        {
                            Close.To(0m, atYield, near * (1m + Math.Abs(feet * budget.Sums.BedFeet.Value / budget.Sums.Sold)));
                        }
                    }
                }
            }
        },
        iter: Farms, threads: 2, print: farm => farm.ToString());

    [Fact]
    public void BreakEven_FullLongRun_IsThatOfTheResultTables()
    {
        SeasonReview season = SmallFarm().Season(2025);
        EnterpriseBudget beets = season.CropNamed("Beets");

        IReadOnlyList<BreakEvenPair> pairs = BreakEvenPair.Of(beets, SeasonCosts.Of(season).Model(beets));

        Assert.Equal(["for the crop, long run, full form", "for the farm, short run, full form", "for the crop, long run, textbook form", "for the farm, short run, textbook form"], pairs.Select(pair => pair.Label));
        Assert.Equal(beets.BreakEvenPrice, pairs[0].Price);
        Assert.Equal(beets.BreakEvenYield, pairs[0].YieldPerBedFoot);

        // By hand: length 30 + 100 (5 h x 20), quantity 80 (4 h x 20), fee 20 (5 % of 400), fixed (rent 100 and office 180) x 9200 / 21500 bed-foot-days = 119.81.
        Close.To((130m + 80m) / 200m / 0.95m, pairs[1].Price.Value!.Value, 0.00001m);
        Close.To(130m / (2m * 0.95m - 0.4m) / 100m, pairs[1].YieldPerBedFoot.Value!.Value, 0.00001m);
        Close.To((130m + 80m + 20m + 119.81m) / 200m, pairs[2].Price.Value!.Value, 0.0001m);
        Close.To((130m + 80m + 20m) / 2m / 100m, pairs[3].YieldPerBedFoot.Value!.Value, 0.00001m);
    }

    [Fact]
    public void BreakEven_UnitThatEarnsJustItsOwnCost_HasNoYieldInAnyForm()
    {
        // 15 for 7 units, less 5 % fee, is just what packing costs: only the last digit of a division says otherwise.
        SeasonReview season = new FarmBuilder(new FarmSettings { InterestPercent = 0m }).AsOf("2025-12-31")
            .Crop("Beets").Bed("One").Planting("B1", "Beets", "One", 10m, "2025-05-01", "2025-07-15").Pick("2025-07-14", "B1", 7m)
            .Channel("stall", ChannelKind.Market, 5m).Sell("2025-07-14", "Beets", "stall", 7m, amount: 15m).Worker("Al", WorkerKind.Hired, 10m)
            .Work("2025-05-01", "Al", 1m, "grow", crop: "Beets").Spend("2025-05-01", 14.25m, "packaging", crop: "Beets").Season(2025);
        EnterpriseBudget beets = season.CropNamed("Beets");

        Assert.All(
            BreakEvenPair.Of(beets, SeasonCosts.Of(season).Model(beets)).Where(pair => pair.Form == BreakEvenForm.Full),
            pair => Assert.Equal("a unit earns less than it costs to pick, pack and sell", pair.YieldPerBedFoot.Reason));
    }

    [Fact]
    public void Swings_SmallFarm_AreSortedAndTellWageFromHours()
    {
        SeasonReview season = SmallFarm().Season(2025);
        SeasonCosts costs = SeasonCosts.Of(season);

        IReadOnlyList<Swing> swings = Swing.Of(costs.Model(season.Farm), 0.1m);

        Assert.Equal(swings.OrderByDescending(swing => swing.Size.Amount).Select(swing => swing.Input), swings.Select(swing => swing.Input));
        Assert.Equal(190m, swings.Single(swing => swing.Input == "price").Size.Amount); // 20 % of 1000 less 5 % fee
        Assert.Equal(150m, swings.Single(swing => swing.Input == "yield").Size.Amount); // and less 20 % of 200 for picking
        Assert.Equal(96m, swings.Single(swing => swing.Input == "wage").Size.Amount); // 20 % of 24 h x 20
        Assert.Equal(60m, swings.Single(swing => swing.Input == "hours").Size.Amount); // office hours stand on overhead
        Assert.All(swings.Where(swing => swing.Input is "price" or "yield"), swing => Assert.True(swing.AtHigh.Amount > season.Farm.NetReturn.Amount));
        Assert.All(swings.Where(swing => swing.Input is "wage" or "hours"), swing => Assert.True(swing.AtHigh.Amount < season.Farm.NetReturn.Amount));
    }

    [Fact]
    public void OverYears_OneCrop_ClaimsNoTrend()
    {
        FarmReview review = SmallFarm().AsOf("2026-12-31")
            .Planting("B2", "Beets", "One", 50m, "2026-05-01", "2026-08-01").Pick("2026-07-01", "B2", 80m).Sell("2026-07-02", "Beets", "stall", 80m, price: 2.5m).Review();

        CropOverYears years = CropOverYears.Of(review, "beets");

        Assert.Equal([2025, 2026], years.Years.Select(year => year.CropYear));
        Assert.Equal(2.5m, years.Years[1].Budget.AveragePrice.Value);
        Assert.Contains("can't tell weather from trend", years.Statement);
        Assert.Equal([2025], CropOverYears.Of(review, "Beets", last: 2025).Years.Select(year => year.CropYear));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    public void Grid_FactorNotAboveZero_IsRefused(int factor)
    {
        SeasonReview season = SmallFarm().Season(2025);
        SensitivityModel model = SeasonCosts.Of(season).Model(season.Farm);

        Assert.Throws<ArgumentOutOfRangeException>(() => SensitivityGrid.Of(model, [factor], [1m]));
    }

    [Fact]
    public void CostLines_BudgetOfAnotherSeason_AreRefused() =>
        Assert.Throws<ArgumentException>(() => SeasonCosts.Of(SmallFarm().Season(2025)).Of(SmallFarm().Season(2025).Farm));
}
