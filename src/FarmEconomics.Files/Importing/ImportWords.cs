namespace FarmEconomics.Files.Importing;

/// <summary>The words a mapping's <c>format</c> and <c>source_column</c> may hold beside a date form and a heading.</summary>
internal static class ImportWords
{
    /// <summary>As a source column: the heading of the column a value stands under, in a wide table.</summary>
    public const string Heading = "(heading)";

    /// <summary>As a source column: the value itself, in a wide table.</summary>
    public const string Cell = "(cell)";

    /// <summary>As a source column: what stands above the headings; with a word behind it, what stands there after that word.</summary>
    public const string Above = "(above)";

    public const string Negative = "negative";

    /// <summary>Money paid stands below 0, and rows above 0 are no expenses: they are left out.</summary>
    public const string PaidBelow = "paid-below";

    /// <summary>Money paid stands above 0; what is below came back.</summary>
    public const string PaidAbove = "paid-above";

    public const string Absolute = "absolute";
    public const string DecimalComma = "decimal-comma";
    public const string Round = "round";
    public const string Quantity = "quantity";
    public const string Unit = "unit";
    public const string InParentheses = "in-parentheses";
    public const string BeforeParentheses = "before-parentheses";
    public const string Punches = "punches";
    public const string DayPart = "day-part";
    public const string HoursMinutes = "hours-minutes";
    public const string Serial = "serial";
    public const string SameAsAbove = "same-as-above";
    public const string Until = "until:";
    public const string Less = "less:";
    public const string Plus = "plus:";
    public const string PlusDays = "plus-days:";
    public const string LessDays = "less-days:";
    public const string Weekday = "weekday";

    /// <summary>True for a source column that is no heading.</summary>
    public static bool IsSpecial(string? source) => source is not null && (Is(source, Heading) || Is(source, Cell));

    /// <summary>The word a text above the headings is known by, blank for one that stands alone; null where the source column is
    /// another.</summary>
    public static string? LabelAbove(string source) =>
        source.Trim().StartsWith(Above, StringComparison.OrdinalIgnoreCase) ? source.Trim()[Above.Length..].Trim() : null;

    public static bool Is(string text, string word) => text.Trim().Equals(word, StringComparison.OrdinalIgnoreCase);

    /// <summary>The words of a format.</summary>
    public static string[] Of(string? format) =>
        (format ?? "").Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    public static bool Has(string[] words, string word) => words.Contains(word, StringComparer.OrdinalIgnoreCase);

    /// <summary>What follows each word that begins so.</summary>
    public static IEnumerable<string> AllAfter(string[] words, string word) =>
        words.Where(known => known.StartsWith(word, StringComparison.OrdinalIgnoreCase)).Select(known => known[word.Length..].Trim());

    /// <summary>What follows a word such as <c>until:</c>; null without it.</summary>
    public static string? After(string[] words, string word) =>
        Array.Find(words, known => known.StartsWith(word, StringComparison.OrdinalIgnoreCase)) is { } found ? found[word.Length..].Trim()
            : null;
}
