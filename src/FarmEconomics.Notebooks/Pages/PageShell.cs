using System.Net;
using System.Security.Cryptography;
using System.Text;

namespace FarmEconomics.Notebooks.Pages;

/// <summary>A link in a page's navigation.</summary>
/// <param name="Text">What it says.</param>
/// <param name="Href">Where it leads: a relative address inside the review, an anchor or a web address.</param>
/// <param name="IsCurrent">Whether this is the page itself.</param>
public sealed record PageLink(string Text, string Href, bool IsCurrent = false);

/// <summary>The frame of every page of a review: one file, no scripts, nothing fetched from anywhere.</summary>
public static class PageShell
{
    /// <summary>The style of every page, as it stands in its head.</summary>
    public static string Stylesheet { get; } = ReadStylesheet();

    /// <summary>The rule a browser is given: no scripts, no requests, this one style and pictures inside the page.</summary>
    public static string ContentSecurityPolicy { get; } =
        $"default-src 'none'; style-src 'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(Stylesheet)))}'; "
        + "img-src data:; base-uri 'none'; form-action 'none'";

    /// <summary>Puts a body into the frame.</summary>
    /// <param name="title">The title of the window, plain text.</param>
    /// <param name="bodyHtml">The content, HTML made by this program: every text from a record in it is encoded already. It has the one h1.</param>
    /// <param name="nav">Links to the pages beside this one; none, no navigation.</param>
    /// <param name="footer">Paragraphs of the footer, plain text: the cautions.</param>
    /// <param name="language">The language of the text.</param>
    public static string Render(
        string title, string bodyHtml, IReadOnlyList<PageLink> nav, IReadOnlyList<string> footer, string language = "en")
    {
        ArgumentNullException.ThrowIfNull(nav);
        ArgumentNullException.ThrowIfNull(footer);
        StringBuilder page = new();
        page.Append($"""
            <!DOCTYPE html>
            <html lang="{Encode(language)}">
            <head>
            <meta charset="utf-8">
            <meta http-equiv="Content-Security-Policy" content="{ContentSecurityPolicy}">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta name="color-scheme" content="light dark">
            <meta name="referrer" content="no-referrer">
            <title>{Encode(title)}</title>
            <style>{Stylesheet}</style>
            </head>
            <body>
            <a class="skip" href="#content">Skip to the content</a>

            """.ReplaceLineEndings("\n"));
        if (nav.Count > 0)
        {
            page.Append("<header><nav aria-label=\"Pages of this review\"><ul>\n");
            foreach (PageLink link in nav)
            {
                string current = link.IsCurrent ? " aria-current=\"page\"" : "";
                page.Append($"<li><a href=\"{Encode(link.Href)}\"{current}>{Encode(link.Text)}</a></li>\n");
            }

            page.Append("</ul></nav></header>\n");
        }

        page.Append("<main id=\"content\" tabindex=\"-1\">\n").Append(bodyHtml.ReplaceLineEndings("\n")).Append("\n</main>\n");
        if (footer.Count > 0)
        {
            page.Append("<footer>\n");
            foreach (string paragraph in footer)
            {
                page.Append($"<p>{Encode(paragraph)}</p>\n");
            }

            page.Append("</footer>\n");
        }

        return page.Append("</body>\n</html>\n").ToString();
    }

    /// <summary>A text from anywhere, safe inside an element or a quoted attribute.</summary>
    public static string Encode(string text) => WebUtility.HtmlEncode(text);

    private static string ReadStylesheet()
    {
        using Stream stream = typeof(PageShell).Assembly.GetManifestResourceStream("FarmEconomics.Notebooks.page.css")
            ?? throw new InvalidOperationException("The style of the pages is missing from the program.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        // The hash in the page is of exactly these characters, whatever line ends the checkout has.
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
