using System.Globalization;

namespace FarmEconomics.Records.Reading;

/// <summary>
/// Latin letters without their accents. The system's own decomposition (<see cref="string.Normalize()"/>) leaves letters as they are where
/// the program runs without the languages' data, as it does.
/// </summary>
internal static class PlainLetters
{
    // Letters of Latin-1 and Latin Extended-A, by the letter they are written over (Unicode Standard, code charts U+0080 and U+0100).
    private static readonly Dictionary<char, char> Plain = new[]
    {
        "aàáâãäåāăą", "cçćĉċč", "dďđ", "eèéêëēĕėęě", "gĝğġģ", "hĥħ", "iìíîïĩīĭįı", "jĵ", "kķ", "lĺļľŀł", "nñńņňŉ", "oòóôõöøōŏő", "rŕŗř",
        "sśŝşšș", "tţťŧț", "uùúûüũūŭůűų", "wŵ", "yýÿŷ", "zźżž",
    }.SelectMany(row => row.Skip(1).Select(letter => (Letter: letter, Base: row[0]))).ToDictionary(pair => pair.Letter, pair => pair.Base);

    /// <summary>A text in lower case without accents, whether they are part of a letter or follow it.</summary>
    /// <param name="text">The text.</param>
    public static string Of(string text) =>
        string.Concat(
            text.ToLowerInvariant()
                .Where(c => CharUnicodeInfo.GetUnicodeCategory(c) != UnicodeCategory.NonSpacingMark)
                .Select(c => Plain.GetValueOrDefault(c, c))
        );
}
