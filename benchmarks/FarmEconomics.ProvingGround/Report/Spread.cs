using FarmEconomics.Decisions.Chances;

namespace FarmEconomics.ProvingGround.Report;

/// <summary>Quantiles and bounds.</summary>
internal static class Spread
{
    /// <summary>z of a one-sided 90 % bound.</summary>
    private const double Z90 = 1.2815515655446004;
    private const int Resamples = 2000;

    /// <summary>
    /// A quantile, linear between order statistics: type 7 of Hyndman and Fan, "Sample quantiles in statistical packages", The American
    /// Statistician 50(4), 1996.
    /// </summary>
    internal static double Quantile(IReadOnlyCollection<double> values, double p)
    {
        double[] sorted = [.. values.Order()];
        double at = p * (sorted.Length - 1);
        int below = (int)Math.Floor(at);
        int above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + ((at - below) * (sorted[above] - sorted[below]));
    }

    internal static double MeanOfWorstFifth(IReadOnlyCollection<double> values) =>
        values.Order().Take(Math.Max(1, values.Count / 5)).Average();

    /// <summary>
    /// Lower one-sided 90 % bound of a share, 0 to 1. The lower of two: Wilson's, which takes each verdict as a draw of its own, and the
    /// 10th percentile over farms drawn again with replacement (Efron's bootstrap, The Annals of Statistics 7(1), 1979), because verdicts
    /// of one farm are right or wrong together.
    /// </summary>
    /// <param name="farms">Right and named verdicts of each farm, at least one named.</param>
    internal static double LowerBound(IReadOnlyList<(int Right, int Named)> farms) =>
        Math.Min(Wilson(farms.Sum(farm => farm.Right), farms.Sum(farm => farm.Named), Z90), Quantile(Redrawn(farms), 0.1));

    /// <summary>
    /// Lower score bound of a share: (p + z^2/2n - z sqrt(p(1-p)/n + z^2/4n^2)) / (1 + z^2/n). Source: Wilson, "Probable inference, the
    /// law of succession, and statistical inference", JASA 22, 1927.
    /// </summary>
    /// <param name="right">How many of them.</param>
    /// <param name="n">Of how many, above 0.</param>
    /// <param name="z">Standard normal quantile of the bound.</param>
    internal static double Wilson(int right, double n, double z)
    {
        double p = right / n;
        return (p + (z * z / (2 * n)) - (z * Math.Sqrt((p * (1 - p) / n) + (z * z / (4 * n * n))))) / (1 + (z * z / n));
    }

    private static List<double> Redrawn(IReadOnlyList<(int Right, int Named)> farms)
    {
        SeededRandom random = new(90, "bootstrap");
        List<double> shares = [];
        for (int i = 0; i < Resamples; i++)
        {
            (int right, int named) = (0, 0);
            for (int k = 0; k < farms.Count; k++)
            {
                (int Right, int Named) farm = farms[(int)(random.NextUniform() * farms.Count)];
                (right, named) = (right + farm.Right, named + farm.Named);
            }

            if (named > 0)
            {
                shares.Add((double)right / named);
            }
        }

        return shares;
    }
}
