namespace FarmEconomics.DemoFarm;

/// <summary>The blocks as they are watered, and what was put on in the last season, by habit and within the well's limit a day.</summary>
internal static class WateringBook
{
    private const int Topic = 32;
    private const int GallonsADay = 4200;
    private const int SprinklerGallons = 60;

    private static readonly DateOnly First = new(DryWeather.Year, 5, 12);
    private static readonly DateOnly Last = new(DryWeather.Year, 9, 20);

    /// <summary>Weeks nobody wrote down what was put on.</summary>
    private static readonly (string Block, DateOnly Monday)[] Silent =
    [
        ("Pond", new(DryWeather.Year, 6, 16)), ("Stile", new(DryWeather.Year, 7, 14)), ("Far", new(DryWeather.Year, 8, 4)),
        ("Far", new(DryWeather.Year, 8, 11)),
    ];

    /// <summary>A block: what its soil holds, how often it is watered in a dry week, and how much.</summary>
    private sealed record Block(string Name, decimal SoilInchesPerFoot, decimal? Efficiency, int EveryDays, int Gallons, bool BySprinklers);

    private static readonly Block[] All =
    [
        new("Lane", 1.7m, 70m, 3, 1900, true),
        new("Alder", 1.7m, 70m, 4, 1800, true),
        new("Wall", 1.5m, 70m, 4, 1800, true),
        new("Pond", 1.9m, 70m, 5, 1700, true),
        new("Stile", 1.3m, 70m, 4, 1750, true),
        new("Far", 1.1m, 70m, 6, 1600, true),
        new(Beds.TunnelOne, 1.6m, 90m, 3, 520, false),
        new(Beds.TunnelTwo, 1.6m, 90m, 3, 520, false),
        new(Beds.WarmHouse, 1.6m, 90m, 3, 300, false),
    ];

    public static CsvTable Blocks()
    {
        var t = new CsvTable("block", "soil_water_in_ft", "efficiency_percent", "sprinkler_gph", "set_gallons");
        foreach (var block in All)
        {
            t.Add(block.Name, block.SoilInchesPerFoot, block.Efficiency, block.BySprinklers ? SprinklerGallons : null, null);
        }

        return t;
    }

    public static CsvTable Table()
    {
        var t = new CsvTable("date", "block", "bed", "gallons", "sprinkler_hours");
        var random = FarmFacts.RandomFor(Topic);
        var rain = DryWeather.Days.ToDictionary(day => day.Date, day => day.Rain);
        var last = All.ToDictionary(block => block.Name, _ => First.AddDays(-9));
        for (var day = First; day <= Last; day = day.AddDays(1))
        {
            var left = GallonsADay;
            var lately = Enumerable.Range(0, 3).Sum(back => rain[day.AddDays(-back)]);
            foreach (var block in All.OrderBy(block => last[block.Name].DayNumber + block.EveryDays))
            {
                var gallons = (int)Math.Round(block.Gallons * random.Double(0.9, 1.1) / SprinklerGallons) * SprinklerGallons;
                var due = day.DayNumber - last[block.Name].DayNumber >= block.EveryDays;
                if (!due || gallons > left || (block.BySprinklers && lately >= 0.5m))
                {
                    continue;
                }

                left -= gallons;
                last[block.Name] = day;
                if (!Silent.Contains((block.Name, day.AddDays(-(((int)day.DayOfWeek + 6) % 7)))))
                {
                    t.Add(day, block.Name, null, block.BySprinklers ? null : gallons, block.BySprinklers ? gallons / SprinklerGallons
                        : null);
                }
            }
        }

        return t;
    }
}
