using CsCheck;
using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>What stands above the headings counts for the rows below: whose time sheet it is, which week, whose invoice, which market
/// day. Every file is invented; that people write so is common practice, no source.</summary>
public class AboveTheHeadingsTests
{
    private const string TimeSheets = "Time sheet,,,,\nName: Rosa,,,,\n"
        + "Week of,Mon,Tue,Total,Task\n6/16/2025,8,7.5,15.5,Field\n6/23/2025,8,,8,Field\n"
        + "Name: Ben,,,,\nWeek of,Mon,Tue,Total,Task\n6/16/2025,4,4,8,Pack\n";

    private const string Market = "Saturday market 2025,,,,,,\n,6/7,,,6/14,,\nCrop,Brought,Sold,Price,Brought,Sold,Price\n"
        + "Carrots,40,35,3,40,40,3\nRadishes,50,41,2.5,,,\n";

    [Fact]
    public void TimeSheets_OfSeveralPeople_AreEachOfTheNameAbove()
    {
        ImportPlan plan = Drafted.PlanText("sheets.csv", TimeSheets, null);

        Assert.Equal(
            [
                "2025-06-16 Rosa Field 8", "2025-06-17 Rosa Field 7.5", "2025-06-23 Rosa Field 8", "2025-06-16 Ben Pack 4",
                "2025-06-17 Ben Pack 4",
            ],
            Rows(plan, "date", "worker", "task", "hours"));
        Assert.Contains("From lines above the rows: Rosa (line 2), Ben (line 6).", plan.Remarks);
        Assert.Contains("Not read: 1 row above the headings (line 1).", plan.Remarks);
        Assert.All(plan.Sums, sum => Assert.True(sum.Agrees));
    }

    /// <summary>What is read from above is shown beside the first row of each part.</summary>
    [Fact]
    public void Draft_ShowsWhatStandsAbove()
    {
        ImportDraft draft = ImportDraft.Of(new ImportRequest(Drafted.Source("sheets.csv", TimeSheets)));

        Assert.Equal(["Name", "Week of", "Mon", "Tue", "Total", "Task"], draft.Headings);
        Assert.Equal(["Rosa 6/16/2025", "Ben 6/16/2025"], draft.Sample.Select(row => $"{row[0]} {row[1]}"));
    }

    /// <summary>5/5, 6/2 and 6/9 are three Mondays, or a Monday, a Thursday and a Saturday. Two weeks are too few to tell.</summary>
    [Fact]
    public void Weeks_ThatAllBeginOnOneDay_AreNotAskedFor()
    {
        const string Two = "Name: Rosa,,\nWeek of,Mon,Tue,Total,Task\n6/2/2025,8,,8,Field\n6/9/2025,7,,7,Field\n";

        Assert.Equal(["2025-06-02 Rosa 8", "2025-06-09 Rosa 7", "2025-05-05 Rosa 6"],
            Rows(Drafted.PlanText("hours.csv", Two + "5/5/2025,6,,6,Field\n", null), "date", "worker", "hours"));
        Assert.True(ImportDraft.Of(new ImportRequest(Drafted.Source("hours.csv", Two))).Lines.Single(line => line.Column == "date").IsOpen);
    }

    /// <summary>Rows held back go to a file of their own; what stood above them, or in the row above, goes along.</summary>
    [Theory]
    [InlineData("Name: Rosa,,\nDate,Hours,Task\n6/16/2025,8,Field\n6/17/2025,-7,Field\n"
        + "Name: Ben,,\nDate,Hours,Task\n6/18/2025,-6,Field\n", "date,worker,hours", "2025-06-17 Rosa 7|2025-06-18 Ben 6")]
    [InlineData("Mon 6/16/2025\nBeets,12 bu\nTue 6/17/2025\nBeets,-7\nKale,4 lb\nWed 6/18/2025\nKale,-6\n",
        "date,crop,quantity", "2025-06-17 Beets 7|2025-06-18 Kale 6")]
    [InlineData("Date,Crop,Qty\n6/16/2025,Beets,5\n,Kale,-7\n6/17/2025,Beets,4\n,Kale,-6\n", "date,crop,quantity",
        "2025-06-16 Kale 7|2025-06-17 Kale 6")]
    public void Rows_HeldBack_KeepWhatIsAboveThem(string text, string columns, string rows)
    {
        string source = Drafted.Source("notes.csv", text);
        string map = Drafted.Source("map.csv", Drafted.Of(new ImportRequest(source)));
        ImportPlan plan = RecordsImport.Plan(new ImportRequest(source) { Map = map });
        string rest = plan.HeldBackCsv.Replace(",-", ",", StringComparison.Ordinal);

        Assert.Equal(2, plan.HeldBack.Count);
        Assert.Equal(rows.Split('|'), Rows(
            RecordsImport.Plan(new ImportRequest(Drafted.Source("rest.csv", rest)) { Map = map }), columns.Split(',')));
    }

    [Theory]
    [InlineData("Employee,Rosa,,\nWeek of 6/16/2025,,,\nTask,Mon,Tue,Total\nField,8,7.5,15.5\nPack,1,,1\n")]
    [InlineData("Week of:,6/16/2025,Employee:,Rosa\nTask,Mon,Tue,Total\nField,8,7.5,15.5\nPack,1,,1\n")]
    public void Week_AboveItsDays_IsTheWeekOfTheRows(string text) => Assert.Equal(
        ["2025-06-16 Rosa Field 8", "2025-06-17 Rosa Field 7.5", "2025-06-16 Rosa Pack 1"],
        Rows(Drafted.PlanText("hours.csv", text, null), "date", "worker", "task", "hours"));

    /// <summary>A sheet that goes on below its headings printed again is still that of the same person.</summary>
    [Fact]
    public void Names_AloneAboveEachPart_AreAskedForNoMore() => Assert.Equal(
        ["2025-06-16 Rosa 8", "2025-06-17 Rosa 8", "2025-06-18 Rosa 8", "2025-06-16 Ben 4"],
        Rows(Drafted.PlanText("hours.csv", "Name: Rosa,,\nDate,Hours,Task\n6/16/2025,8,Field\n6/17/2025,8,Field\nDate,Hours,Task\n"
            + "6/18/2025,8,Field\nName: Ben,,\nDate,Hours,Task\n6/16/2025,4,Field\n", null), "date", "worker", "hours"));

    [Fact]
    public void Name_WithoutAWordBeforeIt_IsTakenWhereEachPartHasItsOwn()
    {
        ImportPlan plan = Drafted.PlanText("hours.csv",
            "Rosa,,\nDate,Hours,Task\n6/16/2025,8,Field\nBen,,\nDate,Hours,Task\n6/16/2025,4,Field\n", null);

        Assert.Equal(["2025-06-16 Rosa 8", "2025-06-16 Ben 4"], Rows(plan, "date", "worker", "hours"));
        Assert.DoesNotContain(plan.Remarks, remark => remark.Contains("Not read", StringComparison.Ordinal));
    }

    [Fact]
    public void Customer_AboveWhatWasDelivered_IsTheChannel() => Assert.Equal(
        ["2025-06-16 Beets Blue Door 6", "2025-06-17 Kale Corner Shop 4"],
        Rows(Drafted.PlanText("notes.csv", "Customer: Blue Door,,\nDate,Item,Qty,Amount\n6/16/2025,Beets,6,12.00\n"
            + "Customer: Corner Shop,,\nDate,Item,Qty,Amount\n6/17/2025,Kale,4,10.00\n", null), "date", "crop", "channel", "quantity"));

    /// <summary>Of every market day only the first was read, and the rest held back.</summary>
    [Fact]
    public void MarketDays_AboveColumnsThatComeAgain_AreEachADay()
    {
        ImportPlan plan = Drafted.PlanText("market.csv", Market, null, "channel=market");

        Assert.Equal(["2025-06-07 Carrots 35 3.00", "2025-06-07 Radishes 41 2.50", "2025-06-14 Carrots 40 3.00"],
            Rows(plan, "date", "crop", "quantity", "unit_price"));
        Assert.Contains("From lines above the rows: 6/7 (line 2), 6/14 (line 2).", plan.Remarks);
        Assert.Contains(plan.Remarks, remark => remark.EndsWith("columns that come again: a row for each time.", StringComparison.Ordinal));
    }

    /// <summary>"Week" stands in the first line of headings, what columns have in common in the second.</summary>
    [Fact]
    public void Customers_AboveColumnsThatComeAgain_AreTheChannels()
    {
        ImportPlan plan = Drafted.PlanText("wholesale.csv", "Week,Blue Door,,,Corner Shop,,\n,Item,Cases,$,Item,Cases,$\n"
            + "6/16/2025,Kale,3,72,Beets,2,60\n6/23/2025,Kale,4,96,,,\n", null);

        Assert.Equal(
            [
                "2025-06-16 Kale Blue Door 3 Cases 72.00", "2025-06-23 Kale Blue Door 4 Cases 96.00",
                "2025-06-16 Beets Corner Shop 2 Cases 60.00",
            ],
            Drafted.Rows(plan), StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>The year stands in the pay period above.</summary>
    [Fact]
    public void DaysOfTheWeekWithTheirDay_AreDaysAcross() => Assert.Equal(["2025-06-16 Rosa 8", "2025-06-17 Rosa 7.5"],
        Rows(Drafted.PlanText("hours.csv", "Pay period: 6/16/2025 - 6/29/2025,,,\nEmployee,Mon 6/16,Tue 6/17,Reg Hrs\n"
            + "Rosa,8,7.5,15.5\n", null, "task=Field"), "date", "worker", "hours"));

    [Fact]
    public void MarketDays_OfAFurtherPart_AreNoRowOfTheOneBefore() => Assert.Equal(
        ["2025-06-07 Carrots 35", "2025-06-14 Carrots 40", "2025-07-05 Carrots 9", "2025-07-12 Carrots 8"],
        Rows(Drafted.PlanText("market.csv", ",6/7/2025,,6/14/2025,\nCrop,Brought,Sold,Brought,Sold\nCarrots,40,35,40,40\n"
            + ",7/5/2025,,7/12/2025,\nCrop,Brought,Sold,Brought,Sold\nCarrots,9,9,9,8\n", null), "date", "crop", "quantity"));

    [Fact]
    public void Days_WithColumnsOfTheirOwnSideBySide_AreRowsEach() => Assert.Equal(
        ["2025-06-16 Kale 4", "2025-06-17 Kale 5", "2025-06-18 Beets 6"],
        Rows(Drafted.PlanText("picked.csv",
            "Date,Crop,Picked,Date,Crop,Picked\n6/16/2025,Kale,4,6/18/2025,Beets,6\n6/17/2025,Kale,5,,,\n", null),
            "date", "crop", "quantity"));

    [Fact]
    public void Remarks_UnderTwoHeadingsAlike_AreNoColumnsThatComeAgain() => Assert.Single(
        Drafted.PlanText("picked.csv", "Picked in 2025,,,,\nDate,Crop,Picked,Notes,Notes\n6/16/2025,Kale,4,wet,cold\n", null).Rows);

    /// <summary>The same hours of another person are another row; the same rows in another order are not.</summary>
    [Fact]
    public void Rows_AlikeUnderTwoNames_AreAddedOnceEach()
    {
        string rosa = "Name: Rosa,,\nDate,Hours,Task\n6/16/2025,8,Field\n";
        string ben = rosa.Replace("Rosa", "Ben", StringComparison.Ordinal);
        ImportPlan one = Drafted.PlanText("hours.csv", rosa + ben, null);
        string both = Drafted.Source("hours.csv", rosa + ben);
        string turned = Drafted.Source("hours.csv", ben + rosa);
        string folder = TestFolders.Make(
            ("workers.csv", "worker,kind,wage\nRosa,hired,15\nBen,hired,15\n"), ("tasks.csv", "task,kind\nField,grow\n"));
        Drafted.Plan(both, folder).Apply();

        Assert.Equal(2, one.Rows.Count);
        Assert.Empty(RecordsImport.Plan(new ImportRequest(turned) { Folder = folder, Map = "hours" }).Rows);
        Assert.Equal(2, RecordsImport.Plan(new ImportRequest(turned) { Folder = folder, Map = "hours" }).AlreadyThere.Count);
    }

    /// <summary>Notes of what was picked, day by day: without any heading, with headings, with a column of days.</summary>
    [Theory]
    [InlineData("picked.csv", "Monday 6/16/2025\nBeets,12 bu\nKale,8 lb\nTuesday 6/17/2025\nKale,4 lb\n")]
    [InlineData("picked-2025.csv", "Crop,Picked,Notes\n6/16,,\nBeets,12 bu,\nKale,8 lb,wet\n6/17,,\nKale,4 lb,\n")]
    [InlineData("picked.csv", "Date,Crop,Picked\n6/16/2025,,\n,Beets,12 bu\n,Kale,8 lb\n6/17/2025,,\n,Kale,4 lb\n")]
    public void Days_AloneOnTheirLines_AreThoseOfTheRowsBelow(string name, string text)
    {
        ImportPlan plan = Drafted.PlanText(name, text, null);

        Assert.Equal("harvests", plan.Table);
        Assert.Equal(["2025-06-16 Beets 12 bu", "2025-06-16 Kale 8 lb", "2025-06-17 Kale 4 lb"],
            Rows(plan, "date", "crop", "quantity", "unit"));
        Assert.DoesNotContain(plan.Remarks, remark => remark.Contains(" above the headings", StringComparison.Ordinal));
    }

    [Fact]
    public void Days_WithOneRowEach_AreThoseOfTheRowsBelow() => Assert.Equal(["2025-06-16 Beets 12", "2025-06-17 Kale 4"],
        Rows(Drafted.PlanText("picked.csv", "Mon 6/16/2025\nBeets, 12 bu\nTue 6/17/2025\nKale, 4 lb\n", null), "date", "crop", "quantity"));

    /// <summary>A day with nothing in its row, in a column of days, says that nothing was picked.</summary>
    [Fact]
    public void Day_WithNothingInItsRow_IsNoLineAboveOthers()
    {
        ImportPlan plan = Drafted.PlanText("picked.csv",
            "Date,Beets (bu),Kale (lb),Chard (lb)\n6/16/2025,12,8,2\n6/17/2025,,,\n6/18/2025,4,,1\n", null);

        Assert.Equal(5, plan.Rows.Count);
        Assert.DoesNotContain(plan.Remarks, remark => remark.Contains("above", StringComparison.Ordinal));
    }

    [Fact]
    public void Names_AmongTheRows_AreOfTheRowsBelow() => Assert.Equal(["2025-06-16 Rosa 8", "2025-06-17 Rosa 7", "2025-06-16 Ben 4"],
        Rows(Drafted.PlanText("hours.csv", "Date,Hours,Task\nEmployee: Rosa,,\n6/16/2025,8,Field\n6/17/2025,7,Field\nEmployee: Ben,,\n"
            + "6/16/2025,4,Field\n", null), "date", "worker", "hours"));

    /// <summary>Every quantity under every day is read exactly once.</summary>
    [Fact]
    public void Quantities_UnderDaysAbove_AddUpToTheFile() => Gen.Select(Gen.Int[2, 5], Gen.Int[1, 6])
        .SelectMany((days, crops) => Gen.Int[0, 99].Array[days].Array[crops])
        .Where(sold => sold.Any(row => row.Any(value => value > 0))).Sample(sold =>
        {
            int days = sold[0].Length;
            IEnumerable<string> rows = sold.Select((row, crop) => $"Crop {(char)('A' + crop)},"
                + string.Join(',', row.Select(value => value == 0 ? ",," : $"{value + 5},{value},2")) + "\n");
            string text = "," + string.Join(',', Enumerable.Range(14, days).Select(day => $"6/{day}/2025,,")) + "\nCrop,"
                + string.Join(',', Enumerable.Repeat("Brought,Sold,Price", days)) + "\n" + string.Concat(rows);
            string map = Path.Combine(TestFolders.Make(), "map.csv");
            File.WriteAllText(map,
                "import,table,column,source_column,constant,when,match,becomes,format\nm,sales,date,(above),,,,,M/D/YYYY\n"
                + "m,sales,crop,Crop,\n"
                + "m,sales,channel,,market\nm,sales,quantity,Sold,\nm,sales,unit_price,Price,\n");
            ImportPlan plan = RecordsImport.Plan(new ImportRequest(Drafted.Source("m.csv", text)) { Map = map });

            Assert.Equal(sold.Sum(row => row.Count(value => value > 0)), plan.Rows.Count + plan.RowsHeldBack);
            Assert.All(plan.Rows, row => Assert.Equal(
                sold[Field(plan, row, "crop")[^1] - 'A'][int.Parse(Field(plan, row, "date")[^2..]) - 14].ToString(),
                Field(plan, row, "quantity")));
            Assert.Equal(sold.Sum(row => row.Sum()), plan.Rows.Sum(row => int.Parse(Field(plan, row, "quantity"))));
        }, iter: 100);

    private static IEnumerable<string> Rows(ImportPlan plan, params string[] columns) =>
        plan.Rows.Select(row => string.Join(' ', columns.Select(column => Field(plan, row, column))));

    private static string Field(ImportPlan plan, ImportedRow row, string column) => row.Fields[plan.Columns.ToList().IndexOf(column)];
}
