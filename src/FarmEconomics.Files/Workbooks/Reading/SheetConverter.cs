using System.Buffers;
using System.Text;
using System.Xml;
using FarmEconomics.Files.Inputs;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;

namespace FarmEconomics.Files.Workbooks.Reading;

/// <summary>A sheet as CSV.</summary>
/// <param name="Csv">Its rows from the heading row on, without blank ones.</param>
/// <param name="RowOfLine">The sheet row of each line of the CSV.</param>
/// <param name="Faults">By sheet row, what can't be read of it.</param>
/// <param name="Remarks">Warnings.</param>
/// <param name="RowsPassedOver">Rows above the heading row.</param>
internal sealed record ConvertedSheet(
    byte[] Csv,
    int[] RowOfLine,
    Dictionary<int, List<CellFault>> Faults,
    IReadOnlyList<Problem> Remarks,
    int RowsPassedOver
);

/// <summary>Turns the rows of one sheet into CSV.</summary>
internal sealed class SheetConverter(string file, TableSchema schema, Notation notation, CellValues values)
{
    private const int MaxCsvBytes = 256 << 20;
    private const int MaxColumns = 16_384;
    private const int MaxRows = 1_048_576;
    private const int MaxRowsWithFaults = 10_000;
    private const int RowsSearchedForHeadings = 20;
    private const int MaxMergesTold = 20;

    private readonly ArrayBufferWriter<byte> csv = new();
    private readonly List<int> rowOfLine = [];
    private readonly Dictionary<int, List<CellFault>> faultsFound = [];
    private readonly List<Problem> remarks = [];
    private readonly List<(int Row, List<RawCell> Cells)> top = [];
    private ColumnSchema?[]? columns;
    private string[] headingTexts = [];
    private int headingRow;
    private int passedOver;

    /// <summary>
    /// The columns of a sheet that is no table of the farm, by number from 1: every row is taken, none is looked at as headings.
    /// </summary>
    public Func<int, ColumnSchema>? EveryColumn { get; init; }

    public ConvertedSheet Convert(Stream stream)
    {
        using XmlReader xml = WorkbookReader.Xml(stream);
        int row = 0;
        int merges = 0;
        while (xml.Read())
        {
            if (xml.NodeType != XmlNodeType.Element)
            {
                continue;
            }

            if (xml.LocalName == "row")
            {
                row = int.TryParse(xml.GetAttribute("r"), out int given) && given > row ? given : row + 1;
                if (row > MaxRows)
                {
                    throw new InvalidDataException("it has more rows than a sheet can hold");
                }

                List<RawCell> cells = ReadCells(xml);
                if (cells.TrueForAll(cell => cell.IsBlank))
                {
                    continue;
                }

                Take(row, cells);
            }
            else if (xml.LocalName == "mergeCell" && xml.GetAttribute("ref") is { } reference)
            {
                TakeHeadings();
                merges += TellMerge(reference, merges) ? 1 : 0;
            }
        }

        TakeHeadings();
        return new ConvertedSheet(csv.WrittenSpan.ToArray(), [.. rowOfLine], faultsFound, remarks, passedOver);
    }

    private static List<RawCell> ReadCells(XmlReader xml)
    {
        List<RawCell> cells = [];
        if (xml.IsEmptyElement)
        {
            return cells;
        }

        int depth = xml.Depth;
        int column = 0;
        while (xml.Read() && xml.Depth > depth)
        {
            if (xml.NodeType != XmlNodeType.Element || xml.LocalName != "c")
            {
                continue;
            }

            int given = SheetPlace.ColumnOf(xml.GetAttribute("r"));
            column = given > column ? given : column + 1;
            if (column > MaxColumns)
            {
                throw new InvalidDataException("a row has more columns than a sheet can hold");
            }

            RawCell cell = ReadCell(xml, column);
            if (!cell.IsBlank)
            {
                cells.Add(cell);
            }
        }

        return cells;
    }

    private static RawCell ReadCell(XmlReader xml, int column)
    {
        string? type = xml.GetAttribute("t");
        int style = int.TryParse(xml.GetAttribute("s"), out int number) ? number : -1;
        string? value = null;
        bool formula = false;
        if (!xml.IsEmptyElement)
        {
            int depth = xml.Depth;
            string? inside = null;
            while (xml.Read() && xml.Depth > depth)
            {
                if (xml.NodeType == XmlNodeType.Element)
                {
                    inside = xml.LocalName;
                    formula |= inside == "f";
                    value = inside == "is" ? SharedStrings.TextOf(xml) : value;
                }
                else if (inside == "v" && xml.NodeType is XmlNodeType.Text or XmlNodeType.CDATA or XmlNodeType.SignificantWhitespace)
                {
                    value = type == "str" ? SharedStrings.Unescape(xml.Value) : xml.Value;
                }
            }
        }

        return new RawCell(column, type, style, value ?? (formula && type == "str" ? "" : null), formula);
    }

    private void Take(int row, List<RawCell> cells)
    {
        if (columns is not null || EveryColumn is not null)
        {
            Write(row, cells);
            return;
        }

        top.Add((row, cells));
        if (top.Count == RowsSearchedForHeadings || HasRequiredHeadings(cells))
        {
            TakeHeadings();
        }
    }

    private void TakeHeadings()
    {
        if (columns is not null || top.Count == 0)
        {
            return;
        }

        int at = PlaceOfHeadings();
        foreach ((int row, List<RawCell> cells) in top.Take(at))
        {
            passedOver++;
            string notRead = $"The row stands above the headings and is not read: \"{Plain(cells[0])}\".";
            remarks.Add(ProblemCatalog.Make(ProblemCodes.NoRecord, new SourceLine(file, row), null, notRead));
        }

        (headingRow, List<RawCell> headings) = top[at];
        headingTexts = new string[headings.Max(cell => cell.Column)];
        Array.Fill(headingTexts, "");
        foreach (RawCell cell in headings)
        {
            headingTexts[cell.Column - 1] = Plain(cell).Trim();
        }

        columns = [.. headingTexts.Select(heading => schema.Find(heading, notation.LengthUnit))];
        WriteLine(headingRow, headingTexts);
        foreach ((int row, List<RawCell> cells) in top.Skip(at + 1))
        {
            Write(row, cells);
        }

        top.Clear();
    }

    // Titles often stand above the headings: the heading row is the first with all required columns, else the one with the most known ones.
    private int PlaceOfHeadings()
    {
        int at = top.FindIndex(row => HasRequiredHeadings(row.Cells));
        if (at >= 0)
        {
            return at;
        }

        int most = top.Max(row => KnownHeadings(row.Cells));
        return Math.Max(0, top.FindIndex(row => KnownHeadings(row.Cells) == most));
    }

    private string Plain(RawCell cell) => values.Text(cell, null, out _);

    private bool HasRequiredHeadings(List<RawCell> cells)
    {
        HashSet<string> known = [.. cells.Select(cell => schema.Find(Plain(cell), notation.LengthUnit)?.Name ?? "")];
        return schema.Columns.All(column => !column.Required || known.Contains(column.Name));
    }

    private int KnownHeadings(List<RawCell> cells) => cells.Count(cell => schema.Find(Plain(cell), notation.LengthUnit) is not null);

    private void Write(int row, List<RawCell> cells)
    {
        string[] fields = new string[Math.Max(columns?.Length ?? 0, cells[^1].Column)];
        Array.Fill(fields, "");
        foreach (RawCell cell in cells)
        {
            ColumnSchema? column = EveryColumn?.Invoke(cell.Column) ?? (cell.Column <= columns?.Length ? columns[cell.Column - 1] : null);
            fields[cell.Column - 1] = values.Text(cell, column, out string? fault);
            if (fault is not null && column is not null)
            {
                if (!faultsFound.TryGetValue(row, out List<CellFault>? faults))
                {
                    if (faultsFound.Count == MaxRowsWithFaults)
                    {
                        throw new InputException(
                            ProblemCodes.TooManyInError,
                            notation.Text($"More than {MaxRowsWithFaults:N0} rows of {file} hold formulas without a value.")
                        );
                    }

                    faultsFound.Add(row, faults = []);
                }

                faults.Add(
                    new CellFault(ProblemCodes.CellWithoutValue, column.Name, $"Cell {SheetPlace.Letters(cell.Column)}{row} {fault}.",
                        cell.Column - 1)
                );
            }
        }

        WriteLine(row, fields);
    }

    private void WriteLine(int row, string[] fields)
    {
        var line = new StringBuilder();
        rowOfLine.Add(row);
        for (int i = 0; i < fields.Length; i++)
        {
            line.Append(i > 0 ? "," : "");
            string field = fields[i].ReplaceLineEndings("\n");
            line.Append(CsvField.Of(field));
            for (int breaks = field.Count(c => c == '\n'); breaks > 0; breaks--)
            {
                rowOfLine.Add(row);
            }
        }

        line.Append('\n');
        csv.Write(Encoding.UTF8.GetBytes(line.ToString()));
        if (csv.WrittenCount > MaxCsvBytes)
        {
            throw new InputException(ProblemCodes.FileTooLarge, $"{file} holds more than {MaxCsvBytes >> 20} MB of text.");
        }
    }

    private bool TellMerge(string reference, int told)
    {
        string[] ends = reference.Split(':');
        int row = SheetPlace.RowOf(ends[0]);
        if (ends.Length != 2 || row < headingRow || SheetPlace.ColumnOf(ends[0]) > headingTexts.Length)
        {
            return false;
        }

        if (told < MaxMergesTold)
        {
            remarks.Add(ProblemCatalog.Make(ProblemCodes.MergedCells, new SourceLine(file, row), null,
                $"The cells {reference} are merged: what they show stands in {ends[0]} only, the others are blank."));
        }

        return true;
    }
}
