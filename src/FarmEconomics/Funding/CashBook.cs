using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Funding;

/// <summary>What kind of money came in or went out.</summary>
public enum CashKind
{
    /// <summary>Sales at their amount, before the channel's fee.</summary>
    ProduceSales,

    /// <summary>
    /// Invoices of the year before that were paid, less those unpaid at the end: sales count on the day they left, their money comes later.
    /// </summary>
    Invoices,

    /// <summary>Payments for shares, on the day they came.</summary>
    ShareIncome,

    /// <summary>Other farm income.</summary>
    OtherIncome,

    /// <summary>Fees of channels, worked out from the sales: money that never arrived.</summary>
    SellingFees,

    /// <summary>Sales of equipment and buildings, at what they fetched on the day they were retired.</summary>
    AssetSales,

    /// <summary>Running costs, the farm's part, without interest.</summary>
    Operating,

    /// <summary>Wages and what goes with them, the farm's part.</summary>
    Labor,

    /// <summary>Interest on loans for assets, the farm's part.</summary>
    Interest,

    /// <summary>Interest that is a running cost, the farm's part: on operating loans.</summary>
    OperatingInterest,

    /// <summary>The household's part of shared bills.</summary>
    HouseholdPart,

    /// <summary>Purchases of equipment and buildings.</summary>
    Capital,

    /// <summary>Loan principal paid back.</summary>
    Principal,

    /// <summary>Income and self-employment tax.</summary>
    IncomeTax,

    /// <summary>Drawings of the household.</summary>
    Drawings,
}

/// <summary>Money on a day: above 0 came in, below 0 went out, in whole cents.</summary>
/// <param name="Date">The day of the row.</param>
/// <param name="Kind">What it was.</param>
/// <param name="Amount">The money, signed.</param>
/// <param name="Row">The row behind it.</param>
public sealed record CashEntry(DateOnly Date, CashKind Kind, decimal Amount, IRecordRow Row);

/// <summary>
/// Every receipt and payment of a fiscal year by date, once: what the statement by tax line, the cash flow and the proof of equity all add
/// up. Crop years play no part here.
/// </summary>
public sealed class CashBook
{
    private readonly List<CashEntry> entries = [];
    private readonly SortedSet<Crop> unpriced = new(Comparer<Crop>.Create((one, other) => one.Index.CompareTo(other.Index)));

    private CashBook(FarmReview review, FiscalYear period)
    {
        Period = period;
        Records = review.Records;
        foreach (Disposition disposition in review.Trace.Dispositions.Where(disposition => period.Holds(disposition.Row.Date)))
        {
            // What a share received is paid by its income rows; its part of them is no second receipt.
            if (disposition.Channel.Kind != ChannelKind.Share)
            {
                Add(disposition.Row.Date, CashKind.ProduceSales, disposition.Amount.Amount, disposition.Row);
                if (disposition is { Channel.IsPriced: true, ValueIncomplete: true })
                {
                    _ = unpriced.Add(disposition.Crop);
                }
            }

            Add(disposition.Row.Date, CashKind.SellingFees, -disposition.Fee.Amount, disposition.Row);
        }

        foreach (IncomeRow row in Records.Income.Where(row => period.Holds(row.Date)))
        {
            CashKind kind = Records.Channel(row.Channel).Kind == ChannelKind.Share ? CashKind.ShareIncome : CashKind.OtherIncome;
            Add(row.Date, kind, row.Amount, row);
        }

        foreach (ExpenseRow row in Records.Expenses.Where(row => period.Holds(row.Date)))
        {
            AddExpense(row);
        }

        foreach (AssetRow row in Records.Tables.Assets)
        {
            if (row.Retired is { } day && period.Holds(day) && day <= Records.CostsUntil)
            {
                Add(day, CashKind.AssetSales, row.SoldFor ?? 0m, row);
            }
        }

        AddInvoices();
    }

    /// <summary>
    /// No record says when an invoice was paid: those of the opening sheet are taken as paid in the first month, those of the closing
    /// sheet as sold in the last. With a sheet at one end only nobody knows the difference.
    /// </summary>
    private void AddInvoices()
    {
        DateOnly last = Period.End.AddDays(-1);
        if (BalanceSheet.At(Records, Period.Start.AddDays(-1)) is not { } opening || BalanceSheet.At(Records, last) is not { } closing)
        {
            return;
        }

        foreach ((BalanceSheet sheet, DateOnly day, int sign) in new[] { (opening, Period.Start, 1), (closing, last, -1) })
        {
            foreach (BalanceLine line in sheet.Lines.Where(line => line.Kind == BalanceKind.Invoices))
            {
                Add(day, CashKind.Invoices, sign * line.AtCost!.Value, line.Row!.Value);
            }
        }
    }

    /// <summary>The year.</summary>
    public FiscalYear Period { get; }

    /// <summary>The records.</summary>
    public FarmRecords Records { get; }

    /// <summary>Crops of which something was sold at a price no record tells: their sales stand in the entries as 0.</summary>
    internal IReadOnlyCollection<Crop> Unpriced => unpriced;

    /// <summary>All entries: sales, income, expenses, assets sold, then invoices, each in file order.</summary>
    public IReadOnlyList<CashEntry> Entries => entries;

    /// <summary>The receipts and payments of a year.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="period">The year.</param>
    /// <returns>The cash book.</returns>
    public static CashBook Of(FarmReview review, FiscalYear period)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(period);
        return new CashBook(review, period);
    }

    /// <summary>The sum of some kinds, signed.</summary>
    /// <param name="kinds">The kinds.</param>
    /// <returns>Money, above 0 when more came in.</returns>
    public decimal Sum(params IReadOnlyList<CashKind> kinds) =>
        entries.Where(entry => kinds.Contains(entry.Kind)).Sum(entry => entry.Amount);

    /// <summary>
    /// Cash income of the farm less its cash expenses with interest, before depreciation, purchases, principal, tax and drawings.
    /// </summary>
    public decimal NetFarmCash =>
        Sum(
            CashKind.ProduceSales,
            CashKind.Invoices,
            CashKind.ShareIncome,
            CashKind.OtherIncome,
            CashKind.SellingFees,
            CashKind.Operating,
            CashKind.Labor,
            CashKind.Interest,
            CashKind.OperatingInterest
        );

    /// <summary>Interest on loans for assets the books paid, the household's part of it included; above 0.</summary>
    internal decimal InterestPaid => -entries
        .Where(entry => entry.Row is ExpenseRow row && Records.Category(row.Category).Class == ExpenseClass.Interest)
        .Sum(entry => entry.Amount);

    /// <summary>What the books paid on all loans, interest and principal, by the farm or the household; above 0.</summary>
    internal decimal PaidOnLoans => Records
        .Expenses.Where(row =>
            Period.Holds(row.Date)
            && KindOf(Records.Category(row.Category)) is CashKind.Interest or CashKind.OperatingInterest or CashKind.Principal
        )
        .Sum(row => row.Amount);

    /// <summary>The household's part of purchases; 0 or below.</summary>
    internal decimal HouseholdPartOfPurchases => entries
        .Where(entry => entry.Kind == CashKind.Capital)
        .Sum(entry => entry.Amount + ((ExpenseRow)entry.Row).FarmPart);

    /// <summary>The household's part of what sold assets fetched; 0 or above.</summary>
    internal decimal HouseholdPartOfAssetSales => entries
        .Where(entry => entry.Kind == CashKind.AssetSales)
        .Sum(entry => entry.Amount - BookValue.FarmPart((AssetRow)entry.Row, entry.Amount));

    /// <summary>What all entries together change the cash by.</summary>
    public decimal NetCash => entries.Sum(entry => entry.Amount);

    private void AddExpense(ExpenseRow row)
    {
        CategoryRow category = Records.Category(row.Category);
        decimal farm = category.EntersBudgets() || category.Class == ExpenseClass.Interest
            ? row.FarmPart
            : row.Amount;
        Add(row.Date, KindOf(category), -farm, row);
        Add(row.Date, CashKind.HouseholdPart, farm - row.Amount, row);
    }

    // Interest on an operating loan is a cost of the season, told by the tax line of its category.
    private static CashKind KindOf(CategoryRow category) => category.Class switch
    {
        ExpenseClass.Operating when TaxLines.Find(category.TaxLine)?.IsInterest == true => CashKind.OperatingInterest,
        ExpenseClass.Operating => CashKind.Operating,
        ExpenseClass.Labor or ExpenseClass.LaborBurden => CashKind.Labor,
        ExpenseClass.Interest => CashKind.Interest,
        ExpenseClass.Capital => CashKind.Capital,
        ExpenseClass.Principal => CashKind.Principal,
        ExpenseClass.Tax => CashKind.IncomeTax,
        _ => CashKind.Drawings,
    };

    private void Add(DateOnly date, CashKind kind, decimal amount, IRecordRow row)
    {
        if (amount != 0m)
        {
            entries.Add(new CashEntry(date, kind, amount, row));
        }
    }
}
