namespace FarmEconomics.Planning.Programs;

/// <summary>
/// A smallest set of limits that can't be kept together: with any one of them left out the others can. First the elastic program says which
/// limits give way, those are held, and so on until nothing can give way any more; then each of them is left out in turn, and stays out
/// where the rest still can't be kept (deletion filter). Chinneck, Feasibility and Infeasibility in Optimization, 2008, ch. 6 (from
/// memory).
/// </summary>
public static class Conflicts
{
    private const double Smallest = 1e-6;

    /// <summary>Names limits of a model that can't be kept together.</summary>
    /// <param name="solver">The solver.</param>
    /// <param name="model">The model; whether quantities must be whole isn't looked at.</param>
    /// <param name="firm">Limits that hold in any case and are never named: bookkeeping. Null: none.</param>
    /// <returns>
    /// The limits, each with how far it alone must give way for the others to be kept, the largest part of its bound first; empty where the
    /// model has an answer, and where the firm limits alone have none.
    /// </returns>
    public static IReadOnlyList<Shortfall> Of(ILinearSolver solver, LinearModel model, IReadOnlySet<int>? firm = null)
    {
        ArgumentNullException.ThrowIfNull(solver);
        ArgumentNullException.ThrowIfNull(model);
        ElasticProgram elastic = new(model, firm);
        using ILinearRun run = solver.Open(elastic.Model);
        List<int> together = Together(elastic, run);
        foreach (int limit in together.ToArray())
        {
            elastic.Hold(run, limit, false);
            if (run.Solve().IsOptimal)
            {
                elastic.Hold(run, limit, true);
            }
            else
            {
                together.Remove(limit);
            }
        }

        elastic.LeaveOut(run, together);
        return
        [
            .. together
                .Select(limit => new Shortfall(limit, elastic.GivesWay(run, limit)))
                .OrderByDescending(found => found.By / elastic.BoundOf(found.Limit)),
        ];
    }

    private static List<int> Together(ElasticProgram elastic, ILinearRun run)
    {
        List<int> together = [];
        LinearSolution solution = run.Solve();
        while (solution.IsOptimal)
        {
            // What gives way least is tried first, so that what is most at odds is what is named.
            List<int> gave = [.. elastic.Gave(solution, Smallest).OrderBy(limit => elastic.By(solution, limit) / elastic.BoundOf(limit))];
            if (gave.Count == 0)
            {
                return [];
            }

            gave.ForEach(limit => elastic.Hold(run, limit, true));
            together.AddRange(gave);
            solution = run.Solve();
        }

        return together;
    }
}
