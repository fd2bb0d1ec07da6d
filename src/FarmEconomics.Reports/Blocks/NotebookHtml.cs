using System.Text.RegularExpressions;

namespace FarmEconomics.Reports.Blocks;

/// <summary>A block as a notebook shows it: its chart as a PNG picture, without what belongs to a page alone.</summary>
internal static partial class NotebookHtml
{
    /// <summary>Writes it.</summary>
    internal static Html Of(Block block)
    {
        Html html = block is PlotBlock { Chart.Figure: { } figure } plot
            ? Html.Of($"<section id=\"{plot.Key.Id}\" data-block=\"{plot.Key.Name}\">\n<h3>{plot.Heading}</h3>\n<p>{plot.Caption}</p>\n<img src=\"data:image/png;base64,{Convert.ToBase64String(figure.Png())}\" width=\"{figure.Width}\" height=\"{figure.Height}\" alt=\"{figure.Alt}\">\n</section>\n")
            : BlockHtml.Of(block);

        // Links to other pages lead nowhere from a notebook: their words stay.
        return new(Link().Replace(html.Text, match => match.Groups["words"].Value).Replace("<h1>", "<h2>", StringComparison.Ordinal).Replace("</h1>", "</h2>", StringComparison.Ordinal));
    }

    [GeneratedRegex("<a href=\"farm:[^\"]*\">(?<words>[^<]*)</a>")]
    private static partial Regex Link();
}
