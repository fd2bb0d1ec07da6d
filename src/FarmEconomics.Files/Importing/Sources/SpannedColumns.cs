namespace FarmEconomics.Files.Importing.Sources;

/// <summary>Columns that come again under a heading of their own, such as Brought, Sold, Price below each market day: each time makes
/// rows of its own.</summary>
internal static class SpannedColumns
{
    private const int MostColumns = 400;

    /// <summary>The columns of each time, with what stands above them; none where no columns come again so.</summary>
    /// <param name="headings">The headings of a table.</param>
    /// <param name="above">The line above them.</param>
    public static IReadOnlyList<ColumnGroup> Groups(IReadOnlyList<string> headings, SourceCells? above)
    {
        if (headings.Count > MostColumns || !headings.Any(heading => HeadingWords.RoleOf(heading) is not null))
        {
            return [];
        }

        int[] named = [.. Enumerable.Range(0, headings.Count).Where(at => headings[at].Trim().Length > 0)];
        (int from, int length, int times) = Longest([.. named.Select(at => headings[at])]);
        int[][] columns = [.. Enumerable.Range(0, times).Select(time => named[(from + (time * length))..(from + ((time + 1) * length))])];
        if (times == 0 || !Array.Exists(columns[0], at => HeadingWords.RoleOf(headings[at]) is not null))
        {
            return [];
        }

        // What stands above may stand in the first column of its own, in each, or in the middle.
        string[] over = [.. columns.Select(own => above is null ? "" : Single(own.Select(above.At)))];
        bool spanned = Array.TrueForAll(over, text => text.Length > 0);
        return !spanned && !(length > 1 && Array.Exists(columns[0], at => HeadingWords.RoleOf(headings[at]) == ColumnRole.Date)) ? []
            : [.. columns.Select((own, time) => new ColumnGroup(own, [.. own.Select(at => headings[at])])
            {
                Above = spanned ? new LeadText("", over[time], above!.Line) : null,
            })];
    }

    // The run of headings that comes again, one time behind the other, and takes most columns.
    private static (int From, int Length, int Times) Longest(string[] headings)
    {
        (int From, int Length, int Times) best = (0, 0, 0);
        for (int length = 1; length * 2 <= headings.Length; length++)
        {
            for (int from = 0; from + (length * 2) <= headings.Length; from++)
            {
                int same = 0;
                while (from + length + same < headings.Length && SourceSegment.Same(headings[from + same], headings[from + length + same]))
                {
                    same++;
                }

                int times = (same / length) + 1;
                if (times > 1 && times * length > best.Times * best.Length)
                {
                    best = (from, length, times);
                }
            }
        }

        return best;
    }

    private static string Single(IEnumerable<string> texts) =>
        texts.Where(text => text.Length > 0).Distinct().ToArray() is [var only] ? only : "";
}
