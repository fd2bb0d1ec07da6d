using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>docs/methods.md 7: crates of crops that don't say how many of their units fill one. The rule is ours, without a source.</summary>
public class CrateSizeTests
{
    // a fills 10 crates for 100.00, b 30 for 100.00, c 10 for 50.00: a median of 0.2 crates per unit of money.
    private static FarmBuilder Farm(decimal unknownFor) => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Bed("bed").Channel("market", ChannelKind.Market)
        .Crop("a", perCrate: 10).Crop("b", perCrate: 1).Crop("c", perCrate: 5).Crop("u")
        .Planting("a", "a", "bed", 10, "2025-05-01", "2025-07-01").Planting("b", "b", "bed", 10, "2025-05-01", "2025-07-01").Planting("c", "c", "bed", 10, "2025-05-01", "2025-07-01").Planting("u", "u", "bed", 10, "2025-05-01", "2025-07-01")
        .Pick("2025-06-01", "a", 100).Pick("2025-06-01", "b", 30).Pick("2025-06-01", "c", 50).Pick("2025-06-01", "u", 7)
        .Sell("2025-06-01", "a", "market", 100, amount: 100).Sell("2025-06-01", "b", "market", 30, amount: 100).Sell("2025-06-01", "c", "market", 50, amount: 50).Sell("2025-06-01", "u", "market", 7, amount: unknownFor);

    private static decimal[] Charged(SeasonReview season) => [.. season.Plantings.Select(budget => season.PoolNamed("shed").Charged(budget.Name))];

    [Fact]
    public void CropWithoutUnitsPerCrate_TakesTheMedianOfCratesPerSalesValue()
    {
        SeasonReview season = Farm(50).Pool("shed", "quantity-crates").Spend("2025-06-01", 120, "repairs", pool: "shed").Season(2025);
        Assert.Equal([20m, 60m, 20m, 20m], Charged(season)); // 10, 30, 10 and 0.2 x 50 crates
        Assert.Contains("estimated to hold 0.7 lb", Assert.Single(season.Problems, problem => problem.Code == "W502").Message, StringComparison.Ordinal);
        season.AssertProven();
    }

    [Fact]
    public void CropWithoutUnitsPerCrate_CountsInStoresByTheSameEstimate()
    {
        SeasonReview season = Farm(50).Pool("shed", "crate-days").Pick("2025-06-10", "a", 10).Pick("2025-06-10", "u", 7).Sell("2025-06-20", "u", "market", 7, amount: 50).AsOf("2025-06-20").Spend("2025-06-01", 100, "repairs", pool: "shed").Season(2025);

        // a: 11 crates for 100.00 and 30 for 100.00 and 10 for 50.00 keep the median at 0.2; u fills 20 crates with 14 lb, 10 of them held 10 days, as 1 crate of a is.
        Assert.Equal([9.09m, 0m, 0m, 90.91m], Charged(season));
    }

    [Fact]
    public void Pool_WithoutCratesOfOverHalfOfTheSalesValue_IsSharedBySalesValue()
    {
        Assert.DoesNotContain("W419", Farm(250).Pool("shed", "quantity-crates").Spend("2025-06-01", 100, "repairs", pool: "shed").Season(2025).Codes()); // just half
        SeasonReview season = Farm(750).Pool("shed", "quantity-crates").Spend("2025-06-01", 100, "repairs", pool: "shed").Season(2025);
        Assert.Equal([10m, 10m, 5m, 75m], Charged(season));
        Assert.Equal(BasisKind.SalesValue, season.PoolNamed("shed").Users.BasisUsed.Kind);
        Assert.Contains("75", Assert.Single(season.Problems, problem => problem.Code == "W419").Message, StringComparison.Ordinal);
        Assert.DoesNotContain("W502", season.Codes());
        season.AssertProven();
    }

    /// <summary>
    /// Known are 10 crates for 100, 30 for 100 and 10 for 50; the 750 of the unknown crop, of two plantings, count as 150: 200 crates for
    /// 1,000 of sales, so that 0.2 crates go with each unit of money. The household's 50 crates are a fifth of all 250.
    /// </summary>
    [Fact]
    public void WrittenCrates_CountBesideSalesValueAsTheCratesEstimated()
    {
        SeasonReview season = Farm(300).Planting("u2", "u", "bed", 10, "2025-05-01", "2025-07-01").Pick("2025-06-02", "u2", 9)
            .Sell("2025-06-02", "u", "market", 9, amount: 450).Pool("shed", "quantity-crates").Use("shed", "household", 50)
            .Spend("2025-06-01", 1000, "repairs", pool: "shed").Season(2025);
        Assert.Equal([80m, 80m, 40m, 240m, 360m], Charged(season));
        Assert.Equal(200m, season.PoolNamed("shed").ToHousehold.Amount);
        Assert.Contains("75%", Assert.Single(season.Problems, problem => problem.Code == "W419").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Pool_SharedBySalesValueForLackOfCrates_HoldsNoCapacityAgainstIt() =>
        Assert.Equal(0m, Farm(750).Pool("shed", "quantity-crates", capacity: 5000).Asset("shelf", "shed", "2025-01-01", 1000, 10).Season(2025).PoolNamed("shed").Unused.Amount);

    [Fact]
    public void FarmWithoutAnyCrates_SharesBySalesValue()
    {
        SeasonReview season = new FarmBuilder().Bed("bed").Crop("a").Crop("b").Channel("market", ChannelKind.Market).Planting("a", "a", "bed", 10, "2025-05-01", "2025-07-01").Planting("b", "b", "bed", 10, "2025-05-01", "2025-07-01")
            .Pick("2025-06-01", "a", 10).Pick("2025-06-01", "b", 10).Sell("2025-06-01", "a", "market", 10, 3).Sell("2025-06-01", "b", "market", 10, 1).Pool("shed", "quantity-crates").Spend("2025-06-01", 100, "repairs", pool: "shed").Season(2025);
        Assert.Equal([75m, 25m], Charged(season));
    }
}
