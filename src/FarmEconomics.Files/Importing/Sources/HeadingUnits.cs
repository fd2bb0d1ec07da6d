namespace FarmEconomics.Files.Importing.Sources;

/// <summary>Headings of two lines, a unit below each name, read as one: "Beans" above "lb" is "Beans (lb)".</summary>
internal static class HeadingUnits
{
    private const int RowsLookedAt = 60;
    private const int FewestUnits = 2;

    /// <summary>The rows with the line of units joined to the line above it; the same where there is none.</summary>
    public static List<SourceCells> Joined(List<SourceCells> rows)
    {
        for (int at = 1; at < Math.Min(rows.Count, RowsLookedAt); at++)
        {
            if (AreUnits(rows[at], rows[at - 1]))
            {
                return [.. rows.Take(at - 1), Join(rows[at - 1], rows[at]), .. rows.Skip(at + 1)];
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

    private static SourceCells Join(SourceCells names, SourceCells units) => names with
    {
        Fields = [.. names.Fields.Select((name, at) => IsUnit(units.At(at)) ? $"{name.Trim()} ({Bare(units.At(at))})" : name)],
    };

    private static bool IsUnit(string text) => UnitNames.IsOne(Bare(text));

    private static string Bare(string text) => text.Trim('(', ')', '[', ']', ' ', '.');
}
