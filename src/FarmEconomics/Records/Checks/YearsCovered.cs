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

    private readonly DateOnly firstDay;
    private readonly DateOnly lastDay;

    public YearsCovered(RecordTables tables)
    {
        (First, Last) = Of(tables);
        firstDay = new DateOnly(Math.Max(First - Slack, DateOnly.MinValue.Year), 1, 1);
        lastDay = new DateOnly(Math.Min(Last + Slack, DateOnly.MaxValue.Year), 12, 31);
    }

    public int First { get; }

    public int Last { get; }

    public bool Holds(int year) => year >= First - Slack && year <= Last + Slack;

    /// <summary>The same for a day, without working out its year: millions of rows are asked.</summary>
    public bool Holds(DateOnly day) => day >= firstDay && day <= lastDay;

    private static (int First, int Last) Of(RecordTables tables)
    {
        var rows = new Dictionary<int, int>();
        Count(rows, PlantingRow.InBedColumn.Cells(tables.Plantings.Table), tables.Plantings.Count);
        Count(rows, HarvestRow.DateColumn.Cells(tables.Harvests.Table), tables.Harvests.Count);
        Count(rows, SaleRow.DateColumn.Cells(tables.Sales.Table), tables.Sales.Count);
        if (rows.Count == 0)
        {
            return (ColumnSchema.FirstYear, ColumnSchema.LastYear);
        }

        int first = rows.OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key).First().Key;
        int last = first;
        foreach (int year in rows.Keys.Where(year => year < first).OrderDescending().ToList())
        {
            first = first - year <= Gap ? year : first;
        }

        foreach (int year in rows.Keys.Where(year => year > last).Order().ToList())
        {
            last = year - last <= Gap ? year : last;
        }

        return (first, last);
    }

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
