using System.Text.Json;
using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Published;

/// <summary>Printed enterprise budgets entered as a season's records of one bed as large as an acre, through the engine of the review.</summary>
public class EnterpriseBudgetTests
{
    [Theory]
    [InlineData("sweet-corn-early")]
    [InlineData("sweet-corn-mid-late")]
    [InlineData("leaf-lettuce")]
    [InlineData("bell-pepper")]
    [InlineData("summer-squash")]
    [InlineData("potato")]
    public void Budget_OfPublishedAcre_GivesPublishedFigures(string dataset)
    {
        JsonElement fixture = Fixture.Load(dataset);
        SeasonReview season = Acre(fixture).Season(2025);
        season.AssertProven();
        EnterpriseBudget budget = season.CropNamed(fixture.Text("crop"));
        JsonElement answers = fixture.GetProperty("answers");
        decimal quantity = fixture.Number("quantity");
        answers.Check("output", budget.Output.Amount);
        answers.Check("variable_cost", (budget.TotalCost - budget.Sums.Overhead).Amount);
        answers.Check("return_above_variable_cost", budget.MarginAfterInfrastructure.Amount);
        answers.Check("overhead", budget.Sums.Overhead.Amount);
        answers.Check("total_cost", budget.TotalCost.Amount);
        answers.Check("net_return", budget.NetReturn.Amount);
        answers.Check("labor_hours", budget.LaborHours.Value);
        answers.Check("break_even_price", budget.BreakEvenPrice.Value);
        answers.Check("break_even_yield", budget.BreakEvenYield.Value * budget.Sums.BedFeet.Value);
        answers.Check("return_to_labor_per_hour", budget.ReturnToLaborPerHour.Value);
        answers.Check("gross_margin_per_labor_hour", budget.GrossMarginPerLaborHour.Value);
        Assert.Equal(quantity, budget.Sums.Sold);
    }

    [Theory]
    [InlineData("sweet-corn-early")]
    [InlineData("leaf-lettuce")]
    [InlineData("bell-pepper")]
    public void LaborLines_AsHoursAndWages_GiveThePrintedAmounts(string dataset)
    {
        JsonElement fixture = Fixture.Load(dataset);
        EnterpriseBudget budget = Acre(fixture).Season(2025).CropNamed(fixture.Text("crop"));
        decimal printed = fixture.List("lines").Where(line => line.Text("as") == "labor").Sum(line => line.Number("amount"))
            + fixture.List("lines").Where(line => line.Text("as") == "expense" && line.Text("category") == "piece work").Sum(line => line.Number("amount"));
        Assert.Equal(printed, budget.LaborCost.Amount);
    }

    [Theory]
    [InlineData("sweet-corn-early")]
    [InlineData("leaf-lettuce")]
    public void LaborLines_AsHoursWithTheWagesInTheBooks_GiveTheSameBudget(string dataset)
    {
        JsonElement fixture = Fixture.Load(dataset);
        FarmBuilder farm = Acre(fixture);
        foreach (JsonElement line in fixture.List("lines").Where(line => line.Text("as") == "labor"))
        {
            farm.Spend("2025-08-31", line.Number("amount"), "wages");
        }

        SeasonReview season = farm.Season(2025);
        season.AssertProven();
        fixture.GetProperty("answers").Check("total_cost", season.Farm.TotalCost.Amount);
    }

    private static FarmBuilder Acre(JsonElement fixture)
    {
        string crop = fixture.Text("crop");
        decimal quantity = fixture.Number("quantity");
        FarmBuilder farm = new FarmBuilder(new FarmSettings { InterestPercent = 0m, OwnerWage = 0m })
            .Crop(crop, fixture.Text("unit")).Bed("acre", fixture.Number("bed_feet"))
            .Planting("the acre", crop, "acre", fixture.Number("bed_feet"), "2025-05-01", "2025-09-01")
            .Pick("2025-08-01", "the acre", quantity)
            .Channel("buyer", ChannelKind.Wholesale, fixture.List("lines").Where(line => line.Text("as") == "fee").Sum(line => line.Number("percent")))
            .Category("machine repairs", ExpenseClass.Operating, StatementLine.Materials, varies: CostDriver.Length)
            .Category("machinery and equipment", ExpenseClass.Operating, StatementLine.Overhead, varies: CostDriver.Fixed)
            .Category("management fee", ExpenseClass.Operating, StatementLine.Overhead, varies: CostDriver.Fixed)
            .Category("certification", ExpenseClass.Operating, StatementLine.Materials, varies: CostDriver.Length)
            .Category("irrigation charge", ExpenseClass.Operating, StatementLine.Infrastructure, varies: CostDriver.Length)
            .Category("interest on running cost", ExpenseClass.Operating, StatementLine.Materials, varies: CostDriver.Length)
            .Category("piece work", ExpenseClass.Operating, StatementLine.Labor, varies: CostDriver.Quantity);
        if (fixture.TryGetProperty("receipts", out JsonElement receipts))
        {
            farm.Sell("2025-08-01", crop, "buyer", quantity, amount: receipts.Number());
        }
        else
        {
            farm.Sell("2025-08-01", crop, "buyer", quantity, fixture.Number("price"));
        }

        foreach (JsonElement line in fixture.List("lines"))
        {
            string item = line.Text("item");
            if (line.Text("as") == "labor")
            {
                farm.Worker(item, WorkerKind.Hired, line.Number("wage")).Work("2025-06-01", item, line.Number("hours"), "grow", crop: crop);
            }
            else if (line.Text("as") == "expense")
            {
                farm.Spend("2025-05-01", line.Number("amount"), line.Text("category"), crop: crop);
            }
        }

        return farm;
    }
}
