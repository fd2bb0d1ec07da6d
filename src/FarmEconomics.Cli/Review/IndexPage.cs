using System.Text;
using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Notebooks.Pages;
using FarmEconomics.Records;
using FarmEconomics.Reports.RecordsCheck;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Review;

/// <summary>The first page of a review: what happened, the ranking, and where to read on.</summary>
internal static class IndexPage
{
    /// <summary>The answer in plain sentences, for the terminal.</summary>
    internal static IReadOnlyList<string> Answer(FarmFolder farm, SeasonReview season) =>
    [
        SeasonSentences.Answer(season).ToPlainText().Trim(),
        Found(farm),
        ProofTables.InWords(season),
    ];

    /// <summary>The page's body; every text from the records is encoded.</summary>
    internal static string Body(FarmFolder farm, SeasonReview season, IReadOnlyList<PageLink> notebooks)
    {
        StringBuilder body = new();
        body.Append($"<h1>{PageShell.Encode(season.Settings.FarmName)}: crop year {season.CropYear}</h1>\n");
        if (farm.Skipped.Count > 0)
        {
            body.Append("<h2>Left out of every figure below</h2>\n").Append(RecordsTables.Skipped(farm).ToHtml());
        }

        body.Append(SeasonSentences.Answer(season).ToHtml());
        body.Append(SeasonSentences.Reversals(season).ToHtml());
        body.Append("<h2>What each crop earned</h2>\n");
        body.Append("<p>Gross margin is output less materials and selling. Labor, power, heat, cold and overhead come after it, down to the net return. "
            + "The best by the week of bed time stands first; compare with the column per labor hour.</p>\n");
        body.Append(SeasonTables.CropRanking(season).ToHtml());
        body.Append("<h2>Read on</h2>\n<ul>\n");
        foreach (PageLink link in notebooks)
        {
            body.Append($"<li><a href=\"{PageShell.Encode(link.Href)}\">{PageShell.Encode(link.Text)}</a></li>\n");
        }

        body.Append("</ul>\n<h2>How far to trust it</h2>\n");
        body.Append($"<p>{PageShell.Encode(Found(farm))} {PageShell.Encode(ProofTables.InWords(season))}</p>\n");
        body.Append("<p>Every figure of these pages stands in <code>tables/</code> for a spreadsheet or another program, the notebooks as they were run in <code>notebooks/</code>.</p>\n");
        body.Append(ProofTables.Assumptions(season).ToHtml());
        return body.ToString();
    }

    private static string Found(FarmFolder farm)
    {
        int warnings = farm.Problems.Count(problem => problem.Severity == Severity.Warning);
        string found = $"The records check found {farm.Notation.Count(farm.ErrorCount, "error")} and {farm.Notation.Count(warnings, "warning")}";
        return farm.Skipped.Count == 0 ? found + "." : $"{found}; {farm.Notation.Count(farm.Skipped.Count, "row")} in error left out.";
    }
}
