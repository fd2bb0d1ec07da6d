using System.Globalization;
using System.Text.RegularExpressions;

namespace FarmEconomics.Files.Importing.Sources;

/// <summary>A quantity as a person notes it.</summary>
/// <param name="Amount">The number.</param>
/// <param name="Unit">The unit written beside it; empty for none.</param>
/// <param name="IsEstimate">True when it is marked as about right: ~15, about 12, 20?</param>
internal readonly record struct NotedQuantity(decimal Amount, string Unit, bool IsEstimate);

/// <summary>
/// Reads quantities as people note them: <c>12 bu</c>, <c>~15</c>, <c>3 1/2 lb</c>, <c>3½</c>, <c>2 doz</c>, <c>1,5 kg</c>. Money signs,
/// and what could be
/// two numbers, are none.
/// </summary>
internal static partial class QuantityText
{
    private const string Vulgar = "½¼¾⅓⅔⅛⅜⅝⅞";
    private const int LongestNote = 60;
    private const int Decimals = 10;
    private const decimal OuncesOfPound = 16m;

    // Common practice, no source.
    private static readonly HashSet<string> NothingWords =
        new(["none", "no", "nil", "nothing", "zero", "n/a", "na", "-", "--", "–", "—"], StringComparer.OrdinalIgnoreCase);

    private static readonly (int Over, int Under)[] Vulgars = [(1, 2), (1, 4), (3, 4), (1, 3), (2, 3), (1, 8), (3, 8), (5, 8), (7, 8)];

    /// <summary>True for a word, or a dash, in the place of a number that says there was nothing.</summary>
    public static bool IsNothing(string text) => NothingWords.Contains(text.Trim());

    /// <summary>Reads a quantity.</summary>
    /// <param name="text">The text.</param>
    /// <param name="mark">The decimal mark of the file.</param>
    /// <param name="quantity">The quantity.</param>
    /// <returns>Whether it is one.</returns>
    public static bool TryRead(string text, char mark, out NotedQuantity quantity)
    {
        quantity = default;
        if (PoundsAndOunces().Match(text.Trim()) is { Success: true } both)
        {
            quantity = new NotedQuantity(int.Parse(both.Groups["lb"].Value, CultureInfo.InvariantCulture)
                + (decimal.Parse(both.Groups["oz"].Value.Replace(',', '.'), CultureInfo.InvariantCulture) / OuncesOfPound), "lb", false);
            return true;
        }

        Match match = text.Length > LongestNote ? Match.Empty : Shape().Match(text.Trim());
        if (!match.Success || Number(match, mark) is not { } amount)
        {
            return false;
        }

        quantity = new NotedQuantity(amount, match.Groups["unit"].Value.TrimEnd('.'), match.Groups["about"].Success
            || match.Groups["unsure"].Success);
        return true;
    }

    private static decimal? Number(Match match, char mark)
    {
        decimal amount = 0m;
        if (match.Groups["number"] is { Success: true } number)
        {
            if (Plain(number.Value, mark) is not { } plain)
            {
                return null;
            }

            amount = plain;
        }

        if (match.Groups["over"] is { Success: true } over)
        {
            // 6/3 and 10/2 are days, or two numbers, before they are parts of one.
            decimal top = decimal.Parse(over.Value, CultureInfo.InvariantCulture);
            decimal under = decimal.Parse(match.Groups["under"].Value, CultureInfo.InvariantCulture);
            return under <= top ? null : amount + Math.Round(top / under, Decimals);
        }

        if (match.Groups["vulgar"] is { Success: true } vulgar)
        {
            (int top, int bottom) = Vulgars[Vulgar.IndexOf(vulgar.Value, StringComparison.Ordinal)];
            amount += Math.Round((decimal)top / bottom, Decimals);
        }

        return amount;
    }

    // 1,5 can only be one and a half; 1,500 is what the file's mark makes of it.
    private static decimal? Plain(string number, char mark)
    {
        char other = mark == '.' ? ',' : '.';
        string digits = number;
        if (digits.Contains(other, StringComparison.Ordinal))
        {
            string[] groups = digits.Split(mark)[0].Split(other);
            bool thousands = groups.Length > 1 && groups.Skip(1).All(group => group.Length == 3) && groups[0].Length is >= 1 and <= 3
                && groups[0] != "0";
            bool decimals = groups.Length == 2 && !digits.Contains(mark, StringComparison.Ordinal) && groups[1].Length is 1 or 2;
            if (!thousands && !decimals)
            {
                return null;
            }

            digits = thousands ? digits.Replace(other.ToString(), "", StringComparison.Ordinal) : digits.Replace(other, mark);
        }

        return decimal.TryParse(digits.Replace(mark, '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal value)
            ? value : null;
    }

    [GeneratedRegex(@"^(?<lb>[0-9]{1,4})\s*(lbs?|pounds?)\.?,?\s*(?<oz>[0-9]{1,2}([.,][0-9]{1,4})?)\s*(oz|ounces?)\.?$",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex PoundsAndOunces();

    [GeneratedRegex(
        @"^(?<about>~|≈|ca\.?|c\.|about|approx\.?|approximately)?\s*("
            + @"(?<number>[0-9][0-9.,]*)?\s*(?<vulgar>[½¼¾⅓⅔⅛⅜⅝⅞])"
            + @"|(?<number>[0-9]+)[ -](?<over>[0-9]{1,2})/(?<under>[0-9]{1,2})"
            + @"|(?<over>[0-9]{1,2})/(?<under>[0-9]{1,2})"
            + @"|(?<number>[0-9][0-9.,]*|\.[0-9]+)"
            + @")(?<unsure>\?)?\s*(?<unit>\p{L}[\p{L}. -]{0,30})?(?<unsure>\?)?$",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Shape();
}
