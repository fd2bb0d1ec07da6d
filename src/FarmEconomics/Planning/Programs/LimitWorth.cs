namespace FarmEconomics.Planning.Programs;

/// <summary>
/// What one unit more and one unit less of a limit change, found by solving again. Where the two agree the shadow price is unique; where
/// they don't, these two are told instead of it.
/// </summary>
/// <param name="More">What one unit more adds to the objective; null where the model then has no answer.</param>
/// <param name="Less">What one unit less takes from the objective; null where the model then has no answer.</param>
public sealed record LimitWorth(double? More, double? Less)
{
    /// <summary>True where one more unit adds what one less takes.</summary>
    public bool IsUnique => More is { } more && Less is { } less && Math.Abs(more - less) <= 1e-6 * Math.Max(1.0, Math.Abs(more));

    /// <summary>Solves again with the binding bound of a limit moved.</summary>
    /// <param name="run">The model as the solver holds it, at its own bounds before and after.</param>
    /// <param name="model">The model.</param>
    /// <param name="solution">Its solution.</param>
    /// <param name="limit">The limit's place; only the side it stands at is moved.</param>
    /// <param name="step">How far the bound is moved, above 0.</param>
    /// <returns>Per unit, what more and less change.</returns>
    public static LimitWorth Of(ILinearRun run, LinearModel model, LinearSolution solution, int limit, double step = 1.0)
    {
        ArgumentNullException.ThrowIfNull(run);
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(solution);
        Limit row = model.Limits[limit];
        double used = solution.Used(model)[limit];
        bool upper = Math.Abs(row.Most - used) <= Math.Abs(row.Least - used);
        double? By(double change)
        {
            double most = upper || row.Least == row.Most ? row.Most + change : row.Most;
            double least = !upper || row.Least == row.Most ? row.Least + change : row.Least;
            run.SetLimit(limit, least, most);
            return (run.Best() - solution.Objective) / change;
        }

        LimitWorth worth = new(By(step), By(-step));
        run.SetLimit(limit, row.Least, row.Most);
        return worth;
    }
}
