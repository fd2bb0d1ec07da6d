using FarmEconomics.Notebooks;

namespace FarmEconomics.Page.Runs;

/// <summary>Where a run is.</summary>
internal enum RunState
{
    /// <summary>Others go first.</summary>
    Waiting,

    /// <summary>A cell is being worked out.</summary>
    Running,

    /// <summary>Every cell ran.</summary>
    Done,

    /// <summary>A cell failed, or a limit was met.</summary>
    Failed,

    /// <summary>The reader called it off.</summary>
    CalledOff,
}

/// <summary>How a run stands at one moment. A page reads it once, so that what it says of the run and what it shows of it agree.</summary>
/// <param name="Id">The run's name.</param>
/// <param name="State">Where it is.</param>
/// <param name="Cell">The code cell being worked out, from 1; 0 before the first.</param>
/// <param name="Of">How many code cells there are; 0 before the first.</param>
/// <param name="Result">What came out, when it has ended and was not called off.</param>
/// <param name="Why">Why it failed or was called off by the program, in words, or null.</param>
internal sealed record RunStanding(string Id, RunState State, int Cell = 0, int Of = 0, NotebookRun? Result = null, string? Why = null)
{
    internal bool HasEnded => State is RunState.Done or RunState.Failed or RunState.CalledOff;
}
