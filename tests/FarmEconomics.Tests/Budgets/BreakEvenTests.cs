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
        // area 20 + 20, fixed 8, quantity 15 + 10 + 5 of selling it, units 10 fee of 200: all but the fee stands, the fee is 5 % of any price
        EnterpriseBudget beets = Farm().Season(2025).CropNamed("beets");
        Assert.Equal([40m, 30m, 10m, 8m, 0m, 0m], beets.Sums.CostByBehavior);
        Close.To((88m - 10m) / 100m / 0.95m, beets.BreakEvenPrice.Value!.Value, 0.0000001m);
    }

    [Fact]
    public void Yield_ByHand() => Close.To(48m / (200m - 30m - 10m) * 100m / 10m, Farm().Season(2025).CropNamed("beets").BreakEvenYield.Value!.Value, 0.0000001m);

    [Fact]
    public void PriceRecordedAtTheBreakEven_LeavesNoNetReturn()
    {
        decimal price = Farm(2m).Season(2025).CropNamed("beets").BreakEvenPrice.Value!.Value;
        Close.To(0m, Farm(decimal.Round(price, 4)).Season(2025).CropNamed("beets").NetReturn.Amount, 0.02m);
    }

    [Fact]
    public void StallRent_IsTheSameAtAnyPrice()
    {
        // 30.00 of stall rent, all of it this crop's: held, not scaled with the price.
        EnterpriseBudget beets = Farm(feePercent: 0m).Spend("2025-07-14", 30m, "market fees", channel: "market").Category("market fees", ExpenseClass.Operating, StatementLine.Selling).Season(2025).CropNamed("beets");
        Close.To((88m - 10m + 30m) / 100m, beets.BreakEvenPrice.Value!.Value, 0.0000001m);
    }

    [Fact]
    public void HouseholdUse_ComesOffTheCostAtItsValue()
    {
        // 90 of 100 lb eaten at 3.00, 10 sold at 3.00, all cost 200.00: net return 100.00, and the 10 lb sold pay at any price.
        EnterpriseBudget beets = new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-07-15").Pick("2025-07-14", "b", 100)
            .Channel("market", ChannelKind.Market).Channel("table", ChannelKind.Household).Price("beets", 3m).Sell("2025-07-14", "beets", "market", 10, 3).Sell("2025-07-14", "beets", "table", 90)
            .Worker("Al", WorkerKind.Hired, 10).Work("2025-05-01", "Al", 2, "grow", crop: "beets").Spend("2025-05-01", 180, "seed", crop: "beets").AsOf("2025-12-31").Season(2025).CropNamed("beets");
        Assert.Equal(100m, beets.NetReturn.Amount);
        Assert.Equal(-7m, beets.BreakEvenPrice.Value);
        Assert.Equal(beets.NetReturn.Amount, (beets.AveragePrice.Value - beets.BreakEvenPrice.Value) * beets.Sums.Sold);
    }

    [Fact]
    public void SaleThroughAChannelOfKindOther_CountsInPriceAndBreakEvenAlike()
    {
        EnterpriseBudget beets = Farm(feePercent: 0m).Pick("2025-07-14", "b", 10).Channel("seed swap", ChannelKind.Other).Sell("2025-07-14", "beets", "seed swap", 10, amount: 18m).Season(2025).CropNamed("beets");
        Close.To(218m / 110m, beets.AveragePrice.Value!.Value, 0.0000001m);
        Close.To(78m / 110m, beets.BreakEvenPrice.Value!.Value, 0.0000001m);
    }

    [Fact]
    public void FeeOfAllTheSales_MakesItNotAvailable() => Assert.Equal(
        "not available (the channel's fee takes all of the sales)", Farm(feePercent: 100).Season(2025).CropNamed("beets").BreakEvenPrice.ToString());

    [Fact]
    public void UnitThatCostsMoreThanItEarns_HasNoBreakEvenYield() => Assert.Equal(
        "not available (a unit earns less than it costs to pick, pack and sell)", Farm(0.2m).Season(2025).CropNamed("beets").BreakEvenYield.ToString());

    [Fact]
    public void LaborOfAWorkPool_VariesByItsStage()
    {
        FarmBuilder farm = Farm();
        foreach (LaborRow row in farm.Tables.Labor)
        {
            farm.Set(row, LaborRow.CropColumn, null);
        }

        Assert.Equal([40m, 25m, 10m, 8m, 0m, 5m], farm.Season(2025).CropNamed("beets").Sums.CostByBehavior);
    }

    [Fact]
    public void ClosingStock_ComesOffTheCostAtItsValue()
    {
        FarmBuilder farm = Farm();
        farm.Set(farm.Tables.Sales[0], SaleRow.QuantityColumn, 50m);
        EnterpriseBudget beets = farm.Season(2025).CropNamed("beets");
        decimal stock = beets.Sums.ClosingStock.Amount;
        Assert.True(stock > 0m);
        Close.To((78m - stock) / 50m / 0.95m, beets.BreakEvenPrice.Value!.Value, 0.0000001m);
    }
}
