using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Chances;

/// <summary>How a price or yield factor may fall.</summary>
public abstract class Distribution
{
    /// <summary>The mean.</summary>
    public abstract double Mean { get; }

    /// <summary>The variance.</summary>
    public abstract double Variance { get; }

    /// <summary>In words, printed among the assumptions.</summary>
    /// <param name="notation">How the farm writes.</param>
    /// <returns>The words.</returns>
    public abstract string Words(Notation notation);

    /// <summary>The value below which a fraction lies (inverse distribution function).</summary>
    /// <param name="fraction">Between 0 and 1.</param>
    /// <returns>The value.</returns>
    public abstract double Quantile(double fraction);

    /// <summary>The value at the rank of a standard normal number: one step of the copula.</summary>
    /// <param name="normal">The number.</param>
    /// <returns>The value.</returns>
    public virtual double AtNormal(double normal) => Quantile(Copula.Rank(normal));
}

/// <summary>
/// Triangular between a low and a high with a most likely value: mean (a + b + c) / 3, variance (a^2 + b^2 + c^2 - ab - ac - bc) / 18.
/// Source: Johnson, "The triangular distribution as a proxy for the beta distribution in risk analysis", The Statistician 46(3), 1997.
/// </summary>
public sealed class Triangular : Distribution
{
    // The whole, and its parts on both sides of the most likely value.
    private readonly double width;
    private readonly double below;
    private readonly double above;
    private readonly double turn;

    /// <summary>Makes the distribution.</summary>
    /// <param name="low">The lowest value.</param>
    /// <param name="mode">The most likely value, between the two.</param>
    /// <param name="high">The highest value, above the lowest.</param>
    /// <exception cref="ArgumentException">The three aren't in order.</exception>
    public Triangular(double low, double mode, double high)
    {
        if (!(low <= mode && mode <= high && low < high))
        {
            throw new ArgumentException(
                Notation.Default.Text($"A triangular distribution needs low <= mode <= high and low < high, not {low}, {mode}, {high}."),
                nameof(mode)
            );
        }

        Low = low;
        Mode = mode;
        High = high;
        (width, below, above) = (high - low, mode - low, high - mode);
        turn = below / width;
    }

    /// <summary>The lowest value.</summary>
    public double Low { get; }

    /// <summary>The most likely value.</summary>
    public double Mode { get; }

    /// <summary>The highest value.</summary>
    public double High { get; }

    /// <inheritdoc/>
    public override double Mean => (Low + Mode + High) / 3.0;

    /// <inheritdoc/>
    public override double Variance => ((Low * Low) + (Mode * Mode) + (High * High) - (Low * Mode) - (Low * High) - (Mode * High)) / 18.0;

    /// <inheritdoc/>
    public override string Words(Notation notation) => notation.Text($"triangular, {Low:0.##} to {High:0.##} with {Mode:0.##} most likely");

    /// <inheritdoc/>
    public override double Quantile(double fraction) =>
        fraction < turn ? Low + Math.Sqrt(fraction * width * below) : High - Math.Sqrt((1.0 - fraction) * width * above);
}
