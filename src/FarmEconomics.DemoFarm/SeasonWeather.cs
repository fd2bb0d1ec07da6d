namespace FarmEconomics.DemoFarm;

/// <summary>What the three seasons were like: a late wet one with blight, a kind one, and one with a dry late summer.</summary>
internal static class SeasonWeather
{
    /// <summary>Days the field season runs behind the plan.</summary>
    public static int FieldDelay(int year) => year switch { 2023 => 3, 2024 => -2, 2025 => 1, _ => 0 };

    /// <summary>How a crop did in a year against a fair season.</summary>
    public static decimal Factor(int year, CropSpec crop) => (year, crop.Name) switch
    {
        (2023, "Potatoes") => 0.42m,        // late blight in August
        (2023, "Tomatoes") => 0.92m,        // the same blight, kept back by the tunnels
        (2023, "Winter squash") => 0.93m,
        (2024, "Snap peas") => 1.15m,
        (2024, "Head lettuce") => 0.90m,    // hail on the fourth of July
        (2024, "Cabbage") => 0.82m,
        (2024, "Potatoes") => 1.08m,
        (2025, "Broccoli") => 0.74m,        // dry and hot in August
        (2025, "Melons") => 0.80m,
        (2025, "Celeriac") => 0.80m,
        (2025, "Onions") => 0.95m,
        (2025, "Tomatoes") => 1.06m,
        (2023, _) => 1m,
        (2024, _) => 1.02m,
        _ => 1m,
    };

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
