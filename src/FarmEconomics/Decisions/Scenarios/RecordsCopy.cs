using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// Records being changed in memory: a row is copied when it is first touched, and the copy still knows its place in the files. The rows read
/// stay as they are. Amounts stay unrounded until the end, so that the order of changes makes no difference.
/// </summary>
internal sealed class RecordsCopy(FarmRecords records)
{
    private readonly Dictionary<RecordRow, RecordRow> copies = new(ReferenceEqualityComparer.Instance);

    private readonly HashSet<RecordRow> removed = new(ReferenceEqualityComparer.Instance);
    private readonly List<RecordRow> added = [];

    internal FarmRecords Original { get; } = records;

    internal FarmSettings Settings { get; set; } = records.Settings;

    /// <summary>The rows touched, as read.</summary>
    internal IReadOnlyCollection<RecordRow> Touched => removed.Count == 0 ? copies.Keys : [.. copies.Keys.Union(removed)];

    /// <summary>Leaves rows out.</summary>
    internal void Remove(IEnumerable<RecordRow> rows) => removed.UnionWith(rows);

    /// <summary>Adds a row after those read.</summary>
    internal void Add(RecordRow row) => added.Add(row);

    /// <summary>The copy of a row, made when it isn't there yet.</summary>
    internal T Change<T>(T row)
        where T : RecordRow
    {
        if (!copies.TryGetValue(row, out RecordRow? copy))
        {
            copies[row] = copy = row.Copy();
        }

        return (T)copy;
    }

    /// <summary>The row as it is now.</summary>
    internal T Now<T>(T row)
        where T : RecordRow => copies.TryGetValue(row, out RecordRow? copy) ? (T)copy : row;

    /// <summary>The changed records, amounts rounded to the cent once, half a cent away from zero.</summary>
    internal FarmRecords Link()
    {
        foreach (RecordRow copy in copies.Values)
        {
            switch (copy)
            {
                case SaleRow sale:
                    sale.Amount = sale.Amount is { } amount ? Cents(amount) : null;
                    break;
                case ExpenseRow expense:
                    expense.Amount = Cents(expense.Amount);
                    break;
                case IncomeRow income:
                    income.Amount = Cents(income.Amount);
                    break;
                default:
                    break;
            }
        }

        RecordTables tables = Original.Tables;
        return FarmRecords.Link(
            tables with
            {
                Plantings = Of(tables.Plantings),
                Harvests = Of(tables.Harvests),
                Sales = Of(tables.Sales),
                Channels = Of(tables.Channels),
                Prices = Of(tables.Prices),
                Income = Of(tables.Income),
                Labor = Of(tables.Labor),
                Workers = Of(tables.Workers),
                LaborStandards = Of(tables.LaborStandards),
                Expenses = Of(tables.Expenses),
                Totals = Of(tables.Totals),
                Use = Of(tables.Use),
                Loads = Of(tables.Loads),
            },
            Settings);
    }

    private List<T> Of<T>(List<T> rows)
        where T : RecordRow => copies.Count == 0 && removed.Count == 0 && added.Count == 0 ? rows : [.. rows.Where(row => !removed.Contains(row)).Select(Now), .. added.OfType<T>()];

    private static decimal Cents(decimal amount) => decimal.Round(amount, 2, MidpointRounding.AwayFromZero);
}
