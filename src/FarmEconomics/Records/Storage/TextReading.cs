using System.Runtime.InteropServices;

namespace FarmEconomics.Records.Storage;

/// <summary>
/// Finds the number of a text by its bytes, so that a name that stands in millions of rows is made into a string once. Of one thread.
/// </summary>
/// <param name="meet">Looks at a text met for the first time: its number, or a negative one when it needs a closer look each time.</param>
internal sealed class TextReading(TextReading.Meet meet)
{
    private readonly List<(int Start, int Length, int Id)> known = [];
    private byte[] letters = new byte[256];
    private int used;
    private int[] slots = new int[64];
    private int last = -1;

    /// <summary>Looks at a text.</summary>
    public delegate int Meet(ReadOnlySpan<byte> text);

    public int Of(ReadOnlySpan<byte> text)
    {
        if (last >= 0 && text.SequenceEqual(Letters(last)))
        {
            return known[last].Id;
        }

        int slot = SlotOf(text);
        if (slots[slot] == 0)
        {
            int id = meet(text);
            if (id < 0)
            {
                return id;
            }

            Remember(text, id, slot);
            return id;
        }

        last = slots[slot] - 1;
        return known[last].Id;
    }

    private ReadOnlySpan<byte> Letters(int at) => letters.AsSpan(known[at].Start, known[at].Length);

    private int SlotOf(ReadOnlySpan<byte> text)
    {
        int slot = (int)(Hash(text) & (uint)(slots.Length - 1));
        while (slots[slot] != 0 && !text.SequenceEqual(Letters(slots[slot] - 1)))
        {
            slot = (slot + 1) & (slots.Length - 1);
        }

        return slot;
    }

    private void Remember(ReadOnlySpan<byte> text, int id, int slot)
    {
        if (used + text.Length > letters.Length)
        {
            Array.Resize(ref letters, Math.Max(used + text.Length, letters.Length * 2));
        }

        text.CopyTo(letters.AsSpan(used));
        known.Add((used, text.Length, id));
        used += text.Length;
        slots[slot] = known.Count;
        last = known.Count - 1;
        if (known.Count * 2 > slots.Length)
        {
            slots = new int[slots.Length * 2];
            for (int i = 0; i < known.Count; i++)
            {
                slots[SlotOf(Letters(i))] = i + 1;
            }
        }
    }

    private static uint Hash(ReadOnlySpan<byte> text)
    {
        ulong hash = (ulong)text.Length * 0x9E3779B97F4A7C15;
        for (; text.Length >= 8; text = text[8..])
        {
            hash = (hash ^ MemoryMarshal.Read<ulong>(text)) * 0xFF51AFD7ED558CCD;
            hash ^= hash >> 32;
        }

        foreach (byte letter in text)
        {
            hash = (hash ^ letter) * 0x100000001B3;
        }

        return (uint)(hash ^ (hash >> 29));
    }
}
