using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;

namespace FarmEconomics.Funding;

/// <summary>A step from one figure to another.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Amount">What it adds, signed, in whole cents.</param>
public sealed record BridgeStep(string Name, decimal Amount);

/// <summary>
/// From the cash statement by tax line to the net return of the enterprise statement: every dollar between the two, each step worked out
/// from the rows, none as a remainder. What the steps don't explain is shown, and is 0.00.
/// </summary>
public sealed class StatementBridge
{
    private StatementBridge(decimal from, decimal to, IReadOnlyList<BridgeStep> steps, string label)
    {
        NetFarmCash = from;
        NetReturn = to;
        Steps = steps;
        NetReturnLabel = label;
    }

    /// <summary>Where it starts: cash income less cash expenses by date, before depreciation.</summary>
    public decimal NetFarmCash { get; }

    /// <summary>The steps.</summary>
    public IReadOnlyList<BridgeStep> Steps { get; }

    /// <summary>Where it ends: the net return of the farm in the enterprise statement.</summary>
    public decimal NetReturn { get; }

    /// <summary>What the net return leaves out, if anything.</summary>
    public string NetReturnLabel { get; }

    /// <summary>What the steps don't explain; 0.</summary>
    public decimal NotExplained => NetReturn - NetFarmCash - Steps.Sum(step => step.Amount);

    /// <summary>Builds the bridge.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="season">The season.</param>
    /// <param name="book">The cash book of the same year.</param>
    /// <returns>The bridge.</returns>
    public static StatementBridge Of(FarmReview review, SeasonReview season, CashBook book)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(season);
        ArgumentNullException.ThrowIfNull(book);
        int year = season.CropYear;
        ChargeBook charges = review.Charges;
        FarmRecords records = review.Records;
        decimal shareDated = book.Sum(CashKind.ShareIncome);
        decimal otherDated = book.Sum(CashKind.OtherIncome);
        decimal incomeOfYear = records
            .Income.Where(row => (row.CropYear ?? records.Settings.WindowOf(row.Date)) == year)
            .Sum(row => row.Amount);
        decimal sentOn = review.Trace.PartsOfWindow(year).Where(part => part.CropYear != year).Sum(part => part.Amount.Amount);
        decimal takenIn = season.DispositionParts.Where(part => part.Disposition.Window != year).Sum(part => part.Amount.Amount);
        decimal booksOfYear = records.Expenses.Where(row => charges.HomeYearOf(row) == year).Sum(row => FarmPart(records, row));
        decimal booksDated = -book.Sum(CashKind.Operating, CashKind.OperatingInterest, CashKind.Labor);
        decimal Imputed(CostStream stream) => ImputedIn(charges, year, stream);
        decimal land = LandIn(charges, year);
        List<BridgeStep> steps =
        [
            new("Income of this crop year paid in another, less income of another paid in this", incomeOfYear - shareDated - otherDated),
            new("Sold this year and not paid in it, less what was paid of the year before", -book.Sum(CashKind.Invoices)),
            new("This year's produce sold in another year, less produce of other years sold in this", takenIn - sentOn),
            new("Household use at list value, not cash", season.Farm.Sums.Household.Amount),
            new("Closing stock, not cash", season.Farm.Sums.ClosingStock.Amount),
            new("Running costs and wages of other crop years paid in this, less this year's paid in another", booksDated - booksOfYear),
            new("Costs, fees and labor of this year spent on other crop years, less theirs spent on this",
                (season.Carried - season.Brought).Amount),
            new("Interest on loans for assets, outside the enterprise budget", -book.Sum(CashKind.Interest)),
            new("Yearly cost of equipment and buildings, the farm's part", land - Imputed(CostStream.Ownership)),
            new("Charge for your own land", -land),
            new("Hired labor worked out from wages, where the books hold none", -Imputed(CostStream.HiredLabor)),
            new("Unpaid owner labor", -Imputed(CostStream.OwnerLabor)),
            new("Establishment of perennials: carried to later years, less what bearing seasons take",
                -season.Farm.Sums.Establishment.Amount),
            new("The household's part of shared works", season.Pools.Sum(pool => pool.ToHousehold.Amount)),
        ];
        return new StatementBridge(book.NetFarmCash, season.FarmNet, steps, season.Farm.Known.NetReturnLabel);
    }

    // Own land is charged bed by bed; equipment and buildings are rows of assets.
    private static decimal LandIn(ChargeBook charges, int year) => charges.Charges
        .Where(charge => charge.HomeYear == year && charge.Origin is BedRow).Sum(charge => charge.Amount.Amount);

    private static decimal ImputedIn(ChargeBook charges, int year, CostStream stream) => charges
        .Charges.Where(charge =>
            charge.HomeYear == year
            && charge.Stream == stream
            && charge.Imputed
            && !charge.IsFee
            && charge.Unallocated != Unallocated.Household
        )
        .Sum(charge => charge.Amount.Amount);

    private static decimal FarmPart(FarmRecords records, ExpenseRow row) =>
        records.Category(row.Category).EntersBudgets() ? row.FarmPart : 0m;
}
