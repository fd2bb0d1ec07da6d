using System.Text.Json;
using FarmEconomics.Planning.Programs;
using FarmEconomics.Solver;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>Programs for tests: published ones from their files, and the solver of this machine.</summary>
internal static class Programs
{
    /// <summary>The solver; skips the test, with the reason, on a system it isn't made for.</summary>
    internal static ILinearSolver Solver
    {
        get
        {
            ILinearSolver? solver = LinearSolvers.Find();
            Assert.SkipWhen(solver is null, LinearSolvers.Missing);
            return solver!;
        }
    }

    internal static double[] Doubles(this JsonElement element, string name) => [.. element.Numbers(name).Select(number => (double)number)];

    internal static double Double(this JsonElement element, string name) => (double)element.Number(name);

    /// <summary>Activities with their worth, and limits of one bound.</summary>
    internal static LinearModel Of(JsonElement program, double[]? worth = null)
    {
        LinearModel model = new();
        double[] each = worth ?? program.Doubles("worth");
        string[] names = [.. program.List("activities").Select(name => name.GetString()!)];
        for (int i = 0; i < names.Length; i++)
        {
            model.AddQuantity(names[i], each[i]);
        }

        foreach (JsonElement row in program.List("limits"))
        {
            bool most = row.Text("type") == "<=";
            double bound = row.Double("most");
            int limit = model.AddLimit(row.Text("name"), most ? double.NegativeInfinity : bound, most ? bound : double.PositiveInfinity);
            double[] takes = row.Doubles("takes");
            for (int i = 0; i < takes.Length; i++)
            {
                model.Set(limit, i, takes[i]);
            }
        }

        return model;
    }

    internal static void Near(double expected, double actual, double tolerance) =>
        Assert.True(Math.Abs(expected - actual) <= tolerance, $"expected {expected} within {tolerance}, got {actual}");

    internal static void Near(double[] expected, IReadOnlyList<double> actual, double tolerance)
    {
        Assert.True(actual.Count >= expected.Length);
        for (int i = 0; i < expected.Length; i++)
        {
            Near(expected[i], actual[i], tolerance);
        }
    }
}
