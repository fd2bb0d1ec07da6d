namespace FarmEconomics.DemoFarm;

/// <summary>List prices: what stands on the market board, as it moves through each season, and what shop and schools pay.</summary>
internal static class PriceList
{
    // The days of the year the board is written new: the first of March for the season, the others as crops come and go.
    private static readonly (int Month, int Day)[] Turns = [(1, 1), (3, 1), (5, 20), (6, 15), (7, 1), (7, 20), (8, 10), (9, 1), (9, 25)];

    /// <summary>What stands on the board that day.</summary>
    public static decimal Market(CropSpec crop, DateOnly day, decimal size)
    {
        var level = SeasonOf(day) switch { <= 2022 => 0.95m, 2023 => 0.985m, 2024 => 0.99m, 2025 => 1m, _ => 1.02m };
        var price = crop.Price * size * level * InSeason(crop, day);
        var step = price >= 2.4m ? 0.25m : 0.05m;
        return Math.Round(price / step, MidpointRounding.AwayFromZero) * step;
    }

    /// <summary>Dear early, cheaper in the glut; greens cheap in June and dear in the heat; the store dear in late winter.</summary>
    private static decimal InSeason(CropSpec crop, DateOnly day)
    {
        var at = (day.Month * 100) + day.Day;
        return crop switch
        {
            { Group: "fruiting" } => at < 720 ? 1.12m : at < 810 ? 1.04m : at < 925 ? 0.92m : 1m,
            { Group: "greens" } => at is >= 520 and < 701 ? 0.94m : at is >= 720 and < 901 ? 1.06m : 1m,
            { Keeps: true } => at is >= 615 and < 810 ? 1.15m : at < 301 ? 1.06m : at is >= 925 ? 0.97m : 1m,
            _ => 1m,
        };
    }

    /// <summary>Shop and schools pay a part of the market's price; the schools a little more, they take what is small or odd.</summary>
    public static decimal Wholesale(CropSpec crop, DateOnly day, decimal size, bool schools) =>
        Math.Round(Market(crop, day, 1m) * size * crop.Wholesale * (schools ? 1.04m : 1m) * 20m, MidpointRounding.AwayFromZero) / 20m;

    private static int SeasonOf(DateOnly day) => day.Month >= 3 ? day.Year : day.Year - 1;

    /// <summary>Every day the board may change, from the day the records begin to the day they end.</summary>
    private static IEnumerable<DateOnly> Boards() =>
        from year in new[] { 2023, 2024, 2025, 2026 }
        from turn in Turns
        let day = new DateOnly(year, turn.Month, turn.Day)
        where day <= FarmFacts.AsOf
        select day;

    public static CsvTable Table()
    {
        var table = new CsvTable("crop", "price", "unit", "channel", "from", "reference");
        foreach (var crop in CropList.All.Where(c => c.Name != PlannedGaps.CropWithoutPrice))
        {
            var pack = SellingUnits.For(crop.Name, wholesale: false);
            var last = 0m;
            foreach (var day in Boards())
            {
                var price = Market(crop, day, pack?.Size ?? 1m);
                if (price != last)
                {
                    // The first board hung there before the records begin, so it carries no date.
                    table.Add(crop.Name, price, pack?.Unit ?? crop.Unit, FarmFacts.Market, day == FarmFacts.FirstDay ? null : day, null);
                    last = price;
                }
            }

            if (SellingUnits.For(crop.Name, wholesale: true) is { } lot)
            {
                var from = new DateOnly(2025, 3, 1);
                table.Add(crop.Name, Wholesale(crop, from, lot.Size, false), lot.Unit, FarmFacts.Shop, from, null);
            }
        }

        // Somebody else's prices, kept apart: round figures of the kind a regional price sheet prints, made up like the rest.
        foreach (var (crop, price) in new[]
                 {
                     ("Carrots", 2.8m), ("Tomatoes", 4.25m), ("Salad mix", 11m), ("Potatoes", 2.1m), ("Garlic", 12m), ("Onions", 2m),
                 })
        {
            table.Add(crop, price, CropList.Get(crop).Unit, null, new DateOnly(2025, 6, 1), "yes");
        }

        return table;
    }
}
