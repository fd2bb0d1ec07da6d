using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>A channel's percentage of a sale, to the cent; of whole numbers, since millions of sales ask for it.</summary>
internal readonly struct ChannelFee
{
    // The percentage is hundredths of hundredths where it has no more than two decimals, as nearly every one has.
    private const int PercentOfOne = 100;
    private const long Whole = 100 * PercentOfOne;
    private const long Most = long.MaxValue / Whole;

    private readonly decimal percent;
    private readonly long hundredths;

    internal ChannelFee(decimal percent)
    {
        this.percent = percent;
        decimal whole = percent * PercentOfOne;
        hundredths = decimal.IsInteger(whole) && Math.Abs(whole) <= Whole ? (long)whole : -1;
    }

    /// <summary>The fee of an amount in cents, half a cent away from zero.</summary>
    internal long Of(long cents)
    {
        if (percent == 0m || cents == 0)
        {
            return 0;
        }

        if (hundredths < 0 || Math.Abs(cents) > Most)
        {
            return ExactUnits.Cents(Money.Rounded(ExactUnits.Money(cents).Amount * percent / 100m).Amount);
        }

        (long fee, long over) = Math.DivRem(cents * hundredths, Whole);
        return Math.Abs(over) * 2 < Whole ? fee : fee + Math.Sign(cents);
    }
}
