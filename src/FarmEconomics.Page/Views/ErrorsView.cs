using System.Text;
using FarmEconomics.Files;
using FarmEconomics.Records;
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
                + "there is nothing to review yet.</p>\n";
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
}
