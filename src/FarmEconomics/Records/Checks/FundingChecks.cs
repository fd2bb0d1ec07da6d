namespace FarmEconomics.Records.Checks;

/// <summary>Checks of loans, balances and funding.</summary>
internal static class FundingChecks
{
    private const int MostPaymentsPerYear = 365;

    public static IEnumerable<RecordCheck> OfLoans => [new RowChecks<LoanRow>(("numbers make sense", LoanNumbers))];

    public static IEnumerable<RecordCheck> OfBalances =>
        [NamesOnce.Of<BalanceRow>("item", row => $"{row.Item.Trim()} on {row.Date:yyyy-MM-dd} as {Schema.Words.Of(row.Class)}")];

    private static void LoanNumbers(CheckContext context, LoanRow row)
    {
        if (row.PaymentsPerYear != decimal.Floor(row.PaymentsPerYear))
        {
            context.Report(ProblemCodes.PaymentCount, row, "payments_per_year",
                context.Notation.Text($"payments_per_year must be a whole number from 1 to {MostPaymentsPerYear}, not {row.PaymentsPerYear}."), context.Notation.Text($"{row.PaymentsPerYear}"));
        }
        else if (row.Years * row.PaymentsPerYear is var count && count != decimal.Floor(count))
        {
            context.Report(ProblemCodes.PaymentCount, row, "years",
                context.Notation.Text($"{row.Years} years of {row.PaymentsPerYear} payments are {count:0.####} payments, no whole number."), context.Notation.Text($"{row.Years}"));
        }
    }
}
