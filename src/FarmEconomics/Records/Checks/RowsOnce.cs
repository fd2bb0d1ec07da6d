namespace FarmEconomics.Records.Checks;

/// <summary>Warns of rows that say the same as an earlier one in every column.</summary>
internal static class RowsOnce
{
    public static IEnumerable<RecordCheck> All { get; } =
    [
        Once("sales", tables => tables.Sales, row => (row.Date, row.Quantity, row.UnitPrice, row.Amount), row => row.Crop, row => row.Channel, row => row.Unit, row => row.Planting),
        Once("harvests", tables => tables.Harvests, row => (row.Date, row.Quantity, row.Culled), row => row.Crop, row => row.Planting, row => row.Unit),
        Once("labor", tables => tables.Labor, row => (row.Date, row.Hours), row => row.Worker, row => row.Task, row => row.Crop, row => row.Planting, row => row.Channel, row => row.Pool),
        Once("expenses", tables => tables.Expenses, row => (row.Date, row.Amount, row.FarmPercent, row.CropYear), row => row.Category, row => row.Payee, row => row.Crop, row => row.Planting, row => row.Channel, row => row.Pool, row => row.Note),
        Once("funding", tables => tables.Funding, row => (row.ObjectClass, row.Amount, row.FunderPercent), row => row.Project, row => row.Item, row => row.Note),
    ];

    private static TableCheck Once<T, TKey>(string table, Func<RecordTables, List<T>> rows, Func<T, TKey> values, params Func<T, string?>[] texts)
        where T : class, IRecordRow
        where TKey : struct => new($"{table}: no row twice", context =>
    {
        var seen = new HashSet<T>(rows(context.Tables).Count, new SameContent<T, TKey>(values, texts));
        foreach (T row in rows(context.Tables))
        {
            if (!seen.Add(row) && seen.TryGetValue(row, out T? first))
            {
                context.Report(ProblemCodes.DuplicateRow, row, null, $"The row says the same as line {first.Source.Line}.");
            }
        }
    });

    // The rows themselves are the keys, so that millions of them need no copies.
    private sealed class SameContent<T, TKey>(Func<T, TKey> values, Func<T, string?>[] texts) : IEqualityComparer<T>
        where TKey : struct
    {
        public bool Equals(T? x, T? y) =>
            EqualityComparer<TKey>.Default.Equals(values(x!), values(y!))
            && Array.TrueForAll(texts, text => string.Equals(text(x!), text(y!), StringComparison.OrdinalIgnoreCase));

        public int GetHashCode(T obj)
        {
            var hash = new HashCode();
            hash.Add(values(obj));
            foreach (Func<T, string?> text in texts)
            {
                hash.Add(text(obj), StringComparer.OrdinalIgnoreCase);
            }

            return hash.ToHashCode();
        }
    }
}
