using FarmEconomics.Planning.Programs;

namespace FarmEconomics.Solver;

/// <summary>Finds the solver of this machine.</summary>
public static class LinearSolvers
{
#if ORTOOLS
    /// <summary>The variable of the surroundings that, set to "none", hides the solver: to see what a copy without one does.</summary>
    private const string Hidden = "FARMECONOMICS_SOLVER";
#endif

    /// <summary>Why there is no solver here, in one sentence for the person who asked for a best plan.</summary>
    public static string Missing => "This copy of the program has no solver for this computer, so it can't look for the best plan; "
        + "everything else works, and plan --like-last-year makes a plan without it.";

    /// <summary>Finds the solver.</summary>
    /// <returns>The solver; null where it isn't there or its native libraries don't load: see <see cref="Missing"/>.</returns>
    public static ILinearSolver? Find()
    {
#if ORTOOLS
        return Environment.GetEnvironmentVariable(Hidden) == "none" ? null : OrToolsSolver.Find();
#else
        return null;
#endif
    }

    /// <summary>Finds a second solver, made by others than the first, to check the first with; nothing is planned with it.</summary>
    /// <returns>The solver; null where it isn't there.</returns>
    public static ILinearSolver? FindSecond()
    {
#if ORTOOLS
        return OrToolsSolver.Find(OrToolsSolver.Second);
#else
        return null;
#endif
    }
}
