using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing.Sources;

/// <summary>Units as people write them.</summary>
internal static class UnitNames
{
    /// <summary>The names. Common practice, no source.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "lb", "lbs", "pound", "pounds", "oz", "ounce", "ounces", "kg", "g", "each", "ea", "bunch", "bunches", "bag", "bags", "head",
        "heads", "pint", "pints", "quart", "quarts", "half-pint", "clamshell", "clamshells", "box", "boxes", "case", "cases", "flat",
        "flats", "dozen", "doz", "bulb", "bulbs", "stem", "stems", "bouquet", "bouquets", "basket", "baskets", "jar", "jars", "tray",
        "trays", "bundle", "bundles", "bu", "bushel", "bushels", "crate", "crates",
    ];

    // Words for one unit, the shortest first. Common practice, no source.
    private static readonly string[][] Same =
    [
        ["lb", "lbs", "pound", "pounds"], ["oz", "ounce", "ounces"], ["kg", "kilo", "kilos", "kilogram", "kilograms"],
        ["g", "gram", "grams"], ["each", "ea"], ["bunch", "bunches"], ["dozen", "doz", "dz"], ["bu", "bushel", "bushels"],
    ];

    /// <summary>The units of the records.</summary>
    public static string[] OnRecord(RecordTables? records) =>
        [.. (records?.Crops.Select(row => row.Unit.Trim()) ?? []).Concat(records?.Units.Select(row => row.Unit.Trim()) ?? [])
            .Distinct(StringComparer.OrdinalIgnoreCase)];

    /// <summary>A unit as the records write it: "bunch" where they count in "bunches"; itself where they don't know it.</summary>
    public static string AsKnown(string unit, IReadOnlyCollection<string> known)
    {
        string[] words = Array.Find(Same, group => group.Contains(unit, StringComparer.OrdinalIgnoreCase))
            ?? [unit + "s", unit.TrimEnd('s')];
        return known.Contains(unit, StringComparer.OrdinalIgnoreCase) ? unit
            : known.FirstOrDefault(name => words.Contains(name, StringComparer.OrdinalIgnoreCase)) ?? unit;
    }

    /// <summary>One of a unit: "bunch" of "bunches"; itself where that isn't known.</summary>
    public static string One(string unit)
    {
        string one = unit.TrimEnd('s', 'S');
        string[] singular = [one.TrimEnd('e', 'E'), one];
        return singular.FirstOrDefault(IsOne) ?? unit;
    }

    /// <summary>True for one of them, in any case.</summary>
    public static bool IsOne(string text) => All.Contains(text, StringComparer.OrdinalIgnoreCase);
}
