using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>Break-even with cost by bed time and output that wasn't sold, and the algebra behind it (docs/methods.md 8).</summary>
public class BreakEvenByHandTests
{
    // 10 bed-feet, 100 lb sold at 2; by length 20 of seed and 10 for an hour of growing, by bed time 12 of row cover, by quantity 15
    // of packaging.
    private static FarmBuilder Farm(decimal picked = 100m) => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).AsOf("2025-12-31")
        .Crop("beets").Bed("bed").Channel("market", ChannelKind.Market).Channel("table", ChannelKind.Household).Price("beets", 3m)
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-15").Pick("2025-07-14", "b", picked)
        .Sell("2025-07-14", "beets", "market", 100, 2).Worker("Al", WorkerKind.Hired, 10)
        .Category("row cover", ExpenseClass.Operating, StatementLine.Materials, varies: CostDriver.BedTime)
        .Spend("2025-05-01", 20, "seed", crop: "beets").Spend("2025-05-01", 12, "row cover", crop: "beets")
        .Spend("2025-05-01", 15, "packaging", crop: "beets").Work("2025-05-01", "Al", 1, "grow", crop: "beets");

    /// <summary>
    /// (30 by length + 12 by bed time) / (200 - 15) of what 100 lb brought, over 10 feet: 42 / 185 x 10 = 2.2703 lb a foot.
    /// </summary>
    [Fact]
    public void Yield_CoversTheCostOfBedTime() =>
        Close.To(2.2703m, Farm().Season(2025).CropNamed("beets").BreakEvenYield.Value!.Value, 0.00005m);

    /// <summary>Costs of 30 + 12 + 15 = 57; 10 lb eaten at 3 cover 30 of them, and what was sold must cover 27: 0.27 a lb.</summary>
    [Fact]
    public void WhatWasSold_MustCoverAllCostLessWhatWasEaten()
    {
        EnterpriseBudget beets = Farm(110m).Sell("2025-07-14", "beets", "table", 10).Season(2025).CropNamed("beets");
        Assert.Equal(27m, BreakEven.ToCover(beets));
        Assert.Equal(0.27m, beets.BreakEvenPrice.Value);
    }

    /// <summary>
    /// Sales of 100 that follow price and yield, 20 of handling that follows the yield alone, 30 that stands. To leave 10 at twice the
    /// yield the price must be (30 + 10 + 40) / 200 = 0.4 of what it was: 80 - 40 - 30 = 10. At the old price the yield must be
    /// (30 + 10) / (100 - 20) = 0.5: 50 - 10 - 30 = 10.
    /// </summary>
    [Fact]
    public void WantedAmount_IsWhatIsLeft()
    {
        CostVolumeProfit line = new(Followed: 100m, Grown: -20m, Standing: 30m);
        Assert.Equal(0.4m, line.PriceFor(2m, "none", wanted: 10m).Value);
        Assert.Equal(0.5m, line.YieldFor(1m, "none", wanted: 10m).Value);
        Assert.Equal((10m, 10m), (line.Net(0.4m, 2m), line.Net(1m, 0.5m)));
    }
}
