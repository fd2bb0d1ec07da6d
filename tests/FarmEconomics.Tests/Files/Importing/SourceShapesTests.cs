using System.Text;
using FarmEconomics.Files.Importing;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>
/// Files made up in the shapes that downloads of banks, registers and time clocks have. The shapes of the banks are those of the bank2ynab project's settings and
/// test files (github.com/bank2ynab/bank2ynab, MIT), those of registers and time sheets the headings seen in public code; every line is invented.
/// </summary>
public class SourceShapesTests
{
    [Fact]
    public void Picking_UnitsInALineBelowTheNames_AreTheUnitsOfTheNames()
    {
        ImportPlan plan = Drafted.PlanText(
            "picked.csv",
            "Picking sheet,,,\n,,,\nDate,Salad mix,Kale,Carrots\n,lb,bunch,(lb)\n2025-06-03,8,,12\n2025-06-10,9,7,\nTotal,17,7,12\n",
            null
        );

        Assert.Equal("harvests", plan.Table);
        Assert.Equal(
            ["2025-06-03 Salad mix 8 lb", "2025-06-03 Carrots 12 lb", "2025-06-10 Salad mix 9 lb", "2025-06-10 Kale 7 bunch"],
            Drafted.Rows(plan)
        );
        Assert.All(plan.Sums, sum => Assert.True(sum.Agrees));
    }

    [Fact]
    public void Register_HeadingsOfTwoLines_AreReadByTheLower()
    {
        ImportPlan plan = Drafted.PlanText(
            "register.csv",
            "Item sales report,,,,,\n,,,Item,Gross,Net\nDate,Time,Receipt,Name,Qty,Sales\n5/25/2025,11:15 AM,R1,Kale,6,$18.00\n",
            null,
            "channel=market"
        );

        Assert.Equal("sales", plan.Table);
        Assert.Equal(["2025-05-25 Kale market 6 18.00"], Drafted.Rows(plan));
    }

    [Fact]
    public void Plantings_WhereTheyStood_IsTheBed()
    {
        ImportPlan plan = Drafted.PlanText("plan.txt", "Crop\tWhere\tFeet\tIn\tOut\nKale\tNorth field\t90\t4/13/2025\t11/28/2025\n", null);

        Assert.Equal("plantings", plan.Table);
        Assert.Equal(["Kale North field 90 2025-04-13 2025-11-28"], Drafted.Rows(plan));
    }

    [Fact]
    public void Bank_SummaryAboveTheHeadings_IsPassedOver()
    {
        ImportPlan plan = Drafted.PlanText("stmt.csv", "Description,,Summary Amt.\nBeginning balance as of 06/01/2026,,\"4,210.55\"\nTotal credits,,\"3,118.00\"\nTotal debits,,\"-2,904.10\"\nEnding balance as of 06/30/2026,,\"4,424.45\"\n\n"
            + "Date,Description,Amount,Running Bal.\n06/13/2026,\"HILL SEED 0042 ANYTOWN\",\"-118.40\",\"4,092.15\"\n06/15/2026,\"DEPOSIT\",\"865.00\",\"4,957.15\"\n06/16/2026,\"FUEL STOP 17\",\"-1,002.50\",\"3,954.65\"\n", null);

        Assert.Equal("expenses", plan.Table);
        Assert.Equal(["2026-06-13 118.40 seed HILL SEED 0042 ANYTOWN", "2026-06-16 1002.50 fuel FUEL STOP 17"], Drafted.Rows(plan));
        Assert.Single(plan.LeftOut);
    }

    [Fact]
    public void Bank_MoneyOutAndInApart_TakesWhatWasPaid()
    {
        ImportPlan plan = Drafted.PlanText("bank.csv", "Account,1234\nFrom,06/01/2026\n\nDate,Ref,Branch,Payee,Out,In,Note\n06/13/2026,,,Hill Seed,118.40,,\n06/14/2026,,,Market deposit,,865.00,\n", null);

        Assert.Equal(["2026-06-13 118.40 seed Hill Seed"], Drafted.Rows(plan));
        Assert.Single(plan.LeftOut);
    }

    [Fact]
    public void Bank_NoHeadingsAtAll_NumbersTheColumns()
    {
        ImportPlan plan = Drafted.PlanText("export.csv", "x,1,06/13/2026,card,Hill Seed Anytown,y,-118.40\nx,2,06/14/2026,card,Fuel Stop Anytown,y,-40.00\nx,3,06/15/2026,transfer,Market,y,865.00\n", null);

        Assert.Equal(["2026-06-13 118.40 seed Hill Seed Anytown", "2026-06-14 40.00 fuel Fuel Stop Anytown"], Drafted.Rows(plan));
    }

    [Fact]
    public void Bank_NoHeadingsTenColumns_TellsOutFromIn()
    {
        ImportPlan plan = Drafted.PlanText("export.csv", "06/13/2026,a,b,Hill Seed,118.40,,,,,\n06/14/2026,a,b,Market deposit,,865.25,,,,\n06/15/2026,a,b,Fuel Stop,40.10,,,,,\n", null);

        Assert.Equal(["2026-06-13 118.40 seed Hill Seed", "2026-06-15 40.10 fuel Fuel Stop"], Drafted.Rows(plan));
    }

    [Theory]
    [InlineData("Status,Date,Check,Memo,Amount\nok,06/13/2026,,Hill Seed,-118.40\n")]
    [InlineData("Status,Transaction Date,Posting Date,Memo,Card,Place,Amount\nok,06/13/2026,06/15/2026,Hill Seed,9,x,-118.40\n")]
    public void Bank_ColumnsMovedOverTheYears_AreReadByName(string text) =>
        Assert.Equal(["2026-06-13 118.40 seed Hill Seed"], Drafted.Rows(Drafted.PlanText("bank.csv", text, null)));

    [Fact]
    public void Bank_RowsLongerThanTheHeadingsWithCheckNumbers_AreAddedOnceByTheirNumber()
    {
        const string Text = "Details,Posting Date,Description,Amount,Type,Balance,Check or Slip #\nDEBIT,06/14/2026,\"FARM SUPPLY            0611 ANYTOWN\",-42.17,DEBIT_CARD,1201.90,,\n"
            + "DSLIP,06/16/2026,\"REMOTE DEPOSIT     1\",865.00,CHECK_DEPOSIT,2066.90,,\nCHECK,06/18/2026,\"CHECK 1031\",-300.00,CHECK_PAID,1766.90,1031,\n";
        string folder = TestFolders.MakeBad("sound");
        string map = Path.Combine(TestFolders.Make(), "map.csv");
        string source = Path.Combine(TestFolders.Make(("bank.csv", Text)), "bank.csv");
        File.WriteAllText(map, FarmEconomics.Files.Importing.Drafts.ImportDraft.Of(new ImportRequest(source)).Csv.Replace(",CHECK 1031,,,", ",CHECK 1031,,rent,", StringComparison.Ordinal).Replace(",CHECK,starts,,", ",CHECK,starts,rent,", StringComparison.Ordinal));

        ImportPlan plan = RecordsImport.Plan(new ImportRequest(source) { Map = map, Folder = folder });
        plan.Apply();
        string later = Path.Combine(TestFolders.Make(("bank.csv", Text.Replace("\"CHECK 1031\"", "\"CHECK 1031 PAID\"", StringComparison.Ordinal))), "bank.csv");

        Assert.Equal(["2026-06-14 42.17 supplies FARM SUPPLY            0611 ANYTOWN", "2026-06-18 300.00 rent CHECK 1031"], Drafted.Rows(plan));
        Assert.Empty(RecordsImport.Plan(new ImportRequest(later) { Folder = folder }).Rows);
    }

    [Fact]
    public void Bank_SecondRowWithADescriptionOnly_IsARemark()
    {
        ImportPlan plan = Drafted.PlanText("history.csv", "Balance,\"6,666.66\"\n\nDate,Description,Debit,Credit\n14/06/2026,Hill Seed,118.40,\n,card payment at the counter,,\n15/06/2026,Fuel Stop,40.00,\n,card payment at the pump,,\n", null);

        Assert.Equal(["2026-06-14 118.40 seed Hill Seed", "2026-06-15 40.00 fuel Fuel Stop"], Drafted.Rows(plan));
        Assert.Contains(plan.Remarks, remark => remark.Contains("2 rows with one remark", StringComparison.Ordinal));
    }

    [Fact]
    public void Bank_MarkPendingRowsAndMoneySigns_HoldsThePendingRowBack()
    {
        ImportPlan plan = Drafted.PlanText("smith.csv", "\uFEFFDate,Description,Withdrawals,Deposits,\n13 Jun 2026,Hill Seed,\"$1,118.40\",,\nPending,Fuel Stop,$40.00,,\n15 Jun 2026,Deposit,,\"$2,000.00\",\n", null);

        Assert.Equal(["2026-06-13 1118.40 seed Hill Seed"], Drafted.Rows(plan));
        Assert.Contains("not a date: \"Pending\"", Assert.Single(plan.HeldBack).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void Bank_Latin1WithMixedLineEnds_KeepsItsLetters()
    {
        string text = "Date;Payee;" + string.Concat(Enumerable.Range(1, 23).Select(at => $"x{at};")) + "Amount\r\n13.06.2026;Gärtnerei Löwe Seed;" + new string(';', 23) + "-118,40\r14.06.2026;Café;" + new string(';', 23) + "-4,00\n";
        string source = Path.Combine(TestFolders.Make(), "a.csv");
        File.WriteAllBytes(source, Encoding.Latin1.GetBytes(text));

        ImportPlan plan = Drafted.Plan(source, null);

        Assert.Contains("2026-06-13 118.40 seed Gärtnerei Löwe Seed", Drafted.Rows(plan));
        Assert.Contains("Windows-1252", plan.Remarks[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Bank_SemicolonsAndDecimalCommas_AreSeenByThemselves() =>
        Assert.Equal(["2026-06-13 3.40 seed Hill Seed", "2026-06-14 1240.50 fuel Fuel Stop"], Drafted.Rows(Drafted.PlanText("export.csv",
            "Date ;Payee ;Amount ;Credit ;Debit\n13/06/2026 ; Hill Seed ; -3,40 ; ; 3,40\n14/06/2026 ; Fuel Stop ; -1.240,50 ; ; 1.240,50\n15/06/2026 ; Market ; 20,00 ; 20,00 ; \n", null)));

    [Fact]
    public void Bank_BarsBetweenAndAnAccountsLineFirst_IsReadWithoutHeadings() =>
        Assert.Equal(["2026-06-13 118.40 seed Hill Seed USD 118.40", "2026-06-14 40.00 fuel Fuel Stop USD 41.00"], Drafted.Rows(Drafted.PlanText("kta.dat",
            "1234567|Farm|USD\n20260613|x|Hill Seed USD 118.40|-118.40\n20260614|x|Fuel Stop USD 41.00|-40.00\n20260615|x|Market|20.00\n", null)));

    [Fact]
    public void Bank_BalanceOnTheLastRowOfADayAndOneDecimal_IsRead() =>
        Assert.Equal(["2026-06-13 428.03 seed Ó Hill Seed", "2026-06-13 29.50 fuel Fuel Stop"], Drafted.Rows(Drafted.PlanText("export.csv",
            "Date,Details,Debit,Credit,Balance\n13/06/2026,Ó Hill Seed,428.03,,\n13/06/2026,Fuel Stop,29.5,,1000.00\n", null)));

    [Fact]
    public void Bank_AmountGluedToTheTextWithoutHeadings_TakesTheAmountOfItsColumn() =>
        Assert.Equal(["2026-02-10 118.40 seed HILL SEED 118.40", "2026-02-11 40.05 fuel FUEL STOP 40.05"], Drafted.Rows(Drafted.PlanText("statement_1.csv", "10 Feb 26,HILL SEED 118.40,118.40\n11 Feb 26,FUEL STOP 40.05,40.05\n", null)));

    [Theory]
    [InlineData("Date,Time,Time Zone,Category,Item,Qty,Price Point Name,SKU,Modifiers Applied,Gross Sales,Discounts,Net Sales,Tax,Transaction ID", "")]
    [InlineData("Date,Time,Time Zone,Category,Item,Qty,Price Point Name,SKU,Modifiers Applied,Gross Sales,Discounts,Net Sales,Tax,Transaction ID,Payment ID,Device Name,Notes,Details,Event Type,Location,Dining Option,Customer ID,Customer Name,Customer Reference ID,Unit,Count,GTIN,Itemization Type,Commission,Employee,Fulfillment Note,Channel,Token,Card Brand,PAN Suffix",
        ",P1,Till,,,Payment,Stand,,,,,,,,,,,,,,,")]
    public void Register_ItemsWithARefund_ReduceSalesAndComeInOnce(string headings, string rest)
    {
        string folder = TestFolders.MakeBad("sound");
        string text = headings + $"\n2025-05-17,09:10:00,X,Greens,lettuce,3,Regular,,,$12.00,$0.00,$12.00,$0.00,T1{rest}\n2025-05-17,09:12:00,X,Greens,lettuce,3,Regular,,,$12.00,$0.00,$12.00,$0.00,T2{rest}\n"
            + $"2025-05-17,10:00:00,X,Greens,kale,-1,Regular,,,-$4.00,$0.00,-$4.00,$0.00,T3{rest}\n";

        ImportPlan plan = Drafted.PlanText("items.csv", text, folder, "channel=market");
        plan.Apply();

        Assert.Equal(["2025-05-17 lettuce market 3 12.00", "2025-05-17 lettuce market 3 12.00", "2025-05-17 kale market 0 -4.00"], Drafted.Rows(plan).Select(row => row.Replace("  ", " ", StringComparison.Ordinal)));
        Assert.DoesNotContain(plan.Problems, problem => problem.Code == "W202");
        Assert.Empty(Drafted.PlanText("items.csv", text, folder, "channel=market").Rows);
    }

    [Fact]
    public void TimeSheet_ClockInAndOut_GivesHoursLessTheBreak()
    {
        ImportPlan plan = Drafted.PlanText("clock.csv", "Employee,Date,Clock In,Clock Out,Break,Status\nAda,05/17/2026,6:28 AM,3:02 PM,30,ok\nAda,05/18/2026,07:00,12:15,,ok\nAda,05/19/2026,07:00,,,open\n", null, "task=harvest");

        Assert.Equal(["2026-05-17 Ada 8.0666666667 harvest", "2026-05-18 Ada 5.25 harvest"], Drafted.Rows(plan));
        Assert.Contains("a start or an end, not both", Assert.Single(plan.HeldBack).Why, StringComparison.Ordinal);
    }

    [Fact]
    public void TimeSheet_AColumnForEachDay_ReadsTimesInAndOutAndRefusesOddOnes()
    {
        ImportPlan plan = Drafted.PlanText("days.csv", "Employee ID,Employee Name,Department,14-Sep-26,15-Sep-26,16-Sep-26\n1,Ada,Field,\"06:28,15:02\",\"06:29,12:15,15:00\",ABSENT\n2,Bo,Field,-,6.3B,\"07:00,12:00,12:30,15:30\"\n", null, "task=harvest");

        Assert.Equal(["2026-09-14 Ada 8.5666666667 Field", "2026-09-16 Bo 8 Field"], Drafted.Rows(plan).Select(row => row));
        Assert.Equal(["3 times, in and out by turns: one is missing", "6.3B"], plan.HeldBack.Select(row => row.Why.Contains("6.3B", StringComparison.Ordinal) ? "6.3B" : row.Why.Contains("3 times, in and out by turns: one is missing", StringComparison.Ordinal) ? "3 times, in and out by turns: one is missing" : row.Why));
        Assert.Equal(2, plan.LeftOut.Count);
    }

    [Fact]
    public void TimeSheet_TitleLineAndRates_TakesTheHours() =>
        Assert.Equal(["2026-05-17 Ada 7.5 harvest"], Drafted.Rows(Drafted.PlanText("sheet.csv", "Time sheets May 2026 (UTC)\n\nEmployee,Date,Clock in,Clock out,Hours,Rate,Labor cost,In location,Out location,Source,Edited,Note\nAda,05/17/2026,7:00 AM,2:30 PM,7.5,15,112.50,x,x,app,no,\n", null, "task=harvest")));

    [Fact]
    public void TimeSheet_GrossAndNetHours_TakesTheNetOnes() =>
        Assert.Equal(["2026-05-17 Ada 7.5 harvest"], Drafted.Rows(Drafted.PlanText("sheet.csv", "Employee,Date,Clock In,Clock Out,Gross Hours,Break Deduction,Net Hours,Regular Hours,Daily OT,Weekly OT,Notes\nAda,05/17/2026,7:00,15:00,8.0,0.5,7.5,7.5,0,0,\n", null, "task=harvest")));

    [Fact]
    public void TimeSheet_NamesWithACommaAndDurations_KeepsBoth() =>
        Assert.Equal(["2026-05-17 Diaz, Ana 7.5 harvest"], Drafted.Rows(Drafted.PlanText("sheet.csv", "Employee,Date,Clock in,Clock out,Hours,Cost,Flags\n\"Diaz, Ana\",05/17/2026,7:00,14:30,7h30,112.50,\n", null, "task=harvest")));
}
