namespace FarmEconomics.Records.Checks;

/// <summary>Checks of loans, balances and funding.</summary>
internal static class FundingChecks
{
    private const int MostPaymentsPerYear = 365;

    public static IEnumerable<RecordCheck> All { get; } =
    [
        new RowChecks<LoanRow>("loans", tables => tables.Loans,
            ("numbers make sense", LoanNumbers),
            ("date makes sense", (context, row) => context.InCalendar(row, "first_payment", row.FirstPayment, YearsCovered.EarliestAsset)),
            ("asset is known", (context, row) => context.AssetNames.Check(context, row, "asset", row.Asset))),
        new RowChecks<BalanceRow>("balances", tables => tables.Balances,
            ("date makes sense", (context, row) => context.InCalendar(row, "date", row.Date))),
        new RowChecks<FundingRow>("funding", tables => tables.Funding,
            ("amount makes sense", (context, row) => context.AtLeastZero(row, "amount", row.Amount)),
            ("percent makes sense", (context, row) => context.Percent(row, "funder_percent", row.FunderPercent))),
    ];

    private static void LoanNumbers(CheckContext context, LoanRow row)
    {
        context.AboveZero(row, "principal", row.Principal);
        context.AboveZero(row, "years", row.Years);
        context.Percent(row, "annual_percent", row.AnnualPercent);
        if (row.PaymentsPerYear is < 1m or > MostPaymentsPerYear || row.PaymentsPerYear != decimal.Floor(row.PaymentsPerYear))
        {
            context.Report(ProblemCodes.PaymentCount, row, "payments_per_year",
                context.Notation.Text($"payments_per_year must be a whole number from 1 to {MostPaymentsPerYear}, not {row.PaymentsPerYear}."), context.Notation.Text($"{row.PaymentsPerYear}"));
        }
        else if (row.Years is > 0m and <= 1000m && row.Years * row.PaymentsPerYear is var count && count != decimal.Floor(count))
        {
            context.Report(ProblemCodes.PaymentCount, row, "years",
                context.Notation.Text($"{row.Years} years of {row.PaymentsPerYear} payments are {count:0.####} payments, no whole number."), context.Notation.Text($"{row.Years}"));
        }
        else if (row.Years > 1000m)
        {
            context.Report(ProblemCodes.PaymentCount, row, "years", context.Notation.Text($"A loan can't run {row.Years} years."), context.Notation.Text($"{row.Years}"));
        }
    }
}
