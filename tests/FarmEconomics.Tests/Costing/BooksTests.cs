using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>docs/methods.md 5, the books: where every class of expense lands.</summary>
public class BooksTests
{
    private static FarmBuilder Farm() => new FarmBuilder().Crop("beets", perCrate: 10).Bed("bed").Channel("market", ChannelKind.Market).Channel("stand", ChannelKind.Stand).Channel("given", ChannelKind.Donation)
        .Planting("a", "beets", "bed", 10, "2025-05-01", "2025-09-01").Planting("b", "beets", "bed", 30, "2025-05-01", "2025-09-01")
        .Pick("2025-06-01", "a", 60).Pick("2025-07-01", "b", 20).Sell("2025-06-01", "beets", "market", 60, 1).Sell("2025-07-01", "beets", "stand", 20, 7).AsOf("2025-12-31");

    [Fact]
    public void Expense_NamingACrop_SplitsByWhatItsCategoryVariesWith()
    {
        Assert.Equal([10m, 30m], Farm().Spend("2025-05-01", 40, "seed", crop: "beets").Season(2025).Plantings.Select(budget => budget.Sums.Materials.Amount));
        Assert.Equal([30m, 10m], Farm().Spend("2025-05-01", 40, "packaging", crop: "beets").Season(2025).Plantings.Select(budget => budget.Sums.Selling.Amount));
        Assert.Equal([12m, 28m], Farm().Spend("2025-05-01", 40, "card fees", crop: "beets").Season(2025).Plantings.Select(budget => budget.Sums.Selling.Amount));
    }

    [Fact]
    public void Expense_NamingAChannel_FollowsItsSales()
    {
        SeasonReview season = Farm().Spend("2025-05-01", 40, "market fees", channel: "stand").Season(2025);
        Assert.Equal([0m, 40m], season.Plantings.Select(budget => budget.Sums.Selling.Amount));
        Assert.Equal(40m, season.Channels.Single(channel => channel.Channel.Name == "stand").DirectCosts.Amount);
        season.AssertProven();
    }

    [Fact]
    public void Wages_NamingAChannel_StandOnTheLaborLineNotInItsMargin()
    {
        SeasonReview season = Farm().Spend("2025-05-01", 40, "wages", channel: "stand").Season(2025);
        Assert.Equal([0m, 40m], season.Plantings.Select(budget => budget.LaborCost.Amount));
        Assert.Equal(140m, season.Channels.Single(channel => channel.Channel.Name == "stand").Margin.Amount);
        season.AssertProven();
    }

    [Fact]
    public void Expense_NamingAChannelThatGivesAway_FollowsItsCratesElseIsNotAssigned()
    {
        SeasonReview given = Farm().Pick("2025-07-02", "a", 10).Sell("2025-07-02", "beets", "given", 10).Spend("2025-07-02", 9, "delivery", channel: "given").Season(2025);
        Assert.Equal([9m, 0m], given.Plantings.Select(budget => budget.Sums.Selling.Amount));
        SeasonReview none = Farm().Spend("2025-07-02", 9, "delivery", channel: "given").Season(2025);
        Assert.Equal(9m, none.UnallocatedTotal(Unallocated.NotAssigned));
        Assert.Contains("W501", none.Codes());
        none.AssertProven();
    }

    [Fact]
    public void FarmPercent_TakesTheHouseholdsPartOutFirst()
    {
        SeasonReview season = Farm().Spend("2025-05-01", 33.33m, "fuel", farmPercent: 50).Season(2025);
        Assert.Equal(16.67m, season.Farm.Sums.Overhead.Amount);
        Assert.Equal(16.66m, season.UnallocatedTotal(Unallocated.Household));
        season.AssertProven();
    }

    [Theory]
    [InlineData("equipment")]
    [InlineData("loan principal")]
    [InlineData("loan interest")]
    [InlineData("income tax")]
    [InlineData("household draw")]
    public void Classes_OutsideABudget_AreExcludedAndStayInTheProof(string category)
    {
        SeasonReview season = Farm().Spend("2025-05-01", 500, category, crop: "beets").Season(2025);
        Assert.Equal(500m, season.UnallocatedTotal(Unallocated.Excluded));
        Assert.Equal(0m, season.Farm.TotalCost.Amount);
        season.AssertProven();
    }

    [Fact]
    public void InterestOnASeasonalLoan_IsOverhead() => Assert.Equal(12m, Farm().Spend("2025-05-01", 12, "operating loan interest").Season(2025).Farm.Sums.Overhead.Amount);

    [Fact]
    public void Refund_IsANegativeExpenseToTheCent()
    {
        SeasonReview season = Farm().Spend("2025-05-01", 10, "compost").Spend("2025-06-01", -0.05m, "compost").Spend("2025-06-02", -20, "seed").Season(2025);
        Assert.Equal(-10.05m, season.Farm.Sums.Materials.Amount);
        Assert.Equal([-5m, -15m], season.Plantings.Select(budget => season.PoolNamed("seed and plants").Charged(budget.Name)));
        season.AssertProven();
    }

    [Fact]
    public void Category_OfTheGrowers_OverridesTheBuiltIn()
    {
        SeasonReview season = Farm().Category("Seed", ExpenseClass.Operating, StatementLine.Overhead, "general overhead", CostDriver.Fixed).Spend("2025-05-01", 8, "seed").Season(2025);
        Assert.Equal(8m, season.Farm.Sums.Overhead.Amount);
    }

    [Fact]
    public void BudgetLines_AddUpStepByStep()
    {
        EnterpriseBudget farm = Farm().Worker("Al", WorkerKind.Hired, 10).Spend("2025-05-01", 20, "seed").Spend("2025-05-01", 5, "packaging").Spend("2025-05-01", 7, "fuel").Pool("well", "bed-feet")
            .Spend("2025-05-01", 3, "electricity", pool: "well").Work("2025-06-01", "Al", 2, "grow").Season(2025).Farm;
        Assert.Equal(200m, farm.Output.Amount);
        Assert.Equal(175m, farm.GrossMargin.Amount);
        Assert.Equal(155m, farm.MarginAfterLabor.Amount);
        Assert.Equal(152m, farm.MarginAfterInfrastructure.Amount);
        Assert.Equal(145m, farm.NetReturn.Amount);
        Assert.Equal(55m, farm.TotalCost.Amount);
        Assert.Equal(87.5m, farm.GrossMarginPerLaborHour.Value);
        Assert.Equal((145m + 20m) / 2m, farm.ReturnToLaborPerHour.Value);
    }
}
