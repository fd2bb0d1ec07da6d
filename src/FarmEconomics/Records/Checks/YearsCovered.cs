using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Checks;

/// <summary>
/// The years the records cover: from the year with the most plantings, harvests and sales outward, as long as there are records
/// within two years. A mistyped year stands apart from them and doesn't stretch them, as the first and last date would.
/// </summary>
internal sealed class YearsCovered
{
    private const int Slack = 1;
    private const int Gap = 2;

    public YearsCovered(RecordTables tables)
    {
        var rows = new Dictionary<int, int>();
        foreach (PlantingRow row in tables.Plantings)
        {
            Count(rows, row.InBed.Year);
        }

        foreach (HarvestRow row in tables.Harvests)
        {
            Count(rows, row.Date.Year);
        }

        foreach (SaleRow row in tables.Sales)
        {
            Count(rows, row.Date.Year);
        }

        if (rows.Count == 0)
        {
            First = ColumnSchema.FirstYear;
            Last = ColumnSchema.LastYear;
            return;
        }

        First = Last = rows.OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key).First().Key;
        foreach (int year in rows.Keys.Where(year => year < First).OrderDescending())
        {
            First = First - year <= Gap ? year : First;
        }

        foreach (int year in rows.Keys.Where(year => year > Last).Order())
        {
            Last = year - Last <= Gap ? year : Last;
        }
    }

    public int First { get; }

    public int Last { get; }

    public bool Holds(int year) => year >= First - Slack && year <= Last + Slack;

    private static void Count(Dictionary<int, int> rows, int year) => rows[year] = rows.GetValueOrDefault(year) + 1;
}
