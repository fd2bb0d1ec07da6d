using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>A difference that is none but for the last digit of a division is none: it gives no break-even in the trillions.</summary>
public class BreakEvenResidueTests
{
    private const string NothingPerUnit = "not available (a unit earns less than it costs to pick, pack and sell)";

    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-15")
        .Worker("Al", WorkerKind.Hired, 10).Work("2025-05-01", "Al", 2, "grow", crop: "beets").AsOf("2025-12-31");

    // 3.00 a lb less a fee of 1.00 less packaging of 2.00 is 0; but 1 - 1/3 rounds up in its last digit, so 3 x (1 - 1/3) - 2 is a little more than 0.
    private static SeasonReview UnitThatEarnsWhatItCosts() => Farm().Channel("market", ChannelKind.Market, 33.33m).Pick("2025-07-14", "b", 1).Sell("2025-07-14", "beets", "market", 1, 3)
        .Spend("2025-05-01", 2, "packaging", crop: "beets").Season(2025);

    // One pool holds 1 h of picking and 2 h of packing: 30.00 in all, worked out as 30 x 1/3 + 30 x 2/3, which is a little off the 30.00
    // of sales.
    private static SeasonReview SellingThatTakesAll() => Farm().Channel("market", ChannelKind.Market).Pick("2025-07-14", "b", 10).Sell("2025-07-14", "beets", "market", 10, 3)
        .Pool("packing shed", "bed-feet").Work("2025-07-14", "Al", 1, "harvest", pool: "packing shed").Work("2025-07-14", "Al", 2, "pack", pool: "packing shed")
        .Spend("2025-05-01", 5, "seed", crop: "beets").Season(2025);

    [Fact]
    public void UnitThatEarnsExactlyWhatItCosts_HasNoBreakEvenYield()
    {
        SeasonReview season = UnitThatEarnsWhatItCosts();
        EnterpriseBudget beets = season.CropNamed("beets");
        Assert.Equal([20m, 2m, 1m, 0m, 0m, 0m], beets.Sums.CostByBehavior);
        Assert.Equal(NothingPerUnit, beets.BreakEvenYield.ToString());
        Assert.All(FullForms(season), pair => Assert.Equal(NothingPerUnit, pair.YieldPerBedFoot.ToString()));
    }

    [Fact]
    public void PackingAndSellingThatTakeExactlyAllOfTheSales_HaveNoBreakEvenYield()
    {
        SeasonReview season = SellingThatTakesAll();
        EnterpriseBudget beets = season.CropNamed("beets");
        Close.To(30m, beets.Sums.CostByBehavior[(int)CostDriver.Quantity], 0.0000000001m);
        Assert.Equal(5.5m, beets.BreakEvenPrice.Value); // 30 of the pool, 20 of growing, 5 of seed
        Assert.All(FullForms(season), pair => Assert.Equal(NothingPerUnit, pair.YieldPerBedFoot.ToString()));
    }

    [Fact]
    public void PackingAndSellingThatTakeExactlyAllOfTheSales_HaveNoWhatIfYieldEither()
    {
        SeasonReview season = SellingThatTakesAll();
        SensitivityModel model = SeasonCosts.Of(season).Model(season.CropNamed("beets"));
        Assert.Equal(NothingPerUnit, model.YieldFactorFor(1m, longRun: true).ToString());
    }

    [Fact]
    public void OneCentLeftOfAUnit_HasABreakEvenYield()
    {
        // 3.01 - 1.00 - 2.00 leaves 0.01 a lb to earn 20.00 on 10 bed-feet: 200 lb per bed-foot.
        SeasonReview season = Farm().Channel("market", ChannelKind.Market, 33.22m).Pick("2025-07-14", "b", 1).Sell("2025-07-14", "beets", "market", 1, 3.01m)
            .Spend("2025-05-01", 2, "packaging", crop: "beets").Season(2025);
        EnterpriseBudget beets = season.CropNamed("beets");
        Assert.Equal([20m, 2m, 1m, 0m, 0m, 0m], beets.Sums.CostByBehavior);
        Close.To(200m, beets.BreakEvenYield.Value!.Value, 0.0000001m);
        Assert.All(FullForms(season), pair => Close.To(200m, pair.YieldPerBedFoot.Value!.Value, 0.0000001m));
    }

    private static IEnumerable<BreakEvenPair> FullForms(SeasonReview season) =>
        BreakEvenPair.Of(season.CropNamed("beets"), SeasonCosts.Of(season).Model(season.CropNamed("beets"))).Where(pair => pair.Form == BreakEvenForm.Full);
}
