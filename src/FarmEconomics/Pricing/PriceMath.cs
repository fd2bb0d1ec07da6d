using FarmEconomics.Units;

namespace FarmEconomics.Pricing;

/// <summary>The arithmetic of a price. A price is not rounded until it is asked.</summary>
public static class PriceMath
{
    // Division leaves dust in the last of 28 digits: a price that is 3.50 but for that dust must not be lifted to 3.75.
    private const int DustDecimals = 8;

    /// <summary>
    /// The price that leaves <paramref name="cost"/> after the channel's fee and a margin, both in percent of the price: cost / (1 - fee -
    /// margin).
    /// </summary>
    /// <param name="cost">What must be left, per unit.</param>
    /// <param name="feePercent">The channel's fee in percent of the price, 0 or more.</param>
    /// <param name="marginPercent">The wanted net return in percent of the price, 0 or more.</param>
    /// <returns>The price; not available when fee and margin take all of it.</returns>
    public static Result GrossUp(Result cost, decimal feePercent, decimal marginPercent = 0m)
    {
        decimal kept = 1m - ((feePercent + marginPercent) / 100m);
        return cost.Value is not { } known ? cost
            : kept <= 0m
                ? Result.NotAvailable(
                    marginPercent > 0m
                        ? "the channel's fee and the wanted margin take the whole price"
                        : "the channel's fee takes the whole price"
                )
            : Result.Known(known / kept);
    }

    /// <summary>The price rounded up to the next step: the price to ask.</summary>
    /// <param name="price">The price.</param>
    /// <param name="step">The step, above 0.</param>
    /// <returns>A whole number of steps, not under the price, and not under 0.</returns>
    public static Result RoundUp(Result price, decimal step) =>
        price.Map(known => Math.Max(0m, decimal.Ceiling(WithoutDust(known) / step) * step));

    /// <summary>The next whole number; what division leaves behind the last of 28 digits doesn't lift it by one.</summary>
    internal static decimal Ceiling(decimal value) => decimal.Ceiling(WithoutDust(value));

    private static decimal WithoutDust(decimal value) => decimal.Round(value, DustDecimals, MidpointRounding.AwayFromZero);

    /// <summary>
    /// What the quantity sold is multiplied by when the price is, at a constant elasticity: factor^-e, e by its size. Source: the
    /// definition of the price elasticity of demand (OpenStax, Principles of Economics, ch. 5), integrated.
    /// </summary>
    /// <param name="priceFactor">The price afterwards over the price before, above 0.</param>
    /// <param name="elasticity">The elasticity, with or without its minus sign.</param>
    /// <returns>The factor, above 0.</returns>
    public static decimal QuantityFactor(decimal priceFactor, decimal elasticity)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(priceFactor);
        return (decimal)Math.Pow((double)priceFactor, -(double)Math.Abs(elasticity));
    }

    /// <summary>
    /// The price at which a unit more, sold at a constant elasticity, earns just what handling it costs: cost / (1 - fee) x e / (e - 1).
    /// With an elasticity of 1 or less there is none: sales never fall when the price rises, so every price would be beaten by a higher
    /// one. Source: marginal revenue p (1 - 1 / e) (OpenStax, Principles of Economics, ch. 9).
    /// </summary>
    /// <param name="handling">What picking, packing and selling one more unit costs.</param>
    /// <param name="feePercent">The channel's fee in percent of the price.</param>
    /// <param name="elasticity">The elasticity, with or without its minus sign.</param>
    /// <returns>The price; not available at an elasticity of 1 or less, or where handling costs nothing.</returns>
    public static Result BestPrice(Result handling, decimal feePercent, decimal elasticity)
    {
        decimal e = Math.Abs(elasticity);
        return e <= 1m ? Result.NotAvailable("at an elasticity of 1 or less sales never fall when the price rises, so no price is the best")
            : handling.Value is <= 0m ? Result.NotAvailable("no cost of picking, packing and selling is on record")
            : GrossUp(handling, feePercent).Map(cost => cost * e / (e - 1m));
    }
}
