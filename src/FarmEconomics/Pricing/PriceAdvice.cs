using FarmEconomics.Units;

namespace FarmEconomics.Pricing;

/// <summary>What to do about a price.</summary>
public enum AdviceKind
{
    /// <summary>Ask at least the target, rounded up to the grower's step: it lies above what the crop brings already.</summary>
    AtLeast,

    /// <summary>Keep the price it has: it covers the target.</summary>
    Keep,

    /// <summary>
    /// No price carries it: full cost lies far above the most it ever brought. A question of dropping or changing it, not of its price.
    /// </summary>
    CannotBePriced,

    /// <summary>The records can't tell.</summary>
    Unknown,
}

/// <summary>What to do about the price of a crop in one channel and unit. A price is never advised below the one it has.</summary>
/// <param name="Kind">What to do.</param>
/// <param name="Price">The price, per unit asked about; not available where it can't be priced or isn't known, with the reason.</param>
/// <param name="AtNormalYield">True where the season's yield failed and the target is that of a normal yield.</param>
public sealed record PriceAdvice(AdviceKind Kind, Result Price, bool AtNormalYield)
{
    private const int CentDecimals = 2;

    /// <summary>Weighs what a unit must bring against what it brings.</summary>
    /// <param name="prices">What it must bring, per unit.</param>
    /// <param name="got">
    /// What it has already: the greater of what it brought and its list price, per unit; not available where it has no price yet.
    /// </param>
    /// <param name="most">The most it ever brought, or is said to bring elsewhere, per unit; not available where nothing tells.</param>
    /// <param name="terms">The step, and how far above the most is too far.</param>
    /// <param name="atNormalYield">True where <paramref name="prices"/> are those of a normal yield.</param>
    /// <returns>The advice.</returns>
    public static PriceAdvice Of(PriceSet prices, Result got, Result most, PriceTerms terms, bool atNormalYield = false)
    {
        ArgumentNullException.ThrowIfNull(prices);
        ArgumentNullException.ThrowIfNull(terms);
        if (prices.FullCost.Value is { } full && most.Value is { } best && full > best * terms.FarAbovePercent / 100m)
        {
            return new PriceAdvice(AdviceKind.CannotBePriced,
                Result.NotAvailable("its full cost lies far above the most it ever brought: see whether to drop or change it"),
                atNormalYield);
        }

        Result target = PriceMath.RoundUp(prices.Target, terms.Step);
        return target.Value is not { } wanted ? new PriceAdvice(AdviceKind.Unknown, target, atNormalYield)
            : got.Value is { } has && decimal.Round(has, CentDecimals, MidpointRounding.AwayFromZero) is var keep && keep >= wanted
                ? new PriceAdvice(AdviceKind.Keep, Result.Known(keep), atNormalYield)
            : new PriceAdvice(AdviceKind.AtLeast, target, atNormalYield);
    }

    /// <summary>The greater of two prices; the one there is where the other isn't available.</summary>
    internal static Result Greater(Result left, Result right) => left.Value is not { } a ? right : right.Value is not { } b || b <= a ? left
        : right;
}
