namespace FarmEconomics.Planning.Programs;

/// <summary>Solves linear programs. The library has none of its own: whoever runs it hands one in.</summary>
public interface ILinearSolver
{
    /// <summary>Takes a model in, so that it can be solved, changed a little and solved again.</summary>
    /// <param name="model">The model; it isn't changed.</param>
    /// <param name="once">
    /// True where it is solved but once: then a solver may first make it smaller, which a changed model can't start from.
    /// </param>
    /// <returns>The model as the solver holds it.</returns>
    ILinearRun Open(LinearModel model, bool once = false);
}

/// <summary>
/// A model in the hands of a solver. Solving again after a small change starts from the last answer. Not safe to share between threads.
/// </summary>
public interface ILinearRun : IDisposable
{
    /// <summary>Solves the model as it stands.</summary>
    /// <returns>The solution.</returns>
    LinearSolution Solve();

    /// <summary>
    /// Solves the model as it stands, for what is best alone: fetching every quantity takes a program of many as long as solving it again.
    /// </summary>
    /// <returns>The objective; null where there is no best.</returns>
    double? Best() => Solve() is { IsOptimal: true } solution ? solution.Objective : null;

    /// <summary>Changes what a unit of a quantity adds to the objective.</summary>
    /// <param name="quantity">The quantity's place.</param>
    /// <param name="worth">Its worth from now on.</param>
    void SetWorth(int quantity, double worth);

    /// <summary>Changes the bounds of a quantity.</summary>
    /// <param name="quantity">The quantity's place.</param>
    /// <param name="least">The least it can be.</param>
    /// <param name="most">The most it can be.</param>
    void SetBounds(int quantity, double least, double most);

    /// <summary>Changes the bounds of a limit.</summary>
    /// <param name="limit">The limit's place.</param>
    /// <param name="least">The least its sum may come to.</param>
    /// <param name="most">The most its sum may come to.</param>
    void SetLimit(int limit, double least, double most);
}

/// <summary>Solves a model once.</summary>
public static class LinearSolving
{
    /// <summary>Solves a model.</summary>
    /// <param name="solver">The solver.</param>
    /// <param name="model">The model.</param>
    /// <returns>The solution.</returns>
    public static LinearSolution Solve(this ILinearSolver solver, LinearModel model)
    {
        ArgumentNullException.ThrowIfNull(solver);
        using ILinearRun run = solver.Open(model, once: true);
        return run.Solve();
    }
}
