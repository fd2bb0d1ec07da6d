using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

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
        Count(rows, PlantingRow.InBedColumn.Cells(tables.Plantings.Table), tables.Plantings.Count);
        Count(rows, HarvestRow.DateColumn.Cells(tables.Harvests.Table), tables.Harvests.Count);
        Count(rows, SaleRow.DateColumn.Cells(tables.Sales.Table), tables.Sales.Count);
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

    // Rows of a day stand together in most files.
    private static void Count(Dictionary<int, int> rows, DayCells days, int count)
    {
        for (int row = 0; row < count;)
        {
            int first = row;
            while (row < count && days[row] == days[first])
            {
                row++;
            }

            int year = DateOnly.FromDayNumber(Math.Max(0, days.DayNumber(first))).Year;
            rows[year] = rows.GetValueOrDefault(year) + row - first;
        }
    }
}
