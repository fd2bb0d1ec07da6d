using System.IO.Compression;
using System.Text;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Tests.Files.Workbooks;
using Xunit;

namespace FarmEconomics.Tests.Files;

/// <summary>Files no grower writes on purpose: each gives a clear problem, in bounded memory, and nothing of them is read in part.</summary>
public class RobustReadingTests
{
    private const string Heading = "date,crop,channel,quantity,amount\n";
    private const string Row = "2025-05-10,lettuce,market,40,60.00\n";
    private const long FewMegabytes = 64L << 20;

    [Fact]
    public void Read_FieldOfAHundredMegabytes_StopsEarlyAndTakesItsRowsBack()
    {
        string folder = TestFolders.Make(("sales.csv", Heading + Row + "2025-05-11,\""));
        using (StreamWriter writer = File.AppendText(Path.Combine(folder, "sales.csv")))
        {
            string block = new('x', 1 << 20);
            for (int i = 0; i < 100; i++)
            {
                writer.Write(block);
            }
        }

        AssertStopped("E109", folder);
    }

    [Fact]
    public void Read_UnclosedQuoteInALongFile_IsTold()
    {
        string folder = TestFolders.Make(("sales.csv", Heading + "2025-05-10,\"lettuce,market,40,60.00\n" + string.Concat(Enumerable.Repeat(Row, 200_000))));

        AssertStopped("E109", folder);
    }

    [Fact]
    public void Read_TenThousandColumns_TellsSomeAndCountsTheRest()
    {
        string headings = string.Concat(Enumerable.Range(0, 10_000).Select(i => $",extra {i}"));
        RecordsReading reading = RecordsFolder.Read(TestFolders.Make(("sales.csv", Heading.TrimEnd('\n') + headings + "\n" + Row)));

        Assert.Single(reading.Tables.Sales);
        Problem[] told = [.. reading.Problems.Where(problem => problem.Code == "W101")];
        Assert.Equal(51, told.Length);
        Assert.Contains(told, problem => problem.Message.Contains("9,950", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_NulBytesAndBytesThatAreNotUtf8_AreErrorsOfTheirRows()
    {
        string folder = TestFolders.Make();
        File.WriteAllBytes(Path.Combine(folder, "sales.csv"), [.. Encoding.UTF8.GetBytes(Heading), .. "2025-05-10,let\0tuce,market,40,60.00\n2025-05-10,let"u8, 0xFF, 0xC3, .. ",market,40,60.00\n"u8, .. Encoding.UTF8.GetBytes(Row)]);

        RecordsReading reading = RecordsFolder.Read(folder);

        Assert.Equal(["E104 2", "E104 3"], reading.Problems.Where(problem => problem.Source.Line > 0).Select(problem => $"{problem.Code} {problem.Source.Line}"));
        Assert.Single(reading.Tables.Sales);
    }

    [Fact]
    public void Read_FileFullOfNulBytes_IsTold()
    {
        string folder = TestFolders.Make();
        File.WriteAllBytes(Path.Combine(folder, "sales.csv"), new byte[3 << 20]);

        RecordsReading reading = RecordsFolder.Read(folder);

        Assert.Contains(reading.Problems, problem => problem.Source.File == "sales.csv" && problem.Severity == Severity.Error);
        Assert.Empty(reading.Tables.Sales);
    }

    [Fact]
    public void Read_LinkToAFile_IsReadAndLinkToNothingIsTold()
    {
        string elsewhere = TestFolders.Make(("kept.csv", Heading + Row));
        string folder = TestFolders.Make();
        File.CreateSymbolicLink(Path.Combine(folder, "sales.csv"), Path.Combine(elsewhere, "kept.csv"));
        File.CreateSymbolicLink(Path.Combine(folder, "crops.csv"), Path.Combine(elsewhere, "gone.csv"));
        File.CreateSymbolicLink(Path.Combine(folder, "loop.csv"), Path.Combine(folder, "loop.csv"));

        RecordsReading reading = RecordsFolder.Read(folder);

        Assert.Single(reading.Tables.Sales);
        Assert.Contains(reading.Problems, problem => problem.Code == "E131" && problem.Source.File == "crops.csv");
    }

    [Fact]
    public void Read_FileWithoutTheRight_IsTold()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || Environment.UserName == "root", "The rights of files don't hold for this user.");
        string folder = TestFolders.Make(("sales.csv", Heading + Row));
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(Path.Combine(folder, "sales.csv"), UnixFileMode.None);
        }

        Assert.Contains(RecordsFolder.Read(folder).Problems, problem => problem.Code == "E131" && problem.Message.Contains("no right", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_FileChangedMeanwhile_IsTakenBack()
    {
        string folder = TestFolders.Make(("sales.csv", Heading + Row));
        RecordsReading reading = RecordsFolder.Read(folder, progress: new Meanwhile(file => File.AppendAllText(Path.Combine(folder, file.File), Row)));

        Assert.Contains(reading.Problems, problem => problem.Code == "E132");
        Assert.Empty(reading.Tables.Sales);
        Assert.Equal(new FileCount("sales", "sales.csv", 1, 0, 1), reading.Files.Single());
    }

    [Theory]
    [InlineData("xl/s0.xml")]
    [InlineData("xl/sharedStrings.xml")]
    public void Read_WorkbookThatUnpacksToTooMuch_IsRefusedBeforeItIsUnpacked(string part)
    {
        string path = TestWorkbooks.Raw(("sales", TestWorkbooks.Rows(["date"]), "visible"));
        using (ZipArchive zip = ZipFile.Open(path, ZipArchiveMode.Update))
        {
            zip.GetEntry(part)?.Delete();
            using Stream stream = zip.CreateEntry(part, CompressionLevel.Optimal).Open();
            byte[] block = new byte[1 << 20];
            for (int i = 0; i < 300; i++)
            {
                stream.Write(block);
            }
        }

        long before = GC.GetAllocatedBytesForCurrentThread();
        IOException fault = Assert.Throws<IOException>(() => RecordsFolder.Read(path));

        Assert.Contains("unpack", fault.Message, StringComparison.Ordinal);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, FewMegabytes);
    }

    [Fact]
    public void Read_WorkbookWithMillionsOfEmptyTexts_IsRefusedBeforeMemoryGoes()
    {
        string path = TestWorkbooks.Raw(("sales", TestWorkbooks.Rows(["date"]), "visible"));
        using (ZipArchive zip = ZipFile.Open(path, ZipArchiveMode.Update))
        {
            AddSharedStrings(zip, Enumerable.Repeat(string.Concat(Enumerable.Repeat("<si/>", 100_000)), 120));
        }

        long before = GC.GetAllocatedBytesForCurrentThread();
        RecordsReading reading = RecordsFolder.Read(path);

        Assert.Contains(reading.Problems, problem => problem.Code == "E131" && problem.Message.Contains("more text", StringComparison.Ordinal));
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 3 * FewMegabytes);
    }

    [Theory]
    [InlineData("<row r=\"1048577\"><c><v>1</v></c></row>", "more rows")]
    [InlineData("<row><c r=\"XFE2\"><v>1</v></c></row>", "more columns")]
    public void Read_SheetBeyondWhatASheetHolds_IsRefused(string row, string expected)
    {
        string path = TestWorkbooks.Raw(("sales", $"<dimension ref=\"A1:XFD9999999\"/><sheetData>{row}</sheetData>", "visible"));

        Assert.Contains(RecordsFolder.Read(path).Problems, problem => problem.Code == "E131" && problem.Message.Contains(expected, StringComparison.Ordinal));
    }

    [Fact]
    public void Read_WorkbookOfFormulasWithoutValues_StopsEarly()
    {
        string faults = string.Concat(Enumerable.Repeat("<row><c t=\"e\"><v>#N/A</v></c></row>", 20_000));
        string path = TestWorkbooks.Raw(("sales", TestWorkbooks.Rows(["date", "crop", "channel", "quantity"]).Replace("</sheetData>", faults + "</sheetData>", StringComparison.Ordinal), "visible"));

        Assert.Contains(RecordsFolder.Read(path).Problems, problem => problem.Code == "E133");
    }

    [Fact]
    public void Open_RowsRepeatedWithoutEnd_WarnInBoundedMemoryAndWords()
    {
        string folder = TestFolders.MakeBad("sound");
        File.AppendAllText(Path.Combine(folder, "sales.csv"), string.Concat(Enumerable.Repeat("2025-05-10,lettuce,market,1,1.00\n", 200_000)));
        File.AppendAllText(Path.Combine(folder, "harvests.csv"), "2025-05-10,L1,300000\n");

        FarmFolder farm = FarmFolder.Open(folder);

        Assert.InRange(farm.Problems.Count, 1, 5_000);
        Assert.Equal(199_999, farm.Problems.Where(problem => problem.Code == "W202").Sum(problem => 1 + problem.Further));
        Assert.InRange(ProblemSummary.Lines(farm.Problems, folder, farm.Notation).Sum(line => line.Length), 1, 5_000);
    }

    [Fact]
    public void Read_TotalsWithoutEnd_AreCountedAndAFewKept()
    {
        string folder = TestFolders.Make(("sales.csv", Heading + Row + string.Concat(Enumerable.Repeat("total,,,,5\n", 50_000)) + Row));

        RecordsReading reading = RecordsFolder.Read(folder);

        Assert.Equal(50_000, reading.Problems.Where(problem => problem.Code == "W104").Sum(problem => 1 + problem.Further));
        Assert.InRange(reading.Problems.Count, 1, 1_100);
        Assert.Equal(new FileCount("sales", "sales.csv", 50_002, 2, 0) { RowsPassedOver = 50_000 }, reading.Files.Single());
    }

    [Theory]
    [InlineData("")]
    [InlineData("date,crop\n2025-05-10,lettuce\n")]
    [InlineData("PK\u0003\u0004 not really")]
    public void Read_FileThatIsNoWorkbook_IsRefusedInWords(string text)
    {
        string path = Path.Combine(TestFolders.Make(("records.xlsx", text)), "records.xlsx");

        Assert.Contains("can't be read as a workbook", Assert.Throws<IOException>(() => RecordsFolder.Read(path)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_WorkbookWithADocumentType_IsRefused()
    {
        string path = TestWorkbooks.Raw(("sales", TestWorkbooks.Rows(["date"]), "visible"));
        using (ZipArchive zip = ZipFile.Open(path, ZipArchiveMode.Update))
        {
            zip.GetEntry("xl/s0.xml")!.Delete();
            using StreamWriter writer = new(zip.CreateEntry("xl/s0.xml").Open());
            writer.Write("<!DOCTYPE x [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;\">]><worksheet xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><sheetData><row><c t=\"str\"><v>&b;</v></c></row></sheetData></worksheet>");
        }

        RecordsReading reading = RecordsFolder.Read(path);

        Assert.Contains(reading.Problems, problem => problem.Code == "E131" && problem.Message.Contains("DTD", StringComparison.Ordinal));
        Assert.Empty(reading.Tables.Sales);
    }

    [Fact]
    public void Read_FileOfOneGigabyte_IsRefusedAtOnce()
    {
        Assert.SkipUnless(Environment.GetEnvironmentVariable("FARMECONOMICS_HUGE") == "1", "Writes a file of 1 GB; runs with FARMECONOMICS_HUGE=1.");
        string folder = TestFolders.Make(("sales.csv", Heading));
        using (FileStream stream = File.OpenWrite(Path.Combine(folder, "sales.csv")))
        {
            stream.Seek(0, SeekOrigin.End);
            byte[] block = Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat(Row, 30_000)));
            while (stream.Length < 1L << 30)
            {
                stream.Write(block);
            }
        }

        AssertStopped("E130", folder);
    }

    private static void AddSharedStrings(ZipArchive zip, IEnumerable<string> texts)
    {
        ZipArchiveEntry relations = zip.GetEntry("xl/_rels/workbook.xml.rels")!;
        string text;
        using (StreamReader reader = new(relations.Open()))
        {
            text = reader.ReadToEnd();
        }

        relations.Delete();
        using (StreamWriter writer = new(zip.CreateEntry("xl/_rels/workbook.xml.rels").Open()))
        {
            writer.Write(text.Replace("</Relationships>", "<Relationship Id=\"ss\" Type=\"http://schemas.openxmlformats.org/officeDocument/2006/relationships/sharedStrings\" Target=\"sharedStrings.xml\"/></Relationships>", StringComparison.Ordinal));
        }

        ZipArchiveEntry types = zip.GetEntry("[Content_Types].xml")!;
        using (StreamReader reader = new(types.Open()))
        {
            text = reader.ReadToEnd();
        }

        types.Delete();
        using (StreamWriter writer = new(zip.CreateEntry("[Content_Types].xml").Open()))
        {
            writer.Write(text.Replace("</Types>", "<Override PartName=\"/xl/sharedStrings.xml\" ContentType=\"application/vnd.openxmlformats-officedocument.spreadsheetml.sharedStrings+xml\"/></Types>", StringComparison.Ordinal));
        }

        using StreamWriter strings = new(zip.CreateEntry("xl/sharedStrings.xml", CompressionLevel.Fastest).Open());
        strings.Write("<sst xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\">");
        foreach (string part in texts)
        {
            strings.Write(part);
        }

        strings.Write("</sst>");
    }

    private static void AssertStopped(string code, string folder)
    {
        long before = GC.GetAllocatedBytesForCurrentThread();
        RecordsReading reading = RecordsFolder.Read(folder);

        Assert.Contains(reading.Problems, problem => problem.Code == code && problem.Source.File == "sales.csv");
        Assert.Empty(reading.Tables.Sales);
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, FewMegabytes);
        Assert.DoesNotContain(FarmFolder.Open(folder, skipBadRows: true).Problems, problem => problem.Code.Length == 0);
        Assert.Null(FarmFolder.Open(folder, skipBadRows: true).Review);
    }

    private sealed class Meanwhile(Action<ReadingProgress> act) : IProgress<ReadingProgress>
    {
        public void Report(ReadingProgress value) => act(value);
    }
}
