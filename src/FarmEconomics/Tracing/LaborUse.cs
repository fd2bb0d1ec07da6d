using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>
/// A row of the labor table, or hours filled in from a standard, with where its hours went. A view of a row of columns; the default value
/// is of none.
/// </summary>
public readonly record struct LaborUse
{
    private readonly LaborTable table;

    internal LaborUse(LaborTable table, int place)
    {
        this.table = table;
        Place = place;
    }

    /// <summary>The labor row, or the row of the standard or control total that the hours were filled in from.</summary>
    public IRecordRow Origin => table.Origin(Place);

    /// <summary>The stage of the task.</summary>
    public Stage Stage => table.Uses[Place].Stage;

    /// <summary>Who worked.</summary>
    public WorkerKind Kind => table.Uses[Place].Kind;

    /// <summary>Hours.</summary>
    public decimal Hours => table.Uses[Place].Hours;

    /// <summary>The crop-year window of the day.</summary>
    public int Window => table.Uses[Place].Window;

    /// <summary>True when no log stands behind the hours: they were added from a standard.</summary>
    public bool Added => table.Uses[Place].IsAdded;

    /// <summary>Where the hours went; they sum to <see cref="Hours"/>.</summary>
    public IReadOnlyList<LaborPart> Parts
    {
        get
        {
            LaborPart[] parts = new LaborPart[table.First[Place + 1] - table.First[Place]];
            for (int i = 0; i < parts.Length; i++)
            {
                parts[i] = table.PartAt(table.First[Place] + i);
            }

            return parts;
        }
    }

    internal int Place { get; }

    /// <summary>The logged row; null for hours that were added.</summary>
    internal LaborRow? Logged => table.Logged(Place);

    /// <summary>What it is.</summary>
    /// <returns>The stage, who worked and the hours.</returns>
    public override string ToString() => table is null ? "" : $"{Stage} {Kind} {Notation.Default.Text($"{Hours:0.##}")}";
}

/// <summary>A part of a labor row's hours.</summary>
/// <param name="Enterprise">The enterprise worked for, or null.</param>
/// <param name="Pool">The pool worked for, or null; neither: not assigned.</param>
/// <param name="Hours">Hours.</param>
/// <param name="Estimated">True when a time standard, not a log, says where the hours went.</param>
public readonly record struct LaborPart(Enterprise? Enterprise, Pool? Pool, decimal Hours, bool Estimated)
{
    /// <summary>What its part went by: the row's money is split by the same weights as its hours.</summary>
    internal decimal Weight { get; init; } = 1m;
}
