using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Checks;

/// <summary>What a row of <c>imports</c> must say to be of use.</summary>
public static class ImportRules
{
    /// <summary>What is wrong with a row of a mapping.</summary>
    /// <param name="row">The row.</param>
    /// <returns>The problem, or null when the row can be used.</returns>
    public static Problem? Fault(ImportRow row)
    {
        if (RecordSchema.Find(row.Table.Trim()) is not { } table)
        {
            return Make(row, "table", $"There is no table \"{row.Table}\".", row.Table, NearestName.Find(row.Table, RecordSchema.Tables.Select(known => known.Name)));
        }

        if (row.Column is { } column && table.Find(column) is null)
        {
            return Make(row, "column", $"{table.Name} has no column \"{column}\".", column, NearestName.Find(column, table.Columns.Select(known => known.Name)));
        }

        if (row.Column is null && (row.SourceColumn is null || row.When is null))
        {
            return Make(row, "column", "A row without a column leaves rows out, and needs source_column and when.");
        }

        return row.Column is not null && row.When is null && (row.SourceColumn is null) == (row.Constant is null)
            ? Make(row, "source_column", "The row needs either a source_column or a constant.")
            : null;
    }

    private static Problem Make(ImportRow row, string column, string message, string? offending = null, string? nearest = null) =>
        ProblemCatalog.Make(ProblemCodes.BadImport, row.Source, column, message, offending, nearest);
}
