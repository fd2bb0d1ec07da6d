using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>
/// A two-way table over price and yield: net return and gross margin per bed-foot-week. The cell at (1, 1) is the budget to the cent.
/// </summary>
public sealed class SensitivityGrid
{
    private SensitivityGrid(SensitivityModel model, IReadOnlyList<decimal> priceFactors, IReadOnlyList<decimal> yieldFactors)
    {
        Model = model;
        PriceFactors = priceFactors;
        YieldFactors = yieldFactors;
        NetReturn = priceFactors
            .Select(price => (IReadOnlyList<Money>)[.. yieldFactors.Select(yield => Money.Rounded(model.NetReturn(price, yield)))])
            .ToList();
        MarginPerBedFootWeek = priceFactors
            .Select(price => (IReadOnlyList<Result>)[.. yieldFactors.Select(yield => model.MarginPerBedFootWeek(price, yield))])
            .ToList();
    }

    /// <summary>Factors used when none are given: 60 % to 140 % in steps of 10.</summary>
    public static IReadOnlyList<decimal> UsualFactors { get; } = [0.6m, 0.7m, 0.8m, 0.9m, 1.0m, 1.1m, 1.2m, 1.3m, 1.4m];

    /// <summary>The model behind it.</summary>
    public SensitivityModel Model { get; }

    /// <summary>Price factors: the rows.</summary>
    public IReadOnlyList<decimal> PriceFactors { get; }

    /// <summary>Yield factors: the columns.</summary>
    public IReadOnlyList<decimal> YieldFactors { get; }

    /// <summary>Net return by price, then yield, to the cent.</summary>
    public IReadOnlyList<IReadOnlyList<Money>> NetReturn { get; }

    /// <summary>Gross margin per bed-foot-week by price, then yield.</summary>
    public IReadOnlyList<IReadOnlyList<Result>> MarginPerBedFootWeek { get; }

    /// <summary>Fills a grid.</summary>
    /// <param name="model">The model.</param>
    /// <param name="priceFactors">Price factors above 0; null: the usual ones.</param>
    /// <param name="yieldFactors">Yield factors above 0; null: the usual ones.</param>
    /// <returns>The grid.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A factor is not above 0.</exception>
    public static SensitivityGrid Of(
        SensitivityModel model,
        IReadOnlyList<decimal>? priceFactors = null,
        IReadOnlyList<decimal>? yieldFactors = null
    )
    {
        ArgumentNullException.ThrowIfNull(model);
        foreach (decimal factor in (priceFactors ?? []).Concat(yieldFactors ?? []))
        {
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(factor);
        }

        return new SensitivityGrid(model, priceFactors ?? UsualFactors, yieldFactors ?? UsualFactors);
    }
}
