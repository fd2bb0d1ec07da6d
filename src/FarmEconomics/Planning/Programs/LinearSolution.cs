namespace FarmEconomics.Planning.Programs;

/// <summary>How solving a linear program ended.</summary>
public enum SolveStatus
{
    /// <summary>The best was found.</summary>
    Optimal,

    /// <summary>No choice keeps within all limits.</summary>
    Infeasible,

    /// <summary>The objective grows without end.</summary>
    Unbounded,

    /// <summary>The solver gave up: time ran out, or the numbers were too ill-behaved.</summary>
    NotSolved,
}

/// <summary>The best choice under a model's limits.</summary>
/// <param name="Status">How solving ended; without an optimum the rest is empty.</param>
/// <param name="Objective">The objective's value.</param>
/// <param name="Values">Each quantity, in the model's order.</param>
/// <param name="ShadowPrices">
/// What one more unit of each limit's bound adds to the objective, in the model's order; 0 where it doesn't bind. Empty where a quantity
/// must be whole. Where several limits bind together only their sum may be a fact: see <see cref="LimitWorth"/>.
/// </param>
/// <param name="ReducedCosts">
/// What a unit more of each quantity adds to the objective beyond what it takes from others; below 0 for one left out: by so much it
/// misses. Empty where a quantity must be whole.
/// </param>
public sealed record LinearSolution(
    SolveStatus Status,
    double Objective,
    IReadOnlyList<double> Values,
    IReadOnlyList<double> ShadowPrices,
    IReadOnlyList<double> ReducedCosts
)
{
    /// <summary>Prices this small are the solver's rounding; a bound they would price may be infinite.</summary>
    private const double Nothing = 1e-9;

    /// <summary>True when the best was found.</summary>
    public bool IsOptimal => Status == SolveStatus.Optimal;

    /// <summary>A solution without an optimum.</summary>
    /// <param name="status">How solving ended.</param>
    /// <returns>The solution.</returns>
    public static LinearSolution None(SolveStatus status) => new(status, double.NaN, [], [], []);

    /// <summary>What a limit's sum comes to.</summary>
    /// <param name="model">The model this is the solution of.</param>
    /// <returns>The sums in the order of the model's limits.</returns>
    public double[] Used(LinearModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        double[] used = new double[model.Limits.Count];
        foreach (Entry entry in model.Entries)
        {
            used[entry.Limit] += entry.Takes * Values[entry.Quantity];
        }

        return used;
    }

    /// <summary>
    /// The value of the dual problem: each shadow price times the bound it prices, each reduced cost times the bound it stands at. By
    /// strong duality it equals the objective. Source: Dantzig, Linear Programming and Extensions, 1963, ch. 6.
    /// </summary>
    /// <param name="model">The model this is the solution of; none of its quantities must be whole.</param>
    /// <returns>The dual objective.</returns>
    public double DualObjective(LinearModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        double sum = 0.0;
        for (int i = 0; i < model.Limits.Count; i++)
        {
            sum += AtItsBound(ShadowPrices[i], model.Limits[i].Least, model.Limits[i].Most);
        }

        for (int i = 0; i < model.Quantities.Count; i++)
        {
            sum += AtItsBound(ReducedCosts[i], model.Quantities[i].Least, model.Quantities[i].Most);
        }

        return sum;
    }

    private static double AtItsBound(double price, double least, double most) =>
        Math.Abs(price) < Nothing ? 0.0 : price * (price > 0.0 ? most : least);
}
