using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>docs/methods.md 4: standards beside wages, what is paid on top of wages, and a season that took no labor.</summary>
public class PaidHoursTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).Crop("beets").Crop("peas").Bed("bed")
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-09-01").Planting("p", "peas", "bed", 30, "2025-05-01", "2025-09-01").AsOf("2025-12-31");

    private static FarmBuilder Standards(FarmBuilder farm) => farm.Standard("beets", Stage.Grow, 300, RatePer.BedFoot).Standard("peas", Stage.Grow, 100, RatePer.BedFoot);

    [Fact]
    public void Wages_WithoutALog_AreSharedOutByStandardsAndStayWhatTheyAre()
    {
        SeasonReview season = Standards(Farm()).Spend("2025-12-31", 3000, "wages").Season(2025);
        Assert.Equal([1500m, 1500m], season.Plantings.Select(budget => budget.LaborCost.Amount)); // 50 h each
        Assert.Equal(0m, season.Farm.Sums.OwnerLabor.Amount);
        Assert.Equal(100m, season.Farm.Sums.EstimatedHours);
        season.AssertProven();
    }

    [Fact]
    public void HiredCrew_LoggedInPart_CostsWhatTheBooksSay()
    {
        SeasonReview season = Standards(Farm()).Worker("Al", WorkerKind.Hired, 20).Worker("Di", WorkerKind.Owner).Work("2025-06-01", "Al", 50, "grow", planting: "b").Spend("2025-12-31", 2000, "wages").Season(2025);
        Assert.Equal(2000m, season.Farm.LaborCost.Amount);
        Assert.Equal([1000m, 1000m], season.Plantings.Select(budget => budget.Sums.HiredLabor.Amount));
        season.AssertProven();
    }

    [Theory]
    [InlineData(true, false, WorkerKind.Owner)]
    [InlineData(false, true, WorkerKind.Owner)]
    [InlineData(false, false, WorkerKind.Hired)]
    public void HoursFromStandards_WithoutWages_AreOwnOnlyWhereTheFarmHasAnOwner(bool wage, bool worker, WorkerKind kind)
    {
        FarmBuilder farm = Standards(Farm()).Worker("Al", WorkerKind.Volunteer).With(settings => settings with { OwnerWage = wage ? 20m : null });
        if (worker)
        {
            farm.Worker("Di", WorkerKind.Owner);
        }

        FarmReview review = farm.Review();
        Assert.Equal([kind, kind], review.Trace.Labor.Select(use => use.Kind));
        Assert.Equal(kind == WorkerKind.Hired, review.Season(2025).Known.LaborCost is not null);
    }

    [Fact]
    public void ControlTotal_OfAFarmThatPaysNoWages_AddsOwnHours()
    {
        SeasonReview season = Standards(Farm()).Total("labor", "hours:grow", 60, "2025-01-01").Season(2025);
        Assert.Equal((1200m, 60m), (season.Farm.Sums.OwnerLabor.Amount, season.Farm.LaborHours.Value));
    }

    [Fact]
    public void OneRowOfWorkersCompensation_LeavesWageTimesHours()
    {
        SeasonReview season = Farm().Worker("Al", WorkerKind.Hired, 15).Work("2025-06-01", "Al", 100, "grow", planting: "b").Spend("2025-12-31", 1, "workers compensation").Season(2025);
        Assert.Equal(1501m, season.Farm.LaborCost.Amount);
        Assert.Equal(100m, season.Farm.LaborHours.Value);
        season.AssertProven();
    }

    [Theory]
    [InlineData(ExpenseClass.LaborBurden, null, true)]
    [InlineData(ExpenseClass.Labor, "Taxes", true)]
    [InlineData(ExpenseClass.Labor, "20", true)]
    [InlineData(ExpenseClass.Labor, "pension", true)]
    [InlineData(ExpenseClass.Labor, "Employee benefit programs", true)]
    [InlineData(ExpenseClass.Labor, "Labor hired", false)]
    [InlineData(ExpenseClass.Labor, "Custom hire (machine work)", false)]
    [InlineData(ExpenseClass.Labor, null, false)]
    [InlineData(ExpenseClass.Operating, "Taxes", false)]
    public void Category_ToldByClassElseByTaxLine_IsPaidOnTopOfWages(ExpenseClass kind, string? taxLine, bool burden) =>
        Assert.Equal(burden, new RowValues { ["category"] = "any name", ["class"] = kind, ["tax_line"] = taxLine }.Row<CategoryRow>().IsBurden());

    [Fact]
    public void BurdenInTheBooks_IsNotAddedAgainByPercent()
    {
        FarmBuilder farm = Farm().With(settings => settings with { PayrollBurdenPercent = 10m }).Worker("Al", WorkerKind.Hired, 15).Work("2025-06-01", "Al", 100, "grow", planting: "b");
        Assert.Equal(1650m, farm.Season(2025).Farm.LaborCost.Amount);
        SeasonReview season = farm.Spend("2025-12-31", 120, "payroll taxes").Season(2025);
        Assert.Equal(1620m, season.Farm.LaborCost.Amount);
        Assert.Contains("W512", season.Codes());
        season.AssertProven();
    }

    [Fact]
    public void BurdenWithWages_IsSpreadLikeThem()
    {
        SeasonReview season = Farm().Worker("Al", WorkerKind.Hired, 15).Work("2025-06-01", "Al", 10, "grow", planting: "b").Spend("2025-12-31", 150, "wages").Spend("2025-12-31", 20, "payroll taxes").Season(2025);
        Assert.Equal(170m, season.Farm.LaborCost.Amount);
        Assert.DoesNotContain("W511", season.Codes());
        season.AssertProven();
    }

    [Theory]
    [InlineData(112.49, true)]
    [InlineData(112.50, false)]
    [InlineData(225.00, false)]
    [InlineData(225.01, true)]
    public void HiredHour_FarFromTheWages_IsWarnedOf(double wages, bool warned)
    {
        SeasonReview season = Farm().Worker("Al", WorkerKind.Hired, 15).Work("2025-06-01", "Al", 10, "grow", planting: "b").Spend("2025-12-31", (decimal)wages, "wages").Season(2025);
        Assert.Equal(warned, season.Codes().Contains("W511"));
    }

    [Fact]
    public void UnpaidHoursNone_WithoutWagesAndHours_IsNoLaborKnownAsSuch()
    {
        FarmBuilder farm = Standards(Farm()).Spend("2025-05-01", 5, "seed");
        Assert.NotNull(farm.With(settings => settings with { OwnerWage = null }).Season(2025).Known.LaborCost);
        SeasonReview season = farm.With(settings => settings with { UnpaidHours = UnpaidHours.None }).Season(2025);
        Assert.Equal((null, null, null), (season.Known.Hours, season.Known.LaborCost, season.Known.OwnerLabor));
        Assert.Equal((0m, 0m), (season.Farm.LaborHours.Value, season.Farm.LaborCost.Amount));
        Assert.True(season.Farm.NetReturnPerBedFoot.IsAvailable);
        Assert.Equal("not available (no labor hours)", season.Farm.GrossMarginPerLaborHour.ToString());
        season.AssertProven();
    }

    [Fact]
    public void UnpaidHoursNone_BesideLoggedOwnHours_CountsThemAndSaysSo()
    {
        SeasonReview season = Farm().With(settings => settings with { UnpaidHours = UnpaidHours.None }).Worker("Di", WorkerKind.Owner).Work("2025-06-01", "Di", 2, "grow", planting: "b").Season(2025);
        Assert.Equal(40m, season.Farm.Sums.OwnerLabor.Amount);
        Assert.Contains("W514", season.Codes());
    }

    [Fact]
    public void Overhead_WithoutAnOwnHourInIt_IsKnownWithoutAnOwnerWage()
    {
        FarmBuilder farm = Farm().With(settings => settings with { OwnerWage = null }).Worker("Di", WorkerKind.Owner).Work("2025-06-01", "Di", 2, "grow", planting: "b").Spend("2025-05-01", 50, "insurance");
        Assert.Equal((50m, null), (farm.Season(2025).Farm.Sums.Overhead.Amount, farm.Season(2025).Known.Overhead));
        Assert.NotNull(farm.Work("2025-06-01", "Di", 1, "office").Season(2025).Known.Overhead);
    }

    [Fact]
    public void Pool_OfAnAssetWithoutInterest_HasNoOwnershipCostNorHaveItsFlows()
    {
        SeasonReview season = Farm().With(settings => settings with { InterestPercent = null, UnpaidHours = UnpaidHours.None }).Pool("boiler", "measured").Pool("house", "bed-feet").Pool("shed", "bed-feet").Use("boiler", "house", 1).Use("boiler", "household", 1)
            .Asset("boiler", "boiler", "2020-01-01", 1000, 10).Asset("old", "shed", "2000-01-01", 1000, 10).Spend("2025-05-01", 50, "repairs", pool: "shed").Season(2025);
        PoolResult boiler = season.PoolNamed("boiler");
        PoolResult house = season.PoolNamed("house");
        PoolResult shed = season.PoolNamed("shed");
        Assert.Equal((false, true, false), (boiler.OwnershipKnown, boiler.ReceivedKnown, boiler.PassedKnown));
        Assert.Equal((true, false, true), (house.OwnershipKnown, house.ReceivedKnown, house.PassedKnown));
        Assert.Equal((true, true, true), (shed.OwnershipKnown, shed.ReceivedKnown, shed.PassedKnown)); // past its life: nothing of capital is left
        Assert.Null(season.Known.Overhead);
    }

    [Fact]
    public void OwnerWage_WhereTheWorkersTableGivesOne_DecidesNothing()
    {
        FarmBuilder farm = Farm().Worker("Ed", WorkerKind.Owner, 25).Work("2025-06-01", "Ed", 2, "grow", planting: "b");
        Assert.True(OwnHourValue.Of(farm.Review().Trace).WorkersTableDecides);
        Assert.False(OwnHourValue.Of(farm.Worker("Di", WorkerKind.Owner).Work("2025-06-01", "Di", 2, "grow", planting: "b").Review().Trace).WorkersTableDecides);
    }
}
