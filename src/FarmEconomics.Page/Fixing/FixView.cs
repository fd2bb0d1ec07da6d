using System.Text;
using FarmEconomics.Files;
using FarmEconomics.Files.Editing;
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
    /// <param name="done">What was just done; blank: nothing.</param>
    /// <param name="undo">A file whose last change can be put back; blank: none.</param>
    /// <param name="names">The form of the names the records don't know; blank: every name is known, or nothing can be saved.</param>
    internal static string List(FarmFolder folder, string? whyNot, string done, string undo, string names)
    {
        StringBuilder html = new("<h1>Fix records</h1>\n");
        html.Append(done.Length == 0 ? "" : $"<p role=\"status\"><strong>{Text(done)}</strong></p>\n");
        if (undo.Length > 0 && whyNot is null)
        {
            html.Append($"<form method=\"post\" action=\"{UndoPath}\"><input type=\"hidden\" name=\"file\" value=\"{Text(undo)}\">"
                + $"<p class=\"buttons\"><button>Undo the last change of {Text(undo)}</button></p></form>\n");
        }

        html.Append(whyNot is null ? "<p>Your files change only where you press Save; the file before is kept in the folder history.</p>\n"
            : $"<p>{Text(whyNot)}</p>\n");
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

    /// <summary>The fields of one row.</summary>
    /// <param name="row">The row, with the texts to show.</param>
    /// <param name="faults">What was wrong with what was typed.</param>
    /// <param name="message">A sentence on top; blank: none.</param>
    /// <param name="whyNot">Why nothing can be saved; null when it can.</param>
    /// <param name="unit">The farm's unit of length.</param>
    internal static string Row(EditableRow row, IReadOnlyList<Problem> faults, string message, string? whyNot, LengthUnit unit)
    {
        TableSchema? table = RecordSchema.Find(row.File.Split('.')[0]);
        StringBuilder html = new(
            $"<h1>{(row.Line == 0 ? $"A new row of {Text(row.File)}" : $"Line {row.Line} of {Text(row.File)}")}</h1>\n"
        );
        html.Append(message.Length == 0 ? "" : $"<p class=\"fault\" role=\"alert\">{Text(message)}</p>\n");
        HashSet<string> shown = [.. row.Headings.Select(HeadingKey.Of)];
        foreach (Problem problem in faults.Where(problem => problem.Column is null || !shown.Contains(HeadingKey.Of(problem.Column))
            || problem.Source.File != row.File))
        {
            html.Append($"<p class=\"fault\">{Text(problem.Source.ToString())}: {Text(problem.Message)} {Text(problem.Hint)}</p>\n");
        }

        html.Append($"<form class=\"fields\" method=\"post\" action=\"{RowPath}\">\n");
        foreach ((string name, string value) in new[] { ("file", row.File), ("line", $"{row.Line}"), ("version", row.Version) })
        {
            html.Append($"<input type=\"hidden\" name=\"{name}\" value=\"{Text(value)}\">\n");
        }

        html.Append("<div class=\"grid\">\n");
        for (int i = 0; i < row.Headings.Count; i++)
        {
            if (row.Headings[i].Trim().Length > 0 && !row.Headings[i].StartsWith("source_", StringComparison.OrdinalIgnoreCase))
            {
                Field(html, i, row, table?.Find(row.Headings[i], unit), faults.FirstOrDefault(problem => problem.Column is not null
                    && HeadingKey.Of(problem.Column) == HeadingKey.Of(row.Headings[i]) && problem.Source.File == row.File));
            }
        }

        html.Append("</div>\n");
        html.Append(whyNot is not null ? $"<p>{Text(whyNot)}</p>\n"
            : $"<p class=\"buttons\"><button class=\"main\" name=\"do\" value=\"save\">Save</button>"
                + $"{(row.Line == 0 ? "" : "<button name=\"do\" value=\"remove\">Take this row out</button>")}<a href=\"{Path}\">"
                + $"Back without saving</a></p>\n");
        return html.Append("</form>\n").ToString();
    }

    /// <summary>The address of a row.</summary>
    internal static string Address(string file, int line) => $"{RowPath}?file={Uri.EscapeDataString(file)}&line={line}";

    private static void Field(StringBuilder html, int at, EditableRow row, ColumnSchema? column, Problem? fault)
    {
        string id = $"c{at}";
        html.Append(
            $"<div class=\"field\"><label for=\"{id}\">{Text(row.Headings[at])}{(column?.Required == true ? " (needed)" : "")}</label>\n"
        );
        html.Append(
            $"<input type=\"text\" id=\"{id}\" name=\"{id}\" value=\"{Text(row.Fields[at])}\" "
                + $"autocomplete=\"off\"{(fault is null ? "" : $" aria-invalid=\"true\" aria-errormessage=\"{id}-fault\" autofocus")} "
                + $"aria-describedby=\"{id}-help\">\n"
        );
        html.Append(
            $"<p class=\"help\" id=\"{id}-help\">"
                + $"{Text(column is null ? "Not a column of this table; kept as it is." : column.Description)}</p>\n"
        );
        html.Append(
                fault is null
                    ? ""
                    : $"<p class=\"fault\" id=\"{id}-fault\">{Text(fault.Message)}"
                        + $"{(fault.Nearest is { } nearest ? $" Did you mean {Text(nearest)}?" : "")}</p>\n"
            )
            .Append("</div>\n");
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

    private static void Other(StringBuilder html, FarmFolder folder)
    {
        string[] files = [.. folder.Reading.Files.Select(file => file.File)
            .Where(file => file.EndsWith(".csv", StringComparison.OrdinalIgnoreCase))];
        html.Append($"<h2>Any other row</h2>\n<form class=\"fields\" method=\"get\" action=\"{RowPath}\">\n<div class=\"grid\">\n"
            + $"<div class=\"field\"><label for=\"file\">Table</label>\n<select id=\"file\" name=\"file\">");
        html.Append(string.Concat(files.Select(file => $"<option>{Text(file)}</option>")));
        html.Append("</select></div>\n<div class=\"field\"><label for=\"line\">Line</label>\n"
            + "<input type=\"text\" inputmode=\"numeric\" id=\"line\" name=\"line\" value=\"\" aria-describedby=\"line-help\">\n"
            + "<p class=\"help\" id=\"line-help\">As a figure's rows name it; blank adds a new row.</p></div>\n</div>\n"
            + "<p class=\"buttons\"><button>Show the row</button></p>\n</form>\n");
    }

    private static string Text(string text) => PageShell.Encode(text);
}
