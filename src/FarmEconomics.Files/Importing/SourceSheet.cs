using CsvHelper;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Files.Reading;
using FarmEconomics.Files.Workbooks.Reading;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Importing;

/// <summary>A sheet of a workbook of another program. Its rows are read like those of a CSV file, each with its row in the sheet.</summary>
internal static class SourceSheet
{
    /// <summary>The sheet to read.</summary>
    /// <param name="path">The source.</param>
    /// <param name="name">The sheet's name; null: the first one that is not hidden.</param>
    /// <returns>The sheet; null when the source is no workbook.</returns>
    /// <exception cref="ArgumentException">There is no such sheet, or a sheet of a file that has none is asked for.</exception>
    public static SheetEntry? Find(string path, string? name)
    {
        if (!SheetPlace.IsWorkbook(path))
        {
            return name is null ? null : throw new ArgumentException($"{Path.GetFileName(path)} is no workbook (.xlsx) and has no sheets; leave --sheet out.");
        }

        IReadOnlyList<SheetEntry> sheets = WorkbookReader.Sheets(path);
        return sheets.FirstOrDefault(sheet => name is null ? !sheet.Hidden : sheet.Name.Trim().Equals(name.Trim(), StringComparison.OrdinalIgnoreCase))
            ?? throw new ArgumentException(name is null
                ? $"{Path.GetFileName(path)} has no sheet that is not hidden."
                : $"{Path.GetFileName(path)} has no sheet \"{name}\"; it has {string.Join(", ", sheets.Select(sheet => sheet.Name))}.");
    }

    /// <summary>Opens it for one reading.</summary>
    /// <param name="path">The workbook.</param>
    /// <param name="sheet">The sheet.</param>
    /// <param name="mapping">Whose headings are looked for below whatever title stands above them, and whose decimal marks numbers are written with.</param>
    public static InputReading Open(string path, SheetEntry sheet, ImportMapping mapping)
    {
        var columns = mapping.SourceColumns.DistinctBy(HeadingKey.Of).Select(heading => new ColumnSchema(heading, ColumnType.Text, "") { Required = true });
        ConvertedSheet rows = WorkbookReader.Convert(path, sheet.Id, SheetPlace.Name(path, sheet.Name), new TableSchema("source", "a row of another program", [.. columns]), new FarmSettings(), column => mapping.MarkOf(column?.Name ?? ""));
        return new InputReading(CsvReader.Create(rows.Csv, TableFile.Options(',') with { Encoding = null, HasHeader = false }), rows.RowOfLine) { Faults = rows.Faults };
    }
}
