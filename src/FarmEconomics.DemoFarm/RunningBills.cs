using Bogus;

namespace FarmEconomics.DemoFarm;

/// <summary>Bills that come whatever is grown: fuel, repairs, insurance, the phone.</summary>
internal static class RunningBills
{
    public static IEnumerable<BookLine> Of(int year, Randomizer random)
    {
        var months = year == 2026 ? 2 : 12;
        for (var month = 1; month <= months; month++)
        {
            yield return Bill(year, month, 3, month is >= 5 and <= 10 ? 142m : 74m, "fuel", "Crossways Fuel", random, farmPercent: 60m);
            yield return Bill(year, month, 16, 92m, "phone and internet", "Northmark Wire", random, farmPercent: 50m);
            yield return new BookLine(new(year, month, 28), month is >= 6 and <= 11 ? 1900m : 1300m, "household draw");
            if (month % 3 == 0)
            {
                yield return new BookLine(new(year, month, 15), 210m, "income tax", Note: "estimate");
                yield return Bill(year, month, 11, 84m, "office and bookkeeping", "Tallow Lane Books", random);
            }

            if (month is >= 5 and <= 10)
            {
                yield return new BookLine(new(year, month, 1), 95m, "stall rent", "Market society", Channel: FarmFacts.Market);
            }
        }

        if (year == 2026)
        {
            yield return new BookLine(new(year, 1, 5), 60m, "stall rent", "Market society", Channel: FarmFacts.Market);
            yield return Bill(year, 1, 19, 610m, "insurance", "Northmark Mutual", random);
            yield return Bill(year, 2, 6, 140m, "propane", "Crossways Fuel", random);
            yield break;
        }

        yield return new BookLine(new(year, 11, 1), 120m, "stall rent", "Market society", Channel: FarmFacts.Market, Note: "winter hall");
        yield return Bill(year, 4, 27, 150m, "market supplies", "Sign painter", random, channel: FarmFacts.Market);
        yield return Bill(year, 2, 2, 95m, "market supplies", "Print shop", random, channel: FarmFacts.Share);
        yield return Bill(year, 6, 8, 48m, "market supplies", "Box and Twine", random, channel: FarmFacts.Stand);
        yield return Bill(year, 1, 19, 1390m, "insurance", "Northmark Mutual", random);
        yield return Bill(year, 7, 19, 560m, "insurance", "Northmark Mutual", random);
        yield return Bill(year, 3, 1, 540m, "certification and dues", "Growers' guild", random);
        yield return Bill(year, 1, 30, 560m, "office and bookkeeping", "Tallow Lane Books", random);
        yield return Bill(year, 10, 14, 690m, "land tax", "Parish office", random);
        yield return Bill(year, 5, 9, 430m, "truck upkeep", "Crossways Garage", random, farmPercent: 60m);
        yield return Bill(year, 11, 20, 520m, "truck upkeep", "Northmark Mutual", random, farmPercent: 60m);
        yield return Bill(year, 3, 20, 340m, "small tools", "Ridgeway Growers Supply", random);
        yield return Bill(year, 8, 5, 110m, "small tools", "Ridgeway Growers Supply", random);
        yield return Bill(year, 6, 25, 780m, "firewood", "Woodlot crew", random, note: "logs, delivered; we split them");
        yield return Bill(year, 3, 6, 190m, "propane", "Crossways Fuel", random, note: "nights below zero");
        yield return Bill(year, 12, 4, 130m, "propane", "Crossways Fuel", random);
        yield return new BookLine(new(year, 9, 30), 168.75m, "season loan interest", "Northmark Credit Union");

        foreach (var (month, day, amount, pool) in new[]
                 {
                     (2, 14, 190m, Pools.Boiler), (4, 5, 340m, Pools.TunnelOne), (4, 30, 120m, Pools.Water), (5, 16, 95m, Pools.SeedlingHouse),
                     (6, 28, 210m, Pools.ColdRoom), (8, 21, 170m, Pools.WarmHouse), (9, 26, 210m, Pools.TunnelTwo), (10, 30, 170m, Pools.Solar),
                 })
        {
            yield return Bill(year, month, day, amount, "repairs", "Ridgeway Growers Supply", random, pool: pool);
        }

        if (year == Assets.WasherBought.Year)
        {
            yield return new BookLine(Assets.WasherBought, Assets.WasherCost, "equipment", "Ridgeway Growers Supply", Pool: Pools.PackShed, Note: Assets.Washer);
        }
    }

    private static BookLine Bill(
        int year, int month, int day, decimal about, string category, string payee, Randomizer random,
        string? channel = null, string? pool = null, decimal? farmPercent = null, string? note = null) =>
        new(new(year, month, day), Purchases.Cents(about * Purchases.Level(year), random), category, payee, Channel: channel, Pool: pool, FarmPercent: farmPercent, Note: note);
}
