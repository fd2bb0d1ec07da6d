namespace FarmEconomics.Water;

/// <summary>
/// What a crop loses when it gets less water than it needs: loss = Ky x (1 - actual / potential evapotranspiration), FAO-56, Eq. 90, after
/// J. Doorenbos and A.H. Kassam, Yield response to water, FAO Irrigation and Drainage Paper 33, 1979. Never more than all of it: with Ky
/// above 1 the line reaches no yield before it reaches no water (FAO-56, p. 177).
/// </summary>
public static class YieldLoss
{
    /// <summary>The part of the yield lost.</summary>
    /// <param name="response">Ky, 0 or more.</param>
    /// <param name="missed">Evapotranspiration missed in the period, mm.</param>
    /// <param name="potential">Potential evapotranspiration of the whole growing period (of the stage with a stage's Ky), mm.</param>
    /// <returns>0 to 1; 0 where nothing is needed.</returns>
    public static double Of(double response, double missed, double potential) =>
        potential > 0 ? Math.Clamp(response * missed / potential, 0, 1) : 0;

    /// <summary>Stages together: what is left of each, multiplied.</summary>
    /// <param name="stages">The part lost in each stage, 0 to 1.</param>
    /// <returns>The part lost in all, 0 to 1.</returns>
    public static double Together(IEnumerable<double> stages)
    {
        ArgumentNullException.ThrowIfNull(stages);
        return 1 - stages.Aggregate(1.0, (left, lost) => left * (1 - Math.Clamp(lost, 0, 1)));
    }
}
