using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>docs/methods.md 4, hours by stage, and standards.</summary>
public class HoursTests
{
    private static FarmBuilder Farm() => new FarmBuilder().Crop("beets").Crop("peas").Bed("bed").Worker("Al", WorkerKind.Volunteer).Channel("market", ChannelKind.Market).Channel("given", ChannelKind.Donation)
        .Planting("a", "beets", "bed", 10, "2025-05-01", "2025-07-01", "2025-04-01", 6).Planting("b", "beets", "bed", 30, "2025-06-01", "2025-09-01", "2025-04-20", 2)
        .AsOf("2025-12-31");

    private static decimal[] Hours(FarmBuilder farm) => farm.Season(2025).Plantings.Select(budget => budget.LaborHours.Value).ToArray();

    [Fact]
    public void Nursery_ByTraysOfWhatIsSownAndNotYetInTheBed()
    {
        Assert.Equal([4m, 0m], Hours(Farm().Work("2025-04-10", "Al", 4, "nursery", crop: "beets")));
        Assert.Equal([3m, 1m], Hours(Farm().Work("2025-04-25", "Al", 4, "nursery", crop: "beets")));
        Assert.Equal([0m, 4m], Hours(Farm().Work("2025-05-01", "Al", 4, "nursery", crop: "beets")));
    }

    [Fact]
    public void Nursery_AnyTraysBlank_ByBedFeet() => Assert.Equal(
        [1m, 3m, 4m],
        Hours(Farm().Planting("c", "beets", "bed", 40, "2025-06-01", "2025-09-01", "2025-04-20").Work("2025-04-25", "Al", 8, "nursery", crop: "beets")));

    [Fact]
    public void Nursery_NoTraysWrittenAsZero_IsNotBlank()
    {
        static FarmBuilder WithNone() => Farm().Planting("c", "beets", "bed", 40, "2025-06-01", "2025-09-01", "2025-03-20", 0);
        Assert.Equal([6m, 2m, 0m], Hours(WithNone().Work("2025-04-25", "Al", 8, "nursery", crop: "beets")));

        // On a day when nothing but the planting of no trays is sown: by bed-foot-weeks of the year.
        Assert.Equal(3, Hours(WithNone().Work("2025-03-25", "Al", 8, "nursery", crop: "beets")).Count(hours => hours > 0m));
    }

    [Fact]
    public void Grow_ByBedFeetOfWhatIsInTheBed()
    {
        Assert.Equal([1m, 3m], Hours(Farm().Work("2025-06-15", "Al", 4, "grow", crop: "beets")));
        Assert.Equal([0m, 4m], Hours(Farm().Work("2025-07-01", "Al", 4, "grow", crop: "beets")));
    }

    [Fact]
    public void Grow_NothingInTheBed_ByBedFootWeeksOfTheYear()
    {
        // 10 x 61 and 30 x 92 bed-foot-days
        decimal[] hours = Hours(Farm().Work("2025-11-01", "Al", 4, "grow", crop: "beets"));
        Close.To(4m * 610 / (610 + 2760), hours[0], 0.0000001m);
        Assert.Equal(4m, hours.Sum());
    }

    [Fact]
    public void HarvestAndPack_ByTheDaysQuantitiesElseTheNearestWithinThree()
    {
        FarmBuilder farm = Farm().Pick("2025-06-10", "a", 30).Pick("2025-06-10", "b", 10).Pick("2025-06-16", "b", 5);
        Assert.Equal([3m, 1m], Hours(farm.Work("2025-06-10", "Al", 4, "harvest", crop: "beets")));
        Assert.Equal([6m, 2m], Hours(farm.Work("2025-06-13", "Al", 4, "pack", crop: "beets"))); // 3 days both ways: the earlier
        Assert.Equal([6m, 6m], Hours(farm.Work("2025-06-14", "Al", 4, "pack", crop: "beets")));
    }

    [Fact]
    public void Sell_ByWhatIsSoldNotGivenAway()
    {
        FarmBuilder farm = Farm().Pick("2025-06-09", "a", 30).Pick("2025-06-10", "b", 10).Sell("2025-06-11", "beets", "given", 30).Sell("2025-06-12", "beets", "market", 10, 1).Work("2025-06-11", "Al", 4, "sell", crop: "beets");
        Assert.Equal([0m, 4m], Hours(farm));
    }

    [Fact]
    public void Hours_NamingAPlanting_GoThere() => Assert.Equal([0m, 4m], Hours(Farm().Work("2025-05-02", "Al", 4, "grow", planting: "b")));

    [Fact]
    public void Hours_OfACropWithoutPlanting_AreNotAssignedAndStayInTheProof()
    {
        SeasonReview season = Farm().Work("2025-05-02", "Al", 4, "grow", crop: "peas").Season(2025);
        Assert.Equal(4m, season.UnallocatedHours.Sum());
        Assert.Contains("W410", season.Codes());
        season.AssertProven();
    }

    [Fact]
    public void Hours_NamingNothing_GoToTheTasksPoolElseTheStagesWorkPool()
    {
        SeasonReview season = Farm().Pool("tractor", "bed-feet").Task("disking", Stage.Grow, "tractor").Work("2025-05-02", "Al", 4, "disking").Work("2025-05-02", "Al", 2, "weeding").Work("2025-05-02", "Al", 1, "office").Season(2025);
        Assert.Equal(4m, season.PoolNamed("tractor").Hours);
        Assert.Equal(2m, season.PoolNamed("grow work").Hours);
        Assert.Equal(1m, season.PoolNamed("general overhead").Hours);
        Assert.Equal(6m, season.Farm.LaborHours.Value);
        Assert.Equal(1m, season.Farm.Sums.OverheadHours);
        season.AssertProven();
    }

    [Fact]
    public void Hours_InAnotherWindow_AreCarriedAndBrought()
    {
        FarmReview review = Farm().Work("2024-12-20", "Al", 3, "nursery", planting: "a").Review();
        Assert.Equal(3m, review.Season(2024).CarriedHours);
        Assert.Equal(3m, review.Season(2025).BroughtHours);
        review.Season(2024).AssertProven();
        review.Season(2025).AssertProven();
    }

    [Fact]
    public void Standards_WithHoursLoggedToNoCrop_SpreadThemAndAddNothing()
    {
        SeasonReview season = Farm().Standard("beets", Stage.Grow, 6, RatePer.BedFoot).Work("2025-06-15", "Al", 8, "grow").Season(2025);
        Assert.Equal([2m, 6m], season.Plantings.Select(budget => budget.LaborHours.Value));
        Assert.Equal(8m, season.Farm.Sums.EstimatedHours);
        Assert.Equal(1m, season.Farm.EstimatedShare.Value);
        season.AssertProven();
    }

    [Fact]
    public void Standards_WithAControlTotal_AddTheRestAsHired()
    {
        SeasonReview season = Farm().Standard("beets", Stage.Harvest, 30, RatePer.Unit).Pick("2025-06-10", "a", 30).Pick("2025-06-10", "b", 10).Work("2025-06-10", "Al", 4, "harvest", crop: "beets")
            .Total("labor", "hours:harvest", 12, "2025-01-01", "2025-12-31").Spend("2025-12-31", 100, "wages").Season(2025);
        Assert.Equal([9m, 3m], season.Plantings.Select(budget => budget.LaborHours.Value));
        Assert.Equal([6m, 2m], season.Plantings.Select(budget => budget.Sums.EstimatedHours));
        Assert.Equal([75m, 25m], season.Plantings.Select(budget => budget.LaborCost.Amount));
        season.AssertProven();
    }

    [Fact]
    public void ControlTotals_MonthByMonthOrWithoutDates_CountTogether()
    {
        FarmBuilder farm = Farm().Standard("beets", Stage.Harvest, 30, RatePer.Unit).Pick("2025-06-10", "a", 30).Work("2025-06-10", "Al", 4, "harvest", crop: "beets");
        Assert.Equal(12m, farm.Total("labor", "hours:harvest", 5, "2025-06-01", "2025-06-30").Total("labor", "hours:harvest", 7, "2025-07-01", "2025-07-31").Season(2025).Farm.LaborHours.Value);
        Assert.Equal(15m, Farm().Standard("beets", Stage.Harvest, 30, RatePer.Unit).Pick("2025-06-10", "a", 30).Work("2025-06-10", "Al", 4, "harvest", crop: "beets").Total("labor", "hours:harvest", 15).Season(2025).Farm.LaborHours.Value);
    }

    [Fact]
    public void ControlTotal_BelowWhatIsLogged_AddsNothing() => Assert.Equal(
        4m,
        Farm().Standard("beets", Stage.Grow, 6, RatePer.BedFoot).Work("2025-06-15", "Al", 4, "grow", crop: "beets").Total("labor", "hours:grow", 3, "2025-01-01").Season(2025).Farm.LaborHours.Value);

    [Theory]
    [InlineData(RatePer.BedFoot, 1, 3)]
    [InlineData(RatePer.Unit, 3, 1)]
    [InlineData(RatePer.Tray, 0.6, 0.2)]
    [InlineData(RatePer.Planting, 0.1, 0.1)]
    public void Standards_WithNothingLogged_StandAsOwnerHours(RatePer per, double a, double b)
    {
        FarmBuilder farm = Farm().With(settings => settings with { OwnerWage = 10m }).Standard("beets", Stage.Grow, 6, per).Pick("2025-06-10", "a", 30).Pick("2025-06-10", "b", 10);
        SeasonReview season = farm.Season(2025);
        Assert.Equal([(decimal)a, (decimal)b], season.Plantings.Select(budget => budget.LaborHours.Value));
        Assert.Equal(10m * (decimal)(a + b), season.Farm.Sums.OwnerLabor.Amount);
        Assert.Equal(season.Farm.LaborHours.Value, season.Farm.Sums.EstimatedHours);
        season.AssertProven();
    }
}
