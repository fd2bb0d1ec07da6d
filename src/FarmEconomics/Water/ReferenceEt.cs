namespace FarmEconomics.Water;

/// <summary>What a day's weather was, in metric units, for the reference evapotranspiration of grass.</summary>
/// <param name="TMaxC">Highest temperature, °C.</param>
/// <param name="TMinC">Lowest temperature, °C.</param>
/// <param name="SolarMj">Solar radiation on the ground, MJ per m² and day.</param>
/// <param name="VaporKpa">Actual vapor pressure, kPa.</param>
/// <param name="WindAt2M">Wind two meters above the ground, m/s.</param>
public readonly record struct EtDay(double TMaxC, double TMinC, double SolarMj, double VaporKpa, double WindAt2M);

/// <summary>
/// Reference evapotranspiration of grass, in mm a day. Source of every formula: R.G. Allen, L.S. Pereira, D. Raes and M. Smith, Crop
/// evapotranspiration, FAO Irrigation and Drainage Paper 56, 1998; the number of the equation stands at each. Figures are physical, not
/// money, and so are of type double. Immutable and safe to share between threads.
/// </summary>
public static class ReferenceEt
{
    /// <summary>Evaporation equal to one MJ per m²: mm (Eq. 20).</summary>
    public const double MmPerMj = 0.408;

    private const double SolarConstant = 0.0820;
    private const double StefanBoltzmann = 4.903e-9;
    private const double Kelvin = 273.16;
    private const double LeastWind = 0.5;
    private const double DarkestSky = 0.3;

    /// <summary>
    /// Penman-Monteith (Eq. 6); wind counts as at least 0.5 m/s, cloud (radiation over that from a clear sky) from 0.3 to 1, as in the
    /// standardized equation of the American Society of Civil Engineers (2005) and the program the daily figures are from.
    /// </summary>
    /// <param name="day">The day, or the mean of a month.</param>
    /// <param name="sky">What the sun sends there on that day.</param>
    /// <param name="altitudeM">Height above the sea, m.</param>
    /// <param name="soilHeatMj">Heat going into the soil, MJ per m² and day: 0 for a day, Eq. 43 and 44 for a month.</param>
    /// <returns>mm a day, at least 0.</returns>
    public static double PenmanMonteith(EtDay day, Sky sky, double altitudeM, double soilHeatMj = 0)
    {
        double mean = (day.TMaxC + day.TMinC) / 2;
        double wind = Math.Max(LeastWind, day.WindAt2M);
        double slope = SlopeKpa(mean);
        double gamma = PsychrometricKpa(altitudeM);
        double deficit = Math.Max(0, MeanSaturationKpa(day.TMaxC, day.TMinC) - day.VaporKpa);
        double radiation = NetRadiation(day, sky, altitudeM) - soilHeatMj;
        double top = (MmPerMj * slope * radiation) + (gamma * 900 / (mean + 273) * wind * deficit);
        return Math.Max(0, top / (slope + (gamma * (1 + (0.34 * wind)))));
    }

    /// <summary>Hargreaves, from temperatures alone (Eq. 52): low in wind above 3 m/s, high in humid air.</summary>
    /// <param name="tMaxC">Highest temperature, °C.</param>
    /// <param name="tMinC">Lowest temperature, °C.</param>
    /// <param name="sky">What the sun sends there on that day.</param>
    /// <returns>mm a day, at least 0.</returns>
    public static double Hargreaves(double tMaxC, double tMinC, Sky sky) => Math.Max(0,
        0.0023 * (((tMaxC + tMinC) / 2) + 17.8) * Math.Sqrt(Math.Max(0, tMaxC - tMinC)) * sky.ExtraterrestrialMj * MmPerMj);

    /// <summary>What the sun sends to a place on a day (Eq. 21 to 25 and 34), by latitude and day of the year.</summary>
    /// <param name="latitudeDegrees">Latitude, -66 to 66 degrees, south below 0.</param>
    /// <param name="dayOfYear">1 to 366.</param>
    /// <returns>Radiation above the air, and hours of daylight.</returns>
    public static Sky SkyOf(double latitudeDegrees, int dayOfYear)
    {
        double latitude = latitudeDegrees * Math.PI / 180;
        double angle = 2 * Math.PI / 365 * dayOfYear;
        double distance = 1 + (0.033 * Math.Cos(angle));
        double declination = 0.409 * Math.Sin(angle - 1.39);
        double sunset = Math.Acos(Math.Clamp(-Math.Tan(latitude) * Math.Tan(declination), -1, 1));
        double sent = 24 * 60 / Math.PI * SolarConstant * distance
            * ((sunset * Math.Sin(latitude) * Math.Sin(declination)) + (Math.Cos(latitude) * Math.Cos(declination) * Math.Sin(sunset)));
        return new Sky(Math.Max(0, sent), 24 / Math.PI * sunset);
    }

    /// <summary>Vapor pressure of air that can hold no more (Eq. 11), kPa.</summary>
    /// <param name="temperatureC">°C.</param>
    /// <returns>kPa.</returns>
    public static double SaturationKpa(double temperatureC) => 0.6108 * Math.Exp(17.27 * temperatureC / (temperatureC + 237.3));

    /// <summary>The mean of that at the day's highest and lowest temperature (Eq. 12), kPa.</summary>
    /// <param name="tMaxC">°C.</param>
    /// <param name="tMinC">°C.</param>
    /// <returns>kPa.</returns>
    public static double MeanSaturationKpa(double tMaxC, double tMinC) => (SaturationKpa(tMaxC) + SaturationKpa(tMinC)) / 2;

    /// <summary>Actual vapor pressure from relative humidity (Eq. 17), kPa.</summary>
    /// <param name="tMaxC">°C.</param>
    /// <param name="tMinC">°C.</param>
    /// <param name="rhMaxPercent">Highest relative humidity, percent.</param>
    /// <param name="rhMinPercent">Lowest relative humidity, percent.</param>
    /// <returns>kPa.</returns>
    public static double VaporOfHumidity(double tMaxC, double tMinC, double rhMaxPercent, double rhMinPercent) =>
        ((SaturationKpa(tMinC) * rhMaxPercent / 100) + (SaturationKpa(tMaxC) * rhMinPercent / 100)) / 2;

    /// <summary>Slope of the curve of saturation (Eq. 13), kPa per °C.</summary>
    /// <param name="temperatureC">°C.</param>
    /// <returns>kPa per °C.</returns>
    public static double SlopeKpa(double temperatureC) => 4098 * SaturationKpa(temperatureC) / Math.Pow(temperatureC + 237.3, 2);

    /// <summary>Pressure of the air at a height (Eq. 7), kPa.</summary>
    /// <param name="altitudeM">m.</param>
    /// <returns>kPa.</returns>
    public static double PressureKpa(double altitudeM) => 101.3 * Math.Pow((293 - (0.0065 * altitudeM)) / 293, 5.26);

    /// <summary>Psychrometric constant (Eq. 8), kPa per °C.</summary>
    /// <param name="altitudeM">m.</param>
    /// <returns>kPa per °C.</returns>
    public static double PsychrometricKpa(double altitudeM) => 0.665e-3 * PressureKpa(altitudeM);

    /// <summary>Wind at two meters from wind measured higher or lower (Eq. 47), m/s.</summary>
    /// <param name="wind">Wind measured, m/s.</param>
    /// <param name="heightM">Height of the gauge, m.</param>
    /// <returns>m/s.</returns>
    public static double WindAt2M(double wind, double heightM) => wind * 4.87 / Math.Log((67.8 * heightM) - 5.42);

    /// <summary>Solar radiation from hours of sunshine (Eq. 35), MJ per m² and day.</summary>
    /// <param name="sunshineHours">Hours of bright sun.</param>
    /// <param name="sky">What the sun sends there on that day.</param>
    /// <returns>MJ per m² and day.</returns>
    public static double SolarOfSunshine(double sunshineHours, Sky sky) =>
        (0.25 + (0.50 * (sky.DaylightHours > 0 ? sunshineHours / sky.DaylightHours : 0))) * sky.ExtraterrestrialMj;

    /// <summary>Solar radiation from a clear sky (Eq. 37), MJ per m² and day.</summary>
    /// <param name="sky">What the sun sends there on that day.</param>
    /// <param name="altitudeM">m.</param>
    /// <returns>MJ per m² and day.</returns>
    public static double ClearSky(Sky sky, double altitudeM) => (0.75 + (2e-5 * altitudeM)) * sky.ExtraterrestrialMj;

    /// <summary>Net radiation (Eq. 38 to 40), MJ per m² and day.</summary>
    /// <param name="day">The day.</param>
    /// <param name="sky">What the sun sends there on that day.</param>
    /// <param name="altitudeM">m.</param>
    /// <returns>MJ per m² and day.</returns>
    public static double NetRadiation(EtDay day, Sky sky, double altitudeM)
    {
        double clear = ClearSky(sky, altitudeM);
        double fourth = (Math.Pow(day.TMaxC + Kelvin, 4) + Math.Pow(day.TMinC + Kelvin, 4)) / 2;
        double cloud = (1.35 * (clear > 0 ? Math.Clamp(day.SolarMj / clear, DarkestSky, 1) : 1)) - 0.35;
        double sentBack = StefanBoltzmann * fourth * (0.34 - (0.14 * Math.Sqrt(Math.Max(0, day.VaporKpa)))) * cloud;
        return (0.77 * day.SolarMj) - sentBack;
    }
}

/// <summary>What the sun sends to a place on a day.</summary>
/// <param name="ExtraterrestrialMj">Radiation above the air, MJ per m² and day.</param>
/// <param name="DaylightHours">Hours of daylight.</param>
public readonly record struct Sky(double ExtraterrestrialMj, double DaylightHours);
