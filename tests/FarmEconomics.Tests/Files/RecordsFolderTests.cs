using System.Text;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using Xunit;

namespace FarmEconomics.Tests.Files;

public class RecordsFolderTests
{
    private const string Crops = "crop,unit\nlettuce,head\n";

    [Theory]
    [InlineData("date,crop,channel,quantity,amount\n2025-05-10,lettuce,market,40,60.00\n")]
    [InlineData("\uFEFFdate,crop,channel,quantity,amount\r\n2025-05-10,lettuce,market,40,60.00\r\n")]
    [InlineData("date;crop;channel;quantity;amount\n2025-05-10;lettuce;market;40;60.00")]
    [InlineData("date\tcrop\tchannel\tquantity\tamount\n2025-05-10\tlettuce\tmarket\t40\t60.00\n")]
    [InlineData("sep=;\ndate;crop;channel;quantity;amount\n2025-05-10;lettuce;market;40;60.00\n")]
    [InlineData("DATE , Crop,\"channel\",Quantity,AMOUNT\n 2025-05-10 ,\" lettuce \",\"market\",\"40\",\"$60.00\"\n")]
    [InlineData("date,crop,channel,quantity,amount,,\n2025-05-10,lettuce,market,40,60.00,,\n,,,,,,\n\n")]
    [InlineData("\n\ndate,crop,channel,quantity,amount\n\n2025-05-10,lettuce,market,40,60.00\n")]
    public void Read_EveryCommonFormOfCsv_GivesTheSameRow(string text)
    {
        RecordsReading reading = Read(("sales.csv", text));

        Assert.DoesNotContain(reading.Problems, problem => problem.Source.File == "sales.csv");
        SaleRow row = Assert.Single(reading.Tables.Sales);
        Assert.Equal((new DateOnly(2025, 5, 10), "lettuce", "market", 40m, 60m), (row.Date, row.Crop, row.Channel, row.Quantity, row.Amount));
        Assert.Null(row.Unit);
        Assert.Null(row.UnitPrice);
        Assert.Equal(new FileCount("sales", "sales.csv", 1, 1, 0), reading.Files.Single(file => file.Table == "sales"));
    }

    [Fact]
    public void Open_RowTwiceInTwoFilesOfATable_NamesTheOtherFile()
    {
        string folder = TestFolders.MakeBad("sound");
        File.WriteAllText(Path.Combine(folder, "sales.till.csv"), "date,crop,channel,quantity,amount\n2025-06-10,kale,market,30,75.00\n");

        Assert.Equal("The row says the same as line 3 of sales.csv.",
            Assert.Single(FarmFolder.Open(folder).Problems, problem => problem.Code == "W202").Message);
    }

    [Fact]
    public void Read_ColumnWithoutAHeading_IsNamedByItsPlace()
    {
        RecordsReading reading = Read(("sales.csv", "date,,crop,channel,quantity,amount,\n2025-05-10,x,lettuce,market,40,60.00,\n"));

        Problem problem = Assert.Single(ProblemLocator.Locate(reading, reading.Problems.Where(problem => problem.Code == "W101")));
        Assert.Equal(("Column 2 of sales has no heading and is not read.", 6), (problem.Message, problem.Position));
        Assert.Single(reading.Tables.Sales);
    }

    [Fact]
    public void Read_HeadingsInAnyForm_AreMatched()
    {
        RecordsReading reading = Read(("beds.csv", "BED,Length-Ft,width in\nA1,100,30\n"), ("Labor Standards.CSV", "crop,stage,minutes,Per\nlettuce,Harvest,2.5,bed foot\n"));

        Assert.Equal((100m, 30m), (reading.Tables.Beds[0].LengthFt, reading.Tables.Beds[0].WidthIn));
        Assert.Equal((Stage.Harvest, RatePer.BedFoot), (reading.Tables.LaborStandards[0].Stage, reading.Tables.LaborStandards[0].Per));
        Assert.Equal("Labor Standards.CSV:2", reading.Tables.LaborStandards[0].Source.ToString());
    }

    [Fact]
    public void Read_QuotedLineBreaksAndBlankLines_KeepLineNumbersRight()
    {
        RecordsReading reading = Read(("expenses.csv", "date,amount,category,note\n2025-01-01,1,seed,\"two\nlines, \"\"quoted\"\"\"\n\n2025-01-02,2,seed,5\" pots\nbad,3,seed,\n"));

        Assert.Equal([2, 5], reading.Tables.Expenses.Select(row => row.Source.Line));
        Assert.Equal("two\nlines, \"quoted\"", reading.Tables.Expenses[0].Note);
        Assert.Equal("5\" pots", reading.Tables.Expenses[1].Note);
        Assert.Equal(6, reading.Problems.Single(problem => problem.Code == "E114").Source.Line);
    }

    [Fact]
    public void Read_FarmsFormats_HoldForAllFilesWhereverTheyStand()
    {
        RecordsReading reading = Read(
            ("farm.csv", "setting;value\nowner_wage;18,50\nas_of;31.12.2025\ndate_format;DD.MM.YYYY\ndecimal_mark;,\n"),
            ("sales.csv", "date;crop;channel;quantity;amount\n10.5.2025;lettuce;market;2,5;1 234,50 €\n"));

        Assert.Equal(18.5m, reading.FarmSettings.OwnerWage);
        Assert.Equal(new DateOnly(2025, 12, 31), reading.FarmSettings.AsOf);
        Assert.Equal((new DateOnly(2025, 5, 10), 2.5m, 1234.5m), (reading.Tables.Sales[0].Date, reading.Tables.Sales[0].Quantity, reading.Tables.Sales[0].Amount));
    }

    [Fact]
    public void Read_SettingsFromOutside_GoBeforeThoseOfTheFolder()
    {
        string folder = TestFolders.Make(("farm.csv", "setting,value\nowner_wage,18\n"));

        RecordsReading reading = RecordsFolder.Read(folder, [new("owner_wage", "25"), new("owner_wages", "30")]);

        Assert.Equal(25m, reading.FarmSettings.OwnerWage);
        Problem problem = reading.Problems.Single(problem => problem.Code == "E120");
        Assert.StartsWith("--set: error E120: There is no setting \"owner_wages\".", ProblemText.Format(problem, Notation.Default, folder), StringComparison.Ordinal);
        Assert.Equal("owner_wage", problem.Nearest);
    }

    [Theory]
    [InlineData("price of Kale", true)]
    [InlineData("owner_wages", false)]
    public void Read_AChangeGivenAsASetting_NamesTheCommandForIt(string name, bool told)
    {
        RecordsReading reading = RecordsFolder.Read(TestFolders.Make(("farm.csv", "setting,value\nowner_wage,18\n")), [new(name, "5")]);
        Assert.Equal(told, reading.Problems.Single(problem => problem.Code == "E120").Message.Contains("whatif and --change", StringComparison.Ordinal));
    }

    [Fact]
    public void Read_RowWithThreeBadFields_ReportsThreeAndLeavesTheRowOut()
    {
        string folder = TestFolders.Make(("sales.csv", "date,crop,channel,quantity,amount\nyesterday,lettuce,market,some,1.005\n2025-05-10,,market,40,60.00\n"));

        RecordsReading reading = RecordsFolder.Read(folder);
        IReadOnlyList<Problem> located = ProblemLocator.Locate(folder, reading.Problems.Where(problem => problem.Source.Line > 0));

        Assert.Equal([("E114", 2, 1), ("E111", 2, 26), ("E112", 2, 31), ("E110", 3, 12)], located.Select(problem => (problem.Code, problem.Source.Line, problem.Position)));
        Assert.Equal([null, null, null, 60m], located.Select(problem => problem.Money));
        Assert.All(located.Take(3), problem => Assert.Equal("yesterday,lettuce,market,some,1.005", problem.Row));
        Assert.Equal(new FileCount("sales", "sales.csv", 2, 0, 2), reading.Files.Single());
    }

    [Fact]
    public void Locate_QuotedAndWideLetters_CountsCharacters()
    {
        string folder = TestFolders.Make(("sales.csv", "\uFEFFdate,crop,channel,quantity\n2025-05-10,\"ra\u00EFponce \"\"x\"\"\",  m\u00E4rkt ,x\n"));

        Problem problem = Assert.Single(ProblemLocator.Locate(folder, RecordsFolder.Read(folder).Problems.Where(problem => problem.Source.File == "sales.csv")));

        Assert.Equal(1 + "2025-05-10,\"ra\u00EFponce \"\"x\"\"\",  m\u00E4rkt ,".Length, problem.Position);
    }

    [Fact]
    public void Read_UnknownColumn_IsReportedWithItsPlace()
    {
        string folder = TestFolders.Make(("crops.csv", "\uFEFFcrop,unit,storage day\nlettuce,head,5\n"));

        Problem problem = Assert.Single(ProblemLocator.Locate(folder, RecordsFolder.Read(folder).Problems.Where(problem => problem.Source.File == "crops.csv")));

        Assert.Equal(("W101", 1, 11, "crop,unit,storage day"), (problem.Code, problem.Source.Line, problem.Position, problem.Row));
        Assert.Equal("storage_days", problem.Nearest);
    }

    [Fact]
    public void Read_Utf16AsSpreadsheetsSaveIt_IsRead()
    {
        string folder = TestFolders.Make();
        File.WriteAllText(Path.Combine(folder, "crops.csv"), "crop\tunit\nra\u00EFponce\tlb\n", Encoding.Unicode);

        Assert.Equal("ra\u00EFponce", Assert.Single(RecordsFolder.Read(folder).Tables.Crops).Crop);
    }

    [Fact]
    public void Read_MissingTables_AreErrorsWhenRequiredAndSentencesWhenNot()
    {
        RecordsReading reading = Read();

        Assert.Equal(["beds.csv", "harvests.csv", "plantings.csv", "sales.csv"], reading.Problems.Select(problem => problem.Source.File));
        Assert.All(reading.Problems, problem => Assert.Equal("E101", problem.Code));
        Assert.Contains(reading.MissingTables, missing => missing.Table == "labor" && missing.Consequence.Contains("margin per labor hour", StringComparison.Ordinal));
        Assert.Equal(RecordSchema.Tables.Count(table => !table.Required && !table.IsAid), reading.MissingTables.Count);
    }

    [Fact]
    public void Read_NoFolder_Throws() => Assert.Throws<DirectoryNotFoundException>(() => RecordsFolder.Read(Path.Combine(Path.GetTempPath(), Path.GetRandomFileName())));

    private static RecordsReading Read(params (string, string)[] files) => RecordsFolder.Read(TestFolders.Make([("crops.csv", Crops), .. files]));
}
