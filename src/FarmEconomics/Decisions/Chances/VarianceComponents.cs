namespace FarmEconomics.Decisions.Chances;

/// <summary>
/// The variance of observations in groups (plantings in seasons), parted into that between groups and that within: one-way analysis of
/// variance with random groups of unequal size. Within = the mean square
/// within; between = (mean square between - within) / n0, not below 0, with n0 = (N - sum of n^2 / N) / (k - 1). Source: the ANOVA
/// estimators of Searle, Casella and McCulloch, Variance Components, 1992,
/// ch. 3; NIST/SEMATECH e-Handbook of Statistical Methods, one-way ANOVA.
/// </summary>
/// <param name="Groups">Groups with an observation, k.</param>
/// <param name="Count">Observations, N.</param>
/// <param name="MeanSquareBetween">Sum of squares between groups / (k - 1).</param>
/// <param name="MeanSquareWithin">Sum of squares within groups / (N - k); null where no group has two observations.</param>
/// <param name="Between">Variance between groups; where <see cref="SumOnly"/>, that between and within together.</param>
/// <param name="Within">Variance within a group; 0 where <see cref="SumOnly"/>.</param>
public sealed record VarianceComponents(int Groups, int Count, double MeanSquareBetween, double? MeanSquareWithin, double Between,
    double Within)
{
    /// <summary>True where no group has two observations: the two can't be told apart.</summary>
    public bool SumOnly => MeanSquareWithin is null;

    /// <summary>Parts the variance of some groups.</summary>
    /// <param name="groups">The observations of each group; groups without any are left out.</param>
    /// <returns>The components.</returns>
    /// <exception cref="ArgumentException">Fewer than two groups have an observation.</exception>
    public static VarianceComponents Of(IEnumerable<IReadOnlyList<double>> groups)
    {
        List<IReadOnlyList<double>> seen = [.. groups.Where(group => group.Count > 0)];
        int k = seen.Count;
        if (k < 2)
        {
            throw new ArgumentException("Variance between groups needs at least two groups.", nameof(groups));
        }

        int n = seen.Sum(group => group.Count);
        double mean = seen.Sum(group => group.Sum()) / n;
        double between = 0.0;
        double within = 0.0;
        foreach (IReadOnlyList<double> group in seen)
        {
            double own = group.Average();
            between += group.Count * Square(own - mean);
            within += group.Sum(value => Square(value - own));
        }

        double msBetween = between / (k - 1);
        if (n == k)
        {
            return new VarianceComponents(k, n, msBetween, null, msBetween, 0.0);
        }

        double msWithin = within / (n - k);
        double n0 = (n - (seen.Sum(group => (double)group.Count * group.Count) / n)) / (k - 1);
        return new VarianceComponents(k, n, msBetween, msWithin, Math.Max(0.0, (msBetween - msWithin) / n0), msWithin);
    }

    private static double Square(double value) => value * value;
}
