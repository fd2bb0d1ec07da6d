using System.Globalization;
using System.Net;
using System.Text;

namespace FarmEconomics.Reports.Tables;

/// <summary>
/// Writes a table as HTML: caption, scoped headings, numbers right-aligned by class, reasons as footnotes. All text is encoded.
/// </summary>
internal static class TableHtml
{
    internal static string Write(ReportTable table)
    {
        if (table.Rows.Count == 0 && table.TotalRow is null)
        {
            return $"<p class=\"table-note\"><strong>{Encode(table.Title)}:</strong>"
                + $" {Encode(table.Notes.Count > 0 ? string.Join(' ', table.Notes) : "nothing.")}</p>\n";
        }

        List<string> footnotes = table.Footnotes();
        StringBuilder html = new(table.KeepsOrder ? "<table data-order=\"kept\">\n<caption>" : "<table>\n<caption>");
        html.Append(Encode(table.Title)).Append("</caption>\n<thead><tr>");
        WriteHeadings(html, table);
        html.Append("</tr></thead>\n<tbody>\n");
        foreach (IReadOnlyList<ReportCell> row in table.Rows)
        {
            WriteRow(html, table, row, footnotes, table.RowsOpen ? row[0].Value as string : null);
        }

        html.Append("</tbody>\n");
        if (table.TotalRow is { } total)
        {
            html.Append("<tfoot>\n");
            WriteRow(html, table, total, footnotes, opens: null);
            html.Append("</tfoot>\n");
        }

        html.Append("</table>\n");
        foreach ((int index, string note) in footnotes.Index())
        {
            html.Append("<p class=\"table-note\"><sup>").Append(index + 1).Append("</sup> ").Append(Encode(note)).Append("</p>\n");
        }

        foreach (string note in table.Notes)
        {
            html.Append("<p class=\"table-note\">").Append(Encode(note)).Append("</p>\n");
        }

        return html.ToString();
    }

    private static void WriteHeadings(StringBuilder html, ReportTable table)
    {
        foreach (ReportColumn column in table.Columns)
        {
            html.Append("<th scope=\"col\"").Append(column.IsNumeric ? " class=\"num\">" : ">").Append(Encode(column.Heading));
            if (column.Unit is not null)
            {
                html.Append(" <span class=\"unit\">").Append(Encode(column.Unit)).Append("</span>");
            }

            html.Append("</th>");
        }
    }

    private static void WriteRow(
        StringBuilder html, ReportTable table, IReadOnlyList<ReportCell> row, List<string> footnotes, string? opens)
    {
        html.Append(opens is null ? "<tr>" : $"<tr data-opens=\"{Encode(opens)}\">");
        for (int i = 0; i < row.Count; i++)
        {
            ReportColumn column = table.Columns[i];
            bool heads = i == 0 && !column.IsNumeric && column.Look != Look.Date;
            html.Append(heads ? "<th scope=\"row\"" : "<td");
            WriteAttributes(html, column, row[i], opens is not null);
            html.Append('>').Append(Encode(Shown(column, row[i], table)));
            foreach (string note in new[] { row[i].Reason, row[i].Mark }.OfType<string>())
            {
                html.Append("<sup>").Append(footnotes.IndexOf(note) + 1).Append("</sup>");
            }

            html.Append(heads ? "</th>" : "</td>");
        }

        html.Append("</tr>\n");
    }

    private static void WriteAttributes(StringBuilder html, ReportColumn column, ReportCell cell, bool opens)
    {
        string? look = column.IsNumeric ? "num" : column.Look == Look.Date ? "date" : null;
        string classes = string.Join(' ', new[] { look, cell.Reason is null ? null : "missing" }.OfType<string>());
        html.Append(classes.Length > 0 ? $" class=\"{classes}\"" : "");
        if (cell.Number is { } number && column.IsNumeric)
        {
            // For a page that sorts: what shows may be rounded, and written with another mark.
            html.Append(" data-value=\"")
                .Append(number.ToString("0.####", CultureInfo.InvariantCulture))
                .Append('"')
                .Append(opens ? $" data-part=\"{column.Part.ToString().ToLowerInvariant()}\"" : "");
        }

        if ((cell.Reason ?? cell.Mark) is { } why)
        {
            html.Append(" title=\"").Append(Encode(why)).Append('"');
        }
    }

    private static string Shown(ReportColumn column, ReportCell cell, ReportTable table)
    {
        string shown = column.Show(cell, table.Notation);
        return column.IsNumeric ? Display.TrueMinus.In(shown) : shown;
    }

    private static string Encode(string text) => WebUtility.HtmlEncode(text);
}
