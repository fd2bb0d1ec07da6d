using MathNet.Numerics.Distributions;

namespace FarmEconomics.Decisions.Chances;

/// <summary>
/// The Gaussian copula: two normals with correlation r, each turned into its own rank. Spearman's rank correlation of the ranks is 6/pi x
/// asin(r/2). Source: Kruskal, "Ordinal measures of association", Journal of the American Statistical Association 53, 1958; Nelsen, An
/// Introduction to Copulas, 2nd ed., 2006.
/// </summary>
public static class Copula
{
    /// <summary>The rank, between 0 and 1, of a standard normal number.</summary>
    /// <param name="normal">The number.</param>
    /// <returns>The distribution function of the standard normal.</returns>
    public static double Rank(double normal) => Normal.CDF(0.0, 1.0, normal);

    /// <summary>The standard normal number of a rank.</summary>
    /// <param name="rank">Between 0 and 1; 1 gives infinity.</param>
    /// <returns>The inverse distribution function of the standard normal.</returns>
    public static double NormalOf(double rank) => Normal.InvCDF(0.0, 1.0, rank);

    /// <summary>A normal number that correlates with a given one.</summary>
    /// <param name="given">A standard normal number.</param>
    /// <param name="own">Another, independent of it.</param>
    /// <param name="correlation">Between -1 and 1.</param>
    /// <returns>A standard normal number.</returns>
    public static double Correlated(double given, double own, double correlation) =>
        (correlation * given) + (Rest(correlation) * own);

    /// <summary>What a number's own part counts beside the given one.</summary>
    internal static double Rest(double correlation) => Math.Sqrt(1.0 - (correlation * correlation));

    /// <summary>Spearman's rank correlation that a copula's r leads to.</summary>
    /// <param name="correlation">r, between -1 and 1.</param>
    /// <returns>The rank correlation.</returns>
    public static double SpearmanOf(double correlation) => 6.0 / Math.PI * Math.Asin(correlation / 2.0);

    /// <summary>The r that leads to a rank correlation.</summary>
    /// <param name="spearman">The rank correlation, between -1 and 1.</param>
    /// <returns>r.</returns>
    public static double CorrelationOf(double spearman) => 2.0 * Math.Sin(Math.PI * spearman / 6.0);

    /// <summary>Spearman's rank correlation of pairs; ties share their middle rank.</summary>
    /// <param name="pairs">The pairs, at least two.</param>
    /// <returns>The rank correlation; 0 when one side doesn't vary.</returns>
    public static double Spearman(IReadOnlyList<(double X, double Y)> pairs)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        double[] x = Ranks([.. pairs.Select(pair => pair.X)]);
        double[] y = Ranks([.. pairs.Select(pair => pair.Y)]);
        double spread = Covary(x, x) * Covary(y, y);
        return spread <= 0.0 ? 0.0 : Covary(x, y) / Math.Sqrt(spread);
    }

    // Ranks are halves, so these sums are exact.
    private static double Covary(double[] ranks, double[] others)
    {
        double middle = (ranks.Length + 1) / 2.0;
        return ranks.Zip(others, (rank, other) => rank * other).Sum() - (ranks.Length * middle * middle);
    }

    private static double[] Ranks(double[] values)
    {
        int[] order = [.. Enumerable.Range(0, values.Length).OrderBy(i => values[i])];
        double[] ranks = new double[values.Length];
        for (int i = 0; i < order.Length;)
        {
            int end = i;
            while (end < order.Length && values[order[end]] == values[order[i]])
            {
                end++;
            }

            for (int k = i; k < end; k++)
            {
                ranks[order[k]] = (i + 1 + end) / 2.0;
            }

            i = end;
        }

        return ranks;
    }
}
