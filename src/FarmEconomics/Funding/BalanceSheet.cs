using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>What a line of the balance sheet is, as far as statements tell lines apart.</summary>
public enum BalanceKind
{
    /// <summary>Money.</summary>
    Cash,

    /// <summary>Produce and other current assets, such as what members still owe: their change is a return.</summary>
    Inventory,

    /// <summary>Customers' unpaid bills for what stands in sales already: sold, and not yet money.</summary>
    Invoices,

    /// <summary>Inputs not used yet: their change is a cost.</summary>
    Supplies,

    /// <summary>Longer-term assets as the grower values them.</summary>
    LongerAsset,

    /// <summary>Longer-term assets the assets table doesn't hold, such as land.</summary>
    BesideAssets,

    /// <summary>An asset of the assets table at cost less depreciation.</summary>
    BookedAsset,

    /// <summary>Bills and other current liabilities: their change is a cost.</summary>
    Payable,

    /// <summary>Customers' money for later produce: its change is a return.</summary>
    PaidAhead,

    /// <summary>Borrowed money.</summary>
    Debt,
}

/// <summary>A line of the balance sheet.</summary>
/// <param name="Item">What is owned or owed.</param>
/// <param name="Class">Where it stands.</param>
/// <param name="Kind">What it is.</param>
/// <param name="AtCost">Amount at cost less depreciation; null: stands only at the grower's value.</param>
/// <param name="AtValue">Amount as the grower values it; null: stands only at cost.</param>
public sealed record BalanceLine(string Item, BalanceClass Class, BalanceKind Kind, decimal? AtCost, decimal? AtValue)
{
    /// <summary>The row of the balances table; null for what another table tells.</summary>
    internal BalanceRow? Row { get; init; }

    /// <summary>True for what is owned.</summary>
    public bool IsAsset => Class is BalanceClass.CurrentAsset or BalanceClass.IntermediateAsset or BalanceClass.LongTermAsset;
}

/// <summary>
/// A balance sheet in two columns: at the grower's values, as the balances table lists them, and at cost, where the assets table's cost
/// less accumulated depreciation takes the place of the longer-term items it holds; where the balances list no such item, it stands in for
/// the grower's value too. Assets less liabilities is equity; the two columns differ by valuation equity. Source: cost and market columns
/// as in the Farm Financial Standards Council's guidelines (as cited by extension handouts on farm ratios).
/// </summary>
public sealed class BalanceSheet
{
    private BalanceSheet(DateOnly date, IReadOnlyList<BalanceLine> lines, string? loansNote)
    {
        Date = date;
        Lines = lines;
        LoansNote = loansNote;
    }

    /// <summary>The day.</summary>
    public DateOnly Date { get; }

    /// <summary>The lines: assets, then liabilities, as the table has them.</summary>
    public IReadOnlyList<BalanceLine> Lines { get; }

    /// <summary>How the loans' schedules compare with the liabilities listed.</summary>
    public string? LoansNote { get; }

    /// <summary>Other days of the balances within the same 31 days: a sheet is the rows of one day, so theirs are not in it.</summary>
    internal IReadOnlyList<DateOnly> OtherDays { get; private init; } = [];

    /// <summary>Assets at cost.</summary>
    public decimal AssetsAtCost => Lines.Where(line => line.IsAsset).Sum(line => line.AtCost ?? 0m);

    /// <summary>Assets at the grower's values.</summary>
    public decimal AssetsAtValue => Lines.Where(line => line.IsAsset).Sum(line => line.AtValue ?? 0m);

    /// <summary>True where cost less depreciation stands in for values of equipment and buildings nobody listed.</summary>
    public bool IsValuedAtCost => Lines.Any(line => line is { Kind: BalanceKind.BookedAsset, AtValue: not null });

    /// <summary>Liabilities, the same in both columns.</summary>
    public decimal Liabilities => Lines.Where(line => !line.IsAsset).Sum(line => line.AtCost ?? 0m);

    /// <summary>Equity at cost.</summary>
    public decimal EquityAtCost => AssetsAtCost - Liabilities;

    /// <summary>Equity at the grower's values.</summary>
    public decimal EquityAtValue => AssetsAtValue - Liabilities;

    /// <summary>Sum of a class at the grower's values (liabilities at what is owed).</summary>
    /// <param name="balanceClass">The class.</param>
    /// <returns>Its amount.</returns>
    public decimal ValueOf(BalanceClass balanceClass) => Lines.Where(line => line.Class == balanceClass).Sum(line => line.AtValue ?? 0m);

    /// <summary>Sum of a kind at cost.</summary>
    /// <param name="kind">The kind.</param>
    /// <returns>Its amount.</returns>
    public decimal CostOf(BalanceKind kind) => Lines.Where(line => line.Kind == kind).Sum(line => line.AtCost ?? 0m);

    /// <summary>Money on that day; null: no row is said to be cash, so nobody knows.</summary>
    public decimal? Cash => Lines.Any(line => line.Kind == BalanceKind.Cash) ? CostOf(BalanceKind.Cash) : null;

    /// <summary>What customers owe for what was sold, at what stands on the sheet.</summary>
    public decimal UnpaidInvoices => CostOf(BalanceKind.Invoices);

    /// <summary>
    /// The balance sheet nearest to the end of a day and not after it, within 31 days; else that of the day after, whose beginning is the
    /// end of the day.
    /// </summary>
    /// <param name="records">The records.</param>
    /// <param name="day">The day, usually the last of a year.</param>
    /// <returns>The sheet; null when none is that near.</returns>
    public static BalanceSheet? At(FarmRecords records, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(records);
        DateOnly next = day.AddDays(1);
        List<BalanceRow> near = records.Tables.Balances.Where(row => row.Date <= next && row.Date > day.AddDays(-31)).ToList();
        if (near.Count == 0)
        {
            return null;
        }

        DateOnly listed = near.Where(row => row.Date <= day).Select(row => row.Date).DefaultIfEmpty(next).Max();
        DateOnly date = listed <= day ? listed : day;
        bool hasAssets = records.Tables.Assets.Count > 0;
        List<BalanceLine> lines = near.Where(row => row.Date == listed).Select(row => LineOf(row, hasAssets)).ToList();
        int firstLiability = lines.FindIndex(line => !line.IsAsset);
        lines.InsertRange(firstLiability < 0 ? lines.Count : firstLiability, Booked(records, date, lines));
        return new BalanceSheet(date, lines, AddLoans(records, date, lines))
        {
            OtherDays = [.. near.Select(row => row.Date).Where(other => other <= day && other != listed).Distinct().Order()],
        };
    }

    private static List<BalanceLine> Booked(FarmRecords records, DateOnly date, List<BalanceLine> listed)
    {
        bool valued = listed.Exists(line => line.Kind == BalanceKind.LongerAsset);
        return
        [
            .. records.Tables.Assets.Select(asset => BookValue.On(asset, date)).OfType<BookedAsset>().Select(asset => new BalanceLine(
                asset.Asset.Asset.Trim(), BalanceClass.IntermediateAsset, BalanceKind.BookedAsset, asset.Net, valued ? null : asset.Net)),
        ];
    }

    private static BalanceLine LineOf(BalanceRow row, bool hasAssets)
    {
        bool longer = row.Class is BalanceClass.IntermediateAsset or BalanceClass.LongTermAsset;
        BalanceKind kind = (row.Kind ?? Usual(row.Class)) switch
        {
            BalanceItem.Cash => BalanceKind.Cash,
            BalanceItem.Supplies => BalanceKind.Supplies,
            BalanceItem.Inventory => BalanceKind.Inventory,
            BalanceItem.Invoices => BalanceKind.Invoices,
            BalanceItem.InAssets when hasAssets => BalanceKind.LongerAsset,
            BalanceItem.InAssets or BalanceItem.BesideAssets => BalanceKind.BesideAssets,
            BalanceItem.PaidAhead => BalanceKind.PaidAhead,
            BalanceItem.Bills => BalanceKind.Payable,
            _ => BalanceKind.Debt,
        };
        return new BalanceLine(row.Item.Trim(), row.Class, kind, longer && kind == BalanceKind.LongerAsset ? null : row.Amount, row.Amount)
        {
            Row = row,
        };
    }

    private static BalanceItem Usual(BalanceClass stands) => stands switch
    {
        BalanceClass.CurrentAsset => BalanceItem.Inventory,
        BalanceClass.IntermediateAsset or BalanceClass.LongTermAsset => BalanceItem.InAssets,
        BalanceClass.CurrentLiability => BalanceItem.Bills,
        _ => BalanceItem.Debt,
    };

    /// <summary>
    /// Where the table lists no debt, what is owed by schedule is added; where it lists some, the schedules only check it.
    /// </summary>
    private static string? AddLoans(FarmRecords records, DateOnly date, List<BalanceLine> lines)
    {
        List<(LoanRow Row, decimal Owed, decimal Later)> loans = records
            .Tables.Loans.Select(row => (row, LoanSchedule.Of(LoanTerms.Of(row))))
            .Select(loan => (loan.row, loan.Item2.OwedOn(date), loan.Item2.OwedOn(date.AddYears(1))))
            .Where(loan => loan.Item2 > 0m)
            .ToList();
        if (loans.Count == 0)
        {
            return null;
        }

        decimal listed = lines.Where(line => line.Kind == BalanceKind.Debt).Sum(line => line.AtCost ?? 0m);
        decimal owed = loans.Sum(loan => loan.Owed);
        if (lines.Exists(line => line.Kind == BalanceKind.Debt))
        {
            decimal soon = lines.Where(line => line is { Kind: BalanceKind.Debt, Class: BalanceClass.CurrentLiability })
                .Sum(line => line.AtCost ?? 0m);
            return ListedAgainst(records.Settings.Notation, (listed, soon), (owed, loans.Sum(loan => loan.Owed - loan.Later)));
        }

        foreach ((LoanRow row, decimal now, decimal later) in loans)
        {
            AddDebt($"{row.Loan.Trim()}, due within a year, by schedule", BalanceClass.CurrentLiability, now - later);
            AddDebt($"{row.Loan.Trim()}, due later, by schedule", BalanceClass.LongTermLiability, later);
        }

        return "The balances list no debt; what is owed by the loans' schedules was added.";

        void AddDebt(string item, BalanceClass stands, decimal amount) =>
            lines.Add(new BalanceLine(item, stands, BalanceKind.Debt, amount, amount));
    }

    /// <summary>
    /// The debt listed against the schedules: all of it, and what falls due within a year, which the current ratio rests on.
    /// </summary>
    private static string ListedAgainst(Notation notation, (decimal All, decimal Soon) listed, (decimal All, decimal Soon) owed)
    {
        string all = listed.All == owed.All
            ? notation.Text($"The debt listed is what the loans' schedules say is owed, {Money.Rounded(owed.All).Amount:#,##0.00}.")
            : notation.Text($"The debt listed is {listed.All:#,##0.00}; by the loans' schedules {Money.Rounded(owed.All).Amount:#,##0.00} "
                + $"is owed. The list counts.");
        return listed.Soon == owed.Soon ? all
            : all + notation.Text($" Of it {Money.Rounded(owed.Soon).Amount:#,##0.00} falls due within a year by the schedules; "
                + $"{listed.Soon:#,##0.00} is listed as a current liability, which the current ratio and working capital rest on.");
    }
}
