using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Planning;

/// <summary>Lengths of a plan with what they are worth.</summary>
/// <param name="Feet">Bed-feet of each sowing, in the model's order.</param>
/// <param name="Worth">What they add: sales, less everything that varies, own hours at their value.</param>
public sealed record PlanLengths(IReadOnlyList<double> Feet, double Worth);

/// <summary>A limit that binds in the best plan.</summary>
/// <param name="Key">What it limits.</param>
/// <param name="Worth">What one more unit adds; for hours on top of what an own hour is worth.</param>
/// <param name="More">What one more unit adds by solving again; null where it wasn't needed.</param>
/// <param name="Less">What one unit less takes by solving again; null where it wasn't needed.</param>
public sealed record BindingLimit(PlanLimitKey Key, double Worth, double? More = null, double? Less = null);

/// <summary>A crop the best plan leaves out.</summary>
/// <param name="Crop">The crop's place.</param>
/// <param name="Misses">What a bed-foot of it would cost the plan, money.</param>
public sealed record LeftOut(int Crop, double Misses);

/// <summary>The best mix under a farm's limits, beside today's.</summary>
public sealed class BestMix
{
    private const double Smallest = 0.005;
    private readonly ILinearSolver solver;
    private readonly PlanLengths? nearlyAsGood;
    private (double[] Feet, PlanProgram Program, LinearSolution Solution)? scored;

    private BestMix(PlanModel model, ILinearSolver solver, int worths)
    {
        Model = model;
        this.solver = solver;
        Today = Score(model.Sowings.Select(sowing => sowing.Bounds.Least > 0.0 ? sowing.Bounds.Least : sowing.Today));
        PlanProgram program = new(model);
        Questions asked = new(program);
        using ILinearRun run = solver.Open(program.Model);
        LinearSolution solution = run.Solve();
        if (!solution.IsOptimal)
        {
            Short = FindShort(new PlanProgram(model));
            return;
        }

        double[] feet = [.. program.Lengths.Select(length => Math.Max(0.0, solution.Values[length]))];
        Best = new PlanLengths(feet, solution.Objective + model.ChargeOf(feet));
        Quantities = PlanQuantities.Of(model, program, program.Incomes[0], solution);
        Duality = (solution.Objective, solution.DualObjective(program.Model));
        Binding = FindBinding(program, solution);
        Worths = LimitWorths.Of(Binding.Take(worths), program, run, solution);
        LeftOut = FindLeftOut(asked, run);
        nearlyAsGood = FindNearlyAsGood(asked, run);
    }

    /// <summary>The model.</summary>
    public PlanModel Model { get; }

    /// <summary>This year's lengths, scored by the same program; hours beyond what there is cost three times a hired hour.</summary>
    public PlanLengths Today { get; }

    /// <summary>The best lengths; null where no plan keeps within the limits: see <see cref="Short"/>.</summary>
    public PlanLengths? Best { get; }

    /// <summary>What the best plan picks, keeps, sells and works, week by week; null without one.</summary>
    public PlanQuantities? Quantities { get; }

    /// <summary>The objective, less what changes must bring, and that of the dual problem; they agree to the cent.</summary>
    public (double Primal, double Dual) Duality { get; }

    /// <summary>Limits that bind, dearest first.</summary>
    public IReadOnlyList<BindingLimit> Binding { get; } = [];

    /// <summary>
    /// The dearest of them, as many as were asked for, with what one unit more adds and one less takes, dearest by what one more adds
    /// first.
    /// </summary>
    public IReadOnlyList<BindingLimit> Worths { get; } = [];

    /// <summary>Crops the plan leaves out, nearest first.</summary>
    public IReadOnlyList<LeftOut> LeftOut { get; } = [];

    /// <summary>Limits that can't be kept whatever is grown, and by how much.</summary>
    public IReadOnlyList<(PlanLimitKey Key, double By)> Short { get; } = [];

    /// <summary>Finds the best mix.</summary>
    /// <param name="model">The model.</param>
    /// <param name="solver">The solver.</param>
    /// <param name="worths">Of how many limits, the dearest first, <see cref="Worths"/> are found.</param>
    /// <returns>The mix.</returns>
    public static BestMix Of(PlanModel model, ILinearSolver solver, int worths = 0)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(solver);
        return new BestMix(model, solver, worths);
    }

    /// <summary>What lengths are worth in the mean season when everything else is chosen best; they may break the limits on beds.</summary>
    /// <param name="feet">Bed-feet of each sowing, in the model's order.</param>
    /// <returns>The lengths with their worth.</returns>
    public PlanLengths Score(IEnumerable<double> feet)
    {
        double[] lengths = [.. feet];
        LinearSolution solution = SolveFixed(lengths).Solution;
        return new PlanLengths(lengths, solution.IsOptimal ? solution.Objective : double.NaN);
    }

    /// <summary>What lengths bring beyond this year's, a year; null where this year's can't be scored.</summary>
    /// <param name="chosen">The lengths, scored.</param>
    /// <returns>The money.</returns>
    public decimal? Gain(PlanLengths chosen)
    {
        ArgumentNullException.ThrowIfNull(chosen);
        double gain = chosen.Worth - Today.Worth;
        return double.IsFinite(gain) ? (decimal)gain : null;
    }

    /// <summary>The quantities of given lengths in the mean season.</summary>
    /// <param name="feet">Bed-feet of each sowing, in the model's order.</param>
    /// <returns>What they pick, keep, sell and work; null where that can't be found.</returns>
    public PlanQuantities? QuantitiesOf(IEnumerable<double> feet)
    {
        (PlanProgram program, LinearSolution solution) = SolveFixed([.. feet]);
        return solution.IsOptimal ? PlanQuantities.Of(Model, program, program.Incomes[0], solution) : null;
    }

    /// <summary>
    /// Another plan nearly as good: the least total length of the best plan's sowings that still earns 98% of its gain.
    /// </summary>
    /// <returns>The lengths; null without a best plan.</returns>
    public PlanLengths? Simpler() => nearlyAsGood is null ? null : Score(nearlyAsGood.Feet);

    /// <summary>That plan in pieces of bed: see <see cref="Rounded"/>.</summary>
    /// <param name="piece">Bed-feet of a piece, above 0.</param>
    /// <returns>The lengths in pieces with their worth; null without a best plan.</returns>
    public PlanLengths? SimplerIn(double piece) => nearlyAsGood is null ? null : Rounded(nearlyAsGood, piece);

    /// <summary>
    /// The plan in whole pieces of bed: only the best plan's sowings, each as many pieces as fit. A mixed program; solved to a thousandth.
    /// </summary>
    /// <param name="piece">Bed-feet of a piece, by cover.</param>
    /// <returns>The lengths; null where none was found.</returns>
    public PlanLengths? InPieces(IReadOnlyList<double> piece)
    {
        ArgumentNullException.ThrowIfNull(piece);
        if (Best is null)
        {
            return null;
        }

        PlanProgram program = new(Model);
        int[] pieces = new int[program.Lengths.Length];
        for (int i = 0; i < pieces.Length; i++)
        {
            PlanSowing sowing = Model.Sowings[i];
            bool chosen = Best.Feet[i] > Smallest && sowing.Bounds.Least == 0.0;
            double size = piece[sowing.Cover];
            pieces[i] = program.Model.AddQuantity("pieces", 0.0, chosen ? Math.Ceiling((Best.Feet[i] / size) + 1.0) : 0.0, isWhole: true);
            int whole = program.Model.AddLimit("whole pieces", sowing.Bounds.Least, sowing.Bounds.Least);
            program.Model.Set(whole, program.Lengths[i], 1.0);
            program.Model.Set(whole, pieces[i], -size);
        }

        LinearSolution solution = solver.Solve(program.Model);
        return solution.IsOptimal ? Score(program.Lengths.Select(length => Math.Round(Math.Max(0.0, solution.Values[length]), 6))) : null;
    }

    /// <summary>
    /// The lengths in pieces of bed, without another program: each rounded down, then those that lost most rounded up as far as their beds
    /// have room.
    /// </summary>
    /// <param name="lengths">The lengths.</param>
    /// <param name="piece">Bed-feet of a piece, above 0.</param>
    /// <returns>The lengths in pieces with their worth.</returns>
    public PlanLengths Rounded(PlanLengths lengths, double piece)
    {
        ArgumentNullException.ThrowIfNull(lengths);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(piece);
        double[] feet = [.. lengths.Feet.Select((length, i) => Model.Sowings[i].Bounds.Least > 0.0 ? length : Math.Floor((length / piece) + 1e-9) * piece)];
        foreach (int i in Enumerable.Range(0, feet.Length).Where(i => lengths.Feet[i] - feet[i] > piece / 4.0).OrderByDescending(i => lengths.Feet[i] - feet[i]))
        {
            PlanSowing sowing = Model.Sowings[i];
            bool room = Enumerable.Range(Math.Max(0, sowing.Week), Math.Min(PlanModel.Weeks, sowing.Week + sowing.WeeksInBed) - Math.Max(0, sowing.Week)).All(week =>
                Enumerable.Range(0, feet.Length).Where(j => Model.Sowings[j].Cover == sowing.Cover && Model.Sowings[j].Holds(week)).Sum(j => feet[j]) + piece
                    <= Model.Covers[sowing.Cover].Feet[week] + 1e-9);
            feet[i] += room ? piece : 0.0;
        }

        return Score(feet);
    }

    /// <summary>
    /// Solves for given lengths; the lengths asked for last are kept, since who scores them mostly asks for their quantities next.
    /// </summary>
    private (PlanProgram Program, LinearSolution Solution) SolveFixed(double[] lengths)
    {
        if (scored is not { } last || !last.Feet.AsSpan().SequenceEqual(lengths))
        {
            PlanProgram program = new(Model.WithLengths(lengths), beyond: true);
            scored = last = (lengths, program, solver.Solve(program.Model));
        }

        return (last.Program, last.Solution);
    }

    private List<BindingLimit> FindBinding(PlanProgram program, LinearSolution solution)
    {
        List<BindingLimit> binding = [];
        for (int i = 0; i < program.Keys.Count; i++)
        {
            PlanLimitKey key = program.Keys[i];
            double worth = key.Kind switch
            {
                PlanLimitKind.Balance or PlanLimitKind.Boxes => 0.0,

                // An hour is told on top of what it is worth to its owner.
                PlanLimitKind.Hours => Math.Max(0.0, solution.ShadowPrices[i] - Model.Hours.OwnCost),
                _ => Math.Abs(solution.ShadowPrices[i]),
            };
            if (worth > Smallest)
            {
                binding.Add(new BindingLimit(key, worth));
            }
        }

        return [.. binding.OrderByDescending(limit => limit.Worth)];
    }

    /// <summary>
    /// By how much a crop misses is what one bed-foot of it costs the plan, found by solving again: the reduced cost of a sowing that gives
    /// nothing yet isn't unique.
    /// </summary>
    private LeftOut[] FindLeftOut(Questions asked, ILinearRun run)
    {
        List<LeftOut> found = [];
        foreach (IGrouping<int, int> crop in asked.ByCrop.Where(crop => crop.All(i => Best!.Feet[i] <= Smallest)))
        {
            run.SetLimit(asked.AtLeastAFoot[crop.Key], 1.0, double.PositiveInfinity);
            double? forced = run.Best();
            run.SetLimit(asked.AtLeastAFoot[crop.Key], double.NegativeInfinity, double.PositiveInfinity);
            if (forced is { } worth)
            {
                found.Add(new LeftOut(crop.Key, Math.Max(0.0, Duality.Primal - worth)));
            }
        }

        return [.. found.OrderBy(one => one.Misses)];
    }

    /// <summary>
    /// The least total length of the best plan's sowings that still earns 98% of its gain; leaves the run with another objective.
    /// </summary>
    private PlanLengths? FindNearlyAsGood(Questions asked, ILinearRun run)
    {
        double today = double.IsFinite(Today.Worth) ? Today.Worth : 0.0;
        double least = today + (PlanSettings.NearlyAsGood * (Best!.Worth - today));
        run.SetLimit(asked.Earns, least, double.PositiveInfinity);
        for (int i = 0; i < asked.Program.Model.Quantities.Count; i++)
        {
            run.SetWorth(i, i < asked.Program.Lengths.Length ? -1.0 : 0.0);
        }

        for (int i = 0; i < asked.Program.Lengths.Length; i++)
        {
            if (Best.Feet[i] <= Smallest)
            {
                run.SetBounds(asked.Program.Lengths[i], 0.0, 0.0);
            }
        }

        LinearSolution solution = run.Solve();
        return solution.IsOptimal
            ? new PlanLengths([.. asked.Program.Lengths.Select(length => Math.Max(0.0, solution.Values[length]))], least)
            : null;
    }

    private List<(PlanLimitKey Key, double By)> FindShort(PlanProgram program)
    {
        HashSet<int> firm = [.. Enumerable.Range(0, program.Keys.Count).Where(i => program.Keys[i].Kind is PlanLimitKind.Balance or PlanLimitKind.Boxes or PlanLimitKind.Wish)];
        IReadOnlyList<Shortfall> found = Shortfalls.Of(solver, program.Model, firm);
        return [.. (found.Count > 0 ? found : Shortfalls.Of(solver, program.Model)).Select(one => (program.Keys[one.Limit], one.By))];
    }

    /// <summary>
    /// Limits that bind nothing until a question is asked with them. They stand in the program from the start, so that every question is
    /// answered from the basis of the best plan instead of from nothing.
    /// </summary>
    private sealed class Questions
    {
        internal Questions(PlanProgram program)
        {
            Program = program;
            ByCrop = Enumerable.Range(0, program.Lengths.Length).ToLookup(program.CropOf);
            Earns = Free("earns nearly as much");
            for (int i = 0; i < program.Model.Quantities.Count; i++)
            {
                program.Model.Set(Earns, i, program.Changes.Contains(i) ? 0.0 : program.Model.Quantities[i].Worth);
            }

            foreach (IGrouping<int, int> crop in ByCrop)
            {
                AtLeastAFoot[crop.Key] = Free("at least a foot");
                foreach (int i in crop)
                {
                    program.Model.Set(AtLeastAFoot[crop.Key], program.Lengths[i], 1.0);
                }
            }
        }

        internal PlanProgram Program { get; }

        /// <summary>Sowings by crop.</summary>
        internal ILookup<int, int> ByCrop { get; }

        /// <summary>The limit that holds the whole objective.</summary>
        internal int Earns { get; }

        /// <summary>The limit that holds a crop's length over the year.</summary>
        internal Dictionary<int, int> AtLeastAFoot { get; } = [];

        private int Free(string name) => Program.Model.AddLimit(name, double.NegativeInfinity, double.PositiveInfinity);
    }
}
