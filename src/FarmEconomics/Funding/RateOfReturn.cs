namespace FarmEconomics.Funding;

/// <summary>
/// Internal rates of return: every rate at which the present value of yearly amounts is 0. With v = 1 / (1 + r) that is a polynomial in v,
/// and its roots above 0 are found between the roots of its derivative, so none is missed when signs change more than once (Descartes' rule
/// of signs bounds how many there can be).
/// </summary>
public static class RateOfReturn
{
    private const int Bisections = 200;
    private const double LargestFactor = 1e6;

    /// <summary>All internal rates of return, as fractions above -1, in rising order.</summary>
    /// <param name="amounts">Yearly amounts; the first now, the others at the end of each year.</param>
    /// <returns>The rates; none when no rate makes the present value 0, or all amounts are 0.</returns>
    public static IReadOnlyList<decimal> All(IReadOnlyList<decimal> amounts)
    {
        ArgumentNullException.ThrowIfNull(amounts);
        double[] coefficients = Trim(amounts.Select(amount => (double)amount).ToArray());
        if (coefficients.Length < 2)
        {
            return [];
        }

        double scale = coefficients.Max(Math.Abs);
        return
        [
            .. PositiveRoots(coefficients.Select(c => c / scale).ToArray())
                .Select(v => (1.0 / v) - 1.0)
                .Where(rate => Math.Abs(rate) < (double)decimal.MaxValue / 2)
                .Order()
                .Select(rate => decimal.Round((decimal)rate, 12)),
        ];
    }

    /// <summary>Roots above 0 of a polynomial given by rising powers, in rising order.</summary>
    internal static List<double> PositiveRoots(double[] polynomial)
    {
        double[] p = Trim(polynomial);
        if (p.Length < 2)
        {
            return [];
        }

        if (p.Length == 2)
        {
            double root = -p[0] / p[1];
            return root > 0 ? [root] : [];
        }

        double[] derivative = [.. Enumerable.Range(1, p.Length - 1).Select(i => p[i] * i)];
        double bound = Math.Min(LargestFactor, 1.0 + p[..^1].Max(c => Math.Abs(c / p[^1])));
        List<double> edges = [0.0, .. PositiveRoots(derivative).Where(x => x < bound), bound];
        List<double> roots = [];
        for (int i = 0; i + 1 < edges.Count; i++)
        {
            double low = Value(p, edges[i]), high = Value(p, edges[i + 1]);
            if (i > 0 && IsZero(p, edges[i]))
            {
                // The curve touches 0 where it turns: a double root.
                AddOnce(roots, edges[i]);
            }

            if (low != 0 && high != 0 && low < 0 != high < 0 && !IsZero(p, edges[i + 1]) && !(i > 0 && IsZero(p, edges[i])))
            {
                AddOnce(roots, Bisect(p, edges[i], edges[i + 1], low));
            }
        }

        return roots;
    }

    private static double Bisect(double[] p, double from, double to, double valueAtFrom)
    {
        for (int k = 0; k < Bisections && to - from > 0; k++)
        {
            double middle = from + ((to - from) / 2);
            if (middle <= from || middle >= to)
            {
                break;
            }

            double value = Value(p, middle);
            if (value == 0)
            {
                return middle;
            }

            if (value < 0 == valueAtFrom < 0)
            {
                from = middle;
            }
            else
            {
                to = middle;
            }
        }

        return from + ((to - from) / 2);
    }

    private static double Value(double[] p, double x)
    {
        double value = 0;
        for (int i = p.Length - 1; i >= 0; i--)
        {
            value = (value * x) + p[i];
        }

        return value;
    }

    // Zero as far as the digits of a double can tell: small beside the sum of the terms' sizes.
    private static bool IsZero(double[] p, double x)
    {
        double size = 0;
        for (int i = p.Length - 1; i >= 0; i--)
        {
            size = (size * x) + Math.Abs(p[i]);
        }

        return Math.Abs(Value(p, x)) <= 1e-13 * size;
    }

    private static void AddOnce(List<double> roots, double root)
    {
        if (roots.Count == 0 || Math.Abs(roots[^1] - root) > 1e-12 * root)
        {
            roots.Add(root);
        }
    }

    // Leading zeros (nothing happens now) only shift time; trailing zeros end it earlier.
    private static double[] Trim(double[] coefficients)
    {
        int first = Array.FindIndex(coefficients, c => c != 0);
        int last = Array.FindLastIndex(coefficients, c => c != 0);
        return first < 0 ? [] : coefficients[first..(last + 1)];
    }
}
