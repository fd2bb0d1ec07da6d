using System.Runtime.InteropServices;

namespace FarmEconomics.Records.Storage;

/// <summary>
/// Finds the number of a text by its bytes, so that a name that stands in millions of rows is made into a string once. Of one thread.
/// </summary>
/// <param name="meet">Looks at a text met for the first time: its number, or a negative one when it needs a closer look each time.</param>
internal sealed class TextReading(TextReading.Meet meet)
{
    private Known[] known = new Known[32];
    private int count;
    private byte[] letters = new byte[256];
    private int used;
    private int[] slots = new int[64];
    private int last = -1;

    /// <summary>Looks at a text.</summary>
    public delegate int Meet(ReadOnlySpan<byte> text);

    public int Of(ReadOnlySpan<byte> text)
    {
        if (last >= 0 && Is(known[last], text))
        {
            return known[last].Id;
        }

        uint hash = Hash(text);
        int slot = (int)hash & (slots.Length - 1);
        for (; slots[slot] != 0; slot = (slot + 1) & (slots.Length - 1))
        {
            ref readonly Known one = ref known[slots[slot] - 1];
            if (one.Hash == hash && Is(one, text))
            {
                last = slots[slot] - 1;
                return one.Id;
            }
        }

        int id = meet(text);
        if (id >= 0)
        {
            Remember(text, id, hash, slot);
        }

        return id;
    }

    private bool Is(in Known one, ReadOnlySpan<byte> text) =>
        one.Length == text.Length && text.SequenceEqual(letters.AsSpan(one.Start, one.Length));

    private void Remember(ReadOnlySpan<byte> text, int id, uint hash, int slot)
    {
        if (used + text.Length > letters.Length)
        {
            Array.Resize(ref letters, Math.Max(used + text.Length, letters.Length * 2));
        }

        if (count == known.Length)
        {
            Array.Resize(ref known, 2 * count);
        }

        text.CopyTo(letters.AsSpan(used));
        known[count++] = new Known(hash, used, text.Length, id);
        used += text.Length;
        slots[slot] = count;
        last = count - 1;
        if (count * 2 > slots.Length)
        {
            slots = new int[slots.Length * 2];
            for (int i = 0; i < count; i++)
            {
                slots[FreeSlot(known[i].Hash)] = i + 1;
            }
        }
    }

    private int FreeSlot(uint hash)
    {
        int slot = (int)hash & (slots.Length - 1);
        while (slots[slot] != 0)
        {
            slot = (slot + 1) & (slots.Length - 1);
        }

        return slot;
    }

    private static uint Hash(ReadOnlySpan<byte> text)
    {
        ulong hash = (ulong)text.Length * 0x9E3779B97F4A7C15;
        for (; text.Length >= 8; text = text[8..])
        {
            hash = (hash ^ MemoryMarshal.Read<ulong>(text)) * 0xFF51AFD7ED558CCD;
            hash ^= hash >> 32;
        }

        ulong rest = 0;
        foreach (byte letter in text)
        {
            rest = (rest << 8) | letter;
        }

        hash = (hash ^ rest) * 0xFF51AFD7ED558CCD;
        return (uint)(hash ^ (hash >> 29));
    }

    /// <summary>A text that was met.</summary>
    private readonly record struct Known(uint Hash, int Start, int Length, int Id);
}
