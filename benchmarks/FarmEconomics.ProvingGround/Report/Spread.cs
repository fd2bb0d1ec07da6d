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
    /// Lower one-sided 90 % bound of a share. The lower of two: Wilson's score bound, (p + z^2/2n - z sqrt(p(1-p)/n + z^2/4n^2)) / (1 +
    /// z^2/n) (Wilson, JASA 22, 1927), which takes each verdict as a draw of its own; and the 10th percentile over farms drawn again with
    /// replacement (Efron's bootstrap, The Annals of Statistics 7(1), 1979), because verdicts of one farm are right or wrong together.
    /// </summary>
    /// <param name="farms">Right and named verdicts of each farm.</param>
    internal static double LowerBound(IReadOnlyList<(int Right, int Named)> farms)
    {
        double n = farms.Sum(farm => farm.Named);
        double p = farms.Sum(farm => farm.Right) / n;
        double z2 = Z90 * Z90;
        double wilson = (p + (z2 / (2 * n)) - (Z90 * Math.Sqrt((p * (1 - p) / n) + (z2 / (4 * n * n))))) / (1 + (z2 / n));
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

        return Math.Min(wilson, Quantile(shares, 0.1));
    }
}
