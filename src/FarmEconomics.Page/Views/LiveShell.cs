using System.Text;
using FarmEconomics.Notebooks.Pages;
using FarmEconomics.Reports.Season;

namespace FarmEconomics.Page.Views;

/// <summary>The frame of every page the server gives out: the style of the printed review, one script of our own, nothing from elsewhere.</summary>
internal static class LiveShell
{
    /// <summary>Where the style is served.</summary>
    internal const string StylePath = "/live.css";

    /// <summary>Where the script is served.</summary>
    internal const string ScriptPath = "/live.js";

    /// <summary>The style of the saved pages and what only a served page needs.</summary>
    internal static string Stylesheet { get; } = PageShell.Stylesheet + Resource("live.css");

    /// <summary>The script: without it every page still works, slower to the hand.</summary>
    internal static string Script { get; } = Resource("live.js");

    /// <summary>Puts a body into the frame.</summary>
    /// <param name="title">The title of the window, plain text.</param>
    /// <param name="body">HTML with the one h1; every text from the records in it is encoded.</param>
    /// <param name="nav">The pages.</param>
    /// <param name="refreshSeconds">Without scripts, load the page again after so many seconds; null: don't.</param>
    internal static string Render(string title, string body, IReadOnlyList<PageLink> nav, int? refreshSeconds = null)
    {
        StringBuilder page = new();
        page.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append("<meta name=\"color-scheme\" content=\"light dark\">\n")
            .Append($"<title>{PageShell.Encode(title)}</title>\n<link rel=\"stylesheet\" href=\"{StylePath}\">\n<link rel=\"icon\" href=\"data:,\">\n")
            .Append($"<script src=\"{ScriptPath}\" defer></script>\n")
            .Append(refreshSeconds is { } seconds ? $"<noscript><meta http-equiv=\"refresh\" content=\"{seconds}\"></noscript>\n" : "")
            .Append("</head>\n<body class=\"live\">\n<a class=\"skip\" href=\"#content\">Skip to the content</a>\n<header><nav aria-label=\"Pages of this review\"><ul>\n");
        foreach (PageLink link in nav)
        {
            page.Append($"<li><a href=\"{PageShell.Encode(link.Href)}\"{(link.IsCurrent ? " aria-current=\"page\"" : "")}>{PageShell.Encode(link.Text)}</a></li>\n");
        }

        page.Append("</ul></nav></header>\n<main id=\"content\" tabindex=\"-1\">\n").Append(body).Append("\n</main>\n<footer>\n");
        foreach (string paragraph in ProofTables.Cautions.Split("\n\n", StringSplitOptions.RemoveEmptyEntries))
        {
            page.Append($"<p>{PageShell.Encode(paragraph)}</p>\n");
        }

        return page.Append("<p>These pages come from the program on this machine. Nothing leaves it, and your records are only read.</p>\n</footer>\n</body>\n</html>\n").ToString();
    }

    private static string Resource(string name)
    {
        using Stream stream = typeof(LiveShell).Assembly.GetManifestResourceStream("FarmEconomics.Page." + name)
            ?? throw new InvalidOperationException($"{name} is missing from the program.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
