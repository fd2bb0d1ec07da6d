using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>How payments are rounded; both are published practice, never a silent choice.</summary>
public enum PaymentRounding
{
    /// <summary>Interest and payment are whole cents every time, and the last payment takes the rest: what a lender's books show.</summary>
    EveryPayment,

    /// <summary>Nothing is rounded: what a textbook's table shows.</summary>
    None,
}

/// <summary>One payment of a loan.</summary>
/// <param name="Number">From 1.</param>
/// <param name="Date">Its day.</param>
/// <param name="Interest">Interest, in currency.</param>
/// <param name="Principal">Principal paid back, in currency.</param>
/// <param name="Owed">What is owed after it, in currency.</param>
public sealed record LoanPayment(int Number, DateOnly Date, decimal Interest, decimal Principal, decimal Owed)
{
    /// <summary>Interest and principal.</summary>
    public decimal Payment => Interest + Principal;
}

/// <summary>
/// Every payment of a loan. Level payment: P r / (1 - (1 + r)^-n), with P / n at no interest; level principal: P / n and the interest on
/// what is owed; interest only: the principal with the last payment. Source: the standard amortization formulas (OpenStax, Principles of
/// Finance, section 8.3; Colorado State University Extension, fact sheet 3.757).
/// </summary>
public sealed class LoanSchedule
{
    private LoanSchedule(LoanTerms terms, PaymentRounding rounding, decimal level, IReadOnlyList<LoanPayment> payments)
    {
        Terms = terms;
        Rounding = rounding;
        LevelPayment = level;
        Payments = payments;
    }

    /// <summary>The terms.</summary>
    public LoanTerms Terms { get; }

    /// <summary>How payments were rounded.</summary>
    public PaymentRounding Rounding { get; }

    /// <summary>
    /// The payment that repeats: the whole payment of a level-payment loan, the principal part of a level-principal loan, the interest of
    /// an interest-only loan.
    /// </summary>
    public decimal LevelPayment { get; }

    /// <summary>The payments in order; their principal sums to what was borrowed.</summary>
    public IReadOnlyList<LoanPayment> Payments { get; }

    /// <summary>Interest over the whole loan.</summary>
    public decimal TotalInterest => Payments.Sum(payment => payment.Interest);

    /// <summary>Works out a loan.</summary>
    /// <param name="terms">The terms.</param>
    /// <param name="rounding">How payments are rounded.</param>
    /// <returns>The schedule.</returns>
    /// <exception cref="ArgumentOutOfRangeException">Principal or number of payments not above 0, a negative rate, or payments a year
    /// outside 1 to 365.</exception>
    public static LoanSchedule Of(LoanTerms terms, PaymentRounding rounding = PaymentRounding.EveryPayment)
    {
        ArgumentNullException.ThrowIfNull(terms);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(terms.Principal);
        ArgumentOutOfRangeException.ThrowIfNegative(terms.AnnualRate);
        ArgumentOutOfRangeException.ThrowIfLessThan(terms.Payments, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(terms.PaymentsPerYear, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(terms.PaymentsPerYear, 365);
        decimal level = rounding == PaymentRounding.None ? Level(terms) : RoundedLevel(terms);
        List<LoanPayment> payments = new(terms.Payments);
        decimal owed = terms.Principal;
        for (int i = 0; i < terms.Payments; i++)
        {
            // Multiplied first, so that half a cent stays one.
            decimal interest = Round(owed * terms.AnnualRate / terms.PaymentsPerYear, rounding);
            decimal principal = i == terms.Payments - 1 ? owed : terms.Repayment switch
            {
                // A payment rounded up could pay more than is owed at the very end of a small loan.
                Repayment.LevelPayment => Math.Min(owed, level - interest),
                Repayment.LevelPrincipal => Math.Min(owed, level),
                _ => 0m,
            };
            owed -= principal;
            payments.Add(new LoanPayment(i + 1, terms.DayOf(i), interest, principal, owed));
        }

        return new LoanSchedule(terms, rounding, level, payments);
    }

    /// <summary>What is owed at the end of a day: the principal until the first payment, 0 before the money was paid out.</summary>
    /// <param name="day">The day.</param>
    /// <returns>The debt.</returns>
    public decimal OwedOn(DateOnly day)
    {
        if (day < Terms.PaidOut)
        {
            return 0m;
        }

        LoanPayment? last = Payments.LastOrDefault(payment => payment.Date <= day);
        return last?.Owed ?? Terms.Principal;
    }

    /// <summary>True when there is a loans table: its schedules then say what falls due, else the books say what was paid.</summary>
    internal static bool SaysWhatIsDue(FarmRecords records) => records.Tables.Loans.Count > 0 || records.Has("loans");

    /// <summary>Payments from one day up to, but without, another.</summary>
    /// <param name="from">The first day.</param>
    /// <param name="end">The first day after.</param>
    /// <returns>The payments.</returns>
    public IEnumerable<LoanPayment> Between(DateOnly from, DateOnly end) =>
        Payments.Where(payment => payment.Date >= from && payment.Date < end);

    private static decimal Level(LoanTerms terms) => terms.Repayment switch
    {
        Repayment.LevelPayment => terms.Principal * Factor(terms.PeriodRate, terms.Payments),
        Repayment.LevelPrincipal => terms.Principal / terms.Payments,
        _ => terms.Principal * terms.AnnualRate / terms.PaymentsPerYear,
    };

    private static decimal RoundedLevel(LoanTerms terms) =>
        terms.Repayment == Repayment.LevelPayment && terms.Payments <= Costing.Ownership.MostExactPeriods
            ? (terms.Principal * Costing.Ownership.ExactRecoveryFactor((Fraction)terms.AnnualRate / terms.PaymentsPerYear, terms.Payments))
                .ToMoney()
                .Amount
            : Money.Rounded(Level(terms)).Amount;

    private static decimal Factor(decimal rate, int payments) => Costing.Ownership.CapitalRecoveryFactor(rate, payments);

    private static decimal Round(decimal amount, PaymentRounding rounding) =>
        rounding == PaymentRounding.None ? amount : Money.Rounded(amount).Amount;
}
