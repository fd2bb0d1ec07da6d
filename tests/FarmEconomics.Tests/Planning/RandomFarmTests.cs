using CsCheck;
using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using FarmEconomics.Solver;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Random small farms in the form records take: against a second solver, made by other people, and what must hold of any plan.
/// FARMECONOMICS_FARMS sets how many each sees (1000 is the full run).
/// </summary>
public class RandomFarmTests
{
    private static readonly long Farms = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms)
        ? farms
        : 40;

    [Fact]
    public void BestMix_OfARandomFarm_IsWhatTheSecondSolverFinds()
    {
        ILinearSolver? second = LinearSolvers.FindSecond();
        Assert.SkipWhen(second is null, LinearSolvers.Missing);
        Gen.Int[1, 1_000_000].Sample(
            seed =>
            {
                LinearModel model = new PlanProgram(RandomPlan.Farm(seed)).Model;
                LinearSolution first = Programs.Solver.Solve(model), other = second!.Solve(model);
                Assert.Equal(SolveStatus.Optimal, first.Status);
                Programs.Near(other.Objective, first.Objective, 1e-6 * Math.Max(1.0, Math.Abs(first.Objective)));
                Programs.Near(first.Objective, first.DualObjective(model), 0.005);
            },
            iter: Farms);
    }

    [Fact]
    public void BestMix_WithAWishAdded_IsNeverWorthMore() => Gen.Int[1, 1_000_000].Sample(
        seed =>
        {
            PlanModel farm = RandomPlan.Farm(seed);
            double before = BestMix.Of(farm, Programs.Solver).Best!.Worth;
            PlanModel wished = farm with { Crops = [farm.Crops[0] with { Wish = (10.0, 20.0) }, .. farm.Crops.Skip(1)] };
            Assert.True(BestMix.Of(wished, Programs.Solver).Best is not { } best || best.Worth <= before + 1e-6);
        },
        iter: Farms / 4);

    /// <summary>Within the range a unit more changes the optimum by its price; just beyond the range it changes it by less.</summary>
    [Fact]
    public void Range_OfABindingLimit_IsWhereItsPriceHoldsAndNoFarther() => Gen.Int[1, 1_000_000].Sample(
        seed =>
        {
            LinearModel model = new PlanProgram(RandomPlan.Farm(seed)).Model;
            using ILinearRun run = Programs.Solver.Open(model);
            LinearSolution solution = run.Solve();
            foreach (int row in Enumerable.Range(0, model.Limits.Count).Where(i => solution.ShadowPrices[i] > 0.01 && !double.IsInfinity(model.Limits[i].Most)).Take(4))
            {
                double bound = model.Limits[row].Most;
                double reach = HoldingRange.OfBound(run, model, solution, row, new(1000.0)).Most - bound;
                double within = double.IsInfinity(reach) ? 500.0 : reach / 2.0;
                run.SetLimit(row, model.Limits[row].Least, bound + within);
                Programs.Near(solution.ShadowPrices[row] * within, run.Solve().Objective - solution.Objective, 1e-4);
                if (!double.IsInfinity(reach))
                {
                    run.SetLimit(row, model.Limits[row].Least, bound + reach + 10.0);
                    Assert.True(run.Solve().Objective - solution.Objective < (solution.ShadowPrices[row] * (reach + 10.0)) - 1e-9);
                }

                run.SetLimit(row, model.Limits[row].Least, bound);
            }
        },
        iter: Farms / 4);

    /// <summary>What isn't solved is bounded from above by the prices of what is, and not by much.</summary>
    [Fact]
    public void Scores_OfManySeasons_AreBoundsCloseToWhatSolvingGives() =>
        Gen.Int[1, 1_000_000]
            .Sample(
                seed =>
                {
                    PlanModel farm = RandomPlan.Farm(seed);
                    Random random = new(seed);
                    PlanSeason[] seasons =
                    [
                        .. Enumerable
                            .Range(0, 120)
                            .Select(_ => new PlanSeason(
                                1.0 / 120.0,
                                Factors(random, farm.Crops.Count, 0.2),
                                Factors(random, farm.Crops.Count, 0.05)
                            )),
                    ];
                    IReadOnlyList<double> feet = BestMix.Of(farm, Programs.Solver).Best!.Feet;
                    double[] Score(Scoring scoring) => SeasonScores.Of(farm, Programs.Solver, feet, seasons, scoring);
                    double[] solved = Score(Scoring.Solved);
                    Assert.All(Score(Scoring.Bounds).Zip(solved), pair => Assert.True(pair.First >= pair.Second - 1e-6));
                    Programs.Near(solved.Average(), Score(Scoring.Told).Average(), 0.03 * solved.Max(Math.Abs));
                    Programs.Near(
                        Programs
                            .Solver.Solve(new PlanProgram(farm.WithLengths(feet), [seasons[7] with { Chance = 1.0 }], beyond: true).Model)
                            .Objective,
                        solved[7],
                        1e-6
                    );
                },
                iter: Math.Max(2, Farms / 20)
            );

    /// <summary>Four points on a line, two at either end: two chosen stand for two each; a third chosen lessens what is left.</summary>
    [Fact]
    public void Selection_OfSeasons_TakesOneOfEachCrowdWithItsChance()
    {
        double[][] places = [[0.0], [1.0], [10.0], [11.0]];
        IReadOnlyList<(int Season, double Chance)> chosen = SeasonSelection.Of(places, [0.25, 0.25, 0.25, 0.25], 2);
        Assert.Equal([0.5, 0.5], chosen.Select(one => one.Chance));
        Assert.Single(chosen, one => one.Season < 2);
        Assert.Equal(1.0, SeasonSelection.Of(places, [0.25, 0.25, 0.25, 0.25], 9).Sum(one => one.Chance), 9);
    }

    private static double[] Factors(Random random, int count, double spread) =>
        [.. Enumerable.Range(0, count).Select(_ => Math.Max(0.0, 1.0 + (spread * ((2.0 * random.NextDouble()) - 1.0))))];
}
