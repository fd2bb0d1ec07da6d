using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>
/// The one algebra of break-even: net = price x yield x <paramref name="Followed"/> + yield x <paramref name="Grown"/> -
/// <paramref name="Standing"/>. Price and yield are factors of what they were, or the price is money where <paramref name="Followed"/>
/// counts units. Source: cost-volume-profit arithmetic (OpenStax, Principles of Accounting vol. 2, break-even chapter).
/// </summary>
/// <param name="Followed">What follows price and yield: sales less the fees that are a percentage of them.</param>
/// <param name="Grown">What follows the yield alone: other output less the costs of handling it; mostly below 0.</param>
/// <param name="Standing">Costs that neither moves.</param>
internal readonly record struct CostVolumeProfit(decimal Followed, decimal Grown, decimal Standing)
{
    // What divisions leave of a difference that is none; money to the cent over any quantity or sales value of a farm is far above it.
    private const decimal DivisionResidue = 0.000000000000001m;

    /// <summary>What is left, unrounded.</summary>
    internal decimal Net(decimal price, decimal yield) => (price * yield * Followed) + (yield * Grown) - Standing;

    /// <summary>The price at which a yield leaves a wanted amount.</summary>
    /// <param name="yield">Above 0.</param>
    /// <param name="missing">Why there is none where nothing is kept of a price.</param>
    /// <param name="wanted">The amount to be left.</param>
    internal Result PriceFor(decimal yield, string missing, decimal wanted = 0m) =>
        Quotient(Standing + wanted - (yield * Grown), yield * Followed, missing);

    /// <summary>The yield at which a price leaves a wanted amount.</summary>
    /// <param name="price">Above 0.</param>
    /// <param name="missing">Why there is none where a unit leaves nothing.</param>
    /// <param name="wanted">The amount to be left.</param>
    internal Result YieldFor(decimal price, string missing, decimal wanted = 0m) =>
        Quotient(Standing + wanted, (price * Followed) + Grown, missing);

    private static Result Quotient(decimal needed, decimal kept, string missing) =>
        kept <= DivisionResidue ? Result.NotAvailable(missing) : Result.Known(needed / kept);
}
