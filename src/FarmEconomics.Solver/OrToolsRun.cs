#if ORTOOLS
using FarmEconomics.Planning.Programs;
using Google.OrTools.LinearSolver;

namespace FarmEconomics.Solver;

/// <summary>A model as OR-Tools holds it. GLOP keeps its basis between calls of <see cref="Solve"/>.</summary>
internal sealed class OrToolsRun : ILinearRun
{
    /// <summary>A mixed program stops within a thousandth of the best, or after this long, with the best found so far.</summary>
    private const int WholeMilliseconds = 20_000;
    private const double WholeGap = 0.001;

    /// <summary>
    /// A plan's program has ten times as many quantities as limits: the dual simplex method takes a sixth of the time of the primal there.
    /// After a bound has moved the last answer is still a start for it, but only where the program wasn't made smaller first.
    /// </summary>
    private const string Dual = "use_dual_simplex: true";
    private const string Again = Dual + " use_preprocessing: false";
    private readonly Google.OrTools.LinearSolver.Solver solver;
    private readonly Variable[] quantities;
    private readonly Constraint[] limits;
    private readonly Objective objective;
    private readonly bool isWhole;

    /// <summary>Quantities and limits whose ends crossed: nothing lies between, and OR-Tools would write so on the terminal.</summary>
    private readonly HashSet<(bool IsLimit, int Place)> crossed = [];

    internal OrToolsRun(LinearModel model, string linear, bool once)
    {
        isWhole = model.Quantities.Any(quantity => quantity.IsWhole);
        solver = Google.OrTools.LinearSolver.Solver.CreateSolver(isWhole ? OrToolsSolver.Whole : linear)
            ?? throw new InvalidOperationException("OR-Tools lost its solver after it was found.");
        if (!isWhole && linear == OrToolsSolver.Linear && !solver.SetSolverSpecificParametersAsString(once ? Dual : Again))
        {
            throw new InvalidOperationException("OR-Tools no longer takes the method it is told.");
        }

        objective = solver.Objective();
        objective.SetMaximization();
        quantities = [.. model.Quantities.Select(quantity => quantity.IsWhole
            ? solver.MakeIntVar(quantity.Least, quantity.Most, "") : solver.MakeNumVar(quantity.Least, quantity.Most, ""))];
        limits = [.. model.Limits.Select(limit => solver.MakeConstraint(limit.Least, limit.Most, ""))];
        for (int i = 0; i < quantities.Length; i++)
        {
            objective.SetCoefficient(quantities[i], model.Quantities[i].Worth);
            Note((false, i), model.Quantities[i].Least, model.Quantities[i].Most);
        }

        SetCoefficients(model);
        for (int i = 0; i < limits.Length; i++)
        {
            Note((true, i), model.Limits[i].Least, model.Limits[i].Most);
        }
    }

    /// <inheritdoc/>
    public LinearSolution Solve() => SolveAgain() is var status && status != SolveStatus.Optimal
        ? LinearSolution.None(status) : new LinearSolution(
        SolveStatus.Optimal, objective.Value(), [.. quantities.Select(quantity => quantity.SolutionValue())],
        isWhole ? [] : [.. limits.Select(limit => limit.DualValue())],
        isWhole ? [] : [.. quantities.Select(quantity => quantity.ReducedCost())]);

    /// <inheritdoc/>
    public double? Best() => SolveAgain() == SolveStatus.Optimal ? objective.Value() : null;

    /// <inheritdoc/>
    public void SetWorth(int quantity, double worth) => objective.SetCoefficient(quantities[quantity], worth);

    /// <inheritdoc/>
    public void SetBounds(int quantity, double least, double most)
    {
        Note((false, quantity), least, most);
        quantities[quantity].SetBounds(least, most);
    }

    /// <inheritdoc/>
    public void SetLimit(int limit, double least, double most)
    {
        Note((true, limit), least, most);
        limits[limit].SetBounds(least, most);
    }

    /// <inheritdoc/>
    public void Dispose() => solver.Dispose();

    private void Note((bool IsLimit, int Place) what, double least, double most) =>
        _ = least > most ? crossed.Add(what) : crossed.Remove(what);

    /// <summary>Limit by limit, pairs that stand there twice with their sum, in the order they were added.</summary>
    private void SetCoefficients(LinearModel model)
    {
        double[] sums = new double[quantities.Length];
        int[] seenIn = new int[quantities.Length];
        foreach (IGrouping<int, Entry> limit in model.Entries.GroupBy(entry => entry.Limit))
        {
            foreach (Entry entry in limit)
            {
                bool again = seenIn[entry.Quantity] == limit.Key + 1;
                sums[entry.Quantity] = again ? sums[entry.Quantity] + entry.Takes : entry.Takes;
                seenIn[entry.Quantity] = limit.Key + 1;
                limits[limit.Key].SetCoefficient(quantities[entry.Quantity], sums[entry.Quantity]);
            }
        }
    }

    private SolveStatus SolveAgain()
    {
        if (crossed.Count > 0)
        {
            return SolveStatus.Infeasible;
        }

        if (isWhole)
        {
            solver.SetTimeLimit(WholeMilliseconds);
        }

        Google.OrTools.LinearSolver.Solver.ResultStatus status = isWhole ? SolveWhole() : solver.Solve();
        bool found = status == Google.OrTools.LinearSolver.Solver.ResultStatus.OPTIMAL
            || (isWhole && status == Google.OrTools.LinearSolver.Solver.ResultStatus.FEASIBLE);
        return found ? SolveStatus.Optimal : StatusOf(status);
    }

    private Google.OrTools.LinearSolver.Solver.ResultStatus SolveWhole()
    {
        using MPSolverParameters parameters = new();
        parameters.SetDoubleParam(MPSolverParameters.DoubleParam.RELATIVE_MIP_GAP, WholeGap);
        return solver.Solve(parameters);
    }

    private static SolveStatus StatusOf(Google.OrTools.LinearSolver.Solver.ResultStatus status) => status switch
    {
        Google.OrTools.LinearSolver.Solver.ResultStatus.INFEASIBLE => SolveStatus.Infeasible,
        Google.OrTools.LinearSolver.Solver.ResultStatus.UNBOUNDED => SolveStatus.Unbounded,
        _ => SolveStatus.NotSolved,
    };
}
#endif
