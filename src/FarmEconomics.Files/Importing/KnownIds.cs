using FarmEconomics.Files.Inputs;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>A row of the records that an earlier import made of a file, and that the file doesn't hold as it was any more.</summary>
/// <param name="File">The file of the records it stands in.</param>
/// <param name="Line">Its line there.</param>
/// <param name="Fields">What the mapping fills of it.</param>
internal sealed record FormerRow(string File, int Line, IReadOnlyList<string> Fields);

/// <summary>What earlier imports added to a table.</summary>
internal sealed class KnownIds
{
    private const string SourceFile = "source_file";
    private readonly HashSet<string> ids = new(StringComparer.Ordinal);
    private readonly HashSet<string> ownNumbers = new(StringComparer.Ordinal);
    private readonly HashSet<string> severalTimes;
    private readonly HashSet<string> current;
    private readonly List<FormerRow> former = [];

    private KnownIds(IEnumerable<string> ofSource)
    {
        current = new(ofSource, StringComparer.Ordinal);
        severalTimes = [.. current.Select(OwnNumber.Of).OfType<string>().GroupBy(number => number, StringComparer.Ordinal)
            .Where(group => group.Count() > 1).Select(group => group.Key)];
    }

    /// <summary>Rows of the same file, added before, that it doesn't hold as they were.</summary>
    public IReadOnlyList<FormerRow> Former => former;

    /// <summary>Looks through the records.</summary>
    /// <param name="records">The records.</param>
    /// <param name="plan">The import: its table, and the file's name.</param>
    /// <param name="columns">The columns the mapping fills.</param>
    /// <param name="ofSource">What the rows of the file are known by.</param>
    public static KnownIds Of(RecordsReading? records, ImportPlan plan, IReadOnlyList<string> columns, IEnumerable<string> ofSource)
    {
        var known = new KnownIds(ofSource);
        foreach (TableInput input in records?.Inputs.Where(input => input.Table == plan.Table) ?? [])
        {
            using InputReading reading = input.Open(options => options, records!.FarmSettings);
            reading.Reader.ReadHeader();
            string[] keys = [.. reading.Reader.Headers.ToArray().Select(HeadingKey.Of)];
            int id = Array.IndexOf(keys, HeadingKey.Of(ImportColumns.Id));
            int from = Array.IndexOf(keys, HeadingKey.Of(SourceFile));
            int[] places = [.. columns.Select(column => Array.IndexOf(keys, HeadingKey.Of(column)))];
            while (id >= 0 && reading.Reader.Read())
            {
                known.Add(reading.Reader.GetString(id));
                if (from >= 0 && !places.Contains(-1) && reading.Reader.GetString(from) == plan.Source)
                {
                    known.AddFormer(reading, reading.Reader.GetString(id), input.File, places);
                }
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

    /// <summary>
    /// True for a row that is there though columns nobody reads have changed since: a column was added to the sheet, a remark written.
    /// Each row of the records stands for one row of the file.
    /// </summary>
    public bool HoldsChanged(string id, IReadOnlyList<string> fields) => OwnNumber.Of(id) is null
        && former.FindIndex(row => row.Fields.Zip(fields).All(pair => pair.First.Trim() == pair.Second.Trim())) is >= 0 and var at
        && Remove(at);

    private bool Remove(int at)
    {
        former.RemoveAt(at);
        return true;
    }

    private void Add(string id)
    {
        ids.Add(id);
        ownNumbers.Add(OwnNumber.Of(id) ?? "");
    }

    private void AddFormer(InputReading reading, string id, string file, int[] places)
    {
        if (OwnNumber.Of(id) is null && !current.Contains(id))
        {
            former.Add(new FormerRow(file, reading.Line, [.. places.Select(at => reading.Reader.GetString(at))]));
        }
    }
}
