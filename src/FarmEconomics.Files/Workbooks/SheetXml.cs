using System.Globalization;
using DocumentFormat.OpenXml;
using DocumentFormat.OpenXml.Spreadsheet;

namespace FarmEconomics.Files.Workbooks;

/// <summary>One sheet as the file format has it.</summary>
internal sealed class SheetXml(WorkbookSheet sheet, WorkbookStyles styles, bool selected)
{
    private const double Narrowest = 8;
    private const double Widest = 60;
    private const double LineHeight = 15;
    private const double CharactersPerWidth = 1.15;

    private double[] widths = [];

    /// <summary>Cells with a note, in reading order.</summary>
    internal List<(string Cell, int Row, int Column, string Text)> Notes { get; } = [];

    internal Worksheet Make()
    {
        Worksheet xml = new(new SheetProperties(new PageSetupProperties { FitToPage = true }), View());
        widths = Widths();
        if (widths.Length > 0)
        {
            xml.Append(
                new Columns(
                    widths.Select((width, i) => new Column { Min = (uint)i + 1, Max = (uint)i + 1, Width = width, CustomWidth = true })
                )
            );
        }

        xml.Append(new SheetData(sheet.Rows.Select((cells, i) => RowOf(cells, i + 1))));
        if (sheet.Choices.Count > 0)
        {
            xml.Append(new DataValidations(sheet.Choices.Select(ChoiceOf)) { Count = (uint)sheet.Choices.Count });
        }

        xml.Append(
            new PageMargins
            {
                Left = 0.5,
                Right = 0.5,
                Top = 0.6,
                Bottom = 0.6,
                Header = 0.3,
                Footer = 0.3,
            }
        );
        xml.Append(
            new PageSetup
            {
                Orientation = sheet.Landscape ? OrientationValues.Landscape : OrientationValues.Portrait,
                FitToWidth = 1,
                FitToHeight = 0,
            }
        );
        return xml;
    }

    private SheetViews View()
    {
        SheetView view = new() { WorkbookViewId = 0, TabSelected = selected };
        if (sheet.FrozenRows > 0)
        {
            view.Append(
                new Pane
                {
                    VerticalSplit = sheet.FrozenRows,
                    TopLeftCell = WorkbookSheet.At(0, sheet.FrozenRows + 1),
                    ActivePane = PaneValues.BottomLeft,
                    State = PaneStateValues.Frozen,
                }
            );
        }

        return new SheetViews(view);
    }

    private double[] Widths()
    {
        int columns = sheet.Rows.Count == 0 ? 0 : sheet.Rows.Max(row => row.Count);
        double[] found = new double[Math.Max(columns, sheet.Widths.Count)];
        for (int i = 0; i < found.Length; i++)
        {
            found[i] = i < sheet.Widths.Count ? sheet.Widths[i] : Math.Clamp(Fit(i) + 2, Narrowest, Widest);
        }

        return found;
    }

    // Not every program fits a row to its wrapped text when it opens the file, so the height is given.
    private int LinesOf(WorkbookCell cell, int column) => cell is { Style.Wrap: true, Value: string text } && column < widths.Length
        ? Math.Max(1, text.Split('\n').Sum(line => (int)Math.Ceiling(Math.Max(1, line.Length) / (widths[column] * CharactersPerWidth))))
        : 1;

    // Titles, remarks and headings don't widen a column: they overflow or wrap.
    private double Fit(int column) => sheet.Rows.Where(row => column < row.Count).Select(row => row[column]).Max(cell => cell.Value switch
    {
        string text when cell.Style is { Size: not null } or { Italic: true } || text.Length == 0 => 0,
        string text when cell.Style is { LineBelow: true } => text.Split(' ').Max(word => word.Length),
        string text => text.Length,
        decimal number => Math.Abs(number).ToString("#,##0.00", CultureInfo.InvariantCulture).Length + 1,
        DateOnly => 10,
        _ => 0,
    });

    private Row RowOf(IReadOnlyList<WorkbookCell> cells, int number)
    {
        Row row = new() { RowIndex = (uint)number };
        int lines = cells.Count == 0 ? 1 : cells.Select(LinesOf).Max();
        if (lines > 1)
        {
            row.Height = lines * LineHeight;
            row.CustomHeight = true;
        }

        for (int i = 0; i < cells.Count; i++)
        {
            WorkbookCell cell = cells[i];
            if (cell.Note is { } note)
            {
                Notes.Add((WorkbookSheet.At(i, number), number, i, WorkbookText.Clean(note)));
            }

            if (cell.Value is not null || cell.Style is not null || cell.FormulaText is not null)
            {
                row.Append(CellOf(cell, WorkbookSheet.At(i, number)));
            }
        }

        return row;
    }

    private Cell CellOf(WorkbookCell cell, string name)
    {
        bool quoted = cell.FormulaText is null && cell.Value is string text && WorkbookText.LooksLikeFormula(text);
        Cell xml = new() { CellReference = name, StyleIndex = styles.Index(cell.Style, quoted) };
        if (cell.FormulaText is { } formula)
        {
            xml.Append(new CellFormula(formula));
        }

        switch (cell.Value)
        {
            case string words when cell.FormulaText is null:
                xml.DataType = CellValues.InlineString;
                xml.Append(new InlineString(new Text(WorkbookText.Clean(words)) { Space = SpaceProcessingModeValues.Preserve }));
                break;
            case string result:
                xml.DataType = CellValues.String;
                xml.Append(new CellValue(WorkbookText.Clean(result)));
                break;
            case decimal number:
                xml.Append(new CellValue(WorkbookText.Of(number)));
                break;
            case DateOnly day:
                xml.Append(new CellValue(WorkbookText.Of(day)));
                break;
            case bool yes:
                xml.DataType = CellValues.Boolean;
                xml.Append(new CellValue(yes ? "1" : "0"));
                break;
            default:
                break;
        }

        return xml;
    }

    private static DataValidation ChoiceOf(WorkbookChoice choice) =>
        new(
            new Formula1(
                choice.Source ?? $"\"{WorkbookText.Clean(string.Join(',', choice.Words)).Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            )
        )
        {
            Type = DataValidationValues.List,
            AllowBlank = true,
            ShowErrorMessage = true,
            ErrorStyle = choice.Strict ? DataValidationErrorStyleValues.Stop : DataValidationErrorStyleValues.Warning,
            SequenceOfReferences = new ListValue<StringValue>([choice.Range]),
        };
}
