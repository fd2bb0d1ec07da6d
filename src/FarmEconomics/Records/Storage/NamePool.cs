namespace FarmEconomics.Records.Storage;

/// <summary>
/// The texts of some tables, each kept once and known by a number from 1; 0 is a blank. Which number a text has says nothing: files are
/// read by several threads at once. Safe to use from several threads.
/// </summary>
internal sealed class NamePool
{
    private readonly Lock turn = new();
    private readonly Dictionary<string, int> ids = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> alike = new(StringComparer.OrdinalIgnoreCase);
    private string?[] texts = new string?[64];
    private int[] folded = new int[64];

    /// <summary>One more than the highest number given.</summary>
    public int Count { get; private set; } = 1;

    /// <summary>The text of a number; null for 0.</summary>
    public string? this[int id] => texts[id];

    /// <summary>The number of a text, given when it has none yet.</summary>
    public int Of(string text)
    {
        lock (turn)
        {
            if (ids.TryGetValue(text, out int known))
            {
                return known;
            }

            if (Count == texts.Length)
            {
                // Readers without the lock hold the old array, in which all that they know of stands.
                Array.Resize(ref folded, Count * 2);
                Array.Resize(ref texts, Count * 2);
            }

            string trimmed = text.Trim();
            alike.TryAdd(trimmed, Count);
            (texts[Count], folded[Count]) = (text, alike[trimmed]);
            ids.Add(text, Count);
            return Count++;
        }
    }

    /// <summary>The same number for all texts that are one name: compared trimmed and without case.</summary>
    public int Folded(int id) => folded[id];

    /// <summary>The number that stands for a name, or 0 when no text is that name.</summary>
    public int Find(string name)
    {
        lock (turn)
        {
            return alike.GetValueOrDefault(name.Trim());
        }
    }
}
