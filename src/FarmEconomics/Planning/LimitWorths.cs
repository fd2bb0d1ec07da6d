using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Planning;

/// <summary>
/// What one unit more of a binding limit adds to the best plan and what one less takes from it, found by solving again: a shadow price
/// holds for no whole unit where many weeks are full together, and need not be unique.
/// </summary>
internal static class LimitWorths
{
    /// <summary>Finds them, from the basis of the best plan.</summary>
    /// <param name="limits">The limits.</param>
    /// <param name="program">The plan's program.</param>
    /// <param name="run">It in the hands of a solver, at its own bounds before and after.</param>
    /// <param name="solution">Its solution.</param>
    /// <returns>The limits, dearest by what one more adds first; for hours on top of what an own hour is worth.</returns>
    internal static IReadOnlyList<BindingLimit> Of(
        IEnumerable<BindingLimit> limits, PlanProgram program, ILinearRun run, LinearSolution solution)
    {
        Dictionary<PlanLimitKey, int> rows = Enumerable
            .Range(0, program.Keys.Count)
            .GroupBy(i => program.Keys[i])
            .ToDictionary(key => key.Key, key => key.First());
        double own = program.OwnHour;
        return
        [
            .. limits
                .Select(limit => Again(limit, LimitWorth.Of(run, program.Model, solution, rows[limit.Key]), own))
                .OrderByDescending(limit => limit.More ?? limit.Worth),
        ];
    }

    private static BindingLimit Again(BindingLimit limit, LimitWorth worth, double ownHour)
    {
        double own = limit.Key.Kind == PlanLimitKind.Hours ? ownHour : 0.0;
        double? Told(double? found) => found is { } known ? Math.Max(0.0, Math.Abs(known) - own) : null;
        return limit with { More = Told(worth.More), Less = Told(worth.Less) };
    }
}
