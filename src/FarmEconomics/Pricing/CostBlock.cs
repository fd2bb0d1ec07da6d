using FarmEconomics.Budgets;
using FarmEconomics.Records;

namespace FarmEconomics.Pricing;

/// <summary>
/// Money and hours by what they vary with, labor apart from the rest, so that a price can be asked for at another yield or another
/// value of an hour. In the farm's currency and hours; unrounded.
/// </summary>
public sealed class CostBlock
{
    private readonly decimal[] labor = new decimal[Enum.GetValues<CostDriver>().Length];
    private readonly decimal[] other = new decimal[Enum.GetValues<CostDriver>().Length];
    private readonly decimal[] hours = new decimal[Enum.GetValues<CostDriver>().Length];

    /// <summary>All money but labor.</summary>
    public decimal Other => other.Sum();

    /// <summary>Labor on the labor line, hired and imputed.</summary>
    public decimal Labor => labor.Sum();

    /// <summary>Labor hours, those of overhead pools left out.</summary>
    public decimal Hours => hours.Sum();

    /// <summary>All money.</summary>
    public decimal Full => Other + Labor;

    /// <summary>What picking, packing and selling one more costs: all money that varies with quantity or units sold.</summary>
    public decimal Handling => Sum(CostDriver.Quantity) + Sum(CostDriver.Units);

    private decimal Sum(CostDriver driver) => other[(int)driver] + labor[(int)driver];

    internal void AddMoney(bool isLabor, CostDriver behavior, decimal amount) => (isLabor ? labor : other)[(int)behavior] += amount;

    internal void AddHours(CostDriver behavior, decimal amount) => hours[(int)behavior] += amount;

    internal void Add(PoolCharge charge)
    {
        for (int i = 0; i < charge.Source.BehaviorShares.Count; i++)
        {
            AddMoney(charge.Line == StatementLine.Labor, (CostDriver)i, charge.Amount.Amount * charge.Source.BehaviorShares[i]);
        }
    }

    internal void Add(CostBlock block, decimal factor = 1m)
    {
        for (int i = 0; i < labor.Length; i++)
        {
            labor[i] += block.labor[i] * factor;
            other[i] += block.other[i] * factor;
        }

        for (int i = 0; i < hours.Length; i++)
        {
            hours[i] += block.hours[i] * factor;
        }
    }

    /// <summary>
    /// The money and hours of one unit when <paramref name="yieldFactor"/> times as much had been picked and sold: those of beds, trips and
    /// fixed ones stay as they were and spread over more units; all else stays the same per unit (docs/methods.md, section 11).
    /// </summary>
    internal UnitCost PerUnit(decimal units, decimal yieldFactor = 1m)
    {
        decimal atYield = units * yieldFactor;
        return new UnitCost(Spread(other, units, atYield), Spread(labor, units, atYield), Spread(hours, units, atYield));
    }

    private static decimal Staying(decimal[] parts) => parts[(int)CostDriver.Fixed] + parts[(int)CostDriver.Trips];

    private static decimal Spread(decimal[] parts, decimal units, decimal atYield) =>
        ((parts[(int)CostDriver.Length] + parts[(int)CostDriver.BedTime] + Staying(parts)) / atYield)
        + ((parts[(int)CostDriver.Quantity] + parts[(int)CostDriver.Units]) / units);
}

/// <summary>What one unit of a crop costs, in the farm's currency and hours per unit; unrounded.</summary>
/// <param name="Other">All money but labor.</param>
/// <param name="Labor">Labor, hired and imputed.</param>
/// <param name="Hours">Labor hours.</param>
public readonly record struct UnitCost(decimal Other, decimal Labor, decimal Hours)
{
    /// <summary>All money.</summary>
    public decimal Full => Other + Labor;

    /// <summary>Adds.</summary>
    /// <param name="left">Left.</param>
    /// <param name="right">Right.</param>
    /// <returns>The sum.</returns>
    public static UnitCost operator +(UnitCost left, UnitCost right) =>
        new(left.Other + right.Other, left.Labor + right.Labor, left.Hours + right.Hours);
}
