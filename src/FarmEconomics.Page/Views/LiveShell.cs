using System.Text;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Page.Views;

/// <summary>
/// The frame of every page the server gives out: the style and script of the saved pages, what a served page needs beside them, nothing
/// from elsewhere.
/// </summary>
internal static class LiveShell
{
    /// <summary>Where the style is served.</summary>
    internal const string StylePath = "/live.css";

    /// <summary>Where the script is served.</summary>
    internal const string ScriptPath = "/live.js";

    /// <summary>Where the line at the foot of printed sheets is served.</summary>
    internal const string FootPath = "/foot.css";

    /// <summary>The style of the saved pages and what only a served page needs.</summary>
    internal static string Stylesheet { get; } = PageShell.Stylesheet + Resource("live.css");

    /// <summary>The script: without it every page still works, slower to the hand.</summary>
    internal static string Script { get; } = PageShell.Script + Resource("live.js");

    /// <summary>Puts a body into the frame.</summary>
    /// <param name="frame">What stands around it.</param>
    /// <param name="body">HTML with the one h1; every text from the records in it is encoded.</param>
    /// <param name="refreshSeconds">Without scripts, load the page again after so many seconds; null: don't.</param>
    internal static string Render(PageFrame frame, string body, int? refreshSeconds = null)
    {
        StringBuilder head = new();
        head.Append($"<link rel=\"stylesheet\" href=\"{StylePath}\">\n"
            + $"<link rel=\"stylesheet\" href=\"{FootPath}?text={Uri.EscapeDataString(frame.Foot)}"
            + $"{(frame.IsMetric ? "&amp;metric=yes" : "")}\">\n<script src=\"{ScriptPath}\" defer></script>\n");
        head.Append(refreshSeconds is { } seconds ? $"<noscript><meta http-equiv=\"refresh\" content=\"{seconds}\"></noscript>\n" : "");
        return PageShell.Render(frame with
        {
            IsServed = true,
            Root = "/",
            ServedHead = head.ToString(),
            Footer = [
                .. frame.Footer,
                "These pages come from the program on this machine. "
                    + "Nothing leaves it, and your records change only where you press Save or Add."
            ],
        }, body);
    }

    private static string Resource(string name)
    {
        using Stream stream = typeof(LiveShell).Assembly.GetManifestResourceStream("FarmEconomics.Page." + name)
            ?? throw new InvalidOperationException($"{name} is missing from the program.");
        using StreamReader reader = new(stream, Encoding.UTF8);
        return reader.ReadToEnd().ReplaceLineEndings("\n");
    }
}
