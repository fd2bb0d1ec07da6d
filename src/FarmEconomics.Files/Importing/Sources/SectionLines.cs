namespace FarmEconomics.Files.Importing.Sources;

/// <summary>Lines among the rows that say what the rows below are of: a day alone, "Name: Rosa".</summary>
internal static class SectionLines
{
    /// <summary>The parts of a table, each with what the line above it says; the table itself where no line does.</summary>
    public static IEnumerable<SourceSegment> Parts(SourceSegment whole)
    {
        SourceCells[] rows = [.. whole.Lines];
        SourceCells[] sections = [.. whole.Rows.Concat(whole.Remarks).Where(row => IsSection(row, rows)).OrderBy(row => row.Line)];
        if (sections.Length == 0)
        {
            yield return whole;
            yield break;
        }

        IReadOnlyList<LeadText> above = whole.Above;
        foreach ((int at, SourceCells? section) in sections.Prepend(null).Index())
        {
            above = section is null ? above : LeadText.Joined(above, [.. LeadText.Of([section])]);
            int from = section?.Line ?? 0;
            int to = at < sections.Length ? sections[at].Line : int.MaxValue;
            SourceCells[] own = [.. rows.Where(row => row.Line > from && row.Line < to)];
            if (own.Length > 0)
            {
                yield return SourceBlock.Segment(new SourceSegment(whole.HeadingLine, whole.Headings, [])
                {
                    Width = whole.Width,
                    RowAbove = whole.RowAbove,
                    Above = above,
                }, own);
            }
        }
    }

    // A day alone where the other rows have words or nothing; in a column of days it is a row with nothing in it.
    private static bool IsSection(SourceCells row, SourceCells[] all)
    {
        if (row.Filled != 1 || LeadText.Of([row]).ToArray() is not [var lead])
        {
            return false;
        }

        int at = Array.FindIndex(row.Fields, field => !string.IsNullOrWhiteSpace(field));
        return lead.Label.Length > 0 ? LeadText.Tells(lead.Label)
            : CellKinds.Of(lead.Text) != CellKind.Text && Array.TrueForAll(all,
                other => other.Filled < 2 || other.At(at).Length == 0 || CellKinds.Of(other.At(at)) == CellKind.Text);
    }
}
