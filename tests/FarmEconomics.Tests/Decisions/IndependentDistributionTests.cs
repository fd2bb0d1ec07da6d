using System.Globalization;
using FarmEconomics.Decisions.Chances;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>
/// The distribution functions worked out a second time by Python, an independent general-purpose tool: statistics.NormalDist,
/// random.triangular, statistics.quantiles, and numpy.percentile where numpy is there
/// (Debian package python3-numpy). Skipped where there is no python3; FARMECONOMICS_REQUIRE_NUMPY=1 makes a missing numpy a failure.
/// </summary>
public class IndependentDistributionTests
{
    private const string Script = """
        import random, statistics, sys
        numbers = [float(n) for n in sys.stdin.read().split()]
        normal = statistics.NormalDist()
        class Fixed(random.Random):
            def random(self):
                return self.value
        fixed = Fixed()
        def triangular(u):
            fixed.value = u
            return fixed.triangular(0.6, 1.2, 1.0)
        half = len(numbers) // 2
        ranks, values = numbers[:half], numbers[half:]
        print(*(repr(normal.inv_cdf(u)) for u in ranks))
        print(*(repr(normal.cdf(x)) for x in values))
        print(*(repr(triangular(u)) for u in ranks))
        print(*(repr(q) for q in statistics.quantiles(values, n=20, method='inclusive')))
        try:
            import numpy
            print(*(repr(float(q)) for q in numpy.percentile(values, [5 * i for i in range(1, 20)])))
        except ImportError:
            print('none')
        """;

    [Fact]
    public void Distributions_RandomNumbers_AgreeWithPython()
    {
        bool required = Environment.GetEnvironmentVariable("FARMECONOMICS_REQUIRE_NUMPY") == "1";
        SeededRandom random = new(7, "python");
        double[] ranks = [.. Enumerable.Range(0, 400).Select(_ => random.NextUniform())];
        double[] values = [.. Enumerable.Range(0, 400).Select(_ => random.NextNormal())];
        string? answer = IndependentPython.Run(Script, string.Join(' ', ranks.Concat(values).Select(value => value.ToString("R", CultureInfo.InvariantCulture))));
        if (answer is null)
        {
            Assert.False(required, "FARMECONOMICS_REQUIRE_NUMPY is set, but there is no python3.");
            Assert.Skip("No python3 here: the distribution functions were not worked out a second time.");
        }

        string[] lines = answer.Trim().Split('\n');
        Triangular triangular = new(0.6, 1.0, 1.2);
        Outcome outcome = new("x", [.. values.Select(value => 1000 * value)], 1);
        Near(lines[0], [.. ranks.Select(Copula.NormalOf)], 1e-9);
        Near(lines[1], [.. values.Select(Copula.Rank)], 1e-12);
        Near(lines[2], [.. ranks.Select(triangular.Quantile)], 1e-12);
        double[] percentiles = [.. Enumerable.Range(1, 19).Select(i => (double)outcome.Percentile(i / 20.0).Amount / 1000)];
        Near(lines[3], percentiles, 0.0000051);
        Assert.False(required && lines[4] == "none", "FARMECONOMICS_REQUIRE_NUMPY is set, but python3 has no numpy.");
        if (lines[4] != "none")
        {
            Near(lines[4], percentiles, 0.0000051);
        }
    }

    private static void Near(string line, double[] actual, double tolerance)
    {
        double[] expected = [.. line.Split(' ').Select(text => double.Parse(text, CultureInfo.InvariantCulture))];
        Assert.Equal(expected.Length, actual.Length);
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i], actual[i], tolerance);
        }
    }
}
