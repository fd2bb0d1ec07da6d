using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Planning;

/// <summary>
/// What one unit more of a binding limit adds to the best plan and what one less takes from it, found by solving again: a shadow price
/// holds for no whole unit where many weeks are full together, and need not be unique.
/// </summary>
internal static class LimitWorths
{
    /// <summary>Less money, and less of a thing, than this is rounding.</summary>
    private const double Smallest = 0.005;

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
            .DistinctBy(i => program.Keys[i])
            .ToDictionary(i => program.Keys[i]);
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
        return limit with { More = Told(worth.More, own), Less = Told(worth.Less, own) };
    }

    private static double? Told(double? found, double own) => found is { } known ? Math.Max(0.0, Math.Abs(known) - own) : null;

    /// <summary>
    /// What one more of a thing brings that is full in several weeks: a week alone may bring nothing while the others are full as well.
    /// A length of bed, a crate and a tray more are there all year; an hour, water and power more come in each of the full weeks.
    /// </summary>
    /// <param name="plan">The plan's model.</param>
    /// <param name="program">Its program.</param>
    /// <param name="run">It in the hands of a solver, at its own bounds before and after.</param>
    /// <param name="solution">Its solution.</param>
    /// <returns>Each thing once, dearest first.</returns>
    internal static IReadOnlyList<LimitTogether> Together(PlanModel plan, PlanProgram program, ILinearRun run, LinearSolution solution)
    {
        double[] used = [.. solution.Used(program.Model)];
        PlanSeasonPlaces hours = program.Incomes[0];
        bool IsFull(int row) => program.Keys[row] is { Kind: PlanLimitKind.Hours, Week: int week }
            ? IsUsedUp(hours.Own[week], plan.Hours.Own[week]) && IsUsedUp(hours.Hired[week], plan.Hours.Hired[week])
            : used[row] >= program.Model.Limits[row].Most - Smallest;
        bool IsUsedUp(int quantity, double there) => solution.Values[quantity] >= there - Smallest;
        List<LimitTogether> found = [];
        foreach (IGrouping<(PlanLimitKind Kind, int Place), int> thing in Enumerable.Range(0, program.Keys.Count)
            .Where(row => IsWeekly(program.Keys[row].Kind))
            .GroupBy(row => (program.Keys[row].Kind, program.Keys[row].Place)))
        {
            int[] full = [.. thing.Where(IsFull)], moved = StaysAllYear(thing.Key.Kind) ? [.. thing] : full;
            double own = thing.Key.Kind == PlanLimitKind.Hours ? program.OwnHour * moved.Length : 0.0;

            // By duality one more brings no more than its prices together.
            if (full.Length > 1 && moved.Sum(row => solution.ShadowPrices[row]) - own > Smallest)
            {
                double? By(double change) => Told(Moved(program.Model, run, moved, change) - solution.Objective, own);
                int[] weeks = [.. full.Select(row => program.Keys[row].Week)];
                found.Add(new LimitTogether(new(thing.Key.Kind, thing.Key.Place, -1), weeks, By(1.0) ?? 0.0, By(-1.0)));
            }
        }

        return [.. found.Where(one => one.More > Smallest).OrderByDescending(one => one.More)];
    }

    private static double? Moved(LinearModel model, ILinearRun run, int[] rows, double change)
    {
        Array.ForEach(rows, row => run.SetLimit(row, model.Limits[row].Least, model.Limits[row].Most + change));
        double? best = run.Best();
        Array.ForEach(rows, row => run.SetLimit(row, model.Limits[row].Least, model.Limits[row].Most));
        return best;
    }

    private static bool StaysAllYear(PlanLimitKind kind) => kind is PlanLimitKind.Beds or PlanLimitKind.Crates or PlanLimitKind.Trays;

    private static bool IsWeekly(PlanLimitKind kind) =>
        StaysAllYear(kind) || kind is PlanLimitKind.Hours or PlanLimitKind.Water or PlanLimitKind.Power;
}
