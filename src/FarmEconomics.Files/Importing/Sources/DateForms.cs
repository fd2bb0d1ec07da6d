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

    private const int FewYears = 2;
    private const int ManyYears = 5;
    private const int HalfAYear = 183;

    private static readonly string[] Forms =
    [
        "M/D/YYYY", "D/M/YYYY", "M/D/YY", "D/M/YY", "M-D-YYYY", "D-M-YYYY", "M-D-YY", "D-M-YY", "M.D.YYYY", "D.M.YYYY", "M.D.YY", "D.M.YY",
        "YYYY/M/D", "YYYY.M.D", "YYYYMMDD", "YY-M-D",
        "D MMM YYYY", "D MMM YY", "D-MMM-YYYY", "D-MMM-YY", "D/MMM/YYYY", "D.MMM.YYYY", "MMM D, YYYY", "MMM D YYYY", "MMM D, YY",
            "MMM-D-YYYY", "D MMMM YYYY", "MMMM D, YYYY", "MMMM D YYYY",
    ];

    // Of days without a year, which stands behind the form then: M/D 2025.
    private static readonly string[] Yearless =
        ["M/D", "D/M", "M-D", "D-M", "M.D", "D.M", "D MMM", "D-MMM", "MMM D", "MMM-D", "D MMMM", "MMMM D"];

    private static readonly (string Form, string Net)[] Known = [.. Forms.Select(form => (form, DateText.NormalizeFormat(form)!))];

    /// <summary>The forms that read most of the texts; several when they read the same ones.</summary>
    /// <param name="texts">The texts of a column; blanks are passed over.</param>
    /// <param name="read">How many of them the forms read.</param>
    /// <param name="year">The year of days that say none; null: not known.</param>
    public static IReadOnlyList<string> Of(IReadOnlyCollection<string> texts, out int read, int? year = null)
    {
        string[] days = [.. texts.Select(Day).Where(text => text.Length > 0)];
        int iso = days.Count(text => DateText.TryRead(text, null, out _));
        List<string> best = iso > 0 ? [Iso] : [];
        read = iso;
        foreach (string form in year is null ? Forms : [.. Forms, .. Yearless.Select(form => $"{form} {year}")])
        {
            (string? net, string behind) = DateText.FormOf(form);
            int fits = days.Count(text => DateText.TryRead(text + behind, net, out DateOnly day) && day.Year is >= 1990 and <= 2099);
            if (fits > read)
            {
                (best, read) = ([form], fits);
            }
            else if (fits == read && fits > 0)
            {
                best.Add(form);
            }
        }

        if (read == 0 && days.Count(text => TryReadSerial(text, out _)) is > 0 and var counted)
        {
            (best, read) = ([ImportWords.Serial], counted);
        }

        return Likely(best, days);
    }

    // 25-06-03 in June 2025 would be days of thirty years, read the other way: a file holds a few years.
    private static List<string> Likely(List<string> forms, string[] days)
    {
        (string Form, int Years)[] spans = [.. forms.Select(form => (form, Years(form)))];
        return spans.Any(span => span.Years <= FewYears)
            ? [.. spans.Where(span => span.Years <= ManyYears).Select(span => span.Form)] : forms;

        int Years(string form)
        {
            List<int> years = [];
            foreach (string text in days)
            {
                if (TryRead(text, form, out DateOnly day))
                {
                    years.Add(day.Year);
                }
            }

            return years.Max() - years.Min();
        }
    }

    /// <summary>True for a word of a format that says how days are written.</summary>
    public static bool IsForm(string word) => word.Equals(ImportWords.Serial, StringComparison.OrdinalIgnoreCase)
        || DateText.FormOf(word).Format is not null;

    /// <summary>Reads a day as spreadsheets count them: 45811 is June 3, 2025. Only the days of 2000 to 2049 are taken.</summary>
    private static bool TryReadSerial(string text, out DateOnly day)
    {
        day = default;
        if (text.Length != 5 || !int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int days)
            || days is < 36526 or > 54788)
        {
            return false;
        }

        day = new DateOnly(1899, 12, 30).AddDays(days);
        return true;
    }

    /// <summary>Reads a day written in a form.</summary>
    public static bool TryRead(string text, string? form, out DateOnly day)
    {
        if (form is not null && form.Equals(ImportWords.Serial, StringComparison.OrdinalIgnoreCase))
        {
            return TryReadSerial(Day(text), out day);
        }

        (string? format, string behind) = form is null or Iso ? (null, "") : DateText.FormOf(form);
        return DateText.TryRead(Day(text) + behind, format, out day);
    }

    /// <summary>True for a form that brings the year of its days along: M/D 2025.</summary>
    public static bool BringsTheYear(string form) => DateText.FormOf(form).Behind.Length > 0;

    /// <summary>True where days that say no year turn back once, from December to January: they are of two years, and the one the form
    /// brings along is only that of some.</summary>
    public static bool RunOverNewYear(IEnumerable<string> texts, string form)
    {
        if (!BringsTheYear(form))
        {
            return false;
        }

        List<int> steps = [];
        int? last = null;
        foreach (string text in texts)
        {
            if (TryRead(text, form, out DateOnly day))
            {
                steps.Add(day.DayNumber - (last ?? day.DayNumber));
                last = day.DayNumber;
            }
        }

        // A list with the newest day first turns the other way.
        int way = steps.Where(step => Math.Abs(step) <= HalfAYear).Sum() < 0 ? -1 : 1;
        return steps.Count(step => step * way < -HalfAYear) == 1;
    }

    /// <summary>True for a text that is a day in any form known here.</summary>
    public static bool IsDay(string text)
    {
        string day = Day(text);
        return day.Length is >= 6 and <= 24 && char.IsLetterOrDigit(day[0]) && day.Any(char.IsAsciiDigit)
            && (DateText.TryRead(day, null, out _) || Known.Any(form => (form.Form != "YYYYMMDD" || day.Length == 8)
                && DateText.TryRead(day, form.Net, out DateOnly read) && read.Year is >= 1990 and <= 2099));
    }

    /// <summary>True for a text that is a day of a year without saying it.</summary>
    public static bool IsDayOf(int year, string text) =>
        LacksAYear(text) && Array.Exists(Yearless, form => TryRead(text, $"{form} {year}", out _));

    /// <summary>True for what may be a day but says no year, or a week by its number: 6/2, 2-Jun, June 2, Week 23.</summary>
    public static bool LacksAYear(string text) => WithoutYear().IsMatch(Day(text));

    /// <summary>The day of a text without a time of day behind it, or a day of the week before it.</summary>
    public static string Day(string text) => WeekDay().Replace(Clock().Replace(text.Trim(), ""), "").Trim();

    /// <summary>How a day is read by a form, as an example: 6/3/2025 is Jun 3, 2025.</summary>
    public static string Example(string text, string form) =>
        TryRead(text, form, out DateOnly day) ? day.ToString("MMM d, yyyy", CultureInfo.InvariantCulture) : text;

    [GeneratedRegex(
        @"^(\d{1,2}[/.-]\d{1,2}|\d{1,2}[ .-]+(?<m>jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*"
            + @"|(?<m>jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[ .-]+\d{1,2}|(week|wk)\b.{0,3}\d{1,2})$",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex WithoutYear();

    [GeneratedRegex(@"(?<=\d)([ T,]+)\d{1,2}:\d{2}.*$", RegexOptions.CultureInvariant)]
    private static partial Regex Clock();

    [GeneratedRegex(
        @"^(mon|tue|tues|wed|thu|thur|thurs|fri|sat|sun)[a-z]*[.,]?\s+",
        RegexOptions.CultureInvariant | RegexOptions.IgnoreCase
    )]
    private static partial Regex WeekDay();
}
