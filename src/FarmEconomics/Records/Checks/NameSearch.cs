using FarmEconomics.Records.Reading;

namespace FarmEconomics.Records.Checks;

/// <summary>
/// Looks for what an unknown name was meant to be, within bounds: a name is looked up once per list, and when as many names were
/// compared as no farm misspells, further ones go without a guess.
/// </summary>
internal sealed class NameSearch
{
    private const long MostCompared = 2_000_000;

    private readonly Dictionary<(object List, string Name), string?> found = [];
    private long compared;

    /// <summary>The name that is near enough to be meant, or null.</summary>
    public string? Find(string name, IReadOnlyCollection<string> known)
    {
        if (found.TryGetValue((known, name), out string? nearest))
        {
            return nearest;
        }

        if (compared > MostCompared)
        {
            return null;
        }

        compared += 1 + known.Count;
        nearest = NearestName.Find(name, known);
        found.Add((known, name), nearest);
        return nearest;
    }
}
