using CsCheck;
using FarmEconomics.Planning.Programs;
using MathNet.Numerics.LinearAlgebra;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Small random programs against every corner of their region, found by solving each set of limits as equations (another method and
/// another library); and what must hold of any. FARMECONOMICS_FARMS sets how many each property sees (1000 is the full run).
/// </summary>
public class RandomProgramTests
{
    private static readonly long Models = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms) ? farms : 100;

    private static readonly Gen<Random3> Any =
        from worth in Hundredths(-200, 1000).Array[3]
        from takes in Hundredths(10, 500).Array[3].Array[3, 5]
        from most in Hundredths(500, 5000).Array[5]
        from least in Hundredths(0, 30)
        select new Random3(worth, takes, most, least);

    private static Gen<double> Hundredths(int least, int most) => Gen.Int[least, most].Select(number => number / 100.0);

    [Fact]
    public void Solve_RandomProgram_FindsTheBestCorner() => Any.Sample(
        program =>
        {
            LinearModel model = program.Model();
            LinearSolution solution = Programs.Solver.Solve(model);
            Programs.Near(program.BestCorner(), solution.Objective, 1e-6);
            Programs.Near(solution.Objective, solution.DualObjective(model), 1e-6);
            Assert.All(solution.Used(model).Zip(model.Limits), pair => Assert.True(pair.First <= pair.Second.Most + 1e-6 && pair.First >= pair.Second.Least - 1e-6));
        },
        iter: Models);

    [Fact]
    public void Optimum_WithOneMoreLimit_IsNeverHigher() => Any.Sample(
        program =>
        {
            double before = Programs.Solver.Solve(program.Model()).Objective;
            LinearModel model = program.Model();
            int limit = model.AddLimit("one more", double.NegativeInfinity, program.Most[0] / 2.0);
            model.Set(limit, 0, 1.0);
            model.Set(limit, 2, 2.0);
            Assert.True(Programs.Solver.Solve(model).Objective <= before + 1e-6);
        },
        iter: Models);

    /// <summary>The optimum is concave in a bound: a step within the range earns the shadow price, a longer one no more than that.</summary>
    [Fact]
    public void Optimum_WithALimitRelaxed_ChangesByTheShadowPriceAndNeverByMore() => Any.Sample(
        program =>
        {
            LinearModel model = program.Model();
            using ILinearRun run = Programs.Solver.Open(model);
            LinearSolution solution = run.Solve();
            for (int i = 0; i < program.Takes.Length; i++)
            {
                LimitWorth worth = LimitWorth.Of(run, model, solution, i, 1e-4);
                Assert.InRange(worth.More!.Value, -1e-6, solution.ShadowPrices[i] + 1e-5);
                Assert.True(worth.Less!.Value >= solution.ShadowPrices[i] - 1e-5);
                if (worth.IsUnique)
                {
                    Programs.Near(solution.ShadowPrices[i], worth.More!.Value, 1e-5);
                }

                run.SetLimit(i, double.NegativeInfinity, model.Limits[i].Most + 1.0);
                Programs.Near(run.Solve().Objective, run.Best()!.Value, 1e-9);
                Assert.InRange(run.Solve().Objective - solution.Objective, -1e-6, solution.ShadowPrices[i] + 1e-5);
                run.SetLimit(i, double.NegativeInfinity, model.Limits[i].Most);
            }
        },
        iter: Models / 4);

    [Fact]
    public void Solve_InWholeNumbers_IsTheBestOfAllThatFit() => Any.Sample(
        program =>
        {
            LinearModel model = program.Model(isWhole: true);
            LinearSolution solution = Programs.Solver.Solve(model);
            double best = program.BestWhole();
            if (double.IsNegativeInfinity(best))
            {
                Assert.Equal(SolveStatus.Infeasible, solution.Status);
            }
            else
            {
                // The solver stops within a thousandth of the best.
                Assert.InRange(solution.Objective, best - (0.0011 * Math.Max(1.0, Math.Abs(best))), best + 1e-6);
            }
        },
        iter: Models / 10);

    [Fact]
    public void Shortfalls_OfAProgramWithoutAnswer_NameTheLimitAndByHowMuch()
    {
        LinearModel model = new();
        int hours = model.AddQuantity("boxes", 1.0);
        int week = model.AddLimit("hours in the week of May 5", double.NegativeInfinity, 40.0);
        int boxes = model.AddLimit("boxes promised", 26.0, double.PositiveInfinity);
        model.Set(week, hours, 2.0);
        model.Set(boxes, hours, 1.0);

        Assert.Equal(SolveStatus.Infeasible, Programs.Solver.Solve(model).Status);
        Shortfall found = Assert.Single(Shortfalls.Of(Programs.Solver, model, new HashSet<int> { boxes }));
        Assert.Equal(week, found.Limit);
        Assert.Equal(12.0, found.By, 6);
    }

    [Fact]
    public void Solve_WithoutBound_SaysUnbounded()
    {
        LinearModel model = new();
        model.AddQuantity("free", 1.0);
        Assert.NotEqual(SolveStatus.Optimal, Programs.Solver.Solve(model).Status);
    }

    /// <summary>Three quantities, at least a little of each, under a few limits.</summary>
    internal sealed record Random3(double[] Worth, double[][] Takes, double[] Most, double Least)
    {
        internal LinearModel Model(bool isWhole = false)
        {
            LinearModel model = new();
            foreach (double worth in Worth)
            {
                model.AddQuantity("q", worth, least: Least, isWhole: isWhole);
            }

            for (int i = 0; i < Takes.Length; i++)
            {
                int limit = model.AddLimit("l", double.NegativeInfinity, Most[i]);
                for (int j = 0; j < 3; j++)
                {
                    model.Set(limit, j, Takes[i][j]);
                }
            }

            return model;
        }

        internal double BestCorner()
        {
            List<(double[] Takes, double Most)> planes =
                [.. Takes.Select((takes, i) => (takes, Most[i])), .. Enumerable.Range(0, 3).Select(j => (Enumerable.Range(0, 3).Select(k => k == j ? 1.0 : 0.0).ToArray(), Least))];
            double best = double.NegativeInfinity;
            for (int a = 0; a < planes.Count; a++)
            {
                for (int b = a + 1; b < planes.Count; b++)
                {
                    for (int c = b + 1; c < planes.Count; c++)
                    {
                        best = Math.Max(best, At([planes[a], planes[b], planes[c]]));
                    }
                }
            }

            return best;
        }

        internal double BestWhole()
        {
            double best = double.NegativeInfinity;
            int least = (int)Math.Ceiling(Least);
            int Top(int j) => (int)Takes.Select((takes, i) => Most[i] / takes[j]).Min();
            for (int x = least; x <= Top(0); x++)
            {
                for (int y = least; y <= Top(1); y++)
                {
                    for (int z = least; z <= Top(2); z++)
                    {
                        double[] at = [x, y, z];
                        best = Fits(at) ? Math.Max(best, Value(at)) : best;
                    }
                }
            }

            return best;
        }

        private double At((double[] Takes, double Most)[] planes)
        {
            Matrix<double> matrix = Matrix<double>.Build.DenseOfRowArrays(planes.Select(plane => plane.Takes));
            if (Math.Abs(matrix.Determinant()) < 1e-9)
            {
                return double.NegativeInfinity;
            }

            double[] point = [.. matrix.Solve(Vector<double>.Build.DenseOfEnumerable(planes.Select(plane => plane.Most)))];
            return point.All(value => value >= Least - 1e-7) && Fits(point) ? Value(point) : double.NegativeInfinity;
        }

        private bool Fits(double[] point) => Takes.Select((takes, i) => takes.Zip(point, (take, value) => take * value).Sum() <= Most[i] + 1e-7).All(fits => fits);

        private double Value(double[] point) => Worth.Zip(point, (worth, value) => worth * value).Sum();
    }
}
