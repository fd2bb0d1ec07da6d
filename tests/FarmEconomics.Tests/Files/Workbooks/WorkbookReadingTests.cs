using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Records;
using Xunit;
using static FarmEconomics.Tests.Files.Workbooks.TestWorkbooks;

namespace FarmEconomics.Tests.Files.Workbooks;

public class WorkbookReadingTests
{
    private const string Heading = "<row r=\"1\"><c t=\"inlineStr\"><is><t>date</t></is></c><c t=\"inlineStr\"><is><t>crop</t></is></c><c t=\"inlineStr\"><is><t>channel</t></is></c><c t=\"inlineStr\"><is><t>quantity</t></is></c><c t=\"inlineStr\"><is><t>amount</t></is></c></row>";

    [Fact]
    public void Open_DemoFarmAsWorkbook_GivesTheSameTablesAsTheFolder()
    {
        string demo = Path.Combine(TestFolders.Repository, "demo-data");
        FarmFolder folder = FarmFolder.Open(demo);
        FarmFolder workbook = FarmFolder.Open(FromFolder(demo));

        Assert.Equal(Codes(folder), Codes(workbook));
        Assert.Equal(folder.Reading.Files.Select(file => (file.Table, file.RowsRead)), workbook.Reading.Files.Select(file => (file.Table, file.RowsRead)));
        Assert.Equal(Results(folder, 2025), Results(workbook, 2025));
    }

    [Fact]
    public void Read_FaultInASheet_IsToldWithSheetRowAndColumn()
    {
        string path = Raw(("sales", $"<sheetData>{Heading}<row r=\"5\">{Text("2025-05-10")}{Text("lettuce")}{Text("market")}{Text("many")}</row></sheetData>", "visible"));

        Problem problem = Assert.Single(ProblemLocator.Locate(path, RecordsFolder.Read(path).Problems.Where(problem => problem.Source.Line > 0)));

        Assert.Equal(("E111", "records.xlsx!sales", 5, 4), (problem.Code, problem.Source.File, problem.Source.Line, problem.Position));
        Assert.StartsWith($"{Path.GetDirectoryName(path)}{Path.DirectorySeparatorChar}records.xlsx!sales:5:D: error E111: ", ProblemText.Format(problem, Notation.Default, path), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("<c><v>45787</v></c>")]
    [InlineData("<c s=\"1\"><v>45787</v></c>")]
    [InlineData("<c s=\"2\"><v>45787</v></c>")]
    [InlineData("<c t=\"d\"><v>2025-05-10T00:00:00</v></c>")]
    [InlineData("<c t=\"str\"><f>TEXT(1,2)</f><v>2025-05-10</v></c>")]
    [InlineData("<c t=\"inlineStr\"><is><r><t>2025-</t></r><r><t>05-10</t></r></is></c>")]
    public void Read_DateHoweverTheSheetHoldsIt_IsTheDay(string cell)
    {
        SaleRow row = Assert.Single(Sales($"<row>{cell}{Text("lettuce")}{Text("market")}<c><v>40</v></c><c><f>D2*1.1</f><v>44.000000000000007</v></c></row>").Tables.Sales);

        Assert.Equal((new DateOnly(2025, 5, 10), 40m, 44m), (row.Date, row.Quantity, row.Amount));
    }

    [Fact]
    public void Read_RowsThatAreNoRecords_AreNamedAndNotRead()
    {
        RecordsReading reading = RecordsFolder.Read(Raw(("Sales", "<sheetData>"
            + $"<row r=\"1\">{Text("Sales of the year")}</row>" + Heading.Replace("r=\"1\"", "r=\"3\"", StringComparison.Ordinal)
            + $"<row r=\"4\">{Text("2025-05-10")}{Text("lettuce")}{Text("market")}{Text("40")}{Text("$60.00")}</row>"
            + $"<row r=\"6\">{Text("Total")}<c r=\"E6\"><f>SUM(E4:E5)</f><v>60</v></c></row>"
            + $"<row r=\"8\">{Text("Prices from memory after June.")}</row></sheetData><mergeCells><mergeCell ref=\"A1:E1\"/></mergeCells>", "visible")));

        Assert.Equal(["W104 1", "W104 6", "W104 8"], reading.Problems.Where(problem => problem.Source.Line > 0).Select(problem => $"{problem.Code} {problem.Source.Line}"));
        Assert.Equal(60m, Assert.Single(reading.Tables.Sales).Amount);
        Assert.Equal(new FileCount("sales", "records.xlsx!Sales", 4, 1, 0) { RowsPassedOver = 3 }, reading.Files.Single());
    }

    [Fact]
    public void Read_RemarkBetweenRecords_StaysAnError()
    {
        RecordsReading reading = Sales($"<row>{Text("not sure about this one")}</row><row>{Text("2025-05-10")}{Text("lettuce")}{Text("market")}{Text("40")}</row>");

        Assert.Contains(reading.Problems, problem => problem.Code == "E114" && problem.Source.Line == 2);
        Assert.Single(reading.Tables.Sales);
    }

    [Fact]
    public void Read_CellsWithoutValue_AreErrorsOfTheirRow()
    {
        RecordsReading reading = Sales(
            $"<row>{Text("2025-05-10")}{Text("lettuce")}{Text("market")}<c><f>1+1</f></c></row>"
            + $"<row>{Text("2025-05-10")}{Text("lettuce")}{Text("market")}{Text("1")}<c t=\"e\"><f>1/0</f><v>#DIV/0!</v></c></row>");

        Assert.Equal(["E119 2 quantity", "E119 3 amount"], reading.Problems.Where(problem => problem.Source.Line > 0).Select(problem => $"{problem.Code} {problem.Source.Line} {problem.Column}"));
        Assert.Empty(reading.Tables.Sales);
        Assert.Equal(2, reading.Files.Single().RowsInError);
    }

    [Fact]
    public void Read_HiddenAndUnknownSheets_AreNamed()
    {
        RecordsReading reading = RecordsFolder.Read(Raw(("crops", Rows(["crop", "unit"], ["lettuce", "head"]), "hidden"), ("Scratch", Rows(["x"]), "visible"), ("about", Rows(["x"]), "visible")));

        Assert.Contains(reading.Problems, problem => problem.Code == "W105");
        Assert.Contains(reading.Problems, problem => problem.Code == "W102" && problem.Source.File == "records.xlsx!Scratch");
        Assert.DoesNotContain(reading.Problems, problem => problem.Source.File == "records.xlsx!about");
        Assert.Single(reading.Tables.Crops);
    }

    [Fact]
    public void Read_DecimalComma_HoldsForTextAndNumbers()
    {
        RecordsReading reading = RecordsFolder.Read(Raw(
            ("farm", $"<sheetData><row>{Text("setting")}{Text("value")}</row><row>{Text("owner_wage")}<c><v>18.5</v></c></row><row>{Text("decimal_mark")}{Text(",")}</row></sheetData>", "visible"),
            ("sales", $"<sheetData>{Heading}<row>{Text("2025-05-10")}{Text("lettuce")}{Text("market")}<c><v>2.5</v></c>{Text("1.234,50 €")}</row></sheetData>", "visible")));

        Assert.Equal(18.5m, reading.FarmSettings.OwnerWage);
        Assert.Equal((2.5m, 1234.5m), (reading.Tables.Sales[0].Quantity, reading.Tables.Sales[0].Amount));
        Assert.Equal(2, reading.Files.Single(file => file.Table == "farm").RowsRead);
    }

    private static RecordsReading Sales(string rows) => RecordsFolder.Read(Raw(("sales", $"<sheetData>{Heading}{rows}</sheetData>", "visible")));

    private static IEnumerable<string> Codes(FarmFolder farm) => farm.Problems.Select(problem => $"{problem.Code} {problem.Source.Line}").Order(StringComparer.Ordinal);

    private static Dictionary<string, string> Results(FarmFolder farm, int year)
    {
        string folder = TestFolders.Make();
        SeasonReview season = farm.Review!.Season(year);
        ResultTables.Write(season, [], folder);
        return Directory.EnumerateFiles(folder).ToDictionary(path => Path.GetFileName(path), File.ReadAllText);
    }
}
