namespace FarmEconomics.DemoFarm;

/// <summary>The panels, the battery and the generator, and what the logger told of the last year; the yields are invented, of no real place.</summary>
internal static class SolarLogger
{
    private const int Topic = 33;
    private const decimal PanelKw = 7.2m;

    private static readonly decimal[] Yield = [1.6m, 2.6m, 3.6m, 4.2m, 4.6m, 4.8m, 4.8m, 4.4m, 3.6m, 2.4m, 1.4m, 1.2m];

    public static void AddSettings(CsvTable t)
    {
        t.Add("latitude", DryWeather.Latitude);
        t.Add("panel_kw", PanelKw);
        t.Add("panel_yield", string.Join("; ", Yield.Select(month => month.ToString(System.Globalization.CultureInfo.InvariantCulture))));
        t.Add("battery_kwh", 24);
        t.Add("battery_usable_percent", 50);
        t.Add("battery_efficiency_percent", 80);
        t.Add("generator_kw", 3);
        t.Add("generator_cost_per_kwh", "0.85");
    }

    public static CsvTable Table()
    {
        var t = new CsvTable("date", "pool", "kwh");
        var random = FarmFacts.RandomFor(Topic);
        var cloud = 0.0;
        for (var day = new DateOnly(DryWeather.Year, 1, 1); day.Year == DryWeather.Year; day = day.AddDays(1))
        {
            // Clouds stay for days: the darker the month, the longer.
            cloud = (0.55 * cloud) + (0.45 * random.Double(-1, 1));
            var part = Math.Clamp(1 + (1.5 * cloud), 0.08, 1.6);
            t.Add(day, Pools.Solar, decimal.Round(PanelKw * Yield[day.Month - 1] * (decimal)part, 1));
        }

        return t;
    }
}
