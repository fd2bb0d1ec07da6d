using System.Globalization;
using System.Text.RegularExpressions;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Files.Importing.Sources;

/// <summary>Finds the form in which a file writes its days. A file keeps to one form; where two fit, both are told and neither is
/// taken.</summary>
internal static partial class DateForms
{
    /// <summary>The form of ISO 8601, which needs no word.</summary>
    public const string Iso = "YYYY-MM-DD";

    private static readonly string[] Forms =
    [
        "M/D/YYYY", "D/M/YYYY", "M/D/YY", "D/M/YY", "M-D-YYYY", "D-M-YYYY", "M-D-YY", "D-M-YY", "M.D.YYYY", "D.M.YYYY", "M.D.YY", "D.M.YY",
        "YYYY/M/D", "YYYY.M.D", "YYYYMMDD",
        "D MMM YYYY", "D MMM YY", "D-MMM-YYYY", "D-MMM-YY", "D/MMM/YYYY", "D.MMM.YYYY", "MMM D, YYYY", "MMM D YYYY", "MMM D, YY",
            "MMM-D-YYYY", "D MMMM YYYY", "MMMM D, YYYY", "MMMM D YYYY",
    ];

    private static readonly (string Form, string Net)[] Known = [.. Forms.Select(form => (form, DateText.NormalizeFormat(form)!))];

    /// <summary>The forms that read most of the texts; several when they read the same ones.</summary>
    /// <param name="texts">The texts of a column; blanks are passed over.</param>
    /// <param name="read">How many of them the forms read.</param>
    public static IReadOnlyList<string> Of(IReadOnlyCollection<string> texts, out int read)
    {
        string[] days = [.. texts.Select(Day).Where(text => text.Length > 0)];
        int iso = days.Count(text => DateText.TryRead(text, null, out _));
        List<string> best = iso > 0 ? [Iso] : [];
        read = iso;
        foreach ((string form, string net) in Known)
        {
            int fits = days.Count(text => DateText.TryRead(text, net, out DateOnly day) && day.Year is >= 1990 and <= 2099);
            if (fits > read)
            {
                (best, read) = ([form], fits);
            }
            else if (fits == read && fits > 0)
            {
                best.Add(form);
            }
        }

        return best;
    }

    /// <summary>Reads a day written in a form.</summary>
    public static bool TryRead(string text, string? form, out DateOnly day) => DateText.TryRead(Day(text), form is null or Iso ? null
        : DateText.NormalizeFormat(form), out day);

    /// <summary>True for a text that is a day in any form known here.</summary>
    public static bool IsDay(string text)
    {
        string day = Day(text);
        return day.Length is >= 6 and <= 24 && char.IsLetterOrDigit(day[0]) && day.Any(char.IsAsciiDigit)
            && (DateText.TryRead(day, null, out _) || Known.Any(form => (form.Form != "YYYYMMDD" || day.Length == 8)
                && DateText.TryRead(day, form.Net, out DateOnly read) && read.Year is >= 1990 and <= 2099));
    }

    /// <summary>The day of a text without a time of day behind it, or a day of the week before it.</summary>
    public static string Day(string text) => WeekDay().Replace(Clock().Replace(text.Trim(), ""), "").Trim();

    /// <summary>How a day is read by a form, as an example: 6/3/2025 is Jun 3, 2025.</summary>
    public static string Example(string text, string form) =>
        TryRead(text, form, out DateOnly day) ? day.ToString("MMM d, yyyy", CultureInfo.InvariantCulture) : text;

    [GeneratedRegex(@"(?<=\d)([ T,]+)\d{1,2}:\d{2}.*$", RegexOptions.CultureInvariant)]
    private static partial Regex Clock();

    [GeneratedRegex(
        @"^(mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun)[a-z]*[.,]?\s+",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase
    )]
    private static partial Regex WeekDay();
}
