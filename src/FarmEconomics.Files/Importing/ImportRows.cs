using System.Security.Cryptography;
using System.Text;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Files.Importing;

/// <summary>A row of the source as the mapping reads it: in a wide table one value of it.</summary>
/// <param name="Cells">The row of the source.</param>
/// <param name="Segment">The part of the file it stands in.</param>
/// <param name="Spread">The column of the value in a wide table, from 0; -1: the whole row.</param>
internal readonly record struct ImportUnit(SourceCells Cells, SourceSegment Segment, int Spread)
{
    public string Text(string heading) =>
        ImportWords.Is(heading, ImportWords.Heading) ? (Spread < 0 ? "" : Segment.Headings[Spread])
        : ImportWords.Is(heading, ImportWords.Cell) ? Cells.At(Spread)
        : ImportWords.LabelAbove(heading) is { } label ? Segment.TextAbove(label)
        : Cells.At(Segment.Column(heading));
}

/// <summary>The rows of a source as a mapping reads them, each with what it is known by.</summary>
internal sealed class ImportRows(ImportMapping mapping)
{
    private readonly Dictionary<string, int> seen = new(StringComparer.Ordinal);

    // Of days that say no year: the same line of next year's sheet is another row.
    private readonly string year = mapping.Columns.Select(mapping.DaysOf).OfType<string>()
        .Select(form => DateText.FormOf(form).Behind).FirstOrDefault(behind => behind.Length > 0) ?? "";

    /// <summary>All of them, in the order of the file. In a wide table blanks are no rows.</summary>
    public IEnumerable<ImportUnit> Of(SourceBlock block)
    {
        foreach (SourceSegment segment in block.Segments)
        {
            mapping.BeginAnew();
            int[] spread = mapping.IsWide ? [.. mapping.SpreadOver(segment)] : [-1];
            foreach (SourceCells row in segment.Rows)
            {
                foreach (int at in spread.Where(at => at < 0 || row.At(at).Length > 0))
                {
                    yield return new ImportUnit(row, segment, at);
                }
            }
        }
    }

    /// <summary>
    /// What a row is known by: its content and, of several equal rows, which one it is; after the source's own number where it has one.
    /// The same row twice
    /// in one file is two things that happened; the same row in the next export is not.
    /// </summary>
    /// <param name="unit">The row.</param>
    /// <param name="day">Its day: checks and references may begin anew, so that a number alone is no proof.</param>
    public string Id(ImportUnit unit, string day)
    {
        IEnumerable<string> fields = unit.Spread < 0
            ? unit.Cells.Fields.Select(field => field.Trim())
            : mapping.SourceColumns.Select(heading => unit.Text(heading)).Append(unit.Segment.Headings[unit.Spread])
                .Append(unit.Cells.At(unit.Spread));
        IEnumerable<string> above = mapping.LabelsAbove.Select(unit.Segment.TextAbove);
        string content = string.Join('\u001F', fields.Concat(above)) + year;
        int occurrence = seen[content] = seen.GetValueOrDefault(content) + 1;
        string hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{content}\u001E{occurrence}")).AsSpan(0, 8));
        string own = mapping.OwnId?.Value(unit.Text, new ImportNotes()) ?? "";
        return own.Any(char.IsAsciiDigit) ? $"{OwnNumber.Sign}{own}@{day}{OwnNumber.Joint}{hash}" : hash;
    }
}
