using System.Globalization;
using System.Text.RegularExpressions;

namespace FarmEconomics.Files.Importing.Sources;

/// <summary>Reads times of day and makes hours of a start and an end. A time of day is never an amount of hours by itself.</summary>
internal static partial class ClockText
{
    private const int MinutesOfDay = 1440;
    private const int Noon = 720;
    private const int TwoSpans = 4;
    private const StringSplitOptions Tidy = StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries;
    private static readonly char[] BetweenPunches = [',', ';', '/', '\n', '&', '+'];
    private static readonly string[] FromTo = ["-", "–", "—", " to "];

    /// <summary>The minutes since midnight of a time of day: 6:28, 06:28:00, 3:05 PM, 15:02; also behind a date.</summary>
    /// <returns>The minutes; null when it is none.</returns>
    public static decimal? Minutes(string text)
    {
        Match match = Time().Match(text.Trim());
        return match.Groups["m"].Success ? Minutes(match) : null;
    }

    private static decimal? Minutes(Match match)
    {
        int hour = Whole(match, "h");
        bool half = match.Groups["half"].Success;
        if (half ? hour is < 1 or > 12 : hour > 24)
        {
            return null;
        }

        if (half)
        {
            hour = (hour % 12) + (char.ToLowerInvariant(match.Groups["half"].Value[0]) == 'p' ? 12 : 0);
        }

        return (hour * 60) + Whole(match, "m") + (Whole(match, "s") / 60m);
    }

    // Where a time is looked for an hour may stand alone: 7, 7 am, noon.
    private static decimal? Noted(string text) => text.Trim() is var time && time.Equals("noon", StringComparison.OrdinalIgnoreCase)
        ? Noon : Time().Match(time) is { Success: true } match ? Minutes(match) : null;

    // Nobody works from 7:30 in the morning through the night to 4: on a clock of twelve hours a time that isn't after the one before it is
    // one of the afternoon. 07:30 and 16:00 are of a clock of twenty-four.
    private static decimal? After(decimal last, string text, bool twelve) => Noted(text) is { } minutes
        ? twelve && minutes < last && minutes + Noon > last && minutes + Noon < MinutesOfDay ? minutes + Noon : minutes
        : null;

    private static bool AreOfTwelve(params string[] times) => Array.TrueForAll(times, time => Time().Match(time.Trim()) is var match
        && !match.Groups["half"].Success && !match.Groups["day"].Success && match.Groups["h"].Value is not ['0', ..]
        && Whole(match, "h") <= 12);

    /// <summary>True where an end that is written as the earlier time of day is one of the afternoon: 7:30 to 4, 8-12, 1-5.</summary>
    public static bool PassesNoon(string span) => PassesNoon(Times(span));

    private static bool PassesNoon(string[] times) =>
        AreOfTwelve(times) && times.Zip(times.Skip(1)).Any(pair => Noted(pair.First) > Noted(pair.Second));

    /// <summary>The hours from a start to an end on one day.</summary>
    /// <param name="start">The start.</param>
    /// <param name="end">The end.</param>
    /// <param name="hours">The hours.</param>
    /// <returns>What is wrong, in words that go on after the column's name; null when nothing is.</returns>
    public static string? Between(string start, string end, out decimal hours)
    {
        hours = 0m;
        if (end.Trim().Length == 0 || start.Trim().Length == 0)
        {
            return "can't be worked out: the row has a start or an end, not both";
        }

        if (Noted(start) is not { } from || After(from, end, AreOfTwelve(start, end)) is not { } to)
        {
            return $"can't be worked out from \"{start}\" to \"{end}\": write both as 7:30 or 7:30 AM";
        }

        if (Days(start, end) > 1)
        {
            return $"can't be worked out: \"{start}\" and \"{end}\" are on two days; write a row for each day";
        }

        if (to <= from)
        {
            return $"can't be worked out: the end \"{end}\" is not after the start \"{start}\" (an afternoon is written 3:30 PM or 15:30; "
                + "work past midnight as two rows)";
        }

        hours = Hours(to - from);
        return null;
    }

    /// <summary>The hours of a list of times, in and out by turns: <c>06:28,12:00,12:30,15:02</c>, <c>7:30-12</c>,
    /// <c>8-12, 1-5</c>.</summary>
    /// <param name="text">The text.</param>
    /// <param name="hours">The hours.</param>
    /// <returns>What is wrong, in words that go on after the column's name; null when nothing is.</returns>
    public static string? Punches(string text, out decimal hours)
    {
        hours = 0m;
        string[] times = Times(text);
        if (times.Length < 2)
        {
            return $"is no list of times in and out: \"{text}\"";
        }

        if (times.Length % 2 != 0)
        {
            return $"has {times.Length} times, in and out by turns: one is missing in \"{text}\"";
        }

        if (Days(times) > 1)
        {
            return $"has times of several days: \"{text}\"; write a row for each day";
        }

        decimal minutes = 0m;
        decimal last = -1m;
        bool twelve = AreOfTwelve(times);
        for (int i = 0; i < times.Length; i++)
        {
            decimal now = After(last, times[i], twelve)!.Value;
            if (now <= last)
            {
                return $"has times that don't follow each other: \"{text}\"";
            }

            minutes += i % 2 == 1 ? now - last : 0m;
            last = now;
        }

        hours = Hours(minutes);
        return null;
    }

    /// <summary>True for a text that holds several times of day, whatever its column is for: one of them with its minutes, AM or
    /// PM.</summary>
    public static bool IsPunches(string text) => Array.Exists(Times(text), IsExact);

    /// <summary>True for times that can be nothing else: 3-4 may be three to four hours, 10-2 and 8-12, 1-5 may not.</summary>
    public static bool AreTimes(string text) => Times(text) is var times
        && (times.Length >= TwoSpans || Array.Exists(times, IsExact) || PassesNoon(times));

    /// <summary>The times of day of a text that holds several; between the ends of a span, 8-12, hours alone as well. Empty for any other:
    /// 7,5 and 1/2 are numbers.</summary>
    public static string[] Times(string text)
    {
        string[][] parts = [.. text.Split(BetweenPunches, Tidy).Select(Of)];
        return parts.Sum(part => part.Length) > 1 && Array.TrueForAll(parts, part => part.Length > 0) ? [.. parts.SelectMany(part => part)]
            : [];
    }

    private static string[] Of(string part)
    {
        string[] ends = part.Split(FromTo, Tidy);
        string[] words = part.Split(' ', Tidy);
        return IsExact(part) ? [part]
            : ends.Length > 1 && Array.TrueForAll(ends, time => Noted(time) is not null) ? ends
            : Array.TrueForAll(words, time => Minutes(time) is not null) ? words
            : [];
    }

    private static bool IsExact(string time) => Minutes(time) is not null
        || (Noted(time) is not null && (Time().Match(time.Trim()) is not { Success: true } match || match.Groups["half"].Success));

    /// <summary>The hours of a part of a day, as spreadsheets keep times: 0.3125 is 7.5.</summary>
    public static decimal OfDayPart(decimal days) => decimal.Round(days * MinutesOfDay * 60m) / 3600m;

    /// <summary>The hours of a number whose decimals are minutes: 7.30 is 7.5.</summary>
    /// <returns>What is wrong, in words that go on after the column's name; null when nothing is.</returns>
    public static string? OfHoursAndMinutes(decimal number, out decimal hours)
    {
        decimal whole = decimal.Truncate(number);
        decimal minutes = (number - whole) * 100m;
        hours = Hours((whole * 60m) + minutes);
        return minutes % 1m == 0m && Math.Abs(minutes) < 60m
            ? null
            : "can't be worked out: what stands behind its point is no minutes, 0 to 59";
    }

    private static int Days(params string[] times) => times.Select(time => Time().Match(time.Trim()).Groups["day"])
        .Where(day => day.Success).Select(day => day.Value).Distinct().Count();

    private static decimal Hours(decimal minutes) => decimal.Round(minutes / 60m, 10);

    private static int Whole(Match match, string group) =>
        match.Groups[group] is { Success: true } part ? int.Parse(part.ValueSpan, NumberStyles.None, CultureInfo.InvariantCulture) : 0;

    [GeneratedRegex(
        @"^((?<day>\S{6,10})[ T])?(?<h>[0-9]{1,2})(:(?<m>[0-5][0-9])(:(?<s>[0-5][0-9])(\.[0-9]+)?)?)?\s*((?<half>[ap])\.?m?\.?)?$",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant
    )]
    private static partial Regex Time();
}
