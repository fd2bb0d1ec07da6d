namespace FarmEconomics.Reports.Tables;

/// <summary>Text in lines of a given width, for a terminal.</summary>
public static class TextLines
{
    /// <summary>Letters of a line, everywhere the commands speak.</summary>
    public const int Width = 100;

    /// <summary>A text in lines of <see cref="Width"/> letters, without a line end after the last.</summary>
    /// <param name="text">What is said.</param>
    public static string Of(string text) => string.Join('\n', Wrapped(text, Width));

    /// <summary>
    /// A line that is too wide in several, those after the first set in by four letters more. What follows its last colon stays together
    /// where it fits, since it may be there to be copied; else it is broken at words, nothing left out. A longer word stands on its own.
    /// </summary>
    /// <param name="line">The line; letters it begins with that are spaces are kept for all.</param>
    /// <param name="width">Letters of a line, above 0.</param>
    /// <returns>The lines, without line ends.</returns>
    public static IEnumerable<string> Folded(string line, int width)
    {
        ArgumentNullException.ThrowIfNull(line);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(width);
        string indent = new(' ', line.Length - line.TrimStart(' ').Length + 4);
        while (line.Length > width && Break(line, indent.Length, width) is var at && at > 0)
        {
            yield return line[..at].TrimEnd(' ');
            line = indent + line[at..].TrimStart(' ');
        }

        yield return line;
    }

    /// <summary>Where the rest begins; 0: nowhere.</summary>
    private static int Break(string line, int indent, int width)
    {
        int start = line.Length - line.TrimStart(' ').Length, colon = line.LastIndexOf(": ", StringComparison.Ordinal);
        if (colon > start && colon < width && line.Length - colon - 2 <= width - indent)
        {
            return colon + 2;
        }

        int before = line.LastIndexOf(' ', width), after = line.IndexOf(' ', Math.Min(width, line.Length - 1));
        return before > start ? before + 1 : after > start ? after + 1 : 0;
    }

    /// <summary>A text broken at words; control characters of records are blanked. A word longer than a line stands on its own.</summary>
    /// <param name="text">What is said; the empty text has no line.</param>
    /// <param name="width">Letters of a line, above 0.</param>
    /// <returns>The lines, without line ends.</returns>
    public static IEnumerable<string> Wrapped(string text, int width)
    {
        ArgumentNullException.ThrowIfNull(text);
        string line = "";
        foreach (
            string word in string.Concat(text.Select(c => char.IsControl(c) ? ' ' : c)).Split(' ', StringSplitOptions.RemoveEmptyEntries)
        )
        {
            if (line.Length > 0 && line.Length + 1 + word.Length > width)
            {
                yield return line;
                line = "";
            }

            line += line.Length > 0 ? " " + word : word;
        }

        if (line.Length > 0)
        {
            yield return line;
        }
    }
}
