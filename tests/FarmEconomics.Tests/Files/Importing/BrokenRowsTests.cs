using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;
using Xunit;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>Rows of other programs' files that would be read as something else: held back and told. The files are made up.</summary>
public class BrokenRowsTests
{
    private const string Bank = "Date,Payee,Category,Amount\n2025-06-03,Hill Seed,seed,118.40\n";

    // 1,234.50 without quotes is 1 and 234.50: the expense was read as one dollar.
    [Fact]
    public void Plan_CommaInANumberWithoutQuotes_HoldsTheRowBack()
    {
        ImportPlan plan = Drafted.PlanText("bank.csv", Bank + "2025-06-04,Truck Co,fuel,1,234.50\n2025-06-05,Hill Seed,seed,20.00\n", null);

        Assert.Equal(["2025-06-03 118.40 seed Hill Seed", "2025-06-05 20.00 seed Hill Seed"], Drafted.Rows(plan));
        Assert.Equal(("E106", 3), Assert.Single(plan.Problems.Select(problem => (problem.Code, problem.Source.Line))));
        Assert.StartsWith("The row has 5 values but there are 4 columns.", Assert.Single(plan.HeldBack).Why, StringComparison.Ordinal);
        Assert.Contains("2025-06-04,Truck Co,fuel,1,234.50,", plan.HeldBackCsv, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_CommaInANumberOfAFileWithoutHeadings_HoldsTheRowBack()
    {
        ImportPlan plan = Drafted.PlanText(
            "bank.csv", "06/13/2026,Hill Seed,-118.40\n06/14/2026,Fuel Stop,-1,040.00\n06/15/2026,Seed Barn,-9.50\n", null);

        Assert.Equal(["2026-06-13 118.40 seed Hill Seed", "2026-06-15 9.50 seed Seed Barn"], Drafted.Rows(plan));
        Assert.Equal(2, Assert.Single(plan.HeldBack).Line);
    }

    // A spreadsheet writes as many commas in its heading row as in every other: notes under no heading part no number.
    [Fact]
    public void Plan_NotesUnderNoHeading_AreNoFault()
    {
        ImportPlan plan = Drafted.PlanText(
            "bank.csv", "Date,Payee,Category,Amount,\n2025-06-03,Hill Seed,seed,118.40,paid in cash\n", null);

        Assert.Equal(["2025-06-03 118.40 seed Hill Seed"], Drafted.Rows(plan));
        Assert.Empty(plan.Problems);
    }

    // Lines 3 to 5 are one field of the row that begins in line 3: four rows became one of four bunches.
    [Fact]
    public void Plan_QuoteThatIsNeverClosed_HoldsTheRowBackWithItsReason()
    {
        ImportPlan plan = Drafted.PlanText("sold.csv", "Date,Item,Qty,Amount,Where\n2025-05-10,lettuce,1,1.50,market\n"
            + "2025-05-11,\"lettuce,2,3.00,market\n2025-05-12,lettuce,3,4.50,market\n2025-05-13,\"kale\",4,10.00,market\n"
            + "2025-05-14,kale,5,12.50,market\n", null);

        Assert.Equal(["2025-05-10 lettuce market 1 1.50", "2025-05-14 kale market 5 12.50"], Drafted.Rows(plan));
        Assert.Equal(("E105", 3), Assert.Single(plan.Problems.Select(problem => (problem.Code, problem.Source.Line))));
        Assert.Equal("Text follows a closing quote.", Assert.Single(plan.HeldBack).Why);
    }

    [Fact]
    public void Plan_QuoteOpenToTheEndOfAFile_IsToldThoughOnlyARemarkIsLeftOfIt()
    {
        ImportPlan plan = Drafted.PlanText("bank.csv", Bank + "\"a note that goes on\n2025-06-04,Truck Co,fuel,12.50\n", null);

        Assert.Single(plan.Rows);
        Assert.Contains("never closed", Assert.Single(plan.Problems, problem => problem.Code == "E105").Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_FirstLineOfAFileWithoutHeadingsInError_StopsNoOther()
    {
        ImportPlan plan = Drafted.PlanText("bank.csv", "06/13/2026,Zorgon,-11.40\n06/14/2026,Fuel Stop,-40.00\n06/15/2026,Market,865.00\n",
            TestFolders.MakeBad("sound"));

        Assert.Equal(["2026-06-14 40.00 fuel Fuel Stop"], Drafted.Rows(plan));
        Assert.Equal(1, Assert.Single(plan.HeldBack).Line);
        Assert.Equal(1, Assert.Single(plan.Problems, problem => problem.Code == "E110").Source.Line);
    }

    // A clock nobody stopped ran for 25 hours; they were read as one.
    [Theory]
    [InlineData("2025-06-03 08:00,2025-06-04 09:00", null)]
    [InlineData("2025-06-03 22:00,2025-06-04 01:00", null)]
    [InlineData("2025-06-03 08:00,2025-06-03 12:30", "2025-06-03 Ada 4.5 harvest")]
    [InlineData("08:00,2025-06-03 12:30", "2025-06-03 Ada 4.5 harvest")]
    public void Plan_StartAndEndOnTwoDays_AreNoHoursOfOne(string times, string? row)
    {
        ImportPlan plan = Drafted.PlanText("clock.csv", $"Date,Employee,Clock in,Clock out,Job\n2025-06-03,Ada,{times},harvest\n"
            + "2025-06-05,Ada,2025-06-05 08:00,2025-06-05 09:00,harvest\n", null);

        Assert.Equal(row is null ? [] : [row], Drafted.Rows(plan).SkipLast(1));
        Assert.Equal(row is null ? 1 : 0, plan.HeldBack.Count(held => held.Why.Contains("are on two days", StringComparison.Ordinal)));
        Assert.All(plan.Problems, problem => Assert.StartsWith("Correct the times", problem.Hint, StringComparison.Ordinal));
    }

    // "harvest" and "field" are headings elsewhere; here they are what was done, and where.
    [Fact]
    public void Plan_RecordOfWordsThatAreHeadingsElsewhere_IsARecord()
    {
        ImportPlan plan = Drafted.PlanText("hours.csv", "Date,Task,Field,Hours\n2025-06-03,weeding,A1,7:30\n2025-06-04,harvest,field,2:30\n"
            + "2025-06-05,weeding,A1,1:30\n", null, "worker=Ada");

        Assert.Equal(["2025-06-03 Ada 7.5 weeding", "2025-06-04 Ada 2.5 harvest", "2025-06-05 Ada 1.5 weeding"], Drafted.Rows(plan));
    }

    [Fact]
    public void Plan_ValueTwiceInAWideTable_NamesTheLineItStandsIn()
    {
        ImportPlan plan = Drafted.PlanText("picked.csv", "Date,Lettuce,Kale,Kale,Total\n6/14/2025,1,2,3,6\n6/15/2025,1,3,3,7\n",
            TestFolders.MakeBad("sound"));

        Assert.Equal("The row says the same as line 3 (under \"Kale\").", Assert.Single(plan.Problems).Message);
        Assert.Equal(6, plan.Rows.Count);
    }

    [Fact]
    public void Draft_DaysOfTwoForms_AreAskedWithADayThatBothRead()
    {
        string source = Path.Combine(TestFolders.Make(("sold.csv", "Date,Item,Qty,Amount,Where\n13/06/2025,lettuce,1,2.00,market\n"
            + "06/14/2025,lettuce,1,2.00,market\n05/06/2025,kale,1,2.00,market\n")), "sold.csv");

        DraftQuestion asked = Assert.Single(ImportDraft.Of(new ImportRequest(source)).Questions, question => question.Column == "date");

        Assert.StartsWith("05/06/2025 is May 6, 2025 or Jun 5, 2025: keep the form that is right; 1 of 3 are no days", asked.Why,
            StringComparison.Ordinal);
    }
}
