using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Reading;

/// <summary>Matches a heading row with the columns of its table.</summary>
internal sealed class HeadingCheck(
    SourceLine source,
    TableSchema schema,
    LengthUnit unit,
    IReadOnlyList<string> headings,
    List<Problem> problems
)
{
    private const int MaxUnknownTold = 50;

    /// <summary>Finds the column of each heading and reports what doesn't match.</summary>
    /// <returns>The column of each heading (null: not read), or null when the file can't be read.</returns>
    public ColumnSchema?[]? Run()
    {
        var columns = new ColumnSchema?[LastNamed(headings) + 1];
        bool twice = Match(columns);
        bool missing = Miss(columns);
        return twice || missing ? null : columns;
    }

    /// <returns>True when two headings name one column.</returns>
    private bool Match(ColumnSchema?[] columns)
    {
        bool anyTwice = false;
        int unknown = 0;
        for (int i = 0; i < columns.Length; i++)
        {
            ColumnSchema? column = schema.Find(headings[i], unit);
            if (column is null)
            {
                if (!Importing.ImportColumns.Holds(headings[i]) && ++unknown <= MaxUnknownTold)
                {
                    string? nearest = NearestName.Find(headings[i], schema.Columns.Select(known => known.NameFor(unit)));
                    string none = string.IsNullOrWhiteSpace(headings[i])
                        ? $"Column {i + 1} of {schema.Name} has no heading and is not read."
                        : $"{schema.Name} has no column \"{headings[i]}\".";
                    Report(ProblemCodes.UnknownColumn, headings[i], none, headings[i], nearest);
                }
            }
            else if (Array.IndexOf(columns, column) >= 0)
            {
                string twice = $"The column {column.NameFor(unit)} stands twice in the heading row.";
                Report(ProblemCodes.ColumnTwice, column.Name, twice, headings[i]);
                anyTwice = true;
            }

            columns[i] = column;
        }

        if (unknown > MaxUnknownTold)
        {
            Report(ProblemCodes.UnknownColumn, null,
                Notation.Default.Text($"{schema.Name} has no columns for {unknown - MaxUnknownTold:N0} more headings."));
        }

        return anyTwice;
    }

    /// <returns>True when a column that rows need has no heading.</returns>
    private bool Miss(ColumnSchema?[] columns)
    {
        (string Name, string? Nearest)[] missing =
        [
            .. schema
                .Columns.Where(column => column.Required && Array.IndexOf(columns, column) < 0)
                .Select(column => column.NameFor(unit))
                .Select(name => (name, NearestName.Find(name, headings.Where(heading => schema.Find(heading, unit) is null)))),
        ];
        // Those that aren't there at all in one sentence: who adds the first is not sent back for the next.
        string[] absent = [.. missing.Where(column => column.Nearest is null).Select(column => column.Name)];
        if (absent.Length > 0)
        {
            string names = absent is [var one] ? $"column {one}" : $"columns {string.Join(", ", absent[..^1])} and {absent[^1]}";
            Report(ProblemCodes.MissingColumn, null, $"{schema.Name} lacks the {names}, so none of its rows can be read.");
        }

        foreach ((string name, string? nearest) in missing.Where(column => column.Nearest is not null))
        {
            string lacks = $"{schema.Name} lacks the column {name}, so none of its rows can be read.";
            Report(ProblemCodes.MissingColumn, null, lacks, null, nearest);
        }

        bool any = missing.Length > 0;
        if (schema.OneOf.Count > 0 && !columns.Any(column => column is not null && schema.OneOf.Contains(column.Name)))
        {
            string oneOf = string.Join(" or ", schema.OneOf);
            Report(ProblemCodes.MissingColumn, null, $"{schema.Name} lacks a column {oneOf}, so none of its rows can be read.");
            any = true;
        }

        return any;
    }

    private void Report(string code, string? column, string message, string? offending = null, string? nearest = null) =>
        problems.Add(ProblemCatalog.Make(code, source, column, message, offending, nearest));

    // Spreadsheets often save separators for empty columns at the right: those have no heading and are no columns.
    private static int LastNamed(IReadOnlyList<string> headings)
    {
        int last = headings.Count - 1;
        while (last >= 0 && string.IsNullOrWhiteSpace(headings[last]))
        {
            last--;
        }

        return last;
    }
}
