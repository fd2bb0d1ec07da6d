namespace FarmEconomics.Records.Checks;

/// <summary>Checks of loans, balances and funding.</summary>
internal static class FundingChecks
{
    private const int MostPaymentsPerYear = 365;

    public static IEnumerable<RecordCheck> OfLoans => [new RowChecks<LoanRow>(("numbers make sense", LoanNumbers))];

    public static IEnumerable<RecordCheck> OfBalances =>
    [
        NamesOnce.Of<BalanceRow>("item", row => $"{row.Item.Trim()} on {row.Date:yyyy-MM-dd} as {Schema.Words.Of(row.Class)}"),
        new RowChecks<BalanceRow>(("kind fits class", BalanceKinds), ("what is owed is above 0", OwedAboveZero)),
    ];

    public static IEnumerable<RecordCheck> OfFunding => [new RowChecks<FundingRow>(("years and quarters are whole", WholeQuarters))];

    private static void OwedAboveZero(CheckContext context, BalanceRow row)
    {
        if (row.Amount < 0m && row.Class >= BalanceClass.CurrentLiability)
        {
            context.Report(ProblemCodes.LiabilityBelowZero, row, "amount",
                context.Notation.Text(
                    $"{row.Item.Trim()} is a {Schema.Words.Of(row.Class)} of {row.Amount:#,##0.00}; what is owed is above 0."),
                context.Notation.Text($"{row.Amount}"));
        }
    }

    private static void BalanceKinds(CheckContext context, BalanceRow row)
    {
        BalanceItem[] fit = row.Class switch
        {
            BalanceClass.CurrentAsset => [BalanceItem.Cash, BalanceItem.Inventory, BalanceItem.Invoices, BalanceItem.Supplies],
            BalanceClass.IntermediateAsset or BalanceClass.LongTermAsset => [BalanceItem.InAssets, BalanceItem.BesideAssets],
            BalanceClass.CurrentLiability => [BalanceItem.Bills, BalanceItem.PaidAhead, BalanceItem.Debt],
            _ => [BalanceItem.Debt],
        };
        if (row.Kind is { } kind && !fit.Contains(kind))
        {
            context.Report(ProblemCodes.BalanceKind, row, "kind",
                $"{row.Item.Trim()} is a {Schema.Words.Of(row.Class)}, so its kind can't be {Schema.Words.Of(kind)}; "
                    + $"it may be {string.Join(", ", fit.Select(Schema.Words.Of))}.", Schema.Words.Of(kind));
        }
    }

    private static void WholeQuarters(CheckContext context, FundingRow row)
    {
        foreach ((string column, decimal? value) in new[] { ("budget_year", row.BudgetYear), ("quarter", row.Quarter) })
        {
            if (value is { } number && number != decimal.Floor(number))
            {
                context.Report(
                    ProblemCodes.ProjectQuarter,
                    row,
                    column,
                    context.Notation.Text($"{column} must be a whole number, not {number}."),
                    context.Notation.Text($"{number}")
                );
            }
        }
    }

    private static void LoanNumbers(CheckContext context, LoanRow row)
    {
        if (row.PaymentsPerYear != decimal.Floor(row.PaymentsPerYear))
        {
            context.Report(
                ProblemCodes.PaymentCount,
                row,
                "payments_per_year",
                context.Notation.Text(
                    $"payments_per_year must be a whole number from 1 to {MostPaymentsPerYear}, not {row.PaymentsPerYear}."
                ),
                context.Notation.Text($"{row.PaymentsPerYear}")
            );
        }
        else if (row.Years * row.PaymentsPerYear is var count && count != decimal.Floor(count))
        {
            context.Report(
                ProblemCodes.PaymentCount,
                row,
                "years",
                context.Notation.Text($"{row.Years} years of {row.PaymentsPerYear} payments are {count:0.####} payments, no whole number."),
                context.Notation.Text($"{row.Years}")
            );
        }
    }
}
