using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Words;

/// <summary>Small change of sentences: lists, counts, numbers.</summary>
internal static class Phrase
{
    /// <summary>"a", "a and b", "a, b and c".</summary>
    internal static string List(IReadOnlyList<string> items) => items.Count switch
    {
        0 => "none",
        1 => items[0],
        _ => string.Join(", ", items.Take(items.Count - 1)) + " and " + items[^1],
    };

    /// <summary>"1 crop", "3 crops".</summary>
    internal static string Count(this Notation notation, int count, string one, string? many = null) =>
        notation.Text($"{count:#,0} {(count == 1 ? one : many ?? one + "s")}");

    /// <summary>The noun behind a number as it is written: "1 hour", "1.5 hours", "0 hours".</summary>
    internal static string Noun(string number, string one) => number == "1" ? one : one + "s";

    /// <summary>Small counts as words, as a sentence has them.</summary>
    internal static string Spelled(int count) => count switch
    {
        1 => "one",
        2 => "two",
        3 => "three",
        4 => "four",
        5 => "five",
        6 => "six",
        7 => "seven",
        8 => "eight",
        9 => "nine",
        _ => $"{count}",
    };

    /// <summary>"one crop", "three crops", "12 crops".</summary>
    internal static string Spelled(int count, string one) => $"{Spelled(count)} {one}{(count == 1 ? "" : "s")}";

    /// <summary>"both", "all three": every one of two or more.</summary>
    internal static string AllOf(int count) => count == 2 ? "both" : $"all {Spelled(count)}";

    /// <summary>The first letter large.</summary>
    internal static string Sentence(string text) => text.Length == 0 ? text : char.ToUpperInvariant(text[0]) + text[1..];

    /// <summary>A name from the records, safe in Markdown, in bold.</summary>
    internal static string Bold(string name) => $"**{Prose.Text(name)}**";

    /// <summary>A farm's name within a sentence; one that has none yet is "the farm".</summary>
    internal static string Farm(string name) => name == FarmSettings.Unnamed ? InSentence(name) : Bold(name);

    /// <summary>A crop's or a farm's name within a sentence of plain text.</summary>
    internal static string InSentence(string name) => name == FarmSettings.Unnamed ? "the farm" : name;

    /// <summary>Names in bold, each with what is said of it: <c>**Carrots** ($120) and **Kale** ($80)</c>.</summary>
    internal static string List<T>(IEnumerable<T> items, Func<T, string> name, Func<T, string> said) =>
        List([.. items.Select(item => $"{Bold(name(item))} ({said(item)})")]);

    /// <summary>A rate in words, or "not available (why)".</summary>
    internal static string Of(Result rate, Notation notation) =>
        rate.Value is { } value ? notation.InWords(value, Look.Rate) : $"not available ({rate.Reason})";

    /// <summary>A share in whole percent.</summary>
    internal static string Percent(decimal share) => $"{decimal.Round(share * 100m, 0, MidpointRounding.AwayFromZero):0}%";
}
