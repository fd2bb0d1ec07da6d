using FarmEconomics.Files.Inputs;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>What earlier imports added to a table.</summary>
internal sealed class KnownIds
{
    private readonly HashSet<string> ids = new(StringComparer.Ordinal);
    private readonly HashSet<string> ownNumbers = new(StringComparer.Ordinal);
    private readonly HashSet<string> severalTimes;

    private KnownIds(IEnumerable<string> ofSource) => severalTimes =
        [.. ofSource.Select(OwnNumber.Of).OfType<string>().GroupBy(number => number, StringComparer.Ordinal)
            .Where(group => group.Count() > 1).Select(group => group.Key)];

    public static KnownIds Of(RecordsReading? records, string table, IEnumerable<string> ofSource)
    {
        var known = new KnownIds(ofSource);
        foreach (TableInput input in records?.Inputs.Where(input => input.Table == table) ?? [])
        {
            using InputReading reading = input.Open(options => options, records!.FarmSettings);
            reading.Reader.ReadHeader();
            int at = Array.FindIndex(reading.Reader.Headers.ToArray(), heading =>
                HeadingKey.Of(heading) == HeadingKey.Of(ImportColumns.Id));
            while (at >= 0 && reading.Reader.Read())
            {
                string id = reading.Reader.GetString(at);
                known.ids.Add(id);
                known.ownNumbers.Add(OwnNumber.Of(id) ?? "");
            }
        }

        return known;
    }

    /// <summary>
    /// True for a row that is there. A row with a number of its own is the same row though the other program has since changed a word of
    /// it, unless several rows
    /// share the number: then their contents tell them apart.
    /// </summary>
    public bool Holds(string id) => ids.Contains(id) || (OwnNumber.Of(id) is { } number && !severalTimes.Contains(number)
        && ownNumbers.Contains(number));
}
