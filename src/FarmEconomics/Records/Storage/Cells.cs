using System.Runtime.CompilerServices;

namespace FarmEconomics.Records.Storage;

/// <summary>
/// The values of one column, by row. All bits 0 is a blank; rows beyond the end are blank, so that a column nobody fills takes no room.
/// </summary>
internal abstract class Cells
{
    /// <summary>True for a column nobody filled.</summary>
    public abstract bool IsEmpty { get; }

    /// <summary>Makes room for some rows; nothing that is there is lost.</summary>
    public abstract void Resize(int rows);

    /// <summary>Moves rows to the front, over what stands there.</summary>
    public abstract void Move(int from, int to, int count);

    /// <summary>A number that is the same for equal values.</summary>
    public abstract long Raw(int row);

    /// <summary>Blanks rows.</summary>
    public abstract void Clear(int from, int count);

    public abstract Cells Copy();
}

/// <summary>Values of one fixed size.</summary>
internal abstract class Cells<T> : Cells
    where T : unmanaged
{
    private T[] values = [];

    /// <summary>The values as stored; fewer than rows where the rest is blank.</summary>
    public ReadOnlySpan<T> Stored => values;

    public T this[int row]
    {
        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        get => (uint)row < (uint)values.Length ? values[row] : default;

        set
        {
            if (row >= values.Length)
            {
                Array.Resize(ref values, Math.Max(row + 1, Math.Max(8, values.Length * 2)));
            }

            values[row] = value;
        }
    }

    public override bool IsEmpty => values.Length == 0;

    public override void Resize(int rows) => Array.Resize(ref values, rows);

    public override void Move(int from, int to, int count) => Move(values, from, to, count);

    /// <summary>Moves values to the front; what lies beyond the end is blank.</summary>
    internal static void Move(T[] values, int from, int to, int count)
    {
        int there = Math.Clamp(values.Length - from, 0, count);
        Array.Copy(values, Math.Min(from, values.Length), values, Math.Min(to, values.Length), there);
        if (to + there < values.Length)
        {
            Array.Clear(values, to + there, Math.Min(count - there, values.Length - to - there));
        }
    }

    public override void Clear(int from, int count)
    {
        if (from < values.Length)
        {
            Array.Clear(values, from, Math.Min(count, values.Length - from));
        }
    }

    public override Cells Copy()
    {
        var copy = (Cells<T>)MemberwiseClone();
        copy.values = (T[])values.Clone();
        return copy;
    }
}

/// <summary>Texts, by their number in the pool.</summary>
internal sealed class TextCells : Cells<int>
{
    public override long Raw(int row) => this[row];
}

/// <summary>Days: the day number and 1.</summary>
internal sealed class DayCells : Cells<int>
{
    /// <summary>The day number as <see cref="DateOnly.DayNumber"/> has it; -1 for a blank.</summary>
    public int DayNumber(int row) => this[row] - 1;

    public override long Raw(int row) => this[row];
}

/// <summary>Years; 0 is a blank.</summary>
internal sealed class YearCells : Cells<short>
{
    public override long Raw(int row) => this[row];
}

/// <summary>Words of a fixed list, or yes and no, by their place in it and 1.</summary>
internal sealed class CodeCells : Cells<byte>
{
    public override long Raw(int row) => this[row];
}
