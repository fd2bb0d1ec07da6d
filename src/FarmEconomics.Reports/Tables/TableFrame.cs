using Microsoft.Data.Analysis;

namespace FarmEconomics.Reports.Tables;

/// <summary>Makes a data frame of a table; the total stays out, so that a sum over a column is the total.</summary>
internal static class TableFrame
{
    internal static DataFrame Make(ReportTable table)
    {
        DataFrame frame = new();
        for (int i = 0; i < table.Columns.Count; i++)
        {
            frame.Columns.Add(Column(table, i, UniqueName(frame, table.Columns[i].FullHeading)));
        }

        return frame;
    }

    private static DataFrameColumn Column(ReportTable table, int i, string name)
    {
        IEnumerable<ReportCell> cells = table.Rows.Select(row => row[i]);
        return table.Columns[i] switch
        {
            { IsNumeric: true } => new DecimalDataFrameColumn(name, cells.Select(cell => cell.Number)),
            { Look: Look.Date } => new DateTimeDataFrameColumn(
                name,
                cells.Select(cell => (cell.Value as DateOnly?)?.ToDateTime(TimeOnly.MinValue))
            ),
            _ => new StringDataFrameColumn(name, cells.Select(cell => cell.Value as string)),
        };
    }

    private static string UniqueName(DataFrame frame, string name)
    {
        string unique = name;
        for (int k = 2; frame.Columns.Any(column => column.Name == unique); k++)
        {
            unique = $"{name} {k}";
        }

        return unique;
    }
}
