using FarmEconomics.Records;
using FarmEconomics.Budgets;
using System.Text.Json;
using CsCheck;
using FarmEconomics.Funding;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.Tests.Funding;

public class CreditLineTests
{
    [Fact]
    public void Of_PublishedExercise_AgreesMonthByMonth()
    {
        JsonElement fixture = Fixture.Load("credit-line-months");
        decimal[] nets = [.. fixture.Numbers("receipts").Zip(fixture.Numbers("payments"), (moneyIn, moneyOut) => moneyIn - moneyOut)];

        CreditLine line = CreditLine.Of(nets, fixture.Number("opening_cash"), 0m,
            new CreditLineTerms(fixture.Number("annual_rate"), fixture.Number("minimum_cash"), 1m, DrawTiming.End) { InterestUnit = 1m });

        Assert.Equal(fixture.Numbers("interest"), line.Months.Select(month => month.Interest));
        Assert.Equal(fixture.Numbers("drawn"), line.Months.Select(month => month.Drawn));
        Assert.Equal(fixture.Numbers("repaid"), line.Months.Select(month => month.Repaid));
        Assert.Equal(fixture.Numbers("closing_cash"), line.Months.Select(month => month.Closing));
        Assert.Equal(fixture.Numbers("closing_loan"), line.Months.Select(month => month.Owed));
    }

    [Fact]
    public void Of_DrawAtTheBeginning_PaysInterestOneMonthMore()
    {
        CreditLine Line(DrawTiming draw) => CreditLine.Of([-1000m, 2000m], 0m, 0m, new CreditLineTerms(0.12m, 0m, 100m, draw));

        // 1,000 short: at the end 1,000 is drawn; at the beginning 1,100, since 1,000 leaves nothing for its own 1 percent.
        Assert.Equal([0m, 10m], Line(DrawTiming.End).Months.Select(month => month.Interest));
        Assert.Equal([11m, 11m], Line(DrawTiming.Start).Months.Select(month => month.Interest));
        Assert.Equal((1100m, 0m), (Line(DrawTiming.Start).Most, Line(DrawTiming.Start).Owed));
    }

    [Fact]
    public void Of_AnyYear_KeepsTheLeastCashAndLosesNothing() => Check.Sample(
        Gen.Select(Gen.Int[-500_000, 500_000].Array[12], Gen.Int[0, 300_000], Gen.Int[0, 200_000], Gen.Int[0, 30], Gen.Int[0, 3].Select(i => new[] { 1m, 50m, 100m, 1000m }[i]), Gen.Bool),
        (cents, cash, least, percent, step, start) =>
        {
            CreditLineTerms terms = new(percent / 100m, least / 100m, step, start ? DrawTiming.Start : DrawTiming.End);
            CreditLine line = CreditLine.Of([.. cents.Select(cent => cent / 100m)], cash / 100m, 0m, terms);

            Assert.All(line.Months, month => Assert.True(month.Closing >= terms.Minimum));
            Assert.All(line.Months, month => Assert.True(month.Drawn % step == 0m && month.Owed >= 0m && (month.Drawn == 0m || month.Repaid == 0m)));

            // One step less would not have done, and one step more could not have been paid back.
            Assert.All(line.Months.Where(month => month.Drawn > 0m), month => Assert.True(month.Closing - terms.Minimum < step + 0.01m));
            Assert.All(line.Months.Where(month => month.Owed > 0m && month.Drawn == 0m), month => Assert.True(month.Closing - terms.Minimum < step));
            Assert.Equal(line.Drawn - line.Months.Sum(month => month.Repaid), line.Owed);
            Assert.Equal((cash / 100m) + cents.Sum(cent => cent / 100m) + line.Owed - line.Interest, line.Months[^1].Closing);
        });

    private static FarmReview WithoutLoans()
    {
        FarmRecords records = FundingWriteUpTests.Demo.Records;
        return FarmReview.Of(
            FarmRecords.Link(
                records.Tables.With(table => table == records.Tables.Loans.Table ? table.Where(_ => false) : table),
                records.Settings
            )
        );
    }

    [Fact]
    public void Line_OfAWriteUp_IsNotToldWithoutARateAndKeepsTheLeastCashWithOne()
    {
        FundingWriteUp Of(string assumed) => FundingWriteUp.Of(FundingWriteUpTests.Demo, 2025, "Larger cold room", FundingAssumptions.Parse(assumed));

        Assert.Equal(0m, Of("off_farm_income=0; minimum_cash=0; project_month=8; new_loan=20000; new_loan_percent=6; new_loan_years=5; grant_month=8").Line?.Drawn ?? 0m);
        Assert.Equal(0.075m, Of("minimum_cash=35000").Line!.Terms.AnnualRate); // as the last season loan on record
        Assert.Contains(
            "line_percent",
            FundingWriteUp.Of(WithoutLoans(), 2025, "Larger cold room", FundingAssumptions.Parse("minimum_cash=350000")).LineUnknown,
            StringComparison.Ordinal
        );
        FundingWriteUp needed = Of("minimum_cash=35000; line_percent=8; grant_month=10");
        Assert.True(needed.Line!.Most >= 35000m - needed.NextYear.LowPoint);
        Assert.All(needed.Line.Months, month => Assert.True(month.Closing >= 35000m));
        Assert.All(needed.Checks, check => Assert.Equal(0m, check.Difference));
    }
}
