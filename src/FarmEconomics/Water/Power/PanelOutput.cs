namespace FarmEconomics.Water.Power;

/// <summary>
/// What solar panels give. Source of the formulas: A. Dobos, PVWatts Version 5 Manual, NREL/TP-6A20-62641, 2014.
/// </summary>
public static class PanelOutput
{
    /// <summary>Direct current of panels in the sun.</summary>
    /// <param name="irradiance">Sun on the panels, W per m².</param>
    /// <param name="cellC">Temperature of the cells, °C.</param>
    /// <param name="rated">Rated power, in any unit.</param>
    /// <param name="perDegree">Change of power per °C, below 0.</param>
    /// <returns>Power in the unit of the rated one.</returns>
    public static double Direct(double irradiance, double cellC, double rated, double perDegree) =>
        irradiance / 1000 * rated * (1 + (perDegree * (cellC - 25)));

    /// <summary>Losses one after the other.</summary>
    /// <param name="percents">Each loss, in percent.</param>
    /// <returns>All together, in percent.</returns>
    public static double Losses(IEnumerable<double> percents)
    {
        ArgumentNullException.ThrowIfNull(percents);
        return 100 * (1 - percents.Aggregate(1.0, (left, loss) => left * (1 - (loss / 100))));
    }

    /// <summary>Alternating current out of an inverter.</summary>
    /// <param name="direct">Direct current that goes in.</param>
    /// <param name="most">The most it takes, in the same unit, above 0.</param>
    /// <param name="nominal">Its nominal efficiency, 0 to 1.</param>
    /// <returns>Power in the same unit, at most nominal x most.</returns>
    public static double Alternating(double direct, double most, double nominal)
    {
        double part = direct / most;
        return part <= 0 ? 0
            : Math.Clamp(nominal / 0.9637 * ((-0.0162 * part) - (0.0059 / part) + 0.9858) * direct, 0, nominal * most);
    }
}

/// <summary>How large a battery is to carry loads through days without sun.</summary>
public static class BatterySize
{
    /// <summary>Capacity = load a day x days / usable part x factor for the cold.</summary>
    /// <param name="loadPerDay">Load a day, Wh or kWh.</param>
    /// <param name="days">Days to be carried.</param>
    /// <param name="usablePart">The part that may be drawn, above 0 to 1.</param>
    /// <param name="temperatureFactor">How much larger it must be in the cold; 1 at room temperature.</param>
    /// <returns>Capacity in the unit of the load.</returns>
    public static double Capacity(double loadPerDay, double days, double usablePart, double temperatureFactor = 1) =>
        loadPerDay * days / usablePart * temperatureFactor;
}
