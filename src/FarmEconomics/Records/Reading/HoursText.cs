using System.Globalization;
using System.Text.RegularExpressions;

namespace FarmEconomics.Records.Reading;

/// <summary>
/// Reads hours written as a time: <c>7:30</c>, <c>7:30:15</c>, <c>7h30</c>, <c>7 h 30 min</c>, <c>45 min</c>, <c>7.5 h</c>. A plain number
/// and a time of day (<c>7:30 AM</c>) are none of them. Parts of an hour are kept to 10 decimals.
/// </summary>
public static partial class HoursText
{
    private const int Decimals = 10;
    private const int LongestTime = 40;

    /// <summary>Reads hours.</summary>
    /// <param name="text">The text.</param>
    /// <param name="decimalMark">The farm's decimal mark.</param>
    /// <param name="hours">The hours, 0 when it is no time.</param>
    /// <returns>Whether it is written as a time.</returns>
    public static bool TryRead(ReadOnlySpan<char> text, char decimalMark, out decimal hours)
    {
        hours = 0m;

        // Nearly every field is a plain number: only what holds a colon, an h or an m is looked at closer.
        if (text.Length > LongestTime || text.IndexOfAny(":hHmM") < 0)
        {
            return false;
        }

        string time = text.Trim().ToString();
        Match match = Clock().Match(time);
        match = match.Success ? match : HoursAndMinutes().Match(time);
        if (match.Success)
        {
            hours = decimal.Round(Part(match, "h") + (Part(match, "m") / 60m) + (Part(match, "s") / 3600m), Decimals);
            return true;
        }

        match = DecimalHours().Match(time);
        return match.Success
            && match.Groups["mark"].Value is var mark
            && (mark.Length == 0 || mark[0] == decimalMark)
            && decimal.TryParse(
                match.Groups["h"].Value.Replace(decimalMark, '.'),
                NumberStyles.AllowDecimalPoint,
                CultureInfo.InvariantCulture,
                out hours
            );
    }

    private static decimal Part(Match match, string name) =>
        match.Groups[name] is { Success: true } part ? int.Parse(part.ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture) : 0m;

    // Minutes have two digits: 7:5 could be 7:05 or 7:50.
    [GeneratedRegex("^(?<h>[0-9]{1,5}):(?<m>[0-5][0-9])(:(?<s>[0-5][0-9]))?$", RegexOptions.ExplicitCapture)]
    private static partial Regex Clock();

    [GeneratedRegex(
        "^((?<h>[0-9]{1,5}) ?(h|hr|hrs|hour|hours) ?(?<m>[0-5][0-9])"
            + "|((?<h>[0-9]{1,5}) ?(h|hr|hrs|hour|hours) ?)?(?<m>[0-9]{1,4}) ?(m|min|mins|minute|minutes))$",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant
    )]
    private static partial Regex HoursAndMinutes();

    [GeneratedRegex(
        "^(?<h>[0-9]{1,5}((?<mark>[.,])[0-9]{1,10})?) ?(h|hr|hrs|hour|hours)$",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant
    )]
    private static partial Regex DecimalHours();
}
