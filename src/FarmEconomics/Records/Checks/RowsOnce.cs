namespace FarmEconomics.Records.Checks;

/// <summary>Warns of rows that say the same as an earlier one in every column.</summary>
internal static class RowsOnce
{
    private static readonly DuplicateSearch[] Searches =
    [
        Once("sales", tables => tables.Sales, row => new(row.Date, row.Quantity, row.UnitPrice, row.Amount), row => row.Crop, row => row.Channel, row => row.Unit, row => row.Planting),
        Once("harvests", tables => tables.Harvests, row => new(row.Date, row.Quantity, row.Culled, null), row => row.Crop, row => row.Planting, row => row.Unit),
        Once("labor", tables => tables.Labor, row => new(row.Date, row.Hours, null, null), row => row.Worker, row => row.Task, row => row.Crop, row => row.Planting, row => row.Channel, row => row.Pool),
        Once("expenses", tables => tables.Expenses, row => new(row.Date, row.Amount, row.FarmPercent, row.CropYear), row => row.Category, row => row.Payee, row => row.Crop, row => row.Planting, row => row.Channel, row => row.Pool, row => row.Note),
        Once("funding", tables => tables.Funding, row => new(default, row.Amount, row.FunderPercent, (int)row.ObjectClass), row => row.Project, row => row.Item, row => row.Note),
    ];

    /// <summary>What is looked for, by name.</summary>
    public static IEnumerable<string> Names => Searches.Select(search => search.Name);

    /// <summary>Looks through all tables. Only reads them, so that it can go on beside the other checks.</summary>
    public static IReadOnlyList<Problem> Find(RecordTables tables)
    {
        var problems = new ProblemLog();
        foreach (DuplicateSearch search in Searches)
        {
            search.Run(tables, problems);
        }

        return problems.Problems;
    }

    private static DuplicateSearch Once<T>(string table, Func<RecordTables, List<T>> rows, Func<T, Values> values, params Func<T, string?>[] texts)
        where T : class, IRecordRow => new($"{table}: no row twice", (tables, problems) =>
    {
        // Rows alike are of one day: a set for each day stays small enough to be quick however long the table is.
        var seen = new HashSet<T>(new SameContent<T>(values, texts));
        DateOnly day = default;
        foreach (T row in DateOrder.Of(rows(tables), row => values(row).Date))
        {
            if (values(row).Date != day)
            {
                day = values(row).Date;
                seen.Clear();
            }

            if (!seen.Add(row) && seen.TryGetValue(row, out T? first))
            {
                problems.Add(CheckContext.ProblemOf(ProblemCodes.DuplicateRow, row, null, $"The row says the same as line {first.Source.Line}."));
            }
        }
    });

    private sealed record DuplicateSearch(string Name, Action<RecordTables, ProblemLog> Run);

    /// <summary>The date and numbers of a row: one form for all tables, so that comparing is compiled once.</summary>
    private readonly record struct Values(DateOnly Date, decimal First, decimal? Second, decimal? Third);

    // The rows themselves are the keys, so that millions of them need no copies.
    private sealed class SameContent<T>(Func<T, Values> values, Func<T, string?>[] texts) : IEqualityComparer<T>
    {
        public bool Equals(T? x, T? y) =>
            values(x!).Equals(values(y!)) && Array.TrueForAll(texts, text => string.Equals(text(x!), text(y!), StringComparison.OrdinalIgnoreCase));

        public int GetHashCode(T obj)
        {
            Values numbers = values(obj);
            int hash = HashCode.Combine(numbers.Date.DayNumber, numbers.First.GetHashCode(), numbers.Second.GetHashCode(), numbers.Third.GetHashCode());
            foreach (Func<T, string?> text in texts)
            {
                hash = HashCode.Combine(hash, text(obj)?.GetHashCode(StringComparison.OrdinalIgnoreCase) ?? 0);
            }

            return hash;
        }
    }
}
