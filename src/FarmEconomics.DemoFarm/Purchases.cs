using Bogus;

namespace FarmEconomics.DemoFarm;

/// <summary>Bills of a year that follow from what was grown: seed, mix, compost, packaging.</summary>
internal static class Purchases
{
    public static IEnumerable<BookLine> Of(
        int year, IReadOnlyList<Planting> plantings, IReadOnlyList<HarvestBook.Pick> picks, Randomizer random)
    {
        var own = plantings.Where(p => p.CropYear == year && !p.Crop.Perennial).ToList();
        return Seed(year, own, random).Concat(year == 2026
            ? Winter(year, random)
            : Season(year, own, random).Concat(Garlic(year, random)).Concat(Packaging(year, picks, random)));
    }

    private static decimal SeedOf(List<Planting> own, Func<CropSpec, bool> which) =>
        own.Where(p => which(p.Crop)).Sum(p => p.Feet * p.Crop.Seed);

    private static readonly (int Month, int Day, decimal Part)[] Orders =
        [(1, 12, 0.34m), (1, 24, 0.26m), (2, 19, 0.16m), (4, 9, 0.11m), (6, 17, 0.08m), (8, 1, 0.05m)];

    private static IEnumerable<BookLine> Seed(int year, List<Planting> own, Randomizer random)
    {
        var level = Level(year);
        var winter = year == 2026;

        // Orders go out in January, with gaps filled through the season.
        var common = SeedOf(own, c => c.Group != "microgreens" && c.Name != "Garlic" && c.Name != "Potatoes");
        foreach (var (month, day, part) in Orders)
        {
            var amount = winter ? 2300m * part : common * part;
            if (!winter || month < 2 || (month == 2 && day < 28))
            {
                var from = month == 2 ? "Fernhill Seed" : "Oldfield Seed Co-op";
                yield return new BookLine(new(year, month, day), Cents(amount * level, random), "seed", from);
            }
        }

        foreach (var crop in new[] { "Pea shoots", "Micro mix" })
        {
            var seed = SeedOf(own, c => c.Name == crop) * level;
            var times = winter ? 0 : 6;
            for (var i = 0; i < times; i++)
            {
                yield return new BookLine(
                    new(year, 1 + (i * 2), 8), Cents(seed / times, random), "seed", "Oldfield Seed Co-op", Crop: crop,
                    Note: "bulk seed and mats for trays");
            }
        }
    }

    private static IEnumerable<BookLine> Winter(int year, Randomizer random)
    {
        yield return new BookLine(new(year, 2, 10), Cents(310m, random), "potting mix", "Hollin Peat and Compost");
        yield return new BookLine(new(year, 1, 20), Cents(120m, random), "packaging", "Box and Twine");
    }

    private static IEnumerable<BookLine> Season(int year, List<Planting> own, Randomizer random)
    {
        var level = Level(year);
        var potatoes = SeedOf(own, c => c.Name == "Potatoes") * level;
        yield return new BookLine(
            new(year, 3, 28), Cents(potatoes, random), "seed", "Skarrow Tubers", Crop: "Potatoes", Note: "seed potatoes");
        yield return new BookLine(
            new(year, 5, 2), Cents(165m * level, random), "plants", "Fernhill Seed", Crop: "Onions", Note: "plugs for what the mice ate");
        yield return new BookLine(new(year, 2, 8), Cents(780m * level, random), "potting mix", "Hollin Peat and Compost");
        yield return new BookLine(new(year, 4, 3), Cents(480m * level, random), "potting mix", "Hollin Peat and Compost");
        yield return new BookLine(new(year, 4, 22), Cents(3150m * level, random), "compost and minerals", "Hollin Peat and Compost");
        yield return new BookLine(new(year, 9, 12), Cents(1550m * level, random), "compost and minerals", "Hollin Peat and Compost");
        yield return new BookLine(new(year, 3, 15), Cents(1090m * level, random), "row cover and twine", "Ridgeway Growers Supply");
        yield return new BookLine(new(year, 7, 9), Cents(410m * level, random), "row cover and twine", "Ridgeway Growers Supply");
    }

    // Garlic for the next season is bought and set in October; a bale of straw goes over it.
    private static IEnumerable<BookLine> Garlic(int year, Randomizer random)
    {
        var level = Level(year);
        yield return new BookLine(
            new(year, 10, 3), Cents(118m * level, random), "seed", "Skarrow Tubers", Crop: "Garlic", CropYear: year + 1,
            Note: "new stock beside our own cloves");
        yield return new BookLine(
            new(year, 11, 6),
            Cents(72m * level, random),
            "row cover and twine",
            "Neighbor's barn",
            Planting: $"Garlic {year + 1}-01",
            Note: "straw over the garlic");
    }

    private static IEnumerable<BookLine> Packaging(int year, IReadOnlyList<HarvestBook.Pick> picks, Randomizer random)
    {
        var level = Level(year);
        var packing = picks.Where(p => p.Date.Year == year).Sum(p => p.Quantity * p.Planting.Crop.Packing) * level;
        foreach (var (month, day, part) in new[] { (2, 26, 0.30m), (5, 20, 0.28m), (7, 15, 0.22m), (9, 18, 0.14m), (11, 12, 0.06m) })
        {
            yield return new BookLine(new(year, month, day), Cents(packing * part, random), "packaging", "Box and Twine");
        }

        if (year != 2024)
        {
            yield return new BookLine(new(year, 6, 3), -Cents(64m, random), "packaging", "Box and Twine", Note: "torn bags taken back");
        }
    }

    /// <summary>Prices rose by about three percent a year.</summary>
    public static decimal Level(int year) => year switch { 2023 => 0.95m, 2024 => 0.985m, 2025 => 1m, _ => 1.02m };

    /// <summary>An amount with uneven cents, within four percent of the one given.</summary>
    public static decimal Cents(decimal about, Randomizer random) =>
        Math.Round(about * (960m + random.Int(0, 80)) / 1000m, 2, MidpointRounding.AwayFromZero);
}
