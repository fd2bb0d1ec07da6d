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

/// <summary>A thing that is full in several weeks of the best plan, and what one more of it adds over all of them together.</summary>
/// <param name="Thing">What it is; of no week.</param>
/// <param name="Weeks">The weeks in which all of it is in use, from 0.</param>
/// <param name="More">What one more adds by solving again; of hours, one in each of those weeks, above what own ones are worth.</param>
/// <param name="Less">What one less takes by solving again; null where no plan keeps within the limits then.</param>
public sealed record LimitTogether(PlanLimitKey Thing, IReadOnlyList<int> Weeks, double More, double? Less);

/// <summary>A crop the best plan leaves out.</summary>
/// <param name="Crop">The crop's place.</param>
/// <param name="Misses">What a bed-foot of it would cost the plan, money.</param>
public sealed record LeftOut(int Crop, double Misses);

/// <summary>The best mix under a farm's limits, beside today's.</summary>
public sealed partial class BestMix
{
    /// <summary>Of how many limits what one more and one less change is told.</summary>
    public const int LimitsTold = 12;

    private const double Smallest = 0.005;

    private readonly ILinearSolver solver;
    private readonly int worths;
    private PlanCash? keptCash;
    private PlanLengths? nearlyAsGood;
    private (double[] Feet, PlanCash? Cash, PlanProgram Program, LinearSolution Solution)? scored;

    private BestMix(PlanModel model, ILinearSolver solver, int worths)
    {
        this.worths = worths;
        // Cash that the best mix keeps of itself limits nothing: rows for it would only take time.
        Model = model with { Cash = null };
        this.solver = solver;
        Today = ScoreOf([.. model.Sowings.Select(sowing => sowing.Bounds.Least > 0.0 ? sowing.Bounds.Least : sowing.Today)], null);
        keptCash = model.Cash;
        Looked looked = Look();
        if (looked is Looked.BreaksCash)
        {
            Model = model;
            looked = Look();
            if (looked is Looked.Nothing && !model.Cash!.HasLine)
            {
                // Nothing that is sown pays for it: told, and planned without.
                CashShort = FindCashShort(model);
                Model = model with { Cash = null };
                keptCash = null;
                looked = Look();
            }
        }

        if (looked is Looked.Nothing)
        {
            FindShort(new PlanProgram(Model));
        }
    }

    private enum Looked
    {
        Found,
        Nothing,
        BreaksCash,
    }

    /// <summary>
    /// The model; without its limit on cash where the best mix keeps it of itself, or nothing can: see <see cref="CashShort"/>.
    /// </summary>
    public PlanModel Model { get; private set; }

    /// <summary>
    /// By how much cash falls below zero whatever is grown, at the least, where no line of credit is on record; then the plan is made
    /// without a limit on cash. Null: cash is kept, or not limited.
    /// </summary>
    public CashShort? CashShort { get; private set; }

    /// <summary>This year's lengths, scored by the same program; hours beyond what there is cost three times a hired hour.</summary>
    public PlanLengths Today { get; }

    /// <summary>The best lengths; null where no plan keeps within the limits: see <see cref="Short"/>.</summary>
    public PlanLengths? Best { get; private set; }

    /// <summary>What the best plan picks, keeps, sells and works, week by week; null without one.</summary>
    public PlanQuantities? Quantities { get; private set; }

    /// <summary>The objective, less what changes must bring, and that of the dual problem; they agree to the cent.</summary>
    public (double Primal, double Dual) Duality { get; private set; }

    /// <summary>Limits that bind, dearest first.</summary>
    public IReadOnlyList<BindingLimit> Binding { get; private set; } = [];

    /// <summary>
    /// The dearest of them, as many as were asked for and those on cash, with what one unit more adds and one less takes, dearest by what
    /// one more adds first.
    /// </summary>
    public IReadOnlyList<BindingLimit> Worths { get; private set; } = [];

    /// <summary>Things that are full in several weeks, dearest first; found where <see cref="Worths"/> were asked for.</summary>
    public IReadOnlyList<LimitTogether> Together { get; private set; } = [];

    /// <summary>Crops the plan leaves out, nearest first.</summary>
    public IReadOnlyList<LeftOut> LeftOut { get; private set; } = [];

    /// <summary>
    /// Where there is no best plan: limits that can't be kept together, none of which can be left out, each with by how much it must give
    /// way for the others to be kept; empty where none was found.
    /// </summary>
    public IReadOnlyList<(PlanLimitKey Key, double By)> Short { get; private set; } = [];

    /// <summary>Where there is no best plan: in how many weeks hours would have to give way, by as little as possible in all.</summary>
    public int WeeksShort { get; private set; }

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

    /// <summary>
    /// What lengths are worth in the mean season when everything else is chosen best; they may break the limits on beds. Where cash is
    /// limited, it is kept as far as these lengths let it.
    /// </summary>
    /// <param name="feet">Bed-feet of each sowing, in the model's order.</param>
    /// <returns>The lengths with their worth.</returns>
    public PlanLengths Score(IEnumerable<double> feet)
    {
        return ScoreOf([.. feet], keptCash);
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
        (PlanProgram program, LinearSolution solution) = SolveFixed([.. feet], keptCash);
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
    /// Solves for given lengths; the lengths asked for last are kept, since who scores them mostly asks for their quantities next.
    /// </summary>
    private (PlanProgram Program, LinearSolution Solution) SolveFixed(double[] lengths, PlanCash? cash)
    {
        if (scored is not { } last || last.Cash != cash || !last.Feet.AsSpan().SequenceEqual(lengths))
        {
            PlanProgram program = new(Model.WithLengths(lengths), beyond: true);
            LinearSolution solution = solver.Solve(program.Model);
            if (cash is not null && solution.IsOptimal && !PlanCashLimits.AreKept(Model, cash, program, solution.Values))
            {
                PlanCash steers = cash with { ShortCosts = PlanCashLimits.Steers };
                program = new PlanProgram(Model.WithLengths(lengths) with { Cash = steers }, beyond: true);
                solution = solver.Solve(program.Model);
            }

            scored = last = (lengths, cash, program, solution);
        }

        return (last.Program, last.Solution);
    }

    /// <summary>Worth without the price that steers cash.</summary>
    private PlanLengths ScoreOf(double[] lengths, PlanCash? cash)
    {
        (PlanProgram program, LinearSolution solution) = SolveFixed(lengths, cash);
        return new PlanLengths(
            lengths,
            solution.IsOptimal ? solution.Objective + PlanCashLimits.Charged(program, solution.Values) : double.NaN
        );
    }

    /// <summary>Looks for the best plan of the model and all that is asked of it, if there is one.</summary>
    private Looked Look()
    {
        PlanProgram program = new(Model);
        Questions asked = new(program);
        using ILinearRun run = solver.Open(program.Model);
        LinearSolution solution = run.Solve();
        if (!solution.IsOptimal)
        {
            return Looked.Nothing;
        }

        if (Model.Cash is null && keptCash is { } cash && !PlanCashLimits.AreKept(Model, cash, program, solution.Values))
        {
            return Looked.BreaksCash;
        }

        double[] feet = [.. program.Lengths.Select(length => Math.Max(0.0, solution.Values[length]))];
        Best = new PlanLengths(feet, solution.Objective + Model.ChargeOf(feet));
        Quantities = PlanQuantities.Of(Model, program, program.Incomes[0], solution);
        Duality = (solution.Objective, solution.DualObjective(program.Model));
        Binding = FindBinding(program, solution);
        Worths = LimitWorths.Of(
            Binding.Where((limit, i) => worths > 0 && (i < worths || limit.Key.Kind == PlanLimitKind.Cash)),
            program,
            run,
            solution
        );
        Together = worths > 0 ? LimitWorths.Together(Model, program, run, solution) : [];
        LeftOut = FindLeftOut(asked, run);
        nearlyAsGood = FindNearlyAsGood(asked, run);
        return Looked.Found;
    }

    private CashShort? FindCashShort(PlanModel model)
    {
        PlanProgram program = new(model with { Cash = model.Cash! with { ShortCosts = PlanCashLimits.LeastShort } });
        LinearSolution solution = solver.Solve(program.Model);
        return solution.IsOptimal ? PlanCashLimits.ShortOf(program, solution.Values) : null;
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

                // Told in months at whose end there is no more of it: a unit that comes in later is worth less.
                PlanLimitKind.Cash when solution.Values[program.Cash[key.Week]] > Smallest - Model.Cash!.Line[key.Week] => 0.0,

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
    private PlanLengths FindNearlyAsGood(Questions asked, ILinearRun run)
    {
        double today = double.IsFinite(Today.Worth) ? Today.Worth : 0.0, gain = Best!.Worth - today;

        // This year's lengths are scored without cash: where it is short they may be worth more than the best that keeps it.
        double least = gain > 0.0 ? today + (PlanSettings.NearlyAsGood * gain) : Best.Worth + ((1.0 - PlanSettings.NearlyAsGood) * gain);
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

        // With an own hour of over about 500 the solver may find none on large farms, though the best mix is one: then that is the plan.
        LinearSolution solution = run.Solve();
        return solution.IsOptimal
            ? new PlanLengths([.. asked.Program.Lengths.Select(length => Math.Max(0.0, solution.Values[length]))], least)
            : Best;
    }

    /// <summary>Bookkeeping is never at fault; boxes can be bought in.</summary>
    private void FindShort(PlanProgram program)
    {
        HashSet<int> firm =
        [
            .. Enumerable.Range(0, program.Keys.Count).Where(i => program.Keys[i].Kind is PlanLimitKind.Balance or PlanLimitKind.Boxes),
        ];
        Short = [.. Conflicts.Of(solver, program.Model, firm).Select(one => (program.Keys[one.Limit], one.By))];
        WeeksShort = Shortfalls.Of(solver, program.Model, firm).Count(one => program.Keys[one.Limit].Kind == PlanLimitKind.Hours);
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
