using System.IO.Compression;
using FarmEconomics.Files;
using FarmEconomics.Files.Importing;
using Xunit;

namespace FarmEconomics.Tests.Files.Workbooks;

/// <summary>A spreadsheet keeps 7:30 as 0.3125 of a day, and 6.5% as 0.065: what the cell shows is what is read.</summary>
public class TimeCellTests
{
    // Numbers of the formats in the list below.
    private static readonly string[] Formats =
    [
        "General", "h:mm", "[h]:mm", "h:mm AM/PM", "hh:mm:ss", "[$-409]h:mm\\ AM/PM;@",
        "yyyy-mm-dd hh:mm", "0.00\" h\"", "[Red]0.00", "#,##0.00\\ \\h", "0.0%", "0\\%",
    ];

    [Theory]
    [InlineData("0.3125", "h:mm", "7.5")]
    [InlineData("0.3125", "[h]:mm", "7.5")]
    [InlineData("1.3125", "[h]:mm", "31.5")]
    [InlineData("0.3125", "hh:mm:ss", "7.5")]
    [InlineData("0.30555555555555558", "h:mm", "7.3333333333")]
    [InlineData("0.3125", "General", "0.3125")]
    [InlineData("7.5", "General", "7.5")]
    [InlineData("7.5", "0.00\" h\"", "7.5")]
    [InlineData("7.5", "[Red]0.00", "7.5")]
    [InlineData("7.5", "#,##0.00\\ \\h", "7.5")]
    [InlineData("1.3125", "h:mm", null)]
    [InlineData("0.3125", "h:mm AM/PM", null)]
    [InlineData("0.3125", "[$-409]h:mm\\ AM/PM;@", null)]
    [InlineData("45838.3125", "yyyy-mm-dd hh:mm", null)]
    public void Read_CellOfHours_CountsAsItIsShown(string value, string format, string? hours)
    {
        RecordsReading reading = RecordsFolder.Read(Book("labor", ["date", "worker", "hours", "task"], Cell(value, format)));

        Assert.Equal(hours is null ? [] : [decimal.Parse(hours)], reading.Tables.Labor.Select(row => row.Hours));
        Assert.Equal(hours is null ? ["E111"] : [], reading.Problems.Where(problem => problem.Source.Line > 0).Select(problem => problem.Code));
    }

    [Fact]
    public void Read_TextTimes_AreHours()
    {
        string folder = TestFolders.Make(("labor.csv", "date,worker,hours,task\n2025-05-10,Ada,7:30,harvest\n2025-05-11,Ada,7h30,harvest\n2025-05-12,Ada,7 h 30 min,harvest\n2025-05-13,Ada,7:30 PM,harvest\n"));

        RecordsReading reading = RecordsFolder.Read(folder);

        Assert.Equal([7.5m, 7.5m, 7.5m], reading.Tables.Labor.Select(row => row.Hours));
        Assert.Contains("7:30", reading.Problems.Single(problem => problem.Code == "E111").Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.065", "0.0%", "6.5")]
    [InlineData("6.5000000000000002E-2", "0.0%", "6.5")]
    [InlineData("6.5", "General", "6.5")]
    [InlineData("6.5", "0\\%", "6.5")]
    public void Read_CellOfAPercentage_CountsAsItIsShown(string value, string format, string percent)
    {
        RecordsReading reading = RecordsFolder.Read(BookOf("channels", ["channel", "kind", "fee_percent"],
            TestWorkbooks.Text("stand") + TestWorkbooks.Text("market") + Cell(value, format)));

        Assert.Equal(decimal.Parse(percent), Assert.Single(reading.Tables.Channels).FeePercent);
    }

    [Fact]
    public void Read_PercentageAsASetting_CountsAsItIsShown() =>
        Assert.Equal(4.5m, RecordsFolder.Read(BookOf("farm", ["setting", "value"],
            TestWorkbooks.Text("interest_percent") + Cell("0.045", "0.0%"))).FarmSettings.InterestPercent);

    [Fact]
    public void Read_TimeInAColumnOfQuantities_IsAnError()
    {
        RecordsReading reading = RecordsFolder.Read(Book("use", ["pool", "user", "quantity"], Cell("0.3125", "h:mm")));

        Assert.Empty(reading.Tables.Use);
        Assert.Equal("E111", Assert.Single(reading.Problems, problem => problem.Source.Line > 0).Code);
    }

    [Theory]
    [InlineData("0.3125", "h:mm", "7.5")]
    [InlineData("1.3125", "[h]:mm", "31.5")]
    [InlineData("0.3125", "h:mm AM/PM", null)]
    public void Import_TimeSheetOfAnotherProgram_GivesHours(string value, string format, string? hours)
    {
        string book = Book("Sheet1", ["Day", "Who", "Worked", "What"], Cell(value, format));
        string map = Path.Combine(TestFolders.Make(("map.csv", "import,table,column,source_column,constant,format\nsheet,labor,date,Day,,\nsheet,labor,worker,Who,,\nsheet,labor,hours,Worked,,\nsheet,labor,task,What,,\n")), "map.csv");

        ImportPlan plan = RecordsImport.Plan(book, "labor", map, null);

        Assert.Equal(hours is null ? ["E111"] : [], plan.Problems.Select(problem => problem.Code));
        Assert.True(hours is null || Assert.Single(plan.Rows).Fields.Contains(hours), string.Join(' ', plan.Rows.SelectMany(row => row.Fields)));
    }

    private static string Cell(string value, string format) => $"<c s=\"{Array.IndexOf(Formats, format)}\"><v>{value}</v></c>";

    // The hours, or the quantity, stand third.
    private static string Book(string sheet, string[] headings, string third) => BookOf(sheet, headings,
        TestWorkbooks.Text("2025-05-10") + TestWorkbooks.Text("Ada") + third + (headings.Length > 3 ? TestWorkbooks.Text("harvest") : ""));

    private static string BookOf(string sheet, string[] headings, string cells)
    {
        string row = $"<row>{cells}</row>";
        string head = TestWorkbooks.Rows(headings);
        string path = TestWorkbooks.Raw((sheet, head.Replace("</sheetData>", row + "</sheetData>", StringComparison.Ordinal), "visible"));
        using ZipArchive zip = ZipFile.Open(path, ZipArchiveMode.Update);
        zip.GetEntry("xl/styles.xml")!.Delete();
        using StreamWriter writer = new(zip.CreateEntry("xl/styles.xml").Open());
        writer.Write("<styleSheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><numFmts>");
        writer.Write(string.Concat(Formats.Select((format, i) => $"<numFmt numFmtId=\"{200 + i}\" formatCode=\"{System.Security.SecurityElement.Escape(format)}\"/>")));
        writer.Write($"</numFmts><cellXfs>{string.Concat(Formats.Select((_, i) => $"<xf numFmtId=\"{(i == 0 ? 0 : 200 + i)}\"/>"))}</cellXfs></styleSheet>");
        return path;
    }
}
