using System.Text.Json;
using CsCheck;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Published;
using Xunit;

namespace FarmEconomics.Tests.Funding;

public class LoanScheduleTests
{
    private static readonly DateOnly First = new(2025, 1, 15);

    private static readonly Gen<LoanTerms> AnyLoan = Gen.Select(
        Gen.Decimal[0.01m, 500_000m], Gen.Decimal[0m, 0.35m], Gen.Int[1, 400], Gen.Int[0, 9].Select(i => new[] { 1, 2, 3, 4, 6, 7, 12, 26, 52, 365 }[i]), Gen.Enum<Repayment>(),
        (principal, rate, payments, perYear, repayment) =>
            new LoanTerms("loan", Math.Max(0.01m, decimal.Round(principal, 2)), decimal.Round(rate, 4), payments, perYear, First, repayment));

    [Fact]
    public void Of_ThirtyYearsAsPublished_EveryRowAgreesToTheCent()
    {
        JsonElement fixture = Fixture.Load("loan-thirty-years");
        LoanTerms terms = new("loan", fixture.Number("principal"), fixture.Number("annual_rate"), fixture.GetProperty("payments").GetInt32(), 1, First, Repayment.LevelPayment);
        LoanSchedule exact = LoanSchedule.Of(terms, PaymentRounding.None);
        LoanSchedule cents = LoanSchedule.Of(terms);
        decimal[][] rows = fixture.Table("rows");

        Assert.Equal(30, rows.Length);
        Assert.Equal(fixture.Number("payment"), cents.LevelPayment);
        Assert.All(rows, row =>
        {
            LoanPayment payment = exact.Payments[(int)row[0] - 1];
            Assert.Equal(row[1..], new[] { payment.Owed + payment.Principal, payment.Payment, payment.Interest, payment.Principal, payment.Owed }.Select(x => decimal.Round(x, 2, MidpointRounding.AwayFromZero)));
            Close.To(row[5], cents.Payments[(int)row[0] - 1].Owed, fixture.Number("tolerance"));
        });
    }

    [Fact]
    public void Of_PublishedLoans_AgreesRowByRow()
    {
        JsonElement fixture = Fixture.Load("loans");
        Assert.All(fixture.List("loans"), loan =>
        {
            LoanTerms terms = new("loan", loan.Number("principal"), loan.Number("annual_rate"), loan.GetProperty("payments").GetInt32(), loan.GetProperty("payments_per_year").GetInt32(), First, Repayment.LevelPayment);
            LoanSchedule schedule = LoanSchedule.Of(terms);
            Assert.Equal(loan.Number("payment"), schedule.LevelPayment);
            foreach (JsonElement row in loan.List("rows"))
            {
                JsonElement[] cells = [.. row.EnumerateArray()];
                LoanPayment payment = schedule.Payments[cells[0].GetInt32() - 1];
                decimal[] ours = [payment.Interest, payment.Principal, payment.Owed];
                for (int i = 0; i < 3; i++)
                {
                    // The last row of the source is left with -1.38, because no last payment takes the rest; ours ends at 0.
                    if (cells[i + 1].ValueKind != JsonValueKind.Null && payment.Number < terms.Payments)
                    {
                        Close.To(cells[i + 1].Number(), ours[i], fixture.Number("tolerance"));
                    }
                }
            }

            Assert.Equal(0m, schedule.Payments[^1].Owed);
        });
    }

    [Fact]
    public void Of_EqualPrincipalOfTheSameFactSheet_FallsByTheSameInterestEveryYear()
    {
        // Colorado State University Extension 3.757, Table 2, at the terms of its Table 1 (computed, the table itself was not seen).
        LoanSchedule schedule = LoanSchedule.Of(new LoanTerms("loan", 10000m, 0.12m, 8, 1, First, Repayment.LevelPrincipal));
        Assert.Equal([1200m, 1050m, 900m, 750m, 600m, 450m, 300m, 150m], schedule.Payments.Select(payment => payment.Interest));
        Assert.All(schedule.Payments, payment => Assert.Equal(1250m, payment.Principal));
    }

    [Fact]
    public void Of_AnyLoan_PrincipalSumsToWhatWasBorrowedInWholeCents() => AnyLoan.Sample(terms =>
    {
        LoanSchedule schedule = LoanSchedule.Of(terms);
        decimal owed = terms.Principal;
        foreach (LoanPayment payment in schedule.Payments)
        {
            owed -= payment.Principal;
            Assert.Equal(owed, payment.Owed);
            Assert.True(payment.Owed >= 0m && payment.Interest >= 0m && payment.Principal >= 0m, payment.ToString());
            Assert.Equal(decimal.Round(payment.Payment, 2), payment.Payment);
        }

        Assert.Equal(0m, owed);
        Assert.Equal(terms.Principal, schedule.OwedOn(terms.PaidOut));
        Assert.Equal(0m, schedule.OwedOn(schedule.Payments[^1].Date));
        Assert.Equal(0m, schedule.OwedOn(terms.PaidOut.AddDays(-1)));
        Assert.True(schedule.Payments.Zip(schedule.Payments.Skip(1)).All(pair => pair.First.Date < pair.Second.Date));
    });
}
