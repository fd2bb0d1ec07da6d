using System.Globalization;
using System.Text.RegularExpressions;
using FarmEconomics.Files.Workbooks;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Funding;

/// <summary>
/// A table of the write-up with the formulas its workbook sheet carries. In a formula <c>{r,c}</c> is the cell of a row and a column of the
/// table, from 0, and <c>{Name!r,c}</c> that of another sheet's table; record text never gets into one.
/// </summary>
public sealed partial class FundingSheet
{
    // Title, a blank-free heading row, then the rows.
    private const int FirstRow = 3;
    private readonly Dictionary<(int Row, int Column), string> formulas = [];

    /// <summary>Pairs a table with the sheet it becomes.</summary>
    public FundingSheet(string name, ReportTable table)
    {
        Name = name;
        Table = table;
    }

    /// <summary>The sheet's name.</summary>
    public string Name { get; }

    /// <summary>The table.</summary>
    public ReportTable Table { get; }

    /// <summary>Printed across.</summary>
    public bool Landscape { get; init; }

    /// <summary>Makes a number of the table live.</summary>
    public FundingSheet Live(int row, int column, string formula)
    {
        formulas[(row, column)] = formula;
        return this;
    }

    /// <summary>Makes the last row added live in a column.</summary>
    internal FundingSheet LiveLast(int column, string formula) => Live(Table.Rows.Count - 1, column, formula);

    /// <summary>Makes the columns of a row, first to last, live sums of rows, first to last.</summary>
    internal FundingSheet LiveSums(int row, (int First, int Last) columns, (int First, int Last) rows)
    {
        for (int i = columns.First; i <= columns.Last; i++)
        {
            Live(row, i, $"SUM({{{rows.First},{i}}}:{{{rows.Last},{i}}})");
        }

        return this;
    }

    /// <summary>Writes the sheet into a workbook.</summary>
    public void WriteTo(Workbook workbook)
    {
        ArgumentNullException.ThrowIfNull(workbook);
        WorkbookSheet sheet = workbook.Sheet(Name);
        sheet.Landscape = Landscape;
        sheet.Row(WorkbookCell.Text(Table.Title, WorkbookStyle.Title));
        sheet.HeadingRow([.. Table.Columns.Select(column => column.FullHeading)]);
        for (int row = 0; row < Table.Rows.Count; row++)
        {
            int at = row;
            sheet.Row([
                .. Table.Rows[row].Select(
                    (cell, i) => CellOf(cell, Table.Columns[i], formulas.GetValueOrDefault((at, i)), Table.IsSum(at))
                ),
            ]);
        }

        if (Table.TotalRow is { } totals)
        {
            sheet.Row([
                .. totals.Select(
                    (cell, i) => CellOf(cell, Table.Columns[i], formulas.GetValueOrDefault((Table.Rows.Count, i)), total: true)
                ),
            ]);
        }

        foreach (string note in Table.Notes)
        {
            sheet.Row(WorkbookCell.Text(note, WorkbookStyle.Remark));
        }
    }

    private static WorkbookCell CellOf(ReportCell cell, ReportColumn column, string? formula, bool total)
    {
        WorkbookCell made = cell.Value switch
        {
            decimal number when formula is not null => WorkbookCell.Formula(Resolve(formula), number, StyleOf(column.Look, total)),
            decimal number => WorkbookCell.Number(number, StyleOf(column.Look, total)),
            DateOnly day => WorkbookCell.Date(day),
            string text => WorkbookCell.Text(
                text,
                text.Length > 60 ? WorkbookStyle.LongText
                    : total ? WorkbookStyle.Text with { Name = "Words total", Bold = true, LineAbove = true }
                    : WorkbookStyle.Text
            ),
            _ => WorkbookCell.Text(cell.Reason is null ? null : Looks.NotAvailable, WorkbookStyle.Remark),
        };
        string? why = cell.Reason ?? cell.Mark;
        return why is null ? made : made with { Note = why };
    }

    private static WorkbookStyle StyleOf(Look look, bool total) => look switch
    {
        Look.Money or Look.WholeMoney or Look.Rate => total ? WorkbookStyle.MoneyTotal : WorkbookStyle.Money,
        Look.Percent => WorkbookStyle.Percent,
        Look.Count => WorkbookStyle.Count,
        Look.Year => WorkbookStyle.Year,
        _ => WorkbookStyle.Number,
    };

    private static string Resolve(string formula) =>
        Place()
            .Replace(formula, match =>
            {
                string cell = WorkbookSheet.At(
                    int.Parse(match.Groups["column"].Value, CultureInfo.InvariantCulture),
                    FirstRow + int.Parse(match.Groups["row"].Value, CultureInfo.InvariantCulture)
                );
                return match.Groups["sheet"].Success ? $"{Workbook.Quoted(match.Groups["sheet"].Value)}!{cell}" : cell;
            });

    [GeneratedRegex(@"\{(?:(?<sheet>[^!{}]+)!)?(?<row>\d+),(?<column>\d+)\}")]
    private static partial Regex Place();
}
