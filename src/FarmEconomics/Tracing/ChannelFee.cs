using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>A channel's percentage of a sale, to the cent; of whole numbers, since millions of sales ask for it.</summary>
internal readonly struct ChannelFee
{
    // The percentage is hundredths of hundredths where it has no more than two decimals, as nearly every one has.
    private const int PercentOfOne = 100;
    private const long Whole = 100 * PercentOfOne;

    private readonly decimal percent;
    private readonly long? hundredths;

    internal ChannelFee(decimal percent)
    {
        this.percent = percent;
        decimal whole = percent * PercentOfOne;
        hundredths = decimal.IsInteger(whole) ? (long)whole : null;
    }

    /// <summary>The fee of an amount in cents, half a cent away from zero.</summary>
    internal long Of(long cents)
    {
        if (hundredths is not { } rate)
        {
            return ExactUnits.Cents(Money.Rounded(ExactUnits.Money(cents).Amount * percent / 100m).Amount);
        }

        // The part that divides evenly by itself: no product is larger than the amount, however large that is.
        (long even, long rest) = Math.DivRem(cents, Whole);
        (long fee, long over) = Math.DivRem(rest * rate, Whole);
        return (even * rate) + fee + (Math.Abs(over) * 2 < Whole ? 0 : Math.Sign(over));
    }
}
