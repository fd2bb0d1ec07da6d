using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>Days of a weather table: which figure counts, in which unit, and what gaps and days to come are taken for.</summary>
public class WeatherByHandTests
{
    private static readonly MonthFigures Climate = new([1m, 2m, 3m, 4m, 5m, 6m, 7m, 8m, 9m, 10m, 11m, 12m]);

    /// <summary>FAO-56, example 20 (Lyon in July, 45°43' N, 26.6 and 14.8 °C, 200 m): about 5.0 mm a day by Hargreaves. From memory.</summary>
    [Fact]
    public void Hargreaves_OfTheExample_IsThePublishedFigure()
    {
        Sky sky = ReferenceEt.SkyOf(45.72, 196);
        Assert.Equal(40.6, sky.ExtraterrestrialMj, 0.2);
        Assert.Equal(5.0, ReferenceEt.Hargreaves(26.6, 14.8, sky), 0.05);
        Assert.Equal(0.0, ReferenceEt.Hargreaves(14.8, 26.6, sky));
        Assert.Equal(0.0, ReferenceEt.Hargreaves(-30, -40, sky));
    }

    [Theory]
    [InlineData(LengthUnit.M, 26.6, 14.8)]
    [InlineData(LengthUnit.Ft, 79.88, 58.64)]
    public void Temperatures_InTheFarmsUnit_GiveTheSameNeed(LengthUnit unit, double high, double low)
    {
        FarmBuilder farm = Farm(unit, 45.72m)
            .Add<WeatherRow>(
                new RowValues
                {
                    ["date"] = new DateOnly(2025, 7, 15),
                    ["tmax_f"] = (decimal)high,
                    ["tmin_f"] = (decimal)low,
                    ["rain_in"] = 2m,
                }
            );
        WeatherDay day = FarmWeather.Of(farm.Link()).On(new DateOnly(2025, 7, 15));

        Assert.Equal(EtSource.Hargreaves, day.Source);
        Assert.Equal(5.0, day.Et0, 0.05);
        Assert.Equal(unit == LengthUnit.M ? 2.0 : 50.8, day.Rain, 1e-9);
    }

    /// <summary>FAO-56, example 18 (Brussels, July 6: 21.5 and 12.3 °C, 22.07 MJ, 2.078 m/s, vapor 1.409 kPa, which is a dew point of 12.06 °C, 100 m): 3.88 mm.</summary>
    [Theory]
    [InlineData(LengthUnit.M, 21.5, 12.3, 12.063, 2.078, 100.0)]
    [InlineData(LengthUnit.Ft, 70.7, 54.14, 53.7134, 4.6484, 328.084)]
    public void SunWindAndDew_InTheFarmsUnit_GiveThePublishedNeed(
        LengthUnit unit,
        double high,
        double low,
        double dew,
        double wind,
        double altitude
    )
    {
        FarmBuilder farm = Farm(unit, 50.8m, (decimal)altitude).Add<WeatherRow>(new RowValues
        {
            ["date"] = new DateOnly(2025, 7, 6),
            ["tmax_f"] = (decimal)high,
            ["tmin_f"] = (decimal)low,
            ["dewpoint_f"] = (decimal)dew,
            ["wind_mph"] = (decimal)wind,
            ["solar_mj"] = 22.07m,
        });
        WeatherDay day = FarmWeather.Of(farm.Link()).On(new DateOnly(2025, 7, 6));

        Assert.Equal(EtSource.PenmanMonteith, day.Source);
        Assert.Equal(3.88, day.Et0, 0.01);
    }

    /// <summary>One day and two days missing are the mean of both neighbors, without rain; three are unknown. Nothing is filled before the first day or after the last.</summary>
    [Fact]
    public void Gaps_OfTwoDaysAtMost_AreTheMeanOfTheirNeighbors()
    {
        FarmBuilder farm = Farm(LengthUnit.M, null);
        foreach ((int day, decimal et0) in (ReadOnlySpan<(int, decimal)>)[(1, 2m), (3, 4m), (6, 8m), (10, 1m), (11, 3m)])
        {
            farm.Add<WeatherRow>(new RowValues { ["date"] = new DateOnly(2025, 7, day), ["et0_in"] = et0, ["rain_in"] = 1m });
        }

        farm.Add<WeatherRow>(new RowValues { ["date"] = new DateOnly(2025, 7, 12), ["rain_in"] = 1m });
        FarmWeather weather = FarmWeather.Of(farm.Link());

        double?[] days =
        [
            .. Enumerable
                .Range(0, 14)
                .Select(i => weather.On(new DateOnly(2025, 6, 30).AddDays(i)))
                .Select(day => day.IsKnown ? day.Et0 : (double?)null),
        ];
        Assert.Equal([null, 2.0, 3.0, 4.0, 6.0, 6.0, 8.0, null, null, null, 1.0, 3.0, null, null], days);
        Assert.Equal((0.0, EtSource.Gap), (weather.On(new DateOnly(2025, 7, 2)).Rain, weather.On(new DateOnly(2025, 7, 2)).Source));
        Assert.Equal([(EtSource.Unknown, 4), (EtSource.Station, 5), (EtSource.Gap, 3)], weather.Sources);
        Assert.Null(weather.WhyUnknown);
    }

    /// <summary>Rain written on a day without temperatures fell all the same; the need of that day is its neighbors' mean.</summary>
    [Fact]
    public void Gap_KeepsTheRainThatIsWritten()
    {
        FarmBuilder farm = Farm(LengthUnit.M, null);
        foreach ((int day, decimal? et0) in (ReadOnlySpan<(int, decimal?)>)[(1, 2m), (2, null), (3, 4m)])
        {
            farm.Add<WeatherRow>(new RowValues { ["date"] = new DateOnly(2025, 7, day), ["et0_in"] = et0, ["rain_in"] = 7m });
        }

        Assert.Equal(new WeatherDay(3, 7, EtSource.Gap), FarmWeather.Of(farm.Link()).On(new DateOnly(2025, 7, 2)));
    }

    /// <summary>Days to come have the mean of the last seven known, without rain: 2 to 8 of eight, and of a month that farm.csv knows its own.</summary>
    [Fact]
    public void DaysToCome_AreTheLastSevenKnownElseTheMonths()
    {
        FarmBuilder farm = Farm(LengthUnit.M, null);
        for (int day = 1; day <= 8; day++)
        {
            farm.Add<WeatherRow>(new RowValues { ["date"] = new DateOnly(2025, 7, day), ["et0_in"] = (decimal)day, ["rain_in"] = 3m });
        }

        FarmWeather weather = FarmWeather.Of(farm.Link());
        Assert.Equal(new WeatherDay(5, 0, EtSource.Ahead), weather.Ahead(new DateOnly(2025, 7, 9)));
        Assert.Equal(new WeatherDay(8, 3, EtSource.Station), weather.Ahead(new DateOnly(2025, 7, 8)));
        Assert.Equal(default, weather.On(new DateOnly(2025, 7, 9)));
        weather = FarmWeather.Of(farm.With(settings => settings with { Site = settings.Site with { Climate = Climate } }).Link());
        Assert.Equal(new WeatherDay(8, 0, EtSource.Climate), weather.Ahead(new DateOnly(2025, 8, 9)));
    }

    /// <summary>Rain alone says nothing of the need: the month's figure counts where farm.csv has one, else the day is unknown, and the reason is told.</summary>
    [Fact]
    public void RainAlone_HasTheMonthsNeedOrNone()
    {
        FarmBuilder farm = Farm(LengthUnit.Ft, 45m)
            .Add<WeatherRow>(new RowValues { ["date"] = new DateOnly(2025, 3, 2), ["rain_in"] = 1m });
        FarmWeather weather = FarmWeather.Of(farm.Link());
        Assert.Equal("weather.csv has neither et0 nor temperatures", weather.WhyUnknown);
        Assert.Equal(default, weather.Ahead(new DateOnly(2025, 3, 3)));
        Assert.StartsWith(
            "weather.csv has no et0, and farm.csv no latitude",
            FarmWeather.Of(Latitude(farm, null).Link()).WhyUnknown,
            StringComparison.Ordinal
        );
        Assert.Equal("there is no weather table", FarmWeather.Of(Farm(LengthUnit.Ft, 45m).Link()).WhyUnknown);
        weather = FarmWeather.Of(farm.With(settings => settings with { Site = settings.Site with { Climate = Climate } }).Link());
        Assert.Equal(new WeatherDay(3 * 25.4, 25.4, EtSource.Climate), weather.On(new DateOnly(2025, 3, 2)));
    }

    private static FarmBuilder Latitude(FarmBuilder farm, decimal? latitude) =>
        farm.With(settings => settings with { Site = settings.Site with { Latitude = latitude } });

    private static FarmBuilder Farm(LengthUnit unit, decimal? latitude, decimal altitude = 0m) =>
        new(new FarmSettings { LengthUnit = unit, Site = new FarmSite { Latitude = latitude, Altitude = altitude } });
}
