using FarmEconomics.Records.Checks;

namespace FarmEconomics.Records;

/// <summary>How bad a problem is.</summary>
public enum Severity
{
    /// <summary>The result still stands; the figures named in the message are weaker or incomplete.</summary>
    Warning,

    /// <summary>No result is made from the row (or, unless rows in error are skipped, from the whole folder).</summary>
    Error,
}

/// <summary>One fault of the records, as a value: all faults of all files are reported in one run.</summary>
/// <param name="Severity">Error or warning.</param>
/// <param name="Code">The stable code (<c>E</c> or <c>W</c> and three digits), listed in docs/errors.md.</param>
/// <param name="Source">The file and line; line 0 when the fault is the file's, not a line's.</param>
/// <param name="Column">The name of the column at fault, or null when the fault is the whole row's.</param>
/// <param name="Message">What is wrong, what was expected, in a sentence a grower can read.</param>
/// <param name="Hint">How to fix it.</param>
public sealed record Problem(
    Severity Severity,
    string Code,
    SourceLine Source,
    string? Column,
    string Message,
    string Hint)
{
    /// <summary>
    /// 1-based position in the line where the offending field starts; 0 when not known. Filled in by the reader of the files.
    /// </summary>
    public int Position { get; init; }

    /// <summary>The offending text as written, or null.</summary>
    public string? Offending { get; init; }

    /// <summary>The whole row as written, or null. Filled in by the reader of the files.</summary>
    public string? Row { get; init; }

    /// <summary>The nearest known name, when the fault is an unknown name and one is near.</summary>
    public string? Nearest { get; init; }

    /// <summary>
    /// How many further rows have the same fault and aren't listed one by one: of the same cause only the first rows are kept
    /// (<see cref="ProblemLog"/>).
    /// </summary>
    public int Further { get; init; }

    /// <summary>Those further rows and their money, so that they can be left out like the others; errors only.</summary>
    internal IReadOnlyList<(SourceLine Source, decimal? Money)> FurtherRows { get; init; } = [];

    /// <summary>The money in the row, when it has any: a skipped row's money is listed at the top of every result.</summary>
    public decimal? Money { get; init; }
}
