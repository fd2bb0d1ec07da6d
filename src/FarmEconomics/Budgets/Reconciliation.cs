using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>
/// The proof of every season: books, hours, quantities and sales on the one side, worked out from the raw rows; enterprises, household,
/// unused capacity, not assigned, excluded, carried and brought on the other.
/// </summary>
internal sealed class Reconciliation
{
    private readonly SeasonReview season;
    private readonly ChargeBook book;
    private readonly FarmRecords records;
    private readonly int year;

    internal Reconciliation(SeasonReview season, ChargeBook book)
    {
        this.season = season;
        this.book = book;
        records = book.Trace.Records;
        year = season.CropYear;
    }

    internal List<ReconciliationCheck> Checks()
    {
        List<ReconciliationCheck> checks = [BooksCheck(), HoursCheck(), SalesCheck()];
        checks.AddRange(QuantityChecks());
        foreach (PoolResult pool in season.Pools)
        {
            checks.Add(new ReconciliationCheck(
                $"pool {pool.Pool.Name}: cash, labor and ownership = crops, household, unused and not assigned",
                pool.Total.Amount,
                (pool.ToCrops + pool.ToHousehold + pool.Unused + pool.NotAssigned).Amount));
        }

        checks.Add(new ReconciliationCheck(
            "charges of all pools = cost lines of the crops less direct costs",
            season.Pools.Sum(pool => pool.Charges.Where(charge => charge.Enterprise is not null).Sum(charge => charge.Amount.Amount)),
            (season.Farm.TotalCost - season.Farm.Sums.Establishment).Amount - DirectCost()));
        checks.Add(ViewCheck("crops", season.Crops));
        checks.Add(ViewCheck("groups", season.Groups));
        checks.Add(ViewCheck("beds", season.Beds));
        checks.Add(ViewCheck("structures", season.Structures));
        checks.Add(new ReconciliationCheck(
            "value by channel = output without closing stock, and leavings not assigned",
            season.Channels.Sum(channel => channel.QuantityValue.Amount),
            (season.Farm.Output - season.Farm.Sums.ClosingStock).Amount + UnassignedValue()));
        return checks;
    }

    /// <summary>Expenses of the year, all classes, and what was imputed, against where it all landed.</summary>
    private ReconciliationCheck BooksCheck()
    {
        decimal books = records.Expenses.Where(row => book.HomeYearOf(row) == year).Sum(row => row.Amount);
        decimal right =
            season.Farm.TotalCost.Amount
            + season.UnallocatedTotal(Unallocated.Household)
            + season.UnallocatedTotal(Unallocated.Unused)
            + season.UnallocatedTotal(Unallocated.NotAssigned)
            + season.UnallocatedTotal(Unallocated.Excluded)
            + season.Carried.Amount
            - season.Brought.Amount;
        return new ReconciliationCheck(
            "books and imputed charges = crop lines, household, unused, not assigned, excluded and carried less brought",
            books + Imputed(),
            right
        );
    }

    private decimal Imputed()
    {
        decimal fees = ExactUnits.Money(book.Trace.TotalsOf(year).Fees).Amount;
        decimal labor = book
            .Trace.LaborByWindow[year]
            .Where(use => use.Kind == WorkerKind.Owner || book.IsImputed(use))
            .Sum(use => book.AmountOf(use)?.Amount ?? 0m);
        decimal ownership = records
            .Tables.Assets.SelectMany(asset => Ownership.Of(asset, year, records.Settings, records.CostsUntil))
            .Sum(part => (part.Farm + part.Household).Amount);
        return fees + labor + ownership + LandCharge.Of(records, year).Amount + Establishment();
    }

    /// <summary>What perennials take of their establishment less what those that don't bear yet carry to later years.</summary>
    private decimal Establishment() => season.Network.Enterprises.Where(enterprise => StandAccount.IsSpread(enterprise.Crop))
        .Sum(enterprise => season.StandOf(enterprise.Planting).In(year, season.BudgetOf(enterprise).Sums.OwnCost, null).Amount.Amount);

    private ReconciliationCheck HoursCheck()
    {
        decimal logged = records.Labor.Where(row => records.Settings.WindowOf(row.Date) == year).Sum(row => row.Hours);
        decimal added = book.Trace.LaborByWindow[year].Where(use => use.Added).Sum(use => use.Hours);
        decimal right =
            season.Farm.LaborHours.Value
            + season.Farm.Sums.OverheadHours
            + season.UnallocatedHours.Sum()
            + season.CarriedHours
            - season.BroughtHours;
        return new ReconciliationCheck(
            "hours logged and estimated = labor hours, overhead hours, household, unused, not assigned and carried less brought",
            logged + added,
            right
        );
    }

    private ReconciliationCheck SalesCheck()
    {
        YearTotals rows = book.Trace.TotalsOf(year);
        decimal shares = book.Trace.ShareIncome.Where(pair => pair.Key.Window == year).Sum(pair => pair.Value.Amount);
        return new ReconciliationCheck(
            "sales and share income dated in the year = crops' sales, not assigned and carried less brought",
            ExactUnits.Money(rows.OutsideShares).Amount + shares,
            season.Farm.SalesValue.Amount + ExactUnits.Money(rows.Unassigned + rows.Carried - rows.Brought).Amount);
    }

    private IEnumerable<ReconciliationCheck> QuantityChecks() =>
        season.Crops.Select(crop => new ReconciliationCheck(
            $"quantity of {crop.Name}: harvested and unmatched = sold, other use and unsold",
            crop.Sums.Harvested + crop.Sums.Unmatched,
            crop.Sums.Sold + crop.Sums.OtherUse + crop.Sums.Unsold));

    private ReconciliationCheck ViewCheck(string view, IReadOnlyList<EnterpriseBudget> budgets) => new(
        $"net return of the {view} = net return of the plantings",
        budgets.Sum(budget => budget.NetReturn.Amount),
        season.Plantings.Sum(budget => budget.NetReturn.Amount));

    private decimal DirectCost() =>
        book.ByYear[year].AmountOn(year) + season.Plantings.Sum(planting => planting.Sums.SoldFees.Amount);

    private decimal UnassignedValue() => ExactUnits.Money(book.Trace.TotalsOf(year).UnassignedValue).Amount;
}
