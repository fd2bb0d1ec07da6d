using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Budgets;

/// <summary>How a pool's money and hours land: by stage, by what they vary with, and what flows between pools.</summary>
public class PoolSharingTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m, OwnerWage = 5m }).Crop("beets").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30")
        .Worker("Al", WorkerKind.Hired, 10).Worker("Di", WorkerKind.Owner).AsOf("2025-12-31");

    [Fact]
    public void LaborOfAPool_KeepsItsStages()
    {
        // Hired 1 h sell and 3 h pack at 10, owner 2 h sell and 2 h grow at 5.
        BudgetSums sums = Farm().Pool("shed", "bed-feet").Work("2025-06-01", "Al", 1, "sell", pool: "shed").Work("2025-06-01", "Al", 3, "pack", pool: "shed").Work("2025-06-01", "Di", 2, "sell", pool: "shed").Work("2025-06-01", "Di", 2, "grow", pool: "shed")
            .Season(2025).Plantings[0].Sums;
        Assert.Equal([0m, 2m, 0m, 3m, 3m, 0m], sums.HoursByStage);
        Assert.Equal(20m, sums.SellLabor);
        Assert.Equal([10m, 30m, 0m, 0m, 0m, 20m], sums.CostByBehavior);
        Assert.Equal(0m, sums.EstimatedHours);
    }

    [Fact]
    public void OverheadPool_HoldsLaborThatVariesWithNothingAndIsNoSellLabor()
    {
        BudgetSums sums = Farm().Pool("barn", "bed-feet", StatementLine.Overhead, varies: CostDriver.Length).Work("2025-06-01", "Al", 1, "sell", pool: "barn").Spend("2025-06-01", 7, "supplies", pool: "barn").Asset("barn", "barn", "2025-01-01", 1000, 10).Season(2025).Plantings[0].Sums;
        Assert.Equal([7m, 0m, 0m, 110m, 0m, 0m], sums.CostByBehavior);
        Assert.Equal((0m, 117m, 1m), (sums.SellLabor, sums.Overhead.Amount, sums.OverheadHours));
    }

    [Fact]
    public void OwnershipCost_VariesWithNothingWhateverThePool() =>
        Assert.Equal([0m, 0m, 0m, 100m, 0m, 0m], Farm().Pool("shed", "bed-feet", varies: CostDriver.Quantity).Asset("shed", "shed", "2025-01-01", 1000, 10).Season(2025).Plantings[0].Sums.CostByBehavior);

    [Fact]
    public void HoursAndMoneyOutsideTheCrops_AreKeptApart()
    {
        // 4 h: half to beets, a quarter to the household, a quarter used by peas, which nobody planted.
        SeasonReview season = Farm().Crop("peas").Pool("shed", "measured").Use("shed", "beets", 2).Use("shed", "household", 1).Use("shed", "peas", 1).Work("2025-06-01", "Al", 4, "pack", pool: "shed").Season(2025);
        Assert.Equal([1m, 0m, 1m], season.UnallocatedHours);
        Assert.Equal([10m, 10m, 0m], [season.UnallocatedTotal(Unallocated.Household), season.UnallocatedTotal(Unallocated.NotAssigned), season.UnallocatedTotal(Unallocated.Unused)]);
        season.AssertProven();
    }

    [Fact]
    public void FlowsBetweenPools_CountCashLaborAndOwnership()
    {
        // Power holds 60 cash, 20 labor and 100 of ownership and passes a half to heat, a quarter to the well and a quarter to beets.
        SeasonReview season = Farm().Pool("power", "measured").Pool("heat", "bed-feet").Pool("well", "bed-feet").Use("power", "heat", 2).Use("power", "well", 1).Use("power", "beets", 1)
            .Spend("2025-06-01", 60, "electricity", pool: "power").Work("2025-06-01", "Al", 2, "grow", pool: "power").Asset("panels", "power", "2025-01-01", 1000, 10).Spend("2025-06-01", 8, "heating fuel", pool: "heat").Season(2025);
        Assert.Equal(new Money(135m), season.PoolNamed("power").PassedToPools);
        Assert.Equal([0m, 90m, 45m], new[] { "power", "heat", "well" }.Select(pool => season.PoolNamed(pool).ReceivedFromPools.Amount));
        Assert.Equal(Money.Zero, season.PoolNamed("heat").PassedToPools);
    }

    [Fact]
    public void CentsThatDoNotReachEveryPlanting_StillTellItsShare()
    {
        // One cent over two plantings: the second gets none of it but has its half.
        SeasonReview season = Farm().Planting("b2", "beets", "bed", 10, "2025-05-01", "2025-06-30").Pool("shed", "bed-feet").Spend("2025-06-01", 0.01m, "repairs", pool: "shed").Season(2025);
        Assert.Equal([("b", 0.5m, 0.01m), ("b2", 0.5m, 0m)], season.PoolNamed("shed").Charges.Select(charge => (charge.Enterprise!.Planting.Name, charge.Share, charge.Amount.Amount)));
    }

    [Fact]
    public void DirectLabor_KeepsItsStagesAndOnlySellingIsSellLabor()
    {
        BudgetSums sums = Farm().Work("2025-06-01", "Al", 1, "sell", planting: "b").Work("2025-06-01", "Al", 3, "pack", planting: "b").Work("2025-06-01", "Di", 2, "grow", planting: "b").Work("2025-06-01", "Di", 4, "office", planting: "b").Spend("2025-06-01", 9, "card fees", planting: "b").Season(2025).Plantings[0].Sums;
        Assert.Equal([0m, 2m, 0m, 3m, 1m, 4m], sums.HoursByStage);
        Assert.Equal(10m, sums.SellLabor);
        Assert.Equal([10m, 40m, 9m, 20m, 0m, 0m], sums.CostByBehavior);
    }
}
