namespace FarmEconomics.Records.Storage;

/// <summary>
/// Decimals, exactly: digits as a long, with the number of decimals and 1. A value of more digits than a long has stands in a list of
/// its own.
/// </summary>
internal sealed class NumberCells : Cells
{
    private const byte Apart = 255;
    private const int Decimals = 8;

    private static readonly long[] PowersOfTen = [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000];

    private long[] digits = [];
    private byte[] scales = [];
    private List<decimal> apart = [];

    public decimal? this[int row]
    {
        get
        {
            byte scale = row < scales.Length ? scales[row] : (byte)0;
            if (scale == 0)
            {
                return null;
            }

            long value = digits[row];
            if (scale == Apart)
            {
                return apart[(int)value];
            }

            ulong size = value < 0 ? (ulong)-value : (ulong)value;
            return new decimal((int)(uint)size, (int)(uint)(size >> 32), 0, value < 0, (byte)(scale - 1));
        }

        set
        {
            Span<int> bits = stackalloc int[4];
            if (value is not { } number)
            {
                Clear(row, 1);
            }
            else if (decimal.GetBits(number, bits) == 4 && bits[2] == 0 && bits[1] >= 0 && !(number == 0m && bits[3] < 0))
            {
                long size = ((long)bits[1] << 32) | (uint)bits[0];
                Set(row, bits[3] < 0 ? -size : size, (bits[3] >> 16) & 0xFF);
            }
            else
            {
                // So rare that several threads reading one column may wait for each other.
                lock (apart)
                {
                    apart.Add(number);
                    Store(row, apart.Count - 1, Apart);
                }
            }
        }
    }

    /// <summary>Stores digits with a number of decimals.</summary>
    public void Set(int row, long value, int scale) => Store(row, value, (byte)(scale + 1));

    public bool IsBlank(int row) => row >= scales.Length || scales[row] == 0;

    /// <summary>Below 0, 0 (a blank as well) or above 0.</summary>
    public int Sign(int row) =>
        row >= scales.Length ? 0 : scales[row] == Apart ? decimal.Sign(apart[(int)digits[row]]) : Math.Sign(digits[row]);

    /// <summary>The value in units of 10^-8.</summary>
    /// <param name="row">The row.</param>
    /// <param name="units">The units; 0 for a blank.</param>
    /// <returns>False where it has more decimals or more digits than fit.</returns>
    public bool TryUnits(int row, out long units)
    {
        units = 0;
        int scale = row < scales.Length ? scales[row] - 1 : -1;
        if (scale < 0)
        {
            return true;
        }

        if (scale > Decimals)
        {
            return Sign(row) == 0;
        }

        long high = Math.BigMul(digits[row], PowersOfTen[Decimals - scale], out units);
        return high == units >> 63;
    }

    /// <summary>A number that is the same for equal values, however many zeros they are written with.</summary>
    public override long Raw(int row)
    {
        int scale = row < scales.Length ? scales[row] - 1 : -1;
        if (scale < 0)
        {
            return long.MinValue;
        }

        if (scale == Apart - 1)
        {
            return apart[(int)digits[row]].GetHashCode();
        }

        long value = digits[row];
        while (scale > 0 && value % 10 == 0)
        {
            value /= 10;
            scale--;
        }

        return value ^ ((long)scale << 58);
    }

    public override void Resize(int rows)
    {
        Array.Resize(ref digits, rows);
        Array.Resize(ref scales, rows);
    }

    public override void Move(int from, int to, int count)
    {
        Cells<long>.Move(digits, from, to, count);
        Cells<byte>.Move(scales, from, to, count);
    }

    public override void Clear(int from, int count)
    {
        if (from < scales.Length)
        {
            Array.Clear(scales, from, Math.Min(count, scales.Length - from));
        }
    }

    public override Cells Copy()
    {
        var copy = (NumberCells)MemberwiseClone();
        (copy.digits, copy.scales, copy.apart) = ((long[])digits.Clone(), (byte[])scales.Clone(), [.. apart]);
        return copy;
    }

    private void Store(int row, long value, byte scale)
    {
        if (row >= scales.Length)
        {
            Resize(Math.Max(row + 1, Math.Max(8, scales.Length * 2)));
        }

        (digits[row], scales[row]) = (value, scale);
    }
}
