using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace FarmEconomics.Units;

/// <summary>
/// A figure that may not be available, and then says why. Rates come from division; one without its denominator is never 0.
/// The default value is "not available" without a reason.
/// </summary>
public readonly record struct Result : IFormattable
{
    private const int MostDecimals = 8;
    private const decimal Cent = 0.01m;

    private Result(decimal? value, string? reason)
    {
        Value = value;
        Reason = reason;
    }

    /// <summary>The value, or null when not available.</summary>
    public decimal? Value { get; }

    /// <summary>Why it isn't available; null when it is.</summary>
    public string? Reason { get; }

    /// <summary>True when there is a value.</summary>
    [MemberNotNullWhen(true, nameof(Value))]
    public bool IsAvailable => Value.HasValue;

    /// <summary>A known value.</summary>
    /// <param name="value">The value.</param>
    /// <returns>The result.</returns>
    public static Result Known(decimal value) => new(value, null);

    /// <summary>A value that can't be told.</summary>
    /// <param name="reason">Why, in words a grower reads.</param>
    /// <returns>The result.</returns>
    public static Result NotAvailable(string reason) => new(null, reason);

    /// <summary>A quotient, not available when the denominator is 0.</summary>
    /// <param name="numerator">The numerator.</param>
    /// <param name="denominator">The denominator.</param>
    /// <param name="reasonWithout">The reason given when the denominator is 0.</param>
    /// <returns>The result.</returns>
    public static Result Of(decimal numerator, decimal denominator, string reasonWithout) =>
        denominator == 0m ? NotAvailable(reasonWithout) : Known(numerator / denominator);

    /// <summary>What is worked out of this value; what isn't available stays so, with its reason.</summary>
    /// <param name="with">The arithmetic.</param>
    /// <returns>The result.</returns>
    public Result Map(Func<decimal, decimal> with)
    {
        ArgumentNullException.ThrowIfNull(with);
        return Value is { } value ? Known(with(value)) : this;
    }

    /// <summary>What is worked out of two values; the first that isn't available says why there is none.</summary>
    /// <param name="other">The second.</param>
    /// <param name="with">The arithmetic.</param>
    /// <returns>The result.</returns>
    public Result Combine(Result other, Func<decimal, decimal, decimal> with)
    {
        ArgumentNullException.ThrowIfNull(with);
        return Value is not { } left ? this : other.Value is not { } right ? other : Known(with(left, right));
    }

    /// <summary>
    /// How many decimals a rate of money or quantity is shown with: two, and below a cent as many as show two digits that count, at most
    /// eight; what eight can't show is 0.00.
    /// </summary>
    /// <param name="value">The rate.</param>
    /// <returns>2 to 8.</returns>
    public static int DecimalsShown(decimal value)
    {
        decimal size = Math.Abs(value);
        if (size >= Cent || decimal.Round(size, MostDecimals) == 0m)
        {
            return 2;
        }

        int decimals = 3;
        for (decimal digits = size * 1000m; digits < 10m && decimals < MostDecimals; digits *= 10m)
        {
            decimals++;
        }

        return decimals;
    }

    /// <summary>The value as <see cref="DecimalsShown"/> says, or "not available".</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) =>
        Value is { } value
            ? value.ToString(format ?? $"F{DecimalsShown(value)}", formatProvider ?? CultureInfo.InvariantCulture)
            : $"not available ({Reason})";
}
