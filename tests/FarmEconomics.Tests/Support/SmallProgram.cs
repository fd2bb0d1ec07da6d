namespace FarmEconomics.Tests.Support;

/// <summary>
/// A small linear program, maximize c x with A x at most b and x at least 0, b at least 0: the simplex method by Bland's rule, which never
/// circles (R.G. Bland, Mathematics of Operations Research 2(2), 1977). For holding rules against; dense and slow.
/// </summary>
internal sealed class SmallProgram
{
    private const double Zero = 1e-9;

    private readonly double[][] table;
    private readonly int[] basis;
    private readonly int variables;

    private SmallProgram(double[] gain, IReadOnlyList<(double[] Row, double Limit)> limits)
    {
        variables = gain.Length;
        basis = [.. Enumerable.Range(variables, limits.Count)];
        int width = variables + limits.Count + 1;
        table = new double[limits.Count + 1][];
        for (int i = 0; i < limits.Count; i++)
        {
            table[i] = new double[width];
            limits[i].Row.CopyTo(table[i], 0);
            table[i][variables + i] = 1;
            table[i][^1] = limits[i].Limit;
        }

        table[^1] = new double[width];
        for (int j = 0; j < variables; j++)
        {
            table[^1][j] = -gain[j];
        }
    }

    internal double Value => table[^1][^1];

    /// <summary>What one unit more of each limit is worth.</summary>
    internal double[] Duals => table[^1][variables..^1];

    internal static SmallProgram Maximize(double[] gain, IReadOnlyList<(double[] Row, double Limit)> limits)
    {
        SmallProgram program = new(gain, limits);
        while (program.Entering() is { } column)
        {
            program.Pivot(program.Leaving(column), column);
        }

        return program;
    }

    private int? Entering()
    {
        for (int j = 0; j < table[^1].Length - 1; j++)
        {
            if (table[^1][j] < -Zero)
            {
                return j;
            }
        }

        return null;
    }

    private int Leaving(int column)
    {
        int best = -1;
        for (int i = 0; i < basis.Length; i++)
        {
            if (table[i][column] > Zero && (best < 0 || Ratio(i, column) < Ratio(best, column) - Zero
                || (Ratio(i, column) <= Ratio(best, column) + Zero && basis[i] < basis[best])))
            {
                best = i;
            }
        }

        return best >= 0 ? best : throw new InvalidOperationException("The program has no bound.");
    }

    private double Ratio(int row, int column) => table[row][^1] / table[row][column];

    private void Pivot(int row, int column)
    {
        double by = table[row][column];
        for (int j = 0; j < table[row].Length; j++)
        {
            table[row][j] /= by;
        }

        for (int i = 0; i < table.Length; i++)
        {
            double times = table[i][column];
            for (int j = 0; i != row && times != 0 && j < table[i].Length; j++)
            {
                table[i][j] -= times * table[row][j];
            }
        }

        basis[row] = column;
    }
}
