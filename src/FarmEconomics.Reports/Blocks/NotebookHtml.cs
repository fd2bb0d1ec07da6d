using System.Text.RegularExpressions;

namespace FarmEconomics.Reports.Blocks;

/// <summary>
/// A block as a notebook shows it: without what belongs to a page alone. Charts are pictures there (<see cref="PlotFormatterSource"/>).
/// </summary>
internal static partial class NotebookHtml
{
    /// <summary>Writes it.</summary>
    internal static Html Of(Block block)
    {
        // Links to other pages lead nowhere from a notebook: their words stay. What a page folds away is what a cell was run for.
        return new(
            Link()
                .Replace(BlockHtml.Of(block).Text, match => match.Groups["words"].Value)
                .Replace("<h1>", "<h2>", StringComparison.Ordinal)
                .Replace("</h1>", "</h2>", StringComparison.Ordinal)
                .Replace("<details id=", "<details open id=", StringComparison.Ordinal)
                .Replace("<summary><h2>", "<summary><h2 style=\"display:inline\">", StringComparison.Ordinal)
        );
    }

    [GeneratedRegex("<a href=\"farm:[^\"]*\">(?<words>[^<]*)</a>")]
    private static partial Regex Link();
}
