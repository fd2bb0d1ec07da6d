using System.Buffers;
using System.Globalization;
using System.Text.Unicode;
using ADRaffy.ENSNormalize;
using FarmEconomics.Records.Checks;

namespace FarmEconomics.Files.Reading;

/// <summary>Looks at texts that hold more than plain ASCII letters: wrong encodings, letters that can't be seen, and the form of composed letters.</summary>
internal static class UnusualText
{
    // Marks that change nothing one can see (word joiners, directions of writing); those that join letters of some scripts are left.
    private static readonly SearchValues<char> Unseen = SearchValues.Create("\u00AD\u061C\u200B\u200E\u200F\u202A\u202B\u202C\u202D\u202E\u2060\u2066\u2067\u2068\u2069\uFEFF");

    /// <summary>Reports what is wrong with the text.</summary>
    /// <returns>The text; a name with its letters composed (Unicode NFC), so that names which look alike are one name.</returns>
    public static string Check(RowReading row, int index, ReadOnlySpan<byte> bytes, string text)
    {
        bool isName = row.ColumnAt(index).IsName;
        if (!Utf8.IsValid(bytes) || text.Contains('\uFFFD', StringComparison.Ordinal))
        {
            row.Report(ProblemCodes.NotUtf8, index, $"{row.NameAt(index)} holds letters that are not UTF-8: \"{RowReading.Shown(text)}\".", text);
            return text;
        }

        int control = isName ? text.AsSpan().IndexOfAny(Unseen) : -1;
        for (int i = 0; i < text.Length && control < 0; i++)
        {
            control = char.IsControl(text[i]) && (isName || text[i] is not ('\t' or '\n' or '\r')) ? i : control;
        }

        if (control >= 0)
        {
            bool isNoText = text[control] < '\t';
            row.Report(isNoText || !isName ? ProblemCodes.NotUtf8 : ProblemCodes.UnseenLetters, index,
                isNoText || !isName
                    ? $"{row.NameAt(index)} holds characters that are no letters (NUL or other control characters)."
                    : $"{row.NameAt(index)} holds a character that can't be seen ({Name(text[control])}) after \"{RowReading.Shown(text[..control])}\".",
                text);
        }

        return isName ? ENSNormalize.NF.NFC(text) : text;
    }

    private static string Name(char c) => c switch
    {
        '\n' or '\r' => "a line break",
        '\t' => "a tab",
        _ => "U+" + ((int)c).ToString("X4", CultureInfo.InvariantCulture),
    };
}
