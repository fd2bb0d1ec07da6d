using System.Text;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Page.Fixing;

/// <summary>The pages where a grower corrects, adds and takes out rows: what is wrong, in an order a person can follow, and the row beside
/// its fix.</summary>
internal static class FixView
{
    /// <summary>Where the list stands.</summary>
    internal const string Path = "/fix";

    /// <summary>Where a row is changed.</summary>
    internal const string RowPath = "/fix/row";

    /// <summary>Where the last change of a file is put back.</summary>
    internal const string UndoPath = "/fix/undo";

    private const int MostRows = 5;

    /// <summary>The list of what is wrong, and the ways to any other row.</summary>
    /// <param name="folder">The records.</param>
    /// <param name="whyNot">Why nothing can be changed here; null when rows can be.</param>
    /// <param name="done">What was just done, with the way back; blank: nothing.</param>
    /// <param name="names">The form of the names the records don't know; blank: every name is known, or nothing can be saved.</param>
    internal static string List(FarmFolder folder, string? whyNot, string done, string names)
    {
        StringBuilder html = new("<h1>Fix records</h1>\n");
        html.Append(done);
        html.Append(whyNot is null ? "<p>Your files change only where you press Save; the file before is kept in the folder history.</p>\n"
            : $"<p>{Text(whyNot)}</p>\n");
        html.Append(whyNot is null ? Daily() : "");
        IReadOnlyList<ProblemCause> causes = ProblemCause.Of(folder.Problems
            .Where(problem => problem.Source.Line > 0 && problem.Source.File.EndsWith(".csv", StringComparison.OrdinalIgnoreCase)));
        html.Append(causes.Count == 0 ? "<p>The checks find nothing wrong in any row.</p>\n"
            : $"<p>{folder.Notation.Count(causes.Count, "kind of problem", "kinds of problems")}; what stops the review stands first, "
                + $"then what most money hangs on.</p>\n");
        html.Append(names);
        foreach (ProblemCause cause in causes)
        {
            Cause(html, cause, folder.Notation);
        }

        if (whyNot is null)
        {
            Other(html, folder);
        }

        return html.ToString();
    }

    /// <summary>What was just done, with the way back.</summary>
    /// <param name="done">What was done; blank: nothing.</param>
    /// <param name="undo">Files whose last change can be put back, each with its version.</param>
    /// <param name="back">The page to come back to; blank: the list.</param>
    internal static string Done(string done, IEnumerable<KeyValuePair<string, string>> undo, string back = "")
    {
        StringBuilder html = new(done.Length == 0 ? "" : $"<p role=\"status\"><strong>{Text(done)}</strong></p>\n");
        foreach ((string file, string version) in undo)
        {
            html.Append($"<form method=\"post\" action=\"{UndoPath}\"><input type=\"hidden\" name=\"file\" value=\"{Text(file)}\">"
                + $"<input type=\"hidden\" name=\"version\" value=\"{Text(version)}\">"
                + (back.Length == 0 ? "" : $"<input type=\"hidden\" name=\"back\" value=\"{Text(back)}\">")
                + $"<p class=\"buttons\"><button>Undo the last change of {Text(file)}</button></p></form>\n");
        }

        return html.ToString();
    }

    /// <summary>The address of a row.</summary>
    internal static string Address(string file, int line) => $"{RowPath}?file={Uri.EscapeDataString(file)}&line={line}";

    // What is written down every day of the season stands above what is wrong.
    private static string Daily()
    {
        (string Table, string Words)[] tables =
        [
            ("harvests", "a harvest"),
            ("sales", "a sale"),
            ("labor", "hours"),
            ("plantings", "a planting"),
            ("expenses", "a bill"),
        ];
        IEnumerable<string> links = tables.Select(table =>
            $"<a href=\"{Text(Address(table.Table + ".csv", 0))}\">{table.Words}</a>");
        return $"<p>Write down: {string.Join(" · ", links)}</p>\n";
    }

    private static void Cause(StringBuilder html, ProblemCause cause, Notation notation)
    {
        Problem first = cause.First;
        string kind = first.Severity == Severity.Error ? "Error" : "Warning";
        html.Append($"<h2>{kind}: {Text(ProblemCatalog.Get(first.Code).Title)}</h2>\n"
            + $"<p>{Text(first.Message)} {(cause.Alias is { } alias ? $"Did you mean {Text(alias.Name)}?" : Text(first.Hint))}</p>\n"
            + $"<ul class=\"problems\">\n");
        foreach (Problem problem in cause.Problems.Take(MostRows))
        {
            html.Append($"<li><a href=\"{Text(Address(problem.Source.File, problem.Source.Line))}\">{Text(problem.Source.ToString())}</a>"
                + $"{(string.IsNullOrEmpty(problem.Row) ? "" : $"<br><span class=\"hint\">{Text(problem.Row)}</span>")}</li>\n");
        }

        html.Append("</ul>\n");
        html.Append(cause.Count > MostRows ? $"<p>And {notation.Count(cause.Count - MostRows, "more row")} like it.</p>\n" : "");
    }

    // Tables that are there with what they hold, then those that may be begun.
    private static void Other(StringBuilder html, FarmFolder folder)
    {
        FileCount[] files = [.. folder.Reading.Files.Where(file => file.File.EndsWith(".csv", StringComparison.OrdinalIgnoreCase))];
        TableSchema[] others =
        [
            .. RecordSchema.Tables.Where(table => !table.IsAid && files.All(file => file.File != $"{table.Name}.csv"))
                .Select(table => table.For(folder.Reading.FarmSettings.LengthUnit)),
        ];
        html.Append($"<h2>Add a row, or look at any other</h2>\n<form class=\"fields\" method=\"get\" action=\"{RowPath}\">\n"
            + $"<div class=\"grid\">\n<div class=\"field\"><label for=\"file\">Table</label>\n<select id=\"file\" name=\"file\">");
        html.Append(string.Concat(files.Select(file =>
            Option(file.File, $"{file.File}: {folder.Notation.Count(file.RowsInFile - file.RowsPassedOver, "row")}"))));
        html.Append($"<optgroup label=\"Not begun yet\">{string.Concat(others.Select(table =>
            Option($"{table.Name}.csv", $"{table.Name}: {table.OneRowIs}")))}</optgroup>");
        html.Append("</select></div>\n<div class=\"field\"><label for=\"line\">Line</label>\n"
            + "<input type=\"text\" inputmode=\"numeric\" id=\"line\" name=\"line\" value=\"\" aria-describedby=\"line-help\">\n"
            + "<p class=\"help\" id=\"line-help\">As a figure's rows name it; blank: a new row, with all rows of the table below it.</p>"
            + "</div>\n</div>\n<p class=\"buttons\"><button>Show it</button></p>\n</form>\n");

        static string Option(string file, string words) => $"<option value=\"{Text(file)}\">{Text(words)}</option>";
    }

    private static string Text(string text) => PageShell.Encode(text);
}
