using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Files;
using FarmEconomics.Tests.Generators;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Funding;

public class FundingWriteUpTests
{
    internal const string Assumed = "hours_saved=60; losses_saved_percent=50; power_saved_kwh=-300; new_loan=2000; new_loan_percent=6; new_loan_years=3; indirect_percent=10; match_percent=25; in_kind_hours=10; price_factor=1.02; area_factor=1.05; wage_factor=1.04";
    internal const string Classes = "Field panels and mounts=5; Truck=5";

    internal static FarmReview Demo { get; } = FarmFolder.Open(Path.Combine(TestFolders.Repository, "demo-data")).Review!;

    [Theory]
    [InlineData(2023)]
    [InlineData(2024)]
    [InlineData(2025)]
    public void Checks_DemoFarm_EveryDifferenceIsZero(int year)
    {
        FundingWriteUp writeUp = FundingWriteUp.Of(Demo, year, "larger cold room", FundingAssumptions.Parse(Assumed, Classes));

        Assert.All(writeUp.Checks, check => Assert.True(check.Difference == 0m, $"{check.Name}: {check.Left} against {check.Right}"));
        Assert.True(writeUp.Checks.Count > 45);
        Assert.Equal(0m, writeUp.Bridge.NotExplained);
    }

    [Fact]
    public void Checks_RandomFarm_EveryDifferenceIsZero() => CsCheck.Check.Sample(
        RandomFarm.Gen,
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (int year in review.Charges.Years)
            {
                FundingWriteUp writeUp = FundingWriteUp.Of(review, year, null, FundingAssumptions.None);
                Assert.All(writeUp.Checks, check => Assert.True(check.Difference == 0m, $"{year} {check.Name}: {check.Left} against {check.Right}"));
                Assert.Equal(0m, writeUp.Bridge.NotExplained);
                Assert.Equal(writeUp.Cash.NetCash, writeUp.LastYear.Closing[^1]);
            }
        },
        iter: 150, threads: 2, print: farm => farm.ToString());

    [Fact]
    public void CashBook_DemoFarm_HoldsEveryRowOfTheYearOnce()
    {
        CashBook book = FundingWriteUp.Of(Demo, 2025, null, FundingAssumptions.None).Cash;
        FarmRecords records = Demo.Records;

        Assert.Equal(records.Expenses.Where(row => row.Date.Year == 2025).Sum(row => row.Amount), -book.Entries.Where(entry => entry.Row is ExpenseRow).Sum(entry => entry.Amount));
        Assert.Equal(records.Income.Where(row => row.Date.Year == 2025).Sum(row => row.Amount), book.Sum(CashKind.ShareIncome, CashKind.OtherIncome));
        Assert.All(book.Entries, entry => Assert.Equal(2025, entry.Date.Year));
    }

    [Fact]
    public void Of_DemoLoan_IsWhatTheBooksHold()
    {
        FundingWriteUp writeUp = FundingWriteUp.Of(Demo, 2025, null, FundingAssumptions.None);

        Assert.Equal(-writeUp.Cash.Sum(CashKind.Interest), writeUp.Inputs.TermInterest.Value);
        // The season loan, drawn in March and paid back in September, is no term debt; its interest is a running cost.
        Assert.Equal(-writeUp.Cash.Sum(CashKind.Principal) - 9000m, writeUp.Inputs.TermPrincipal.Value);
        Assert.Equal(9000m, writeUp.LastYear.Lines.Single(line => line.Name == "Loans paid out").Total);
        Assert.Contains("what the loans' schedules say", writeUp.Closing!.LoansNote, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_WithoutBalances_SaysWhichInputIsMissing()
    {
        FundingWriteUp writeUp = FundingWriteUp.Of(Demo, 2023, null, FundingAssumptions.None);

        Assert.Null(writeUp.Opening);
        Assert.False(writeUp.LastYear.OperatingLoan(0m).IsAvailable);
        Assert.Contains("no balance sheet within a month before", writeUp.Measures.First(measure => measure.Name == "Asset turnover").Value.Reason, StringComparison.Ordinal);
        Assert.False(writeUp.Tax.NetProfit.IsAvailable);
    }

    [Fact]
    public void Next_AllFactorsOne_KeepsTheMonthlyPatternOfSales()
    {
        FundingWriteUp writeUp = FundingWriteUp.Of(Demo, 2025, null, FundingAssumptions.None);

        Assert.Equal(writeUp.LastYear.Lines.First(line => line.Name == "Sales of produce").Months, writeUp.NextYear.Lines.First(line => line.Name == "Sales of produce").Months);
        Assert.All(writeUp.Crops, crop => Assert.All(crop.Lines, line => Assert.True(Math.Abs(line.Last - line.Next) <= 0.01m * 3, line.ToString())));
    }

    [Fact]
    public void Next_WithoutALoansTable_PaysTheDebtAsTheBooksDid()
    {
        FarmBuilder farm = new FarmBuilder().AsOf("2025-12-31").Crop("Beets").Bed("One").Planting("B1", "Beets", "One", 10m, "2025-05-01", "2025-07-15")
            .Pick("2025-07-14", "B1", 7m).Channel("stall", ChannelKind.Market).Sell("2025-07-14", "Beets", "stall", 7m, amount: 900m)
            .Category("truck note, interest", ExpenseClass.Interest).Category("truck note, principal", ExpenseClass.Principal)
            .Spend("2025-03-01", 40m, "truck note, interest").Spend("2025-03-01", 360m, "truck note, principal");

        CashFlow next = FundingWriteUp.Of(farm.Review(), 2025, null, FundingAssumptions.None).NextYear;

        Assert.Equal(400m, next.Out.Sum());
        Assert.Equal(400m, next.Out[2]);

        // With a loans table its schedules say what is due, and the books' payments would count twice.
        CashFlow scheduled = FundingWriteUp.Of(Demo, 2025, null, FundingAssumptions.None).NextYear;
        Assert.DoesNotContain(scheduled.Lines, line => line.Name is "Loan principal" or "Interest on loans for assets");
        Assert.Contains(scheduled.Lines, line => line.Name.StartsWith("Payments on ", StringComparison.Ordinal));
    }

    [Fact]
    public void Investment_CostOfCapitalNotKnown_SaysSoInsteadOfDiscountingByZero()
    {
        FarmReview noInterest = FarmReview.Of(FarmRecords.Link(Demo.Records.Tables, Demo.Records.Settings with { InterestPercent = null }));
        Investment Of(FarmReview review, string assumed) => FundingWriteUp.Of(review, 2025, "Larger cold room", FundingAssumptions.Parse(assumed)).Investment!;

        Investment unknown = Of(noInterest, "hours_saved=60");

        Assert.Null(unknown.WithGrant);
        Assert.Null(unknown.WithoutGrant);
        Assert.Empty(unknown.HangsOn);
        Assert.Contains("the cost of capital isn't known", unknown.Missing, StringComparison.Ordinal);
        Assert.Equal(0.04m, Of(noInterest, "hours_saved=60; discount_percent=4").WithGrant!.Rate);
        Assert.Null(Of(Demo, "hours_saved=60").Missing);
        Assert.Contains("no yearly saving is assumed", Of(Demo, "").Missing, StringComparison.Ordinal);
    }

    [Fact]
    public void SalesMayFall_WhenTheyFallThatFar_CoverageIsTheWantedRatio()
    {
        DebtCoverage coverage = new("debt", Result.Known(5000m), Result.Known(2000m), 40000m, 1000m, 1.25m);
        decimal share = coverage.SalesMayFall.Value!.Value;

        Assert.Equal(1.25m, (5000m - (share * 39000m)) / 2000m, 10);
        Assert.Equal(2.5m, coverage.Coverage.Value);
    }

    [Theory]
    [InlineData("hours_savd=3", "did you mean hours_saved")]
    [InlineData("hours_saved=many", "must be a number")]
    [InlineData("project_life_years=0", "whole number from 1 to 40")]
    [InlineData("price_factor=-1", "from 0 to 100")]
    [InlineData("indirect_classes=persons", "no object class")]
    [InlineData("hours_saved", "no value")]
    [InlineData("match_base=half", "one of total, award")]
    [InlineData("hours_saved=10; hours_saved=20", "hours_saved is given twice, as 10 and as 20")]
    [InlineData("new_loan_percent=7", "new_loan_percent needs new_loan, the amount asked for")]
    [InlineData("new_loan_years=5", "new_loan_years needs new_loan, the amount asked for")]
    [InlineData("new_loan=5000; new_loan_percent=7; new_loan_years=5.3", "a whole number of payments, not 63.6")]
    [InlineData("hire_rate=30", "hire_rate needs own_running_cost")]
    [InlineData("own_running_cost=30", "own_running_cost needs hire_rate")]
    [InlineData("use_a_year=30", "use_a_year needs hire_rate and own_running_cost")]
    public void Parse_BadAssumption_SaysWhatIsWrong(string text, string message) =>
        Assert.Contains(message, Assert.Throws<ArgumentException>(() => FundingAssumptions.Parse(text)).Message, StringComparison.Ordinal);

    [Fact]
    public void Parse_ClassGivenTwice_IsRefused()
    {
        Assert.Contains("Truck is given twice, as 5 and as 7",
            Assert.Throws<ArgumentException>(() => FundingAssumptions.Parse("", "Truck=5; truck=7"))
                .Message.Replace("truck", "Truck", StringComparison.Ordinal),
            StringComparison.Ordinal);
        Assert.Single(FundingAssumptions.Parse("", "Truck=5; truck=5").Classes);
    }

    [Theory]
    [InlineData("grant_month=5")]
    [InlineData("hours_saved=5")]
    [InlineData("indirect_percent=10")]
    public void Of_AssumptionOfAProjectWithoutAProject_IsRefused(string text) =>
        Assert.Contains("is of a project, and none is asked for",
            Assert.Throws<ArgumentException>(() => FundingWriteUp.Of(Demo, 2025, null, FundingAssumptions.Parse(text))).Message,
            StringComparison.Ordinal);

    [Theory]
    [InlineData("project_life_years=2; saving_pattern=50, 80, 100", "saving_pattern names 3 years, but the project serves 2")]
    [InlineData("project_salvage=20000", "is to fetch 20,000.00 at the end and costs 14,800.00")]
    public void Of_AssumptionThatDoesNotFitTheProject_IsRefused(string text, string message) =>
        Assert.Contains(message,
            Assert.Throws<ArgumentException>(() => FundingWriteUp.Of(Demo, 2025, "Larger cold room", FundingAssumptions.Parse(text)))
                .Message,
            StringComparison.Ordinal);

    [Fact]
    public void Of_UnknownProjectOrAsset_NamesTheNearest()
    {
        Assert.Contains("it holds Larger cold room", Assert.Throws<ArgumentException>(() => FundingWriteUp.Of(Demo, 2025, "barn", FundingAssumptions.None)).Message, StringComparison.Ordinal);
        Assert.Contains("did you mean Truck", Assert.Throws<ArgumentException>(() => FundingWriteUp.Of(Demo, 2025, null, FundingAssumptions.Parse("", "Trucks=5"))).Message, StringComparison.Ordinal);
        Assert.Contains("no class of 4 years", Assert.Throws<ArgumentException>(() => FundingWriteUp.Of(Demo, 2025, null, FundingAssumptions.Parse("", "Truck=4"))).Message, StringComparison.Ordinal);
    }
}
