using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace FarmEconomics.Files.Workbooks;

/// <summary>Text as the file format can hold it.</summary>
internal static partial class WorkbookText
{
    internal const int LongestText = 32767;

    private static readonly DateOnly DayZero = new(1899, 12, 30);

    // A spreadsheet reads _x000D_ in a cell as a character code, so the underscore itself has to be written as one.
    [GeneratedRegex("_(?=x[0-9A-Fa-f]{4}_)")]
    private static partial Regex CodeLike();

    /// <summary>Characters XML can't hold become the replacement character: they are shown, not dropped.</summary>
    internal static string Clean(string text)
    {
        StringBuilder clean = new(text.Length);
        for (int i = 0; i < text.Length; i++)
        {
            char c = text[i];
            if (char.IsHighSurrogate(c) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                clean.Append(c).Append(text[++i]);
            }
            else
            {
                clean.Append(System.Xml.XmlConvert.IsXmlChar(c) ? c : '\uFFFD');
            }
        }

        string escaped = CodeLike().Replace(clean.ToString(), "_x005F_");
        return escaped.Length <= LongestText
            ? escaped
            : throw new ArgumentException($"A cell holds at most {LongestText} characters.", nameof(text));
    }

    /// <summary>
    /// True for text that would be read as a formula if somebody edits the cell, or saves the sheet as CSV and opens it again.
    /// </summary>
    internal static bool LooksLikeFormula(string text) => text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n';

    /// <summary>
    /// Text out of the records for a CSV file: a spreadsheet would run one that starts like a formula, so it gets an apostrophe in front.
    /// </summary>
    internal static string NoFormula(string text) => LooksLikeFormula(text) ? "'" + text : text;

    internal static string Of(decimal value) =>
        (value == 0m ? 0m : value / 1.0000000000000000000000000000m).ToString(CultureInfo.InvariantCulture);

    internal static string Of(DateOnly value) => (value.DayNumber - DayZero.DayNumber).ToString(CultureInfo.InvariantCulture);
}
