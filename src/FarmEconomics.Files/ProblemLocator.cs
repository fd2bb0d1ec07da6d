using System.Text;
using CsvHelper;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files;

/// <summary>
/// Finds the place of each problem in its file: the character its field starts at, and the row as written. Reading keeps neither, so
/// that millions of good rows cost nothing; each file with problems is read once more.
/// </summary>
public static class ProblemLocator
{
    private const int LongestRow = 400;

    /// <summary>Fills in position, offending text and row, and sorts by file, line and position.</summary>
    /// <param name="folder">The records folder.</param>
    /// <param name="problems">The problems.</param>
    /// <returns>The same problems, located.</returns>
    public static IReadOnlyList<Problem> Locate(string folder, IEnumerable<Problem> problems) =>
        Locate(RecordsInputs.Find(folder, RecordSchema.Tables, []), new FarmSettings(), problems);

    /// <summary>Fills in position, offending text and row, and sorts by file, line and position.</summary>
    /// <param name="reading">The records as read.</param>
    /// <param name="problems">The problems.</param>
    /// <returns>The same problems, located.</returns>
    public static IReadOnlyList<Problem> Locate(RecordsReading reading, IEnumerable<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(reading);
        return Locate(reading.Inputs, reading.FarmSettings, problems);
    }

    private static List<Problem> Locate(IReadOnlyList<TableInput> inputs, FarmSettings settings, IEnumerable<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        var located = new List<Problem>();
        foreach (IGrouping<string, Problem> file in problems.GroupBy(problem => problem.Source.File))
        {
            TableInput? input = inputs.FirstOrDefault(known => known.File == file.Key);
            Problem[] ofLines = [.. file.Where(problem => problem.Source.Line > 0)];
            located.AddRange(file.Where(problem => problem.Source.Line == 0));
            located.AddRange(ofLines.Length > 0 && input is not null ? LocateIn(input, settings, ofLines) : ofLines);
        }

        return
        [
            .. located.OrderBy(problem => problem.Source, Comparer<SourceLine>.Create(SourceLine.Compare))
                .ThenBy(problem => problem.Position).ThenBy(problem => problem.Code, StringComparer.Ordinal),
        ];
    }

    private static List<Problem> LocateIn(TableInput input, FarmSettings settings, Problem[] problems)
    {
        var left = new HashSet<Problem>(problems, ReferenceEqualityComparer.Instance);
        Func<Problem, bool> isLeft = left.Remove;
        var located = new List<Problem>();
        try
        {
            ILookup<int, Problem> byLine = problems.ToLookup(problem => problem.Source.Line);
            string[]? keys = null;
            using InputReading reading = input.Open(options => options with { HasHeader = false }, settings);
            CsvReader reader = reading.Reader;
            while (left.Count > 0 && reader.Read())
            {
                bool isHeading = keys is null;
                keys ??= Array.ConvertAll(reader.Current.ToArray(), KeyOf);
                if (!byLine.Contains(reading.Line))
                {
                    continue;
                }

                foreach (Problem problem in byLine[reading.Line].Where(isLeft))
                {
                    string? heading = RecordSchema.Find(input.Table)?.Find(problem.Column ?? "")?.NameFor(settings.LengthUnit);
                    int field = FieldOf(reader, keys, problem, isHeading, heading);
                    located.Add(AtField(reading, problem, field, isHeading));
                }
            }
        }
        catch (Exception fault) when (fault is InputException or CsvFormatException or IOException or UnauthorizedAccessException)
        {
            // What stops the reading has been reported by it; the rest of the problems stays without a place in its line.
        }

        return [.. located, .. left];
    }

    private static Problem AtField(InputReading reading, Problem problem, int field, bool isHeading)
    {
        CsvReader reader = reading.Reader;
        return problem with
        {
            Position =
                field < 0 ? 1
                : reading.IsSheet ? field + 1
                : Position(reader, field),
            Offending = problem.Offending ?? (field < 0 || isHeading ? null : reader.GetString(field)),
            Row = Shorten(Encoding.UTF8.GetString(reader.RawRecord[..Math.Min(reader.RawRecord.Length, 4 * LongestRow)])),
        };
    }

    private static int FieldOf(CsvReader reader, string[] keys, Problem problem, bool isHeading, string? heading)
    {
        if (problem.Column is null)
        {
            // A value beyond the last heading is the only fault of a row that has a text but no column.
            return problem.Offending is null
                ? -1
                : Enumerable
                    .Range(0, reader.FieldCount)
                    .FirstOrDefault(i => (i >= keys.Length || keys[i].Length == 0) && reader.GetString(i) == problem.Offending, -1);
        }

        // Of a heading that stands twice the second is at fault; blank ones may also stand behind the last column.
        string key = KeyOf(heading ?? problem.Column);
        return isHeading && key.Length > 0 ? Array.LastIndexOf(keys, key) : Array.IndexOf(keys, key);
    }

    // A heading of marks alone names no column, but isn't empty.
    private static string KeyOf(string heading) => HeadingKey.Of(heading) is { Length: > 0 } key ? key : heading;

    /// <summary>The character a field of the row just read starts at, from 1.</summary>
    internal static int Position(CsvReader reader, int field)
    {
        int bytes = 0;
        for (int i = 0; i < field; i++)
        {
            if (i >= reader.FieldCount)
            {
                return 1;
            }

            bytes += reader.GetRawSpan(i).Length + 1;
        }

        ReadOnlySpan<byte> raw = reader.RawRecord;
        return 1 + Encoding.UTF8.GetCharCount(raw[..Math.Min(bytes, raw.Length)]);
    }

    private static string Shorten(string row) => row.Length <= LongestRow ? row : string.Concat(row.AsSpan(0, LongestRow), " ...");
}
