using System.Globalization;

namespace FarmEconomics.Records.Schema;

/// <summary>
/// What a number of a column may be. The ends are far beyond any farm's records, and near enough that no figure worked out from them
/// leaves the digits a decimal has.
/// </summary>
/// <param name="Low">The least value.</param>
/// <param name="High">The greatest value.</param>
public sealed record NumberRange(decimal Low, decimal High) : IFormattable
{
    /// <summary>True when 0 is allowed as well, below <see cref="Low"/>.</summary>
    public bool OrZero { get; init; }

    /// <summary>True for a value of the range.</summary>
    /// <param name="value">The value.</param>
    /// <returns>Whether it may stand in the column.</returns>
    public bool Holds(decimal value) => (value >= Low && value <= High) || (OrZero && value == 0m);

    /// <summary>The range in words: <c>from 0.1 to 200</c>.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider)
    {
        IFormatProvider provider = formatProvider ?? CultureInfo.InvariantCulture;
        string range = $"from {Low.ToString("#,##0.####", provider)} to {High.ToString("#,##0.####", provider)}";
        return OrZero ? $"0, or {range}" : range;
    }
}
