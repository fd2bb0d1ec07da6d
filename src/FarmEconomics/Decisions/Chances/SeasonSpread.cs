using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Chances;

/// <summary>
/// How a crop's price or yield falls from season to season: a normal around the mean of its seasons, not below 0, whose variance is that
/// between seasons plus that within a season over as many plantings as the
/// crop has: a crop of sixty sowings averages the second out, a crop of one doesn't.
/// </summary>
public sealed class SeasonSpread : Distribution
{
    private readonly double deviation;

    /// <summary>Makes the distribution.</summary>
    /// <param name="mean">The mean of the seasons, relative to the reviewed one.</param>
    /// <param name="components">Variance between seasons and within a season, on the same scale.</param>
    /// <param name="sumOfSquaredParts">
    /// The sum of the squares of the parts the crop's plantings are of it, above 0 to 1: 1 for one planting, 1 / n for n alike.
    /// </param>
    public SeasonSpread(double mean, VarianceComponents components, double sumOfSquaredParts)
    {
        ArgumentNullException.ThrowIfNull(components);
        Mean = mean;
        Components = components;
        Within = components.Within * sumOfSquaredParts;
        deviation = Math.Sqrt(Variance);
    }

    /// <summary>Variance between seasons and within a season.</summary>
    public VarianceComponents Components { get; }

    /// <summary>What is left of the variance within a season over the crop's plantings.</summary>
    public double Within { get; }

    /// <summary>The part of the variance that whole seasons share, 0 to 1.</summary>
    public double SeasonPart => Variance > 0.0 ? Components.Between / Variance : 0.0;

    /// <inheritdoc/>
    public override double Mean { get; }

    /// <inheritdoc/>
    public override double Variance => Components.Between + Within;

    /// <inheritdoc/>
    public override string Words(Notation notation) => Components.SumOnly
        ? notation.Text($"mean {Mean:0.00}, spread {Math.Sqrt(Components.Between):0.00}; one planting a season, "
            + $"so seasons and plantings can't be told apart")
        : notation.Text($"mean {Mean:0.00}, spread {Math.Sqrt(Components.Between):0.00} between seasons, "
            + $"{Math.Sqrt(Components.Within):0.00} within one, {Math.Sqrt(Within):0.00} of it left over all plantings");

    /// <inheritdoc/>
    public override double Quantile(double fraction) => AtNormal(Copula.NormalOf(fraction));

    /// <inheritdoc/>
    public override double AtNormal(double normal) => Math.Max(0.0, Mean + (deviation * normal));
}
