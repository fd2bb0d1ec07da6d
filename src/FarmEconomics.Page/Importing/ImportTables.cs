using System.Text;
using FarmEconomics.Files.Importing.Drafts;
using FarmEconomics.Files.Importing.Sessions;

namespace FarmEconomics.Page.Importing;

/// <summary>The tables of a file being brought in: its rows, ours, and how one becomes the other.</summary>
internal static class ImportTables
{
    private const int RowsShown = 4;

    /// <summary>Their rows, our rows.</summary>
    internal static string Sides(ImportLook look)
    {
        StringBuilder html = new();
        if (look.Draft is { } draft)
        {
            html.Append(Table("In the file", draft.Headings, draft.Sample));
        }

        if (look.Plan is { Rows.Count: > 0 } plan)
        {
            html.Append(Table($"In your {plan.Table}", [.. plan.Columns.Prepend("line")],
                plan.Rows.Take(RowsShown).Select(row => (IReadOnlyList<string>)[$"{row.Line}", .. row.Fields])));
        }

        return html.Length == 0 ? "" : $"<h2>Their rows, your rows</h2>\n{html}";
    }

    /// <summary>The mapping, line by line, with why.</summary>
    internal static string Mapping(ImportDraft draft)
    {
        IEnumerable<IReadOnlyList<string>> lines = draft.Lines.Select(line => (IReadOnlyList<string>)
            [line.Column.Length == 0 ? "left out" : line.Column, line.From, line.Note.TrimStart('?', ' ')]);
        return "<details class=\"group\" id=\"mapping\"><summary>How each column is read, and why</summary>\n"
            + Table("How each column is read", ["your column", "from the file", "why"], lines)
            + "</details>\n";
    }

    private static string Table(string title, IReadOnlyList<string> headings, IEnumerable<IReadOnlyList<string>> rows)
    {
        StringBuilder html = new($"<div class=\"scroll\" role=\"region\" aria-label=\"{ImportPages.Text(title)}\" tabindex=\"0\"><table>\n"
            + $"<caption>{ImportPages.Text(title)}</caption>\n<thead><tr>");
        foreach ((int at, string heading) in headings.Index())
        {
            // An empty heading would say nothing to who listens to the page.
            html.Append($"<th scope=\"col\">{ImportPages.Text(heading.Trim().Length == 0 ? $"column {at + 1}" : heading)}</th>");
        }

        html.Append("</tr></thead>\n<tbody>\n");
        foreach (IReadOnlyList<string> row in rows)
        {
            html.Append("<tr>")
                .AppendJoin("", row.Take(headings.Count).Select(cell => $"<td>{ImportPages.Text(cell)}</td>"))
                .Append("</tr>\n");
        }

        return html.Append("</tbody></table></div>\n").ToString();
    }
}
