namespace FarmEconomics.Planning.Programs;

/// <summary>A limit that can't be kept, and by how much.</summary>
/// <param name="Limit">The limit's place.</param>
/// <param name="By">By how much its bound must give way, in its own unit.</param>
public sealed record Shortfall(int Limit, double By);

/// <summary>
/// Why a model has no answer: the limits that must give way, by as little as possible in all, each counted in parts of its own bound.
/// The elastic program of Chinneck, Feasibility and Infeasibility in Optimization, 2008, ch. 6 (from memory).
/// </summary>
public static class Shortfalls
{
    private const double Smallest = 1e-6;

    /// <summary>Names the limits of a model that can't be kept together.</summary>
    /// <param name="solver">The solver.</param>
    /// <param name="model">The model.</param>
    /// <param name="firm">Limits that must not give way: what is promised. Null: any may.</param>
    /// <returns>
    /// The limits that give way, the largest part of its bound first; empty where the model has an answer, and where the firm ones alone
    /// have none.
    /// </returns>
    public static IReadOnlyList<Shortfall> Of(ILinearSolver solver, LinearModel model, IReadOnlySet<int>? firm = null)
    {
        ArgumentNullException.ThrowIfNull(solver);
        ArgumentNullException.ThrowIfNull(model);
        ElasticProgram elastic = new(model, firm);
        LinearSolution solution = solver.Solve(elastic.Model);
        return !solution.IsOptimal
            ? []
            :
            [
                .. elastic
                    .Gave(solution, Smallest)
                    .Select(limit => new Shortfall(limit, elastic.By(solution, limit)))
                    .OrderByDescending(found => found.By / elastic.BoundOf(found.Limit)),
            ];
    }
}
