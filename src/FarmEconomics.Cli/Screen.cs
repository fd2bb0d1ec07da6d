using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Cli;

/// <summary>
/// Lines as wide as the terminal; what goes into a file or to another program keeps its lines whole, so that a search finds a message in
/// one.
/// </summary>
internal static class Screen
{
    private const int Least = 40;

    /// <summary>Says a text, a line of it or several.</summary>
    /// <param name="text">The text.</param>
    /// <param name="to">Standard output or the error stream.</param>
    internal static void Say(string text, TextWriter to)
    {
        int? width = WidthOf(to);
        foreach (string line in text.Split('\n'))
        {
            foreach (string part in width is { } there ? TextLines.Folded(line, there) : [line])
            {
                to.WriteLine(part);
            }
        }
    }

    private static int? WidthOf(TextWriter to)
    {
        if (to == Console.Out ? Console.IsOutputRedirected : Console.IsErrorRedirected)
        {
            return null;
        }

        try
        {
            return Math.Clamp(Console.WindowWidth, Least, TextLines.Width);
        }
        catch (IOException)
        {
            return TextLines.Width;
        }
    }
}
