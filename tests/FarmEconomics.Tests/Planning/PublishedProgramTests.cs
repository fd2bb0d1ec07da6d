using System.Text.Json;
using FarmEconomics.Planning.Programs;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>Linear programs of farms against published answers; each file names its source.</summary>
public class PublishedProgramTests
{
    public static TheoryData<int> Cases => [.. Enumerable.Range(0, Fixture.Load("planning/crop-programs").GetProperty("cases").GetArrayLength())];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Solve_CropProgram_MeetsThePublishedOptimumAndShadowPrices(int which)
    {
        JsonElement program = Fixture.Load("planning/crop-programs").GetProperty("cases")[which];
        LinearModel model = Programs.Of(program);

        LinearSolution solution = Programs.Solver.Solve(model);

        JsonElement answers = program.GetProperty("answers");
        double tolerance = program.Double("tolerance");
        Programs.Near(answers.Double("objective"), solution.Objective, tolerance);
        Programs.Near(answers.Doubles("levels"), solution.Values, tolerance);
        Programs.Near(answers.Doubles("shadow"), solution.ShadowPrices, tolerance);
        Programs.Near(solution.Objective, solution.DualObjective(model), 0.005);
    }

    [Fact]
    public void Solve_HazellsVegetables_MeetsThePublishedPlanAndYearlyIncomes()
    {
        JsonElement file = Fixture.Load("planning/hazell-vegetables");
        LinearModel model = Programs.Of(file);

        LinearSolution solution = Programs.Solver.Solve(model);

        JsonElement answers = file.GetProperty("answers");
        Programs.Near(answers.Double("objective"), solution.Objective, 0.01);
        Programs.Near(answers.Doubles("levels"), solution.Values, 0.0001);
        Programs.Near(answers.Doubles("shadow"), solution.ShadowPrices, 0.0001);
        Programs.Near(answers.Double("reduced_cost_carrot"), solution.ReducedCosts[0], 0.0001);
        Programs.Near(solution.Objective, solution.DualObjective(model), 0.005);
        double[] incomes = [.. Margins(file).Select(year => year.Zip(solution.Values, (margin, acres) => margin * acres).Sum())];
        Programs.Near(answers.Doubles("income_by_year"), incomes, 0.01);
        Programs.Near(answers.Double("objective_with_exact_means"), incomes.Average(), 0.01);
        Programs.Near(answers.Double("objective_with_exact_means"), Programs.Solver.Solve(Programs.Of(file, Means(file))).Objective, 0.01);
    }

    /// <summary>The least sum of shortfalls below the mean of six years, for a given mean income: rounded means would give another frontier.</summary>
    [Fact]
    public void Shortfalls_HazellsVegetables_MeetTheFrontier()
    {
        JsonElement file = Fixture.Load("planning/hazell-vegetables");
        double[][] margins = Margins(file);
        foreach (double[] row in file.Table("frontier").Select(row => row.Select(cell => (double)cell).ToArray()))
        {
            LinearModel model = Programs.Of(file, new double[4]);
            int[] incomes = [.. margins.Select(year => Income(model, year))];
            int mean = Income(model, Means(file));
            SeasonRisk.AddShortfalls(model, incomes, mean, -1.0);
            int wanted = model.AddLimit("mean income", Math.Min(row[0], 77958.1699), double.PositiveInfinity);
            model.Set(wanted, mean, 1.0);

            LinearSolution solution = Programs.Solver.Solve(model);

            Programs.Near(row[1], -solution.Objective, 0.02);
            Programs.Near(row[2], -solution.Objective * 2.0 / 6.0, 0.02);
            Programs.Near(row[3..], solution.Values, 0.01);
        }
    }

    [Fact]
    public void Solve_SevenCropsByMonth_MeetsTheIncomeAndTheSumsThatAreFacts()
    {
        JsonElement file = Fixture.Load("planning/seven-crops-by-month");
        JsonElement answers = file.GetProperty("answers");
        (LinearModel model, string[] crops) = ByMonth(file);

        LinearSolution solution = Programs.Solver.Solve(model);

        double Area(string crop) => solution.Values[Array.IndexOf(crops, crop)];
        Programs.Near(answers.Double("income"), solution.Objective, 0.01);
        Programs.Near(solution.Objective, solution.DualObjective(model), 0.005);
        Assert.All(["onions", "cotton", "tomato"], crop => Programs.Near(answers.Double(crop), Area(crop), 0.0001));
        Programs.Near(answers.Double("land_april"), solution.ShadowPrices[3], 0.01);
        Programs.Near(answers.Double("land_november"), solution.ShadowPrices[10], 0.01);
        Programs.Near(answers.Double("land_august_to_october"), solution.ShadowPrices[7] + solution.ShadowPrices[8] + solution.ShadowPrices[9], 0.01);
        Assert.All(["wheat", "clover", "beans"], crop => Programs.Near(answers.Double(crop), solution.ReducedCosts[Array.IndexOf(crops, crop)], 0.01));
    }

    /// <summary>One month alone of three that are full together isn't unique: a hectare more in it earns nothing, a hectare less costs.</summary>
    [Fact]
    public void LimitWorth_OfOneOfThreeFullMonths_IsToldAsMoreAndLess()
    {
        (LinearModel model, _) = ByMonth(Fixture.Load("planning/seven-crops-by-month"));
        using ILinearRun run = Programs.Solver.Open(model);
        LinearSolution solution = run.Solve();

        LimitWorth september = LimitWorth.Of(run, model, solution, 8, 0.01);
        LimitWorth april = LimitWorth.Of(run, model, solution, 3, 0.01);

        Assert.False(september.IsUnique);
        Programs.Near(0.0, september.More!.Value, 1e-6);
        Programs.Near(66.61, september.Less!.Value, 0.01);
        Assert.True(april.IsUnique);
        Programs.Near(125.0, april.More!.Value, 0.01);
        Programs.Near(solution.Objective, run.Solve().Objective, 1e-6);
    }

    private static double[][] Margins(JsonElement file) =>
        [.. file.Table("gross_margin_by_year").Select(year => year.Select(margin => (double)margin).ToArray())];

    private static double[] Means(JsonElement file) => [.. Enumerable.Range(0, 4).Select(crop => Margins(file).Average(year => year[crop]))];

    private static int Income(LinearModel model, double[] margins)
    {
        int income = model.AddQuantity("income", 0.0, least: double.NegativeInfinity);
        int sum = model.AddLimit("income", 0.0, 0.0);
        model.Set(sum, income, -1.0);
        for (int i = 0; i < margins.Length; i++)
        {
            model.Set(sum, i, margins[i]);
        }

        return income;
    }

    private static (LinearModel Model, string[] Crops) ByMonth(JsonElement file)
    {
        string[] crops = [.. file.List("crops").Select(crop => crop.GetString()!)];
        (double[] yields, double[] prices, double[] costs) =
            (file.Doubles("yield_t_per_ha"), file.Doubles("price_per_t"), file.Doubles("cash_cost_per_ha"));
        LinearModel model = new();
        for (int i = 0; i < crops.Length; i++)
        {
            model.AddQuantity(crops[i], (yields[i] * prices[i]) - costs[i]);
        }

        decimal[][] land = file.Table("land_share");
        foreach (decimal[] month in land)
        {
            int limit = model.AddLimit("land", double.NegativeInfinity, file.Double("land_ha"));
            Fill(model, limit, month);
        }

        foreach (decimal[] month in file.Table("labor_days_per_ha"))
        {
            // Family days left over are hired out; days short are hired in.
            int limit = model.AddLimit("days", file.Double("family_days_per_month"), file.Double("family_days_per_month"));
            Fill(model, limit, month);
            model.Set(limit, model.AddQuantity("hired out", file.Double("hire_out_wage")), 1.0);
            model.Set(limit, model.AddQuantity("hired in", -file.Double("hire_in_wage")), -1.0);
        }

        return (model, crops);
    }

    private static void Fill(LinearModel model, int limit, decimal[] takes)
    {
        for (int i = 0; i < takes.Length; i++)
        {
            model.Set(limit, i, (double)takes[i]);
        }
    }
}
