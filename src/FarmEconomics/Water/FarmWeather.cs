using FarmEconomics.Records;

namespace FarmEconomics.Water;

/// <summary>How a day's reference evapotranspiration is known.</summary>
public enum EtSource
{
    /// <summary>It is not.</summary>
    Unknown,

    /// <summary>A station's own figure in the weather table.</summary>
    Station,

    /// <summary>Penman-Monteith, from sun, wind, dew point and temperatures.</summary>
    PenmanMonteith,

    /// <summary>Hargreaves, from temperatures alone.</summary>
    Hargreaves,

    /// <summary>The month's figure in farm.csv.</summary>
    Climate,

    /// <summary>A gap of one or two days: the mean of the day before and the day after, with the rain written, if any is.</summary>
    Gap,

    /// <summary>A day still to come: the mean of the last week known, without rain.</summary>
    Ahead,
}

/// <summary>A day's weather as far as the water of a crop goes by it.</summary>
/// <param name="Et0">Reference evapotranspiration of grass, mm.</param>
/// <param name="Rain">Rain, mm.</param>
/// <param name="Source">How the first is known.</param>
public readonly record struct WeatherDay(double Et0, double Rain, EtSource Source)
{
    /// <summary>True when need and rain of the day are both known, or filled in by rule.</summary>
    public bool IsKnown => Source != EtSource.Unknown;
}

/// <summary>The farm's weather day by day, from the weather table and the settings of farm.csv, in metric units.</summary>
public sealed class FarmWeather
{
    private const int LongestGap = 2;
    private const int WeekDays = 7;

    private readonly WeatherDay[] days;
    private readonly FarmSettings settings;
    private readonly double usual;

    private FarmWeather(FarmRecords records)
    {
        settings = records.Settings;
        List<WeatherRow> rows = [.. records.Tables.Weather];
        First = rows.Count > 0 ? rows.Min(row => row.Date) : null;
        Last = rows.Count > 0 ? rows.Max(row => row.Date) : null;
        days = First is { } first ? new WeatherDay[Last!.Value.DayNumber - first.DayNumber + 1] : [];
        foreach (WeatherRow row in rows)
        {
            days[row.Date.DayNumber - First!.Value.DayNumber] = Of(row);
        }

        FillGaps();
        usual = days.Reverse().Where(day => day.IsKnown).Take(WeekDays).Select(day => day.Et0).DefaultIfEmpty(0).Average();
    }

    /// <summary>The first day of the weather table; null without one.</summary>
    public DateOnly? First { get; }

    /// <summary>The last day of the weather table; null without one.</summary>
    public DateOnly? Last { get; }

    /// <summary>Why no day's need of water can be told; null where one can.</summary>
    public string? WhyUnknown => days.Length == 0 ? "there is no weather table"
        : days.Any(day => day.IsKnown) ? null
        : settings.Site.Latitude is null ? "weather.csv has no et0, and farm.csv no latitude to work it out from temperatures"
        : "weather.csv has neither et0 nor temperatures";

    /// <summary>How many days of the table are known in each way.</summary>
    public IEnumerable<(EtSource Source, int Days)> Sources => SourcesOf(days);

    /// <summary>Reads a farm's weather.</summary>
    /// <param name="records">The records.</param>
    /// <returns>The weather.</returns>
    public static FarmWeather Of(FarmRecords records)
    {
        ArgumentNullException.ThrowIfNull(records);
        return new FarmWeather(records);
    }

    /// <summary>A day of the table.</summary>
    /// <param name="day">The day.</param>
    /// <returns>Its weather; unknown outside the table.</returns>
    public WeatherDay On(DateOnly day) => First is { } first && day >= first && day <= Last ? days[day.DayNumber - first.DayNumber]
        : default;

    /// <summary>How many days of a span are known in each way; days outside the table are unknown.</summary>
    /// <param name="first">The first day.</param>
    /// <param name="count">How many days.</param>
    /// <returns>The ways that occur.</returns>
    internal IEnumerable<(EtSource Source, int Days)> SourcesIn(DateOnly first, int count) =>
        SourcesOf(Enumerable.Range(0, count).Select(ahead => On(first.AddDays(ahead))));

    /// <summary>
    /// A day, be it of the table or still to come: then as farm.csv says of the month, else as the last week known, and no rain.
    /// </summary>
    /// <param name="day">The day.</param>
    /// <returns>Its weather; unknown where nothing tells it.</returns>
    public WeatherDay Ahead(DateOnly day) => On(day) is { IsKnown: true } known ? known
        : settings.Site.Climate is { } climate ? new WeatherDay(Millimeters(climate[day.Month]), 0, EtSource.Climate)
        : usual > 0 ? new WeatherDay(usual, 0, EtSource.Ahead)
        : default;

    private WeatherDay Of(WeatherRow row)
    {
        double rain = Millimeters(row.RainIn ?? 0m);
        if (row.Et0In is { } told)
        {
            return new WeatherDay(Millimeters(told), rain, EtSource.Station);
        }

        if (row.TminF is { } low && row.TmaxF is { } high && settings.Site.Latitude is { } latitude)
        {
            Sky sky = ReferenceEt.SkyOf((double)latitude, row.Date.DayOfYear);
            return row is { SolarMj: { } sun, WindMph: { } wind, DewpointF: { } dew }
                ? new WeatherDay(
                    Penman(
                        new(Celsius(high), Celsius(low), (double)sun, ReferenceEt.SaturationKpa(Celsius(dew)), MetersPerSecond(wind)),
                        sky
                    ),
                    rain,
                    EtSource.PenmanMonteith
                )
                : new WeatherDay(ReferenceEt.Hargreaves(Celsius(high), Celsius(low), sky), rain, EtSource.Hargreaves);
        }

        return settings.Site.Climate is { } climate ? new WeatherDay(Millimeters(climate[row.Date.Month]), rain, EtSource.Climate)
            : new WeatherDay(0, rain, EtSource.Unknown);
    }

    private static IEnumerable<(EtSource Source, int Days)> SourcesOf(IEnumerable<WeatherDay> days) =>
        days.GroupBy(day => day.Source).OrderBy(group => group.Key).Select(group => (group.Key, group.Count()));

    private double Penman(EtDay day, Sky sky) => ReferenceEt.PenmanMonteith(day, sky,
        (double)settings.Site.Altitude * (settings.LengthUnit == LengthUnit.M ? 1 : WaterMath.MetersPerFoot));

    private void FillGaps()
    {
        for (int i = 1; i < days.Length; i++)
        {
            int end = i;
            while (end < days.Length && !days[end].IsKnown)
            {
                end++;
            }

            if (end - i <= LongestGap && end < days.Length && days[i - 1].IsKnown)
            {
                double mean = (days[i - 1].Et0 + days[end].Et0) / 2;
                for (int gap = i; gap < end; gap++)
                {
                    days[gap] = new WeatherDay(mean, days[gap].Rain, EtSource.Gap);
                }
            }

            i = end;
        }
    }

    private bool Metric => settings.LengthUnit == LengthUnit.M;

    private double Millimeters(decimal depth) => (double)depth * (Metric ? 1 : WaterMath.MmPerInch);

    private double Celsius(decimal temperature) => Metric ? (double)temperature : WaterMath.Celsius((double)temperature);

    private double MetersPerSecond(decimal wind) => (double)wind * (Metric ? 1 : WaterMath.MetersPerSecondPerMph);
}
