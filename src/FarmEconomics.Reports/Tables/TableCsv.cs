using System.Globalization;
using System.Text;
using FarmEconomics.Files;

namespace FarmEconomics.Reports.Tables;

/// <summary>
/// Writes a table as CSV (RFC 4180): dot decimals, ISO dates, money to the cent, other numbers to 4 decimals, blank for missing.
/// </summary>
internal static class TableCsv
{
    internal static string Write(ReportTable table)
    {
        StringBuilder csv = new();
        csv.AppendJoin(',', table.Columns.Select(column => CsvField.Of(column.FullHeading))).Append("\r\n");
        foreach (IReadOnlyList<ReportCell> row in table.Rows)
        {
            csv.AppendJoin(',', row.Select((cell, i) => CsvField.Of(Show(table.Columns[i], cell)))).Append("\r\n");
        }

        return csv.ToString();
    }

    private static string Show(ReportColumn column, ReportCell cell) =>
        cell.Value switch
        {
            decimal number when column.Look is Look.Money or Look.WholeMoney => decimal.Round(number, 2, MidpointRounding.AwayFromZero)
                .ToString("0.00", CultureInfo.InvariantCulture),
            decimal number => decimal.Round(number, 4, MidpointRounding.AwayFromZero).ToString("0.####", CultureInfo.InvariantCulture),
            DateOnly day => Looks.Day(day),
            string text => text,
            _ => "",
        };
}
