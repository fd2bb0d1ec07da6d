using System.Text.RegularExpressions;

namespace FarmEconomics.Files.Importing.Sources;

/// <summary>What a line above the headings says of all rows below it: "Name: Rosa", "Week of 6/2/2025", or a text alone.</summary>
/// <param name="Label">The word before it, such as Name; blank: the text stands alone.</param>
/// <param name="Text">What it says.</param>
/// <param name="Line">Its line in the file.</param>
internal sealed partial record LeadText(string Label, string Text, int Line)
{
    private static readonly ColumnRole?[] Told = [ColumnRole.Date, ColumnRole.PeriodEnd, ColumnRole.Crop, ColumnRole.Channel,
        ColumnRole.Worker, ColumnRole.Task, ColumnRole.Bed];

    /// <summary>True where the word tells what the text is of the rows below: who, when, what, where.</summary>
    public static bool Tells(string label) => Told.Contains(HeadingWords.RoleOf(label));

    /// <summary>What the lines say; a line of other things says nothing.</summary>
    public static IEnumerable<LeadText> Of(IEnumerable<SourceCells> rows) => rows.SelectMany(row => Of(row));

    /// <summary>What is said of the rows of a part: by the lines above it, and where none of them says it, by those before.</summary>
    public static LeadText[] Joined(IReadOnlyList<LeadText> before, IReadOnlyList<LeadText> above) =>
        [.. before.Where(text => !above.Any(other => SourceSegment.Same(other.Label, text.Label))), .. above];

    /// <summary>True for a line of words and what each says, which is no heading row.</summary>
    public static bool IsLabeled(SourceCells row) => Of(row) is [{ Label.Length: > 0 }, ..];

    /// <summary>Takes the lines that say something from the end of the rows above further headings.</summary>
    public static LeadText[] TakeFrom(List<SourceCells> rows)
    {
        int from = rows.FindLastIndex(row => Of(row).Count == 0) + 1;
        LeadText[] taken = [.. Of(rows.Skip(from))];
        rows.RemoveRange(from, rows.Count - from);
        return taken;
    }

    private static List<LeadText> Of(SourceCells row)
    {
        string[] cells = [.. row.Fields.Select(field => field.Trim()).Where(field => field.Length > 0)];
        if (cells is [var alone])
        {
            return Labeled(alone, row.Line) is { } labeled ? [labeled]
                : (CellKinds.Of(alone) is CellKind.Text or CellKind.Day || DateForms.LacksAYear(alone)) && !HeadingWords.IsTotal(alone)
                    ? [new LeadText("", alone, row.Line)] : [];
        }

        List<LeadText> all = [];
        for (int at = 0; at < cells.Length; at++)
        {
            if (Labeled(cells[at], row.Line) is { } labeled)
            {
                all.Add(labeled);
            }
            else if (IsLabel(cells[at]) && at + 1 < cells.Length && !IsLabel(cells[at + 1]) && HeadingWords.RoleOf(cells[at + 1]) is null)
            {
                all.Add(new LeadText(cells[at].TrimEnd(':', ' '), cells[++at], row.Line));
            }
            else
            {
                return [];
            }
        }

        return all;
    }

    // Without a colon only words that are no values of a record: "harvest" and "market" are.
    private static bool IsLabel(string cell) => (cell.EndsWith(':') && cell.Length > 1)
        || HeadingWords.RoleOf(cell) is ColumnRole.Worker or ColumnRole.Date or ColumnRole.PeriodEnd;

    private static LeadText? Labeled(string cell, int line)
    {
        if (WithColon().Match(cell) is { Success: true } match)
        {
            return new LeadText(match.Groups["label"].Value, match.Groups["text"].Value, line);
        }

        string[] words = cell.Split(' ');
        for (int length = words.Length - 1; length > 0; length--)
        {
            string label = string.Join(' ', words.Take(length));
            string text = string.Join(' ', words.Skip(length));
            if (HeadingWords.RoleOf(label) is ColumnRole.Date or ColumnRole.PeriodEnd
                && (DateForms.IsDay(text) || DateForms.LacksAYear(text)))
            {
                return new LeadText(label, text, line);
            }
        }

        return null;
    }

    [GeneratedRegex(@"^(?<label>\p{L}[^:\d]{0,30}?)\s*:\s*(?<text>\S.*)$", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant)]
    private static partial Regex WithColon();
}
