namespace FarmEconomics.Files.Importing.Sources;

/// <summary>Units as people write them.</summary>
internal static class UnitNames
{
    /// <summary>The names. Common practice, no source.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "lb", "lbs", "pound", "oz", "kg", "g", "each", "ea", "bunch", "bunches", "bag", "bags", "head", "heads", "pint", "pints", "quart",
        "quarts", "half-pint", "clamshell", "box", "boxes", "case", "flat", "dozen", "doz", "bulb", "stem", "bouquet", "basket", "jar",
        "tray", "bundle", "bu", "bushel", "bushels", "crate", "crates",
    ];

    /// <summary>True for one of them, in any case.</summary>
    public static bool IsOne(string text) => All.Contains(text, StringComparer.OrdinalIgnoreCase);
}
