using System.Globalization;
using CsvHelper;
using FarmEconomics.Files.Workbooks;

namespace FarmEconomics.Files.Results;

/// <summary>
/// A result table being written: dot decimals, ISO dates, blank for "not available", LF line ends, no formulas out of the records' text.
/// </summary>
internal sealed class CsvTable : IDisposable
{
    private readonly CsvWriter writer;
    private readonly List<string> row = [];
    private readonly WorkbookSheet? sheet;
    private readonly List<WorkbookCell> cells = [];

    /// <summary>Starts a table.</summary>
    /// <param name="path">The file.</param>
    /// <param name="book">A workbook that gets the same rows on a sheet with the file's name, or null.</param>
    /// <param name="columns">The headings.</param>
    internal CsvTable(string path, Workbook? book, params string[] columns)
    {
        sheet = book?.Sheet(Path.GetFileNameWithoutExtension(path));
        sheet?.HeadingRow(columns);
        writer = CsvWriter.Create(
            File.Create(path),
            CsvWriterOptions.Default with
            {
                NewLine = "\n",
                HasHeader = false,
                Injection = CsvInjection.None,
            },
            leaveOpen: false
        );
        writer.WriteRecord(columns);
    }

    /// <summary>Closes the file.</summary>
    public void Dispose() => writer.Dispose();

    /// <summary>Text out of the records; numbers are written by the other methods and keep their sign.</summary>
    internal CsvTable Text(string? value)
    {
        string text = value ?? "";
        cells.Add(WorkbookCell.Text(text));
        row.Add(WorkbookText.NoFormula(text));
        return this;
    }

    internal CsvTable Whole(int? value)
    {
        cells.Add(WorkbookCell.Number(value, WorkbookStyle.Year));
        row.Add(value?.ToString() ?? "");
        return this;
    }

    internal CsvTable Money(decimal? value)
    {
        decimal? rounded = value is { } known ? decimal.Round(known, 2, MidpointRounding.AwayFromZero) : null;
        cells.Add(WorkbookCell.Money(rounded));
        row.Add(rounded?.ToString("0.00", CultureInfo.InvariantCulture) ?? "");
        return this;
    }

    internal CsvTable Number(decimal? value)
    {
        decimal? rounded = value is { } known ? decimal.Round(known, 4, MidpointRounding.AwayFromZero) : null;
        cells.Add(WorkbookCell.Number(rounded));
        row.Add(rounded?.ToString("0.0000", CultureInfo.InvariantCulture) ?? "");
        return this;
    }

    internal void End()
    {
        writer.WriteRecord(row.ToArray());
        row.Clear();
        sheet?.Row([.. cells]);
        cells.Clear();
    }
}
