using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Planning;

/// <summary>How exactly seasons are scored.</summary>
internal enum Scoring
{
    /// <summary>Some solved, the rest told from their prices.</summary>
    Told,

    /// <summary>Some solved, the rest at the most they can be worth.</summary>
    Bounds,

    /// <summary>Every season solved.</summary>
    Solved,
}

/// <summary>
/// What given lengths are worth season by season: the lengths stand; what is picked, kept, boxed, sold and hired is chosen best in each.
/// The program holds only what can come of these lengths. Some seasons are solved; each solution's prices bound the worth of every other
/// season from above (weak duality; Dantzig, Linear Programming and Extensions, 1963, ch. 6). A season that isn't solved is told with the
/// least of these bounds, less the part by which such bounds were too high on the seasons solved. So a thousand seasons take the time of a
/// few dozen.
/// </summary>
internal sealed class SeasonScores
{
    /// <summary>Seasons solved, half of them spread over all and half over the worst.</summary>
    internal const int Solved = 40;
    private const double Worst = 0.3;

    /// <summary>
    /// Seasons of a part start from one another's answers; parts are always cut the same way, so that threads don't change a digit.
    /// </summary>
    private const int Part = 10;
    private readonly double mostYield;
    private readonly PlanModel plan;
    private readonly LinearModel small = new();
    private readonly List<(int Quantity, int Crop, double Most)> picked = [];
    private readonly List<(int Quantity, int Crop, double Net, double Units)> sold = [];
    private readonly double lengths;

    private SeasonScores(PlanModel plan, IReadOnlyList<double> feet, IReadOnlyList<PlanSeason> seasons)
    {
        this.plan = plan;
        mostYield = seasons.SelectMany(season => season.Yield).DefaultIfEmpty(1.0).Max();
        PlanProgram program = new(plan.WithLengths(feet), beyond: true);
        LinearModel whole = program.Model;
        double[] shift = new double[whole.Limits.Count];
        for (int i = 0; i < program.Lengths.Length; i++)
        {
            lengths += whole.Quantities[program.Lengths[i]].Worth * feet[i];
        }

        foreach (Entry entry in whole.Entries.Where(entry => entry.Quantity < program.Lengths.Length))
        {
            shift[entry.Limit] += entry.Takes * feet[entry.Quantity];
        }

        Shrink(program, shift);
    }

    /// <summary>Scores lengths.</summary>
    /// <param name="plan">The model.</param>
    /// <param name="solver">The solver.</param>
    /// <param name="feet">Bed-feet of each sowing.</param>
    /// <param name="seasons">The seasons.</param>
    /// <param name="scoring">How exactly.</param>
    /// <returns>What the lengths are worth in each.</returns>
    internal static double[] Of(
        PlanModel plan,
        ILinearSolver solver,
        IReadOnlyList<double> feet,
        IReadOnlyList<PlanSeason> seasons,
        Scoring scoring = Scoring.Told
    )
    {
        SeasonScores scores = new(plan, feet, seasons);
        int[] chosen =
            scoring == Scoring.Solved || seasons.Count <= Solved ? [.. Enumerable.Range(0, seasons.Count)] : scores.Choose(seasons);
        LinearSolution[] solutions = scores.Solve(solver, [.. chosen.Select(i => seasons[i])]);
        Bound[] bounds =
            chosen.Length == seasons.Count
                ? []
                :
                [
                    .. chosen
                        .Zip(solutions)
                        .Where(one => one.Second.IsOptimal)
                        .Select(one => new Bound(scores, one.Second, seasons[one.First])),
                ];
        double[] worth = new double[seasons.Count];
        double high =
            bounds.Length < 2 || scoring == Scoring.Bounds
                ? 0.0
                : bounds
                    .Select((bound, k) => bounds.Where((_, j) => j != k).Min(other => other.Of(bound.Season)) - bound.Objective)
                    .Average();
        Parallel.For(0, worth.Length, i =>
            worth[i] = bounds.Length == 0 ? double.NaN : bounds.Min(bound => bound.Of(seasons[i])) - high + scores.lengths
        );
        for (int i = 0; i < chosen.Length; i++)
        {
            worth[chosen[i]] = solutions[i].Objective + scores.lengths;
        }

        return worth;
    }

    /// <summary>By what the seasons' harvests would bring: so many alike in rank over all, as many over the worst.</summary>
    private int[] Choose(IReadOnlyList<PlanSeason> seasons)
    {
        double[] brings = new double[plan.Crops.Count];
        foreach (IGrouping<int, (int Quantity, int Crop, double Most)> crop in picked.GroupBy(one => one.Crop))
        {
            double[] nets = [.. sold.Where(step => step.Crop == crop.Key).Select(step => step.Net)];
            brings[crop.Key] = crop.Sum(one => one.Most) * nets.DefaultIfEmpty(0.0).Average();
        }

        int[] order =
        [
            .. Enumerable
                .Range(0, seasons.Count)
                .OrderBy(i => brings.Select((money, c) => money * seasons[i].Yield[c] * seasons[i].Price[c]).Sum()),
        ];
        int half = Solved / 2;
        IEnumerable<int> Spread(double part) => Enumerable.Range(0, half).Select(i => order[(int)((i + 0.5) / half * part * order.Length)]);
        return [.. Spread(1.0).Concat(Spread(Worst)).Distinct()];
    }

    private LinearSolution[] Solve(ILinearSolver solver, PlanSeason[] seasons)
    {
        LinearSolution[] solutions = new LinearSolution[seasons.Length];
        Parallel.ForEach(Enumerable.Range(0, seasons.Length).Chunk(Part), part =>
        {
            using ILinearRun run = solver.Open(small);
            foreach (int i in part)
            {
                solutions[i] = Solve(run, seasons[i]);
            }
        });
        return solutions;
    }

    private LinearSolution Solve(ILinearRun run, PlanSeason season)
    {
        foreach ((int quantity, int crop, double most) in picked)
        {
            run.SetBounds(quantity, 0.0, most * season.Yield[crop]);
        }

        foreach ((int quantity, int crop, double net, _) in sold)
        {
            run.SetWorth(quantity, (net * season.Price[crop]) - plan.Crops[crop].SoldCost);
        }

        return run.Solve();
    }

    /// <summary>Leaves out the lengths, what can't be picked, and what can't be kept, boxed or sold without it.</summary>
    private void Shrink(PlanProgram program, double[] shift)
    {
        LinearModel whole = program.Model;
        PlanSeasonPlaces places = program.Incomes[0];
        HashSet<int> ripe = [.. places.Ripe.Values];
        Dictionary<int, (int Crop, int Week)> pickedIn = places.Picked.ToDictionary(one => one.Value, one => one.Key);
        Dictionary<int, (int Crop, double Net)> steps = places.Sold.ToDictionary(
            one => one.Value, one => (one.Key.Crop, plan.Crops[one.Key.Crop].Steps[one.Key.Week][one.Key.Step].Net));
        HashSet<int> beyond = [.. OutOfReach(places, shift)];
        bool[] stands = StandsFrom(
            program,
            [.. whole.Quantities.Select((_, i) => !pickedIn.TryGetValue(i, out (int, int) week) || shift[places.Ripe[week]] > 0.0)]
        );
        int[] at = new int[whole.Quantities.Count];
        Array.Fill(at, -1);
        for (int i = program.Lengths.Length; i < at.Length; i++)
        {
            if (stands[i] && !beyond.Contains(i))
            {
                Quantity quantity = whole.Quantities[i];
                at[i] = small.AddQuantity("", quantity.Worth, quantity.Most, quantity.Least);
                if (pickedIn.TryGetValue(i, out (int Crop, int Week) week))
                {
                    picked.Add((at[i], week.Crop, shift[places.Ripe[week]]));
                }
                else if (steps.TryGetValue(i, out (int Crop, double Net) step))
                {
                    sold.Add((at[i], step.Crop, step.Net, quantity.Most));
                }
            }
        }

        int[] limits =
        [.. whole.Limits.Select((limit, i) => ripe.Contains(i) ? -1 : small.AddLimit("", limit.Least - shift[i], limit.Most - shift[i]))];
        foreach (Entry entry in whole.Entries.Where(entry => at[entry.Quantity] >= 0 && limits[entry.Limit] >= 0))
        {
            small.Set(limits[entry.Limit], at[entry.Quantity], entry.Takes);
        }
    }

    /// <summary>
    /// Steps that would be sold only after better paying ones have taken all there can be of a crop in a week, however good the season: the
    /// better go first, whatever the season's price.
    /// </summary>
    private IEnumerable<int> OutOfReach(PlanSeasonPlaces places, double[] shift)
    {
        foreach (
            IGrouping<(int Crop, int Week), ((int Crop, int Week, int Step) Key, int Quantity)> week in places
                .Sold.Select(one => (one.Key, one.Value))
                .GroupBy(one => (one.Key.Crop, one.Key.Week))
        )
        {
            PlanCrop crop = plan.Crops[week.Key.Crop];
            double left =
                mostYield
                * Enumerable
                    .Range(0, crop.Keeps)
                    .Sum(ago => places.Ripe.TryGetValue((week.Key.Crop, week.Key.Week - ago), out int row) ? shift[row] : 0.0);
            foreach (((int _, int _, int step), int quantity) in week.OrderByDescending(one => crop.Steps[one.Key.Week][one.Key.Step].Net))
            {
                if (left <= 0.0)
                {
                    yield return quantity;
                }

                left -= crop.Steps[week.Key.Week][step].Units;
            }
        }
    }

    /// <summary>
    /// Which quantities can be more than nothing: what a balance takes only where something gives to it. Stock of a week gives to the next,
    /// so weeks are gone through in order.
    /// </summary>
    private static bool[] StandsFrom(PlanProgram program, bool[] stands)
    {
        LinearModel whole = program.Model;
        ILookup<int, Entry> rows = whole
            .Entries.Where(entry => program.Keys[entry.Limit].Kind == PlanLimitKind.Balance)
            .ToLookup(entry => entry.Limit);
        foreach (IGrouping<int, Entry> row in rows.OrderBy(row => row.Key))
        {
            if (!row.Any(entry => entry.Takes > 0.0 && stands[entry.Quantity]))
            {
                foreach (Entry entry in row)
                {
                    stands[entry.Quantity] = false;
                }
            }
        }

        return stands;
    }

    /// <summary>
    /// The prices of one season's solution, as a bound on what any season is worth: bounds that move, at their reduced costs.
    /// </summary>
    private sealed class Bound
    {
        private readonly double rest;
        private readonly double[] ofPicked;
        private readonly (int Crop, double Net, double Units, double Reduced)[] steps;

        internal Bound(SeasonScores scores, LinearSolution solution, PlanSeason season)
        {
            (Season, Objective) = (season, solution.Objective);
            ofPicked = new double[season.Yield.Count];
            foreach ((int quantity, int crop, double most) in scores.picked)
            {
                ofPicked[crop] += Math.Max(0.0, solution.ReducedCosts[quantity]) * most;
            }

            steps = [.. scores.sold.Select(step => (step.Crop, step.Net, step.Units, solution.ReducedCosts[step.Quantity]))];
            rest = solution.Objective - Moving(season);
        }

        internal PlanSeason Season { get; }

        /// <summary>What its season is worth.</summary>
        internal double Objective { get; }

        internal double Of(PlanSeason other) => rest + Moving(other);

        private double Moving(PlanSeason other)
        {
            double sum = 0.0;
            for (int c = 0; c < ofPicked.Length; c++)
            {
                sum += ofPicked[c] * other.Yield[c];
            }

            foreach ((int crop, double net, double units, double reduced) in steps)
            {
                sum += Math.Max(0.0, reduced + (net * (other.Price[crop] - Season.Price[crop]))) * units;
            }

            return sum;
        }
    }
}
