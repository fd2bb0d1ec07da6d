using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Checks;

/// <summary>What a row of <c>imports</c> must say to be of use.</summary>
public static class ImportRules
{
    private const string SourceId = "source_id";

    private static readonly string[] Words =
    [
        "negative",
        "paid-below",
        "paid-above",
        "absolute",
        "decimal-comma",
        "round",
        "quantity",
        "unit",
        "in-parentheses",
        "before-parentheses",
        "punches",
        "day-part",
        "hours",
        "hours-minutes",
        "serial",
        "same-as-above",
        "weekday",
    ];

    private static readonly string[] Prefixes = ["until:", "less:", "plus:", "plus-days:", "less-days:"];

    /// <summary>What is wrong with a row of a mapping.</summary>
    /// <param name="row">The row.</param>
    /// <returns>The problem, or null when the row can be used.</returns>
    public static Problem? Fault(ImportRow row) =>
        TableFault(row) ?? SourceFault(row) ?? Open(row) ?? Format(row);

    private static Problem? TableFault(ImportRow row)
    {
        if (RecordSchema.Find(row.Table.Trim()) is not { } table)
        {
            return Make(
                row,
                "table",
                $"There is no table \"{row.Table}\".",
                row.Table,
                NearestName.Find(row.Table, RecordSchema.Tables.Select(known => known.Name))
            );
        }

        return row.Column is not { } column || HeadingKey.Of(column) == HeadingKey.Of(SourceId) || table.FindAny(column) is not null
            ? null
            : Make(
                row,
                "column",
                $"{table.Name} has no column \"{column}\".",
                column,
                NearestName.Find(column, table.Columns.Select(known => known.Name))
            );
    }

    private static Problem? SourceFault(ImportRow row)
    {
        if (row.Column is null && row.SourceColumn is null)
        {
            return Make(row, "source_column", "A row without a column leaves rows or a column of the source out, and needs source_column.");
        }

        if (
            row.Match is ImportMatch.Above or ImportMatch.Below
            && !decimal.TryParse(row.When, System.Globalization.CultureInfo.InvariantCulture, out _)
        )
        {
            return Make(row, "when", $"\"{row.When}\" is no number to compare with (the decimal mark is a point here).", row.When);
        }

        bool isRule = row.When is not null || row.Match == ImportMatch.Blank;
        return row.Column is not null && !isRule && (row.SourceColumn is null) == (row.Constant is null)
            ? Make(row, "source_column", "The row needs either a source_column or a constant.")
            : null;
    }

    // What a draft left to the grower is answered before anything is read by it.
    private static Problem? Open(ImportRow row)
    {
        string asks = row.Note?.Trim(' ', '?') is { Length: > 0 } note ? $" {char.ToUpperInvariant(note[0])}{note[1..]}." : "";
        return row.Constant?.Trim() == "?" ? Make(row, "constant", $"Put what is meant in place of the \"?\".{asks}", "?")
            : row.Format?.Contains(" or ", StringComparison.OrdinalIgnoreCase) == true
                ? Make(row, "format", $"Keep one of the two: \"{row.Format}\".{asks}", row.Format)
            : null;
    }

    private static Problem? Format(ImportRow row)
    {
        string? unknown = row
            .Format?.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
            .FirstOrDefault(word =>
                !Words.Contains(word, StringComparer.OrdinalIgnoreCase)
                && !Prefixes.Any(prefix => word.StartsWith(prefix, StringComparison.OrdinalIgnoreCase))
                && DateText.FormOf(word).Format is null
            );
        return unknown is null
            ? null
            : Make(
                row,
                "format",
                $"\"{unknown}\" is no date form and no word a format may hold.",
                unknown,
                NearestName.Find(unknown, Words.Concat(Prefixes))
            );
    }

    private static Problem Make(ImportRow row, string column, string message, string? offending = null, string? nearest = null) =>
        ProblemCatalog.Make(ProblemCodes.BadImport, row.Source, column, message, offending, nearest);
}
