using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Notebooks.Pages;

/// <summary>What surrounds a notebook's page.</summary>
public sealed record NotebookPageOptions
{
    /// <summary>The title of the window; by default the notebook's first heading.</summary>
    public string? Title { get; init; }

    /// <summary>Links to the pages beside this one.</summary>
    public IReadOnlyList<PageTab> Nav { get; init; } = [];

    /// <summary>The cautions, a paragraph each, plain text.</summary>
    public IReadOnlyList<string> Footer { get; init; } = [];

    /// <summary>Why the run stopped, if it did; said at the top of the page.</summary>
    public NotebookFailure? Failure { get; init; }
}

/// <summary>A notebook's page without its frame: HTML made by this program, every text from a record in it encoded.</summary>
/// <param name="Title">The title, plain text.</param>
/// <param name="Heading">The one h1.</param>
/// <param name="Content">All that follows it.</param>
public sealed record NotebookBody(string Title, string Heading, string Content);

/// <summary>An executed notebook as a page to read and print: text, tables and figures, the code folded away.</summary>
public static partial class NotebookPage
{
    /// <summary>Renders a notebook as a file of its own.</summary>
    public static string Render(NotebookDocument document, NotebookPageOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        NotebookBody body = Body(document, options.Title, options.Failure);
        return PageShell.Render(
            new PageFrame(body.Title, body.Title, "") { Tabs = options.Nav, Footer = options.Footer },
            body.Heading + body.Content
        );
    }

    /// <summary>One or two words for the navigation: <c>02-season-review</c> becomes "Season review".</summary>
    /// <param name="name">The notebook's file name without extension.</param>
    public static string ShortTitle(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        string words = name.TrimStart('0', '1', '2', '3', '4', '5', '6', '7', '8', '9', '-').Replace('-', ' ');
        return words.Length == 0 ? name : char.ToUpperInvariant(words[0]) + words[1..];
    }

    /// <summary>Renders what stands between a page's header and footer.</summary>
    /// <param name="document">The executed notebook.</param>
    /// <param name="title">The title; by default the notebook's first heading.</param>
    /// <param name="failure">Why the run stopped, if it did; said right below the heading.</param>
    public static NotebookBody Body(NotebookDocument document, string? title = null, NotebookFailure? failure = null)
    {
        ArgumentNullException.ThrowIfNull(document);
        string html = HtmlFragment.OrderHeadings(Cells(document));
        Match heading = FirstHeading().Match(html);
        title ??= heading.Success ? HtmlFragment.PlainText(heading.Groups[1].Value) : "Notebook";
        // What stands before the first heading, if anything, follows it.
        (string first, string rest) = heading.Success
            ? (heading.Value, html.Remove(heading.Index, heading.Length))
            : ($"<h1>{PageShell.Encode(title)}</h1>\n", html);
        if (failure is not null)
        {
            rest = "\n<div class=\"note bad\" role=\"alert\"><p><strong>This page is not complete.</strong> "
                + $"The run stopped: {PageShell.Encode(failure.ToString())}. What would follow was not worked out.</p></div>\n" + rest;
        }

        return new NotebookBody(title, first, rest);
    }

    private static string Cells(NotebookDocument document)
    {
        StringBuilder body = new();
        StringBuilder code = new();
        HashSet<string> prefixes = [];
        foreach (NotebookCell cell in document.Cells)
        {
            if (cell.Type == "markdown")
            {
                body.Append(HtmlFragment.WrapTables(SafeMarkdown.ToHtml(cell.Source)));
            }
            else if (cell.IsCode)
            {
                foreach (JsonObject output in cell.Outputs)
                {
                    Append(body, output, prefixes);
                }

                code.Append($"<pre tabindex=\"0\"><code>{PageShell.Encode(cell.Source.TrimEnd())}</code></pre>\n");
            }
        }

        if (code.Length > 0)
        {
            // In one place at the end: between the sentences it would be in a reader's way.
            body.Append($"<details class=\"code\"><summary>The code behind this page, step by step</summary>\n{code}</details>\n");
        }

        return body.ToString();
    }

    /// <summary>Tables, each in a container that scrolls in a narrow window and can be reached with the keyboard.</summary>
    /// <param name="html">HTML made by this program.</param>
    public static string Scrolling(string html) => HtmlFragment.WrapTables(html);

    private static void Append(StringBuilder body, JsonObject output, HashSet<string> prefixes)
    {
        switch ((string?)output["output_type"])
        {
            case "stream":
                string kind = (string?)output["name"] == "stderr" ? " class=\"note\"" : " class=\"plain\"";
                body.Append($"<pre{kind}>{PageShell.Encode(NotebookCell.MultilineText(output["text"]).TrimEnd())}</pre>\n");
                break;
            case "error":
                body.Append($"<div class=\"note bad\"><p><strong>This step failed.</strong></p>"
                    + $"<pre>{PageShell.Encode((string?)output["evalue"] ?? "")}</pre></div>\n");
                break;
            default:
                if (output["data"] is JsonObject data)
                {
                    AppendBundle(body, data, output["metadata"]?["image/png"] as JsonObject, prefixes);
                }

                break;
        }
    }

    private static void AppendBundle(StringBuilder body, JsonObject data, JsonObject? pictureSize, HashSet<string> prefixes)
    {
        string svg = NotebookCell.MultilineText(data["image/svg+xml"]);
        string html = HtmlFormatterSource.Unguarded(NotebookCell.MultilineText(data["text/html"]));
        string plain = NotebookCell.MultilineText(data["text/plain"]);
        if (svg.StartsWith("<svg", StringComparison.Ordinal) && HtmlFragment.IsSafe(svg))
        {
            body.Append($"<figure{Wide(SvgWidth().Match(svg).Groups[1].Value)}>{OwnIds(svg, prefixes)}</figure>\n");
        }
        else if ((string?)data["image/png"] is { } png && Base64().IsMatch(png))
        {
            string size = pictureSize is null ? "" : $" width=\"{(int?)pictureSize["width"]}\" height=\"{(int?)pictureSize["height"]}\"";
            body.Append($"<figure{Wide($"{(int?)pictureSize?["width"]}")}>"
                + $"<img src=\"data:image/png;base64,{png.ReplaceLineEndings("")}\"{size} "
                + $"alt=\"{PageShell.Encode(plain.Length > 0 ? plain : "A figure without a description")}\"></figure>\n");
        }
        else if (html.Length > 0 && HtmlFragment.IsSafe(html))
        {
            body.Append(HtmlFragment.WrapTables(html)).Append('\n');
        }
        else if (NotebookCell.MultilineText(data["text/markdown"]) is { Length: > 0 } markdown)
        {
            body.Append(HtmlFragment.WrapTables(SafeMarkdown.ToHtml(markdown)));
        }
        else if (plain.Length > 0 || html.Length > 0)
        {
            // HTML of unknown make is shown in words: a kernel's own display of an object brings styles, others bring scripts.
            body.Append($"<pre class=\"plain\">"
                + $"{PageShell.Encode(plain.Length > 0 ? plain : HtmlFragment.PlainText(StyleOrScript().Replace(html, "")))}</pre>\n");
        }
    }

    // In a narrow window a wide figure keeps its size and scrolls, also by keyboard: shrunk to fit, its labels could not be read.
    private static string Wide(string width) => int.TryParse(width, out int pixels) && pixels > 600 ? " class=\"wide\" tabindex=\"0\"" : "";

    // The same figure twice on a page would have the same ids twice.
    private static string OwnIds(string svg, HashSet<string> prefixes)
    {
        Match prefix = IdPrefix().Match(svg);
        if (!prefix.Success)
        {
            return svg;
        }

        string name = prefix.Groups[1].Value;
        string own = name;
        for (int copy = 2; !prefixes.Add(own); copy++)
        {
            own = $"{name}-{copy}";
        }

        return own == name ? svg : svg.Replace(name + "-", own + "-", StringComparison.Ordinal);
    }

    [GeneratedRegex("<h1[^>]*>(.*?)</h1>", RegexOptions.Singleline)]
    private static partial Regex FirstHeading();

    [GeneratedRegex("^<svg[^>]*\\swidth=\"(\\d+)\"")]
    private static partial Regex SvgWidth();

    [GeneratedRegex("\\sid=\"(f[0-9a-f]{10})-")]
    private static partial Regex IdPrefix();

    [GeneratedRegex(@"^[A-Za-z0-9+/=\s]+\z")]
    private static partial Regex Base64();

    [GeneratedRegex("<(style|script)\\b.*?</\\1\\s*>", RegexOptions.Singleline | RegexOptions.IgnoreCase)]
    private static partial Regex StyleOrScript();
}
