using FarmEconomics.Budgets;
using FarmEconomics.Records;

namespace FarmEconomics.Funding;

/// <summary>A line of the statement by tax line.</summary>
/// <param name="Line">The line; null for a category whose label fits none.</param>
/// <param name="Label">What it reads.</param>
/// <param name="Amount">The expense, above 0; null: not available.</param>
/// <param name="Reason">Why it isn't available, or what it leaves out; null when whole.</param>
public sealed record TaxStatementLine(TaxLine? Line, string Label, decimal? Amount, string? Reason);

/// <summary>
/// The whole farm by Schedule F line on the cash basis: receipts, then expenses as part II has them. Amounts are signed as the form has
/// them: income and expenses above 0.
/// </summary>
public sealed class TaxStatement
{
    private const int NamedWithoutPrice = 5;

    private TaxStatement(CashBook book, IReadOnlyList<AssetDepreciation> depreciation, List<TaxStatementLine> lines)
    {
        Book = book;
        Depreciation = depreciation;
        Expenses = lines;
    }

    /// <summary>The cash book it adds up.</summary>
    public CashBook Book { get; }

    /// <summary>Tax depreciation, asset by asset.</summary>
    public IReadOnlyList<AssetDepreciation> Depreciation { get; }

    /// <summary>Sales of produce raised, before fees, as far as they were paid in the year (part I).</summary>
    public decimal Sales => Book.Sum(CashKind.ProduceSales, CashKind.Invoices, CashKind.ShareIncome);

    /// <summary>Other farm income (part I).</summary>
    public decimal OtherIncome => Book.Sum(CashKind.OtherIncome);

    /// <summary>
    /// Why what the farm took in isn't known: no row of the year tells of any, or something was sold at a price no record tells; null where
    /// it is.
    /// </summary>
    public string? IncomeUnknown =>
        Book.Unpriced.Count > NamedWithoutPrice ? $"{Book.Unpriced.Count} crops sold without a price on record"
        : Book.Unpriced.Count > 0 ? Availability.NoPriceOf(Book.Unpriced.Select(crop => crop.Name))
        : Book.Entries.Any(entry => entry.Kind is CashKind.ProduceSales or CashKind.ShareIncome or CashKind.OtherIncome) ? null
        : $"no income of {Book.Period.Year} on file";

    /// <summary>
    /// Why what the farm paid isn't known: the books hold no row of the year; null where they do. Fees worked out from sales are no books.
    /// </summary>
    public string? ExpensesUnknown => Book.Entries.Any(entry => entry.Row is ExpenseRow)
        ? null
        : $"no expenses of {Book.Period.Year} on file";

    /// <summary>Why no net can be told of the year; null when one can.</summary>
    public string? NetUnknown => IncomeUnknown ?? ExpensesUnknown;

    /// <summary>Gross income (line 9).</summary>
    public decimal GrossIncome => Sales + OtherIncome;

    /// <summary>Expense lines that hold anything, in the form's order; lines without a known label come last.</summary>
    public IReadOnlyList<TaxStatementLine> Expenses { get; }

    /// <summary>Cash expenses: all lines but depreciation.</summary>
    public decimal CashExpenses => Expenses.Where(line => line.Line != TaxLines.Depreciation).Sum(line => line.Amount ?? 0m);

    /// <summary>Gross income less cash expenses: net farm cash income, before depreciation.</summary>
    public decimal NetBeforeDepreciation => GrossIncome - CashExpenses;

    /// <summary>Assets in service that no depreciation class was given for: their depreciation isn't in the statement.</summary>
    public IReadOnlyList<AssetRow> WithoutClass =>
        [.. Depreciation.Where(asset => asset.In(Book.Period.Year) is null).Select(asset => asset.Asset)];

    /// <summary>Depreciation of the classes given.</summary>
    public decimal DepreciationOfGivenClasses => Depreciation.Sum(asset => asset.In(Book.Period.Year) ?? 0m);

    /// <summary>Net profit or loss (line 34); not available while an asset has no class.</summary>
    public Units.Result NetProfit => WithoutClass is { Count: > 0 } missing
        ? Units.Result.NotAvailable(NoClass([.. missing.Select(asset => asset.Asset.Trim())]))
        : Units.Result.Known(NetBeforeDepreciation - DepreciationOfGivenClasses);

    /// <summary>Makes the statement.</summary>
    /// <param name="book">The cash book.</param>
    /// <param name="classes">Recovery years by asset name, the user's input.</param>
    /// <returns>The statement.</returns>
    /// <exception cref="ArgumentException">A class names no asset or no period.</exception>
    public static TaxStatement Of(CashBook book, IReadOnlyDictionary<string, int> classes)
    {
        ArgumentNullException.ThrowIfNull(book);
        IReadOnlyList<AssetDepreciation> depreciation = TaxDepreciation.Of(book.Records.Tables.Assets, classes);
        Dictionary<string, TaxStatementLine> unknown = [];
        ILookup<(TaxLine? Line, string Label), CashEntry> groups = book
            .Entries.Where(entry =>
                entry.Kind
                    is CashKind.SellingFees
                        or CashKind.Operating
                        or CashKind.Labor
                        or CashKind.Interest
                        or CashKind.OperatingInterest
            )
            .ToLookup(entry => LineOf(book.Records, entry));
        List<TaxStatementLine> lines = [];
        foreach (TaxLine line in TaxLines.All)
        {
            List<CashEntry> own = groups.Where(group => group.Key.Line == line).SelectMany(group => group).ToList();
            if (line == TaxLines.Depreciation)
            {
                AddDepreciation(lines, depreciation, book.Period.Year, own);
            }
            else if (own.Count > 0)
            {
                lines.Add(new TaxStatementLine(line, line.Name, -own.Sum(entry => entry.Amount), null));
            }
        }

        foreach (
            IGrouping<(TaxLine? Line, string Label), CashEntry> group in groups
                .Where(group => group.Key.Line is null)
                .OrderBy(group => group.Key.Label, StringComparer.Ordinal)
        )
        {
            lines.Add(new TaxStatementLine(null, group.Key.Label, -group.Sum(entry => entry.Amount), null));
        }

        return new TaxStatement(book, depreciation, lines);
    }

    private const int MostNamed = 3;

    private static string NoClass(List<string> assets) =>
        $"no depreciation class for {(assets.Count <= MostNamed ? string.Join(", ", assets) : $"{assets.Count} assets")}";

    private static void AddDepreciation(
        List<TaxStatementLine> lines,
        IReadOnlyList<AssetDepreciation> depreciation,
        int year,
        List<CashEntry> bookedAsExpense
    )
    {
        if (depreciation.Count > 0)
        {
            List<string> missing = depreciation.Where(asset => asset.In(year) is null).Select(asset => asset.Asset.Asset).ToList();
            decimal sum = depreciation.Sum(asset => asset.In(year) ?? 0m);
            decimal? known = missing.Count > 0 && sum == 0m ? null : sum;
            string? why = missing.Count == 0 ? null : NoClass(missing);
            lines.Add(new TaxStatementLine(TaxLines.Depreciation, TaxLines.Depreciation.Name, known, why));
        }

        if (bookedAsExpense.Count > 0)
        {
            decimal booked = -bookedAsExpense.Sum(entry => entry.Amount);
            lines.Add(new TaxStatementLine(null, "labeled depreciation, but booked as a running cost", booked, null));
        }
    }

    private static (TaxLine? Line, string Label) LineOf(FarmRecords records, CashEntry entry)
    {
        if (entry.Kind == CashKind.SellingFees)
        {
            return (TaxLines.Other, TaxLines.Other.Name);
        }

        string? label = records.Category(((ExpenseRow)entry.Row).Category).TaxLine;
        return TaxLines.Find(label) is { } line
            ? (line, line.Name)
            : (null, string.IsNullOrWhiteSpace(label) ? "no tax line given" : $"{label.Trim()} (not a line of the form)");
    }
}
