using FarmEconomics.Budgets;
using FarmEconomics.Records;

namespace FarmEconomics.Pricing;

/// <summary>
/// Money and hours by what they vary with, labor apart from the rest, so that a price can be asked for at another yield or another
/// value of an hour. In the farm's currency and hours; unrounded.
/// </summary>
public sealed class CostBlock
{
    private readonly decimal[] labor = new decimal[Enum.GetValues<VariesWith>().Length];
    private readonly decimal[] other = new decimal[Enum.GetValues<VariesWith>().Length];
    private readonly decimal[] hours = new decimal[Enum.GetValues<Stage>().Length];

    /// <summary>All money but labor.</summary>
    public decimal Other => other.Sum();

    /// <summary>Labor on the labor line, hired and imputed.</summary>
    public decimal Labor => labor.Sum();

    /// <summary>Labor hours, those of overhead pools left out.</summary>
    public decimal Hours => hours.Sum();

    /// <summary>All money.</summary>
    public decimal Full => Other + Labor;

    /// <summary>What would go if the crop went: all money but what varies with nothing.</summary>
    public decimal Avoidable => Full - other[(int)VariesWith.Nothing] - labor[(int)VariesWith.Nothing];

    /// <summary>What picking, packing and selling cost: all money that varies with quantity or sales.</summary>
    public decimal Handling => other[(int)VariesWith.Quantity] + other[(int)VariesWith.Sales] + labor[(int)VariesWith.Quantity] + labor[(int)VariesWith.Sales];

    internal void AddMoney(bool isLabor, VariesWith behavior, decimal amount) => (isLabor ? labor : other)[(int)behavior] += amount;

    internal void AddHours(Stage stage, decimal amount) => hours[(int)stage] += amount;

    internal void Add(PoolCharge charge)
    {
        for (int i = 0; i < charge.Source.BehaviorShares.Count; i++)
        {
            AddMoney(charge.Line == StatementLine.Labor, (VariesWith)i, charge.Amount.Amount * charge.Source.BehaviorShares[i]);
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
    /// The money and hours of one unit when <paramref name="yieldFactor"/> times as much had been picked and sold: area and fixed cost, and nursery,
    /// growing and overhead hours, stay as they were and spread over more units; all else stays the same per unit (docs/methods.md, section 11).
    /// </summary>
    internal UnitCost PerUnit(decimal units, decimal yieldFactor = 1m)
    {
        decimal atYield = units * yieldFactor;
        return new UnitCost(
            Spread(other, units, atYield, fixedToo: true),
            Spread(labor, units, atYield, fixedToo: true),
            Spread(other, units, atYield, fixedToo: false) + Spread(labor, units, atYield, fixedToo: false),
            ((hours[(int)Stage.Nursery] + hours[(int)Stage.Grow] + hours[(int)Stage.Overhead]) / atYield)
                + ((hours[(int)Stage.Harvest] + hours[(int)Stage.Pack] + hours[(int)Stage.Sell]) / units));
    }

    private static decimal Spread(decimal[] money, decimal units, decimal atYield, bool fixedToo) =>
        ((money[(int)VariesWith.Area] + (fixedToo ? money[(int)VariesWith.Nothing] : 0m)) / atYield)
        + ((money[(int)VariesWith.Quantity] + money[(int)VariesWith.Sales]) / units);
}

/// <summary>What one unit of a crop costs, in the farm's currency and hours per unit; unrounded.</summary>
/// <param name="Other">All money but labor.</param>
/// <param name="Labor">Labor, hired and imputed.</param>
/// <param name="Avoidable">The part of both that varies with area, quantity or sales.</param>
/// <param name="Hours">Labor hours.</param>
public readonly record struct UnitCost(decimal Other, decimal Labor, decimal Avoidable, decimal Hours)
{
    /// <summary>All money.</summary>
    public decimal Full => Other + Labor;

    /// <summary>Adds.</summary>
    /// <param name="left">Left.</param>
    /// <param name="right">Right.</param>
    /// <returns>The sum.</returns>
    public static UnitCost operator +(UnitCost left, UnitCost right) =>
        new(left.Other + right.Other, left.Labor + right.Labor, left.Avoidable + right.Avoidable, left.Hours + right.Hours);
}
