using System.Text.RegularExpressions;

namespace FarmEconomics.Reports.Display;

/// <summary>The minus sign of typography, as wide as a figure, in texts whose numbers were written elsewhere.</summary>
internal static partial class TrueMinus
{
    /// <summary>The sign.</summary>
    internal const char Sign = '\u2212';

    /// <summary>The text with the sign before each number below zero; hyphens in names, days and ranges stay.</summary>
    internal static string In(string text) => Below().Replace(text, $"{Sign}");

    [GeneratedRegex(@"(?<=^|[\s(])-(?=\p{Sc}?\d)")]
    private static partial Regex Below();
}
