using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Words;

/// <summary>Units of crops in sentences: "1 bunch", "349 bunches", "12 lb".</summary>
internal static class UnitWords
{
    // Abbreviations and words that are the same for one and for many.
    private static readonly HashSet<string> Same = new(StringComparer.OrdinalIgnoreCase)
    {
        "lb",
        "lbs",
        "oz",
        "kg",
        "g",
        "pt",
        "qt",
        "gal",
        "bu",
        "doz",
        "dozen",
        "each",
        "ea",
    };

    /// <summary>A quantity with its unit.</summary>
    internal static string Of(decimal quantity, string unit, Notation notation) =>
        $"{notation.Number(quantity, Look.Quantity)} {(quantity == 1m ? unit : Many(unit))}";

    /// <summary>What a price is per: "a bunch", "an oz"; "each" needs no word before it.</summary>
    internal static string Per(string unit) =>
        unit.Equals("each", StringComparison.OrdinalIgnoreCase) || unit.Equals("ea", StringComparison.OrdinalIgnoreCase) ? unit
        : unit.Length > 0 && "aeioAEIO".Contains(unit[0]) ? $"an {unit}"
        : $"a {unit}";

    /// <summary>The unit of many.</summary>
    internal static string Many(string unit) =>
        unit.Length == 0 || Same.Contains(unit) || unit.EndsWith('.') || !char.IsAsciiLetterLower(unit[^1]) || unit.EndsWith('s') ? unit
        : unit.EndsWith("ch", StringComparison.Ordinal) || unit.EndsWith("sh", StringComparison.Ordinal) || unit.EndsWith('x') ? unit + "es"
        : unit + "s";
}
