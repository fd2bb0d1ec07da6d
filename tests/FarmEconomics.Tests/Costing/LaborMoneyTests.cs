using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>docs/methods.md 4, labor money: the books, else wages; owners at the owner wage.</summary>
public class LaborMoneyTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 5m }).Crop("beets").Crop("peas").Bed("bed")
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-09-01").Planting("p", "peas", "bed", 30, "2025-05-01", "2025-09-01")
        .Worker("Al", WorkerKind.Hired, 10).Worker("Di", WorkerKind.Owner).AsOf("2025-12-31");

    [Fact]
    public void HiredMoney_OfTheBooks_IsSpreadOverHiredHours()
    {
        SeasonReview season = Farm().Work("2025-06-01", "Al", 1, "grow", crop: "beets").Work("2025-06-02", "Al", 2, "grow", crop: "peas").Work("2025-06-02", "Di", 5, "grow", crop: "peas")
            .Spend("2025-12-31", 70, "wages").Spend("2025-12-31", 30, "payroll taxes").Season(2025);
        Assert.Equal([33.33m, 66.67m], season.Plantings.Select(budget => budget.Sums.HiredLabor.Amount));
        season.AssertProven();
    }

    [Fact]
    public void OneRowsMoney_OnATie_GivesTheOddCentToThePlantingEarlierInTheFile()
    {
        // 0.05 h x 20.20 = 1.01 over two equal picks; the planting that is later in the file was picked first that day.
        SeasonReview season = Farm().With(settings => settings with { OwnerWage = 20.2m }).Planting("b2", "beets", "bed", 10, "2025-05-01", "2025-09-01")
            .Pick("2025-06-01", "b2", 5).Pick("2025-06-01", "b", 5).Work("2025-06-01", "Di", 0.05m, "harvest", crop: "beets").Season(2025);
        Assert.Equal([0.51m, 0m, 0.50m], season.Plantings.Select(budget => budget.LaborCost.Amount));
        season.AssertProven();
    }

    [Fact]
    public void HiredMoney_NamingACrop_GoesThereWithoutHours()
    {
        SeasonReview season = Farm().Spend("2025-12-31", 70, "wages", crop: "beets").Season(2025);
        Assert.Equal([70m, 0m], season.Plantings.Select(budget => budget.LaborCost.Amount));
        Assert.Equal(0m, season.Farm.LaborHours.Value);
        Assert.Equal("not available (no labor records)", season.Farm.GrossMarginPerLaborHour.ToString());
    }

    [Fact]
    public void HiredMoney_WithoutHiredHours_IsUnloggedLabor()
    {
        SeasonReview season = Farm().Work("2025-06-01", "Di", 1, "grow", crop: "beets").Spend("2025-12-31", 100, "wages").Season(2025);
        Assert.Equal(100m, season.PoolNamed("unlogged labor").Labor.Amount);
        Assert.Equal([25m, 75m], season.Plantings.Select(budget => budget.Sums.HiredLabor.Amount));
        season.AssertProven();
    }

    [Fact]
    public void HiredHours_WithoutBooks_CostWageAndBurden()
    {
        SeasonReview season = Farm().With(settings => settings with { PayrollBurdenPercent = 7.65m }).Work("2025-06-01", "Al", 1.5m, "grow", crop: "beets").Season(2025);
        Assert.Equal(16.15m, season.Farm.Sums.HiredLabor.Amount); // 1.5 x 10 x 1.0765 = 16.1475
        season.AssertProven();
    }

    [Fact]
    public void Wage_FromADayOn_CountsFromThen()
    {
        SeasonReview season = Farm().Worker("Al", WorkerKind.Hired, 12, "2025-07-01").Work("2025-06-30", "Al", 1, "grow", crop: "beets").Work("2025-07-01", "Al", 1, "grow", crop: "peas").Season(2025);
        Assert.Equal([10m, 12m], season.Plantings.Select(budget => budget.LaborCost.Amount));
    }

    [Fact]
    public void HiredHours_WithoutWageAndBooks_LeaveLaborCostNotAvailable()
    {
        SeasonReview season = Farm().Work("2025-06-01", "Who", 2, "grow", crop: "beets").Spend("2025-05-01", 5, "seed").Season(2025);
        Assert.Contains("W408", season.Codes());
        Assert.NotNull(season.Known.LaborCost);
        Assert.False(season.Farm.NetReturnPerBedFoot.IsAvailable);
        Assert.True(season.Farm.GrossMarginPerLaborHour.IsAvailable);
        season.AssertProven();
    }

    [Fact]
    public void OwnerHours_AtTheOwnersWageElseOwnerWage()
    {
        SeasonReview season = Farm().With(settings => settings with { OwnerWage = 15m }).Worker("Ed", WorkerKind.Owner, 20).Work("2025-06-01", "Di", 2, "grow", crop: "beets").Work("2025-06-01", "Ed", 2, "grow", crop: "peas").Season(2025);
        Assert.Equal([30m, 40m], season.Plantings.Select(budget => budget.Sums.OwnerLabor.Amount));
        Assert.Equal("net return", season.Known.NetReturnLabel);
        season.AssertProven();
    }

    [Fact]
    public void OwnerHours_WithoutAWage_LeaveNetReturnBeforeOwnerLabor()
    {
        SeasonReview season = Farm().Work("2025-06-01", "Di", 2, "grow", crop: "beets").Spend("2025-05-01", 5, "seed").Season(2025);
        Assert.Equal("net return before owner labor", season.Known.NetReturnLabel);
        Assert.Contains("W506", season.Codes());
        Assert.False(season.Farm.NetReturnPerBedFoot.IsAvailable);
        Assert.True(season.Farm.GrossMarginPerLaborHour.IsAvailable);
    }

    [Fact]
    public void LaborThroughPools_StandsOnTheLaborLineUnlessThePoolIsOverhead()
    {
        SeasonReview season = Farm().Pool("cold room", "bed-feet", StatementLine.Infrastructure).Work("2025-06-01", "Al", 1, "pack", pool: "cold room").Work("2025-06-01", "Al", 3, "office").Season(2025);
        Assert.Equal(10m, season.Farm.LaborCost.Amount);
        Assert.Equal(0m, season.Farm.Sums.Infrastructure.Amount);
        Assert.Equal(30m, season.Farm.Sums.Overhead.Amount);
        Assert.Equal(1m, season.Farm.LaborHours.Value);
        season.AssertProven();
    }

    [Fact]
    public void Row_OfNoHours_IsHarmless()
    {
        SeasonReview season = Farm().With(settings => settings with { OwnerWage = 15m }).Work("2025-06-01", "Di", 0, "grow", crop: "beets").Work("2025-06-01", "Al", 0, "grow").Work("2025-06-01", "Al", 2, "grow", planting: "b").Season(2025);
        Assert.Equal(20m, season.Farm.LaborCost.Amount);
        season.AssertProven();
    }
}
