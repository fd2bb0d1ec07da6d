using System.Text;
using FarmEconomics.Files.Importing.Sources;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing;

/// <summary>The rows of a source that are held back, told and written down.</summary>
internal static class HeldBackRows
{
    public static IReadOnlyList<HeldBackRow> Of(List<ImportCandidate> candidates, HashSet<int> bad, IReadOnlyList<Problem> problems)
    {
        ILookup<int, string> why = Reasons(problems);
        return [.. bad.Where(at => at >= 0).Select(at => candidates[at].Unit.Cells.Line).Distinct().Order()
            .Select(line => new HeldBackRow(line, string.Join(" ", why[line].Distinct())))];
    }

    /// <summary>The rows as they stand in the source, under its headings and what is read from above them, with what is wrong in a further
    /// column; blank without any.</summary>
    public static string Csv(List<ImportCandidate> candidates, HashSet<int> bad, IReadOnlyList<Problem> problems, ImportMapping mapping)
    {
        ILookup<int, string> why = Reasons(problems);
        var csv = new StringBuilder();
        foreach (IGrouping<SourceSegment, ImportCandidate> part in bad.Where(at => at >= 0).Order().Select(at => candidates[at])
            .GroupBy(row => row.Unit.Segment, ReferenceEqualityComparer.Instance as IEqualityComparer<SourceSegment>))
        {
            int width = Math.Max(part.Key.Headings.Length, part.Max(row => row.Unit.Cells.Fields.Length));
            foreach (LeadText above in mapping.LabelsAbove.Select(part.Key.LeadOf).OfType<LeadText>())
            {
                ImportCsv.Line(csv, [above.Label.Length > 0 ? $"{above.Label}: {above.Text}" : above.Text]);
            }

            if (part.Key.HeadingLine > 0)
            {
                ImportCsv.Line(csv, [.. Padded(part.Key.Headings, width), "problem"]);
            }

            foreach (ImportCandidate row in part.DistinctBy(row => row.Unit.Cells))
            {
                string[] fields = [.. Padded(Whole(row), width)];
                ImportCsv.Line(csv,
                    part.Key.HeadingLine > 0 ? [.. fields, string.Join(" ", why[row.Unit.Cells.Line].Distinct())] : fields);
            }
        }

        return csv.ToString();
    }

    // What a blank says by the row above it: that row may not be among these.
    private static string[] Whole(ImportCandidate row) =>
        [.. row.Unit.Cells.Fields.Select((field, at) => row.FromAbove.TryGetValue(at, out string? text) ? text : field)];

    private static ILookup<int, string> Reasons(IReadOnlyList<Problem> problems) =>
        problems.Where(problem => problem.Severity == Severity.Error).ToLookup(problem => problem.Source.Line, problem => problem.Message);

    private static IEnumerable<string> Padded(string[] fields, int width) => fields.Concat(Enumerable.Repeat("", width - fields.Length));
}
