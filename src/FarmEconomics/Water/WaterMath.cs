namespace FarmEconomics.Water;

/// <summary>Units of water: depths, volumes, hours. Exact: an inch is 25.4 mm, a US gallon 231 cubic inches.</summary>
public static class WaterMath
{
    /// <summary>mm in an inch.</summary>
    public const double MmPerInch = 25.4;

    /// <summary>m in a foot.</summary>
    public const double MetersPerFoot = 0.3048;

    /// <summary>m/s in a mile an hour.</summary>
    public const double MetersPerSecondPerMph = 0.44704;

    /// <summary>Liters in a US gallon.</summary>
    public const double LitersPerGallon = 3.785411784;

    /// <summary>US gallons in an acre-foot: 43,560 ft x 1,728 / 231.</summary>
    public const double GallonsPerAcreFoot = 43_560.0 * 1_728 / 231;

    /// <summary>Water to put on for a depth to reach the roots: mm x m² = liters, over the part that gets there.</summary>
    /// <param name="depthMm">mm wanted at the roots.</param>
    /// <param name="areaM2">m² watered.</param>
    /// <param name="efficiency">The part that reaches the roots, above 0 to 1.</param>
    /// <returns>Liters.</returns>
    public static double Liters(double depthMm, double areaM2, double efficiency) => depthMm * areaM2 / efficiency;

    /// <summary>Hours a drip line runs for a depth on the width it wets.</summary>
    /// <param name="depthIn">Inches.</param>
    /// <param name="widthIn">Width wetted, inches.</param>
    /// <param name="gallonsPerHourPer100Ft">Gallons an hour of 100 feet of tape.</param>
    /// <returns>Hours.</returns>
    public static double DripHours(double depthIn, double widthIn, double gallonsPerHourPer100Ft) =>
        depthIn / 12 * (widthIn / 12) * 100 * 1_728 / 231 / gallonsPerHourPer100Ft;

    /// <summary>
    /// Electricity a pump takes to lift water: kWh per 1,000 gallons = 0.003138 x feet of total lift / efficiency, with 0.7457 kW in a
    /// horsepower and 3,960 gallons a minute x feet in one.
    /// </summary>
    /// <param name="liftFt">Total lift, feet: height, pressure and friction.</param>
    /// <param name="efficiency">Wire to water, above 0 to 1.</param>
    /// <returns>kWh per 1,000 gallons.</returns>
    public static double KwhPer1000Gallons(double liftFt, double efficiency) => 1_000 / 60.0 / 3_960 * 0.7457 * liftFt / efficiency;

    /// <summary>Wire-to-water efficiency of a pump as measured.</summary>
    /// <param name="gallonsPerMinute">Gallons a minute.</param>
    /// <param name="liftFt">Total lift, feet.</param>
    /// <param name="kilowatts">kW into the motor.</param>
    /// <returns>0 to 1.</returns>
    public static double PumpEfficiency(double gallonsPerMinute, double liftFt, double kilowatts) =>
        gallonsPerMinute * liftFt / 3_960 * 0.7457 / kilowatts;

    internal static double Celsius(double fahrenheit) => (fahrenheit - 32) / 1.8;
}
