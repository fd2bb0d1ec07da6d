using System.Numerics;
using System.Runtime.Intrinsics;

namespace FarmEconomics.Files.Reading;

/// <summary>
/// The rows of bytes in which no quote stands: there every separator ends a field and every line feed a row. Separators are found many
/// bytes at a time. Of one thread.
/// </summary>
/// <param name="bytes">The bytes; behind those that count stand <see cref="Padding"/> more, whatever they are.</param>
/// <param name="length">How many bytes count.</param>
/// <param name="separator">What stands between two fields.</param>
internal ref struct PlainRows(ReadOnlySpan<byte> bytes, int length, byte separator)
{
    /// <summary>How many bytes are looked at together.</summary>
    public const int Padding = 32;

    private readonly ReadOnlySpan<byte> bytes = bytes;
    private readonly Vector256<byte> separators = Vector256.Create(separator);
    private readonly Vector256<byte> lineFeeds = Vector256.Create((byte)'\n');
    private int[] ends = new int[32];
    private int block = -Padding;
    private uint marks;
    private int start;
    private int next;

    /// <summary>How many fields the row has; a blank line has one.</summary>
    public int Count { get; private set; }

    /// <summary>How many bytes the row has.</summary>
    public readonly int Length => next - start;

    /// <summary>A field, without the spaces and tabs around it.</summary>
    public readonly ReadOnlySpan<byte> this[int field]
    {
        get
        {
            int from = field == 0 ? start : ends[field - 1] + 1;
            int to = ends[field];
            while (from < to && bytes[from] is (byte)' ' or (byte)'\t')
            {
                from++;
            }

            while (to > from && bytes[to - 1] is (byte)' ' or (byte)'\t')
            {
                to--;
            }

            return bytes[from..to];
        }
    }

    /// <summary>True for a row nothing stands in.</summary>
    public readonly bool IsBlank => HasNothingFrom(0);

    /// <summary>Goes to the next row.</summary>
    /// <returns>False after the last.</returns>
    public bool Read()
    {
        (start, Count) = (next, 0);
        while (start < length)
        {
            while (marks == 0)
            {
                block += Padding;
                if (block >= length)
                {
                    End(next = length);
                    return true;
                }

                var some = Vector256.Create(bytes.Slice(block, Padding));
                marks = (Vector256.Equals(some, separators) | Vector256.Equals(some, lineFeeds)).ExtractMostSignificantBits();
            }

            int at = block + BitOperations.TrailingZeroCount(marks);
            marks &= marks - 1;
            if (at >= length)
            {
                marks = 0;
            }
            else if (bytes[at] == '\n')
            {
                next = at + 1;
                End(at > start && bytes[at - 1] == '\r' ? at - 1 : at);
                return true;
            }
            else
            {
                End(at);
            }
        }

        return false;
    }

    /// <summary>True when nothing stands in a field and those after it.</summary>
    public readonly bool HasNothingFrom(int field)
    {
        for (; field < Count; field++)
        {
            if (!this[field].IsEmpty)
            {
                return false;
            }
        }

        return true;
    }

    private void End(int at)
    {
        if (Count == ends.Length)
        {
            Array.Resize(ref ends, 2 * Count);
        }

        ends[Count++] = at;
    }
}
