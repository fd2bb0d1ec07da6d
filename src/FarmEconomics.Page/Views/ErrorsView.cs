using System.Text;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Page.Views;

/// <summary>What stands in a report's place while errors stop every figure.</summary>
internal static class ErrorsView
{
    private const int Most = 25;

    internal static string Render(FarmFolder opened, string folder)
    {
        StringBuilder html = new();
        if (opened.ErrorCount == 0)
        {
            return "<h1>No crop year yet</h1>\n<p>The records hold no harvests, sales, hours or expenses of any planting: "
                + "there is nothing to review yet.</p>\n" + Begin(opened);
        }

        string where = PageShell.Encode(Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)));
        html.Append($"<h1>The records have {opened.Notation.Count(opened.ErrorCount, "error")}</h1>\n");
        html.Append($"<p>Fix these in <code>{where}</code>, save, and reload the page. "
            + $"Or <a href=\"{Fixing.FixView.Path}\">fix them here</a>.</p>\n<ul class=\"problems\">\n");
        foreach (Problem problem in opened.Problems.Where(problem => problem.Severity == Severity.Error).Take(Most))
        {
            // The first line holds place, code and message; the row, the nearest name and how to fix it stand below.
            string[] lines = ProblemText.Format(problem, opened.Notation).Split('\n', StringSplitOptions.TrimEntries);
            html.Append($"<li>{PageShell.Encode(lines[0])}");
            html.Append(string.Concat(lines.Skip(1).Select(line => $"<br><span class=\"hint\">{PageShell.Encode(line)}</span>")))
                .Append("</li>\n");
        }

        html.Append("</ul>\n");
        return html.Append(opened.ErrorCount > Most
            ? $"<p>And {opened.Notation.Count(opened.ErrorCount - Most, "more error")}; the command <code>check</code> lists all.</p>\n"
            : "").ToString();
    }

    // In the order in which they need each other.
    private static string Begin(FarmFolder opened)
    {
        StringBuilder html = new($"<h2>How to begin</h2>\n<ul>\n<li><a href=\"{Importing.ImportPages.Path}\">Bring in files you have</a>: "
            + "picking sheets, a register’s download, a bank’s, time sheets.</li>\n");
        foreach (TableSchema table in RecordSchema.Tables.Where(table => table.Required))
        {
            int rows = opened.Reading.Files.Where(file => file.Table == table.Name).Sum(file => file.RowsRead);
            html.Append($"<li><a href=\"{PageShell.Encode(Fixing.FixView.Address($"{table.Name}.csv", 0))}\">Type {table.Name}</a>: "
                + $"one row is {PageShell.Encode(table.For(opened.Reading.FarmSettings.LengthUnit).OneRowIs)}; "
                + $"{opened.Notation.Count(rows, "row")} so far.</li>\n");
        }

        return html.Append($"<li><a href=\"{Fixing.FixView.Path}\">Hours, bills and other tables</a> sharpen the answer; "
            + "they can wait.</li>\n</ul>\n").ToString();
    }
}
