using System.Text.RegularExpressions;

namespace FarmEconomics.Reports.Display;

/// <summary>Text whose lines never end between a minus and the sign of the money behind it.</summary>
internal static partial class Unbroken
{
    /// <summary>The text with the two held together.</summary>
    internal static string Of(string text) => BeforeMoney().Replace(text, "\u2212\u2060");

    [GeneratedRegex(@"\u2212(?=\p{Sc})")]
    private static partial Regex BeforeMoney();
}
