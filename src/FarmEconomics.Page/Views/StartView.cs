using System.Text;
using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Notebooks.Pages;
using FarmEconomics.Page.Farm;
using FarmEconomics.Page.Runs;
using FarmEconomics.Records;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Page.Views;

/// <summary>The first page: the farm, its years, what the records check found, and the notebooks as questions with their answers.</summary>
internal static class StartView
{
    /// <summary>A notebook on the page.</summary>
    /// <param name="Notebook">The notebook.</param>
    /// <param name="Run">How its run with the page's year stands; null when the records can't be reviewed.</param>
    internal sealed record Question(NotebookEntry Notebook, RunStanding? Run);

    internal static string Render(OpenedFarm farm, string folder, int year, IReadOnlyList<Question> questions)
    {
        StringBuilder html = new();
        html.Append($"<h1>{PageShell.Encode(farm.Settings.FarmName)}{(year > 0 ? $": crop year {year}" : "")}</h1>\n");
        html.Append(Years(farm, year));
        html.Append(farm.With(opened => Check(opened, folder)));
        string query = year == 0 || year == farm.LatestYear ? "" : $"year={year}";
        html.Append("<h2>Questions and answers</h2>\n<div class=\"questions\">\n");
        foreach (Question question in questions)
        {
            string href = PageShell.Encode(Nav.Address($"/notebook/{question.Notebook.Name}", query));
            html.Append($"<section class=\"question\"><h3><a href=\"{href}\">{PageShell.Encode(question.Notebook.Question)}</a></h3>\n");
            html.Append(AnswerBox(question.Run)).Append("</section>\n");
        }

        html.Append("</div>\n");
        if (farm.WithSeason(year, (_, season) => SeasonTables.CropRanking(season).ToHtml()) is { } ranking)
        {
            html.Append("<h2>What each crop earned</h2>\n<p>Gross margin is output less materials and selling; labor, power, heat, cold and overhead come after it, down to the net return. Any figure leads to where it comes from.</p>\n")
                .Append(CropLinks.Add(NotebookPage.Scrolling(ranking), query));
        }

        return html.ToString();
    }

    /// <summary>A question's answer, or how far it is; the script asks for it again until it is there.</summary>
    internal static string AnswerBox(RunStanding? run)
    {
        string inside = run switch
        {
            null => "<p>The records have errors that stop this; see what the check found above.</p>\n",
            { State: RunState.Done, Result: { } result } => Shortened(NotebookPage.Answer(result.Document)),
            { HasEnded: true } => $"<p class=\"fault\">{PageShell.Encode(NotebookView.Words(run))}</p>\n",
            _ => $"<p class=\"hint\">{PageShell.Encode(NotebookView.Words(run))}</p>\n",
        };
        return $"<div class=\"answer\"{(run is { HasEnded: false } ? $" data-answer=\"{run.Id}\"" : "")}>{inside}</div>\n";
    }

    // The first paragraph: the page itself has the rest.
    private static string Shortened(string answer) =>
        answer.IndexOf("</p>", StringComparison.Ordinal) is >= 0 and int end ? answer[..(end + "</p>".Length)] + "\n" : "<p>Open it to read on.</p>\n";

    private static string Years(OpenedFarm farm, int year)
    {
        if (farm.Years.Count == 0)
        {
            return farm.With(opened => opened.ErrorCount > 0) ? "" : "<p>The records tell of no crop year yet.</p>\n";
        }

        IEnumerable<string> links = farm.Years.Reverse().Select(each => each == year
            ? $"<li><a href=\"/?year={each}\" aria-current=\"page\">{each}</a></li>"
            : $"<li><a href=\"/?year={each}\">{each}</a></li>");
        return $"<nav class=\"years\" aria-label=\"Crop years\"><p>Crop years:</p><ul>{string.Concat(links)}</ul></nav>\n";
    }

    private static string Check(FarmFolder opened, string folder)
    {
        int warnings = opened.Problems.Count(problem => problem.Severity == Severity.Warning);
        string where = PageShell.Encode(Path.GetFileName(Path.TrimEndingDirectorySeparator(folder)));
        StringBuilder html = new();
        html.Append(opened.ErrorCount > 0
            ? $"<div class=\"note bad\"><p><strong>The records have {opened.Notation.Count(opened.ErrorCount, "error")}.</strong> "
            : "<div class=\"note\"><p><strong>The records can be reviewed.</strong> ");
        html.Append(opened.Notation.Text(
            $"Read from <code>{where}</code>: {opened.Notation.Count(opened.Reading.Files.Count, "table")}, {opened.Reading.Files.Sum(file => file.RowsRead):N0} rows; {opened.Notation.Count(opened.ErrorCount, "error")} and {opened.Notation.Count(warnings, "warning")} found"));
        html.Append(warnings > 0 ? "; warnings make the figures they touch weaker." : ".").Append("</p>\n");
        if (opened.ErrorCount > 0)
        {
            html.Append("<p>Fix these in your records, save, and reload the page:</p>\n<ul class=\"problems\">\n");
            foreach (Problem problem in opened.Problems.Where(problem => problem.Severity == Severity.Error).Take(25))
            {
                // The first line holds place, code and message; the row, the nearest name and how to fix it stand below.
                string[] lines = ProblemText.Format(problem, opened.Notation).Split('\n', StringSplitOptions.TrimEntries);
                html.Append($"<li>{PageShell.Encode(lines[0])}");
                html.Append(string.Concat(lines.Skip(1).Select(line => $"<br><span class=\"hint\">{PageShell.Encode(line)}</span>"))).Append("</li>\n");
            }

            html.Append("</ul>\n");
            html.Append(opened.ErrorCount > 25 ? $"<p>And {opened.Notation.Count(opened.ErrorCount - 25, "more error")}; the records check lists all.</p>\n" : "");
        }

        if (opened.Review is { } review && review.CropYears.Count > 0)
        {
            SeasonReview season = review.Season(review.LatestCropYear);
            string proof = PageShell.Encode(ProofTables.InWords(season));
            html.Append(season.Reconciliation.All(check => check.Holds) ? $"<p>{proof}</p>\n" : $"<p><strong>{proof}</strong></p>\n");
        }

        return html.Append("</div>\n").ToString();
    }
}
