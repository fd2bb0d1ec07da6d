using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Changes;

/// <summary>More of a crop that keeps beyond the closing date (docs/methods.md, section 16), on paper.</summary>
public class StockGrowthByHandTests
{
    /// <summary>
    /// 200 lb of squash from 100 feet for 60 of seed: 100 sold at 4, the list price, 100 on hand at what those brought, 400.
    /// </summary>
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31")
        .Bed("One", 300m).Channel("stall", ChannelKind.Market).Worker("me", WorkerKind.Owner)
        .Crop("Squash", storageDays: 200m).Price("Squash", 4m, "stall")
        .Planting("S", "Squash", "One", 100m, "2025-06-01", "2025-10-01").Pick("2025-10-01", "S", 200m)
        .Sell("2025-10-01", "Squash", "stall", 100m, price: 4m).Spend("2025-06-01", 60m, "seed", planting: "S")
        .Work("2025-06-01", "me", 1m, "grow", planting: "S");

    private static ChangeAnswer Grow(decimal feet, decimal elasticity = 2m) =>
        ChangeFarm.Judge(Farm()).Judge(new Change(ChangeKind.Grow, "Squash", feet, Elasticity: elasticity));

    /// <summary>
    /// Half as much again: at an elasticity of 2 the stall pays 400 x (1.5^0.5 - 1) = 89.90 for 50 lb more, and so do those who take 50 lb
    /// more out of the store. 30 of seed and half an hour of 20 come.
    /// </summary>
    [Fact]
    public void Grow_BringsMoreStockAsWell()
    {
        ChangeAnswer answer = Grow(50m);
        Assert.Equal(
            [("Squash: more sales", 89.90m), ("Squash: more stock on hand", 89.90m)],
            answer.Partial.AddedReturns.Lines());
        Assert.Equal((89.90m - 30m, 89.90m), (answer.Means.Cash.Amount, answer.Means.Value.Amount));
        Assert.Equal((1m, 0m), (answer.BelowTodaysPrice, answer.NotTaken));
        Assert.Equal((2m * 89.90m) - 40m, answer.AvoidableChange.Amount);
    }

    /// <summary>
    /// Three times as much: stall and store take 2.5 times what they took, 400 x (2.5^0.5 - 1) each, and a quarter of what is picked more
    /// finds nobody.
    /// </summary>
    [Fact]
    public void Grow_BeyondWhatTheStoreTakes_FindsNoBuyer()
    {
        ChangeAnswer answer = Grow(200m);
        Assert.Equal([232.46m, 232.46m], answer.Partial.AddedReturns.Select(line => line.Amount.Amount));
        Assert.Equal(0.25m, answer.NotTaken);
    }

    /// <summary>At an elasticity of 1 nothing more sells at any price, neither now nor out of the store.</summary>
    [Fact]
    public void Grow_WhereNothingMoreSells_BringsNoStockEither()
    {
        ChangeAnswer answer = Grow(50m, elasticity: 1m);
        Assert.Empty(answer.Partial.AddedReturns);
        Assert.Equal(1m, answer.NotTaken);
    }

    /// <summary>All of it lies in the store, and no channel ever took any: more of it would bring seed to buy and nothing known.</summary>
    [Fact]
    public void Grow_OfWhatNobodyEverTook_BringsNothing()
    {
        ChangeAnswer answer = ChangeFarm.Judge(Farm().Without<SaleRow>(_ => true)).Judge(new Change(ChangeKind.Grow, "Squash", 50m));
        Assert.Empty(answer.Partial.AddedReturns);
        Assert.Equal(1m, answer.NotTaken);
    }

    /// <summary>
    /// Both 400 grow by 1.5^(1 - 1/e) - 1 and cover 40 of seed and hours where that is 0.05: 1 - 1/e = 0.12033, e = 1.137. Sales
    /// alone would ask for 1.307.
    /// </summary>
    [Fact]
    public void Grow_StopsPaying_WhereStallAndStoreTogetherDoNot() => Assert.Equal(1.14m, Grow(50m).TurnsAtElasticity.Value);

    private static CropGrowth Growth(FarmBuilder farm)
    {
        SeasonReview season = farm.Season(2025);
        return new CropGrowth(SeasonCosts.Of(season), season.CropNamed("Squash"), 2m);
    }

    /// <summary>
    /// After 100 feet more, the store takes the second hundred pounds on hand up to 2.5 times what it took: 50 of them, for
    /// 400 x (2.5^0.5 - 2^0.5) = 66.77. Of what nobody ever took it takes none.
    /// </summary>
    [Fact]
    public void OnHand_AfterMoreThatIsThereAlready_IsWhatTheStoreStillTakes()
    {
        (decimal units, decimal notTaken, decimal worth) = Growth(Farm()).OnHand(100m, 100m);
        Assert.Equal((50m, 50m, 66.77m), (units, notTaken, decimal.Round(worth, 2)));

        Assert.Equal((0m, 200m, 0m), Growth(Farm().Without<SaleRow>(_ => true)).OnHand(100m, 100m));
    }

    /// <summary>At today's price the stall, which took all it ever took, takes no more and the store none: 40 of seed and hours.</summary>
    [Fact]
    public void GainToday_CountsNothingOnHand() => Assert.Equal(-40m, Growth(Farm()).GainToday(50m));

    /// <summary>Dropped, the crop takes all its stock along: what comes with more goes with less.</summary>
    [Fact]
    public void Drop_TakesTheStockAlong() => Assert.Equal(
        [("Squash: sales", 400m), ("Squash: stock on hand", 400m)],
        ChangeFarm.Judge(Farm()).Judge(new Change(ChangeKind.Drop, "Squash")).Partial.ReducedReturns.Lines());
}
