using FarmEconomics.Records.Names;

namespace FarmEconomics.Records.Checks;

/// <summary>
/// Problems with one cause, which one correction fixes: the same fault in the same column, and of an unknown name the same name.
/// </summary>
public sealed class ProblemCause
{
    private ProblemCause(IReadOnlyList<Problem> problems)
    {
        Problems = problems;
        First = problems[0];
        Count = problems.Sum(problem => 1 + problem.Further);
        Money = problems.Sum(problem => (problem.Money ?? 0m) + problem.FurtherRows.Sum(row => row.Money ?? 0m));
        Files =
        [
            .. problems
                .GroupBy(problem => problem.Source.File)
                .OrderByDescending(file => file.Sum(problem => 1 + problem.Further))
                .Select(file => file.Key),
        ];
    }

    /// <summary>The problems, by file and line.</summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>The first of them.</summary>
    public Problem First { get; }

    /// <summary>How many rows have it, those not kept included.</summary>
    public int Count { get; }

    /// <summary>The money that stands in these rows, as far as it can be told.</summary>
    public decimal Money { get; }

    /// <summary>The files they stand in, the one with most of them first.</summary>
    public IReadOnlyList<string> Files { get; }

    /// <summary>True when the cause is a name nobody knows.</summary>
    public bool IsOfName => AliasProposal.IsOfName(First.Code);

    /// <summary>The row of <c>aliases</c> that makes an unknown name the one it is near to; null when nothing is near.</summary>
    public AliasProposal? Alias => First is { Nearest: { } nearest, Offending: { } alias } && AliasProposal.TableOf(First.Code) is { } table
        ? new AliasProposal(table, alias.Trim(), nearest.Trim(), Count, First.Source)
        : null;

    /// <summary>Groups problems by cause: what stops the review first, then what most money hangs on, then what most rows have.</summary>
    /// <param name="problems">The problems.</param>
    /// <returns>The causes.</returns>
    public static IReadOnlyList<ProblemCause> Of(IEnumerable<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        return
        [
            .. problems.GroupBy(Key).Select(group => new ProblemCause([.. group]))
                .OrderByDescending(cause => cause.First.Severity)
                .ThenBy(cause => cause.First.Source.Line > 0 && !RecordSkipping.IsOfWholeFile(cause.First.Code))
                .ThenByDescending(cause => Math.Abs(cause.Money)).ThenByDescending(cause => cause.Count)
                .ThenBy(cause => cause.First.Source, Comparer<SourceLine>.Create(SourceLine.Compare)),
        ];
    }

    // What is wrong with a file as a whole is wrong with that file only.
    private static (string Code, string? Column, string? What) Key(Problem problem) =>
        (
            problem.Code,
            problem.Column,
            problem.Source.Line == 0 ? problem.Message
            : AliasProposal.IsOfName(problem.Code) ? problem.Offending?.Trim().ToUpperInvariant()
            : null
        );
}
