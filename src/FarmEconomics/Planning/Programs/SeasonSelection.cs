namespace FarmEconomics.Planning.Programs;

/// <summary>
/// A few seasons that stand for many: fast forward selection. Each step takes the season that leaves the least distance between all and the
/// chosen; every season's chance then goes to the chosen one nearest to it. Source: Heitsch and Roemisch, Scenario reduction algorithms in
/// stochastic programming, Computational Optimization and Applications 24, 2003 (from memory).
/// </summary>
public static class SeasonSelection
{
    /// <summary>Chooses seasons.</summary>
    /// <param name="places">
    /// Where each season lies: as many numbers as are compared, the distance being the sum of their differences.
    /// </param>
    /// <param name="chances">The chance of each season.</param>
    /// <param name="count">How many are chosen, at least 1.</param>
    /// <returns>The chosen seasons' places with their chances, in the order they were chosen.</returns>
    public static IReadOnlyList<(int Season, double Chance)> Of(IReadOnlyList<double[]> places, IReadOnlyList<double> chances, int count)
    {
        ArgumentNullException.ThrowIfNull(places);
        ArgumentNullException.ThrowIfNull(chances);
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        double[] nearest = [.. places.Select(_ => double.PositiveInfinity)];
        List<int> chosen = [];
        while (chosen.Count < Math.Min(count, places.Count))
        {
            double[] left = new double[places.Count];
            Parallel.For(0, places.Count, i => left[i] = chosen.Contains(i) ? double.PositiveInfinity : Left(places, chances, nearest, i));
            int next = Array.IndexOf(left, left.Min());
            chosen.Add(next);
            for (int j = 0; j < nearest.Length; j++)
            {
                nearest[j] = Math.Min(nearest[j], Distance(places[next], places[j]));
            }
        }

        double[] chance = new double[chosen.Count];
        for (int j = 0; j < places.Count; j++)
        {
            double[] apart = [.. chosen.Select(season => Distance(places[season], places[j]))];
            chance[Array.IndexOf(apart, apart.Min())] += chances[j];
        }

        return [.. chosen.Select((season, i) => (season, chance[i]))];
    }

    private static double Left(IReadOnlyList<double[]> places, IReadOnlyList<double> chances, double[] nearest, int candidate)
    {
        double sum = 0.0;
        for (int j = 0; j < nearest.Length; j++)
        {
            sum += chances[j] * Math.Min(nearest[j], Distance(places[candidate], places[j]));
        }

        return sum;
    }

    private static double Distance(double[] a, double[] b)
    {
        double sum = 0.0;
        for (int i = 0; i < a.Length; i++)
        {
            sum += Math.Abs(a[i] - b[i]);
        }

        return sum;
    }
}
