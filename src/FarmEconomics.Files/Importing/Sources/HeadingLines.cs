namespace FarmEconomics.Files.Importing.Sources;

/// <summary>Headings of two lines, read as one: a unit below each name, "Beans" above "lb" is "Beans (lb)"; a name beside those that
/// columns have in common, "Week" beside "Corner Shop" above Item, Cases, $.</summary>
internal static class HeadingLines
{
    private const int RowsLookedAt = 60;
    private const int FewestUnits = 2;

    /// <summary>The rows with the second line of headings joined to the first; the same where there is none.</summary>
    public static List<SourceCells> Joined(List<SourceCells> rows)
    {
        for (int at = 1; at < Math.Min(rows.Count, RowsLookedAt); at++)
        {
            if (AreUnits(rows[at], rows[at - 1]))
            {
                return [.. rows.Take(at - 1), Join(rows[at - 1], rows[at]), .. rows.Skip(at + 1)];
            }

            if (SpannedColumns.Groups(rows[at].Fields, rows[at - 1]) is [{ Above: not null }, ..] groups)
            {
                int[] again = [.. groups.SelectMany(group => group.Columns)];
                return [.. rows.Take(at), Filled(rows[at], rows[at - 1], again), .. rows.Skip(at + 1)];
            }
        }

        return rows;
    }

    private static bool AreUnits(SourceCells row, SourceCells above)
    {
        int[] filled = [.. Enumerable.Range(0, row.Fields.Length).Where(at => row.At(at).Length > 0)];
        return filled.Count(at => IsUnit(row.At(at))) >= FewestUnits
            && filled.All(at => IsUnit(row.At(at)) || HeadingWords.RoleOf(row.At(at)) == ColumnRole.Unit)
            && filled.All(at => CellKinds.Of(above.At(at)) == CellKind.Text && !IsUnit(above.At(at)));
    }

    // The columns that come once have their names in either line.
    private static SourceCells Filled(SourceCells names, SourceCells above, int[] again) => names with
    {
        Fields = [.. names.Fields.Select((name, at) => name.Trim().Length > 0 || again.Contains(at) ? name : above.At(at))],
    };

    private static SourceCells Join(SourceCells names, SourceCells units) => names with
    {
        Fields = [.. names.Fields.Select((name, at) => IsUnit(units.At(at)) ? $"{name.Trim()} ({Bare(units.At(at))})" : name)],
    };

    private static bool IsUnit(string text) => UnitNames.IsOne(Bare(text));

    private static string Bare(string text) => text.Trim('(', ')', '[', ']', ' ', '.');
}
