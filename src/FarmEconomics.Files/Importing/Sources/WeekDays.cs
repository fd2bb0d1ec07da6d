namespace FarmEconomics.Files.Importing.Sources;

/// <summary>Names of days of the week, as headings of a time sheet have them.</summary>
internal static class WeekDays
{
    // From Sunday on, as the calendar counts them.
    private static readonly string[] Names = ["sunday", "monday", "tuesday", "wednesday", "thursday", "friday", "saturday"];

    /// <summary>The day a heading names: Mon, Tues., Wednesday; null for none.</summary>
    public static DayOfWeek? Of(string heading)
    {
        string plain = HeadingWords.Plain(heading);
        int at = plain.Length < 3 ? -1 : Array.FindIndex(Names, name => name.StartsWith(plain, StringComparison.Ordinal));
        return at < 0 ? null : (DayOfWeek)at;
    }
}
