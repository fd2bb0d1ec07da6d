using FarmEconomics.Units;

namespace FarmEconomics.Pricing;

/// <summary>The arithmetic of a price. A price is not rounded until it is asked.</summary>
public static class PriceMath
{
    // Division leaves dust in the last of 28 digits: a price that is 3.50 but for that dust must not be lifted to 3.75.
    private const int DustDecimals = 8;

    /// <summary>The price that leaves <paramref name="cost"/> after the channel's fee and a margin, both in percent of the price: cost / (1 - fee - margin).</summary>
    /// <param name="cost">What must be left, per unit.</param>
    /// <param name="feePercent">The channel's fee in percent of the price, 0 or more.</param>
    /// <param name="marginPercent">The wanted net return in percent of the price, 0 or more.</param>
    /// <returns>The price; not available when fee and margin take all of it.</returns>
    public static Rate GrossUp(Rate cost, decimal feePercent, decimal marginPercent = 0m)
    {
        decimal kept = 1m - ((feePercent + marginPercent) / 100m);
        return cost.Value is not { } known ? cost
            : kept <= 0m ? Rate.NotAvailable(marginPercent > 0m ? "the channel's fee and the wanted margin take the whole price" : "the channel's fee takes the whole price")
            : Rate.Known(known / kept);
    }

    /// <summary>The price rounded up to the next step: the price to ask.</summary>
    /// <param name="price">The price.</param>
    /// <param name="step">The step, above 0.</param>
    /// <returns>A whole number of steps, not under the price, and not under 0.</returns>
    public static Rate RoundUp(Rate price, decimal step) => price.Value is { } known
        ? Rate.Known(Math.Max(0m, decimal.Ceiling(decimal.Round(known, DustDecimals, MidpointRounding.AwayFromZero) / step) * step))
        : price;
}
