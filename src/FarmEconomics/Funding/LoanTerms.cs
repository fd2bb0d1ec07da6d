using FarmEconomics.Records;

namespace FarmEconomics.Funding;

/// <summary>What a loan says: enough to work out every payment.</summary>
/// <param name="Name">The loan.</param>
/// <param name="Principal">What is borrowed, in currency; above 0.</param>
/// <param name="AnnualRate">Interest a year as a fraction (0.0525), from 0 to 1; a payment's period carries its even part of it.</param>
/// <param name="Payments">How many payments; at least 1.</param>
/// <param name="PaymentsPerYear">Payments a year, 1 to 365.</param>
/// <param name="FirstPayment">The day of the first payment, one period after the money was paid out.</param>
/// <param name="Repayment">How it is paid back.</param>
public sealed record LoanTerms(
    string Name,
    decimal Principal,
    decimal AnnualRate,
    int Payments,
    int PaymentsPerYear,
    DateOnly FirstPayment,
    Repayment Repayment
)
{
    private const int MonthsPerYear = 12;
    private const int DaysPerYear = 365;

    /// <summary>Interest for one period, as a fraction.</summary>
    public decimal PeriodRate => AnnualRate / PaymentsPerYear;

    /// <summary>The day the money was paid out: one period before the first payment.</summary>
    public DateOnly PaidOut => DayOf(-1);

    /// <summary>True for a loan that runs longer than a year. One paid back within a year carries a season and is no term debt.</summary>
    public bool IsTermDebt => Payments > PaymentsPerYear;

    /// <summary>The terms of a row of the records.</summary>
    /// <param name="row">A row that passed the records check.</param>
    /// <returns>The terms.</returns>
    public static LoanTerms Of(LoanRow row)
    {
        return new LoanTerms(
            row.Loan.Trim(),
            row.Principal,
            row.AnnualPercent / 100m,
            (int)(row.Years * row.PaymentsPerYear),
            (int)row.PaymentsPerYear,
            row.FirstPayment,
            row.Repayment
        );
    }

    /// <summary>The day of a payment: by whole months where they fit the year, else by days of a 365-day year.</summary>
    /// <param name="index">The payment, from 0.</param>
    /// <returns>Its day.</returns>
    public DateOnly DayOf(int index) => MonthsPerYear % PaymentsPerYear == 0
        ? FirstPayment.AddMonths(index * (MonthsPerYear / PaymentsPerYear))
        : FirstPayment.AddDays((int)((long)index * DaysPerYear / PaymentsPerYear));
}
