namespace FarmEconomics.Records.Checks;

/// <summary>Warns of rows that say the same as an earlier one in every column.</summary>
internal static class RowsOnce
{
    public static IEnumerable<RecordCheck> All { get; } =
    [
        Once("sales", tables => tables.Sales, row => new(row.Date, row.Quantity, row.UnitPrice, row.Amount), row => row.Crop, row => row.Channel, row => row.Unit, row => row.Planting),
        Once("harvests", tables => tables.Harvests, row => new(row.Date, row.Quantity, row.Culled, null), row => row.Crop, row => row.Planting, row => row.Unit),
        Once("labor", tables => tables.Labor, row => new(row.Date, row.Hours, null, null), row => row.Worker, row => row.Task, row => row.Crop, row => row.Planting, row => row.Channel, row => row.Pool),
        Once("expenses", tables => tables.Expenses, row => new(row.Date, row.Amount, row.FarmPercent, row.CropYear), row => row.Category, row => row.Payee, row => row.Crop, row => row.Planting, row => row.Channel, row => row.Pool, row => row.Note),
        Once("funding", tables => tables.Funding, row => new(default, row.Amount, row.FunderPercent, (int)row.ObjectClass), row => row.Project, row => row.Item, row => row.Note),
    ];

    private static TableCheck Once<T>(string table, Func<RecordTables, List<T>> rows, Func<T, Values> values, params Func<T, string?>[] texts)
        where T : class, IRecordRow => new($"{table}: no row twice", context =>
    {
        var seen = new HashSet<T>(rows(context.Tables).Count, new SameContent<T>(values, texts));
        foreach (T row in rows(context.Tables))
        {
            if (!seen.Add(row) && seen.TryGetValue(row, out T? first))
            {
                context.Report(ProblemCodes.DuplicateRow, row, null, $"The row says the same as line {first.Source.Line}.");
            }
        }
    });

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
