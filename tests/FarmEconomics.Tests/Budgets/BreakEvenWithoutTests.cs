using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>Break-even where the season is known to the end, but the budget has no common unit or no bed.</summary>
public class BreakEvenWithoutTests
{
    private static FarmBuilder Farm(decimal feet) => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets").Crop("kale", "bunch").Bed("bed")
        .Planting("b", "beets", "bed", feet, "2025-05-01", "2025-07-15").Planting("k", "kale", "bed", 10, "2025-05-01", "2025-07-15").Pick("2025-07-14", "b", 10).Sell("2025-07-14", "beets", "market", 10, 2)
        .Worker("Al", WorkerKind.Hired, 10).Work("2025-05-01", "Al", 1, "grow", planting: "b").Spend("2025-05-01", 5, "seed", planting: "b").AsOf("2025-12-31");

    [Fact]
    public void SeveralCrops_HaveNoBreakEven()
    {
        EnterpriseBudget farm = Farm(10).Season(2025).Farm;
        Assert.Equal("not available (several crops have no common unit)", farm.BreakEvenPrice.ToString());
        Assert.Equal("not available (several crops have no common unit)", farm.BreakEvenYield.ToString());
    }

    [Fact]
    public void MoneyWithoutGoods_HasNoBreakEven()
    {
        // Nothing was sold, but 5.00 came in for the crop: a row of the sales with an amount and no quantity.
        FarmBuilder farm = Farm(10);
        SaleRow sale = farm.Tables.Sales[0];
        farm.Set(sale, SaleRow.QuantityColumn, 0m).Set(sale, SaleRow.UnitPriceColumn, null).Set(sale, SaleRow.AmountColumn, 5m);
        farm.With(settings => settings with { ClosingStock = ClosingStock.Ignore });
        EnterpriseBudget beets = farm.Season(2025).CropNamed("beets");
        Assert.Equal(5m, beets.SalesValue.Amount);
        Assert.Equal("not available (nothing sold)", beets.BreakEvenPrice.ToString());
    }

    [Fact]
    public void CropWithoutBedFeet_HasABreakEvenPriceButNoYieldPerBedFoot()
    {
        EnterpriseBudget beets = Farm(0).Season(2025).CropNamed("beets");
        Assert.Equal(1.5m, beets.BreakEvenPrice.Value); // (5 + 10) / 10 lb
        Assert.Equal("not available (nothing planted in beds)", beets.BreakEvenYield.ToString());
    }
}
