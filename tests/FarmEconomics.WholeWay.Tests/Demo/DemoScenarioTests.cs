using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Reports;
using Xunit;

namespace FarmEconomics.WholeWay.Tests.Demo;

/// <summary>Scenarios of the demo farm: what each kind of change does to a whole season, proven to the cent.</summary>
public class DemoScenarioTests
{
    private static FarmReview Review => DemoSeason.Review;

    [SlowTheory]
    [InlineData("owner_wage=24.50; wage of owner=+3%")]
    [InlineData("interest_percent=8; ownership_method=depreciation-and-interest; idle_capacity=spread; closing_stock=ignore")]
    [InlineData("price of Carrots=2.75; prices at Juniper Shop=+12.5%; price of Salad mix at Saturday Market=-10%")]
    [InlineData("wages=+7%; hours of harvest=-15%; hours of Carrots=+20%")]
    [InlineData("wage of hired=21; hours=-3%")]
    [InlineData("expenses of fuel=+40%; expenses of pool general overhead=-5%; expenses of packaging=+10%; expenses=+2%")]
    [InlineData("yield of Tomatoes=-30%; yields=+4%")]
    [InlineData("income of Harvest Share=+6%; fee of Saturday Market=8; income of Workshops=-50%")]
    public void Scenario_EverySeason_IsProven(string changes)
    {
        FarmScenario scenario = FarmScenario.Parse("one", changes, Review.Records);
        foreach (int year in Review.CropYears.Where(year => year <= Review.LatestCropYear))
        {
            ScenarioOutcome outcome = ScenarioComparison.Of(Review, year, scenario).Outcomes[0];
            outcome.After.AssertProven();
            Assert.NotEqual(0m, outcome.FarmNet.Difference.Value);
            Assert.All(outcome.Effects, effect => Assert.True(effect.FarmNet.Difference.IsAvailable));
        }
    }

    /// <summary>The same money, worked out row by row from the sales table.</summary>
    [Fact]
    public void Price_OfACrop_MovesTheMoneyOfItsSalesRows()
    {
        ScenarioOutcome outcome = ScenarioComparison.Of(Review, Review.LatestCropYear, FarmScenario.Parse("one", "price of Carrots=+10%", Review.Records)).Outcomes[0];
        decimal expected = 0m;
        foreach (SaleRow row in Review.Records.Sales.Where(row => row.Crop == "Carrots" && (row.UnitPrice ?? row.Amount) is not null))
        {
            decimal was = row.Amount ?? decimal.Round(row.Quantity * row.UnitPrice!.Value, 2, MidpointRounding.AwayFromZero);
            decimal would = decimal.Round((row.Amount ?? (row.Quantity * row.UnitPrice!.Value)) * 1.1m, 2, MidpointRounding.AwayFromZero);
            expected += would - was;
        }

        Assert.True(expected > 100m);
        Assert.Equal(expected, Sold(outcome.Review) - Sold(Review));

        static decimal Sold(FarmReview review) => review.Trace.Dispositions.Where(disposition => disposition.Channel.IsPriced).Sum(disposition => disposition.Amount.Amount);
    }
}
