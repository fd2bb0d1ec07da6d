using System.IO.Compression;
using FarmEconomics.Files;
using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;
using FarmEconomics.Files.Workbooks;
using FarmEconomics.Records;
using FarmEconomics.Tests.Files.Workbooks;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>A till's or a bank's workbook as the source of an import.</summary>
public class WorkbookImportTests
{
    private static readonly string Heads = string.Concat(new[] { "Day", "Item", "Count", "Paid" }.Select(TestWorkbooks.Text));

    private const string Map = "import,table,column,source_column,constant,when,becomes,format\n"
        + "till,sales,date,Day,,,,\ntill,sales,crop,Item,,,,\ntill,sales,channel,,market,,,\ntill,sales,quantity,Count,,,,FORMAT\ntill,sales,amount,Paid,,,,FORMAT\n";

    [Theory]
    [InlineData("")]
    [InlineData("decimal-comma")]
    public void Apply_SheetWithTitleAbove_AddsEachRowWithSheetAndRow(string format)
    {
        (string farm, string map) = Farm(format);
        string till = Till();

        ImportPlan plan = RecordsImport.Plan(till, "sales", map, farm);
        plan.Apply();
        FarmFolder opened = FarmFolder.Open(farm);
        ImportPlan again = RecordsImport.Plan(till, "sales", map, farm);

        Assert.Equal("till.xlsx!Days", plan.Source);
        Assert.Equal(["2025-05-17 lettuce market 1.234 4.50", "2025-05-18 kale market 2 5.25"], plan.Rows.Select(row => string.Join(' ', row.Fields)));
        Assert.Equal([4, 6], plan.Rows.Select(row => row.Line));
        Assert.Equal(0, opened.ErrorCount);
        Assert.Equal(1.234m, opened.Reading.Tables.Sales.Single(row => row.Amount == 4.50m).Quantity);
        Assert.Contains("till.xlsx!Days,6,", File.ReadAllText(Path.Combine(farm, "sales.till.csv")), StringComparison.Ordinal);
        Assert.Empty(again.Rows);
        Assert.Equal([4, 6], again.AlreadyThere);
    }

    [Fact]
    public void Plan_NamedSheet_IsReadAndAMissingOneNamesThoseThereAre()
    {
        (string farm, string map) = Farm("");

        ImportPlan plan = RecordsImport.Plan(Till(), "sales", map, farm, "other");

        Assert.Equal("2025-06-01 kale market 1 3.00", string.Join(' ', Assert.Single(plan.Rows).Fields));
        Assert.Equal("sales.till-other.csv", plan.FileName);
        Assert.Contains("has no sheet \"May\"; it has Days, Other", Assert.Throws<ArgumentException>(() => RecordsImport.Plan(Till(), "sales", map, farm, "May")).Message, StringComparison.Ordinal);
        Assert.Contains("leave --sheet out", Assert.Throws<ArgumentException>(() => RecordsImport.Plan(map, "sales", map, farm, "May")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_FormulaWithoutValue_IsAnErrorOfItsRow()
    {
        (string farm, string map) = Farm("");
        string till = TestWorkbooks.Raw(("Days", "<sheetData><row>" + Heads
            + "</row><row>" + TestWorkbooks.Text("2025-05-17") + TestWorkbooks.Text("kale") + "<c><v>1</v></c><c><f>1+2</f></c></row></sheetData>", "visible"));

        ImportPlan plan = RecordsImport.Plan(till, "sales", map, farm);

        Assert.False(plan.CanApply);
        Assert.Contains(plan.Problems, problem => problem.Severity == Severity.Error && problem.Message.Contains("Cell D2 holds a formula whose value", StringComparison.Ordinal) && problem.Source.Line == 2);
    }

    /// <summary>
    /// May 17, 2025 is day 45794 counted from 1900 and 44332 from 1904 (workbookPr, date1904: ECMA-376, part 1, 18.2.28; 1,462 days
    /// apart). A cell without the look of a day is a day where the mapping says so.
    /// </summary>
    [Theory]
    [InlineData(45794, false)]
    [InlineData(44332, true)]
    public void Plan_DaysAsNumbers_AreOfTheWorkbooksCalendar(int day, bool from1904)
    {
        (string farm, string map) = Farm("");
        File.WriteAllText(map, File.ReadAllText(map).Replace("date,Day,,,,", "date,Day,,,,serial"));
        string till = TestWorkbooks.Raw(("Days", "<sheetData><row>" + Heads
            + $"</row><row><c><v>{day}</v></c>" + TestWorkbooks.Text("kale") + "<c><v>1</v></c><c><v>3</v></c></row></sheetData>",
            "visible"));
        if (from1904)
        {
            CountFrom1904(till);
        }

        Assert.Equal(
            "2025-05-17 kale market 1 3.00",
            string.Join(' ', Assert.Single(RecordsImport.Plan(till, "sales", map, farm).Rows).Fields));
        string note = ImportDraft.Of(new ImportRequest(till) { Table = "sales" }).Lines.Single(line => line.Column == "date").Note;
        Assert.Equal(from1904, note.Contains("from 1904", StringComparison.Ordinal));
        Assert.Equal(!from1904, note.Contains("May 17, 2025", StringComparison.Ordinal));
    }

    private static void CountFrom1904(string workbook)
    {
        using ZipArchive zip = ZipFile.Open(workbook, ZipArchiveMode.Update);
        ZipArchiveEntry entry = zip.GetEntry("xl/workbook.xml")!;
        string xml;
        using (StreamReader reader = new(entry.Open()))
        {
            xml = reader.ReadToEnd();
        }

        entry.Delete();
        using StreamWriter writer = new(zip.CreateEntry("xl/workbook.xml").Open());
        writer.Write(xml.Replace("<sheets>", "<workbookPr date1904=\"1\"/><sheets>"));
    }

    [Fact]
    public void Plan_IntoAWorkbook_SaysWhatToDo()
    {
        (string _, string map) = Farm("");
        string records = Till();

        string said = Assert.Throws<ArgumentException>(() => RecordsImport.Plan(Till(), "sales", map, records)).Message;

        Assert.Contains("Save each of its sheets as CSV", said, StringComparison.Ordinal);
        Assert.Contains("copy them into the sheet sales yourself", said, StringComparison.Ordinal);
        Assert.Contains("There is no records folder", Assert.Throws<ArgumentException>(() => RecordsImport.Plan(records, "sales", map, records + "x")).Message, StringComparison.Ordinal);
    }

    private static (string Farm, string Map) Farm(string format)
    {
        string folder = TestFolders.MakeBad("sound");
        string map = Path.Combine(TestFolders.Make(), "map.csv");
        File.WriteAllText(map, Map.Replace("FORMAT", format));
        return (folder, map);
    }

    private static string Till()
    {
        var workbook = new Workbook();
        WorkbookSheet days = workbook.Sheet("Days");
        days.Row(WorkbookCell.Text("Till of the stand, May"));
        days.Row();
        days.Row(WorkbookCell.Text("Day"), WorkbookCell.Text("Item"), WorkbookCell.Text("Note"), WorkbookCell.Text("Count"), WorkbookCell.Text("Paid"));
        days.Row(WorkbookCell.Date(new DateOnly(2025, 5, 17)), WorkbookCell.Text("lettuce"), WorkbookCell.Text("two\nlines"), WorkbookCell.Number(1.234m), WorkbookCell.Number(4.5m));
        days.Row();
        days.Row(WorkbookCell.Date(new DateOnly(2025, 5, 18)), WorkbookCell.Text("kale"), WorkbookCell.Text(null), WorkbookCell.Number(2m), WorkbookCell.Number(5.25m));
        WorkbookSheet other = workbook.Sheet("Other");
        other.Row(WorkbookCell.Text("Day"), WorkbookCell.Text("Item"), WorkbookCell.Text("Count"), WorkbookCell.Text("Paid"));
        other.Row(WorkbookCell.Text("2025-06-01"), WorkbookCell.Text("kale"), WorkbookCell.Number(1m), WorkbookCell.Number(3m));
        string path = Path.Combine(TestFolders.Make(), "till.xlsx");
        WorkbookWriter.Write(workbook, path);
        return path;
    }
}
