#if ORTOOLS
using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Solver;

/// <summary>
/// Linear programs by GLOP, with whole numbers by SCIP, both in Google OR-Tools; or by another solver that comes with it.
/// </summary>
internal sealed class OrToolsSolver : ILinearSolver
{
    internal const string Linear = "GLOP";
    internal const string Whole = "SCIP";

    /// <summary>The simplex solver of COIN-OR: other people's code.</summary>
    internal const string Second = "CLP";

    private readonly string linear;

    private OrToolsSolver(string linear) => this.linear = linear;

    /// <summary>Tries the natives once; they may be missing or made for another system.</summary>
    internal static OrToolsSolver? Find(string linear = Linear)
    {
        try
        {
            using Google.OrTools.LinearSolver.Solver? probe = Google.OrTools.LinearSolver.Solver.CreateSolver(linear);
            return probe is null ? null : new OrToolsSolver(linear);
        }
        catch (Exception missing)
            when (missing is DllNotFoundException or BadImageFormatException or EntryPointNotFoundException or TypeInitializationException)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public ILinearRun Open(LinearModel model, bool once = false)
    {
        ArgumentNullException.ThrowIfNull(model);
        return new OrToolsRun(model, linear, once);
    }
}
#endif
