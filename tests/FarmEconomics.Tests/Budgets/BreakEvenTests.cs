using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>docs/methods.md 8, long-run break-even.</summary>
public class BreakEvenTests
{
    private static FarmBuilder Farm(decimal price = 2m, decimal feePercent = 5m) => new FarmBuilder(new FarmSettings { InterestPercent = 0m })
        .Crop("beets", perCrate: 10).Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-15").Pick("2025-07-14", "b", 100)
        .Channel("market", ChannelKind.Market, feePercent).Sell("2025-07-14", "beets", "market", 100, price).Worker("Al", WorkerKind.Hired, 10)
        .Spend("2025-05-01", 20, "seed", crop: "beets") // area
        .Spend("2025-05-01", 15, "packaging", crop: "beets") // quantity
        .Spend("2025-05-01", 8, "insurance") // nothing
        .Work("2025-05-01", "Al", 2, "grow", crop: "beets").Work("2025-07-14", "Al", 1, "harvest", crop: "beets").Work("2025-07-14", "Al", 0.5m, "sell", crop: "beets")
        .AsOf("2025-12-31");

    [Fact]
    public void Price_ByHand()
    {
        // area 20 + 20, fixed 8, quantity 15 + 10, sales 10 fee + 5 sell labor of 200
        EnterpriseBudget beets = Farm().Season(2025).CropNamed("beets");
        Assert.Equal([40m, 25m, 15m, 8m], beets.Sums.CostByBehavior);
        Close.To(73m / 100m / (1m - 0.075m), beets.BreakEvenPrice.Value!.Value, 0.0000001m);
    }

    [Fact]
    public void Yield_ByHand() => Close.To(48m / 10m / ((2m * 0.925m) - 0.25m), Farm().Season(2025).CropNamed("beets").BreakEvenYield.Value!.Value, 0.0000001m);

    [Fact]
    public void PriceRecordedAtTheBreakEven_LeavesNoNetReturn()
    {
        // Without sales labor, whose hours don't follow the price in the records.
        FarmBuilder Free(decimal price)
        {
            FarmBuilder farm = Farm(price);
            farm.Tables.Labor.RemoveAll(row => row.Task == "sell");
            return farm;
        }

        decimal price = Free(2m).Season(2025).CropNamed("beets").BreakEvenPrice.Value!.Value;
        Close.To(0m, Free(decimal.Round(price, 4)).Season(2025).CropNamed("beets").NetReturn.Amount, 0.02m);
    }

    [Fact]
    public void SalesCostsAboveSales_MakeItNotAvailable() => Assert.Equal(
        "not available (selling costs take all of the sales)", Farm(feePercent: 98).Season(2025).CropNamed("beets").BreakEvenPrice.ToString());

    [Fact]
    public void UnitThatCostsMoreThanItEarns_HasNoBreakEvenYield() => Assert.Equal(
        "not available (a unit earns less than it costs to pick, pack and sell)", Farm(0.2m).Season(2025).CropNamed("beets").BreakEvenYield.ToString());

    [Fact]
    public void LaborOfAWorkPool_VariesByItsStage()
    {
        FarmBuilder farm = Farm();
        foreach (LaborRow row in farm.Tables.Labor)
        {
            row.Crop = null;
        }

        Assert.Equal([40m, 25m, 15m, 8m], farm.Season(2025).CropNamed("beets").Sums.CostByBehavior);
    }

    [Fact]
    public void ClosingStock_CountsInQuantityAndValue()
    {
        FarmBuilder farm = Farm();
        farm.Tables.Sales[0].Quantity = 50;
        EnterpriseBudget beets = farm.Season(2025).CropNamed("beets");
        decimal stock = beets.Sums.ClosingStock.Amount;
        Assert.True(stock > 0m);
        decimal share = beets.Sums.CostByBehavior[(int)VariesWith.Sales] / (100m + stock);
        Close.To(73m / 100m / (1m - share), beets.BreakEvenPrice.Value!.Value, 0.0000001m);
    }
}
