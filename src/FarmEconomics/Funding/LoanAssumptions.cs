using FarmEconomics.Records;

namespace FarmEconomics.Funding;

/// <summary>A loan asked for.</summary>
public sealed record LoanAssumptions
{
    internal static IReadOnlyList<AssumptionEntry> Entries { get; } =
    [
        new NumberEntry("new_loan", "Loan asked for", "currency", "a loan asked for")
        { Get = a => a.NewLoan.Amount, Set = (a, v) => a with { NewLoan = a.NewLoan with { Amount = v } } },
        new NumberEntry("new_loan_percent", "Interest on that loan", "% a year", "its interest")
        { Most = 100m, Get = a => a.NewLoan.Percent, Set = (a, v) => a with { NewLoan = a.NewLoan with { Percent = v } } },
        new NumberEntry("new_loan_years", "Years of that loan", "years", "how long it runs")
        { Least = 0.01m, Most = 100m, Get = a => a.NewLoan.Years, Set = (a, v) => a with { NewLoan = a.NewLoan with { Years = v } } },
        new NumberEntry("new_loan_payments", "Payments of that loan", "payments a year", "how often it is paid")
        {
            Least = 1m,
            Most = 365m,
            Whole = true,
            Get = a => a.NewLoan.PaymentsPerYear,
            Set = (a, v) => a with { NewLoan = a.NewLoan with { PaymentsPerYear = (int)v } },
        },
        new WordEntry<Repayment>(
            "new_loan_repayment",
            "Way that loan is paid back",
            "how it is paid back: level-payment, level-principal or interest-only"
        )
        {
            Get = a => a.NewLoan.Repayment,
            Set = (a, v) => a with { NewLoan = a.NewLoan with { Repayment = v } },
        },
    ];

    /// <summary>What is asked for, in currency; null or 0: no loan.</summary>
    public decimal? Amount { get; init; }

    /// <summary>Interest in percent a year, 0 to 100; needed with an amount.</summary>
    public decimal? Percent { get; init; }

    /// <summary>Years it runs, 0.01 to 100; needed with an amount.</summary>
    public decimal? Years { get; init; }

    /// <summary>Payments a year, 1 to 365.</summary>
    public int PaymentsPerYear { get; init; } = 12;

    /// <summary>How it is paid back.</summary>
    public Repayment Repayment { get; init; } = Repayment.LevelPayment;

    /// <summary>What can't be together; throws where it is.</summary>
    /// <exception cref="ArgumentException">Terms without a loan, or years times payments a year that are no whole number.</exception>
    internal void Validate()
    {
        if (Amount is null && (Percent is not null || Years is not null))
        {
            string given = Percent is not null ? "new_loan_percent" : "new_loan_years";
            throw new ArgumentException($"{given} needs new_loan, the amount asked for; without a loan leave {given} out.", "values");
        }

        if (Years * PaymentsPerYear is { } payments && payments != decimal.Floor(payments))
        {
            throw new ArgumentException(
                FormattableString.Invariant(
                    $"new_loan_years times new_loan_payments must be a whole number of payments, not {payments:0.####}."),
                "values");
        }
    }
}
