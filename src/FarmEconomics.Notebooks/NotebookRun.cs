namespace FarmEconomics.Notebooks;

/// <summary>How a notebook is run.</summary>
public sealed record NotebookRunOptions
{
    /// <summary>The folder relative paths in the notebook start from; by default the notebook's own, as in Jupyter.</summary>
    public string? WorkingDirectory { get; init; }

    /// <summary>The longest one cell may take.</summary>
    public TimeSpan CellTimeLimit { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>The longest the whole notebook may take.</summary>
    public TimeSpan TotalTimeLimit { get; init; } = TimeSpan.FromMinutes(5);

    /// <summary>Hears of each cell as it starts.</summary>
    public IProgress<CellProgress>? Progress { get; init; }

    /// <summary>Called with the document after each cell, so that what was worked out outlives the process.</summary>
    internal Action<NotebookDocument>? AfterCell { get; init; }
}

/// <summary>A cell is about to run.</summary>
/// <param name="Notebook">The notebook's path.</param>
/// <param name="Cell">Which code cell, from 1; 0 is the cell with the run's parameters.</param>
/// <param name="Of">How many code cells the notebook has.</param>
public sealed record CellProgress(string Notebook, int Cell, int Of);

/// <summary>Why a notebook stopped.</summary>
/// <param name="CellIndex">The cell's place in the executed document, from 0; -1 when the run never came to a cell.</param>
/// <param name="Cell">Which code cell, from 1; 0 is the cell with the run's parameters, -1 when the run never came to a cell.</param>
/// <param name="Message">What happened, without colors or the machine's paths.</param>
public sealed record NotebookFailure(int CellIndex, int Cell, string Message)
{
    /// <summary>The failure in one line of words.</summary>
    public override string ToString() => Cell switch
    {
        -1 => Message,
        0 => $"the parameters don't fit the notebook: {Message}",
        _ => $"cell {Cell}: {Message}",
    };
}

/// <summary>What a run left behind.</summary>
/// <param name="Document">The notebook with its outputs, also when a cell failed; figures have a vector picture beside the PNG.</param>
/// <param name="Failure">Why it stopped, or null when every cell ran.</param>
/// <param name="Warnings">The compiler's warnings, cell by cell; they show red in Jupyter.</param>
/// <param name="Elapsed">Wall-clock time of the run.</param>
public sealed record NotebookRun(NotebookDocument Document, NotebookFailure? Failure, IReadOnlyList<string> Warnings, TimeSpan Elapsed)
{
    /// <summary>Whether every cell ran.</summary>
    public bool Succeeded => Failure is null;
}
