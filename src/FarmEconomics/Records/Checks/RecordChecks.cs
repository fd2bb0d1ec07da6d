using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Checks;

/// <summary>Checks the records against each other; what a file can't hold by itself is the reader's to report.</summary>
public static class RecordChecks
{
    /// <summary>Runs all checks.</summary>
    /// <param name="tables">The tables as read.</param>
    /// <param name="settings">The farm's settings.</param>
    /// <returns>All problems found, by file and line.</returns>
    public static IReadOnlyList<Problem> Run(RecordTables tables, FarmSettings settings)
    {
        ArgumentNullException.ThrowIfNull(tables);
        ArgumentNullException.ThrowIfNull(settings);
        return Run(tables, settings, skipped: null);
    }

    internal static IReadOnlyList<Problem> Run(RecordTables tables, FarmSettings settings, Dictionary<string, HashSet<string>>? skipped)
    {
        var context = new CheckContext(tables, settings, skipped);
        Task<IReadOnlyList<Problem>> twice = Task.Run(() => RowsOnce.Find(tables));
        foreach (RecordCheck check in tables.All.SelectMany(table => Of(table.Schema)))
        {
            check.Run(context);
        }

        return
        [
            .. context
                .Problems.Problems.Concat(twice.GetAwaiter().GetResult())
                .OrderBy(problem => problem.Source, Comparer<SourceLine>.Create(SourceLine.Compare)),
        ];
    }

    // What the declaration says itself, and what its table checks besides.
    private static IEnumerable<RecordCheck> Of(TableSchema table)
    {
        RecordCheck?[] declared = [NamesKnown.Of(table), table.NamesOnce ? NamesOnce.Of(table) : null];
        return declared.OfType<RecordCheck>().Concat(table.Checks.Value);
    }
}
