namespace FarmEconomics.Planning.Programs;

/// <summary>What makes a plan safer, as parts of a linear program. Each takes a quantity per season that holds its income.</summary>
public static class SeasonRisk
{
    /// <summary>
    /// Adds the mean of the worst part of the seasons (conditional value at risk) to the objective. Source: R. T. Rockafellar and
    /// S. Uryasev, Optimization of conditional value-at-risk, Journal of Risk 2(3), 2000.
    /// </summary>
    /// <param name="model">The model.</param>
    /// <param name="incomes">The quantity of each season that holds its income.</param>
    /// <param name="chances">The chance of each season; they sum to 1.</param>
    /// <param name="tail">The worst part of the seasons, above 0 and at most 1: 0.2 for the worst fifth.</param>
    /// <param name="weight">What a unit of it adds to the objective.</param>
    public static void AddTailMean(LinearModel model, IReadOnlyList<int> incomes, IReadOnlyList<double> chances, double tail, double weight)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(incomes);
        ArgumentNullException.ThrowIfNull(chances);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(tail);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(tail, 1.0);
        int edge = model.AddQuantity("edge of the worst seasons", weight, least: double.NegativeInfinity);
        for (int i = 0; i < incomes.Count; i++)
        {
            int below = model.AddQuantity("below the edge", -weight * chances[i] / tail);
            AddShortfall(model, below, edge, incomes[i]);
        }
    }

    /// <summary>
    /// Adds by how much each season falls short of the mean (the method of Hazell, 1971, known as MOTAD: minimum of total absolute
    /// deviations; shortfalls are half of those).
    /// </summary>
    /// <param name="model">The model.</param>
    /// <param name="incomes">The quantity of each season that holds its income.</param>
    /// <param name="mean">The quantity that holds the mean income.</param>
    /// <param name="worth">What a unit of shortfall adds to the objective, below 0.</param>
    public static void AddShortfalls(LinearModel model, IReadOnlyList<int> incomes, int mean, double worth)
    {
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(incomes);
        foreach (int income in incomes)
        {
            AddShortfall(model, model.AddQuantity("short of the mean", worth), mean, income);
        }
    }

    /// <summary>short + income of the season - what it is held against is at least 0.</summary>
    private static void AddShortfall(LinearModel model, int below, int against, int income)
    {
        int limit = model.AddLimit("shortfall", 0.0, double.PositiveInfinity);
        model.Set(limit, below, 1.0);
        model.Set(limit, income, 1.0);
        model.Set(limit, against, -1.0);
    }
}
