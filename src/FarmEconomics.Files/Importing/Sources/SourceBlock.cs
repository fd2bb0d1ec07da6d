using System.Globalization;
using System.Text.RegularExpressions;

namespace FarmEconomics.Files.Importing.Sources;

/// <summary>Rows under one heading row. A file may repeat its headings, or begin anew with others, further down.</summary>
internal sealed record SourceSegment(int HeadingLine, string[] Headings, List<SourceCells> Rows)
{
    /// <summary>How many fields a row has at most; a value beyond them stands under no heading.</summary>
    public int Width { get; init; } = int.MaxValue;

    /// <summary>Which time of <see cref="RepeatedColumns"/> these are the columns of; 0: none come again.</summary>
    public int Number { get; init; }

    /// <summary>The line above the headings, whatever it holds.</summary>
    public SourceCells? RowAbove { get; init; }

    /// <summary>What the lines above the headings say of these rows, the nearest last; what none of them says is said by the part
    /// before.</summary>
    public IReadOnlyList<LeadText> Above { get; init; } = [];

    /// <summary>Rows that fill none of those columns: who has paid nothing yet.</summary>
    public List<SourceCells> Unfilled { get; } = [];

    /// <summary>Rows whose first text says they are totals.</summary>
    public List<SourceCells> Totals { get; } = [];

    /// <summary>Rows of one text of several words: remarks.</summary>
    public List<SourceCells> Remarks { get; } = [];

    /// <summary>Everything below the headings, in the order of the file.</summary>
    public IEnumerable<SourceCells> Lines => Rows.Concat(Totals).Concat(Remarks).OrderBy(row => row.Line);

    /// <summary>What stands above the headings with a label; with a blank one, alone. Null where nothing does.</summary>
    public LeadText? LeadOf(string label) => Above.LastOrDefault(text => Same(text.Label, label));

    /// <summary>What it says; blank where nothing does.</summary>
    public string TextAbove(string label) => LeadOf(label)?.Text ?? "";

    /// <summary>The column of a heading, from 0; -1 without one.</summary>
    public int Column(string heading) => Array.FindIndex(Headings, known => Same(known, heading));

    public static bool Same(string left, string right) => left.Trim().TrimStart('\uFEFF').Equals(right.Trim(),
        StringComparison.OrdinalIgnoreCase);
}

/// <summary>The part of a file that is imported: the rows under one kind of headings.</summary>
internal sealed partial class SourceBlock
{
    private const int RowsSearchedForHeadings = 60;
    private const string Numbered = "column ";

    private SourceBlock(SourceGrid grid, IReadOnlyList<SourceSegment> segments, IReadOnlyList<SourceCells> above,
        IReadOnlyList<SourceSegment> others)
    {
        Grid = grid;
        Segments = segments;
        Above = above;
        Others = others;
    }

    public SourceGrid Grid { get; }

    public IReadOnlyList<SourceSegment> Segments { get; }

    /// <summary>Rows above the first headings.</summary>
    public IReadOnlyList<SourceCells> Above { get; }

    /// <summary>Tables with other headings in the same file.</summary>
    public IReadOnlyList<SourceSegment> Others { get; }

    /// <summary>The one year that what stands above the headings, or else the file's name, tells; null: none, or several.</summary>
    public int? Year => string.Join(' ', Above.SelectMany(row => row.Fields)) is var title && NamesTwoYears(title) ? null
        : YearIn(title) ?? (NamesTwoYears(Grid.Name) ? null : YearIn(Grid.Name));

    public IReadOnlyList<string> Headings => Segments[0].Headings;

    /// <summary>True when the file names no columns: they are numbered.</summary>
    public bool IsWithoutHeadings => Segments[0].HeadingLine == 0;

    /// <summary>The headings of a file that holds nothing else; null where there are rows.</summary>
    public IReadOnlyList<string>? HeadingsAlone
    {
        get
        {
            string[] fullest = Trimmed(Grid.Rows.MaxBy(row => row.Filled)?.Fields ?? []);
            bool known = fullest.Length > 1
                && (Grid.Rows.Count == 1 || Array.FindAll(fullest, word => HeadingWords.RoleOf(word) is not null).Length > 1);
            return IsWithoutHeadings && known && Grid.Rows.All(row => Array.TrueForAll(row.Fields, IsWords)) ? fullest : null;
        }
    }

    public IEnumerable<SourceCells> Rows => Segments.SelectMany(segment => segment.Rows);

    private static int? YearIn(string text)
    {
        string[] years = [.. FourDigits().Matches(text).Select(year => year.Value).Distinct()];
        return years is [var only] ? int.Parse(only, CultureInfo.InvariantCulture) : null;
    }

    // Winter 2024-25 begins in one year and ends in the next; 2025-03 is a month.
    private static bool NamesTwoYears(string text) => TwoYears().Matches(text).Any(match =>
        (int.Parse(match.Groups["one"].Value, CultureInfo.InvariantCulture) + 1) % 100
            == int.Parse(match.Groups["next"].Value, CultureInfo.InvariantCulture));

    [GeneratedRegex(@"(?<!\d)(19|20)(?<one>\d\d)\s*[-/–—]\s*((19|20)?(?<next>\d\d))(?!\d)", RegexOptions.ExplicitCapture)]
    private static partial Regex TwoYears();

    [GeneratedRegex(@"(?<!\d)(19[89]|20\d)\d(?!\d)")]
    private static partial Regex FourDigits();

    /// <summary>The table a mapping speaks of.</summary>
    /// <returns>Null when no row holds all the headings.</returns>
    public static SourceBlock? With(SourceGrid grid, IReadOnlyList<string> headings)
    {
        if (headings.Count > 0 && headings.All(heading => heading.StartsWith(Numbered, StringComparison.OrdinalIgnoreCase)))
        {
            return WithoutHeadings(grid);
        }

        int first = grid.Rows.Take(RowsSearchedForHeadings).ToList().FindIndex(row => Holds(row.Fields, headings));
        return first < 0 ? null : Split(grid, first, fields => Holds(fields, headings));
    }

    /// <summary>The table that is the most likely to be meant.</summary>
    /// <param name="grid">The rows.</param>
    /// <param name="headingLine">The line its headings stand in, when somebody said so.</param>
    public static SourceBlock Find(SourceGrid grid, int? headingLine = null)
    {
        int best = -1;
        decimal most = 0m;
        for (int i = 0; i < Math.Min(grid.Rows.Count, headingLine is null ? RowsSearchedForHeadings : int.MaxValue); i++)
        {
            decimal score = headingLine is { } line ? (grid.Rows[i].Line == line ? 1m : 0m) : Score(grid, i);
            (best, most) = score > most ? (i, score) : (best, most);
        }

        if (best < 0)
        {
            return WithoutHeadings(grid);
        }

        string[] headings = Trimmed(grid.Rows[best].Fields);
        HashSet<string> keys = [.. headings.Where(heading => HeadingWords.RoleOf(heading) is not null).Select(HeadingWords.Plain)];
        return Split(grid, best, fields => keys.Count > 0 && keys.IsSubsetOf(Trimmed(fields).Select(HeadingWords.Plain)));
    }

    private static SourceBlock WithoutHeadings(SourceGrid grid)
    {
        // Nearly all rows have the same number of fields; a first row with another one is an account's line, not a booking. A day alone
        // above each row is none.
        int usual = grid.Rows.GroupBy(row => row.Fields.Length).OrderByDescending(group => group.Key > 1)
            .ThenByDescending(group => group.Count()).FirstOrDefault()?.Key ?? 0;
        List<SourceCells> above = [.. grid.Rows.TakeWhile(row => row.Fields.Length != usual && row.Filled > 0)];
        var segment = new SourceSegment(0, [.. Enumerable.Range(1, usual).Select(at => $"{Numbered}{at}")], [])
        {
            Width = WidthOf(grid, usual),
            Above = [.. LeadText.Of(above)],
        };
        Fill(segment, grid.Rows.Skip(above.Count));
        return new SourceBlock(grid, [.. SectionLines.Parts(segment)], above, []);
    }

    private static SourceBlock Split(SourceGrid grid, int first, Func<string[], bool> isOurs)
    {
        List<SourceSegment> ours = [];
        List<SourceSegment> others = [];
        SourceSegment? now = null;
        List<SourceCells> rows = [];
        for (int i = first; i < grid.Rows.Count; i++)
        {
            SourceCells row = grid.Rows[i];
            bool again = i == first || isOurs(row.Fields);
            if (again || IsOtherHeading(grid, i, now!))
            {
                LeadText[] above = i == first ? [.. LeadText.Of(grid.Rows.Take(first))]
                    : again ? LeadText.Joined(ours[^1].Above, Lead(rows, row)) : [];
                Fill(now, rows);
                rows = [];
                now = new SourceSegment(row.Line, Trimmed(row.Fields), [])
                {
                    Width = WidthOf(grid, row.Fields.Length),
                    RowAbove = i == 0 ? null : grid.Rows[i - 1],
                    Above = above,
                };
                (again ? ours : others).Add(now);
            }
            else
            {
                rows.Add(row);
            }
        }

        Fill(now, rows);
        IEnumerable<SourceSegment> parts = ours.SelectMany(Beside).SelectMany(SectionLines.Parts).SelectMany(RepeatedColumns.Parts);
        return new SourceBlock(grid, [.. parts], [.. grid.Rows.Take(first)], others);
    }

    // What stands above headings that come again; the days or names over columns that come again are no row either.
    private static LeadText[] Lead(List<SourceCells> rows, SourceCells headings)
    {
        if (rows.Count > 0 && SpannedColumns.Groups(Trimmed(headings.Fields), rows[^1]) is [{ Above: not null }, ..])
        {
            rows.RemoveAt(rows.Count - 1);
        }

        return LeadText.TakeFrom(rows);
    }

    // Only a text can have rows longer than its heading row: a comma within a number makes two values of one.
    private static int WidthOf(SourceGrid grid, int fields) => grid.IsText ? fields : int.MaxValue;

    private static bool IsWords(string field) =>
        CellKinds.Of(field) is not (CellKind.Number or CellKind.Money or CellKind.Quantity or CellKind.Time or CellKind.Day);

    // 12 bu; a 1st payment is none.
    private static bool IsMeasured(string field) =>
        QuantityText.TryRead(field, '.', out NotedQuantity quantity) && UnitNames.IsOne(quantity.Unit);

    // The same headings again to the right, behind an empty column: a table beside another.
    private static IEnumerable<SourceSegment> Beside(SourceSegment whole)
    {
        List<(int From, int Length)> parts = [];
        for (int at = 0; at < whole.Headings.Length; at++)
        {
            if (whole.Headings[at].Length > 0 && (at == 0 || whole.Headings[at - 1].Length == 0))
            {
                parts.Add((at, whole.Headings.Skip(at).TakeWhile(heading => heading.Length > 0).Count()));
            }
        }

        string[][] headings = [.. parts.Select(part => whole.Headings[part.From..(part.From + part.Length)])];
        if (
            parts.Count < 2
            || headings[0].Length < 2
            || !headings.All(other => other.SequenceEqual(headings[0], StringComparer.OrdinalIgnoreCase))
        )
        {
            yield return whole;
            yield break;
        }

        foreach ((int from, int length) in parts)
        {
            yield return Segment(new SourceSegment(whole.HeadingLine, headings[0], []) { Above = whole.Above },
                whole.Lines.Select(row => new SourceCells(row.Line, [.. row.Fields.Skip(from).Take(length)])).Where(row => row.Filled > 0));
        }
    }

    /// <summary>A part of a table with its rows, each in its place: values, totals, remarks.</summary>
    internal static SourceSegment Segment(SourceSegment empty, IEnumerable<SourceCells> rows)
    {
        Fill(empty, rows);
        return empty;
    }

    private static void Fill(SourceSegment? segment, IEnumerable<SourceCells> rows)
    {
        if (segment is null)
        {
            return;
        }

        foreach (SourceCells row in rows)
        {
            string first = row.Fields.First(field => !string.IsNullOrWhiteSpace(field));
            List<SourceCells> place = IsTotals(row, first) ? segment.Totals
                : row.Filled == 1 && segment.Headings.Length > 2 && first.Contains(' ', StringComparison.Ordinal)
                    && CellKinds.Of(first) == CellKind.Text ? segment.Remarks
                : segment.Rows;
            place.Add(row);
        }
    }

    // "Total" alone, or with what it is the total of; but TOTAL WINE, with a day beside it, is a shop.
    private static bool IsTotals(SourceCells row, string first) => HeadingWords.IsTotal(first)
        && (HeadingWords.IsBareTotal(first) || !row.Fields.Any(field => field != first && DateForms.IsDay(field)));

    // Another table further down has headings of its own: at least two known ones, and nothing measured among them. Days may be headings
    // where there are several; a single one is a record's ("harvest" and "field" are words of records, too).
    private static bool IsOtherHeading(SourceGrid grid, int at, SourceSegment now)
    {
        string[] fields = Trimmed(grid.Rows[at].Fields);
        int known = fields.Count(field => HeadingWords.RoleOf(field) is not null);
        if (known < 2 || at + 1 == grid.Rows.Count || now.Headings.Length == 0
            || fields.Count(field => field.Length > 0) - known > fields.Length / 2)
        {
            return false;
        }

        CellKind[] kinds = [.. fields.Select(CellKinds.Of)];
        return !kinds.Any(kind => kind is CellKind.Number or CellKind.Money or CellKind.Quantity or CellKind.Time)
            && kinds.Count(kind => kind == CellKind.Day) != 1;
    }

    private static decimal Score(SourceGrid grid, int at)
    {
        SourceCells row = grid.Rows[at];
        CellKind[] kinds = [.. row.Fields.Select(CellKinds.Of)];
        int known = row.Fields.Count(field => HeadingWords.RoleOf(field) is not null);
        int below = at + 1 < grid.Rows.Count ? grid.Rows.Skip(at + 1)
            .Take(5).Max(other => other.Fields
            .Count(field => CellKinds.Of(field) is CellKind.Number or CellKind.Money or CellKind.Day or CellKind.Quantity or CellKind.Time))
            : 0;
        if (row.Filled < 2 || kinds.Any(kind => kind is CellKind.Number or CellKind.Money or CellKind.Time) || below == 0
            || (known == 0 && kinds.Contains(CellKind.Day) && kinds.Count(kind => kind == CellKind.Text) > 1)
            || (known == 0 && Array.Exists(row.Fields, IsMeasured)) || LeadText.IsLabeled(row))
        {
            return 0m;
        }

        return row.Filled + (known * 2m) + (Array.FindAll(row.Fields, field => field.Trim().Length > 40).Length > 0 ? -5m : 0m);
    }

    // Asked of every row: only a heading that stands within a field may come again with a number.
    private static bool Holds(string[] fields, IReadOnlyList<string> headings) => headings
        .All(heading => Array.Exists(fields, field => SourceSegment.Same(field, heading))
            || (Array.Exists(fields, field => field.Contains(heading.Trim(), StringComparison.OrdinalIgnoreCase))
                && RepeatedColumns.Names(fields).Any(name => SourceSegment.Same(name, heading))));

    private static string[] Trimmed(string[] fields)
    {
        int last = Array.FindLastIndex(fields, field => !string.IsNullOrWhiteSpace(field));
        return [.. fields.Take(last + 1).Select(field => field.Trim())];
    }
}
