using System.Security.Cryptography;
using System.Text;
using FarmEconomics.Reports.Blocks;

namespace FarmEconomics.Reports.Frame;

/// <summary>A tab on top of every page.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Href">Where it leads.</param>
/// <param name="IsCurrent">Whether this is the page itself.</param>
public sealed record PageTab(string Text, string Href, bool IsCurrent = false);

/// <summary>What stands around the blocks of a page.</summary>
/// <param name="Title">The title of the window.</param>
/// <param name="Farm">The farm.</param>
/// <param name="Season">The season, or what else stands after the farm's name; empty: nothing.</param>
public sealed record PageFrame(string Title, string Farm, string Season)
{
    /// <summary>The tabs.</summary>
    public IReadOnlyList<PageTab> Tabs { get; init; } = [];

    /// <summary>Printed at the foot of every sheet beside the page number.</summary>
    public string Foot { get; init; } = "";

    /// <summary>True for a farm that measures in meters: its sheets are A4. Others print on what their printer holds.</summary>
    public bool IsMetric { get; init; }

    /// <summary>Paragraphs below the page.</summary>
    public IReadOnlyList<string> Footer { get; init; } = [];

    /// <summary>Where the page's root lies from it: empty, or <c>../</c>.</summary>
    public string Root { get; init; } = "";

    /// <summary>True when a server gives style and script; false when the page holds them.</summary>
    public bool IsServed { get; init; }

    /// <summary>True when the page holds the fonts itself: a single file to send.</summary>
    public bool HoldsFonts { get; init; }

    /// <summary>Other seasons, to go to from the masthead.</summary>
    public IReadOnlyList<PageTab> Years { get; init; } = [];

    /// <summary>More of a served page's head: its own style and script.</summary>
    public string ServedHead { get; init; } = "";
}

/// <summary>The frame of every page: masthead, tabs, style, script, print. Nothing is fetched from elsewhere.</summary>
public static class PageShell
{
    /// <summary>The file that holds the fonts, beside the pages; without it a page falls back to the machine's own.</summary>
    public const string FontsFile = "fonts.css";

    /// <summary>The style of every page.</summary>
    public static string Stylesheet { get; } = Resource("page.css");

    /// <summary>The script of every page: sorting, long tables, folds at print. Everything can be read without it.</summary>
    public static string Script { get; } = Resource("page.js");

    private static readonly Lazy<string> FontsText = new(MakeFonts);

    /// <summary>The style that brings the fonts.</summary>
    public static string Fonts => FontsText.Value;

    /// <summary>
    /// What a saved page may do: its own style and script, the fonts beside it and pictures within it, nothing from elsewhere.
    /// </summary>
    /// <param name="styles">The styles within the page.</param>
    public static string ContentSecurityPolicy(params IEnumerable<string> styles) =>
        $"default-src 'none'; style-src 'self' file: {string.Join(' ', styles.Select(style => $"'{Hash(style)}'"))}; "
            + $"script-src '{Hash(Script)}'; font-src data:; img-src data:; base-uri 'none'; form-action 'none'";

    /// <summary>Reads style and fonts beforehand, before several threads ask for them.</summary>
    internal static void Prepare() => _ = (Fonts.Length, Script.Length);

    /// <summary>Puts blocks into the frame.</summary>
    /// <param name="frame">What stands around them.</param>
    /// <param name="body">The content, HTML made by this program with the one h1: every text from a record in it is encoded
    /// already.</param>
    public static string Render(PageFrame frame, string body) => Render(frame, page => page.Safe(body));

    /// <summary>The same, of a content that is written straight into the page.</summary>
    internal static string Render(PageFrame frame, Action<HtmlWriter> body)
    {
        ArgumentNullException.ThrowIfNull(frame);
        HtmlWriter page = new();
        AddHead(page, frame);
        page.Add($"<p class=\"mast\">{frame.Farm}{(frame.Season.Length > 0 ? Html.Of($" <span>· {frame.Season}</span>") : Html.Empty)}");
        foreach (PageTab year in frame.Years)
        {
            page.Add($" <a href=\"{year.Href}\">{year.Text}</a>");
        }

        page.Add($"</p>");
        Tabs(page, frame.Tabs);
        page.Add($"</header>\n<main id=\"content\" tabindex=\"-1\">\n");
        int begin = page.Written.Length;
        body(page);
        page.EndLinesAlike(begin);
        page.Add($"</main>\n<footer>\n");
        foreach (string paragraph in frame.Footer)
        {
            page.Add($"<p>{paragraph}</p>\n");
        }

        page.Add($"</footer></div>\n");
        if (!frame.IsServed)
        {
            page.Safe("<script>").Safe(Script).Safe("</script>\n");
        }

        page.Add($"</body>\n</html>\n");
        return page.ToHtml().Text;
    }

    private static void AddHead(HtmlWriter page, PageFrame frame)
    {
        page.Add($"<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
        if (!frame.IsServed)
        {
            List<string> styles = [Stylesheet, Foot(frame.Foot, frame.IsMetric), .. frame.HoldsFonts ? [Fonts] : Array.Empty<string>()];
            page.Add($"<meta http-equiv=\"Content-Security-Policy\" content=\"{new Html(ContentSecurityPolicy(styles))}\">\n");
        }

        page.Add($"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n"
            + $"<meta name=\"color-scheme\" content=\"light dark\">\n"
            + $"<meta name=\"referrer\" content=\"{(frame.IsServed ? "same-origin" : "no-referrer")}\">\n<title>{frame.Title}</title>\n");
        page.Add($"<link rel=\"icon\" href=\"data:,\">\n");
        if (frame.HoldsFonts)
        {
            Style(page, Fonts);
        }
        else
        {
            page.Add($"<link rel=\"stylesheet\" href=\"{frame.Root + FontsFile}\">\n");
        }

        if (frame.IsServed)
        {
            page.Safe(frame.ServedHead);
        }
        else
        {
            Style(page, Stylesheet);
            Style(page, Foot(frame.Foot, frame.IsMetric));
        }

        page.Add($"</head>\n<body>\n<a class=\"skip\" href=\"#content\">Skip to the content</a>\n<div class=\"page\"><header>");
    }

    private static void Style(HtmlWriter page, string css) => page.Safe("<style>").Safe(css).Safe("</style>\n");

    /// <summary>HTML whose targets became addresses; a target that leads nowhere keeps its words.</summary>
    /// <param name="html">Blocks as HTML.</param>
    /// <param name="address">The address of a target without its scheme; null: there is no such page.</param>
    public static string WithAddresses(string html, Func<string, string?> address)
    {
        HtmlWriter page = new();
        AddWithAddresses(page, html, address);
        return page.ToHtml().Text;
    }

    /// <summary>The same, written into a page.</summary>
    internal static void AddWithAddresses(HtmlWriter page, ReadOnlySpan<char> html, Func<string, string?> address)
    {
        const string Open = $"<a href=\"{PageTarget.Scheme}", Close = "</a>";
        for (int at = html.IndexOf(Open); at >= 0; at = html.IndexOf(Open))
        {
            page.Safe(html[..at]);
            html = html[(at + Open.Length)..];
            int target = html.IndexOf('"'), close = html.IndexOf(Close);
            if (target < 0 || close < target || html[target + 1] != '>')
            {
                // No link of ours.
                page.Safe(Open);
                continue;
            }

            string? found = address(html[..target].ToString());
            if (found is not null)
            {
                page.Add($"<a href=\"{found}\">");
            }

            page.Safe(html[(target + 2)..close]).Safe(found is null ? "" : Close);
            html = html[(close + Close.Length)..];
        }

        page.Safe(html);
    }

    /// <summary>A text from anywhere, safe inside an element or a quoted attribute.</summary>
    /// <param name="text">The text.</param>
    public static string Encode(string text) => System.Net.WebUtility.HtmlEncode(text);

    private static void Tabs(HtmlWriter page, IReadOnlyList<PageTab> tabs)
    {
        if (tabs.Count == 0)
        {
            return;
        }

        page.Add($"<nav aria-label=\"Pages\">");
        foreach (PageTab tab in tabs)
        {
            page.Add($"<a href=\"{tab.Href}\"{new Html(tab.IsCurrent ? " aria-current=\"page\"" : "")}>{tab.Text}</a>");
        }

        page.Add($"</nav>");
    }

    /// <summary>The style that prints a line at the foot of every sheet.</summary>
    /// <param name="text">The line.</param>
    /// <param name="isMetric">True: on A4.</param>
    public static string Foot(string text, bool isMetric) =>
        $"@page{{{(isMetric ? "size:A4;" : "")}@bottom-left{{content:{CssText(text)}}}}}";

    // A string of CSS: what could end it or the style element is written by its number; the space behind a number is no part of the text.
    private static string CssText(string text) =>
        "\""
        + string.Concat(
            text.EnumerateRunes().Select(letter =>
                Rune.IsLetterOrDigit(letter) || letter.Value is ' ' or ',' or '.' or '·'
                    ? letter.ToString()
                    : $"\\{letter.Value.ToString("x6", System.Globalization.CultureInfo.InvariantCulture)} "
            )
        )
        + "\"";

    private static string Hash(string text) => "sha256-" + Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)));

    private static string MakeFonts()
    {
        StringBuilder css = new();
        foreach ((string family, int weight) in new[] { ("Page Serif", 400), ("Page Serif", 600), ("Page Sans", 400), ("Page Sans", 600) })
        {
            string file = $"{family.Replace(" ", "", StringComparison.Ordinal)}-{weight}.woff2";
            using Stream stream = Open("Fonts." + file);
            byte[] bytes = new byte[stream.Length];
            stream.ReadExactly(bytes);
            css.Append($"@font-face{{font-family:\"{family}\";font-weight:{weight};font-display:swap;src:url(data:font/woff2;base64,"
                + $"{Convert.ToBase64String(bytes)}) format(\"woff2\")}}\n");
        }

        return css.ToString();
    }

    private static string Resource(string name)
    {
        using StreamReader reader = new(Open(name), Encoding.UTF8);
        // The hash in the page is of exactly these characters, whatever line ends the checkout has.
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }

    private static Stream Open(string name) => typeof(PageShell).Assembly.GetManifestResourceStream("FarmEconomics.Reports." + name)
        ?? throw new InvalidOperationException($"{name} is missing from the program.");
}
