using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records.Checks;

/// <summary>Checks of remembered mappings.</summary>
internal static class ImportChecks
{
    public static IEnumerable<RecordCheck> All { get; } =
    [
        new RowChecks<ImportRow>("imports", tables => tables.Imports, ("table, column and source make sense", Check)),
    ];

    private static void Check(CheckContext context, ImportRow row)
    {
        if (Fault(row) is { } fault)
        {
            context.Report(ProblemCodes.BadImport, row, fault.Column, fault.Message, fault.Offending, fault.Nearest);
        }
    }

    /// <summary>What is wrong with a row of a mapping, or null.</summary>
    internal static (string Column, string Message, string? Offending, string? Nearest)? Fault(ImportRow row)
    {
        if (RecordSchema.Find(row.Table.Trim()) is not { } table)
        {
            return ("table", $"There is no table \"{row.Table}\".", row.Table, NearestName.Find(row.Table, RecordSchema.Tables.Select(known => known.Name)));
        }

        if (row.Column is { } column && table.Find(column) is null)
        {
            return ("column", $"{table.Name} has no column \"{column}\".", column, NearestName.Find(column, table.Columns.Select(known => known.Name)));
        }

        if (row.Column is null && (row.SourceColumn is null || row.When is null))
        {
            return ("column", "A row without a column leaves rows out, and needs source_column and when.", null, null);
        }

        if (row.Column is not null && (row.SourceColumn is null) == (row.Constant is null) && row.When is null)
        {
            return ("source_column", "The row needs either a source_column or a constant.", null, null);
        }

        return null;
    }
}
