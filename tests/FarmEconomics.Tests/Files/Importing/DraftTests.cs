using System.Text;
using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;
using FarmEconomics.Tests.Files.Workbooks;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>What a draft sees in a file, what it asks, and what it never guesses.</summary>
public class DraftTests
{
    [Fact]
    public void Dates_TwoReadings_AreAskedAndNotGuessed()
    {
        string source = Make("picked.csv", "Date,Crop,Qty\n06/03/2025,lettuce,4\n07/04/2025,kale,5\n");

        DraftLine line = ImportDraft.Of(new ImportRequest(source)).Lines.Single(line => line.Column == "date");
        ImportPlan plan = Drafted.Plan(source, null);

        Assert.True(line.IsOpen);
        Assert.Contains("06/03/2025 is Jun 3, 2025 or Mar 6, 2025", line.Note, StringComparison.Ordinal);
        Assert.Equal("E242", Assert.Single(plan.Problems).Code);
        Assert.Empty(plan.Rows);
        Assert.Contains("2025-03-06 lettuce 4", Drafted.Rows(Drafted.Plan(source, null, "date=D/M/YYYY")));
        Assert.DoesNotContain(ImportDraft.Of(new ImportRequest(source), dates: DatesWritten.MonthFirst).Lines, drafted => drafted.IsOpen);
    }

    [Theory]
    [InlineData("6/14/25", "2025-06-14")]
    [InlineData("14.6.2025", "2025-06-14")]
    [InlineData("Jun 14, 2025", "2025-06-14")]
    [InlineData("Sat 14 Jun 2025", "2025-06-14")]
    [InlineData("2025/06/14", "2025-06-14")]
    [InlineData("2025-06-14 08:10:00", "2025-06-14")]
    [InlineData("06/14/2025 8:10 AM", "2025-06-14")]
    public void Dates_AnyOneForm_AreRead(string text, string day) =>
        Assert.Equal($"{day} lettuce 4", Assert.Single(Drafted.Rows(Drafted.PlanText("picked.csv", $"Date,Crop,Qty\n\"{text}\",lettuce,4\n", null))));

    /// <summary>Sheets say the year once, on top or in their name; without that it is asked for.</summary>
    [Theory]
    [InlineData("picked.csv", "Harvest log 2025,,\nDate,Crop,Qty\n7/5,kale,4\n7/19,kale,5\n", "2025-07-05 kale 4", "2025-07-19 kale 5")]
    [InlineData("picked-2024.csv", "Date,Crop,Qty\n5-Jul,kale,4\nSat 13-Jul,kale,5\n", "2024-07-05 kale 4", "2024-07-13 kale 5")]
    [InlineData("picked-2024.csv", "Season 2025,,\nDate,Crop,Qty\nJuly 5,kale,4\n", "2025-07-05 kale 4")]
    [InlineData("picked.csv", "Seasons 2024 and 2025,,\nDate,Crop,Qty\n7/25,kale,4\n")]
    [InlineData("picked.csv", "Date,Crop,Qty\n7/25,kale,4\n")]
    [InlineData("picked-2025.csv", "Date,Crop,Qty\n7/5,kale,4\n7/6,kale,5\n")]
    [InlineData("picked-2025.csv", "Date,Crop,Qty\n2/29,kale,4\n3/20,kale,5\n", "2025-03-20 kale 5")]
    public void Dates_WithoutAYear_AreOfTheOneTheSheetTells(string name, string text, params string[] rows)
    {
        string source = Make(name, text);
        DraftLine line = ImportDraft.Of(new ImportRequest(source)).Lines.Single(line => line.Column == "date");
        Assert.StartsWith("?", line.Note, StringComparison.Ordinal);
        Assert.Equal(rows, Drafted.Rows(Drafted.Plan(source, null)));
        Assert.Contains(rows.Length > 0 ? "the year is the one in the file's title or name" : "7/", line.Note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("picks-2025.csv", true)]
    [InlineData("picks-2026.csv", false)]
    [InlineData("picks.csv", false)]
    public void Mapping_ThatBringsItsYear_IsRememberedForThatYearAlone(string name, bool fits)
    {
        string folder = TestFolders.Make(("imports.csv", "import,table,column,source_column,constant,when,match,becomes,format,note\n"
            + "picks,harvests,date,Day,,,,,M/D 2025,\npicks,harvests,crop,Crop,,,,,,\npicks,harvests,quantity,Qty,,,,,,\n"));
        ImportRequest request = new(Make(name, "Day,Crop,Qty\n7/25,kale,4\n")) { Folder = folder };
        if (fits)
        {
            Assert.Contains("2025-07-25 kale 4", Drafted.Rows(RecordsImport.Plan(request)));
        }
        else
        {
            Assert.Throws<ArgumentException>(() => RecordsImport.Plan(request));
        }
    }

    [Fact]
    public void Row_OfNextYearsSheet_IsAnotherRow()
    {
        string[] ids = [.. new[] { "picks-2025.csv", "picks-2026.csv" }.Select(name =>
            Drafted.PlanText(name, "Date,Crop,Qty\n7/25,kale,4\n", null).Csv!.Split('\n')[1].Split(',')[^1])];
        Assert.NotEqual(ids[0], ids[1]);
    }

    /// <summary>The picking sheet on the wall: crops down, days across, the year on top.</summary>
    [Fact]
    public void DaysAcross_WithoutAYear_AreOfTheOneOnTop() => Assert.Equal(
        ["2025-07-05 kale 4", "2025-07-12 kale 5", "2025-07-12 beets 7"],
        Drafted.Rows(Drafted.PlanText("wall.csv", "Picked 2025,,,\nCrop,7/5,7/12,7/19\nkale,4,5,\nbeets,,7,\n", null)));

    [Fact]
    public void Dates_WithoutAYearAnywhere_AreSaidToWantItInTheName()
    {
        ImportDraft draft = ImportDraft.Of(new ImportRequest(Make("picked.csv", "Date,Crop,Qty\n7/25,kale,4\n")));
        string? note = draft.Lines.Single(line => line.Column == "date").Note;
        Assert.Contains("it has no year: put the year into the file's name", note, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("M/D 2023", "2023-07-05 kale 4")]
    [InlineData("D/M 2023", "2023-05-07 kale 4")]
    [InlineData("M-D 2023")]
    public void Dates_WithoutAYear_AreOfTheOneTheMappingTells(string form, params string[] rows) =>
        Assert.Equal(rows, Drafted.Rows(Drafted.Plan(Make("picked-2023.csv", "Date,Crop,Qty\n7/5,kale,4\n"), null, $"date={form}")));

    [Fact]
    public void Quantities_AsNoted_BecomeNumberAndUnit()
    {
        ImportPlan plan = Drafted.PlanText("picked.csv", "Date,Crop,Picked\n2025-06-14,beans,12 bu\n2025-06-14,kale,~15\n2025-06-14,peas,3 1/2 lb\n2025-06-14,corn,2 doz\n2025-06-14,beets,\"1,5 kg\"\n2025-06-15,chard,2½ lbs.\n2025-06-15,garlic,lots\n", null);

        Assert.Equal(["2025-06-14 beans 12 bu", "2025-06-14 kale 15", "2025-06-14 peas 3.5 lb", "2025-06-14 corn 2 doz", "2025-06-14 beets 1.5 kg", "2025-06-15 chard 2.5 lbs"], Drafted.Rows(plan).Select(row => row.TrimEnd()));
        Assert.Equal(8, Assert.Single(plan.HeldBack).Line);
        Assert.Contains(plan.Remarks, remark => remark.Contains("1 quantity is marked as about right", StringComparison.Ordinal));
    }

    [Fact]
    public void Hours_PartsOfADay_AreAsked()
    {
        string source = Make("hours.csv", "Date,Worker,Hours\n2025-06-14,Ada,0.3125\n2025-06-15,Ada,0.25\n");

        Assert.True(ImportDraft.Of(new ImportRequest(source)).Lines.Single(line => line.Column == "hours").IsOpen);
        Assert.Equal(["2025-06-14 Ada 7.5 harvest", "2025-06-15 Ada 6 harvest"], Drafted.Rows(Drafted.Plan(source, null, "hours=day-part", "task=harvest")));
        Assert.Equal(["2025-06-14 Ada 0.3125 harvest", "2025-06-15 Ada 0.25 harvest"], Drafted.Rows(Drafted.Plan(source, null, "hours=hours", "task=harvest")));
    }

    [Fact]
    public void Workbook_WideByWorkerWithTotals_AreHours()
    {
        string book = TestWorkbooks.Raw(("Hours", "<sheetData><row>" + string.Concat(new[] { "Day", "Ada", "Bo", "Cy", "Total" }.Select(TestWorkbooks.Text)) + "</row><row>"
            + TestWorkbooks.Text("2025-06-14") + "<c><v>7.5</v></c><c><v>3</v></c><c/><c><v>10.5</v></c></row><row>" + TestWorkbooks.Text("2025-06-15") + "<c><v>2</v></c><c/><c><v>1</v></c><c><v>3</v></c></row></sheetData>", "visible"));

        ImportPlan plan = Drafted.Plan(book, null, "task=grow");

        Assert.Equal(["2025-06-14 Ada 7.5 grow", "2025-06-14 Bo 3 grow", "2025-06-15 Ada 2 grow", "2025-06-15 Cy 1 grow"], Drafted.Rows(plan));
        Assert.All(plan.Sums, sum => Assert.True(sum.Agrees, sum.What));
    }

    [Fact]
    public void CropsDownDaysAcross_InTwoBlocks_AreAllRead()
    {
        ImportPlan plan = Drafted.PlanText("picked.csv", "June,,\nCrop,6/14/2025,6/21/2025\nlettuce,4,5\nkale,,6\nTotal,4,11\n\nJuly,,\nCrop,7/5/2025,7/12/2025\nlettuce,7,\n", null);

        Assert.Equal(["2025-06-14 lettuce 4", "2025-06-21 lettuce 5", "2025-06-21 kale 6", "2025-07-05 lettuce 7"], Drafted.Rows(plan));
    }

    [Fact]
    public void DittoMarks_MeanTheSameAsAbove() =>
        Assert.Equal(["2025-06-14 lettuce 4", "2025-06-15 lettuce 5"], Drafted.Rows(Drafted.PlanText("picked.csv", "Date,Crop,Qty\n2025-06-14,lettuce,4\n2025-06-15,ditto,5\n", null)));

    [Fact]
    public void PriceWithTax_LongDecimals_AreRoundedAndTold()
    {
        ImportPlan plan = Drafted.PlanText("spent.csv", "vegetable,brand,price,price_with_tax\nbeans,seed house 1,2.79,3.0097125000000005\nbeets,seed house 1,3.19,3.4412125000000002\n", null, "date=2025-03-01", "category=seed");

        Assert.Equal(["2025-03-01 3.01 seed seed house 1 beans", "2025-03-01 3.44 seed seed house 1 beets"], Drafted.Rows(plan));
        Assert.Contains(plan.Remarks, remark => remark.Contains("2 numbers rounded", StringComparison.Ordinal));
    }

    [Fact]
    public void Utf16WithTabs_IsRead()
    {
        string source = Path.Combine(TestFolders.Make(), "picked.txt");
        File.WriteAllText(source, "Date\tCrop\tQty\n2025-06-14\tpâtisson\t4\n", Encoding.Unicode);

        Assert.Equal(["2025-06-14 pâtisson 4"], Drafted.Rows(Drafted.Plan(source, null)));
    }

    [Theory]
    [InlineData("picked.ods", "PK\u0003\u0004")]
    [InlineData("picked.numbers", "x")]
    [InlineData("picked.csv", "PK\u0003\u0004")]
    public void OtherSpreadsheets_GetOneSentence(string name, string text) =>
        Assert.Contains("choose Save as", Assert.Throws<IOException>(() => ImportDraft.Of(new ImportRequest(Make(name, text)))).Message, StringComparison.Ordinal);

    [Fact]
    public void Payees_ThatDifferInANumber_AreOneLine()
    {
        string text = "Date,Description,Amount\n" + string.Concat(Enumerable.Range(1, 22).Select(at => $"2025-06-{at:00},FUEL STOP {at * 37} ANYTOWN,-{at}.50\n"));

        Assert.Single(ImportDraft.Of(new ImportRequest(Make("bank.csv", text))).Lines, line => line.Column == "category");
        Assert.Equal(22, Drafted.PlanText("bank.csv", text, null).Rows.Count(row => row.Fields[2] == "fuel"));
    }

    [Fact]
    public void Rules_UnitsPerItemAndPatterns_LeaveTheOthersAsTheyAre()
    {
        string folder = TestFolders.Make(("till.csv", "Date,Item,Unit,Qty\n2025-06-14,Salad bag 5 oz,each,4\n2025-06-14,Salad bag 12 oz,each,2\n2025-06-14,Kale,bunch,3\n2025-06-14,Tip,,1\n"), ("map.csv",
            "import,table,column,source_column,constant,when,match,becomes,format\ntill,harvests,date,Date,,,,,\ntill,harvests,crop,Item,,,,,\ntill,harvests,crop,,,Salad bag # oz,pattern,salad,\n"
            + "till,harvests,unit,Unit,,,,,\ntill,harvests,unit,Item,,Salad bag,contains,bag,\ntill,harvests,quantity,Qty,,,,,\ntill,harvests,,Item,,tip,starts,,\n"));

        ImportPlan plan = RecordsImport.Plan(new ImportRequest(Path.Combine(folder, "till.csv")) { Map = Path.Combine(folder, "map.csv") });

        Assert.Equal(["2025-06-14 salad 4 bag", "2025-06-14 salad 2 bag", "2025-06-14 Kale 3 bunch"], Drafted.Rows(plan));
        Assert.Single(plan.LeftOut);
    }

    [Fact]
    public void HeldBackRows_FixedInTheirOwnFile_ComeInByTheSameMapping()
    {
        string folder = TestFolders.MakeBad("sound");
        string source = Make("picked.csv", "Date,Crop,Qty\n2025-05-14,lettuce,four\n2025-05-15,lettuce,5\n");

        ImportPlan plan = Drafted.Plan(source, folder);
        plan.Apply();
        string rest = Make("picked.to-fix.csv", plan.HeldBackCsv.Replace("four", "4", StringComparison.Ordinal));
        ImportPlan later = RecordsImport.Plan(new ImportRequest(rest) { Folder = folder });

        Assert.StartsWith("Date,Crop,Qty,problem\n2025-05-14,lettuce,four,", plan.HeldBackCsv, StringComparison.Ordinal);
        Assert.Equal(["2025-05-15 lettuce 5"], Drafted.Rows(plan));
        Assert.Equal(["2025-05-14 lettuce 4"], Drafted.Rows(later));
        Assert.Null(later.MappingFileName);
    }

    [Fact]
    public void Names_GivenOnce_AreRememberedAsAliases()
    {
        string folder = TestFolders.MakeBad("sound");
        string source = Make("picked.csv", "Date,Crop,Qty\n2025-05-14,LETT,4\n2025-05-15,lettuce,5\n");
        string names = Make("names.csv", "table,alias,name,rows\ncrops,LETT,lettuce,1\ncrops,other,,2\n");
        string map = Make("map.csv", ImportDraft.Of(new ImportRequest(source)).Csv);
        var request = new ImportRequest(source) { Folder = folder, Map = map };

        Assert.Equal(("crops", "LETT", 1), RecordsImport.Plan(request).UnknownNames.Select(name => (name.Table, name.Alias, name.Rows)).Single());
        ImportPlan plan = RecordsImport.Plan(request with { Names = names });
        plan.Apply();

        Assert.Equal(2, plan.Rows.Count);
        Assert.Equal("aliases.picked.csv", plan.NamesFileName);
        Assert.Equal(0, FarmEconomics.Files.FarmFolder.Open(folder).ErrorCount);
        Assert.Null(RecordsImport.Plan(request with { Names = names }).NamesFileName);
    }

    private static string Make(string name, string text) => Path.Combine(TestFolders.Make((name, text)), name);
}
