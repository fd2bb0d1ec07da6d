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
        new TableCheck("bills are no goods", BillsAreNoGoods),
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

    /// <summary>Our own bound: bills older than that are rare, and longer sums meet more amounts by chance.</summary>
    private const int DaysUnpaid = 92;

    /// <summary>Goods on hand named for a customer who is billed, or as much as one took since some day up to the sheet's.</summary>
    private static void BillsAreNoGoods(CheckContext context)
    {
        BalanceRow[] goods =
        [
            .. context.Tables.Balances.Where(row =>
                row is { Class: BalanceClass.CurrentAsset, Amount: > 0m, Kind: null or BalanceItem.Inventory }),
        ];

        // Looked through once, and only where goods are listed.
        SaleRow[] billed = goods.Length == 0 ? []
            : [.. context.Tables.Sales.Where(sale => context.Channel(sale.Channel.Trim()) is { Kind: ChannelKind.Wholesale })];
        foreach (BalanceRow row in goods)
        {
            if ((NamedFor(context, row) ?? TookAsMuch(context, row, billed)) is { } why)
            {
                context.Report(ProblemCodes.InvoicesAsGoods, row, "kind", why, row.Item.Trim());
            }
        }
    }

    private static string? NamedFor(CheckContext context, BalanceRow row)
    {
        foreach (ChannelRow channel in context.Tables.Channels)
        {
            string item = row.Item.Trim(), name = channel.Channel.Trim();
            if (channel.Kind == ChannelKind.Wholesale && item.StartsWith(name, StringComparison.OrdinalIgnoreCase)
                && (item.Length == name.Length || !char.IsLetterOrDigit(item[name.Length])))
            {
                return $"{item} is listed as goods on hand and named for {name}, a customer who is billed.";
            }
        }

        return null;
    }

    private static string? TookAsMuch(CheckContext context, BalanceRow row, SaleRow[] billed)
    {
        foreach (IGrouping<string, SaleRow> channel in billed
            .Where(sale => sale.Date <= row.Date && sale.Date > row.Date.AddDays(-DaysUnpaid))
            .GroupBy(sale => sale.Channel.Trim(), StringComparer.OrdinalIgnoreCase))
        {
            decimal sum = 0m;
            foreach (IGrouping<DateOnly, SaleRow> day in channel.GroupBy(sale => sale.Date).OrderByDescending(day => day.Key))
            {
                sum += day.Sum(sale => RowMoney.Of(sale) ?? 0m);
                if (sum == row.Amount)
                {
                    return context.Notation.Text($"{row.Item.Trim()} is listed as goods on hand, and is as much as {channel.Key} took "
                        + $"from {day.Key:yyyy-MM-dd} on.");
                }
            }
        }

        return null;
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
