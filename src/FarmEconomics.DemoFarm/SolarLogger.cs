namespace FarmEconomics.DemoFarm;

/// <summary>
/// The panels, the battery and the generator, and what the logger told of the last year; the yields are invented, of no real place.
/// </summary>
internal static class SolarLogger
{
    private const int Topic = 33;
    private const decimal PanelKw = 2.5m;

    // Fog lay on the field when the days were short already and the cold room still ran.
    private static readonly DateOnly FogFrom = new(DryWeather.Year, 10, 29);
    private static readonly DateOnly FogTo = new(DryWeather.Year, 11, 9);

    private static readonly decimal[] Yield = [1.6m, 2.6m, 3.6m, 4.2m, 4.6m, 4.8m, 4.8m, 4.4m, 3.8m, 2.2m, 1.2m, 1.1m];

    public static void AddSettings(CsvTable t)
    {
        t.Add("latitude", DryWeather.Latitude);
        t.Add("panel_kw", PanelKw);
        t.Add("panel_yield", string.Join("; ", Yield.Select(month => month.ToString(System.Globalization.CultureInfo.InvariantCulture))));
        t.Add("battery_kwh", 9);
        t.Add("battery_usable_percent", 80);
        t.Add("battery_efficiency_percent", 90);
        t.Add("generator_kw", 2);
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
            var part = Math.Clamp(1 + (1.5 * cloud), 0.08, 1.6) * (day >= FogFrom && day <= FogTo ? 0.25 : 1);
            t.Add(day, Pools.Panels, decimal.Round(PanelKw * Yield[day.Month - 1] * (decimal)part, 1));
        }

        return t;
    }
}
