namespace FarmEconomics.DemoFarm;

/// <summary>
/// The weather of the last season, April to October: invented, and of no real place; only its run is plausible for a cold climate. It is
/// dry
/// from the end of July to the end of August, as the yields of that year say.
/// </summary>
internal static class DryWeather
{
    /// <summary>Latitude the invented farm lies at.</summary>
    public const decimal Latitude = 46.5m;

    public const int Year = 2025;

    private const int Topic = 31;

    private static readonly DateOnly First = new(Year, 4, 1);
    private static readonly DateOnly Last = new(Year, 10, 31);
    private static readonly DateOnly DryFrom = new(Year, 7, 26);
    private static readonly DateOnly DryTo = new(Year, 8, 27);

    /// <summary>A day: rain in inches, temperatures in °F.</summary>
    public sealed record Day(DateOnly Date, decimal Rain, int Low, int High);

    public static readonly IReadOnlyList<Day> Days = [.. Make()];

    public static CsvTable Table()
    {
        var t = new CsvTable("date", "rain_in", "tmin_f", "tmax_f");
        foreach (var day in Days)
        {
            t.Add(day.Date, day.Rain == 0m ? null : day.Rain, day.Low, day.High);
        }

        return t;
    }

    private static IEnumerable<Day> Make()
    {
        var random = FarmFacts.RandomFor(Topic);
        var drift = 0.0;
        for (var date = First; date <= Last; date = date.AddDays(1))
        {
            var dry = date >= DryFrom && date <= DryTo;
            drift = (0.7 * drift) + (random.Double(-1, 1) * 5);
            var draw = random.Double();
            var size = random.Double();
            var rains = draw < (dry ? 0.03 : 0.34);
            var rain = !rains ? 0m : dry ? 0.06m : decimal.Round((decimal)(0.04 + (0.9 * size * size)), 2);

            // Warmest at the end of July, a day's range narrower when it rains.
            var mean = 55 + (14 * Math.Cos((date.DayOfYear - 207) * 2 * Math.PI / 280)) + drift + (dry ? 3 : 0);
            var range = (rains ? 15 : 24) + (dry ? 4 : 0) + (random.Double(-1, 1) * 3);
            yield return new Day(date, rain, (int)Math.Round(mean - (range / 2)), (int)Math.Round(mean + (range / 2)));
        }
    }
}
