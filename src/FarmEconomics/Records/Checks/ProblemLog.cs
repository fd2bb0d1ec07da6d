using FarmEconomics.Records.Names;

namespace FarmEconomics.Records.Checks;

/// <summary>
/// Gathers problems in bounded memory: of each cause (the same fault in the same column of the same file, and of an unknown name the
/// same name) the first rows are kept whole, of the others only their number and, of errors, where they stand.
/// </summary>
public sealed class ProblemLog
{
    /// <summary>How many rows of one cause are kept.</summary>
    public const int KeptPerCause = 1_000;

    private const int KeptInAll = 50_000;
    private const int MostCauses = 20_000;

    private readonly List<Problem> kept = [];
    private readonly Dictionary<CauseKey, Cause> causes = [];

    /// <summary>How many there are, kept or not.</summary>
    public int Count { get; private set; }

    /// <summary>The problems that are kept; the last of each cause tells how many further ones there are.</summary>
    public IReadOnlyList<Problem> Problems
    {
        get
        {
            List<Problem> problems = [.. kept];
            foreach (Cause cause in causes.Values.Where(cause => cause.Further > 0))
            {
                problems[cause.LastKept] = problems[cause.LastKept] with { Further = cause.Further, FurtherRows = cause.FurtherRows };
            }

            return problems;
        }
    }

    /// <summary>Adds a problem, and the further ones it speaks for.</summary>
    /// <param name="problem">The problem.</param>
    public void Add(Problem problem)
    {
        ArgumentNullException.ThrowIfNull(problem);
        Count += 1 + problem.Further;
        Cause cause = CauseOf(problem);
        cause.Further += problem.Further;
        cause.FurtherRows.AddRange(problem.FurtherRows);
        if (cause.Kept == 0 || (cause.Kept < KeptPerCause && kept.Count < KeptInAll))
        {
            cause.LastKept = kept.Count;
            cause.Kept++;
            kept.Add(problem.Further == 0 ? problem : problem with { Further = 0, FurtherRows = [] });
            return;
        }

        cause.Further++;
        if (problem.Severity == Severity.Error)
        {
            cause.FurtherRows.Add((problem.Source, problem.Money));
        }
    }

    /// <summary>Adds problems.</summary>
    /// <param name="problems">The problems.</param>
    public void AddRange(IEnumerable<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        foreach (Problem problem in problems)
        {
            Add(problem);
        }
    }

    // Beyond so many causes (a name misspelled in a new way in every row) names are no longer told apart.
    private Cause CauseOf(Problem problem)
    {
        string? name = AliasProposal.IsOfName(problem.Code) ? problem.Offending : null;
        var key = new CauseKey(problem.Code, problem.Source.File, problem.Column, name);
        if (causes.TryGetValue(key, out Cause? cause))
        {
            return cause;
        }

        if (causes.Count >= MostCauses && causes.TryGetValue(key = key with { Name = null }, out cause))
        {
            return cause;
        }

        causes.Add(key, cause = new Cause());
        return cause;
    }

    private readonly record struct CauseKey(string Code, string File, string? Column, string? Name);

    private sealed class Cause
    {
        public int Kept { get; set; }

        public int LastKept { get; set; }

        public int Further { get; set; }

        public List<(SourceLine Source, decimal? Money)> FurtherRows { get; } = [];
    }
}
