using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>A row of the labor table, or hours filled in from a standard, with where its hours went.</summary>
public sealed class LaborUse
{
    internal LaborUse(IRecordRow origin, Stage stage, WorkerKind kind, decimal hours, int window, bool added)
    {
        Origin = origin;
        Stage = stage;
        Kind = kind;
        Hours = hours;
        Window = window;
        Added = added;
    }

    /// <summary>The labor row, or the row of the standard or control total that the hours were filled in from.</summary>
    public IRecordRow Origin { get; }

    /// <summary>The stage of the task.</summary>
    public Stage Stage { get; }

    /// <summary>Who worked.</summary>
    public WorkerKind Kind { get; }

    /// <summary>Hours.</summary>
    public decimal Hours { get; }

    /// <summary>The crop-year window of the day.</summary>
    public int Window { get; }

    /// <summary>True when no log stands behind the hours: they were added from a standard.</summary>
    public bool Added { get; }

    /// <summary>Where the hours went; they sum to <see cref="Hours"/>.</summary>
    public IReadOnlyList<LaborPart> Parts => PartList;

    internal List<LaborPart> PartList { get; } = new(1);
}

/// <summary>A part of a labor row's hours.</summary>
/// <param name="Use">The row.</param>
/// <param name="Enterprise">The enterprise worked for, or null.</param>
/// <param name="Pool">The pool worked for, or null; neither: not assigned.</param>
/// <param name="Hours">Hours.</param>
/// <param name="Estimated">True when a time standard, not a log, says where the hours went.</param>
public readonly record struct LaborPart(LaborUse Use, Enterprise? Enterprise, Pool? Pool, decimal Hours, bool Estimated)
{
    /// <summary>What its part was reckoned by: the row's money is split by the same weights as its hours.</summary>
    internal decimal Weight { get; init; } = 1m;
}
