using FarmEconomics.Records;
using MathNet.Numerics.LinearAlgebra;

namespace FarmEconomics.Costing;

/// <summary>
/// The full effect of pools that serve each other: F = (I - Q)^-1 R, where Q holds the shares pools pass to pools and R those they
/// pass to enterprises, household, unused capacity and "not assigned". Each row of F sums to 1. Source: the reciprocal (simultaneous
/// equations) method of service-department cost allocation; direct and step-down are its older simplifications.
/// </summary>
public sealed class SharedCosts
{
    private const int ShareDecimals = 12;

    // Less than this passed out of a circle is none: nearer to 1, doubles can't tell what stays from what leaves.
    private const double LeastPassedOut = 1e-12;

    private SharedCosts(decimal[,] shares, Matrix<double> toPools)
    {
        Shares = shares;
        ToPools = toPools;
    }

    /// <summary>
    /// Full-effect share of each pool (row) landing on each target (column): enterprises, then household, unused, not assigned. To 12
    /// decimals.
    /// </summary>
    public decimal[,] Shares { get; }

    /// <summary>The share a pool passes directly to another pool, by the method that was used; for telling apart what reached a target
    /// directly and what came through other pools. To 12 decimals.</summary>
    /// <param name="pool">The pool that passes.</param>
    /// <param name="other">The pool that receives.</param>
    /// <returns>0 to 1.</returns>
    public decimal PassedTo(int pool, int other) =>
        Math.Max(0m, decimal.Round((decimal)ToPools[pool, other], ShareDecimals, MidpointRounding.AwayFromZero));

    /// <summary>The shares pools pass directly to pools.</summary>
    internal Matrix<double> ToPools { get; }

    /// <summary>Solves the shares.</summary>
    /// <param name="toPools">Q: row i holds what pool i passes to each pool; with R each row sums to 1.</param>
    /// <param name="toTargets">R: row i holds what pool i passes to each target.</param>
    /// <param name="method">Reciprocal, step-down in the order of the rows, or direct.</param>
    /// <returns>The shares.</returns>
    public static SharedCosts Solve(double[,] toPools, double[,] toTargets, SharingMethod method) =>
        Solve(toPools, toTargets, method, passedOn: null, idleColumn: 0);

    /// <summary>Solves the shares of pools that keep a part of what they hold: idle capacity, which no method hands to users.</summary>
    /// <param name="toPools">Q, as if everything were passed on.</param>
    /// <param name="toTargets">R, as if everything were passed on.</param>
    /// <param name="method">Reciprocal, step-down in the order of the rows, or direct.</param>
    /// <param name="passedOn">The part of each pool that is passed on, 0 to 1; null: all of it.</param>
    /// <param name="idleColumn">The target that takes the rest.</param>
    /// <returns>The shares.</returns>
    internal static SharedCosts Solve(
        double[,] toPools,
        double[,] toTargets,
        SharingMethod method,
        IReadOnlyList<decimal>? passedOn,
        int idleColumn
    )
    {
        ArgumentNullException.ThrowIfNull(toPools);
        ArgumentNullException.ThrowIfNull(toTargets);
        Matrix<double> q = Matrix<double>.Build.DenseOfArray(toPools);
        Matrix<double> r = Matrix<double>.Build.DenseOfArray(toTargets);
        if (method != SharingMethod.Reciprocal)
        {
            CutReturnFlows(q, r, method);
        }

        for (int i = 0; i < (passedOn?.Count ?? 0); i++)
        {
            double part = (double)passedOn![i];
            q.SetRow(i, q.Row(i) * part);
            r.SetRow(i, r.Row(i) * part);
            r[i, idleColumn] += 1.0 - part;
        }

        CloseCircles(q, r);
        return new SharedCosts(FullEffect(q, r), q);
    }

    private static decimal[,] FullEffect(Matrix<double> q, Matrix<double> r)
    {
        Matrix<double> full = (Matrix<double>.Build.DenseIdentity(q.RowCount) - q).LU().Solve(r);
        bool[,] reached = Reached(q, r);
        decimal[,] shares = new decimal[full.RowCount, full.ColumnCount];
        for (int i = 0; i < full.RowCount; i++)
        {
            for (int j = 0; j < full.ColumnCount; j++)
            {
                // A solve may leave dust around 0 where a target can't be reached: no cost may land there.
                decimal share = decimal.Round((decimal)full[i, j], ShareDecimals, MidpointRounding.AwayFromZero);
                shares[i, j] = reached[i, j] ? Math.Max(0m, share) : 0m;
            }
        }

        return shares;
    }

    /// <summary>What flows through each pool when each brings its own amount: own plus received from other pools.</summary>
    /// <param name="own">Each pool's own amount.</param>
    /// <returns>Gross amounts, unrounded, for information.</returns>
    public double[] GrossFlows(IReadOnlyList<double> own)
    {
        ArgumentNullException.ThrowIfNull(own);
        Matrix<double> transposed = (Matrix<double>.Build.DenseIdentity(own.Count) - ToPools).Transpose();
        return transposed.LU().Solve(Vector<double>.Build.DenseOfEnumerable(own)).ToArray();
    }

    /// <summary>Which targets each pool reaches, directly or through pools.</summary>
    private static bool[,] Reached(Matrix<double> q, Matrix<double> r)
    {
        bool[,] reached = new bool[r.RowCount, r.ColumnCount];
        for (int i = 0; i < r.RowCount; i++)
        {
            HashSet<int> seen = [i];
            Queue<int> waiting = new(seen);
            while (waiting.TryDequeue(out int at))
            {
                for (int j = 0; j < r.ColumnCount; j++)
                {
                    reached[i, j] |= r[at, j] > 0.0;
                }

                for (int k = 0; k < q.ColumnCount; k++)
                {
                    if (q[at, k] > 0.0 && seen.Add(k))
                    {
                        waiting.Enqueue(k);
                    }
                }
            }
        }

        return reached;
    }

    /// <summary>Pools that serve only each other reach no target: what they hold is not assigned.</summary>
    private static void CloseCircles(Matrix<double> q, Matrix<double> r)
    {
        bool[] leaves = new bool[q.RowCount];
        bool changed = true;
        while (changed)
        {
            changed = false;
            for (int i = 0; i < leaves.Length; i++)
            {
                double passedOut = r.Row(i).Sum() + q.Row(i).EnumerateIndexed().Sum(share => leaves[share.Item1] ? share.Item2 : 0.0);
                if (!leaves[i] && passedOut > LeastPassedOut)
                {
                    leaves[i] = changed = true;
                }
            }
        }

        for (int i = 0; i < leaves.Length; i++)
        {
            if (!leaves[i])
            {
                q.ClearRow(i);
                r.ClearRow(i);
                r[i, r.ColumnCount - 1] = 1.0;
            }
        }
    }

    /// <summary>
    /// Step-down ignores service to pools already closed, direct all service to pools; the rest of the row is scaled up to 1.
    /// </summary>
    private static void CutReturnFlows(Matrix<double> q, Matrix<double> r, SharingMethod method)
    {
        for (int i = 0; i < q.RowCount; i++)
        {
            for (int j = 0; j < q.ColumnCount; j++)
            {
                if (method == SharingMethod.Direct || j <= i)
                {
                    q[i, j] = 0.0;
                }
            }

            double left = q.Row(i).Sum() + r.Row(i).Sum();
            if (left <= 0.0)
            {
                // Serves only pools that no longer take anything: it reaches no crop by this method.
                r[i, r.ColumnCount - 1] = 1.0;
                continue;
            }

            q.SetRow(i, q.Row(i) / left);
            r.SetRow(i, r.Row(i) / left);
        }
    }
}
