namespace FarmEconomics.DemoFarm;

/// <summary>List prices: what stands on the stall's board each season, and what shop and kitchen pay.</summary>
internal static class PriceList
{
    /// <summary>The board is written new on the first of March.</summary>
    public static decimal Market(CropSpec crop, DateOnly day, decimal size) => Market(crop, SeasonOf(day), size);

    public static decimal Market(CropSpec crop, int season, decimal size)
    {
        var level = season switch { <= 2022 => 0.95m, 2023 => 0.97m, 2024 => 0.985m, 2025 => 1m, _ => 1.02m };
        var price = crop.Price * size * level;
        var step = price >= 2.4m ? 0.25m : 0.05m;
        return Math.Round(price / step, MidpointRounding.AwayFromZero) * step;
    }

    /// <summary>Shop and kitchen pay a part of the stall's price; the kitchen a little more, it takes what is small or odd.</summary>
    public static decimal Wholesale(CropSpec crop, DateOnly day, decimal size, bool kitchen) =>
        Math.Round(Market(crop, day, 1m) * size * crop.Wholesale * (kitchen ? 1.04m : 1m) * 20m, MidpointRounding.AwayFromZero) / 20m;

    private static int SeasonOf(DateOnly day) => day.Month >= 3 ? day.Year : day.Year - 1;

    public static CsvTable Table()
    {
        var table = new CsvTable("crop", "price", "unit", "channel", "from", "reference");
        foreach (var crop in CropList.All.Where(c => c.Name != PlannedGaps.CropWithoutPrice))
        {
            var pack = SellingUnits.For(crop.Name, wholesale: false);
            var last = 0m;
            foreach (var season in new[] { 2022, 2023, 2024, 2025 })
            {
                var price = Market(crop, season, pack?.Size ?? 1m);
                if (price != last)
                {
                    // The first board hung there before the records begin, so it carries no date.
                    table.Add(crop.Name, price, pack?.Unit ?? crop.Unit, FarmFacts.Market, season == 2022 ? null : new DateOnly(season, 3, 1), null);
                    last = price;
                }
            }

            if (SellingUnits.For(crop.Name, wholesale: true) is { } lot)
            {
                table.Add(crop.Name, Wholesale(crop, new DateOnly(2025, 3, 1), lot.Size, false), lot.Unit, FarmFacts.Shop, new DateOnly(2025, 3, 1), null);
            }
        }

        // Somebody else's prices, kept apart: round figures of the kind a regional price sheet prints, made up like the rest.
        foreach (var (crop, price) in new[] { ("Carrots", 2.8m), ("Tomatoes", 4.25m), ("Salad mix", 11m), ("Potatoes", 2.1m), ("Garlic", 12m), ("Onions", 2m) })
        {
            table.Add(crop, price, CropList.Get(crop).Unit, null, new DateOnly(2025, 6, 1), "yes");
        }

        return table;
    }
}
