using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>The budget of a bed or a structure: every figure of a planting split by the bed-foot-days it held there.</summary>
public class BedViewTests
{
    // One planting, 10 bed-feet in the first bed and 30 in the second, both for the same days: a quarter and three quarters of everything.
    private static SeasonReview Season() => new FarmBuilder(new FarmSettings { InterestPercent = 0m, OwnerWage = 10m }).Crop("beets", storageDays: 30, perCrate: 10).Bed("first", structure: "tunnel").Bed("second")
        .Planting("b", "beets", "first", 10, "2025-05-01", "2025-07-10").Planting("b", "beets", "second", 30, "2025-05-01", "2025-07-10")
        .Channel("market", ChannelKind.Market, 10).Channel("house", ChannelKind.Household).Channel("box", ChannelKind.Share).Price("beets", 2).Income("2025-05-01", "box", 40)
        .Pick("2025-07-01", "b", 100, culled: 8).Sell("2025-06-25", "beets", "market", 4, 2).Sell("2025-07-01", "beets", "market", 40, 2).Sell("2025-07-01", "beets", "house", 12).Sell("2025-07-01", "beets", "box", 20)
        .Worker("Di", WorkerKind.Owner).Worker("Al", WorkerKind.Hired, 10).Standard("beets", Stage.Nursery, 3, RatePer.BedFoot)
        .Work("2025-05-01", "Di", 4, "grow", crop: "beets").Work("2025-07-01", "Al", 8, "harvest", crop: "beets").Work("2025-07-01", "Al", 4, "sell", crop: "beets").Work("2025-07-01", "Di", 2, "office")
        .Spend("2025-05-01", 12, "seed").Spend("2025-05-01", 16, "packaging").Spend("2025-05-01", 20, "insurance").Pool("shed", "bed-feet").Spend("2025-05-01", 24, "repairs", pool: "shed").AsOf("2025-07-20").Season(2025);

    private static decimal[] Figures(EnterpriseBudget budget)
    {
        BudgetSums sums = budget.Sums;
        return
        [
            sums.BedFeet.Value, sums.BedFootDays.Value, sums.Harvested, sums.Culled, sums.Unmatched, sums.Sold, sums.OtherUse, sums.Unsold, sums.OnHand, sums.Sales.Amount, sums.ShareIncome.Amount, sums.Household.Amount,
            sums.ClosingStock.Amount, sums.Materials.Amount, sums.Selling.Amount, sums.HiredLabor.Amount, sums.OwnerLabor.Amount, sums.Infrastructure.Amount, sums.Overhead.Amount, sums.EstimatedHours, sums.OverheadHours, sums.SellLabor,
            .. sums.HoursByStage, .. sums.CostByBehavior,
        ];
    }

    [Fact]
    public void PlantingOverTwoBeds_GivesEachItsPartOfEveryFigure()
    {
        SeasonReview season = Season();
        decimal[] whole = Figures(season.Plantings[0]);
        Assert.Equal(["first", "second"], season.Beds.Select(bed => bed.Name));

        // Money is in whole cents and the odd one goes to one side; nothing else is rounded.
        Assert.All(Figures(season.Beds[0]).Zip(whole), pair => Close.To(pair.Second / 4m, pair.First, 0.0075m));
        Assert.Equal(whole, Figures(season.Beds[0]).Zip(Figures(season.Beds[1]), (first, second) => first + second));
    }

    [Fact]
    public void PlantingOverTwoBeds_ByHand()
    {
        // The year: 100 picked and 8 culled; 4 sold six days before the pick, so unmatched; 60 sold and 12 eaten of the 100, 28 on hand.
        EnterpriseBudget first = Season().Beds[0];
        Assert.Equal([10m, 25m, 2m, 1m, 16m, 3m, 7m, 7m], [first.Sums.BedFeet.Value, first.Sums.Harvested, first.Sums.Culled, first.Sums.Unmatched, first.Sums.Sold, first.Sums.OtherUse, first.Sums.Unsold, first.Sums.OnHand]);

        // 88 of sales, 40 of share income, 24 eaten; 12 of seed; 12 h hired, 4 h of growing and by the standard 2 h of nursery, at 10 each; 24 of repairs.
        Assert.Equal([22m, 10m, 6m, 3m], [first.Sums.Sales.Amount, first.Sums.ShareIncome.Amount, first.Sums.Household.Amount, first.Sums.Materials.Amount]);
        Assert.Equal([30m, 15m, 6m], [first.Sums.HiredLabor.Amount, first.Sums.OwnerLabor.Amount, first.Sums.Infrastructure.Amount]);
        Assert.Equal([0.5m, 1m, 2m, 0m, 1m], first.Sums.HoursByStage.Take(5));
        Assert.Equal([0.5m, 0.5m, 10m], [first.Sums.EstimatedHours, first.Sums.OverheadHours, first.Sums.SellLabor]);
    }

    [Fact]
    public void Bed_NamesItsPlantingsAndCountsEachOnce()
    {
        SeasonReview season = new FarmBuilder().Crop("beets").Crop("kale").Bed("first", structure: "tunnel").Bed("second", structure: "tunnel").Planting("b", "beets", "first", 10, "2025-05-01", "2025-07-10").Planting("b", "beets", "second", 30, "2025-05-01", "2025-07-10")
            .Planting("k", "kale", "first", 10, "2025-07-10", "2025-08-10").Season(2025);
        Assert.Equal(["b", "k"], season.Beds[0].Enterprises.Select(enterprise => enterprise.Planting.Name));
        Assert.Equal([2, 1], season.Beds.Select(bed => bed.Sums.Plantings));
        EnterpriseBudget tunnel = Assert.Single(season.Structures);
        Assert.Equal((2, 50m), (tunnel.Sums.Plantings, tunnel.Sums.BedFeet.Value));
        Assert.Equal(2, season.Farm.Sums.Plantings);
    }

    [Fact]
    public void BedsHeldForDifferentTimes_ShareByBedFootDays()
    {
        // 10 x 30 and 10 x 60 days
        SeasonReview season = new FarmBuilder().Crop("beets").Bed("first").Bed("second").Planting("b", "beets", "first", 10, "2025-05-01", "2025-05-31").Planting("b", "beets", "second", 10, "2025-05-01", "2025-06-30")
            .Spend("2025-05-01", 30, "seed").Season(2025);
        Assert.Equal([10m, 20m], season.Beds.Select(bed => bed.Sums.Materials.Amount));
    }

    [Fact]
    public void BedsHeldForNoDay_ShareByBedFeet()
    {
        SeasonReview season = new FarmBuilder().Crop("beets").Bed("first").Bed("second").Planting("b", "beets", "first", 10, "2025-05-01", "2025-05-01").Planting("b", "beets", "second", 20, "2025-05-01", "2025-05-01")
            .Spend("2025-05-01", 30, "seed").Season(2025);
        Assert.Equal([10m, 20m], season.Beds.Select(bed => bed.Sums.Materials.Amount));
    }

    [Fact]
    public void IncompleteValue_StaysIncompleteInEveryView()
    {
        // Two plantings of beets eaten at no known price, one of kale sold: the crop, the bed and the farm say so, kale doesn't.
        SeasonReview season = new FarmBuilder().Crop("beets").Crop("kale").Bed("first").Bed("second").Channel("house", ChannelKind.Household).Channel("market", ChannelKind.Market).Planting("a", "beets", "first", 10, "2025-05-01", "2025-07-10").Planting("b", "beets", "first", 10, "2025-05-01", "2025-07-10")
            .Planting("k", "kale", "second", 10, "2025-05-01", "2025-07-10").Pick("2025-07-01", "a", 10).Pick("2025-07-01", "b", 10).Pick("2025-07-01", "k", 10).Sell("2025-07-01", "beets", "house", 20).Sell("2025-07-01", "kale", "market", 10, 1).Season(2025);
        Assert.Equal([true, false], season.Crops.Select(crop => crop.Sums.ValueIncomplete));
        Assert.Equal([true, false], season.Beds.Select(bed => bed.Sums.ValueIncomplete));
        Assert.True(season.Farm.Sums.ValueIncomplete);
    }

    [Fact]
    public void Groups_StandInTheOrderOfTheirFirstCrop()
    {
        SeasonReview season = new FarmBuilder().Crop("beets", group: "roots").Crop("kale", group: "greens").Crop("carrots", group: "roots").Bed("bed")
            .Planting("k", "kale", "bed", 10, "2025-05-01", "2025-07-10").Planting("c", "carrots", "bed", 10, "2025-05-01", "2025-07-10").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-10").Season(2025);
        Assert.Equal(["roots", "greens"], season.Groups.Select(group => group.Name));
        Assert.Equal(["beets", "kale", "carrots"], season.Crops.Select(crop => crop.Name));
    }
}
