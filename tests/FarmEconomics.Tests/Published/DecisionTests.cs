using System.Text.Json;
using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Tests.Building;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Published;

/// <summary>What-if figures and partial budgets against published ones; each file names its source.</summary>
public class DecisionTests
{
    [Fact]
    public void Grid_SweetCorn_MeetsPublishedCentreAndComputedCells()
    {
        JsonElement corn = Fixture.Load("sweet-corn-grid");
        SensitivityModel model = SweetCorn(corn);
        decimal[] prices = corn.Numbers("prices").Select(price => price / corn.Number("price")).ToArray();
        decimal[] yields = corn.Numbers("yields").Select(yield => yield / corn.Number("quantity")).ToArray();

        SensitivityGrid grid = SensitivityGrid.Of(model, prices, yields);

        for (int i = 0; i < prices.Length; i++)
        {
            // The source's cells carry up to four roundings to the cent.
            Fixture.Near(corn.Table("net_return")[i], [.. grid.NetReturn[i].Select(cell => cell.Amount)], 0.02m);
            decimal[] aboveVariable = yields.Select(yield => Above(model, prices[i], yield)).ToArray();
            Fixture.Near(corn.Table("return_above_variable")[i], aboveVariable, 0.01m);
        }

        JsonElement answers = corn.GetProperty("answers");
        answers.Check("published_net_return", model.NetReturn(1m, 1m));
        answers.Check("published_return_above_variable", Above(model, 1m, 1m));
        answers.Check("break_even_price", model.PriceFactorFor(1m, longRun: true).Value * corn.Number("price"));
        answers.Check("break_even_yield", model.YieldFactorFor(1m, longRun: true).Value * corn.Number("quantity"));
    }

    [Fact]
    public void PartialBudget_BeansToSaladGreens_MeetsPublished()
    {
        JsonElement file = Fixture.Load("beans-or-salad-greens");
        JsonElement[] crops = file.List("crops").ToArray();
        decimal wage = file.Number("wage");
        PartialBudget budget = new(
            [new("salad greens", new Money(crops[1].Number("sales")))],
            [new("labor", new Money(crops[0].Number("hours") * wage)), new("inputs", new Money(crops[0].Number("inputs")))],
            [new("labor", new Money(crops[1].Number("hours") * wage)), new("inputs", new Money(crops[1].Number("inputs")))],
            [new("beans", new Money(crops[0].Number("sales")))]);

        // Published beside the net change: decrease in costs 209.16, increase 36.53, positive 359.16, negative 396.53.
        file.GetProperty("answers").Check("net_change", budget.NetChange.Amount);
        Assert.Equal(359.16m, budget.Positive.Amount);
        Assert.Equal(396.53m, budget.Negative.Amount);
        Assert.Equal(209.16m, PartialBudget.Sum(budget.ReducedCosts).Amount);
        Assert.Equal(36.53m, PartialBudget.Sum(budget.AddedCosts).Amount);
    }

    /// <summary>The published bed judged from records: beans out, greens in, bed-foot for bed-foot; the source lets the price stay, as a market of endless elasticity does.</summary>
    [Fact]
    public void Swap_BeansForSaladGreensFromRecords_MeetsPublished()
    {
        JsonElement file = Fixture.Load("beans-or-salad-greens");
        FarmBuilder farm = new FarmBuilder(new FarmSettings { OwnerWage = file.Number("wage"), InterestPercent = 5m }).AsOf("2025-12-31")
            .Bed("One").Bed("Two").Channel("stall", ChannelKind.Market).Worker("me", WorkerKind.Owner).Task("weed", Stage.Grow);
        foreach (JsonElement crop in file.List("crops"))
        {
            string name = crop.Text("crop");
            string bed = name.Contains("bean", StringComparison.Ordinal) ? "One" : "Two";
            farm.Crop(name).Planting(name, name, bed, 100m, "2025-05-01", "2025-08-01").Pick("2025-07-01", name, 10m)
                .Sell("2025-07-01", name, "stall", 10m, amount: crop.Number("sales"))
                .Work("2025-06-01", "me", crop.Number("hours"), "weed", crop: name).Spend("2025-05-01", crop.Number("inputs"), "seed", crop: name);
        }

        ChangeAnswer answer = new ChangeJudge(SeasonCosts.Of(farm.Season(2025))).Judge(new Change(ChangeKind.Swap, "specialty green beans", Replacement: "salad greens", Elasticity: 1_000_000m));

        Assert.False(answer.ReplacementDoesNotFit);
        Assert.Equal(100m, answer.FeetAdded);
        file.GetProperty("answers").Check("net_change", answer.AvoidableChange.Amount);
    }

    [Fact]
    public void PartialBudget_DryBeansToCorn_MeetsPublished()
    {
        JsonElement file = Fixture.Load("dry-beans-to-corn");
        decimal acres = file.Number("acres");
        Money Returns(string crop) => new(file.GetProperty(crop).Number("yield") * file.GetProperty(crop).Number("price") * acres);
        Money Costs(string crop) => new(file.GetProperty(crop).Number("cost_per_acre") * acres);
        PartialBudget budget = new(
            [new("corn", Returns("corn"))],
            [new("beans", Costs("dry_beans"))],
            [new("corn", Costs("corn"))],
            [new("beans", Returns("dry_beans"))]);

        JsonElement answers = file.GetProperty("answers");
        answers.Check("total_benefits", budget.Positive.Amount);
        answers.Check("total_detriments", budget.Negative.Amount);
        answers.Check("net_change", budget.NetChange.Amount);
    }

    [Fact]
    public void Pessimistic_SweetCorn_FollowsThePublishedRule()
    {
        JsonElement file = Fixture.Load("scenario-rule");
        JsonElement rule = file.GetProperty("pessimistic");
        SensitivityCase scenario = SensitivityCase.Pessimistic;
        Assert.Equal(rule.Number("price_change"), scenario.PriceChange);
        Assert.Equal(rule.Number("production_change"), scenario.YieldChange);
        Assert.Equal(rule.Number("variable_cost_change"), scenario.VariableCostChange);

        Money receipts = scenario.Receipts(new Money(file.Number("base_receipts")));
        Money cost = scenario.VariableCost(new Money(file.Number("base_variable_cost")));

        JsonElement answers = file.GetProperty("answers");
        answers.Check("receipts", receipts.Amount);
        answers.Check("variable_cost", cost.Amount);
        answers.Check("return_above_variable", (receipts - cost).Amount);
        SensitivityModel corn = SweetCorn(Fixture.Load("sweet-corn-grid"), management: false);
        Close.To((receipts - cost).Amount - 122.26m, scenario.NetReturn(corn).Amount, 0.00m);
    }

    [Fact]
    public void CostByYield_HighTunnelTomato_BoxesFollowTheYieldAndTheRestDoesNot()
    {
        JsonElement file = Fixture.Load("tomato-cost-by-yield");
        decimal[] pounds = file.Numbers("pounds");
        decimal[] totals = file.Numbers("variable_cost_before_labor");
        decimal[] boxes = file.Numbers("boxes");
        List<CostLine> lines = file.GetProperty("same_at_every_yield").EnumerateObject().Select(item => Line(item.Name, CostDriver.Length, item.Value.Number())).ToList();
        lines.Add(Line("boxes", CostDriver.Quantity, boxes[0]));
        SensitivityModel model = new("tomato", new Money(0m), new Money(0m), pounds[0], new BedFeet(0m), new BedFootWeeks(0m), lines);
        for (int i = 0; i < pounds.Length; i++)
        {
            // What the source lets rise by steps that follow no one rule is added as it stands.
            decimal steps = file.GetProperty("rising_in_steps").EnumerateObject().Sum(item => item.Value.EnumerateArray().ElementAt(i).Number());
            Close.To(totals[i], steps - model.NetReturn(1m, pounds[i] / pounds[0]), 0.01m);
        }
    }

    private static decimal Above(SensitivityModel model, decimal price, decimal yield) =>
        Money.Rounded((price * yield * (model.Output.Amount - Cost(model, "selling charge"))) - (yield * Cost(model, "crates")) - Cost(model, "lines per acre") - Cost(model, "interest")).Amount;

    private static decimal Cost(SensitivityModel model, string name) => model.Lines.Single(line => line.Name == name).Amount.Amount;

    /// <summary>The budget with its management fee, a percent of all cost but the land, spread over what each cost varies with.</summary>
    private static SensitivityModel SweetCorn(JsonElement corn, bool management = true)
    {
        List<CostLine> lines = corn.List("costs").Select(cost => Line(cost.Text("item"), Words.TryParse(cost.Text("varies_with"), out CostDriver driver) ? driver : throw new FormatException(cost.Text("varies_with")), cost.Number("amount"))).ToList();
        decimal percent = management ? corn.Number("management_percent") / 100m : 0m;
        foreach (IGrouping<CostDriver, CostLine> group in lines.ToList().GroupBy(line => line.VariesWith))
        {
            decimal part = group.Sum(line => line.Amount.Amount) - (group.Key == CostDriver.Fixed ? corn.Number("management_leaves_out") : 0m);
            lines.Add(Line($"management on {group.Key}", group.Key, part * percent));
        }

        return new SensitivityModel("sweet corn", new Money(corn.Number("quantity") * corn.Number("price")), Money.Zero, corn.Number("quantity"), new BedFeet(17424m), new BedFootWeeks(0m), lines);
    }

    // What varies with sales there is a percentage: the selling charge, and the management fee on it.
    private static CostLine Line(string name, CostDriver varies, decimal amount) =>
        new(name, BudgetLine.Materials, varies, CostStream.Cash, null, new Money(amount)) { IsFee = varies == CostDriver.Units };
}
