using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>
/// Which days are looked at where weather or log begin late, break off, or tell little; and figures at the edge of a formula.
/// </summary>
public class FarmWaterEdgesTests
{
    private static readonly DateOnly July = new(2025, 7, 1);

    /// <summary>Ten days known, three in a row of which only the rain is, one known, two of which only the rain is.</summary>
    private static FarmBuilder Patchy() => WholeFarm.Built().Weather("2025-07-01", "2025-07-10", 4m)
        .Weather("2025-07-11", "2025-07-13", null)
        .Weather("2025-07-14", "2025-07-14", 6m).Weather("2025-07-15", "2025-07-16", null);

    /// <summary>
    /// Days of the table stay unknown, the last too, though days after it are taken to be as the last seven known: (6 + 6 x 4) / 7.
    /// </summary>
    [Fact]
    public void DaysToCome_BeginAfterTheTable()
    {
        FarmWater farm = FarmWater.Of(Patchy().Review().Trace, ahead: true);
        Assert.Equal(
            "Station Unknown Unknown Unknown Station Unknown Unknown Ahead",
            string.Join(' ', Enumerable.Range(9, 8).Select(day => farm.WeatherOn(July.AddDays(day)).Source))
        );
        Assert.Equal(30.0 / 7, farm.WeatherOn(new DateOnly(2025, 7, 17)).Et0, 1e-9);
    }

    [Fact]
    public void WeatherOfRainAlone_HasNoSowings()
    {
        FarmWater farm = WholeFarm.Built().Weather("2025-07-01", "2025-07-31", null).Block("A")
            .Grows("A", "2025-07-10", "2025-07-20").Water();
        Assert.NotNull(farm.WhyUnknown);
        Assert.Empty(farm.Sowings);
    }

    [Fact]
    public void StayOfNoDays_IsNoSowing()
    {
        FarmTrace trace = WholeFarm.Built().Weather("2025-07-01", "2025-07-31", 4m).Block("A")
            .Grows("A", "2025-07-10", "2025-07-20").Review().Trace;
        Assert.Empty(FarmWater.Of(trace, stay => stay.In).Sowings);
        Assert.Single(FarmWater.Of(trace, stay => stay.In.AddDays(1)).Sowings);
    }

    /// <summary>Rows of June 4, 10 and 6, in this order: known under the roof are June 4 to 10, whatever the order.</summary>
    [Fact]
    public void Roof_IsKnownFromTheEarliestRowToTheLatest()
    {
        FarmWater farm = WholeFarm.Built().Weather("2025-06-01", "2025-06-30", 4m).Block("A")
            .Grows("A", "2025-06-01", "2025-06-30", structure: "Tunnel").Watered("2025-06-04", "A", 20m).Watered("2025-06-10", "A", 20m)
            .Watered("2025-06-06", "A", 20m).Water();
        Assert.Equal(
            [4, 5, 6, 7, 8, 9, 10],
            Enumerable.Range(1, 30).Where(day => !farm.Log.IsUnknown(farm.Sowings[0], new DateOnly(2025, 6, day)))
        );
    }

    /// <summary>
    /// The same day 2,000 m up, by a farm in meters and by one in feet (2,000 / 0.3048), is what the formula gives at 2,000 m.
    /// </summary>
    [Theory]
    [InlineData(LengthUnit.M, 21.5, 12.3, 10.0, 2.0, 2000.0)]
    [InlineData(LengthUnit.Ft, 70.7, 54.14, 50.0, 2.0 / 0.44704, 2000 / 0.3048)]
    public void Altitude_IsInTheFarmsUnit(LengthUnit unit, double high, double low, double dew, double wind, double altitude)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings
        {
            LengthUnit = unit,
            Site = new FarmSite { Latitude = 45m, Altitude = (decimal)altitude }
        }).Add<WeatherRow>(new RowValues
        {
            ["date"] = July,
            ["tmax_f"] = (decimal)high,
            ["tmin_f"] = (decimal)low,
            ["dewpoint_f"] = (decimal)dew,
            ["wind_mph"] = (decimal)wind,
            ["solar_mj"] = 22m,
        });
        EtDay day = new(21.5, 12.3, 22, ReferenceEt.SaturationKpa(10), 2);
        double there = ReferenceEt.PenmanMonteith(day, ReferenceEt.SkyOf(45, July.DayOfYear), 2000);

        Assert.Equal(there, FarmWeather.Of(farm.Link()).On(July).Et0, 1e-6);
        Assert.True(Math.Abs(there - ReferenceEt.PenmanMonteith(day, ReferenceEt.SkyOf(45, July.DayOfYear), 2000 * 0.3048)) > 0.01);
    }

    /// <summary>
    /// In a polar night the sun sends nothing; the sky counts as clear then: net radiation is what is sent back, below 0.
    /// </summary>
    [Fact]
    public void PolarNight_HasNoSunAndAClearSky()
    {
        Sky night = new(0, 0);
        Assert.Equal(0.0, ReferenceEt.SolarOfSunshine(0, night));

        // 4.903e-9 x 273.16^4 x (0.34 - 0.14 x 0.5) x (1.35 - 0.35), FAO-56, Eq. 39
        double back = 4.903e-9 * Math.Pow(273.16, 4) * 0.27;
        Assert.Equal(-back, ReferenceEt.NetRadiation(new EtDay(0, 0, 0, 0.25, 2), night, 100), 1e-6);
    }

    /// <summary>
    /// Of a soil that holds half a mm, 0.15 mm are taken up without stress; 0.3 mm dry it gives (0.5 - 0.3) / (0.7 x 0.5).
    /// </summary>
    [Theory]
    [InlineData(0.1, 1.0)]
    [InlineData(0.3, 0.2 / 0.35)]
    [InlineData(0.5, 0.0)]
    public void Stress_OfASoilThatHoldsLittle_IsThatOfItsParts(double depletion, double stress) =>
        Assert.Equal(stress, RootZone.Stress(depletion, 0.5, 0.3), 1e-9);

    /// <summary>
    /// A coefficient of 0.45 is moved for the climate, one below is not (FAO-56, Eq. 65): wind of 4 m/s and 45% at a crop of 3 m add 0.08.
    /// </summary>
    [Theory]
    [InlineData(0.45, 0.53)]
    [InlineData(0.44, 0.44)]
    public void Coefficient_FromHalfwayUp_IsMovedForTheClimate(double table, double there) =>
        Assert.Equal(there, CropCoefficients.ForClimate(table, 3, 4, 45), 1e-9);

    [Theory]
    [InlineData("Kale", WaterFigure.Published)]
    [InlineData("Basil", WaterFigure.NotListed)]
    public void Coefficients_OfTheTable_SayWhetherItListsTheCrop(string crop, WaterFigure from) =>
        Assert.Equal(from, CropWaterTable.Find(crop).CoefficientsFrom);
}
