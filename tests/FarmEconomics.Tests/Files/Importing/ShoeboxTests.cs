using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;
using FarmEconomics.Records;
using FarmEconomics.Tests.Files.Workbooks;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>
/// Files of a shoebox that can be read wrongly without a word: signs, totals, units, days. All are made up; what is expected was read from
/// them by eye.
/// </summary>
public class ShoeboxTests
{
    private const string MoreCameIn = "Date,Description,Amount\n6/13/2025,HILL SEED,-118.40\n6/14/2025,DEPOSIT,865.00\n"
        + "6/15/2025,DEPOSIT,500.00\n6/20/2025,FUEL STOP 17,-40.00\n6/21/2025,DEPOSIT,0.00\n6/22/2025,DEPOSIT,5.00\n";

    [Fact]
    public void Bank_MoreDepositsThanPayments_AsksWhichWerePaid()
    {
        ImportPlan unanswered = Drafted.PlanText("bank.csv", MoreCameIn, null);
        ImportPlan account = Drafted.PlanText("bank.csv", MoreCameIn, null, "amount=paid-below");

        Assert.Empty(unanswered.Rows);
        Assert.Equal(["2025-06-13 118.40 seed HILL SEED", "2025-06-20 40.00 fuel FUEL STOP 17"], Drafted.Rows(account));
        Assert.Equal(4, account.LeftOut.Count);
        Assert.Empty(account.HeldBack);
    }

    [Fact]
    public void Card_PaymentsAboveZero_KeepTheirSignAndWhatCameBackStaysBelow()
    {
        ImportPlan card = Drafted.PlanText("card.csv", "Date,Description,Amount\n06/13/2025,HILL SEED,118.40\n06/14/2025,FUEL "
            + "STOP,40.00\n06/15/2025,SEED REFUND,-18.40\n", null, "amount=paid-above");

        Assert.Equal(["2025-06-13 118.40 seed HILL SEED", "2025-06-14 40.00 fuel FUEL STOP", "2025-06-15 -18.40 seed SEED REFUND"],
            Drafted.Rows(card));
    }

    /// <summary>One column for both ways, named for both, was taken for no money at all.</summary>
    [Fact]
    public void Bank_WithOneColumnOfDebitsAndCredits_AsksWhichWasPaid()
    {
        ImportPlan bank = Drafted.PlanText("bank.csv", "Posting Date,Description,Debit/Credit,Balance\n"
            + "01/15/2025,HILL SEED,245.10,\"3,210.55\"\n"
            + "01/20/2025,FUEL STOP,-412.00,\"3,622.55\"\n01/21/2025,FUEL STOP,40.00,\"3,582.55\"\n", null, "amount=paid-above");

        Assert.Equal(
            ["2025-01-15 245.10 seed HILL SEED", "2025-01-20 -412.00 fuel FUEL STOP", "2025-01-21 40.00 fuel FUEL STOP"],
            Drafted.Rows(bank));
    }

    [Fact]
    public void Bank_ReversalAmongDebits_ReducesWhatWasPaidAndZerosAreNoRows()
    {
        ImportPlan plan = Drafted.PlanText("bank.csv", "Date,Description,Debit,Credit\n06/13/25,HILL SEED,118.40,0.00\n"
            + "06/14/25,DEPOSIT,0.00,865.00\n06/20/25,REVERSAL FUEL STOP,-40.00,0.00\n06/21/25,DEPOSIT,,5.00\n", null);

        Assert.Equal(["2025-06-13 118.40 seed HILL SEED", "2025-06-20 -40.00 fuel REVERSAL FUEL STOP"], Drafted.Rows(plan));
        Assert.Equal(2, plan.LeftOut.Count);
    }

    [Fact]
    public void Bank_DebitsBelowZero_AreTurned() =>
        Assert.Equal(["2025-06-13 118.40 seed HILL SEED"], Drafted.Rows(Drafted.PlanText("bank.csv",
            "Date,Description,Debit,Credit\n06/13/25,HILL SEED,-118.40,\n06/14/25,DEPOSIT,,865.00\n", null)));

    [Fact]
    public void Bank_AWordTellsWhatCameIn_LeavesItOut()
    {
        ImportPlan plan = Drafted.PlanText("bank.csv", "Date,Description,Text,Amount,Transaction Type\n6/13/2025,Hill "
            + "Seed,HILL,118.40,debit\n6/14/2025,Seed market,DEPOSIT,865.00,credit\n6/15/2025,Seed refund,DEP,18.00,credit\n"
            + "6/20/2025,Fuel Stop,FUEL,40.00,debit\n", null);

        Assert.Equal(["2025-06-13 118.40 seed Hill Seed", "2025-06-20 40.00 fuel Fuel Stop"], Drafted.Rows(plan));
        Assert.Equal([3, 4], plan.LeftOut);
    }

    [Fact]
    public void Bank_AmountsThatCantBeRead_AskForACategoryAndSayWhy()
    {
        ImportPlan plan = Drafted.PlanText("bank.csv", "Date,Details,Amount\n13/06/2025,HILL SEED,118.40 DR\n14/06/2025,MARKET,865.00 "
            + "CR\n", null, "category=seed");

        Assert.Empty(plan.Rows);
        Assert.Equal(2, plan.HeldBack.Count);
        Assert.All(plan.HeldBack, row => Assert.Contains("not a number", row.Why, StringComparison.Ordinal));
    }

    [Fact]
    public void Totals_APayeeThatBeginsSo_IsAPayee()
    {
        ImportPlan plan = Drafted.PlanText("bank.csv", "Description,Date,Amount\nTOTAL FARM SUPPLY,6/13/2025,-22.00\nHILL "
            + "SEED,6/14/2025,-118.40\nSum Of Seed,6/16/2025,-5.00\nTotal,,-145.40\nTotal of June:,,-145.40\nGrand total "
            + "(USD):,6/30/2025,-145.40\n", null);

        Assert.Equal([2, 3, 4], plan.Rows.Select(row => row.Line));
        Assert.Contains(plan.Remarks, remark => remark.Contains("3 rows with totals (line 5, 6, 7)", StringComparison.Ordinal));
    }

    [Fact]
    public void Sales_WithATotalInCents_AreNoHarvest()
    {
        ImportPlan plan = Drafted.PlanText("stand.csv", "Date,Item,Qty,Total\n6/14/2025,Kale,2,6.00\n6/14/2025,Carrots,3,9.00\n", null,
            "channel=market");

        Assert.Equal("sales", plan.Table);
        Assert.Equal(["2025-06-14 Kale market 2 6.00", "2025-06-14 Carrots market 3 9.00"], Drafted.Rows(plan));
    }

    [Fact]
    public void Sales_WithPriceAndTotal_TakeTheTotal() =>
        Assert.Equal(["2025-06-14 Kale market 2 5.50"], Drafted.Rows(Drafted.PlanText("stand.csv",
            "Date,Item,Qty,Price,Total\n6/14/2025,Kale,2,3.00,5.50\n", null, "channel=market")));

    [Fact]
    public void Wide_WithAColumnOfUnits_KeepsThem()
    {
        ImportPlan plan = Drafted.PlanText("picked.csv", "Crop,Unit,6/2/2025,6/19/2025,Total\nKale,bunch,12,14,26\nCarrots,lb,,20,20\n",
            null);

        Assert.Equal(["2025-06-02 Kale 12 bunch", "2025-06-19 Kale 14 bunch", "2025-06-19 Carrots 20 lb"], Drafted.Rows(plan));
    }

    [Fact]
    public void Wide_CropMostlyNone_IsStillACrop()
    {
        ImportPlan plan = Drafted.PlanText("picked.csv", "Date,Kale (bunch),Carrots (lb),Tomatoes (lb),Garlic (head)\n"
            + "6/2/2025,12,none,none,-\n6/9/2025,14,20,none,lots\n6/16/2025,n/a,22.5,12,3\n", null);

        Assert.Equal(["2025-06-02 Kale 12 bunch", "2025-06-09 Kale 14 bunch", "2025-06-09 Carrots 20 lb", "2025-06-16 Carrots 22.5 lb",
            "2025-06-16 Tomatoes 12 lb", "2025-06-16 Garlic 3 head"], Drafted.Rows(plan));
        Assert.Equal(3, Assert.Single(plan.HeldBack).Line);
    }

    [Theory]
    [InlineData("2 lb 4 oz", "2.25 lb")]
    [InlineData("3 lbs, 8 oz.", "3.5 lb")]
    [InlineData("1/2 bu", "0.5 bu")]
    [InlineData("3 doz", "3 doz")]
    [InlineData("12?", "12")]
    public void Quantities_InWords_AreRead(string noted, string read) =>
        Assert.Equal($"2025-06-14 kale {read}", Assert.Single(Drafted.Rows(Drafted.PlanText("picked.csv",
            $"Date,Crop,Amount\n2025-06-14,kale,\"{noted}\"\n2025-06-14,kale,none\n2025-06-14,kale,1 case\n", null)),
            row => !row.Contains("case", StringComparison.Ordinal)).TrimEnd());

    [Theory]
    [InlineData("6/3")]
    [InlineData("10-12")]
    [InlineData("2 lb 4 oz 3")]
    public void Quantities_ThatCouldBeTwoNumbers_AreHeldBack(string noted)
    {
        ImportPlan plan = Drafted.PlanText("picked.csv", $"Date,Crop,Quantity\n2025-06-14,kale,{noted}\n2025-06-15,kale,4 bu\n"
            + "2025-06-16,kale,5 bu\n", null);

        Assert.Equal(2, Assert.Single(plan.HeldBack).Line);
        Assert.Equal(2, plan.Rows.Count);
    }

    [Fact]
    public void TimeSheet_InAndOut_AreTimes()
    {
        ImportPlan plan = Drafted.PlanText("clock.csv", "Employee,Date,In,Out,Break\nSam,6/13/2025,7:00 AM,3:30 PM,30\n"
            + "Sam,6/14/2025,22:00,2:00,\nJune,6/15/2025,7:00,12:15,0:15\n", null, "task=harvest");

        Assert.Equal(["2025-06-13 Sam 8 harvest", "2025-06-15 June 5 harvest"], Drafted.Rows(plan));
        Assert.Contains("work past midnight as two rows", Assert.Single(plan.HeldBack).Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Employee,Date,Regular Hours,Overtime Hours\nSam,6/13/2025,8,2\nJune,6/13/2025,7.5,\n")]
    [InlineData("Employee,Date,Regular Hours,OT,Total hours\nSam,6/13/2025,8,2,10\nJune,6/13/2025,7.5,,7.5\n")]
    [InlineData("Employee,Date,Total Hours\nSam,6/13/2025,10\nJune,6/13/2025,7.5\n")]
    public void TimeSheet_HoursBeyondTheRegularOnes_Count(string text) =>
        Assert.Equal(["2025-06-13 Sam 10 grow", "2025-06-13 June 7.5 grow"],
            Drafted.Rows(Drafted.PlanText("clock.csv", text, null, "task=grow")));

    [Fact]
    public void Hours_WithMinutesBehindThePoint_AreAsked()
    {
        const string Text = "Name,Date,Hours,Task\nSam,6/13/2025,7.30,harvest\nSam,6/14/2025,8.15,harvest\nSam,6/15/2025,6,harvest\n";

        Assert.Empty(Drafted.PlanText("clock.csv", Text, null).Rows);
        Assert.Equal(["2025-06-13 Sam 7.5 harvest", "2025-06-14 Sam 8.25 harvest", "2025-06-15 Sam 6 harvest"],
            Drafted.Rows(Drafted.PlanText("clock.csv", Text, null, "hours=hours-minutes")));
        Assert.Equal(["2025-06-13 Sam 7.3 harvest", "2025-06-14 Sam 8.15 harvest", "2025-06-15 Sam 6 harvest"],
            Drafted.Rows(Drafted.PlanText("clock.csv", Text, null, "hours=hours")));
    }

    [Fact]
    public void Hours_PartsOfADayAmongTimes_AreAsked()
    {
        const string Text = "Name,Date,Hours,Task\nSam,6/13/2025,7:30,harvest\nSam,6/14/2025,0.34375,harvest\n";

        Assert.Empty(Drafted.PlanText("clock.csv", Text, null).Rows);
        Assert.Equal(["2025-06-13 Sam 7.5 harvest", "2025-06-14 Sam 8.25 harvest"],
            Drafted.Rows(Drafted.PlanText("clock.csv", Text, null, "hours=day-part")));
    }

    [Theory]
    [InlineData("25-06-03,25-06-14,25-06-30", "2025-06-03 2025-06-14 2025-06-30")]
    [InlineData("14-06-25,20-06-25,30-06-25", "2025-06-14 2025-06-20 2025-06-30")]
    [InlineData("45811,45822,45838", "2025-06-03 2025-06-14 2025-06-30")]
    public void Dates_YearFirstOrCounted_AreReadAsTheyFitTogether(string written, string days)
    {
        ImportPlan plan = Drafted.PlanText("picked.csv", "Date,Crop,Qty\n" + string.Concat(written.Split(',')
            .Select(day => $"{day},kale,4\n")), null);

        Assert.Equal(days, string.Join(' ', plan.Rows.Select(row => row.Fields[0])));
    }

    [Theory]
    [InlineData("6/2,6/9")]
    [InlineData("Week 23,Week 24")]
    [InlineData("2-Jun,9-Jun")]
    public void Headings_WithoutAYear_AreNamed(string headings)
    {
        string source = Path.Combine(TestFolders.Make(("picked.csv", $"Crop,{headings}\nKale,12,14\n")), "picked.csv");

        string said = Assert.Throws<ArgumentException>(() => ImportDraft.Of(new ImportRequest(source))).Message;

        Assert.Contains($"\"{headings.Split(',')[0]}\" is no whole day", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Workbook_APercentage_StaysOne()
    {
        string workbook = TestWorkbooks.Raw(("Fees", "<sheetData><row>" + string.Concat(
            new[] { "Channel", "Kind", "Fee" }.Select(TestWorkbooks.Text)) + "</row><row>"
            + TestWorkbooks.Text("Depot") + TestWorkbooks.Text("market") + "<c s=\"3\"><v>0.065</v></c></row></sheetData>", "visible"));
        string map = Path.Combine(TestFolders.Make(("map.csv", "import,table,column,source_column\nfees,channels,channel,Channel\n"
            + "fees,channels,kind,Kind\nfees,channels,fee_percent,Fee\n")), "map.csv");

        ImportPlan plan = RecordsImport.Plan(workbook, "channels", map, null);

        Assert.Equal(["Depot market 6.5"], Drafted.Rows(plan));
    }

    [Fact]
    public void Again_WithAColumnMore_AddsOnlyWhatIsNew()
    {
        string folder = TestFolders.MakeBad("sound");
        Drafted.PlanText("picked.csv", "Date,Crop,Qty\n2025-05-14,kale,12\n2025-05-14,kale,12\n2025-05-15,lettuce,20\n2025-05-16,kale,4\n",
            folder).Apply();

        ImportPlan again = Drafted.PlanText("picked.csv", "Date,Crop,Qty,Notes\n2025-05-14,kale,12,\n2025-05-14,kale,12,wet\n"
            + "2025-05-14,kale,12,\n2025-05-15,lettuce,22,weighed again\n2025-05-16,kale,4,\n", folder);

        Assert.Equal([2, 3, 6], again.AlreadyThere);
        Assert.Equal(["2025-05-14 kale 12", "2025-05-15 lettuce 22"], Drafted.Rows(again));
        Assert.Contains(again.Remarks, remark => remark.StartsWith("1 row that an earlier import of this file added doesn't stand in "
            + "it any more: harvests.picked.csv line 4.", StringComparison.Ordinal));
    }

    [Fact]
    public void Again_AnotherMonthUnderTheSameName_IsAllNewAndNothingIsMissed()
    {
        string folder = TestFolders.MakeBad("sound");
        Drafted.PlanText("export.csv", "Date,Crop,Qty\n2025-05-14,kale,12\n", folder).Apply();

        ImportPlan again = Drafted.PlanText("export.csv", "Date,Crop,Qty\n2025-05-15,kale,12\n", folder);

        Assert.Single(again.Rows);
        Assert.DoesNotContain(again.Remarks, remark => remark.Contains("earlier import", StringComparison.Ordinal));
    }

    [Fact]
    public void BlankCategory_NamesTheLineOfTheMapping()
    {
        ImportPlan plan = Drafted.PlanText("bank.csv", "Date,Description,Amount\n6/13/2025,GREEN CORNER,-18.40\n", null);

        Assert.Contains("the line for \"GREEN CORNER\"", Assert.Single(plan.Problems, problem => problem.Severity == Severity.Error).Hint,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Dates_TurnedByASpreadsheet_AreWarnedOf()
    {
        string source = Path.Combine(TestFolders.Make(("picked.csv", "Date,Crop,Qty\n2025-03-06,kale,4\n13/06/2025,kale,5\n"
            + "27/06/2025,kale,6\n2025-07-07,kale,7\n")), "picked.csv");

        string note = ImportDraft.Of(new ImportRequest(source)).Lines.Single(line => line.Column == "date").Note;

        Assert.StartsWith("?", note, StringComparison.Ordinal);
        Assert.Contains("day and month of the dates may be changed about", note, StringComparison.Ordinal);
    }

    [Fact]
    public void Blocks_OfAnotherSign_AreLookedAtToo()
    {
        const string Text = "Date,Description,Amount\n6/13/2025,DEPOSIT,118.40\n6/14/2025,DEPOSIT,60.00\n\nDate,Description,Amount\n"
            + "7/14/2025,FUEL STOP,-40.00\n";

        Assert.Empty(Drafted.PlanText("bank.csv", Text, null).Rows);
        Assert.Equal(["2025-07-14 40.00 fuel FUEL STOP"], Drafted.Rows(Drafted.PlanText("bank.csv", Text, null, "amount=paid-below")));
    }

    [Fact]
    public void Rows_WithTwoSalesBesideEachOther_AreHeldBackAndNotHalved()
    {
        ImportPlan plan = Drafted.PlanText("stand.csv", "Date,Item,Qty,Amount,Item,Qty,Amount\n"
            + "6/14/2025,Kale,12,$36.00,Carrots,3,$6.00\n6/21/2025,Kale,2,$6.00,,,\n", null, "channel=market");

        Assert.Equal(["2025-06-21 Kale market 2 6.00"], Drafted.Rows(plan));
        Assert.Contains("above more than one column", Assert.Single(plan.HeldBack).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void WideMoney_WithoutQuantities_IsAskedAndItsTotalsAreThoseOfMoney()
    {
        const string Text = "Date,Kale,Carrots,Total\n6/14/2025,$36.00,$20.50,$56.50\n6/21/2025,$30.00,,$30.00\n"
            + "Total,$66.00,$20.50,$86.50\n";

        Assert.Empty(Drafted.PlanText("stand.csv", Text, null, "channel=market").Rows);
        Assert.All(Drafted.PlanText("stand.csv", Text, null, "channel=market", "quantity=1").Sums,
            sum => Assert.True(sum.Agrees, sum.What));
    }
}
