using CsvHelper;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Inputs;

/// <summary>One file, or one sheet of a workbook, that holds rows of a table.</summary>
internal abstract class TableInput(string file, string table)
{
    /// <summary>The place as problems name it: <c>sales.csv</c>, or <c>records.xlsx!sales</c>.</summary>
    public string File { get; } = file;

    /// <summary>The table it holds rows of.</summary>
    public string Table { get; } = table;

    /// <summary>Opens it for one reading.</summary>
    /// <param name="options">Changes the usual options.</param>
    /// <param name="settings">The farm's settings: a sheet's numbers are written with its decimal mark.</param>
    public abstract InputReading Open(Func<CsvReaderOptions, CsvReaderOptions> options, FarmSettings settings);
}

/// <summary>A fault of a cell that its text doesn't show, such as a formula without a value.</summary>
/// <param name="Code">The kind of fault.</param>
/// <param name="Column">The column of the table; null: not known.</param>
/// <param name="Message">What is wrong.</param>
/// <param name="At">The column of the sheet, from 0; -1: the whole row.</param>
internal sealed record CellFault(string Code, string? Column, string Message, int At);

/// <summary>One reading of an input: its rows as CSV, with the line or sheet row each of them stands in.</summary>
internal sealed class InputReading(CsvReader reader, int[]? sheetRows = null, Action? finish = null) : IDisposable
{
    private static readonly Dictionary<int, List<CellFault>> NoFaults = [];

    public CsvReader Reader { get; } = reader;

    /// <summary>Faults by sheet row that make the row unreadable.</summary>
    public Dictionary<int, List<CellFault>> Faults { get; init; } = NoFaults;

    /// <summary>Warnings about the sheet as a whole or rows that are no records.</summary>
    public IReadOnlyList<Problem> Remarks { get; init; } = [];

    /// <summary>Rows named by <see cref="Remarks"/> and not read.</summary>
    public int RowsPassedOver { get; init; }

    /// <summary>True when positions are columns of a sheet, not characters of a line.</summary>
    public bool IsSheet => sheetRows is not null;

    /// <summary>The line, or sheet row, of the current record.</summary>
    public int Line => LineAt(Reader.LineNumber);

    public int LineAt(long line) =>
        sheetRows is null ? (int)line : sheetRows.Length == 0 ? 1 : sheetRows[Math.Clamp((int)line - 1, 0, sheetRows.Length - 1)];

    /// <summary>Called after the last record: fails when the file changed meanwhile.</summary>
    public void Finish() => finish?.Invoke();

    public void Dispose() => Reader.Dispose();
}
