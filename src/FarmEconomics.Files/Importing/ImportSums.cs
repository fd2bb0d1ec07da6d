using System.Globalization;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing;

/// <summary>Adds up what was made of a source, and sets it beside the totals the source has itself.</summary>
internal sealed class ImportSums(ImportPlan plan, ImportMapping mapping, SourceBlock block,
    IReadOnlyList<(ImportUnit Unit, IReadOnlyList<string> Fields)> rows)
{
    private readonly char mark = plan.Notation.DecimalMark;

    /// <summary>Rows and columns of totals of the source; one that can't be read as numbers is none.</summary>
    public IReadOnlyList<ImportSum> OfSource()
    {
        List<ImportSum> sums = [];
        foreach (SourceSegment segment in block.Segments)
        {
            (ImportUnit Unit, IReadOnlyList<string> Fields)[] own = [.. rows.Where(row => ReferenceEquals(row.Unit.Segment, segment))];
            if (segment.Totals is [var total])
            {
                sums.AddRange(OfRow(segment, total, own));
            }

            if (mapping.IsWide && NumberPlace() >= 0 && Array.FindIndex(segment.Headings, HeadingWords.IsTotal) is >= 0 and var at)
            {
                sums.AddRange(OfColumn(segment, at, own));
            }
        }

        return sums;
    }

    /// <summary>The first and last day of the rows to add, and what their numbers come to, unit by unit.</summary>
    public IReadOnlyList<string> OfRows(List<ImportCandidate> good)
    {
        if (good.Count == 0)
        {
            return [];
        }

        List<string> words = [];
        int date = Place("date");
        if (date >= 0)
        {
            string[] days = [.. good.Select(row => row.Fields[date]).Order(StringComparer.Ordinal)];
            words.Add($"{days[0]} to {days[^1]}");
        }

        int unit = Place("unit");
        foreach (string column in new[] { "quantity", "amount", "hours" }.Where(column => Place(column) >= 0))
        {
            int at = Place(column);
            words.AddRange(good.GroupBy(row => column == "quantity" && unit >= 0 ? row.Fields[unit] : "", StringComparer.OrdinalIgnoreCase)
                .OrderByDescending(group => group.Count()).Take(6)
                .Select(group => (Sum: group.Sum(row => Number(row.Fields[at])), Unit: Counted(group.Key)))
                .Select(of => column == "amount" ? plan.Notation.Text($"{column} {of.Sum:#,0.00}")
                    : plan.Notation.Text($"{column} {of.Sum:#,0.##}{of.Unit}")));
        }

        return words;
    }

    // 230 of 1/2 lb would read as 230 and a half.
    private static string Counted(string unit) => unit.Length == 0 ? "" : !char.IsLetter(unit[0]) ? $" × {unit}" : $" {unit}";

    private IEnumerable<ImportSum> OfRow(SourceSegment segment, SourceCells total, (ImportUnit Unit, IReadOnlyList<string> Fields)[] own)
    {
        for (int at = 0; at < segment.Headings.Length; at++)
        {
            string heading = segment.Headings[at];
            if (CellKinds.Read(total.At(at), mapping.MarkOf(heading)) is not { } said || HeadingWords.IsTotal(total.At(at)))
            {
                continue;
            }

            bool grand = mapping.IsWide && HeadingWords.IsTotal(heading);
            int column = at;
            (ImportUnit Unit, IReadOnlyList<string> Fields)[] under = mapping.IsWide
                ? (grand ? own : [.. own.Where(row => row.Unit.Spread == column)]) : own;
            int field = mapping.IsWide ? NumberPlace() : FieldFrom(heading);
            if (field >= 0 && (under.Length > 0 || said != 0m) && (grand || !mapping.IsWide || mapping.SpreadOver(segment).Contains(at)))
            {
                decimal read = under.Sum(row => Number(row.Fields[field]));
                yield return new ImportSum($"{heading}, total in line {total.Line}", said, Math.Sign(read) == -Math.Sign(said)
                    && mapping.Columns[field] == "amount" ? -read : read);
            }
        }
    }

    private IEnumerable<ImportSum> OfColumn(SourceSegment segment, int at, (ImportUnit Unit, IReadOnlyList<string> Fields)[] own)
    {
        int field = NumberPlace();
        ILookup<int, decimal> byLine = own.ToLookup(row => row.Unit.Cells.Line, row => Number(row.Fields[field]));
        decimal all = 0m;
        foreach (SourceCells row in segment.Rows)
        {
            if (CellKinds.Read(row.At(at), mapping.MarkOf(segment.Headings[at])) is { } said)
            {
                all += said;
                if (said != byLine[row.Line].Sum())
                {
                    yield return new ImportSum($"{segment.Headings[at]} of line {row.Line}", said, byLine[row.Line].Sum());
                }
            }
        }

        yield return new ImportSum($"{segment.Headings[at]}, all rows", all, own.Sum(row => Number(row.Fields[field])));
    }

    private int Place(string column) => mapping.Columns.ToList().IndexOf(column);

    private int NumberPlace() => new[] { "quantity", "hours", "amount" }
        .Where(column => mapping.SourceOf(column) is { } source && ImportWords.Is(source, ImportWords.Cell))
        .Select(Place).FirstOrDefault(at => at >= 0, -1);

    private int FieldFrom(string heading) => mapping.Columns.ToList().FindIndex(column => column is "quantity" or "amount" or "hours"
        && mapping.SourceOf(column) is { } source && SourceSegment.Same(source, heading));

    private decimal Number(string field) => decimal.TryParse(field.Replace(mark, '.'), NumberStyles.Float, CultureInfo.InvariantCulture,
        out decimal value) ? value : 0m;
}
