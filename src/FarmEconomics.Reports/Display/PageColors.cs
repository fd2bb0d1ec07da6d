namespace FarmEconomics.Reports.Display;

/// <summary>The colors a drawing may hold, each with the variable of the page that takes its place.</summary>
internal static class PageColors
{
    /// <summary>The page itself.</summary>
    internal const string Paper = "#fbfaf7";

    /// <summary>Its letters.</summary>
    internal const string Ink = "#1c1b19";

    /// <summary>Letters of captions.</summary>
    internal const string Soft = "#5d5a54";

    /// <summary>Each color with the variable of the page that takes its place.</summary>
    internal static IReadOnlyDictionary<string, string> Roles { get; } = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase)
    {
        ["#1c1b19"] = "ink",
        ["black"] = "ink",
        [Soft] = "soft",
        ["#ddd9d0"] = "line",
        ["#fbfaf7"] = "paper",
        ["white"] = "paper",
        ["#5f83b5"] = "bar",
        ["#8d8a83"] = "pale",
        ["#9a7d2e"] = "third",
        ["#f1eee7"] = "tint",
        ["#c8693f"] = "barloss",
        ["#a83a0e"] = "loss",
        ["#1d4f91"] = "gain",
        ["#d3dce9"] = "r1",
        ["#adc0da"] = "r2",
        ["#86a3ca"] = "r3",
        ["#5f84b6"] = "r4",
        ["#3b659e"] = "r5",
        ["#efd2c3"] = "l1",
        ["#dfa184"] = "l2",
        ["#c8693e"] = "l3",
    };
}
