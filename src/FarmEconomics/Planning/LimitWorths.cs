using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Planning;

/// <summary>
/// What one unit more of a binding limit adds to the best plan and what one less takes from it, found by solving again: a shadow price
/// holds for no whole unit where many weeks are full together, and need not be unique.
/// </summary>
public static class LimitWorths
{
    /// <summary>Finds them for the dearest limits.</summary>
    /// <param name="mix">The best mix; without a best plan there are none.</param>
    /// <param name="solver">The solver.</param>
    /// <param name="limits">How many limits are looked at; those on cash are in any case.</param>
    /// <returns>The limits, dearest by what one more adds first; for hours on top of what an own hour is worth.</returns>
    public static IReadOnlyList<BindingLimit> Of(BestMix mix, ILinearSolver solver, int limits)
    {
        ArgumentNullException.ThrowIfNull(mix);
        ArgumentNullException.ThrowIfNull(solver);
        if (mix.Best is null)
        {
            return [];
        }

        PlanProgram program = new(mix.Model);
        Dictionary<PlanLimitKey, int> rows = Enumerable
            .Range(0, program.Keys.Count)
            .GroupBy(i => program.Keys[i])
            .ToDictionary(key => key.Key, key => key.First());
        using ILinearRun run = solver.Open(program.Model);
        LinearSolution solution = run.Solve();
        return
        [
            .. mix
                .Binding.Where((limit, i) => i < limits || limit.Key.Kind == PlanLimitKind.Cash)
                .Select(limit => Again(limit, LimitWorth.Of(run, program.Model, solution, rows[limit.Key]), mix.Model))
                .OrderByDescending(limit => limit.More ?? limit.Worth),
        ];
    }

    private static BindingLimit Again(BindingLimit limit, LimitWorth worth, PlanModel model)
    {
        double own = limit.Key.Kind == PlanLimitKind.Hours ? model.Hours.OwnCost : 0.0;
        double? Told(double? found) => found is { } known ? Math.Max(0.0, Math.Abs(known) - own) : null;
        return limit with { More = Told(worth.More), Less = Told(worth.Less) };
    }
}
