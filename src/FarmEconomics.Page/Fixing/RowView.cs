using System.Text;
using FarmEconomics.Files.Editing;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Page.Fixing;

/// <summary>A row to show in fields.</summary>
/// <param name="Row">The row, with the texts to show.</param>
/// <param name="Settings">The farm's settings.</param>
/// <param name="Names">The names rows may use.</param>
internal sealed record RowLook(EditableRow Row, FarmSettings Settings, KnownNames Names)
{
    /// <summary>What is wrong with it.</summary>
    public IReadOnlyList<Problem> Faults { get; init; } = [];

    /// <summary>Why nothing was saved; blank: nothing was to be.</summary>
    public string Message { get; init; } = "";

    /// <summary>True when the row may be another one by now: Save would be refused again.</summary>
    public bool IsOutdated { get; init; }

    /// <summary>What was just done, with the way back; blank: nothing.</summary>
    public string Done { get; init; } = "";

    /// <summary>Why nothing can be saved; null when it can.</summary>
    public string? WhyNot { get; init; }

    /// <summary>The rows of the file, shown below a new one.</summary>
    public IReadOnlyList<(int Line, IReadOnlyList<string> Fields)> Rows { get; init; } = [];
}

/// <summary>
/// The page of one row: its fields, each with what it means and the names it may hold; below a new row those that are there.
/// </summary>
internal static class RowView
{
    private const int RowsShown = 8;
    private const int MostCauses = 5;

    /// <summary>What the page is called.</summary>
    internal static string Title(string file, int line) => line == 0 ? $"A new row of {file}" : $"Line {line} of {file}";

    /// <summary>The page.</summary>
    internal static string Render(RowLook look)
    {
        EditableRow row = look.Row;
        TableSchema? table = RecordSchema.Find(row.File.Split('.')[0]);
        StringBuilder html = new(look.Done);
        html.Append($"<h1>{Text(Title(row.File, row.Line))}</h1>\n");
        html.Append(look.Message.Length == 0 ? "" : $"<p class=\"fault\" role=\"alert\">{Text(look.Message)}</p>\n");
        html.Append(!look.IsOutdated ? "" : $"<p><a href=\"{Text(FixView.Address(row.File, row.Line))}\">Show the row as it is now</a>; "
            + "what you typed stands below, to copy.</p>\n");
        html.Append(Elsewhere(look));
        html.Append($"<form class=\"fields\" method=\"post\" action=\"{FixView.RowPath}\">\n");
        foreach ((string name, string value) in new[] { ("file", row.File), ("line", $"{row.Line}"), ("version", row.Version) })
        {
            html.Append($"<input type=\"hidden\" name=\"{name}\" value=\"{Text(value)}\">\n");
        }

        html.Append("<div class=\"grid\">\n");
        bool[] fields = [.. row.Headings.Select(heading => heading.Trim().Length > 0
            && !heading.StartsWith("source_", StringComparison.OrdinalIgnoreCase))];
        int focused = look.Faults.Count > 0 || row.Line > 0 ? -1 : Array.IndexOf(fields, true);
        foreach (int at in Enumerable.Range(0, fields.Length).Where(at => fields[at]))
        {
            Field(html, at, look, table?.Find(row.Headings[at], look.Settings.LengthUnit), at == focused);
        }

        html.Append("</div>\n").Append(Buttons(look)).Append("</form>\n");
        return html.Append(Rows(look)).ToString();
    }

    // What a change of this row would break in others, each kind once.
    private static string Elsewhere(RowLook look)
    {
        HashSet<string> shown = [.. look.Row.Headings.Select(HeadingKey.Of)];
        IReadOnlyList<ProblemCause> causes = ProblemCause.Of(look.Faults.Where(problem => problem.Column is null
            || !shown.Contains(HeadingKey.Of(problem.Column)) || problem.Source.File != look.Row.File));
        StringBuilder html = new();
        foreach (ProblemCause cause in causes.Take(MostCauses))
        {
            string more = cause.Count > 1 ? $" And {look.Settings.Notation.Count(cause.Count - 1, "more row")} like it." : "";
            html.Append($"<p class=\"fault\">{Text(cause.First.Source.ToString())}: {Text(cause.First.Message)} {Text(cause.First.Hint)}"
                + $"{Text(more)}</p>\n");
        }

        int rest = causes.Count - MostCauses;
        return rest <= 0 ? html.ToString()
            : html.Append($"<p class=\"fault\">And {Text(look.Settings.Notation.Count(rest, "more kind", "more kinds"))} of problem.</p>\n")
                .ToString();
    }

    private static string Buttons(RowLook look) => look.WhyNot is { } why ? $"<p>{Text(why)}</p>\n"
        : $"<p class=\"buttons\"><button class=\"main\" name=\"do\" value=\"save\">Save</button>"
            + $"{(look.Row.Line == 0 ? "" : "<button name=\"do\" value=\"remove\">Take this row out</button>")}<a href=\"{FixView.Path}\">"
            + $"{(look.Row.Line == 0 && look.Message.Length == 0 ? "Back to the list" : "Back without saving")}</a></p>\n";

    private static void Field(StringBuilder html, int at, RowLook look, ColumnSchema? column, bool focused)
    {
        EditableRow row = look.Row;
        Problem? fault = look.Faults.FirstOrDefault(problem => problem.Column is not null
            && HeadingKey.Of(problem.Column) == HeadingKey.Of(row.Headings[at]) && problem.Source.File == row.File);
        string id = $"c{at}";
        IReadOnlyList<string> choices = Choices(column, look);
        html.Append(
            $"<div class=\"field\"><label for=\"{id}\">{Text(row.Headings[at])}{(column?.Required == true ? " (needed)" : "")}</label>\n"
        );
        html.Append(
            $"<input type=\"text\" id=\"{id}\" name=\"{id}\" value=\"{Text(row.Fields[at])}\" "
                + $"autocomplete=\"off\"{(fault is null ? "" : $" aria-invalid=\"true\" aria-errormessage=\"{id}-fault\"")}"
                + $"{(fault is null && !focused ? "" : " autofocus")}{(choices.Count == 0 ? "" : $" list=\"{id}-list\"")} "
                + $"aria-describedby=\"{id}-help\">\n"
        );
        html.Append(choices.Count == 0 ? ""
            : $"<datalist id=\"{id}-list\">"
                + $"{string.Concat(choices.Select(name => $"<option value=\"{Text(name)}\"></option>"))}</datalist>\n");
        string example = column?.Type == ColumnType.Date && look.Settings.DateFormat is null ? " Such as 2025-06-30." : "";
        html.Append($"<p class=\"help\" id=\"{id}-help\">"
            + $"{Text(column is null ? "Not a column of this table; kept as it is." : column.Description + example)}</p>\n");
        html.Append(
                fault is null
                    ? ""
                    : $"<p class=\"fault\" id=\"{id}-fault\">{Text(fault.Message)}"
                        + $"{(fault.Nearest is { } nearest ? $" Did you mean {Text(nearest)}?" : "")}</p>\n"
            )
            .Append("</div>\n");
    }

    private static IReadOnlyList<string> Choices(ColumnSchema? column, RowLook look) => column switch
    {
        null or { Several: true } => [],
        { Allowed.Count: > 0 } => column.Allowed,
        { RefersTo: { } table } => look.Names.Of(table),
        { Name: "unit", Type: ColumnType.Name } => look.Names.Of("units"),
        { Name: "setting" } => [.. FarmSettingsReader.For(look.Settings.LengthUnit).Select(setting => setting.Name)],
        _ => [],
    };

    // The newest stand first: what was just typed is seen, and any other row is found.
    private static string Rows(RowLook look)
    {
        if (look.Rows.Count == 0)
        {
            return "";
        }

        StringBuilder html = new($"<h2>Rows of {Text(look.Row.File)}, the last first</h2>\n<div class=\"scroll\" role=\"region\" "
            + $"aria-label=\"Rows of {Text(look.Row.File)}\" tabindex=\"0\"><table data-rows=\"{RowsShown}\" "
            + $"data-group=\"{look.Settings.Notation.Culture.NumberFormat.NumberGroupSeparator}\">\n<thead><tr>"
            + "<th scope=\"col\">line</th>");
        html.AppendJoin("", look.Row.Headings.Select((heading, at) =>
            $"<th scope=\"col\">{Text(heading.Trim().Length == 0 ? $"column {at + 1}" : heading)}</th>"));
        html.Append("</tr></thead>\n<tbody>\n");
        foreach ((int line, IReadOnlyList<string> fields) in look.Rows.Reverse())
        {
            html.Append($"<tr><th scope=\"row\"><a href=\"{Text(FixView.Address(look.Row.File, line))}\">{line}</a></th>")
                .AppendJoin("", look.Row.Headings.Select((_, at) => $"<td>{Text(at < fields.Count ? fields[at] : "")}</td>"))
                .Append("</tr>\n");
        }

        return html.Append("</tbody></table></div>\n").ToString();
    }

    private static string Text(string text) => PageShell.Encode(text);
}
