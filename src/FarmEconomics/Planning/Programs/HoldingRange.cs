namespace FarmEconomics.Planning.Programs;

/// <summary>How far a number may move, one way and the other, before an answer changes; infinity where it never does.</summary>
/// <param name="Least">The least it may be.</param>
/// <param name="Most">The most it may be.</param>
public readonly record struct HeldRange(double Least, double Most);

/// <summary>How far and how exactly a range is looked for.</summary>
/// <param name="Farthest">How far either way is looked, above 0; what holds so far is told as infinite.</param>
/// <param name="Within">
/// The part by which the answer may be off on the mean of the way, 0 to 1; 0: the exact range. Where many limits bind, exact ranges are too
/// small to say anything.
/// </param>
public readonly record struct RangeSearch(double Farthest, double Within = 0.0);

/// <summary>
/// Over which range an answer of a linear program holds. The optimum moves along straight pieces as a bound or a worth does; where the
/// present piece ends is found by solving again: where the lines of two pieces cross lies a point of the end or of a piece between, so a
/// few steps find it. Source of the ranges: Dantzig, Linear Programming and Extensions, 1963, ch. 12 (from memory); no basis is read, so
/// ties between equally good bases change nothing.
/// </summary>
public static class HoldingRange
{
    private const int Steps = 40;
    private const double Near = 1e-4;

    /// <summary>The range of a limit's bound over which one more unit is worth the same.</summary>
    /// <param name="run">The model as the solver holds it, at its own bounds before and after.</param>
    /// <param name="model">The model.</param>
    /// <param name="solution">Its solution.</param>
    /// <param name="limit">The limit's place; one that binds.</param>
    /// <param name="search">How far and how exactly.</param>
    /// <returns>The range of the bound.</returns>
    public static HeldRange OfBound(ILinearRun run, LinearModel model, LinearSolution solution, int limit, RangeSearch search)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(solution);
        Limit row = model.Limits[limit];
        double price = solution.ShadowPrices[limit];
        bool upper = row.Least == row.Most || price >= 0.0;
        double bound = upper ? row.Most : row.Least;
        (double, double)? At(double by)
        {
            run.SetLimit(limit, !upper || row.Least == row.Most ? row.Least + by : row.Least, upper ? row.Most + by : row.Most);
            LinearSolution moved = run.Solve();
            return moved.IsOptimal ? (moved.Objective, moved.ShadowPrices[limit]) : null;
        }

        HeldRange range = new(
            bound - Reach(by => Back(At(-by)), (solution.Objective, -price), search),
            bound + Reach(At, (solution.Objective, price), search)
        );
        run.SetLimit(limit, row.Least, row.Most);
        return range;
    }

    /// <summary>The range of what a unit of some quantities adds, moved together, over which their sum stays the same.</summary>
    /// <param name="run">The model as the solver holds it, at its own worths before and after.</param>
    /// <param name="model">The model.</param>
    /// <param name="solution">Its solution.</param>
    /// <param name="quantities">The quantities.</param>
    /// <param name="search">How far and how exactly.</param>
    /// <returns>By how much their worth may fall and rise: the least below or at 0, the most above or at it.</returns>
    public static HeldRange OfWorth(
        ILinearRun run,
        LinearModel model,
        LinearSolution solution,
        IReadOnlyList<int> quantities,
        RangeSearch search
    )
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(solution);
        ArgumentNullException.ThrowIfNull(quantities);
        double sum = quantities.Sum(quantity => solution.Values[quantity]);
        (double, double)? At(double by)
        {
            foreach (int quantity in quantities)
            {
                run.SetWorth(quantity, model.Quantities[quantity].Worth + by);
            }

            LinearSolution moved = run.Solve();
            return moved.IsOptimal ? (moved.Objective, quantities.Sum(quantity => moved.Values[quantity])) : null;
        }

        HeldRange range = new(
            -Reach(by => Back(At(-by)), (solution.Objective, -sum), search),
            Reach(At, (solution.Objective, sum), search)
        );
        At(0.0);
        return range;
    }

    /// <summary>The same point on the way back, where slopes have the other sign.</summary>
    private static (double Value, double Slope)? Back((double Value, double Slope)? point) =>
        point is { } there ? (there.Value, -there.Slope) : null;

    private static double Reach(Func<double, (double Value, double Slope)?> at, (double Value, double Slope) start, RangeSearch search) =>
        search.Within > 0.0 ? Roughly(at, start, search) : Exactly(at, start, search);

    /// <summary>True where the optimum lies on the line it starts along, but for a part of what that tells and for dust.</summary>
    private static bool IsOnLine((double Value, double Slope) point, (double Value, double Slope) start, double by, double within) =>
        Math.Abs(point.Value - start.Value - (start.Slope * by))
            <= (within * Math.Abs(start.Slope * by)) + (1e-9 * Math.Max(1.0, Math.Abs(start.Value)));

    /// <summary>
    /// How far from 0 the optimum stays on the line it starts along. At a point off it the piece there has a slope of its own; the two
    /// lines cross nearer by, at the end of the first or within it. Where there is no answer farther out, the end is found by halving.
    /// </summary>
    private static double Exactly(Func<double, (double Value, double Slope)?> at, (double Value, double Slope) start, RangeSearch search)
    {
        (double holds, double far, double? none) = (0.0, search.Farthest, null);
        for (int i = 0; i < Steps; i++)
        {
            if (at(far) is not { } there)
            {
                none = far;
            }
            else if (IsOnLine(there, start, far, 0.0))
            {
                if (none is null)
                {
                    return far >= search.Farthest ? double.PositiveInfinity : far;
                }

                holds = far;
            }
            else
            {
                none = null;
                far = (there.Value - (there.Slope * far) - start.Value) / (start.Slope - there.Slope);
                if (far <= Near)
                {
                    return 0.0;
                }

                continue;
            }

            if (none - holds <= Near * none)
            {
                break;
            }

            far = (holds + none!.Value) / 2.0;
        }

        return holds;
    }

    /// <summary>
    /// By halving until the answer holds, then back half as far twice: to a quarter of what it tells, and not below a hundredth of the
    /// farthest.
    /// </summary>
    private static double Roughly(Func<double, (double Value, double Slope)?> at, (double Value, double Slope) start, RangeSearch search)
    {
        bool Holds(double by) => at(by) is { } there && IsOnLine(there, start, by, search.Within);
        if (Holds(search.Farthest))
        {
            return double.PositiveInfinity;
        }

        double far = search.Farthest / 2.0;
        while (!Holds(far))
        {
            far /= 2.0;
            if (far < search.Farthest / 100.0)
            {
                return 0.0;
            }
        }

        double more = far / 2.0;
        for (int i = 0; i < 2; i++)
        {
            far += Holds(far + more) ? more : 0.0;
            more /= 2.0;
        }

        return far;
    }
}
