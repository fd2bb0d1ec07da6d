#if ORTOOLS
using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Solver;

/// <summary>Linear programs by GLOP, with whole numbers by SCIP, both in Google OR-Tools.</summary>
internal sealed class OrToolsSolver : ILinearSolver
{
    internal const string Linear = "GLOP";
    internal const string Whole = "SCIP";

    /// <summary>Tries the natives once; they may be missing or made for another system.</summary>
    internal static OrToolsSolver? Find()
    {
        try
        {
            using Google.OrTools.LinearSolver.Solver? probe = Google.OrTools.LinearSolver.Solver.CreateSolver(Linear);
            return probe is null ? null : new OrToolsSolver();
        }
        catch (Exception missing) when (missing is DllNotFoundException or BadImageFormatException or EntryPointNotFoundException or TypeInitializationException)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public ILinearRun Open(LinearModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        return new OrToolsRun(model);
    }
}
#endif
