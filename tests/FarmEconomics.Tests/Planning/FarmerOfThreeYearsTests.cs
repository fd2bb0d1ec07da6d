using System.Text.Json;
using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>The farmer of Birge and Louveaux: land is given out before the year is known, sales and purchases after.</summary>
public class FarmerOfThreeYearsTests
{
    private static readonly string[] Years = ["good", "average", "bad"];
    private static readonly JsonElement File = Fixture.Load("planning/farmer-three-years");

    private static JsonElement Answers => File.GetProperty("answers");

    [Fact]
    public void TwoStagePlan_MeetsThePublishedPlanAndItsWorth()
    {
        (LinearModel model, _) = Farm(Years);

        LinearSolution solution = Programs.Solver.Solve(model);

        Programs.Near(Answers.Double("two_stage_optimum"), solution.Objective, 1.0);
        Programs.Near(Answers.Doubles("plan"), solution.Values, 0.01);
        Programs.Near(Answers.Double("shadow_price_of_land_two_stage"), solution.ShadowPrices[0], 0.01);
        Programs.Near(solution.Objective, solution.DualObjective(model), 0.005);
    }

    [Fact]
    public void PerfectInformation_AndTheAverageYearsPlan_MeetThePublishedFigures()
    {
        double[] alone = [.. Years.Select(year => Programs.Solver.Solve(Farm([year]).Model).Objective)];
        Programs.Near(Answers.Double("good_year_optimum"), alone[0], 1.0);
        Programs.Near(Answers.Double("average_year_optimum"), alone[1], 1.0);
        Programs.Near(Answers.Double("bad_year_optimum"), alone[2], 1.0);
        Programs.Near(Answers.Double("expected_with_perfect_information"), alone.Average(), 0.01);

        LinearSolution average = Programs.Solver.Solve(Farm(["average"]).Model);
        Programs.Near(Answers.Doubles("average_year_plan"), average.Values, 0.01);
        using ILinearRun run = Programs.Solver.Open(Farm(Years).Model);
        double best = run.Solve().Objective;
        for (int crop = 0; crop < 3; crop++)
        {
            run.SetBounds(crop, average.Values[crop], average.Values[crop]);
        }

        double fixedPlan = run.Solve().Objective;
        Programs.Near(Answers.Double("expected_profit_of_average_year_plan"), fixedPlan, 1.0);
        Programs.Near(Answers.Double("value_of_stochastic_solution"), best - fixedPlan, 1.0);
    }

    [Fact]
    public void WorstFifth_WeighedFive_MeetsThePublishedPair()
    {
        (LinearModel model, int[] incomes) = Farm(Years);
        Programs.Near(Answers.Double("risk_neutral_worst_year_profit"), incomes.Min(income => Programs.Solver.Solve(model).Values[income]), 1.0);
        SeasonRisk.AddTailMean(model, incomes, [1.0 / 3, 1.0 / 3, 1.0 / 3], 0.2, 5.0);

        LinearSolution solution = Programs.Solver.Solve(model);

        JsonElement pair = Answers.GetProperty("cvar_alpha_0.8_weight_5");
        Programs.Near(Answers.Doubles("plan_cvar"), solution.Values, 0.01);
        Programs.Near(pair.Double("expected_profit"), incomes.Average(income => solution.Values[income]), 1.0);
        Programs.Near(pair.Double("worst_year_profit"), incomes.Min(income => solution.Values[income]), 1.0);
    }

    /// <summary>
    /// The same farmer as a farm's next year: acres are lengths of bed, what his animals need is what the boxes must hold (bought in where
    /// it isn't grown), sugar beets beyond the quota are a second step of their channel. Everything goes the way a farm's own records do.
    /// </summary>
    [Fact]
    public void AFarmsPlan_OfTheSameFarmer_MeetsTheSameFigures()
    {
        PlanModel model = AsPlan();
        PlanSeason[] seasons = [.. Years.Select(Season)];

        BestMix mix = BestMix.Of(model, Programs.Solver);
        CarefulPlans plans = CarefulPlans.Of(mix, Programs.Solver, seasons, [PlanStance.MeanSeason, PlanStance.OnAverage]);

        Programs.Near(Answers.Double("average_year_optimum"), mix.Best!.Worth, 1.0);
        Programs.Near(Answers.Doubles("average_year_plan"), mix.Best.Feet, 0.01);
        CarefulPlan mean = plans.Of(PlanStance.MeanSeason)!, recourse = plans.Of(PlanStance.OnAverage)!;
        Programs.Near(Answers.Double("expected_profit_of_average_year_plan"), mean.Mean, 1.0);
        Programs.Near(Answers.Doubles("plan"), recourse.Feet, 0.01);
        Programs.Near(Answers.Double("two_stage_optimum"), recourse.Mean, 1.0);
        Programs.Near(Answers.Double("value_of_stochastic_solution"), recourse.Mean - mean.Mean, 1.0);
        Programs.Near(Answers.Double("risk_neutral_worst_year_profit"), recourse.WorstFifth, 1.0);
        double known = seasons.Average(season =>
            Programs.Solver.Solve(new PlanProgram(model, [season with { Chance = 1.0 }]).Model).Objective
        );
        Programs.Near(Answers.Double("expected_with_perfect_information"), known, 0.01);
    }

    /// <summary>Five parts worst fifth to one part mean are a weight of 5/6; the worst fifth of three years is the worst year.</summary>
    [Fact]
    public void AFarmsPlan_WeighedFiveToOne_MeetsThePublishedPair()
    {
        PlanModel model = AsPlan();
        PlanSeason[] seasons = [.. Years.Select(Season)];
        PlanProgram program = new(model, seasons, tail: 5.0 / 6.0);

        LinearSolution solution = Programs.Solver.Solve(program.Model);

        double[] acres = [.. program.Lengths.Select(length => solution.Values[length])];
        Programs.Near(Answers.Doubles("plan_cvar"), acres, 0.01);
        double[] worth = SeasonScores.Of(model, Programs.Solver, acres, seasons);
        JsonElement pair = Answers.GetProperty("cvar_alpha_0.8_weight_5");
        Programs.Near(pair.Double("expected_profit"), worth.Average(), 1.0);
        Programs.Near(pair.Double("worst_year_profit"), worth.Min(), 1.0);
    }

    private static PlanSeason Season(string year)
    {
        double[] average = File.GetProperty("yield").Doubles("average");
        return new PlanSeason(
            1.0 / Years.Length,
            [.. File.GetProperty("yield").Doubles(year).Select((yield, i) => yield / average[i])],
            [1.0, 1.0, 1.0]
        );
    }

    private static PlanModel AsPlan()
    {
        const int WheatWeek = 30, CornWeek = 35, BeetWeek = 40;
        double[] average = File.GetProperty("yield").Doubles("average");
        double Of(string table, string crop) => File.GetProperty(table).Double(crop);
        double[] At(int week, double value) => [.. Enumerable.Range(0, PlanModel.Weeks).Select(one => one == week ? value : 0.0)];
        PlanSowing Acre(int crop, string name, int week) => new(crop, 0, 10, 35)
        {
            Yield = At(week, average[crop]),
            Hours = new double[PlanModel.Weeks],
            Trays = new double[PlanModel.Weeks],
            Cost = Of("planting_cost", name),
        };
        PlanCrop Crop(string name, int week, params PlanStep[] steps) => new(name)
        {
            HandlingHours = 0.0,
            PickedCost = 0.0,
            SoldCost = 0.0,
            Keeps = 1,
            Steps = [.. Enumerable.Range(0, PlanModel.Weeks).Select(one => one == week ? steps : (IReadOnlyList<PlanStep>)[])],
        };
        PlanCrop Fed(string name, int week) => Crop(name, week, new PlanStep("mill", double.PositiveInfinity, Of("sell", name), 0.0)) with
        {
            BoxMost = Of("need", name),
            BoxValue = At(week, Of("buy", name)),
        };
        return new PlanModel
        {
            CropYear = 2026,
            Start = new DateOnly(2026, 1, 1),
            Sowings = [Acre(0, "wheat", WheatWeek), Acre(1, "corn", CornWeek), Acre(2, "beets", BeetWeek)],
            Crops =
            [
                Fed("wheat", WheatWeek),
                Fed("corn", CornWeek),
                Crop(
                    "beets",
                    BeetWeek,
                    new PlanStep("factory", File.Double("beet_quota_tons"), Of("sell", "beets_quota"), 0.0),
                    new PlanStep("factory", double.PositiveInfinity, Of("sell", "beets_over_quota"), 0.0)
                ),
            ],
            Covers = [new PlanCover("open field", [.. Enumerable.Repeat(File.Double("land"), PlanModel.Weeks)])],
            Hours = new PlanHours(new double[PlanModel.Weeks], new double[PlanModel.Weeks], new double[PlanModel.Weeks], 0.0, 0.0),
            BoxTarget =
            [
                .. At(WheatWeek, Of("need", "wheat") * Of("buy", "wheat"))
                    .Zip(At(CornWeek, Of("need", "corn") * Of("buy", "corn")), (a, b) => a + b),
            ],
            BuyIn = 1.0,
        };
    }

    /// <summary>Acres first; in each year what is bought, sold, and the income.</summary>
    private static (LinearModel Model, int[] Incomes) Farm(string[] years)
    {
        string[] crops = ["wheat", "corn", "beets"];
        LinearModel model = new();
        int land = model.AddLimit("land", double.NegativeInfinity, File.Double("land"));
        foreach (string crop in crops)
        {
            model.Set(land, model.AddQuantity(crop, 0.0), 1.0);
        }

        List<int> incomes = [];
        foreach (string year in years)
        {
            double[] yields = File.GetProperty("yield").Doubles(year);
            int income = model.AddQuantity("income", 1.0 / years.Length, least: double.NegativeInfinity);
            int sum = model.AddLimit("income", 0.0, 0.0);
            model.Set(sum, income, -1.0);
            for (int i = 0; i < crops.Length; i++)
            {
                model.Set(sum, i, -File.GetProperty("planting_cost").Double(crops[i]));
                AddCrop(model, (crops[i], i, yields[i]), sum);
            }

            incomes.Add(income);
        }

        return (model, [.. incomes]);
    }

    private static void AddCrop(LinearModel model, (string Name, int Place, double Yield) crop, int sum)
    {
        bool beets = crop.Name == "beets";
        int balance = model.AddLimit("balance", beets ? 0.0 : File.GetProperty("need").Double(crop.Name), double.PositiveInfinity);
        model.Set(balance, crop.Place, crop.Yield);
        (string Price, double Most)[] sells = beets
            ? [("beets_quota", File.Double("beet_quota_tons")), ("beets_over_quota", double.PositiveInfinity)] : [(crop.Name, double.PositiveInfinity)];
        foreach ((string price, double most) in sells)
        {
            int sold = model.AddQuantity("sold", 0.0, most);
            model.Set(balance, sold, -1.0);
            model.Set(sum, sold, File.GetProperty("sell").Double(price));
        }

        if (!beets)
        {
            int bought = model.AddQuantity("bought", 0.0);
            model.Set(balance, bought, 1.0);
            model.Set(sum, bought, -File.GetProperty("buy").Double(crop.Name));
        }
    }
}
