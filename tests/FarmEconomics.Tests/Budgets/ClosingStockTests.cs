using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>docs/methods.md 3, stock on hand at the closing date, worked out by hand.</summary>
public class ClosingStockTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets", storageDays: 300).Bed("bed").Channel("market", ChannelKind.Market).Channel("box", ChannelKind.Share)
        .Planting("a", "beets", "bed", 10, "2025-05-01", "2025-07-10").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-10").Worker("Al", WorkerKind.Hired, 10).AsOf("2025-12-31");

    private static decimal[] Stock(SeasonReview season) => [.. season.Plantings.Select(budget => budget.Sums.ClosingStock.Amount)];

    [Fact]
    public void TwoPlantings_AreValuedTogetherAndSharedByWhatIsOnHand()
    {
        // Sold 20 of a at 3 and 20 of b at 1: 2.00 on average. Selling: packaging 12 of a crop's two plantings and 8 of sell labor, on 40 sold: 0.50. 10 and 30 on hand at 1.50.
        SeasonReview season = Farm().Pick("2025-07-01", "a", 30).Pick("2025-07-01", "b", 50).Sell("2025-07-01", "beets", "market", 20, 3, planting: "a").Sell("2025-07-01", "beets", "market", 20, 1, planting: "b")
            .Spend("2025-07-01", 6, "market fees", planting: "a").Spend("2025-07-01", 6, "market fees", planting: "b").Work("2025-07-01", "Al", 0.4m, "sell", planting: "a").Work("2025-07-01", "Al", 0.4m, "sell", planting: "b").Work("2025-07-01", "Al", 7, "harvest", planting: "a").Season(2025);
        Assert.Equal([15m, 45m], Stock(season));
        Assert.DoesNotContain("W411", season.Codes());
    }

    [Fact]
    public void WithoutAPricedSale_TheListPriceCountsLessWhatSellingAUnitTook()
    {
        // 10 on hand at a list price of 4; selling took 6 for the 20 in boxes, 0.30 each: 10 x 3.70.
        SeasonReview season = Farm().Price("beets", 4).Pick("2025-07-01", "a", 30).Sell("2025-07-01", "beets", "box", 20).Income("2025-07-01", "box", 50).Spend("2025-07-01", 6, "market fees", planting: "a").Season(2025);
        Assert.Equal([37m, 0m], Stock(season));
        Assert.DoesNotContain("W411", season.Codes());
    }

    [Fact]
    public void NothingSold_TellsNoSellingCost_AndTheListPriceCounts() =>
        Assert.Equal([120m, 0m], Stock(Farm().Price("beets", 4).Pick("2025-07-01", "a", 30)
            .Spend("2025-07-01", 6, "market fees", planting: "a").Season(2025)));

    [Fact]
    public void ListPriceBelowWhatSellingTakes_LeavesStockAtZeroNotBelow() =>
        Assert.Equal([0m, 0m], Stock(Farm().Price("beets", 4).Pick("2025-07-01", "a", 30).Sell("2025-07-01", "beets", "box", 20)
            .Income("2025-07-01", "box", 50).Spend("2025-07-01", 90, "market fees", planting: "a").Season(2025)));

    [Fact]
    public void WithoutAnyPrice_TheStockIsWorthNothingAndToldOnce()
    {
        SeasonReview season = Farm().Crop("kale").Planting("k", "kale", "bed", 10, "2025-05-01", "2025-07-10").Pick("2025-07-01", "a", 30).Pick("2025-07-01", "b", 30).Season(2025);
        Assert.Equal([0m, 0m, 0m], Stock(season));
        Assert.Equal([true, false], season.Crops.Select(crop => crop.Sums.ValueIncomplete));
        Assert.Contains("beets", Assert.Single(season.Problems, problem => problem.Code == "W411").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NothingOnHand_NeedsNoPrice() =>
        Assert.DoesNotContain("W411", Farm().Pick("2025-07-01", "a", 30).Sell("2025-07-01", "beets", "box", 30).Season(2025).Codes());

    [Fact]
    public void SellingThatCostsMoreThanThePrice_LeavesStockAtZeroNotBelow() =>
        Assert.Equal([0m, 0m], Stock(Farm().Pick("2025-07-01", "a", 30).Sell("2025-07-01", "beets", "market", 20, 1).Spend("2025-07-01", 60, "market fees", planting: "a").Season(2025)));

    [Fact]
    public void Ignored_StockCountsNowhereNorInTheBreakEven()
    {
        // 20 sold at 2 of 30 picked, 10 seed and 10 labor: with the stock ignored (10 + 10) / 20 a lb.
        SeasonReview season = Farm().With(settings => settings with { ClosingStock = ClosingStock.Ignore }).Pick("2025-07-01", "a", 30).Sell("2025-07-01", "beets", "market", 20, 2)
            .Spend("2025-05-01", 10, "seed", crop: "beets").Work("2025-06-01", "Al", 1, "grow", crop: "beets").Season(2025);
        Assert.Equal([0m, 0m], Stock(season));
        Assert.Equal(10m, season.Farm.Sums.OnHand);
        Assert.Equal(1m, season.CropNamed("beets").BreakEvenPrice.Value);
    }

    [Fact]
    public void GivenAwayForNothing_IsNotSoldInTheSenseOfABreakEven() => Assert.Equal(
        "not available (nothing sold)",
        Farm().Pick("2025-07-01", "a", 20).Sell("2025-07-01", "beets", "market", 20, 0).Spend("2025-05-01", 10, "seed", crop: "beets").Work("2025-06-01", "Al", 1, "grow", crop: "beets").Season(2025).CropNamed("beets").BreakEvenPrice.ToString());
}
