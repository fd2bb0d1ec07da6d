using System.Text;
using FarmEconomics.Records;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Page.Views;

/// <summary>The page of what can be taken along as tables.</summary>
internal static class TablesView
{
    /// <summary>What stands here while nothing can be worked out.</summary>
    internal static string None() =>
        "<h1>No tables yet</h1>\n<p>The records have errors, or tell nothing of that crop year. "
            + "<a href=\"/records\">Records</a> says what to fix first.</p>\n";

    internal static string Render(int year, string query, Notation notation, IReadOnlyList<(string Name, string What, int Rows)> tables)
    {
        StringBuilder html = new();
        html.Append(
            $"<h1>The tables of crop year {year}</h1>\n<p>Every figure of the review, for a spreadsheet or another program: "
                + $"dots as decimal marks, days as 2025-06-30, money to the cent, blank where a figure is not available.</p>\n"
        );
        html.Append(
            $"<p><a href=\"{PageShell.Encode(Nav.Address("/tables/review.xlsx", query))}\" download>All of them as one workbook</a></p>\n"
        );
        html.Append(
            "<div class=\"scroll\" role=\"region\" aria-label=\"Tables to keep\" tabindex=\"0\"><table>\n"
                + "<caption>One file each</caption>\n<thead><tr><th scope=\"col\">File</th><th scope=\"col\">What it holds</th>"
                + "<th scope=\"col\" class=\"num\">Rows</th></tr></thead>\n<tbody>\n"
        );
        foreach ((string name, string what, int rows) in tables)
        {
            html.Append($"<tr><th scope=\"row\"><a href=\"{PageShell.Encode(Nav.Address("/tables/" + name, query))}\" download>"
                + $"{PageShell.Encode(name)}</a></th><td>{PageShell.Encode(what)}</td>"
                + $"<td class=\"num\">{notation.Number(rows, Look.Count)}</td></tr>\n");
        }

        return html.Append("</tbody></table></div>\n").ToString();
    }
}
