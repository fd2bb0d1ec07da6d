using System.Buffers;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Text.Unicode;
using ADRaffy.ENSNormalize;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Reading;

/// <summary>
/// Looks at texts that hold more than plain ASCII letters with single spaces between words: wrong encodings, letters that can't be seen,
/// the form of composed letters, and spaces that look like one.
/// </summary>
internal static partial class UnusualText
{
    // Marks that change nothing one can see (word joiners, directions of writing); those that join letters of some scripts are left.
    private static readonly SearchValues<char> Unseen = SearchValues.Create(
        "\u00AD\u061C\u200B\u200E\u200F\u202A\u202B\u202C\u202D\u202E\u2060\u2066\u2067\u2068\u2069\uFEFF"
    );

    /// <summary>True for a text that needs a look: nearly every text is plain letters, seen at once.</summary>
    public static bool Is(ReadOnlySpan<byte> bytes) =>
        bytes.IndexOfAnyExceptInRange((byte)' ', (byte)'~') >= 0 || bytes.IndexOf("  "u8) >= 0;

    /// <summary>What is wrong with a text; the message goes on after the column's name. Null when nothing is.</summary>
    public static (string Code, string Message)? FaultOf(ColumnSchema column, ReadOnlySpan<byte> bytes, string text)
    {
        if (!Utf8.IsValid(bytes) || text.Contains('\uFFFD', StringComparison.Ordinal))
        {
            return (ProblemCodes.NotUtf8, $"holds letters that are not UTF-8: \"{RowReading.Shown(text)}\".");
        }

        int control = column.IsName ? text.AsSpan().IndexOfAny(Unseen) : -1;
        for (int i = 0; i < text.Length && control < 0; i++)
        {
            control = char.IsControl(text[i]) && (column.IsName || text[i] is not ('\t' or '\n' or '\r')) ? i : control;
        }

        return control < 0 ? null
            : text[control] < '\t' || !column.IsName
                ? (ProblemCodes.NotUtf8, "holds characters that are no letters (NUL or other control characters).")
            : (
                ProblemCodes.UnseenLetters,
                $"holds a character that can't be seen ({Name(text[control])}) after \"{RowReading.Shown(text[..control])}\"."
            );
    }

    /// <summary>
    /// A name with its letters composed (Unicode NFC) and one plain space between its words, so that names which look alike are one name;
    /// another text as it is.
    /// </summary>
    public static string Composed(ColumnSchema column, string text) =>
        column.IsName ? Spaces().Replace(ENSNormalize.NF.NFC(text), " ").Trim() : text;

    [GeneratedRegex(@"[\p{Zs}]{2,}|[\p{Zs}-[ ]]", RegexOptions.CultureInvariant)]
    private static partial Regex Spaces();

    private static string Name(char c) => c switch
    {
        '\n' or '\r' => "a line break",
        '\t' => "a tab",
        _ => "U+" + ((int)c).ToString("X4", CultureInfo.InvariantCulture),
    };
}
