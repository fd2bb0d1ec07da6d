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
    /// The limits that give way, the largest part of its bound first; empty where the model has an answer, and where the firm ones alone have none.
    /// </returns>
    public static IReadOnlyList<Shortfall> Of(ILinearSolver solver, LinearModel model, IReadOnlySet<int>? firm = null)
    {
        ArgumentNullException.ThrowIfNull(solver);
        ArgumentNullException.ThrowIfNull(model);
        LinearModel elastic = new();
        foreach (Quantity quantity in model.Quantities)
        {
            elastic.AddQuantity(quantity.Name, 0.0, quantity.Most, quantity.Least);
        }

        foreach (Limit limit in model.Limits)
        {
            elastic.AddLimit(limit.Name, limit.Least, limit.Most);
        }

        foreach (Entry entry in model.Entries)
        {
            elastic.Set(entry.Limit, entry.Quantity, entry.Takes);
        }

        List<(int Limit, int Quantity)> gives = [];
        foreach (int i in Enumerable.Range(0, model.Limits.Count).Where(i => firm?.Contains(i) != true))
        {
            foreach (double way in (double[])[1.0, -1.0])
            {
                double bound = way > 0.0 ? model.Limits[i].Least : model.Limits[i].Most;
                if (!double.IsInfinity(bound))
                {
                    gives.Add((i, elastic.AddQuantity(model.Limits[i].Name, -1.0 / Math.Max(1.0, Math.Abs(bound)))));
                    elastic.Set(i, gives[^1].Quantity, way);
                }
            }
        }

        LinearSolution solution = solver.Solve(elastic);
        return !solution.IsOptimal ? [] : [.. gives.Where(give => solution.Values[give.Quantity] > Smallest)
            .Select(give => new Shortfall(give.Limit, solution.Values[give.Quantity]))
            .OrderByDescending(found => found.By * -elastic.Quantities[gives.Find(give => give.Limit == found.Limit).Quantity].Worth)];
    }
}
