namespace FarmEconomics.Reports.Tables;

/// <summary>Text in lines of a given width, for a terminal.</summary>
public static class TextLines
{
    /// <summary>Letters of a line, everywhere the commands speak.</summary>
    public const int Width = 100;

    /// <summary>A text in lines of <see cref="Width"/> letters, without a line end after the last.</summary>
    /// <param name="text">What is said.</param>
    public static string Of(string text) => string.Join('\n', Wrapped(text, Width));

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
