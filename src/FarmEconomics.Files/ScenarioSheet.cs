using System.Text;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Places;

namespace FarmEconomics.Files;

/// <summary>
/// The text of a file of scenarios with all that a spreadsheet or an editor chose: encoding, separator, line ends. It is written back the
/// same way.
/// </summary>
internal sealed class ScenarioSheet
{
    private static readonly string[] LineEnds = ["\r\n", "\n", "\r"];

    private ScenarioSheet(Encoding encoding, string text)
    {
        Encoding = encoding;
        string first = text.Split('\r', '\n')[0];
        int at = text.IndexOfAny(['\r', '\n']);
        LineEnd = at < 0 ? "\n" : LineEnds.First(end => text.AsSpan(at).StartsWith(end));
        bool named = first.Length == 5 && first.StartsWith("sep=", StringComparison.OrdinalIgnoreCase);
        Separator = named ? first[4] : new[] { ',', ';', '\t' }.MaxBy(mark => first.Count(letter => letter == mark));
        SeparatorLine = named ? first + LineEnd : "";
        Rows = named ? text[Math.Min(text.Length, SeparatorLine.Length)..] : text;
    }

    /// <summary>A file that isn't there yet.</summary>
    internal static ScenarioSheet New => new(TextEncodings.Utf8, string.Join(',', ScenarioRow.Columns) + "\n");

    internal Encoding Encoding { get; }

    internal char Separator { get; }

    internal string LineEnd { get; }

    /// <summary>The line some spreadsheets put first to name the separator; empty without one.</summary>
    internal string SeparatorLine { get; }

    /// <summary>All other lines.</summary>
    internal string Rows { get; }

    /// <summary>Reads a file.</summary>
    /// <exception cref="FileNotFoundException">There is no such file.</exception>
    /// <exception cref="FormatException">It is no plain file.</exception>
    internal static ScenarioSheet Read(string path)
    {
        PlainFile.RequireGiven(path);

        if (FolderPlace.FileAt(path)?.Length > CsvInput.MaxBytes)
        {
            throw new FormatException($"{path}: it is too large for a file of scenarios.");
        }

        byte[] bytes = File.ReadAllBytes(path);
        Encoding encoding = TextEncodings.Of(bytes);
        return new ScenarioSheet(encoding, encoding.GetString(bytes.AsSpan(encoding.Preamble.Length)));
    }

    /// <summary>
    /// The bytes of a text in the file's own encoding; in UTF-8 with its mark, which spreadsheets know, where that has no such letters.
    /// </summary>
    internal byte[] Bytes(string text)
    {
        Encoding encoding = Encoding;
        if (Encoding.CodePage == 1252 && Encoding.GetString(Encoding.GetBytes(text)) != text)
        {
            encoding = TextEncodings.MarkedUtf8;
        }

        return [.. encoding.Preamble, .. encoding.GetBytes(text)];
    }
}
