namespace FarmEconomics.Water;

/// <summary>What happened to the water in the soil roots reach, on one day, in mm.</summary>
/// <param name="Before">Depletion at the end of the day before: how much less than full, 0 or more.</param>
/// <param name="Stress">Part of the crop's need that it could take up, 0 to 1.</param>
/// <param name="Used">What the crop took up.</param>
/// <param name="Rain">Rain that reached the bed.</param>
/// <param name="Water">Watering that reached the roots.</param>
/// <param name="Drained">What was more than the soil holds.</param>
/// <param name="After">Depletion at the end of the day.</param>
public readonly record struct RootZoneDay(double Before, double Stress, double Used, double Rain, double Water, double Drained,
    double After)
{
    /// <summary>In less used, stored and drained: 0.</summary>
    public double NotAccountedFor => Rain + Water - Used - Drained - (Before - After);
}

/// <summary>
/// The daily balance of the soil roots reach. FAO-56, Eq. 82 to 88: depletion is how far the soil is from full; beyond what is readily
/// available the crop takes up less. A day's need and stress come from the evening before, then water comes in and surplus drains.
/// </summary>
public static class RootZone
{
    /// <summary>The part of its need a crop can take up (Eq. 84).</summary>
    /// <param name="depletion">Depletion, mm.</param>
    /// <param name="total">Total available water, mm, above 0.</param>
    /// <param name="readily">The part of it that is readily available, 0 to below 1.</param>
    /// <returns>0 to 1.</returns>
    public static double Stress(double depletion, double total, double readily) =>
        depletion <= readily * total ? 1 : Math.Clamp((total - depletion) / ((1 - readily) * total), 0, 1);

    /// <summary>One day.</summary>
    /// <param name="before">Depletion the evening before, mm.</param>
    /// <param name="soil">What the soil holds for these roots that day.</param>
    /// <param name="need">What the crop would take up with water enough, mm.</param>
    /// <param name="rain">Rain, mm.</param>
    /// <param name="water">Watering that reaches the roots, mm.</param>
    /// <returns>The day.</returns>
    public static RootZoneDay Next(double before, SoilWater soil, double need, double rain, double water)
    {
        double stress = Stress(before, soil.Total, soil.Readily);
        return Next(before, soil.Total, stress, stress * need, rain + water) with { Rain = rain, Water = water };
    }

    /// <summary>One day whose uptake is known; no more is taken up than there is.</summary>
    /// <param name="before">Depletion the evening before, mm.</param>
    /// <param name="total">Total available water, mm.</param>
    /// <param name="stress">The stress told with it, 0 to 1.</param>
    /// <param name="taken">What the crop takes up if it is there, mm.</param>
    /// <param name="water">All water that comes in, mm.</param>
    /// <returns>The day, its water told as watering.</returns>
    public static RootZoneDay Next(double before, double total, double stress, double taken, double water)
    {
        double used = Math.Min(taken, Math.Max(0, total - before + water));
        double depletion = before + used - water;
        return new RootZoneDay(before, stress, used, 0, water, Math.Max(0, -depletion), Math.Max(0, depletion));
    }
}

/// <summary>What the soil holds for a crop's roots.</summary>
/// <param name="Total">Total available water: field capacity less wilting point, times the depth of the roots (Eq. 82), mm.</param>
/// <param name="Readily">The part of it a crop takes up without stress, p of Table 22, held constant.</param>
public readonly record struct SoilWater(double Total, double Readily)
{
    /// <summary>Readily available water (Eq. 83), mm.</summary>
    public double ReadilyMm => Total * Readily;
}
