using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Planning;

/// <summary>How much a plan looks at bad seasons.</summary>
public enum PlanStance
{
    /// <summary>This year's lengths again.</summary>
    Today,

    /// <summary>The best mix, made for the mean season.</summary>
    MeanSeason,

    /// <summary>The most on average over many seasons.</summary>
    OnAverage,

    /// <summary>Half for the average, half for the worst fifth of seasons.</summary>
    Steady,

    /// <summary>Nearly all for the worst fifth of seasons.</summary>
    Cautious,
}

/// <summary>A plan with what it is worth over the simulated seasons.</summary>
/// <param name="Stance">How much it looks at bad seasons.</param>
/// <param name="Feet">Bed-feet of each sowing, in the model's order.</param>
/// <param name="Seasons">What it is worth in each simulated season.</param>
public sealed record CarefulPlan(PlanStance Stance, IReadOnlyList<double> Feet, IReadOnlyList<double> Seasons)
{
    /// <summary>What it would have been worth in each season on record, oldest first; empty where they weren't scored.</summary>
    public IReadOnlyList<double> Recorded { get; init; } = [];

    /// <summary>The mean of the seasons.</summary>
    public double Mean => Seasons.Average();

    /// <summary>The mean of the worst fifth of the seasons.</summary>
    public double WorstFifth => Seasons.Order().Take(Math.Max(1, (int)Math.Round(Seasons.Count * PlanSettings.WorstPart))).Average();
}

/// <summary>
/// A few plans between "most" and "safest": each the best for a weight between the mean of the seasons and the mean of their worst fifth
/// (conditional value at risk, a linear program), made for a few weighted seasons and scored on all.
/// </summary>
public sealed class CarefulPlans
{
    private CarefulPlans(IReadOnlyList<CarefulPlan> plans, IReadOnlyList<PlanSeason> chosen) => (Plans, Chosen) = (plans, chosen);

    /// <summary>The plans: this year's lengths, the best mix, then from "most" to "safest".</summary>
    public IReadOnlyList<CarefulPlan> Plans { get; }

    /// <summary>The weighted seasons they were made for.</summary>
    public IReadOnlyList<PlanSeason> Chosen { get; }

    /// <summary>The plan of a stance.</summary>
    /// <param name="stance">The stance.</param>
    /// <returns>The plan; null where none was found.</returns>
    public CarefulPlan? Of(PlanStance stance) => Plans.FirstOrDefault(plan => plan.Stance == stance);

    /// <summary>How much of the objective the worst fifth is, 0 to 1.</summary>
    /// <param name="stance">The stance.</param>
    /// <returns>The weight.</returns>
    public static double WeightOf(PlanStance stance) => stance switch
    {
        PlanStance.Steady => 0.5,
        PlanStance.Cautious => 0.9,
        _ => 0.0,
    };

    /// <summary>Finds the plans.</summary>
    /// <param name="mix">The best mix, which must have been found.</param>
    /// <param name="solver">The solver.</param>
    /// <param name="seasons">The seasons that may come, their chances summing to 1.</param>
    /// <param name="stances">
    /// The stances asked for; null: all but <see cref="PlanStance.OnAverage"/>, which is next to the best mix.
    /// </param>
    /// <returns>The plans.</returns>
    public static CarefulPlans Of(
        BestMix mix,
        ILinearSolver solver,
        IReadOnlyList<PlanSeason> seasons,
        IReadOnlyList<PlanStance>? stances = null
    )
    {
        ArgumentNullException.ThrowIfNull(mix);
        ArgumentNullException.ThrowIfNull(solver);
        ArgumentNullException.ThrowIfNull(seasons);
        stances ??= [PlanStance.Today, PlanStance.MeanSeason, PlanStance.Steady, PlanStance.Cautious];
        IReadOnlyList<PlanSeason> chosen = Choose(mix, seasons);
        List<(PlanStance Stance, IReadOnlyList<double> Feet)> found =
        [
            .. stances.Where(stance => stance == PlanStance.Today).Select(stance => (stance, mix.Today.Feet)),
        ];
        if (mix.Best is { } best)
        {
            found.AddRange(stances.Where(stance => stance == PlanStance.MeanSeason).Select(stance => (stance, best.Feet)));
            found.AddRange(Made(mix.Model, solver, chosen, [.. stances.Where(stance => stance > PlanStance.MeanSeason)]));
        }

        return new CarefulPlans(
            [.. found.Select(one => new CarefulPlan(one.Stance, one.Feet, SeasonScores.Of(mix.Model, solver, one.Feet, seasons)))],
            chosen
        );
    }

    /// <summary>
    /// Finds all plans but <see cref="PlanStance.OnAverage"/> over simulated seasons, and scores them on those on record apart.
    /// </summary>
    /// <param name="mix">The best mix, which must have been found.</param>
    /// <param name="solver">The solver.</param>
    /// <param name="seasons">The seasons.</param>
    /// <returns>The plans.</returns>
    public static CarefulPlans Of(BestMix mix, ILinearSolver solver, PlanSeasons seasons)
    {
        ArgumentNullException.ThrowIfNull(seasons);
        CarefulPlans simulated = Of(mix, solver, seasons.Drawn);
        return new CarefulPlans(
            [.. simulated.Plans.Select(plan => plan with { Recorded = SeasonScores.Of(mix.Model, solver, plan.Feet, seasons.Recorded) })],
            simulated.Chosen
        );
    }

    /// <summary>Seasons are alike where the crops of the best mix bring alike.</summary>
    private static IReadOnlyList<PlanSeason> Choose(BestMix mix, IReadOnlyList<PlanSeason> seasons)
    {
        double[] worth = new double[mix.Model.Crops.Count];
        foreach (PlannedSale sale in mix.Quantities?.Sales ?? [])
        {
            worth[sale.Crop] += sale.Units * sale.Price;
        }

        return seasons.Count <= PlanSettings.ChosenSeasons
            ? seasons
            : AtTheMean([
                .. SeasonSelection
                    .Of(
                        [.. seasons.Select(season => worth.Select((money, c) => money * season.Yield[c] * season.Price[c]).ToArray())],
                        [.. seasons.Select(season => season.Chance)],
                        PlanSettings.ChosenSeasons
                    )
                    .Select(one => seasons[one.Season] with { Chance = one.Chance }),
            ]);
    }

    /// <summary>
    /// A few seasons that happen to favor a crop would have the plan grow too much of it: each crop keeps its mean yield and price.
    /// </summary>
    private static PlanSeason[] AtTheMean(PlanSeason[] seasons)
    {
        double[] Mean(Func<PlanSeason, IReadOnlyList<double>> of) =>
            [.. Enumerable.Range(0, of(seasons[0]).Count).Select(c => seasons.Sum(season => season.Chance * of(season)[c]))];
        double[] Over(IReadOnlyList<double> factors, double[] means) =>
            [.. factors.Select((factor, c) => means[c] > 0.0 ? factor / means[c] : factor)];
        double[] yields = Mean(season => season.Yield),
            prices = Mean(season => season.Price);
        return [.. seasons.Select(season => season with { Yield = Over(season.Yield, yields), Price = Over(season.Price, prices) })];
    }

    /// <summary>A program for each stance; they don't wait for one another.</summary>
    private static IEnumerable<(PlanStance Stance, IReadOnlyList<double> Feet)> Made(
        PlanModel model,
        ILinearSolver solver,
        IReadOnlyList<PlanSeason> chosen,
        PlanStance[] stances
    )
    {
        (PlanProgram Program, LinearSolution Solution)[] solved = new (PlanProgram, LinearSolution)[stances.Length];
        Parallel.For(0, stances.Length, i =>
        {
            PlanProgram program = new(model, chosen, tail: WeightOf(stances[i]));
            solved[i] = (program, solver.Solve(program.Model));
        });
        return stances.Zip(solved).Where(one => one.Second.Solution.IsOptimal).Select(one => (one.First, (IReadOnlyList<double>)
            [.. one.Second.Program.Lengths.Select(length => Math.Max(0.0, one.Second.Solution.Values[length]))]));
    }
}
