using System.Text;
using FarmEconomics.Budgets;
using FarmEconomics.Notebooks.Pages;
using FarmEconomics.Reports.Explain;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Page.Views;

/// <summary>The page that opens a crop's figures: each line, each pool's share, down to the rows with file and line.</summary>
internal static class ExplainView
{
    internal static string Render(SeasonReview season, string crop, string back)
    {
        CropExplanation explained = CropExplanation.Of(season, crop);
        StringBuilder html = new();
        html.Append($"<h1>Where the figures of {PageShell.Encode(explained.Name)} come from</h1>\n");
        html.Append($"<p>Crop year {explained.CropYear}. Every line of the budget is opened below: the rows that name the crop, "
            + $"with file and line, and its share of each pool with the pool’s own rows. Each table adds up to the line above it, "
            + $"to the cent.</p>\n");
        html.Append(
            $"<p><a href=\"{PageShell.Encode(back)}\">Back to the season review</a></p>\n<h2 id=\"budget\">The budget, line by line</h2>\n")
            .Append(Table(explained.Budget));
        html.Append("<h2>Each line, opened</h2>\n");
        foreach (ExplainSection section in explained.Lines)
        {
            string part = section.Line?.ToString().ToLowerInvariant() ?? "output";
            html.Append($"<h3 id=\"{PageShell.Encode(part)}\">{PageShell.Encode(section.Title)}</h3>\n");
            foreach (string sentence in section.Sentences)
            {
                html.Append($"<p>{PageShell.Encode(sentence)}</p>\n");
            }

            foreach (ReportTable table in section.Tables)
            {
                html.Append(Table(table));
            }
        }

        if (explained.Pools.Count > 0)
        {
            html.Append("<h2 id=\"pools\">The pools’ own rows</h2>\n<p>What was spent in each pool that charged this crop.</p>\n");
            foreach (ReportTable table in explained.Pools)
            {
                html.Append(Table(table));
            }
        }

        return html.ToString();
    }

    private static string Table(ReportTable table) => NotebookPage.Scrolling(table.ToHtml());
}
