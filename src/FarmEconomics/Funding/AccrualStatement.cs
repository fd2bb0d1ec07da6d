using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>
/// From net farm cash income to net farm income: changes in what is on hand, owed and paid ahead between two balance sheets, and book
/// depreciation. The usual accrual adjustments (extension handouts on the accrual-adjusted income statement). In currency; amounts are
/// signed as they add to income.
/// </summary>
/// <param name="CashIncome">Sales, share payments and other income by date.</param>
/// <param name="OperatingExpense">Running costs without interest, wages and fees by date, above 0.</param>
/// <param name="Interest">Interest on all farm debt, operating loans included, above 0.</param>
/// <param name="InventoryChange">More produce and invoices on hand than a year before.</param>
/// <param name="PaidAheadChange">Less of customers' money for later produce than a year before (more: below 0).</param>
/// <param name="SuppliesChange">More inputs on hand.</param>
/// <param name="PayablesChange">Fewer bills unpaid (more: below 0).</param>
/// <param name="Depreciation">Straight-line book depreciation, above 0.</param>
public sealed record AccrualStatement(
    decimal CashIncome,
    decimal OperatingExpense,
    decimal Interest,
    decimal InventoryChange,
    decimal PaidAheadChange,
    decimal SuppliesChange,
    decimal PayablesChange,
    decimal Depreciation)
{
    /// <summary>Cash income and the changes that are returns.</summary>
    public decimal GrossRevenue => CashIncome + InventoryChange + PaidAheadChange;

    /// <summary>Operating expense with the changes that are costs; without interest and depreciation.</summary>
    public decimal AccruedOperatingExpense => OperatingExpense - SuppliesChange - PayablesChange;

    /// <summary>Net farm income from operations: revenue less operating expense, depreciation and interest; before unpaid labor.</summary>
    public decimal NetFarmIncome => GrossRevenue - AccruedOperatingExpense - Depreciation - Interest;

    /// <summary>Makes the statement between two balance sheets.</summary>
    /// <param name="book">The cash book of the year.</param>
    /// <param name="opening">The balance sheet at its beginning.</param>
    /// <param name="closing">The balance sheet at its end.</param>
    /// <returns>The statement.</returns>
    public static AccrualStatement Of(CashBook book, BalanceSheet opening, BalanceSheet closing)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(opening);
        ArgumentNullException.ThrowIfNull(closing);
        decimal Change(BalanceKind kind) => closing.CostOf(kind) - opening.CostOf(kind);
        return new AccrualStatement(
            book.Sum(CashKind.ProduceSales, CashKind.Invoices, CashKind.ShareIncome, CashKind.OtherIncome),
            -book.Sum(CashKind.Operating, CashKind.Labor, CashKind.SellingFees),
            -book.Sum(CashKind.Interest, CashKind.OperatingInterest),
            Change(BalanceKind.Inventory) + Change(BalanceKind.Invoices),
            -Change(BalanceKind.PaidAhead),
            Change(BalanceKind.Supplies),
            -Change(BalanceKind.Payable),
            book.Records.Tables.Assets.Sum(asset => BookValue.Depreciation(asset, opening.Date, closing.Date)));
    }
}

/// <summary>
/// Statement of owner equity at cost: from one balance sheet to the next by the income of the year and what the household took or gave.
/// Every step comes from the books or the sheets; money the records don't explain is a step of its own, and the steps meet the closing
/// sheet to the cent.
/// </summary>
/// <param name="Opening">Equity at the beginning.</param>
/// <param name="Steps">The steps.</param>
/// <param name="Closing">Equity at the end, from the balance sheet.</param>
public sealed record OwnerEquity(decimal Opening, IReadOnlyList<BridgeStep> Steps, decimal Closing)
{
    /// <summary>
    /// Cash counted at the end less opening cash and all receipts and payments: money no row tells of. Above 0 it came in.
    /// </summary>
    /// <param name="book">The cash book.</param>
    /// <param name="opening">The balance sheet at the beginning.</param>
    /// <param name="closing">The balance sheet at the end.</param>
    /// <returns>The amount, signed.</returns>
    public static decimal CashNotInTheRecords(CashBook book, BalanceSheet opening, BalanceSheet closing)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(opening);
        ArgumentNullException.ThrowIfNull(closing);
        return closing.CostOf(BalanceKind.Cash) - opening.CostOf(BalanceKind.Cash) - book.NetCash - LoansPaidOut(book);
    }

    /// <summary>Makes the statement.</summary>
    /// <param name="book">The cash book of the year.</param>
    /// <param name="opening">The balance sheet at its beginning.</param>
    /// <param name="closing">The balance sheet at its end.</param>
    /// <returns>The statement.</returns>
    public static OwnerEquity Of(CashBook book, BalanceSheet opening, BalanceSheet closing)
    {
        AccrualStatement income = AccrualStatement.Of(book, opening, closing);
        var assets = book.Records.Tables.Assets;
        decimal bought = assets.Where(asset => asset.InService > opening.Date && asset.InService <= closing.Date).Sum(BookValue.Cost);
        decimal retired = assets.Where(asset => asset.Retired > opening.Date && asset.Retired <= closing.Date)
            .Sum(asset => BookValue.Cost(asset) - BookValue.Depreciation(asset, DateOnly.MinValue, closing.Date));
        decimal debt = closing.CostOf(BalanceKind.Debt) - opening.CostOf(BalanceKind.Debt);
        return new OwnerEquity(
            opening.EquityAtCost,
            [
                new("Net farm income", income.NetFarmIncome),
                new("Drawings of the household", book.Sum(CashKind.Drawings)),
                new(
                    "The household's part of shared bills, purchases and sales of assets",
                    book.Sum(CashKind.HouseholdPart) + book.HouseholdPartOfPurchases + book.HouseholdPartOfAssetSales
                ),
                new("Income and self-employment tax", book.Sum(CashKind.IncomeTax)),
                new(
                    "Assets put into service, at cost, less purchases in the books",
                    bought + book.Sum(CashKind.Capital) - book.HouseholdPartOfPurchases
                ),
                new(
                    "Assets retired: what they fetched less their book value",
                    book.Sum(CashKind.AssetSales) - book.HouseholdPartOfAssetSales - retired
                ),
                new(
                    "Loans paid out and paid back, against the change in debt listed",
                    LoansPaidOut(book) + book.Sum(CashKind.Principal) - debt
                ),
                new(
                    "Change in land and other longer-term items beside the assets table",
                    closing.CostOf(BalanceKind.BesideAssets) - opening.CostOf(BalanceKind.BesideAssets)
                ),
                new("Cash no row of the records tells of (below 0: it left)", CashNotInTheRecords(book, opening, closing)),
            ],
            closing.EquityAtCost
        );
    }

    /// <summary>Loans of the loans table paid out in the year, one period before their first payment.</summary>
    internal static decimal LoansPaidOut(CashBook book) =>
        Money
            .Rounded(
                book.Records.Tables.Loans.Select(LoanTerms.Of).Where(loan => book.Period.Holds(loan.PaidOut)).Sum(loan => loan.Principal)
            )
            .Amount;
}
