using System.Text;
using FarmEconomics.Page.Fields;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Page.Views;

/// <summary>The fields of a notebook as a form.</summary>
internal static class FormView
{
    private const int MostOpen = 6;

    /// <summary>Writes the form.</summary>
    /// <param name="form">The fields with their values and faults.</param>
    /// <param name="action">Where it is sent.</param>
    /// <param name="shown">The query of the page below, which stays until the new one is ready.</param>
    internal static string Render(FieldForm form, string action, string shown)
    {
        StringBuilder html = new();
        bool asked = form.Query.Length > 0;
        html.Append(
            $"<form class=\"fields\" method=\"post\" action=\"{action}\" data-run novalidate>\n<h2>Change something and see</h2>\n"
        );
        html.Append("<p class=\"hint\">Nothing you change here is written to your records.</p>\n");
        html.Append($"<input type=\"hidden\" name=\"_shown\" value=\"{PageShell.Encode(shown)}\">\n");
        html.Append($"<div class=\"note bad\" data-faults role=\"alert\"{(form.Faults.Count == 0 ? " hidden" : "")}>"
            + $"<p>{FaultLine(form.Faults.Count)}</p></div>\n");
        // A long row of fields would push the answer out of sight: the first stand open, the rest a click away.
        List<PageField> plain = [.. form.Fields.Where(field => field.Group is null)];
        int open = plain.Count > MostOpen ? MostOpen : plain.Count;
        AppendFields(html, form, plain.Take(open));
        IEnumerable<PageField> folded = plain.Skip(open).Select(field => field with { Group = "More to change" });
        foreach (
            IGrouping<string, PageField> group in folded
                .Concat(form.Fields.Where(field => field.Group is not null))
                .GroupBy(field => field.Group!)
        )
        {
            // Open where something in it was changed or is wrong: what works on the page must be in sight.
            bool touched =
                group.Any(field => form.Value(field) != field.Default || form.Faults.ContainsKey(field.Key))
                || group.First().Key is "price1.crop";
            html.Append($"<details class=\"group\"{(touched ? " open" : "")}><summary>{PageShell.Encode(group.Key)}</summary>\n");
            AppendFields(html, form, group);
            html.Append("</details>\n");
        }

        html.Append("<p class=\"buttons\"><button type=\"submit\" class=\"main\">Calculate</button> ");
        html.Append($"<a href=\"{action}\"{(asked ? "" : " hidden")} data-reset>Back to the records as they are</a></p>\n</form>\n");
        return html.ToString();
    }

    /// <summary>The form of a report: sent as an address, so that every answer can be kept as a bookmark.</summary>
    /// <param name="form">The fields with their values and faults.</param>
    /// <param name="action">The page's address.</param>
    /// <param name="idle">Why a field changes nothing with these records, by its key.</param>
    internal static string Fields(FieldForm form, string action, IReadOnlyDictionary<string, string> idle)
    {
        StringBuilder html = new();
        html.Append($"<form class=\"fields\" method=\"get\" action=\"{action}\" data-live novalidate>\n"
            + $"<p class=\"hint\">Nothing you change here is written to your records.</p>\n");
        html.Append($"<div class=\"note bad\" role=\"alert\"{(form.Faults.Count == 0 ? " hidden" : "")}>"
            + $"<p>{FaultLine(form.Faults.Count, isLeftOut: true)}</p></div>\n");
        foreach (IGrouping<string, PageField> group in form.Fields.GroupBy(field => field.Group ?? ""))
        {
            AppendFields(
                html,
                form,
                group.Select(field => idle.TryGetValue(field.Key, out string? why) ? field with { Help = why } : field)
            );
        }

        html.Append($"<p class=\"buttons\"><button type=\"submit\" class=\"main\">Calculate</button>"
            + $" <a href=\"{action}\"{(form.Query.Length > 0 ? "" : " hidden")} data-reset>Back to the records as they are</a>"
            + $"</p>\n</form>\n");
        return html.ToString();
    }

    /// <summary>What stands above the fields when some are wrong.</summary>
    /// <param name="faults">How many are.</param>
    /// <param name="isLeftOut">True where the page is worked out without them; false where it stays as it was.</param>
    internal static string FaultLine(int faults, bool isLeftOut = false)
    {
        string page = !isLeftOut ? "the page below is unchanged" : $"this page is worked out without {(faults == 1 ? "it" : "them")}";
        return faults == 1 ? $"One field can’t be used as it is; {page}." : $"{faults} fields can’t be used as they are; {page}.";
    }

    private static void AppendFields(StringBuilder html, FieldForm form, IEnumerable<PageField> fields)
    {
        html.Append("<div class=\"grid\">\n");
        foreach (PageField field in fields)
        {
            AppendField(html, field, form);
        }

        html.Append("</div>\n");
    }

    private static void AppendField(StringBuilder html, PageField field, FieldForm form)
    {
        (string value, string? fault) = (form.Value(field), form.Faults.GetValueOrDefault(field.Key));
        string id = Id(field.Key);
        string help = field.Help.TrimEnd('.') is { Length: > 0 } words ? char.ToUpperInvariant(words[0]) + words[1..] + "." : "";
        string described = $"{(help.Length > 0 ? id + "-help " : "")}{id}-fault";
        string common = $"id=\"{id}\" name=\"{PageShell.Encode(field.Key)}\" data-default=\"{PageShell.Encode(field.Default)}\" "
            + (field.WaitsFor is { } other ? $"data-waits-for=\"{Id(other)}\" " : "")
            + $"aria-describedby=\"{described}\"{(fault is null ? "" : " aria-invalid=\"true\"")}";
        string facts = string.Join(", ", new[] { field.Unit, FieldText.Range(field, form.DecimalMark) }.Where(fact => fact is not null));
        string unit = facts.Length == 0 ? "" : $" <span class=\"unit\">({PageShell.Encode(facts)})</span>";
        string label = $"<label for=\"{id}\">{PageShell.Encode(field.Label)}{unit}</label>";
        html.Append("<div class=\"field\">\n");
        AppendInput(html, field, value, (label, common));
        html.Append(help.Length > 0 ? $"<p class=\"help\" id=\"{id}-help\">{PageShell.Encode(help)}</p>\n" : "");
        html.Append(
            $"<p class=\"fault\" id=\"{id}-fault\"{(fault is null ? " hidden" : "")}>{PageShell.Encode(fault ?? "")}</p>\n</div>\n"
        );
    }

    private static string Id(string key) => "f-" + key.Replace('.', '-');

    private static void AppendInput(StringBuilder html, PageField field, string value, (string Label, string Common) made)
    {
        (string label, string common) = made;
        switch (field.Kind)
        {
            case FieldKind.Choice:
                html.Append(label).Append($"<select {common}>");
                foreach (FieldOption option in field.Options)
                {
                    html.Append($"<option value=\"{PageShell.Encode(option.Value)}\"{(option.Value == value ? " selected" : "")}>"
                        + $"{PageShell.Encode(option.Text)}</option>");
                }

                html.Append("</select>\n");
                break;
            case FieldKind.YesNo:
                // What isn't ticked isn't sent; the hidden one says no.
                html.Append($"<input type=\"hidden\" name=\"{PageShell.Encode(field.Key)}\" value=\"false\"><span class=\"check\">"
                    + $"<input type=\"checkbox\" value=\"true\" {common}{(value == "true" ? " checked" : "")}>{label}</span>\n");
                break;
            case FieldKind.Lines:
                html.Append(label).Append($"<textarea rows=\"3\" spellcheck=\"false\" {common}>{PageShell.Encode(value)}</textarea>\n");
                break;
            default:
                string mode =
                    field.Kind == FieldKind.Whole ? " inputmode=\"numeric\""
                    : field.Kind == FieldKind.Number ? " inputmode=\"decimal\""
                    : "";
                html.Append(label).Append($"<input type=\"text\" autocomplete=\"off\" spellcheck=\"false\"{mode} "
                    + $"value=\"{PageShell.Encode(value)}\" {common}>\n");
                break;
        }
    }
}
