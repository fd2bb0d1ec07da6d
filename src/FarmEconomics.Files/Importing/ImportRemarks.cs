using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing;

/// <summary>What was seen in a source, in sentences.</summary>
internal static class ImportRemarks
{
    private const int MostLines = 5;
    private const int MostColumns = 12;

    public static IEnumerable<string> Of(SourceBlock block, ImportMapping mapping, ImportNotes notes, Notation notation)
    {
        IEnumerable<int> lines = block.Segments.Select(segment => segment.HeadingLine).Distinct().Take(MostLines);
        string headings = block.IsWithoutHeadings
            ? "no headings: the columns are numbered"
            : $"headings in line {string.Join(", ", lines)}";
        string wide = mapping.IsWide ? "; wide: each value under its own heading becomes a row"
            : block.Segments.Any(part => part.Number > 0) ? "; columns that come again: a row for each time" : "";
        yield return $"Read as {block.Grid.Look}; {headings}{wide}.";
        if (Unread(block, mapping) is { Length: > 0 } unread)
        {
            yield return notation.Text($"Not read: {unread.Length:N0} {(unread.Length == 1 ? "column" : "columns")} ")
                + $"({string.Join(", ", unread.Take(MostColumns))}{(unread.Length > MostColumns ? ", ..." : "")}).";
        }

        LeadText[] above = [.. block.Segments
            .SelectMany(part => mapping.LabelsAbove.Select(part.LeadOf)).OfType<LeadText>().Distinct()];
        if (above.Length > 0)
        {
            yield return "From lines above the rows: "
                + $"{string.Join(", ", above.Take(MostColumns).Select(text => $"{text.Text} (line {text.Line})"))}"
                + $"{(above.Length > MostColumns ? ", ..." : "")}.";
        }

        foreach (string remark in NotRead(block, [.. above.Select(text => text.Line)], notation).Concat(OfCells(notes, notation)))
        {
            yield return remark;
        }
    }

    private static IEnumerable<string> OfCells(ImportNotes notes, Notation notation)
    {
        if (notes.FromAbove > 0)
        {
            yield return notation.Text(
                $"{notes.FromAbove:N0} blank {(notes.FromAbove == 1 ? "cell is" : "cells are")} read as the same as above."
            );
        }

        if (notes.Estimates > 0)
        {
            yield return notation.Text(
                $"{notes.Estimates:N0} {(notes.Estimates == 1 ? "quantity is" : "quantities are")} marked as about right; taken as written."
            );
        }

        if (notes.Rounded > 0)
        {
            yield return notation.Text(
                $"{notes.Rounded:N0} {(notes.Rounded == 1 ? "number" : "numbers")} rounded, {notes.RoundedBy:+0.0000;-0.0000} in all."
            );
        }
    }

    // What a file says beside what is read of it, such as tips and fees: the grower should know it went nowhere.
    private static string[] Unread(SourceBlock block, ImportMapping mapping)
    {
        SourceSegment first = block.Segments[0];
        int[] spread = mapping.IsWide ? [.. mapping.SpreadOver(first)] : [];
        return
        [
            .. first.Headings.Index().Where(heading => heading.Item.Length > 0 && !spread.Contains(heading.Index)
                && !mapping.SourceColumns.Contains(heading.Item, StringComparer.OrdinalIgnoreCase)
                && first.Rows.Exists(row => row.At(heading.Index).Length > 0)).Select(heading => heading.Item),
        ];
    }

    private static IEnumerable<string> NotRead(SourceBlock block, HashSet<int> read, Notation notation)
    {
        IEnumerable<int> above = block.Above.Select(row => row.Line)
            .Concat(block.Segments.SelectMany(segment => segment.Above).Select(text => text.Line)).Distinct()
            .Where(line => !read.Contains(line));
        foreach ((string what, IEnumerable<int> lines) in new[]
        {
            ("above the headings", above), ("with totals", Lines(segment => segment.Totals)),
                ("with one remark and nothing else", Lines(segment => segment.Remarks)),
                ("with nothing in the columns that come again", Lines(segment => segment.Unfilled)),
        })
        {
            int[] all = [.. lines];
            if (all.Length > 0)
            {
                yield return $"Not read: {Rows(all.Length)} {what} (line "
                    + $"{string.Join(", ", all.Take(MostLines))}{(all.Length > MostLines ? ", ..." : "")}).";
            }
        }

        foreach (SourceSegment other in block.Others)
        {
            yield return $"Not read: another table of {Rows(other.Rows.Count)} with its headings in line {other.HeadingLine} "
                + $"({string.Join(", ", other.Headings.Where(heading => heading.Length > 0).Take(4))}); "
                + $"--headings-at {other.HeadingLine} drafts it.";
        }

        string Rows(int count) => notation.Text($"{count:N0} {(count == 1 ? "row" : "rows")}");

        IEnumerable<int> Lines(Func<SourceSegment, List<SourceCells>> of) =>
            block.Segments.SelectMany(of).Select(row => row.Line).Distinct();
    }
}
