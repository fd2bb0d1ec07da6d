using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>What a machine costs a year when it is replaced at an age.</summary>
/// <param name="Age">Years it is kept.</param>
/// <param name="EqualAnnualCost">The level yearly amount that is worth as much as its price, its running costs and its resale; at no
/// interest the plain average.</param>
public sealed record AgeCost(int Age, decimal EqualAnnualCost);

/// <summary>
/// The age at which a machine costs least a year, and whether to keep an old one for one more. Equal annual cost at age n = (price - resale
/// of n / (1 + i)^n + the sum of running costs of k / (1 + i)^k) x CRF(i, n), running costs at the end of their year. Keep while next
/// year's cost of the old one (running cost + loss of value + interest on what it is worth now) is below the least equal annual cost of a
/// new one. Textbook replacement analysis; G. Paulson, University of Minnesota Extension, for the rule.
/// </summary>
public static class ReplacementAge
{
    /// <summary>The equal annual cost at every age.</summary>
    /// <param name="price">What a new one costs.</param>
    /// <param name="running">Running costs of its first year, second year and so on.</param>
    /// <param name="resale">What it fetches after one year, two years and so on; as many as running costs, or none for nothing.</param>
    /// <param name="rate">Interest a year as a fraction, at least 0.</param>
    /// <returns>One per age, from 1.</returns>
    /// <exception cref="ArgumentException">Resale values that aren't as many as running costs.</exception>
    public static IReadOnlyList<AgeCost> Of(decimal price, IReadOnlyList<decimal> running, IReadOnlyList<decimal> resale, decimal rate)
    {
        ArgumentNullException.ThrowIfNull(running);
        ArgumentNullException.ThrowIfNull(resale);
        ArgumentOutOfRangeException.ThrowIfNegative(rate);
        if (resale.Count > 0 && resale.Count != running.Count)
        {
            throw new ArgumentException("Give a resale value for every year of running costs, or none.", nameof(resale));
        }

        List<AgeCost> ages = [];
        decimal growth = 1m, spent = price;
        for (int year = 0; year < running.Count; year++)
        {
            growth *= 1m + rate;
            spent += running[year] / growth;
            decimal back = resale.Count == 0 ? 0m : resale[year] / growth;
            ages.Add(new AgeCost(year + 1, (spent - back) * Ownership.CapitalRecoveryFactor(rate, year + 1)));
        }

        return ages;
    }

    /// <summary>The age at which it costs least a year; the earliest of several.</summary>
    /// <param name="ages">The ages, at least one.</param>
    /// <returns>That age.</returns>
    public static AgeCost Best(IReadOnlyList<AgeCost> ages)
    {
        ArgumentNullException.ThrowIfNull(ages);
        return ages.MinBy(age => age.EqualAnnualCost) ?? throw new ArgumentException("There is no age to choose from.", nameof(ages));
    }

    /// <summary>What keeping an old machine for one more year costs.</summary>
    /// <param name="running">Repairs and other running cost of that year.</param>
    /// <param name="now">What it is worth now.</param>
    /// <param name="then">What it will be worth after it.</param>
    /// <param name="rate">Interest a year as a fraction.</param>
    /// <returns>Running cost + loss of value + interest on what it is worth now.</returns>
    public static decimal KeepingCost(decimal running, decimal now, decimal then, decimal rate) => running + (now - then) + (rate * now);
}

/// <summary>
/// Owning against hiring the same work: break-even use = fixed cost a year / (price of hiring - running cost of owning); below it hiring is
/// cheaper, above it owning. Source: H. Field and J. Solie, Introduction to Agricultural Engineering Technology, break-even use.
/// </summary>
/// <param name="FixedPerYear">Yearly cost of owning, used or not.</param>
/// <param name="RunningPerUnit">Running cost of a unit of use.</param>
/// <param name="HirePerUnit">Price of hiring a unit of use.</param>
public sealed record OwnOrHire(decimal FixedPerYear, decimal RunningPerUnit, decimal HirePerUnit)
{
    /// <summary>
    /// Units of use a year from which owning is cheaper; not available where hiring never costs more than running one's own.
    /// </summary>
    public Result BreakEvenUse =>
        new CostVolumeProfit(HirePerUnit, -RunningPerUnit, FixedPerYear).YieldFor(1m, "hiring costs no more than running one's own");

    /// <summary>What owning costs at a use.</summary>
    /// <param name="use">Units a year, at least 0.</param>
    /// <returns>Fixed and running cost.</returns>
    public decimal CostOfOwning(decimal use) => FixedPerYear + (RunningPerUnit * use);

    /// <summary>What hiring costs at a use.</summary>
    /// <param name="use">Units a year, at least 0.</param>
    /// <returns>The price of all of it.</returns>
    public decimal CostOfHiring(decimal use) => HirePerUnit * use;
}
