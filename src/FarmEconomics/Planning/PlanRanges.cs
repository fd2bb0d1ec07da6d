using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Planning;

/// <summary>
/// A limit of the best plan, and over which range of it one more unit is worth the same, to a tenth on the mean of the way.
/// </summary>
/// <param name="Limit">The limit with its worth.</param>
/// <param name="Holds">The range of what there is.</param>
public sealed record LimitRange(BindingLimit Limit, HeldRange Holds);

/// <summary>
/// A crop of the best plan, and how far what a bed-foot of it adds may fall and rise before a length other by over a tenth were better.
/// </summary>
/// <param name="Crop">The crop's place.</param>
/// <param name="Feet">Its bed-feet in the best plan.</param>
/// <param name="Fall">How far it may fall, money a bed-foot, 0 or more; infinity: however far.</param>
/// <param name="Rise">How far it may rise, likewise.</param>
public sealed record CropRange(int Crop, double Feet, double Fall, double Rise);

/// <summary>Over which ranges the best plan's answers hold, found by solving again from the best plan's basis.</summary>
public sealed class PlanRanges
{
    private const double Shown = 0.25;

    /// <summary>
    /// Exact ranges are cents and minutes where twenty weeks are full: an answer holds while it is off by no more than this part.
    /// </summary>
    private const double Within = 0.1;
    private const double FarHours = 40.0;
    private const double FarMoney = 10.0;

    private PlanRanges(IReadOnlyList<LimitRange> limits, IReadOnlyList<CropRange> crops) => (Limits, Crops) = (limits, crops);

    /// <summary>The dearest limits, dearest first.</summary>
    public IReadOnlyList<LimitRange> Limits { get; }

    /// <summary>The crops the best plan grows, in the model's order; what stands already is no choice and isn't among them.</summary>
    public IReadOnlyList<CropRange> Crops { get; }

    /// <summary>Finds the ranges.</summary>
    /// <param name="mix">The best mix; without a best plan there are none.</param>
    /// <param name="solver">The solver.</param>
    /// <param name="limits">How many limits are looked at.</param>
    /// <returns>The ranges.</returns>
    public static PlanRanges Of(BestMix mix, ILinearSolver solver, int limits = 10)
    {
        ArgumentNullException.ThrowIfNull(mix);
        ArgumentNullException.ThrowIfNull(solver);
        if (mix.Best is null)
        {
            return new PlanRanges([], []);
        }

        PlanProgram program = new(mix.Model);
        using ILinearRun run = solver.Open(program.Model);
        LinearSolution solution = run.Solve();
        return new PlanRanges(
            [
                .. mix
                    .Binding.Where(one => one.Key.Kind != PlanLimitKind.Cash)
                    .Take(limits)
                    .Select(one => OfLimit(program, run, solution, one)),
            ],
            [.. OfCrops(mix.Model, program, run, solution)]
        );
    }

    private static LimitRange OfLimit(PlanProgram program, ILinearRun run, LinearSolution solution, BindingLimit limit)
    {
        int row = Enumerable.Range(0, program.Keys.Count).First(i => program.Keys[i] == limit.Key);
        Limit bounds = program.Model.Limits[row];
        double bound = double.IsInfinity(bounds.Most) ? bounds.Least : bounds.Most;
        HeldRange range = HoldingRange.OfBound(
            run,
            program.Model,
            solution,
            row,
            new RangeSearch(limit.Key.Kind == PlanLimitKind.Hours ? FarHours : Math.Max(1.0, Math.Abs(bound)), Within)
        );

        // An hours row stands at less what comes whatever is grown: told as hours more and less than there are.
        return new LimitRange(
            limit,
            limit.Key.Kind == PlanLimitKind.Hours ? new HeldRange(range.Least - bound, range.Most - bound) : range
        );
    }

    private static IEnumerable<CropRange> OfCrops(PlanModel model, PlanProgram program, ILinearRun run, LinearSolution solution)
    {
        foreach (
            IGrouping<int, int> crop in Enumerable
                .Range(0, program.Lengths.Length)
                .Where(i => model.Sowings[i].Standing.Count == 0)
                .GroupBy(i => model.Sowings[i].Crop)
        )
        {
            int[] lengths = [.. crop.Select(i => program.Lengths[i])];
            double feet = lengths.Sum(length => solution.Values[length]);
            if (feet > Shown)
            {
                HeldRange range = HoldingRange.OfWorth(run, program.Model, solution, lengths, new RangeSearch(FarMoney, Within));
                yield return new CropRange(crop.Key, feet, -range.Least, range.Most);
            }
        }
    }
}
