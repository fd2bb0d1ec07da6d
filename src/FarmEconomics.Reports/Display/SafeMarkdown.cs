using System.Text;
using Markdig;
using Markdig.Syntax;
using Markdig.Syntax.Inlines;

namespace FarmEconomics.Reports.Display;

/// <summary>Markdown to HTML that can't bring in scripts, styles or outside pictures.</summary>
public static class SafeMarkdown
{
    private static readonly MarkdownPipeline Pipeline = new MarkdownPipelineBuilder().UsePipeTables().DisableHtml().Build();

    /// <summary>What the address of a link to another page of the farm starts with, until a page makes an address of it.</summary>
    public const string FarmScheme = "farm:";

    private static readonly string[] Schemes = ["http:", "https:", "mailto:", FarmScheme];

    /// <summary>The HTML of a Markdown text. Right-aligned table cells get the class <c>num</c> instead of a style.</summary>
    public static string ToHtml(string markdown)
    {
        MarkdownDocument document = Markdown.Parse(markdown, Pipeline);
        foreach (LinkInline link in document.Descendants<LinkInline>().ToList())
        {
            if (!IsAllowed(link.Url ?? "", link.IsImage))
            {
                // The words stay, the address goes.
                link.IsImage = false;
                link.Url = "#";
            }
        }

        foreach (AutolinkInline link in document.Descendants<AutolinkInline>().ToList())
        {
            if (!link.IsEmail && !IsAllowed(link.Url, image: false))
            {
                link.ReplaceBy(new LiteralInline(link.Url));
            }
        }

        // Text has its quotes encoded, so these can only be the renderer's own attributes.
        return document.ToHtml(Pipeline)
            .Replace(" style=\"text-align: right;\"", " class=\"num\"", StringComparison.Ordinal)
            .Replace(" style=\"text-align: center;\"", " class=\"mid\"", StringComparison.Ordinal)
            .Replace(" style=\"text-align: left;\"", "", StringComparison.Ordinal);
    }

    /// <summary>The same without marks, for a terminal.</summary>
    public static string ToPlainText(string markdown) => Markdown.ToPlainText(markdown, Pipeline).TrimEnd();

    /// <summary>A text such that Markdown shows every character of it as it is, on one line.</summary>
    public static string Escape(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        StringBuilder escaped = new(text.Length + 8);
        foreach (char c in text)
        {
            if (char.IsControl(c) || c is '\u2028' or '\u2029')
            {
                escaped.Append(' ');
                continue;
            }

            if (char.IsAscii(c) && (char.IsPunctuation(c) || char.IsSymbol(c)))
            {
                escaped.Append('\\');
            }

            escaped.Append(c);
        }

        return escaped.ToString();
    }

    private static bool IsAllowed(string url, bool image)
    {
        if (image)
        {
            return url.StartsWith("data:image/png;base64,", StringComparison.OrdinalIgnoreCase);
        }

        int colon = url.IndexOf(':', StringComparison.Ordinal);
        int path = url.IndexOfAny(['/', '?', '#']);
        bool hasScheme = colon >= 0 && (path < 0 || colon < path);
        return !url.Any(char.IsControl) && !url.StartsWith("//", StringComparison.Ordinal)
            && (!hasScheme || Schemes.Any(s => url.StartsWith(s, StringComparison.OrdinalIgnoreCase)));
    }
}
