namespace FarmEconomics.ProvingGround.World;

/// <summary>The kinds of crop. Invented; a world multiplies each figure by a drawn factor of its own.</summary>
internal static class CropKinds
{
    internal static readonly CropKind[] All =
    [
        new("Salad mix", false, new(8.0, 0.74), new(5, 2, 13, 35, 1), new(0.020, 0.085, 0.060), new(0.22, 0.10, 0.12)),
        new("Spinach", false, new(8.0, 0.68), new(6, 3, 12, 34, 1), new(0.020, 0.110, 0.050), new(0.15, 0.10, 0.12)),
        new("Lettuce heads", false, new(2.5, 2.4), new(6, 2, 14, 34, 1), new(0.025, 0.014, 0.014), new(0.30, 0.10, 0.04)),
        new("Kale", false, new(3.0, 3.5), new(7, 12, 14, 28, 1), new(0.040, 0.022, 0.012), new(0.20, 0.12, 0.03)),
        new("Chard", false, new(3.0, 3.2), new(7, 12, 15, 28, 1), new(0.040, 0.024, 0.012), new(0.15, 0.12, 0.03)),
        new("Radishes", false, new(2.5, 3.2), new(4, 2, 13, 35, 2), new(0.018, 0.020, 0.014), new(0.10, 0.08, 0.03)),
        new("Salad turnips", false, new(3.0, 2.7), new(6, 2, 14, 34, 2), new(0.020, 0.022, 0.014), new(0.10, 0.08, 0.03)),
        new("Beets", false, new(2.8, 2.6), new(9, 4, 15, 28, 10), new(0.035, 0.020, 0.015), new(0.12, 0.10, 0.03)),
        new("Carrots", false, new(3.0, 3.0), new(10, 4, 15, 28, 14), new(0.055, 0.018, 0.016), new(0.12, 0.10, 0.03)),
        new("Scallions", false, new(2.5, 3.0), new(9, 3, 15, 28, 2), new(0.045, 0.020, 0.016), new(0.18, 0.08, 0.03)),
        new("Peas", false, new(6.0, 1.0), new(9, 3, 13, 20, 1), new(0.050, 0.120, 0.010), new(0.30, 0.15, 0.10)),
        new("Bush beans", false, new(5.0, 1.1), new(8, 3, 19, 29, 1), new(0.030, 0.090, 0.010), new(0.18, 0.08, 0.10)),
        new("Zucchini", false, new(2.0, 6.8), new(7, 8, 20, 28, 1), new(0.030, 0.011, 0.006), new(0.15, 0.18, 0.02)),
        new("Winter squash", false, new(1.6, 4.1), new(13, 2, 20, 24, 18), new(0.030, 0.008, 0.005), new(0.12, 0.15, 0.01)),
        new("Broccoli", false, new(3.5, 1.4), new(9, 3, 15, 28, 1), new(0.040, 0.020, 0.014), new(0.35, 0.18, 0.04)),
        new("Cabbage", false, new(1.5, 3.8), new(11, 4, 15, 26, 12), new(0.035, 0.007, 0.006), new(0.25, 0.15, 0.02)),
        new("Potatoes", false, new(2.2, 2.7), new(14, 4, 16, 22, 20), new(0.045, 0.014, 0.008), new(0.40, 0.10, 0.02)),
        new("Onions", false, new(2.0, 3.2), new(15, 3, 15, 19, 20), new(0.065, 0.011, 0.007), new(0.40, 0.10, 0.02)),
        new("Garlic", false, new(9.0, 0.74), new(18, 2, 10, 12, 24), new(0.060, 0.050, 0.030), new(1.10, 0.12, 0.05)),
        new("Leeks", false, new(3.0, 2.0), new(17, 6, 16, 20, 3), new(0.065, 0.022, 0.018), new(0.30, 0.10, 0.03)),
        new("Celeriac", false, new(2.5, 1.6), new(18, 4, 17, 20, 14), new(0.060, 0.016, 0.016), new(0.35, 0.12, 0.02)),
        new("Sweet corn", false, new(0.9, 3.0), new(11, 2, 18, 26, 1), new(0.020, 0.006, 0.003), new(0.15, 0.12, 0.00)),
        new("Cilantro", false, new(2.5, 3.0), new(6, 2, 14, 33, 1), new(0.020, 0.022, 0.014), new(0.12, 0.08, 0.03)),
        new("Melons", false, new(1.6, 3.5), new(12, 4, 21, 24, 1), new(0.045, 0.009, 0.006), new(0.30, 0.25, 0.02)),
        new("Tomatoes", true, new(4.5, 6.8), new(9, 11, 15, 20, 1), new(0.160, 0.024, 0.014), new(0.60, 0.45, 0.05)),
        new("Cherry tomatoes", true, new(6.0, 4.3), new(9, 11, 15, 20, 1), new(0.170, 0.060, 0.012), new(0.60, 0.45, 0.12)),
        new("Cucumbers", true, new(2.5, 8.1), new(7, 9, 15, 26, 1), new(0.120, 0.012, 0.006), new(0.50, 0.35, 0.02)),
        new("Peppers", true, new(4.5, 2.6), new(12, 10, 16, 20, 2), new(0.080, 0.026, 0.012), new(0.55, 0.40, 0.05)),
        new("Basil", true, new(3.0, 4.3), new(6, 8, 16, 26, 1), new(0.045, 0.028, 0.016), new(0.25, 0.15, 0.04)),
        new("Winter greens", true, new(9.0, 0.74), new(6, 4, 30, 38, 1), new(0.022, 0.100, 0.060), new(0.22, 0.12, 0.12)),
    ];
}
