using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Checks;

/// <summary>A row left out of every result.</summary>
/// <param name="Source">The row.</param>
/// <param name="Money">The money in it, or null when it has none or it can't be read.</param>
/// <param name="Why">The message of the first error.</param>
public sealed record SkippedRow(SourceLine Source, decimal? Money, string Why);

/// <summary>Records without their rows in error.</summary>
/// <param name="Tables">The rows that are left; they refer to nothing that was skipped.</param>
/// <param name="Skipped">The rows left out, by file and line.</param>
/// <param name="FollowOn">Errors of rows that were fine but refer to a skipped row.</param>
/// <param name="Unfixable">Errors of a whole file or of an option, which skipping rows does not fix: no result can be made.</param>
public sealed record SkipResult(
    RecordTables Tables,
    IReadOnlyList<SkippedRow> Skipped,
    IReadOnlyList<Problem> FollowOn,
    IReadOnlyList<Problem> Unfixable);

/// <summary>Leaves rows in error out of the records, and the rows that then refer to nothing, until all that is left is sound.</summary>
public static class RecordSkipping
{
    private static readonly string[] WholeFile =
    [
        ProblemCodes.MissingTable,
        ProblemCodes.EmptyFile,
        ProblemCodes.MissingColumn,
        ProblemCodes.ColumnTwice,
        ProblemCodes.TableTwice,
        ProblemCodes.RowTooLong,
        ProblemCodes.FileTooLarge,
        ProblemCodes.FileUnreadable,
        ProblemCodes.FileChanged,
        ProblemCodes.TooManyInError,
    ];

    /// <summary>The records without their rows in error.</summary>
    /// <param name="tables">The tables as read; they are not changed.</param>
    /// <param name="problems">The problems of the reading and of <see cref="RecordChecks.Run(RecordTables, FarmSettings)"/>.</param>
    /// <param name="settings">The farm's settings.</param>
    /// <returns>What is left and what was skipped.</returns>
    public static SkipResult Without(this RecordTables tables, IReadOnlyCollection<Problem> problems, FarmSettings settings)
    {
        ArgumentNullException.ThrowIfNull(tables);
        ArgumentNullException.ThrowIfNull(problems);
        var skipped = new Dictionary<SourceLine, SkippedRow>();
        var names = new Dictionary<string, HashSet<string>>(StringComparer.OrdinalIgnoreCase);
        foreach ((string table, HashSet<string> inError) in tables.NamesInError)
        {
            names.Add(table, new HashSet<string>(inError, StringComparer.OrdinalIgnoreCase));
        }

        var followOn = new List<Problem>();
        IEnumerable<Problem> errors = problems.Where(problem => problem.Severity == Severity.Error && !IsUnfixable(problem));
        RecordTables left = tables;
        while (Add(skipped, errors))
        {
            left = Keep(left, skipped, names);
            errors = [.. RecordChecks.Run(left, settings, names).Where(problem => problem.Severity == Severity.Error)];
            followOn.AddRange(errors);
        }

        return new SkipResult(
            left,
            [.. skipped.Values.OrderBy(row => row.Source, Comparer<SourceLine>.Create(SourceLine.Compare))],
            followOn,
            [.. problems.Where(IsUnfixable)]);
    }

    // A fault without a line (a missing file, a bad --set option) is in no row that could be left out.
    private static bool IsUnfixable(Problem problem) =>
        problem.Severity == Severity.Error && (problem.Source.Line == 0 || IsOfWholeFile(problem.Code));

    /// <summary>True for a fault that keeps a whole file from being read, though it stands in one line of it.</summary>
    internal static bool IsOfWholeFile(string code) => WholeFile.Contains(code);

    private static bool Add(Dictionary<SourceLine, SkippedRow> skipped, IEnumerable<Problem> errors)
    {
        int before = skipped.Count;
        foreach (Problem error in errors)
        {
            skipped.TryAdd(error.Source, new SkippedRow(error.Source, error.Money, error.Message));
            foreach ((SourceLine source, decimal? money) in error.FurtherRows)
            {
                skipped.TryAdd(source, new SkippedRow(source, money, ProblemCatalog.Get(error.Code).Title + "."));
            }
        }

        return skipped.Count > before;
    }

    private static RecordTables Keep(
        RecordTables tables,
        Dictionary<SourceLine, SkippedRow> skipped,
        Dictionary<string, HashSet<string>> names
    )
    {
        return tables.With(table => table.Where(row => !IsSkipped(table, row)), rowsInError: false);

        bool IsSkipped(RecordTable table, int row)
        {
            bool isSkipped = skipped.ContainsKey(table.Source(row));
            if (isSkipped && table.Schema.DefinesNames)
            {
                if (!names.TryGetValue(table.Schema.Name, out HashSet<string>? set))
                {
                    names.Add(table.Schema.Name, set = new HashSet<string>(StringComparer.OrdinalIgnoreCase));
                }

                set.Add(((TextColumn)table.Schema.Stored[0]).Of(table, row).Trim());
            }

            return isSkipped;
        }
    }
}
