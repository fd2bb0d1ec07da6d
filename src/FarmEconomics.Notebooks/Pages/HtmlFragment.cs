using System.Net;
using System.Text;
using System.Text.RegularExpressions;

namespace FarmEconomics.Notebooks.Pages;

/// <summary>Looks over HTML that came out of a notebook before it goes into a page.</summary>
internal static partial class HtmlFragment
{
    private static readonly HashSet<string> Elements = new(StringComparer.OrdinalIgnoreCase)
    {
        "a",
        "abbr",
        "b",
        "br",
        "caption",
        "cite",
        "code",
        "col",
        "colgroup",
        "dd",
        "details",
        "div",
        "dl",
        "dt",
        "em",
        "figcaption",
        "figure",
        "h1",
        "h2",
        "h3",
        "h4",
        "h5",
        "h6",
        "hr",
        "i",
        "img",
        "kbd",
        "li",
        "ol",
        "p",
        "pre",
        "q",
        "s",
        "section",
        "small",
        "span",
        "strong",
        "sub",
        "summary",
        "sup",
        "table",
        "tbody",
        "td",
        "tfoot",
        "th",
        "thead",
        "time",
        "tr",
        "ul",
        // Vector pictures, as the plots write them
        "svg",
        "g",
        "path",
        "rect",
        "circle",
        "ellipse",
        "line",
        "polyline",
        "polygon",
        "text",
        "tspan",
        "clippath",
        "defs",
        "use",
        "title",
        "desc",
        "lineargradient",
        "radialgradient",
        "stop",
        "pattern",
        "mask",
        "image",
        "symbol",
        "marker",
    };

    /// <summary>Whether the fragment has only elements and attributes a page without scripts and outside requests may have.</summary>
    public static bool IsSafe(string html)
    {
        int at = 0;
        foreach (Match tag in Tag().Matches(html))
        {
            // A bracket between the tags is something this doesn't understand.
            if (html.AsSpan(at, tag.Index - at).IndexOf('<') >= 0 || !Elements.Contains(tag.Groups["name"].Value))
            {
                return false;
            }

            foreach (Match attribute in Attribute().Matches(tag.Groups["attributes"].Value))
            {
                if (!IsSafeAttribute(attribute.Groups["name"].Value, WebUtility.HtmlDecode(attribute.Groups["value"].Value)))
                {
                    return false;
                }
            }

            at = tag.Index + tag.Length;
        }

        return html.AsSpan(at).IndexOf('<') < 0;
    }

    /// <summary>Puts each table into a container of its own that scrolls in a narrow window and can be reached with the keyboard.</summary>
    public static string WrapTables(string html) => html
        .Replace("<table", "<div class=\"scroll\" role=\"region\" aria-label=\"Table\" tabindex=\"0\"><table", StringComparison.Ordinal)
        .Replace("</table>", "</table></div>", StringComparison.Ordinal);

    /// <summary>Makes the headings a proper outline: one h1, and no level skipped on the way down.</summary>
    public static string OrderHeadings(string html)
    {
        int last = 0;
        Stack<int> open = new();
        return Heading().Replace(html, match =>
        {
            if (match.Groups["close"].Length > 0)
            {
                return $"</h{(open.Count > 0 ? open.Pop() : last)}";
            }

            int wanted = match.Groups["level"].Value[0] - '0';
            int level = last == 0 ? 1 : Math.Clamp(wanted, 2, last + 1);
            last = level;
            open.Push(level);
            return $"<h{level}";
        });
    }

    /// <summary>The words of a fragment.</summary>
    public static string PlainText(string html)
    {
        StringBuilder text = new();
        int at = 0;
        foreach (Match tag in Tag().Matches(html))
        {
            text.Append(html, at, tag.Index - at);
            at = tag.Index + tag.Length;
        }

        return WebUtility.HtmlDecode(text.Append(html, at, html.Length - at).ToString()).Trim();
    }

    private static bool IsSafeAttribute(string name, string value)
    {
        string lower = name.ToLowerInvariant();
        if (
            lower.StartsWith("on", StringComparison.Ordinal)
            || lower is "style" or "srcset" or "formaction" or "srcdoc" or "action" or "background"
        )
        {
            return false;
        }

        string target = value.Trim();
        return lower switch
        {
            "src" => target.StartsWith("data:image/png;base64,", StringComparison.OrdinalIgnoreCase),
            "href" or "xlink:href" => target.StartsWith('#')
                || target.StartsWith("https://", StringComparison.OrdinalIgnoreCase)
                || target.StartsWith("http://", StringComparison.OrdinalIgnoreCase)
                || target.StartsWith("data:image/png;base64,", StringComparison.OrdinalIgnoreCase)
                || RelativeAddress().IsMatch(target),
            _ => !OutsideUrl().IsMatch(value),
        };
    }

    [GeneratedRegex("""</?(?<name>[A-Za-z][A-Za-z0-9]*)(?<attributes>(?:\s+[A-Za-z_:][\w:.-]*(?:\s*=\s*(?:"[^"]*"|'[^']*'))?)*)\s*/?>""")]
    private static partial Regex Tag();

    [GeneratedRegex("""(?<name>[A-Za-z_:][\w:.-]*)(?:\s*=\s*(?:"(?<value>[^"]*)"|'(?<value>[^']*)'))?""")]
    private static partial Regex Attribute();

    [GeneratedRegex(@"^[\w.-][\w./ -]*(?:#[\w.-]*)?\z")]
    private static partial Regex RelativeAddress();

    [GeneratedRegex(@"url\(\s*['""]?(?!#)", RegexOptions.IgnoreCase)]
    private static partial Regex OutsideUrl();

    [GeneratedRegex("<(?<close>/?)h(?<level>[1-6])(?=[\\s>])", RegexOptions.IgnoreCase)]
    private static partial Regex Heading();
}
