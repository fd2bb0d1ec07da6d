using System.Globalization;
using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>Fills in what <c>start</c> wrote, as a grower would.</summary>
internal static class FilledTemplates
{
    /// <summary>Adds the rows of a table to the file of a started folder, column by heading.</summary>
    internal static void FillFolder(string folder, string sound)
    {
        string target = Path.Combine(folder, Path.GetFileName(sound));
        string[] headings = File.ReadAllLines(target)[0].Split(',');
        string[][] rows = [.. File.ReadAllLines(sound).Select(line => line.Split(','))];
        File.AppendAllLines(target, rows.Skip(1).Select(row => string.Join(',', headings.Select(heading => Array.IndexOf(rows[0], heading) is >= 0 and var at && at < row.Length ? row[at] : ""))));
    }

    /// <summary>Adds the rows of a table to the sheet of a started workbook: numbers as numbers, the rest as text.</summary>
    internal static void FillWorkbook(string path, string sound)
    {
        using SpreadsheetDocument document = SpreadsheetDocument.Open(path, isEditable: true);
        Sheet sheet = document.WorkbookPart!.Workbook!.Descendants<Sheet>().Single(known => known.Name == Path.GetFileNameWithoutExtension(sound));
        SheetData data = ((WorksheetPart)document.WorkbookPart.GetPartById(sheet.Id!)).Worksheet!.GetFirstChild<SheetData>()!;
        Row[] rows = [.. data.Elements<Row>()];
        string[] headings = [.. rows[0].Elements<Cell>().Select(cell => cell.InnerText)];
        string[][] values = [.. PlainCsv.Read(File.ReadAllText(sound))];
        for (int i = 1; i < values.Length; i++)
        {
            for (int j = 0; j < values[i].Length; j++)
            {
                Cell cell = rows[i].Elements<Cell>().ElementAt(Array.IndexOf(headings, values[0][j]));
                cell.RemoveAllChildren();
                if (decimal.TryParse(values[i][j], NumberStyles.Float, CultureInfo.InvariantCulture, out _))
                {
                    cell.DataType = null;
                    cell.Append(new CellValue(values[i][j]));
                }
                else if (values[i][j].Length > 0)
                {
                    cell.DataType = CellValues.InlineString;
                    cell.Append(new InlineString(new Text(values[i][j])));
                }
            }
        }
    }
}
