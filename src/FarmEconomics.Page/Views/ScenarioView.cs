using System.Text;
using FarmEconomics.Page.Fields;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Page.Views;

/// <summary>The scenarios kept under a name, and the field to keep another.</summary>
internal static class ScenarioView
{
    /// <summary>Writes the section.</summary>
    /// <param name="kept">Name, changes and note of those in the file.</param>
    /// <param name="file">The file they are kept in.</param>
    /// <param name="form">The fields of the page.</param>
    /// <param name="address">The page's address without query.</param>
    /// <param name="name">What was typed for a name.</param>
    /// <param name="fault">What is wrong with it, or null.</param>
    internal static string Render(
        IReadOnlyList<(string Name, string Changes, string? Note)> kept,
        string file,
        FieldForm form,
        string address,
        string name = "",
        string? fault = null
    )
    {
        StringBuilder html = new(
            "<section class=\"scenarios keep-scenario\" aria-labelledby=\"kept\">\n<h2 id=\"kept\">Scenarios kept under a name</h2>\n"
        );
        html.Append(
            $"<p>They stand in <code>{PageShell.Encode(Path.GetFileName(file))}</code>, a file of its own, and are compared further down. "
                + $"Your records don’t hold them.</p>\n"
        );
        if (kept.Count > 0)
        {
            AppendKept(html, kept, form, address);
        }

        if (form.Changes.Length > 0 && form.Faults.Count == 0)
        {
            html.Append("<form method=\"post\" action=\"/scenarios\" class=\"keep\">\n");
            html.Append($"<input type=\"hidden\" name=\"_query\" value=\"{PageShell.Encode(form.Query)}\">\n");
            html.Append($"<div class=\"field\"><label for=\"keep-name\">Keep the changes on this page as</label>"
                + $"<input type=\"text\" id=\"keep-name\" name=\"name\" maxlength=\"80\" autocomplete=\"off\" "
                + $"value=\"{PageShell.Encode(name)}\" aria-describedby=\"keep-fault\"{(fault is null ? "" : " aria-invalid=\"true\"")}>");
            html.Append(kept.Count == 0 ? "" : "<p class=\"help\">A scenario of the same name is replaced.</p>");
            html.Append($"<p class=\"fault\" id=\"keep-fault\"{(fault is null ? " hidden" : "")}>{PageShell.Encode(fault ?? "")}</p>"
                + $"</div>\n<button type=\"submit\">Keep</button>\n</form>\n");
        }
        else if (kept.Count == 0)
        {
            html.Append("<p class=\"hint\">None yet. Change something above and work it out; then it can be kept under a name.</p>\n");
        }

        return html.Append("</section>\n").ToString();
    }

    private static void AppendKept(
        StringBuilder html, IReadOnlyList<(string Name, string Changes, string? Note)> kept, FieldForm form, string address)
    {
        html.Append("<div class=\"scroll\" role=\"region\" aria-label=\"Scenarios\" tabindex=\"0\"><table>\n"
            + "<thead><tr><th scope=\"col\">Name</th><th scope=\"col\">Changes</th><th scope=\"col\">Do</th></tr></thead>\n<tbody>\n");
        foreach ((string each, string changes, _) in kept)
        {
            string use = $"{address}?{Uri.EscapeDataString(ChangeFields.Other)}="
                + $"{Uri.EscapeDataString(changes.Replace("; ", "\n", StringComparison.Ordinal))}";
            html.Append($"<tr><th scope=\"row\"><a href=\"{PageShell.Encode(use)}\">{PageShell.Encode(each)}</a></th>"
                + $"<td>{PageShell.Encode(changes)}</td>");
            html.Append($"<td><form method=\"post\" action=\"/scenarios/remove\">"
                + $"<input type=\"hidden\" name=\"name\" value=\"{PageShell.Encode(each)}\">"
                + $"<input type=\"hidden\" name=\"_query\" value=\"{PageShell.Encode(form.Query)}\">");
            html.Append($"<button type=\"submit\" aria-label=\"Remove {PageShell.Encode(each)}\">Remove</button></form></td></tr>\n");
        }

        html.Append("</tbody></table></div>\n");
    }
}
