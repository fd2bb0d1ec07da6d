using System.Globalization;

namespace FarmEconomics.Units;

/// <summary>
/// An amount in the farm's currency. The default value is zero. It is not a price: a price is money per something and comes from division.
/// Immutable and safe to share between threads.
/// </summary>
/// <param name="Amount">The amount; to the cent wherever docs/methods.md (section 9) rounds, unrounded in between.</param>
public readonly record struct Money(decimal Amount) : IFormattable
{
    /// <summary>No money.</summary>
    public static readonly Money Zero;

    /// <summary>The amount rounded to the cent, midpoint away from zero.</summary>
    /// <param name="amount">An unrounded amount.</param>
    /// <returns>The rounded money.</returns>
    public static Money Rounded(decimal amount) => new(decimal.Round(amount, 2, MidpointRounding.AwayFromZero));

    /// <summary>Adds.</summary>
    /// <param name="left">Left.</param>
    /// <param name="right">Right.</param>
    /// <returns>The sum.</returns>
    public static Money operator +(Money left, Money right) => new(left.Amount + right.Amount);

    /// <summary>Subtracts.</summary>
    /// <param name="left">Left.</param>
    /// <param name="right">Right.</param>
    /// <returns>The difference.</returns>
    public static Money operator -(Money left, Money right) => new(left.Amount - right.Amount);

    /// <summary>Changes the sign.</summary>
    /// <param name="value">The money.</param>
    /// <returns>The opposite.</returns>
    public static Money operator -(Money value) => new(-value.Amount);

    /// <summary>Money per bed-foot; not available without bed-feet.</summary>
    /// <param name="money">The money.</param>
    /// <param name="feet">The bed-feet.</param>
    /// <returns>The rate.</returns>
    public static Result operator /(Money money, BedFeet feet) => Result.Of(money.Amount, feet.Value, "nothing planted in beds");

    /// <summary>Money per bed-foot-week; not available without time in bed.</summary>
    /// <param name="money">The money.</param>
    /// <param name="weeks">The bed-foot-weeks.</param>
    /// <returns>The rate.</returns>
    public static Result operator /(Money money, BedFootWeeks weeks) => Result.Of(money.Amount, weeks.Value, "no time in bed");

    /// <summary>Money per hour; not available without hours.</summary>
    /// <param name="money">The money.</param>
    /// <param name="hours">The hours.</param>
    /// <returns>The rate.</returns>
    public static Result operator /(Money money, Hours hours) => Result.Of(money.Amount, hours.Value, "no labor hours");

    /// <summary>Sums.</summary>
    /// <param name="items">The amounts.</param>
    /// <returns>The total.</returns>
    public static Money Sum(IEnumerable<Money> items)
    {
        decimal sum = 0m;
        foreach (Money item in items)
        {
            sum += item.Amount;
        }

        return new Money(sum);
    }

    /// <summary>The amount with two decimals and no currency sign.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) =>
        Amount.ToString(format ?? "0.00", formatProvider ?? CultureInfo.InvariantCulture);
}
