using System.Globalization;

namespace FarmEconomics.Units;

/// <summary>Hours of work. Default: none. Not rounded in between.</summary>
/// <param name="Value">Hours.</param>
public readonly record struct Hours(decimal Value) : IFormattable
{
    /// <summary>Adds.</summary>
    /// <param name="left">Left.</param>
    /// <param name="right">Right.</param>
    /// <returns>The sum.</returns>
    public static Hours operator +(Hours left, Hours right) => new(left.Value + right.Value);

    /// <summary>Subtracts.</summary>
    /// <param name="left">Left.</param>
    /// <param name="right">Right.</param>
    /// <returns>The difference.</returns>
    public static Hours operator -(Hours left, Hours right) => new(left.Value - right.Value);

    /// <summary>Hours to two decimals.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) =>
        Value.ToString(format ?? "0.##", formatProvider ?? CultureInfo.InvariantCulture);
}

/// <summary>
/// Feet of bed length at the farm's standard bed width; a wider bed counts proportionally. It is not <see cref="BedFootDays"/>,
/// which also counts how long the bed was held.
/// </summary>
/// <param name="Value">Bed-feet.</param>
public readonly record struct BedFeet(decimal Value) : IFormattable
{
    /// <summary>Adds.</summary>
    /// <param name="left">Left.</param>
    /// <param name="right">Right.</param>
    /// <returns>The sum.</returns>
    public static BedFeet operator +(BedFeet left, BedFeet right) => new(left.Value + right.Value);

    /// <summary>Bed-feet to one decimal.</summary>
    public override string ToString() => ToString(null, null);

    /// <inheritdoc/>
    public string ToString(string? format, IFormatProvider? formatProvider) =>
        Value.ToString(format ?? "0.#", formatProvider ?? CultureInfo.InvariantCulture);
}

/// <summary>One bed-foot held for one day. Seven of them are a bed-foot-week.</summary>
/// <param name="Value">Bed-foot-days.</param>
public readonly record struct BedFootDays(decimal Value)
{
    /// <summary>The same time in weeks of seven days.</summary>
    public BedFootWeeks Weeks => new(Value / 7m);

    /// <summary>Adds.</summary>
    /// <param name="left">Left.</param>
    /// <param name="right">Right.</param>
    /// <returns>The sum.</returns>
    public static BedFootDays operator +(BedFootDays left, BedFootDays right) => new(left.Value + right.Value);
}

/// <summary>One bed-foot held for seven days.</summary>
/// <param name="Value">Bed-foot-weeks.</param>
public readonly record struct BedFootWeeks(decimal Value);
