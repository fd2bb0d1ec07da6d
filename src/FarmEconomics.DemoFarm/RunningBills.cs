using Bogus;

namespace FarmEconomics.DemoFarm;

/// <summary>Bills that come whatever is grown: fuel, repairs, insurance, the phone.</summary>
internal static class RunningBills
{
    public static IEnumerable<BookLine> Of(int year, Randomizer random) => Monthly(year, random).Concat(year == 2026
        ? Winter(year, random)
        : Yearly(year, random).Concat(Repairs(year, random)).Concat(Washer(year)));

    private static IEnumerable<BookLine> Monthly(int year, Randomizer random)
    {
        var months = year == 2026 ? 2 : 12;
        for (var month = 1; month <= months; month++)
        {
            yield return Bill(year, month, 3, month is >= 5 and <= 10 ? 210m : 98m, "fuel", "Crossways Fuel", random, farmPercent: 60m);
            yield return Bill(year, month, 16, 92m, "phone and internet", "Northmark Wire", random, farmPercent: 50m);
            yield return new BookLine(new(year, month, 8), Electricity(year, month), "electricity", "Northmark Power", Pool: Pools.Grid);
            yield return new BookLine(new(year, month, 28), Draw(month), "household draw");
            yield return Bill(year, month, 22, 58m, "website and card reader", "Shopfront service", random, channel: FarmFacts.Pickup);
            if (month % 3 == 0)
            {
                yield return Bill(year, month, 11, 230m, "office and bookkeeping", "Tallow Lane Books", random);
            }

            if (month is >= 5 and <= 10)
            {
                yield return new BookLine(new(year, month, 1), 120m, "stall rent", "Market society", Channel: FarmFacts.Market);
            }

            if (month is >= 6 and <= 9)
            {
                yield return new BookLine(new(year, month, 2), 60m, "stall rent", "Depot Market", Channel: FarmFacts.MarketTwo);
            }
        }
    }

    private static IEnumerable<BookLine> Winter(int year, Randomizer random)
    {
        yield return new BookLine(new(year, 1, 5), 60m, "stall rent", "Market society", Channel: FarmFacts.Market);
        yield return Bill(year, 1, 19, 1980m, "insurance", "Northmark Mutual", random);
        yield return Bill(year, 2, 6, 140m, "propane", "Crossways Fuel", random);
    }

    private static IEnumerable<BookLine> Yearly(int year, Randomizer random)
    {
        yield return new BookLine(new(year, 11, 1), 120m, "stall rent", "Market society", Channel: FarmFacts.Market, Note: "winter hall");
        yield return Bill(year, 4, 27, 460m, "market supplies", "Canopy and sign shop", random, channel: FarmFacts.Market);
        yield return Bill(year, 2, 2, 180m, "market supplies", "Print shop", random, channel: FarmFacts.Share);
        yield return Bill(year, 6, 8, 210m, "market supplies", "Box and Twine", random, channel: FarmFacts.Pickup);
        yield return Bill(year, 1, 19, 1980m, "insurance", "Northmark Mutual", random);
        yield return Bill(year, 7, 19, 870m, "insurance", "Northmark Mutual", random);
        yield return Bill(year, 3, 1, 1040m, "certification and dues", "Growers' guild", random);
        yield return Bill(year, 1, 30, 980m, "office and bookkeeping", "Tallow Lane Books", random);
        yield return Bill(year, 10, 14, 690m, "land tax", "Parish office", random);
        yield return new BookLine(new(year, 4, 1), 3600m, "ground rent", "Neighbor to the east", Note: "three blocks, Pond, Stile and Far");
        yield return Bill(year, 5, 9, 780m, "truck upkeep", "Crossways Garage", random, farmPercent: 60m);
        yield return Bill(year, 11, 20, 690m, "truck upkeep", "Northmark Mutual", random, farmPercent: 60m);
        yield return Bill(year, 3, 20, 620m, "small tools", "Ridgeway Growers Supply", random);
        yield return Bill(year, 8, 5, 230m, "small tools", "Ridgeway Growers Supply", random);
        yield return Bill(year, 8, 25, 2190m, "pellets", "Ridgeway Growers Supply", random, note: "seven tons on pallets, early price");
        yield return Bill(year, 2, 12, 960m, "pellets", "Ridgeway Growers Supply", random, note: "three tons more");
        yield return Bill(year, 3, 6, 190m, "propane", "Crossways Fuel", random, note: "nights below zero");
        yield return Bill(year, 12, 4, 130m, "propane", "Crossways Fuel", random);
    }

    private static readonly (int Month, int Day, decimal Amount, string Pool)[] Mended =
    [
        (2, 14, 290m, Pools.Boiler),
        (4, 5, 480m, Pools.TunnelOne),
        (4, 30, 310m, Pools.Water),
        (5, 16, 190m, Pools.SeedlingHouse),
        (6, 9, 260m, Pools.Tools),
        (6, 28, 310m, Pools.ColdRoom),
        (8, 21, 280m, Pools.WarmHouse),
        (9, 26, 320m, Pools.TunnelTwo),
        (10, 30, 150m, Pools.Panels),
        (7, 12, 130m, Pools.Grid),
    ];

    private static IEnumerable<BookLine> Repairs(int year, Randomizer random) => Mended.Select(one =>
        Bill(year, one.Month, one.Day, one.Amount, "repairs", "Ridgeway Growers Supply", random, pool: one.Pool));

    private static IEnumerable<BookLine> Washer(int year)
    {
        if (year == Assets.WasherBought.Year)
        {
            yield return new BookLine(
                Assets.WasherBought, Assets.WasherCost, "equipment", "Ridgeway Growers Supply", Pool: Pools.PackShed, Note: Assets.Washer);
        }
    }

    /// <summary>What the owners take for their household: more in the months when money comes in.</summary>
    private static decimal Draw(int month) => month is >= 7 and <= 11 ? 5200m : 2900m;

    /// <summary>The utility's bill for the month before: a fixed charge and so much a kilowatt-hour.</summary>
    private static decimal Electricity(int year, int month)
    {
        var before = new DateOnly(year, month, 1).AddDays(-1);
        var rate = before.Year switch { 2022 => 0.138m, 2023 => 0.144m, 2024 => 0.151m, _ => 0.158m };
        return Math.Round(31m + (rate * Loads.GridKwh(before.Year, before.Month)), 2, MidpointRounding.AwayFromZero);
    }

    private static BookLine Bill(
        int year,
        int month,
        int day,
        decimal about,
        string category,
        string payee,
        Randomizer random,
        string? channel = null,
        string? pool = null,
        decimal? farmPercent = null,
        string? note = null
    ) =>
        new(
            new(year, month, day),
            Purchases.Cents(about * Purchases.Level(year), random),
            category,
            payee,
            Channel: channel,
            Pool: pool,
            FarmPercent: farmPercent,
            Note: note
        );
}
