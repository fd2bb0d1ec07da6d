using System.Text;
using FarmEconomics.Page.Fields;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Page.Views;

/// <summary>A report as a served page: the answer first, its fields in a fold before the details.</summary>
internal static class ReportView
{
    /// <summary>The blocks with the form between what to do and the folds; links as addresses of the server.</summary>
    /// <param name="blocks">The blocks.</param>
    /// <param name="form">The form, ready made.</param>
    /// <param name="query">Year and settings, which go along.</param>
    internal static string Body(IReadOnlyList<Block> blocks, string form, string query)
    {
        // Somebody waits for this one page: its blocks are written and drawn side by side.
        string[] written = new string[blocks.Count];
        Parallel.For(0, blocks.Count, i => written[i] = BlockHtml.Of(blocks[i]).Text);
        int split = blocks.TakeWhile(block => block is not FoldBlock).Count();
        string html = string.Concat([.. written[..split], form, .. written[split..]]);
        return PageShell.WithAddresses(html, target => Nav.Address(PathOf(target), query));
    }

    /// <summary>Said above the last answer while a new one is worked out; the script puts the new one in when it is there.</summary>
    internal const string BeingWorkedOut = "<div class=\"working\" data-anew><p role=\"status\">This is the last answer. "
        + "What you asked for is being worked out and comes by itself in a few seconds.</p></div>\n";

    /// <summary>A page on which nothing can be shown yet.</summary>
    /// <param name="title">Its name.</param>
    internal static string Nothing(string title) =>
        $"<h1>{PageShell.Encode(title)}</h1>\n<div class=\"working\" data-anew><p role=\"status\">This page is being worked out and comes "
            + $"by itself in a few seconds.</p></div>\n";

    /// <summary>The fields in a fold: open where something in it was changed or is wrong.</summary>
    internal static string Form(FieldForm form, string action, IReadOnlyDictionary<string, string> idle, string after)
    {
        bool touched =
            form.Faults.Count > 0
            || form.Query.Split('&', StringSplitOptions.RemoveEmptyEntries)
                .Any(pair => !pair.StartsWith("year=", StringComparison.Ordinal));
        StringBuilder html = new();
        html.Append(
            $"<details class=\"try\" id=\"try\"{(touched ? " open" : "")}><summary><h2>Try it: change something and see</h2></summary>\n"
        );
        html.Append(FormView.Fields(form, action, idle)).Append(after).Append("</details>\n");
        return html.ToString();
    }

    /// <summary>Where a copy of the page and the tables behind it are.</summary>
    internal static string Downloads(string path, string query) =>
        $"<p class=\"cap downloads\"><a href=\"{PageShell.Encode(Nav.Address(path, query.Length > 0 ? query + "&_copy=1" : "_copy=1"))}\" "
            + $"download>Keep this page as a file</a> · <a href=\"{PageShell.Encode(Nav.Address("/tables", query))}\">"
            + $"Tables for a spreadsheet</a></p>\n";

    private static string PathOf(string target) => target == ReportCatalog.Name(ReportId.Season) ? "/" : "/" + target;
}
