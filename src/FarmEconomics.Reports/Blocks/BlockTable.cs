using System.Globalization;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Blocks;

/// <summary>
/// Writes a table of a page: bars beside numbers, groups, blanks for what isn't known with one line below that says why, footnotes for
/// remarks.
/// </summary>
internal sealed class BlockTable
{
    /// <summary>
    /// Letters of text that stand in one line of a cell; a longer one is a sentence and breaks, or the table would be wider than any paper.
    /// </summary>
    private const int LongestLine = 44;
    private readonly ReportTable table;
    private readonly HtmlWriter html;
    private readonly List<string> remarks;
    private readonly Dictionary<int, BarScale> bars = [];

    private BlockTable(HtmlWriter html, ReportTable table)
    {
        this.html = html;
        this.table = table;
        remarks = [.. table.Rows.Append(table.TotalRow ?? []).SelectMany(row => row).Select(cell => cell.Mark).OfType<string>().Distinct()];
        foreach ((int index, ReportColumn column) in table.Columns.Index())
        {
            if (column.HasBar)
            {
                bars[index] = BarScale.Of(table.Rows.Select(row => row[index].Number ?? 0m));
            }
        }
    }

    private int Width => table.Columns.Count + bars.Count;

    /// <summary>Writes the table in the frame that scrolls when the window is narrow, and its notes.</summary>
    internal static void Write(HtmlWriter html, TableBlock block, bool captionIsHeading)
    {
        ReportTable table = block.Table;
        if (table.Rows.Count == 0 && table.TotalRow is null)
        {
            html.Add($"<p class=\"cap\">{(block.Heading is null ? table.Title + ": " : "")}"
                + $"{(table.Notes.Count > 0 ? string.Join(' ', table.Notes) : "nothing.")}</p>\n");
            return;
        }

        new BlockTable(html, table).Write(block, captionIsHeading);
    }

    private void Write(TableBlock block, bool captionIsHeading)
    {
        string rows = block.Rows > 0 && table.Rows.Count > block.Rows + 1 ? block.Rows.ToString(CultureInfo.InvariantCulture) : "";
        html.Add($"<div class=\"scroll\" role=\"region\" aria-label=\"{block.Heading ?? table.Title}\" tabindex=\"0\">"
            + $"<table data-rows=\"{rows}\"");
        string thousands = table.Notation.Culture.NumberFormat.NumberGroupSeparator;
        html.Add(rows.Length == 0 || thousands == "," ? Html.Empty : Html.Of($" data-group=\"{thousands}\""));
        html.Safe(table.KeepsOrder ? " data-order=\"kept\">" : ">");
        html.Safe(captionIsHeading ? "<caption class=\"head\">" : "<caption>").Add($"<span class=\"in\">{table.Title}</span></caption>");
        Heading();
        html.Add($"<tbody>\n");
        Queue<RowGroup> groups = new(table.Groups);
        foreach ((int index, IReadOnlyList<ReportCell> row) in table.Rows.Index())
        {
            while (groups.TryPeek(out RowGroup? group) && group.First <= index)
            {
                groups.Dequeue();
                html.Add($"<tr class=\"g\"><th colspan=\"{Width}\" scope=\"colgroup\"><div class=\"in\">{group.Title}");
                html.Add(group.Words is { } words ? Html.Of($" <span>· {words}</span>") : Html.Empty).Add($"</div></th></tr>\n");
            }

            Row(row, isTotal: table.IsSum(index));
        }

        html.Add($"</tbody>\n");
        if (table.TotalRow is { } total)
        {
            html.Add($"<tfoot>\n");
            Row(total, isTotal: true);
            html.Add($"</tfoot>\n");
        }

        html.Add($"</table></div>\n");
        Notes();
    }

    private void Heading()
    {
        html.Add($"<thead><tr>");
        foreach ((int index, ReportColumn column) in table.Columns.Index())
        {
            string name = Classes(column, column.IsNumeric ? "n" : "l");
            Html unit = column.Unit is { } words ? Html.Of($"<small>{words}</small>") : Html.Empty;
            html.Add($"<th scope=\"col\" class=\"{name}\"");
            html.Safe(bars.ContainsKey(index) ? " colspan=\"2\">" : ">")
                .Add($"{column.Heading}")
                .Add(unit)
                .Add($"</th>");
        }

        html.Add($"</tr></thead>\n");
    }

    private void Row(IReadOnlyList<ReportCell> row, bool isTotal)
    {
        html.Safe(isTotal ? "<tr class=\"t\">" : "<tr>");
        for (int index = 0; index < row.Count; index++)
        {
            ReportColumn column = table.Columns[index];
            if (bars.TryGetValue(index, out BarScale? scale))
            {
                if (isTotal)
                {
                    html.Safe("<td class=\"b\"></td>");
                }
                else
                {
                    scale.Cell(html, row[index].Number, Classes(column, "b"));
                }
            }

            Cell(column, row[index], heads: index == 0 && !column.IsNumeric && column.Look != Look.Date);
        }

        html.Add($"</tr>\n");
    }

    private void Cell(ReportColumn column, ReportCell cell, bool heads)
    {
        string shown = BlockNumber.Of(column, cell, table.Notation);
        string kind = Classes(column, column.IsNumeric ? cell.Number < 0m && shown.StartsWith(BlockNumber.Minus) ? "n loss" : "n" : "l");
        kind += !column.IsNumeric && !column.Wraps && shown.Length > LongestLine ? " w" : "";
        html.Safe(heads ? "<th scope=\"row\" class=\"" : "<td class=\"").Add($"{kind}\"");
        if (cell.Number is { } number && column.IsNumeric)
        {
            // For sorting: what shows is rounded, and written with the farm's own mark.
            html.Add($" data-value=\"{number:0.####}\"");
        }

        html.Safe(">");
        if (cell.Target is { } target)
        {
            html.Add($"<a href=\"{target}\">{shown}</a>");
        }
        else
        {
            html.Add($"{shown}");
        }

        if (cell.Mark is { } mark)
        {
            html.Add($"<sup>{remarks.IndexOf(mark) + 1}</sup>");
        }

        html.Safe(heads ? "</th>" : "</td>");
    }

    private void Notes()
    {
        foreach ((int index, string remark) in remarks.Index())
        {
            html.Add($"<p class=\"cap\"><sup>{index + 1}</sup> {remark}</p>\n");
        }

        // One line for all that is blank: why, and of what.
        string[] blanks =
        [
            .. table
                .Rows.Append(table.TotalRow ?? [])
                .SelectMany(row =>
                    row.Where(cell => cell.Reason is not null).Select(cell => (Of: row[0].Value as string ?? "", Why: cell.Reason!))
                )
                .GroupBy(blank => blank.Why)
                .Select(group => Blank(group.Key, [.. group.Select(blank => blank.Of).Where(name => name.Length > 0).Distinct()])),
        ];
        if (blanks.Length > 0)
        {
            html.Add($"<p class=\"cap\">Blank: {string.Join("; ", blanks)}.</p>\n");
        }

        foreach (string note in table.Notes)
        {
            html.Add($"<p class=\"cap\">{note}</p>\n");
        }
    }

    // Of every row it need not be said which.
    private string Blank(string why, string[] names) =>
        names.Length is 0 or > 4 || names.Length == table.Rows.Count ? why : $"{why}: {string.Join(", ", names.Select(Named))}";

    // The number of a line of a form is no name by itself.
    private string Named(string row) =>
        char.IsAsciiDigit(row[0]) && !row.Contains(' ', StringComparison.Ordinal)
            ? $"{table.Columns[0].Heading.ToLowerInvariant()} {row}" : row;

    private static string Classes(ReportColumn column, string kind) =>
        kind + (column.IsHiddenOnPhone ? " h" : "") + (column.Wraps ? " w" : "");
}

/// <summary>Bars beside numbers: one scale per column, from its least to its greatest value, 0 always in it.</summary>
internal sealed class BarScale
{
    private const decimal Width = 500m;
    private readonly decimal zero;
    private readonly decimal perUnit;

    private BarScale(decimal least, decimal most)
    {
        decimal span = most - least;
        perUnit = span == 0m ? 0m : Width / span;
        zero = -least * perUnit;
    }

    /// <summary>The scale of a column.</summary>
    internal static BarScale Of(IEnumerable<decimal> values)
    {
        List<decimal> all = [.. values, 0m];
        return new BarScale(all.Min(), all.Max());
    }

    /// <summary>Writes the cell of a value.</summary>
    internal void Cell(HtmlWriter html, decimal? value, string classes)
    {
        decimal size = Math.Abs(value ?? 0m) * perUnit;
        decimal from = value < 0m ? zero - size : zero;
        string fill = value < 0m ? "var(--barloss)" : "var(--bar)";
        html.Add($"<td class=\"{classes}\"><svg viewBox=\"0 0 500 16\" preserveAspectRatio=\"none\" aria-hidden=\"true\">"
            + $"<line x1=\"{zero:0.#}\" x2=\"{zero:0.#}\" y1=\"0\" y2=\"16\" stroke=\"var(--soft)\"/>"
            + $"<rect x=\"{from:0.#}\" y=\"3\" width=\"{size:0.#}\" height=\"10\" fill=\"{fill}\"/></svg></td>");
    }
}
