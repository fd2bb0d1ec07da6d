using DocumentFormat.OpenXml.Packaging;
using DocumentFormat.OpenXml.Spreadsheet;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Files.Start;
using FarmEconomics.Records.Schema;
using Xunit;

namespace FarmEconomics.Tests.Files.Start;

public class RecordsTemplateTests
{
    [Fact]
    public void Write_FilledInByScript_FolderAndWorkbookGiveTheSameReview()
    {
        string parent = TestFolders.Make();
        (string folder, string workbook) = (Path.Combine(parent, "farm"), Path.Combine(parent, "farm.xlsx"));
        RecordsTemplate.Write(folder, minimal: false);
        RecordsTemplate.Write(workbook, minimal: false);
        foreach (string sound in Directory.EnumerateFiles(Path.Combine(TestFolders.BadRecords, "sound"), "*.csv"))
        {
            FillFolder(folder, sound);
            FillWorkbook(workbook, sound);
        }

        FarmFolder fromFolder = FarmFolder.Open(folder);
        FarmFolder fromWorkbook = FarmFolder.Open(workbook);

        Assert.Equal(0, fromFolder.ErrorCount);
        Assert.Equal(fromFolder.Problems.Select(problem => problem.Code), fromWorkbook.Problems.Select(problem => problem.Code));
        Assert.Equal(Tables(fromFolder), Tables(fromWorkbook));
    }

    [Fact]
    public void Write_Minimal_HoldsTheFiveTablesAndNothingToComplainOf()
    {
        string folder = Path.Combine(TestFolders.Make(), "farm");
        RecordsTemplate.Write(folder, minimal: true);

        Assert.Equal(["beds.csv", "crops.csv", "harvests.csv", "plantings.csv", "sales.csv"], Directory.EnumerateFiles(folder, "*.csv").Select(Path.GetFileName).Order());
        Assert.Empty(FarmFolder.Open(folder).Problems);
        Assert.Empty(FarmFolder.Open(RecordsTemplate.Write(Path.Combine(folder, "new.xlsx"), minimal: false)[0]).Problems);
    }

    [Fact]
    public void Write_WhereSomethingStands_ChangesNothing()
    {
        string folder = TestFolders.Make(("crops.csv", "mine"), ("mine.xlsx", "mine"));

        Assert.Throws<IOException>(() => RecordsTemplate.Write(folder, minimal: true));
        Assert.Throws<IOException>(() => RecordsTemplate.Write(Path.Combine(folder, "mine.xlsx"), minimal: true));
        Assert.Throws<IOException>(() => RecordsTemplate.Write(Path.Combine(folder, "crops.csv"), minimal: true));

        Assert.Equal(["crops.csv", "mine.xlsx"], Directory.EnumerateFiles(folder).Select(Path.GetFileName).Order());
        Assert.All(Directory.EnumerateFiles(folder), file => Assert.Equal("mine", File.ReadAllText(file)));
    }

    [Fact]
    public void Examples_OfEveryColumn_CanBeRead()
    {
        foreach (TableSchema table in RecordSchema.Tables)
        {
            string[] examples = [.. table.Columns.Select(column => ColumnExamples.Of(table, column))];
            string text = string.Join(',', table.Columns.Select(column => column.Name)) + "\n" + string.Join(',', examples) + "\n";

            RecordsReading reading = RecordsFolder.Read(TestFolders.Make(($"{table.Name}.csv", text)));

            Assert.DoesNotContain(reading.Problems, problem => problem.Source.File == $"{table.Name}.csv");
            Assert.Equal(1, reading.Files.Single().RowsRead);
        }
    }

    private static void FillFolder(string folder, string sound)
    {
        string target = Path.Combine(folder, Path.GetFileName(sound));
        string[] headings = File.ReadAllLines(target)[0].Split(',');
        string[][] rows = [.. File.ReadAllLines(sound).Select(line => line.Split(','))];
        File.AppendAllLines(target, rows.Skip(1).Select(row => string.Join(',', headings.Select(heading => Array.IndexOf(rows[0], heading) is >= 0 and var at && at < row.Length ? row[at] : ""))));
    }

    private static void FillWorkbook(string path, string sound)
    {
        using SpreadsheetDocument document = SpreadsheetDocument.Open(path, isEditable: true);
        Sheet sheet = document.WorkbookPart!.Workbook!.Descendants<Sheet>().Single(known => known.Name == Path.GetFileNameWithoutExtension(sound));
        SheetData data = ((WorksheetPart)document.WorkbookPart.GetPartById(sheet.Id!)).Worksheet!.GetFirstChild<SheetData>()!;
        Row[] rows = [.. data.Elements<Row>()];
        string[] headings = [.. rows[0].Elements<Cell>().Select(cell => cell.InnerText)];
        string[][] values = [.. File.ReadAllLines(sound).Select(line => line.Split(','))];
        for (int i = 1; i < values.Length; i++)
        {
            for (int j = 0; j < values[i].Length; j++)
            {
                Cell cell = rows[i].Elements<Cell>().ElementAt(Array.IndexOf(headings, values[0][j]));
                cell.RemoveAllChildren();
                if (decimal.TryParse(values[i][j], out _))
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

    private static Dictionary<string, string> Tables(FarmFolder farm)
    {
        string folder = TestFolders.Make();
        ResultTables.Write(farm.Review!.Season(2025), [], folder);
        return Directory.EnumerateFiles(folder).ToDictionary(path => Path.GetFileName(path)!, File.ReadAllText);
    }
}
