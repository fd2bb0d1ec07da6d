namespace FarmEconomics.DemoFarm;

/// <summary>The units crops are sold in beside their own: bags and bunches at the stall, cases and sacks to shop and kitchen.</summary>
internal static class SellingUnits
{
    /// <summary>Another unit of a crop and how many of the crop's own units it holds.</summary>
    public sealed record Pack(string Crop, string Unit, decimal Size, bool Wholesale);

    public static readonly IReadOnlyList<Pack> All =
    [
        new("Salad mix", "bag", 0.3125m, false),
        new("Salad mix", "case", 3m, true),
        new("Spinach", "bag", 0.3125m, false),
        new("Spinach", "case", 3m, true),
        new("Arugula", "bag", 0.25m, false),
        new("Head lettuce", "case", 12m, true),
        new("Kale", "case", 24m, true),
        new("Pea shoots", "clamshell", 0.25m, false),
        new("Micro mix", "clamshell", 0.125m, false),
        new("Carrots", "bag", 2m, false),
        new("Carrots", "sack", 25m, true),
        new("Beets", "sack", 25m, true),
        new("Onions", "sack", 25m, true),
        new("Potatoes", "bag", 5m, false),
        new("Potatoes", "sack", 50m, true),
        new("Tomatoes", "flat", 20m, true),
        new("Cherry tomatoes", "flat", 12m, true),
        new("Garlic", "bag", 0.5m, false),
        new("Winter squash", "crate", 40m, true),
        new("Cabbage", "crate", 40m, true),
        new("Radish", "case", 24m, true),
    ];

    public static Pack? For(string crop, bool wholesale) => All.FirstOrDefault(p => p.Crop == crop && p.Wholesale == wholesale);
}
