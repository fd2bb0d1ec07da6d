using FarmEconomics.Costing;

namespace FarmEconomics.Budgets;

/// <summary>
/// What it took to get a perennial to its first bearing season, spread over the seasons it bears: cost x CRF(i, bearing years), the level
/// payment at the end of each. Establishment as an asset in enterprise budgets of perennial crops; checked on figures of Michigan State
/// University Extension bulletin E3315.
/// </summary>
/// <param name="Cost">Cost up to the first bearing season with its interest, in currency; at least 0.</param>
/// <param name="AnnualRate">Cost of capital a year, as a fraction; at least 0.</param>
/// <param name="BearingYears">Seasons it bears, above 0.</param>
public sealed record Establishment(decimal Cost, decimal AnnualRate, decimal BearingYears)
{
    /// <summary>The part of it each bearing season carries, unrounded.</summary>
    public decimal AnnualPart => Cost * Ownership.CapitalRecoveryFactor(AnnualRate, BearingYears);

    /// <summary>
    /// Costs of the years before the first bearing season with interest up to its beginning; each counts at the end of its year.
    /// </summary>
    /// <param name="costs">The costs, oldest first, the last that of the year before the first bearing season.</param>
    /// <param name="rate">Cost of capital a year, as a fraction.</param>
    /// <returns>The sum of cost x (1 + rate)^(years left), unrounded.</returns>
    public static decimal WithInterest(IReadOnlyList<decimal> costs, decimal rate)
    {
        ArgumentNullException.ThrowIfNull(costs);
        ArgumentOutOfRangeException.ThrowIfNegative(rate);
        return costs.Aggregate(0m, (sum, cost) => (sum * (1m + rate)) + cost);
    }

    /// <summary>The price at which a bearing season covers its own cost and its part of the establishment.</summary>
    /// <param name="fixedCost">Cost of the season that doesn't change with the yield.</param>
    /// <param name="costPerUnit">Cost of a unit picked.</param>
    /// <param name="yield">Units picked, above 0.</param>
    /// <returns>Money a unit.</returns>
    public decimal BreakEvenPrice(decimal fixedCost, decimal costPerUnit, decimal yield)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(yield);
        return ((fixedCost + AnnualPart) / yield) + costPerUnit;
    }
}
