namespace FarmEconomics.Records.Storage;

/// <summary>
/// Decimals, exactly: digits as an int, with the number of decimals and 1. Digits beyond an int stand in a column of longs, which is there
/// once one of them is; a value of more digits than a long has stands in a list of its own.
/// </summary>
internal sealed class NumberCells : Cells
{
    private const byte Apart = 0x3F;
    private const byte Wide = 0x40;
    private const int Decimals = 8;

    private static readonly long[] PowersOfTen = [1, 10, 100, 1_000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000];

    private int[] digits = [];
    private byte[] scales = [];
    private long[]? wide;
    private List<decimal> apart = [];

    public override bool IsEmpty => scales.Length == 0;

    public decimal? this[int row]
    {
        get
        {
            byte code = CodeOf(row);
            if (code == 0)
            {
                return null;
            }

            long value = Digits(row, code);
            if (code == Apart)
            {
                return apart[(int)value];
            }

            ulong size = value < 0 ? (ulong)-value : (ulong)value;
            return new decimal((int)(uint)size, (int)(uint)(size >> 32), 0, value < 0, (byte)ScaleOf(code));
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
    public void Set(int row, long value, int scale)
    {
        if (value == (int)value)
        {
            Store(row, (int)value, (byte)(scale + 1));
            return;
        }

        Store(row, 0, (byte)((scale + 1) | Wide));
        WideDigits()[row] = value;
    }

    public bool IsBlank(int row) => CodeOf(row) == 0;

    /// <summary>Below 0, 0 (a blank as well) or above 0.</summary>
    public int Sign(int row) => CodeOf(row) switch
    {
        0 => 0,
        Apart => decimal.Sign(apart[digits[row]]),
        var code => Math.Sign(Digits(row, code)),
    };

    /// <summary>The value in units of 10^-8.</summary>
    /// <param name="row">The row.</param>
    /// <param name="units">The units; 0 for a blank.</param>
    /// <returns>False where it has more decimals or more digits than fit.</returns>
    public bool TryUnits(int row, out long units)
    {
        units = 0;
        byte code = CodeOf(row);
        if (code == 0)
        {
            return true;
        }

        if (ScaleOf(code) > Decimals)
        {
            return Sign(row) == 0;
        }

        long high = Math.BigMul(Digits(row, code), PowersOfTen[Decimals - ScaleOf(code)], out units);
        return high == units >> 63;
    }

    /// <summary>A number that is the same for equal values, however many zeros they are written with.</summary>
    public override long Raw(int row)
    {
        byte code = CodeOf(row);
        if (code == 0)
        {
            return long.MinValue;
        }

        if (code == Apart)
        {
            return apart[digits[row]].GetHashCode();
        }

        (long value, int scale) = (Digits(row, code), ScaleOf(code));
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
        if (wide is not null)
        {
            Array.Resize(ref wide, rows);
        }
    }

    public override void Move(int from, int to, int count)
    {
        Cells<int>.Move(digits, from, to, count);
        Cells<byte>.Move(scales, from, to, count);
        if (wide is not null)
        {
            Cells<long>.Move(wide, from, to, count);
        }
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
        (copy.digits, copy.scales, copy.apart) = ((int[])digits.Clone(), (byte[])scales.Clone(), [.. apart]);
        copy.wide = (long[]?)wide?.Clone();
        return copy;
    }

    private static int ScaleOf(byte code) => (code & ~Wide) - 1;

    private byte CodeOf(int row) => (uint)row < (uint)scales.Length ? scales[row] : (byte)0;

    private long Digits(int row, byte code) => (code & Wide) == 0 ? digits[row] : wide![row];

    private long[] WideDigits()
    {
        if (wide is null)
        {
            lock (apart)
            {
                wide ??= new long[digits.Length];
            }
        }

        return wide;
    }

    private void Store(int row, int value, byte code)
    {
        if (row >= scales.Length)
        {
            Resize(Math.Max(row + 1, Math.Max(8, scales.Length * 2)));
        }

        (digits[row], scales[row]) = (value, code);
    }
}
