namespace FarmEconomics.Planning.Programs;

/// <summary>
/// A model whose limits may give way, each counted in parts of its own bound, by as little as possible in all: the elastic program of
/// Chinneck, Feasibility and Infeasibility in Optimization, 2008, ch. 6 (from memory).
/// </summary>
internal sealed class ElasticProgram
{
    private readonly Dictionary<int, List<int>> gives = [];

    internal ElasticProgram(LinearModel model, IReadOnlySet<int>? firm)
    {
        foreach (Quantity quantity in model.Quantities)
        {
            Model.AddQuantity(quantity.Name, 0.0, quantity.Most, quantity.Least);
        }

        foreach (Limit limit in model.Limits)
        {
            Model.AddLimit(limit.Name, limit.Least, limit.Most);
        }

        foreach (Entry entry in model.Entries)
        {
            Model.Set(entry.Limit, entry.Quantity, entry.Takes);
        }

        foreach (int i in Enumerable.Range(0, model.Limits.Count).Where(i => firm?.Contains(i) != true))
        {
            foreach (double way in (double[])[1.0, -1.0])
            {
                AddWay(i, way);
            }
        }
    }

    internal LinearModel Model { get; } = new();

    /// <summary>The size of a limit's bound, at least 1.</summary>
    internal double BoundOf(int limit) => -1.0 / Model.Quantities[gives[limit][0]].Worth;

    /// <summary>The limits that give way in a solution.</summary>
    internal IEnumerable<int> Gave(LinearSolution solution, double smallest) =>
        gives.Keys.Where(limit => By(solution, limit) > smallest);

    /// <summary>By how much a limit gives way in a solution.</summary>
    internal double By(LinearSolution solution, int limit) => gives[limit].Sum(give => solution.Values[give]);

    /// <summary>Holds a limit, or lets it give way again.</summary>
    internal void Hold(ILinearRun run, int limit, bool holds) =>
        gives[limit].ForEach(give => run.SetBounds(give, 0.0, holds ? 0.0 : double.PositiveInfinity));

    /// <summary>Lets all limits but some give way at no cost: as if they weren't there.</summary>
    internal void LeaveOut(ILinearRun run, List<int> but)
    {
        foreach (int give in gives.Where(one => !but.Contains(one.Key)).SelectMany(one => one.Value))
        {
            run.SetWorth(give, 0.0);
        }
    }

    /// <summary>How far a limit that is held must give way alone.</summary>
    internal double GivesWay(ILinearRun run, int limit)
    {
        Hold(run, limit, false);
        LinearSolution solution = run.Solve();
        Hold(run, limit, true);
        return solution.IsOptimal ? By(solution, limit) : double.NaN;
    }

    private void AddWay(int limit, double way)
    {
        double bound = way > 0.0 ? Model.Limits[limit].Least : Model.Limits[limit].Most;
        if (!double.IsInfinity(bound))
        {
            int give = Model.AddQuantity(Model.Limits[limit].Name, -1.0 / Math.Max(1.0, Math.Abs(bound)));
            Model.Set(limit, give, way);
            gives.TryAdd(limit, []);
            gives[limit].Add(give);
        }
    }
}
