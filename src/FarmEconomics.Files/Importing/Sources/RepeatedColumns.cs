using System.Globalization;
using System.Text.RegularExpressions;

namespace FarmEconomics.Files.Importing.Sources;

/// <summary>The columns of a table that come again, one time of them.</summary>
/// <param name="Columns">Their places, from 0.</param>
/// <param name="Names">Their headings, each time the same.</param>
internal sealed record ColumnGroup(int[] Columns, string[] Names)
{
    /// <summary>What stands above them; null: nothing.</summary>
    public LeadText? Above { get; init; }
}

/// <summary>Columns that come again with a number, such as Paid 1, Date 1, Paid 2, Date 2, or under a heading of their own: each time
/// makes a row of its own.</summary>
internal static partial class RepeatedColumns
{
    private const int FewestInARow = 2;

    /// <summary>The headings such columns have in each part; none where no columns come again.</summary>
    public static IReadOnlyList<string> Names(IReadOnlyList<string> headings) => Groups(headings) is [var first, ..] ? first.Names : [];

    /// <summary>The parts of a table, one for each time, each with the columns that come once; the table itself where none come
    /// again.</summary>
    public static IEnumerable<SourceSegment> Parts(SourceSegment whole)
    {
        IReadOnlyList<ColumnGroup> groups = Groups(whole.Headings) is { Count: > 0 } numbers ? numbers
            : SpannedColumns.Groups(whole.Headings, whole.RowAbove);
        if (groups.Count == 0)
        {
            yield return whole;
            yield break;
        }

        HashSet<int> again = [.. groups.SelectMany(group => group.Columns)];
        int[] common = [.. Enumerable.Range(0, whole.Headings.Length).Where(at => !again.Contains(at))];
        SourceCells[] rows = [.. whole.Lines];
        for (int part = 0; part < groups.Count; part++)
        {
            int[] own = groups[part].Columns;
            string[] headings = [.. common.Select(at => whole.Headings[at]), .. groups[part].Names];
            bool first = part == 0;

            // Values beyond the headings go along, to be told.
            SourceSegment segment = SourceBlock.Segment(
                new SourceSegment(whole.HeadingLine, headings, [])
                {
                    Width = whole.Width == int.MaxValue ? whole.Width : headings.Length,
                    Number = part + 1,
                    Above = groups[part].Above is { } over ? [.. whole.Above, over] : whole.Above,
                },
                rows.Where(row => Array.Exists(own, at => row.At(at).Length > 0) || (first && row.Filled == 1))
                    .Select(row => new SourceCells(row.Line, [.. common.Concat(own).Select(row.At), .. row.Fields.Skip(whole.Width)])));
            segment.Unfilled.AddRange(rows.Where(row => first && row.Filled > 1 && !again.Any(at => row.At(at).Length > 0)));
            yield return segment;
        }
    }

    // Every number from 1 (which may go without saying) has the same columns, two or more, one of which is known by its name.
    private static IReadOnlyList<ColumnGroup> Groups(IReadOnlyList<string> headings)
    {
        NumberedColumn[] columns = [.. headings.Select((heading, at) => Read(heading, at)).OfType<NumberedColumn>()];
        HashSet<string> names = new(columns.Select(column => column.Name), StringComparer.OrdinalIgnoreCase);
        if (columns.Length > 0 && Array.TrueForAll(columns, column => column.Number > 1))
        {
            IEnumerable<NumberedColumn> plain = headings.Select((heading, at) => new NumberedColumn(heading.Trim(), 1, at));
            columns = [.. plain.Where(column => names.Contains(column.Name)), .. columns];
        }

        NumberedColumn[][] groups = [.. columns.GroupBy(column => column.Number).OrderBy(group => group.Key)
            .Select(group => group.OrderBy(column => column.Name, StringComparer.OrdinalIgnoreCase).ToArray())];
        return groups.Length < FewestInARow || names.Count < FewestInARow || !names.Any(name => HeadingWords.RoleOf(name) is not null)
            || groups.Index().Any(group => group.Item[0].Number != group.Index + 1 || group.Item.Length != names.Count
                || !names.SetEquals(group.Item.Select(column => column.Name)))
            ? []
            : [.. groups.Select(group => new ColumnGroup(
                [.. group.Select(column => column.At)], [.. group.Select(column => column.Name)]))];
    }

    private static NumberedColumn? Read(string heading, int at) => Numbered().Match(heading.Trim()) is { Success: true } match
        ? new NumberedColumn(match.Groups["name"].Value, int.Parse(match.Groups["number"].Value, CultureInfo.InvariantCulture), at) : null;

    private sealed record NumberedColumn(string Name, int Number, int At);

    // Paid 1, Paid1, Paid #1, 1st paid.
    [GeneratedRegex(
        @"^((?<name>\p{L}.*?\p{L})[\s.#_-]*(?<number>[1-9][0-9]?)|(?<number>[1-9])(st|nd|rd|th)\s+(?<name>\p{L}.*\p{L}))$",
        RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase | RegexOptions.CultureInvariant
    )]
    private static partial Regex Numbered();
}
