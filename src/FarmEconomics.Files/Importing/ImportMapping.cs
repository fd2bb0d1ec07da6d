using System.Collections.ObjectModel;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>How the rows of a source file become rows of a table.</summary>
internal sealed class ImportMapping
{
    private readonly List<ImportFilling> fillings = [];
    private readonly List<ImportCondition> leaveOut = [];
    private readonly HashSet<string> columnsLeftOut;

    public ImportMapping(TableSchema schema, IReadOnlyList<ImportRow> rows, char decimalMark)
    {
        foreach (ColumnSchema column in schema.Columns.Append(ImportColumns.IdColumn))
        {
            ImportRow[] ofColumn = [.. rows
                .Where(row => row.Column is not null && (schema.FindAny(row.Column) ?? ImportColumns.Find(row.Column)) == column)];
            if (ofColumn.Length == 0)
            {
                continue;
            }

            int main = Array.FindIndex(ofColumn, row => !IsRule(row));
            var filling = new ImportFilling(column, main < 0 ? null : ofColumn[main], [.. ofColumn.Where(IsRule)], decimalMark);
            if (column == ImportColumns.IdColumn)
            {
                OwnId = filling;
            }
            else
            {
                fillings.Add(filling);
            }
        }

        ImportRow[] without = [.. rows.Where(row => row.Column is null && row.SourceColumn is not null)];
        char mark = fillings.Exists(filling => filling.Mark == ',') ? ',' : '.';
        leaveOut.AddRange(without.Where(IsRule)
            .Select(row => new ImportCondition(row, fillings.Find(filling => ImportWords.Is(filling.Source ?? "", row.SourceColumn!))?.Mark
            ?? mark)));
        leaveOut.AddRange(fillings.Where(filling => filling.PaidBelow)
            .Select(filling => new ImportCondition(filling.Source!, ImportMatch.Above, 0m, filling.Mark)));
        columnsLeftOut = [.. without.Where(row => !IsRule(row)).Select(row => row.SourceColumn!.Trim())];
        string[] headings =
        [
            .. fillings.Append(OwnId).OfType<ImportFilling>().SelectMany(filling => filling.Headings)
                .Concat(leaveOut.Select(condition => condition.Source!)).Where(heading => !ImportWords.IsSpecial(heading))
                    .Distinct(StringComparer.OrdinalIgnoreCase),
        ];
        SourceColumns = Array.FindAll(headings, heading => ImportWords.LabelAbove(heading) is null);
        LabelsAbove = [.. headings.Select(ImportWords.LabelAbove).OfType<string>()];
    }

    /// <summary>The headings the source must have.</summary>
    public IReadOnlyList<string> SourceColumns { get; }

    /// <summary>The words of texts above the headings that are read; a blank one: the text that stands alone.</summary>
    public IReadOnlyList<string> LabelsAbove { get; }

    /// <summary>How the source's own number of a row is found; null without one.</summary>
    public ImportFilling? OwnId { get; }

    public IReadOnlyList<string> Columns => [.. fillings.Select(filling => filling.Column.Name)];

    /// <summary>The columns as a farm that measures so has them: <c>bed_meters</c> for <c>bed_feet</c>.</summary>
    public IReadOnlyList<string> HeadingsFor(LengthUnit unit) => [.. fillings.Select(filling => filling.Column.NameFor(unit))];

    /// <summary>The heading a column of the table is filled from; null without one.</summary>
    public string? SourceOf(string column) => fillings.Find(filling => filling.Column.Name == column)?.Source;

    /// <summary>The form its days are read by, such as <c>M/D/YYYY</c>; null where the mapping says none.</summary>
    public string? DaysOf(string column) => fillings.Find(filling => filling.Column.Name == column)?.DayForm;

    /// <summary>The heading whose values rules alone turn into a column of the table; null where it isn't filled so.</summary>
    public string? RuledBy(string column) =>
        fillings.Find(filling => filling.Column.Name == column) is { IsRuled: true, Headings: [var heading, ..] } ? heading : null;

    /// <summary>True when each row of the source holds several values, each under its own heading.</summary>
    public bool IsWide => fillings.Exists(filling => filling.Headings.Any(ImportWords.IsSpecial));

    /// <summary>The decimal mark the mapping expects under a heading of the source.</summary>
    public char MarkOf(string heading) =>
        fillings.Exists(filling => filling.Mark == ',' && filling.Headings.Any(known => SourceSegment.Same(known, heading)
            || (ImportWords.Is(known, ImportWords.Cell) && !SourceColumns.Contains(heading, StringComparer.OrdinalIgnoreCase)))) ? ','
            : '.';

    /// <summary>True where the mapping takes the numbers under a heading for days.</summary>
    public bool CountsDaysUnder(string heading) =>
        fillings.Exists(filling => filling is { CountsDays: true, Source: { } source } && SourceSegment.Same(source, heading));

    /// <summary>The columns of a wide table whose values are rows of their own, from 0.</summary>
    public IEnumerable<int> SpreadOver(SourceSegment segment) => Enumerable.Range(0, segment.Headings.Length)
        .Where(at => segment.Headings[at].Length > 0
        && !SourceColumns.Contains(segment.Headings[at], StringComparer.OrdinalIgnoreCase) && !columnsLeftOut.Contains(segment.Headings[at],
            StringComparer.OrdinalIgnoreCase));

    public bool LeavesOut(Func<string, string> source) => leaveOut.Exists(condition => condition.Holds(source(condition.Source!)));

    /// <summary>The fields of a row of the table, and what could not be made of them.</summary>
    public IReadOnlyList<string> Convert(Func<string, string> source, ImportNotes notes) =>
        [.. fillings.Select(filling => filling.Value(source, notes))];

    /// <summary>What the row converted last says in columns where a blank means the same as above, by their place.</summary>
    public IReadOnlyDictionary<int, string> FromAbove(SourceSegment segment) => !fillings.Exists(filling => filling.GoesOn)
        ? ReadOnlyDictionary<int, string>.Empty
        : fillings.Where(filling => filling.GoesOn).Select(filling => (At: segment.Column(filling.Source!), filling.Above))
            .Where(pair => pair.At >= 0).DistinctBy(pair => pair.At).ToDictionary(pair => pair.At, pair => pair.Above);

    /// <summary>Forgets what stood above: another part of the file begins.</summary>
    public void BeginAnew() => fillings.ForEach(filling => filling.BeginAnew());

    private static bool IsRule(ImportRow row) => row.When is not null || row.Match == ImportMatch.Blank;
}

/// <summary>What a conversion tells beside the fields.</summary>
internal sealed class ImportNotes
{
    /// <summary>What is wrong with a column of the row being converted, in words that go on after its name.</summary>
    public List<(string Column, string Why)> Faults { get; } = [];

    /// <summary>Blank cells read as the same as above.</summary>
    public int FromAbove { get; set; }

    /// <summary>Quantities marked as about right.</summary>
    public int Estimates { get; set; }

    /// <summary>Amounts rounded to cents, and by how much in all.</summary>
    public int Rounded { get; set; }

    public decimal RoundedBy { get; set; }
}
