using FarmEconomics.Notebooks;

namespace FarmEconomics.Page;

/// <summary>What to serve and within which limits.</summary>
public sealed record PageServerOptions
{
    /// <summary>The records folder or workbook; changed only where the grower presses save.</summary>
    public required string Records { get; init; }

    /// <summary>Notebooks of the grower's own to show, in order: only those the user named and agreed to run.</summary>
    public required IReadOnlyList<string> Notebooks { get; init; }

    /// <summary>The file of named what-if scenarios, beside the output and never among the records.</summary>
    public required string ScenarioFile { get; init; }

    /// <summary>True when no page offers to save anything in the records.</summary>
    public bool ReadOnly { get; init; }

    /// <summary>
    /// True to work out the first page and the one that takes long before anybody asks: a browser takes a second to open.
    /// </summary>
    public bool WorksAhead { get; init; }

    /// <summary>The port on this machine; 0: any that is free.</summary>
    public int Port { get; init; }

    /// <summary>The longest one step of a notebook may take.</summary>
    public TimeSpan CellTimeLimit { get; init; } = TimeSpan.FromSeconds(60);

    /// <summary>The longest a whole notebook may take.</summary>
    public TimeSpan TotalTimeLimit { get; init; } = TimeSpan.FromMinutes(5);

    /// <summary>Where a line goes for every request that fails.</summary>
    public TextWriter Log { get; init; } = Console.Error;

    /// <summary>The processes that run the notebooks, with their memory limit.</summary>
    public NotebookWorkersOptions Workers { get; init; } = new();
}
