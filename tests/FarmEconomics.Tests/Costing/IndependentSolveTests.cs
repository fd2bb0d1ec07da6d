using System.Diagnostics;
using System.Globalization;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>
/// The reciprocal shares solved a second time by NumPy, an independent general-purpose tool (Debian package python3-numpy).
/// Skipped where it isn't installed; FARMECONOMICS_REQUIRE_NUMPY=1 makes that a failure.
/// </summary>
public class IndependentSolveTests
{
    private const string Script = """
        import sys, numpy
        numbers = sys.stdin.read().split()
        at = 0
        def take(count):
            global at
            at += count
            return numbers[at - count:at]
        for _ in range(int(take(1)[0])):
            pools, targets = (int(n) for n in take(2))
            q = numpy.array(take(pools * pools), dtype=float).reshape(pools, pools)
            r = numpy.array(take(pools * targets), dtype=float).reshape(pools, targets)
            f = numpy.linalg.inv(numpy.eye(pools) - q) @ r
            print(*(repr(float(x)) for x in f.ravel()))
        """;

    [Fact]
    public void Reciprocal_RandomNetworks_AgreesWithNumPy()
    {
        string? python = FindPython();
        if (python is null)
        {
            Assert.False(Environment.GetEnvironmentVariable("FARMECONOMICS_REQUIRE_NUMPY") == "1", "FARMECONOMICS_REQUIRE_NUMPY is set, but no python3 with numpy was found.");
            Assert.Skip("No python3 with numpy here (Debian package python3-numpy): the independent solve was not run.");
        }

        Random random = new(20251125);
        List<(double[,] Q, double[,] R)> networks = Enumerable.Range(0, 50).Select(_ => Network(random)).ToList();
        string input = networks.Count + " " + string.Join(' ', networks.Select(net => $"{net.Q.GetLength(0)} {net.R.GetLength(1)} {Flat(net.Q)} {Flat(net.R)}"));
        string[] lines = Run(python, ["-c", Script], input).Trim().Split('\n');
        Assert.Equal(networks.Count, lines.Length);
        for (int n = 0; n < networks.Count; n++)
        {
            decimal[,] shares = SharedCosts.Solve(networks[n].Q, networks[n].R, SharingMethod.Reciprocal).Shares;
            double[] independent = lines[n].Split(' ').Select(text => double.Parse(text, CultureInfo.InvariantCulture)).ToArray();
            Assert.Equal(independent.Length, shares.Length);
            for (int k = 0; k < independent.Length; k++)
            {
                Assert.Equal(independent[k], (double)shares[k / shares.GetLength(1), k % shares.GetLength(1)], 1e-11);
            }
        }
    }

    /// <summary>Up to twelve pools, many of which pass most of what they hold to other pools.</summary>
    private static (double[,] Q, double[,] R) Network(Random random)
    {
        int pools = random.Next(2, 13);
        int targets = random.Next(1, 30);
        double[,] q = new double[pools, pools];
        double[,] r = new double[pools, targets];
        for (int i = 0; i < pools; i++)
        {
            double[] weights = Enumerable.Range(0, pools + targets).Select(_ => random.Next(3) == 0 ? random.NextDouble() : 0.0).ToArray();
            weights[pools + random.Next(targets)] += 0.05;
            double sum = weights.Sum();
            for (int j = 0; j < weights.Length; j++)
            {
                if (j < pools)
                {
                    q[i, j] = weights[j] / sum;
                }
                else
                {
                    r[i, j - pools] = weights[j] / sum;
                }
            }
        }

        return (q, r);
    }

    private static string Flat(double[,] matrix) => string.Join(' ', matrix.Cast<double>().Select(value => value.ToString("R", CultureInfo.InvariantCulture)));

    private static string? FindPython()
    {
        foreach (string candidate in new[] { "/usr/bin/python3", "python3" })
        {
            try
            {
                Run(candidate, ["-c", "import numpy"], "");
                return candidate;
            }
            catch (Exception missing) when (missing is InvalidOperationException or System.ComponentModel.Win32Exception)
            {
            }
        }

        return null;
    }

    private static string Run(string tool, string[] arguments, string input)
    {
        ProcessStartInfo start = new(tool, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync();
        Task<string> errors = process.StandardError.ReadToEndAsync();
        process.StandardInput.Write(input);
        process.StandardInput.Close();
        process.WaitForExit();
        return process.ExitCode == 0 ? output.Result : throw new InvalidOperationException(errors.Result);
    }
}
