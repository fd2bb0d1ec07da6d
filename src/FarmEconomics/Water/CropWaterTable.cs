namespace FarmEconomics.Water;

/// <summary>
/// Published figures of crops, and the words growers call them by.
/// Kc: FAO-56, Table 12 (pp. 110-112; the middle of a printed range). Root depth: Table 22 (pp. 163-165), the smaller figure, which the
/// paper gives for timing irrigation (from memory of its footnote). Depletion p: Table 22.
/// Stages: Table 11 (pp. 104-107), the row planted in spring in the mildest climate (peas: Europe's); where a crop has none, that of its
/// nearest.
/// Ky: Table 24 (p. 181), which repeats FAO Irrigation and Drainage Paper 33; a crop without one takes that of a crop of its family, else
/// 1, both of which FAO-56 allows (p. 177).
/// </summary>
public static class CropWaterTable
{
    private static readonly Ky None = new(1, WaterFigure.NotListed);
    private static readonly Ky LikeCabbage = new(0.95, WaterFigure.Similar);
    private static readonly Ky LikeOnion = new(1.1, WaterFigure.Similar);
    private static readonly Ky LikePepper = new(1.1, WaterFigure.Similar);
    private static readonly Ky LikeWatermelon = new(1.1, WaterFigure.Similar);
    private static readonly Ky LikeBeet = new(1.0, WaterFigure.Similar);

    private static readonly StageDays Crucifers = new(20, 30, 20, 10);
    private static readonly StageDays Leaves = new(20, 30, 15, 10);
    private static readonly StageDays Squashes = new(25, 35, 25, 15);
    private static readonly StageDays Roots = new(30, 40, 60, 20);
    private static readonly StageDays Bulbs = new(15, 25, 70, 40);

    private static readonly CropWater Unlisted = Row(null, new(0.70, 1.05, 0.95), Leaves, 0.30, 0.30, None);

    // Longer words first where one holds the other: sweet potato is no potato.
    private static readonly (string[] Words, CropWater Row)[] Rows =
    [
        (["sweet potato"], Row("sweet potato", new(0.50, 1.15, 0.65), new(20, 30, 60, 40), 1.0, 0.65, None)),
        (["sweet corn", "corn", "maize"], Row("sweet corn", new(0.30, 1.15, 1.05), new(20, 25, 25, 10), 0.8, 0.50, new Ky(1.25))),
        (["brussels"], Row("Brussels sprouts", new(0.70, 1.05, 0.95), Crucifers, 0.4, 0.45, LikeCabbage)),
        (["broccoli"], Row("broccoli", new(0.70, 1.05, 0.95), Crucifers, 0.4, 0.45, LikeCabbage)),
        (["cauliflower"], Row("cauliflower", new(0.70, 1.05, 0.95), Crucifers, 0.4, 0.45, LikeCabbage)),
        (["cabbage"], Row("cabbage", new(0.70, 1.05, 0.95), Crucifers, 0.5, 0.45, new Ky(0.95))),
        (["carrot"], Row("carrot", new(0.70, 1.05, 0.95), Roots, 0.5, 0.35, None)),
        (["celery", "celeriac"], Row("celery", new(0.70, 1.05, 1.00), new(25, 40, 45, 15), 0.3, 0.20, None)),
        (["garlic"], Row("garlic", new(0.70, 1.00, 0.70), Bulbs, 0.3, 0.30, LikeOnion)),
        (["scallion", "green onion", "spring onion", "bunching onion", "leek", "shallot"],
            Row("green onion", new(0.70, 1.00, 1.00), new(25, 30, 10, 5), 0.3, 0.30, LikeOnion)),
        (["onion"], Row("dry onion", new(0.70, 1.05, 0.75), Bulbs, 0.3, 0.30, new Ky(1.1))),
        (["lettuce", "salad mix", "salad greens"], Row("lettuce", new(0.70, 1.00, 0.95), Leaves, 0.3, 0.30, None)),
        (["spinach"], Row("spinach", new(0.70, 1.00, 0.95), new(20, 20, 20, 5), 0.3, 0.20, None)),
        (["turnip", "rutabaga"], Row("turnip and rutabaga", new(0.50, 1.10, 0.95), new(25, 30, 25, 10), 0.5, 0.50, LikeCabbage)),
        (["radish"], Row("radish", new(0.70, 0.90, 0.85), new(5, 10, 15, 5), 0.3, 0.30, LikeCabbage)),
        (["eggplant", "aubergine"], Row("eggplant", new(0.60, 1.05, 0.90), new(30, 45, 40, 25), 0.7, 0.45, LikePepper)),
        (["pepper"], Row("sweet pepper", new(0.60, 1.05, 0.90), new(28, 35, 40, 20), 0.5, 0.30, new Ky(1.1))),
        (["tomato"], Row("tomato", new(0.60, 1.15, 0.80), new(30, 40, 45, 30), 0.7, 0.40, new Ky(1.05))),
        (["cantaloupe"], Row("cantaloupe", new(0.50, 0.85, 0.60), new(30, 45, 35, 10), 0.9, 0.45, LikeWatermelon)),
        (["watermelon"], Row("watermelon", new(0.40, 1.00, 0.75), new(20, 30, 30, 30), 0.8, 0.40, new Ky(1.1))),
        (["melon"], Row("sweet melon", new(0.50, 1.05, 0.75), new(25, 35, 40, 20), 0.8, 0.40, LikeWatermelon)),
        (["cucumber"], Row("cucumber", new(0.60, 1.00, 0.75), new(20, 30, 40, 15), 0.7, 0.50, None)),
        (["winter squash", "pumpkin", "butternut", "acorn squash", "delicata", "kabocha", "hubbard", "spaghetti squash"],
            Row("winter squash", new(0.50, 1.00, 0.80), new(20, 30, 30, 20), 1.0, 0.35, None)),
        (["zucchini", "squash"], Row("zucchini", new(0.50, 0.95, 0.75), Squashes, 0.6, 0.50, None)),
        (["beet", "chard"], Row("table beet", new(0.50, 1.05, 0.95), new(25, 30, 25, 10), 0.6, 0.50, LikeBeet)),
        (["parsnip"], Row("parsnip", new(0.50, 1.05, 0.95), Roots, 0.5, 0.40, None)),
        (["potato"], Row("potato", new(0.50, 1.15, 0.75), new(30, 35, 50, 30), 0.4, 0.35, new Ky(1.1))),
        (["snap bean", "green bean", "bean"], Row("green bean", new(0.50, 1.05, 0.90), new(20, 30, 30, 10), 0.5, 0.45, new Ky(1.15))),
        (["pea"], Row("fresh pea", new(0.50, 1.15, 1.10), new(15, 25, 35, 15), 0.6, 0.35, new Ky(1.15))),
        (["asparagus"], Row("asparagus", new(0.50, 0.95, 0.30), new(90, 30, 200, 45), 1.2, 0.45, None)),
        (["strawberry", "strawberries"], Row("strawberry", new(0.40, 0.85, 0.75), Leaves, 0.2, 0.20, None)),
        (["kale", "bok choy", "kohlrabi", "collard", "arugula", "mustard"],
            Row("cabbage", new(0.70, 1.05, 0.95), Crucifers, 0.5, 0.45, LikeCabbage)),
    ];

    /// <summary>The figures of a crop by the name a grower calls it; those of small vegetables with Ky 1 where no table lists it.</summary>
    /// <param name="name">The crop's name.</param>
    /// <returns>Its figures.</returns>
    public static CropWater Find(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        string[] words = name.ToLowerInvariant().Split([' ', '-', ',', '(', ')', '/'], StringSplitOptions.RemoveEmptyEntries);
        string spaced = $" {string.Join(' ', words)} ";
        return Rows.FirstOrDefault(row => row.Words.Any(word => Holds(spaced, word))).Row ?? Unlisted;
    }

    /// <summary>All listed crops, with the words they are known by.</summary>
    internal static IEnumerable<(IReadOnlyList<string> Words, CropWater Row)> All =>
        Rows.Select(row => ((IReadOnlyList<string>)row.Words, row.Row));

    private static bool Holds(string spaced, string word) => spaced.Contains($" {word} ", StringComparison.Ordinal)
        || spaced.Contains($" {word}s ", StringComparison.Ordinal) || spaced.Contains($" {word}es ", StringComparison.Ordinal);

    private static CropWater Row(string? listedAs, CropCoefficients kc, StageDays stages, double roots, double readily, Ky ky) =>
        new(kc, stages, roots, readily, ky.Value)
        {
            ListedAs = listedAs,
            CoefficientsFrom = listedAs is null ? WaterFigure.NotListed : WaterFigure.Published,
            ResponseFrom = ky.From,
        };

    private readonly record struct Ky(double Value, WaterFigure From = WaterFigure.Published);
}
