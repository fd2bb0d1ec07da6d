namespace FarmEconomics.DemoFarm;

/// <summary>
/// What the three seasons were like: a cold wet spring that rotted the seed potatoes, a kind one with hail, and one with a dry, hot late
/// summer.
/// </summary>
internal static class SeasonWeather
{
    /// <summary>Days the field season runs behind the plan.</summary>
    public static int FieldDelay(int year) => year switch { 2023 => 3, 2024 => -2, 2025 => 1, _ => 0 };

    /// <summary>How a crop did in a year against a fair season.</summary>
    public static decimal Factor(int year, CropSpec crop) => (year, crop.Name) switch
    {
        (2023, "Potatoes") => 0.72m,        // seed rotted in a cold wet May, frost took the tops in August
        (2023, "Tomatoes") => 0.92m,        // a dull June, even under the tunnels
        (2023, "Winter squash") => 0.93m,
        (2024, "Snap peas") => 1.15m,
        (2024, "Head lettuce") => 0.90m,    // hail in the third week of June
        (2024, "Cabbage") => 0.82m,
        (2024, "Potatoes") => 1.08m,
        (2025, "Broccoli") => 0.74m,        // dry and hot in August
        (2025, "Melons") => 0.80m,
        (2025, "Celeriac") => 0.80m,
        (2025, "Onions") => 0.95m,
        (2025, "Tomatoes") => 1.06m,
        (2023, _) => 1.035m,
        (2024, _) => 1m,
        _ => 0.99m,
    };

    /// <summary>Market days lost to the weather, though they stood in the calendar.</summary>
    private static readonly HashSet<DateOnly> Lost =
    [
        new(2023, 5, 13),   // wet snow
        new(2023, 8, 10),   // a thunderstorm over the depot
        new(2024, 1, 20),   // roads drifted shut
        new(2024, 6, 22),   // hail
        new(2024, 7, 18),   // lightning
        new(2025, 5, 24),   // wind that no canopy stands
        new(2025, 7, 31),   // a thunderstorm
        new(2025, 10, 4),   // the first snow
    ];

    /// <summary>True where the market of that day was called off.</summary>
    public static bool MarketLost(DateOnly day) => Lost.Contains(day);

    /// <summary>Culled in the field, as a part of what was picked.</summary>
    public static decimal Culls(int year, CropSpec crop) => (year, crop.Name) switch
    {
        (2023, "Potatoes") => 0.30m,
        (2025, "Broccoli") => 0.22m,
        (2024, "Cabbage") => 0.15m,
        (_, "Tomatoes") => 0.08m,
        (_, "Melons") => 0.15m,
        (_, "Carrots") => 0.08m,
        (_, "Zucchini") => 0.07m,
        _ => 0.03m,
    };
}
