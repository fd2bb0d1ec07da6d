using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>docs/methods.md 7 at its edges: plantings over several beds, use beside a basis worked out, pools nobody can empty.</summary>
public class PoolEdgeTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m, OwnerWage = 0m }).Crop("beets", perCrate: 10).Crop("kale", perCrate: 10).Bed("bed").Bed("other").Channel("stand", ChannelKind.Stand)
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30").Planting("k", "kale", "bed", 30, "2025-05-01", "2025-06-30").AsOf("2025-12-31");

    private static decimal[] Shared(FarmBuilder farm)
    {
        SeasonReview season = farm.Spend("2025-06-01", 100, "repairs", pool: "shared").Season(2025);
        season.AssertProven();
        return [.. season.Plantings.Select(budget => season.PoolNamed("shared").Charged(budget.Name))];
    }

    [Fact]
    public void PlantingOverTwoBeds_WeighsWithBoth() =>
        Assert.Equal([50m, 50m], Shared(Farm().Planting("b", "beets", "other", 20, "2025-05-01", "2025-06-30").Pool("shared", "bed-feet")));

    [Fact]
    public void UseOfACrop_IsSplitByHowLongItsPlantingsStood()
    {
        // 10 x 60 and 10 x 30 bed-foot-days
        Assert.Equal([66.67m, 0m, 33.33m], Shared(Farm().Planting("b2", "beets", "other", 10, "2025-05-01", "2025-05-31").Pool("shared", "measured").Use("shared", "beets", 30)));
    }

    [Fact]
    public void UseOfACropThatStoodNoDay_IsSplitByBedFeet()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-05-01").Planting("b2", "beets", "bed", 30, "2025-05-01", "2025-05-01").AsOf("2025-12-31");
        Assert.Equal([25m, 75m], Shared(farm.Pool("shared", "measured").Use("shared", "beets", 30)));
    }

    [Fact]
    public void LoadThatRanInAnotherYear_ReplacesNoWeight() =>
        Assert.Equal([25m, 75m], Shared(Farm().Pool("shared", "bed-feet").Load("fan", "shared", "b", 1000, 1, "2024-05-01", "2024-05-20")));

    [Fact]
    public void InputRatesOfAnotherPool_DoNotCount() =>
        Assert.Equal([25m, 75m], Shared(Farm().Pool("shared", "input-rates").Pool("other pool", "input-rates").Rate("shared", "beets", 1, RatePer.BedFoot).Rate("shared", "kale", 1, RatePer.BedFoot).Rate("other pool", "beets", 7, RatePer.BedFoot)));

    [Fact]
    public void PoolOfAChannel_ThatTookMoney_FollowsTheMoneyAloneAndNotTheCrates()
    {
        // 60.00 for 1 crate of beets, 40.00 for 3 of kale.
        SeasonReview season = Farm().Pick("2025-06-01", "b", 10).Pick("2025-06-01", "k", 30).Sell("2025-06-01", "beets", "stand", 10, amount: 60).Sell("2025-06-01", "kale", "stand", 30, amount: 40)
            .Spend("2025-06-01", 10, "market fees", channel: "stand").Season(2025);
        Assert.Equal([6m, 4m], season.Plantings.Select(budget => budget.Sums.Selling.Amount));
    }

    [Fact]
    public void NoUnitsInACrate_IsAsGoodAsBlank()
    {
        SeasonReview season = Farm().Crop("chard", perCrate: 0).Planting("c", "chard", "other", 10, "2025-05-01", "2025-06-30").Pool("shared", "quantity-crates").Pick("2025-06-01", "b", 10).Pick("2025-06-01", "c", 10)
            .Spend("2025-06-01", 100, "repairs", pool: "shared").Season(2025);
        Assert.Equal(100m, season.PoolNamed("shared").Charged("b"));
        Assert.Contains("W502", season.Codes());
    }

    [Fact]
    public void CropOfAnotherStore_NeedsNoUnitsPerCrateHere()
    {
        SeasonReview season = Farm().Crop("chard", store: "cellar").Crop("leeks", store: "shared", perCrate: 10).Planting("c", "chard", "other", 10, "2025-05-01", "2025-06-30").Planting("l", "leeks", "other", 10, "2025-05-01", "2025-06-30")
            .Pool("shared", "crate-days").Pool("cellar", "crate-days").Pick("2025-06-01", "c", 10).Pick("2025-06-01", "l", 10).Spend("2025-06-01", 100, "repairs", pool: "shared").Season(2025);
        Assert.Equal(100m, season.PoolNamed("shared").Charged("l"));
        Assert.DoesNotContain("W502", season.Codes());
    }

    [Fact]
    public void CapacityOfZero_IsNone()
    {
        SeasonReview season = Farm().Pool("shared", "bed-feet", capacity: 0).Asset("room", "shared", "2025-01-01", 1000, 10).Season(2025);
        Assert.Equal(100m, season.PoolNamed("shared").ToCrops.Amount);
        Assert.DoesNotContain("W504", season.Codes());
    }

    [Fact]
    public void FarmPercentOfAHundred_TakesNothingOutForTheHousehold() => Assert.DoesNotContain(
        "W508",
        Farm().Pool("shared", "measured").Use("shared", "household", 1).Use("shared", "beets", 1).Asset("room", "shared", "2025-01-01", 1000, 10, farmPercent: 100).Spend("2025-06-01", 5, "repairs", pool: "shared", farmPercent: 100).Season(2025).Codes());

    [Fact]
    public void Circle_OfAPoolThatServesTwoOthersOfIt_IsFound()
    {
        FarmReview review = Farm().Pool("power", "measured").Pool("heat", "measured").Pool("well", "measured").Use("power", "heat", 1).Use("power", "well", 1).Use("heat", "power", 1).Use("well", "power", 1).Review();
        Assert.Equal("E501", Assert.Single(Assert.Throws<RecordsException>(() => review.Season(2025)).Problems).Code);
    }

    [Fact]
    public void Circle_AtTheFirstPoolOfAll_IsFound()
    {
        FarmReview review = Farm().Use("seed and plants", "fertility and crop supplies", 1).Use("fertility and crop supplies", "seed and plants", 1).Review();
        Assert.Equal("seed and plants", review.Records.Pools[0].Name);

        // Nothing is planted in 2030, so that nobody else uses the two.
        Assert.Contains("seed and plants -> fertility and crop supplies -> seed and plants", Assert.Throws<RecordsException>(() => review.Season(2030)).Message, StringComparison.Ordinal);
    }
}
