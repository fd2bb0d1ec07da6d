using FarmEconomics.Costing;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>The lines of the whole-farm statement, top to bottom.</summary>
public enum FarmStatementItem
{
    /// <summary>Sales through priced channels.</summary>
    Sales,

    /// <summary>Income of share channels, imputed to crops.</summary>
    ShareIncome,

    /// <summary>What the household took, at list value.</summary>
    HouseholdUse,

    /// <summary>Produce on hand at the closing date.</summary>
    ClosingStock,

    /// <summary>The four above.</summary>
    Output,

    /// <summary>Materials.</summary>
    Materials,

    /// <summary>Cost of selling.</summary>
    Selling,

    /// <summary>Output less materials and selling.</summary>
    GrossMargin,

    /// <summary>Hired labor.</summary>
    HiredLabor,

    /// <summary>Unpaid hours at the owner's wage.</summary>
    OwnerLabor,

    /// <summary>Gross margin less labor.</summary>
    MarginAfterLabor,

    /// <summary>Shared cost of what is used in common.</summary>
    Infrastructure,

    /// <summary>Margin after labor less infrastructure.</summary>
    MarginAfterInfrastructure,

    /// <summary>Overhead.</summary>
    Overhead,

    /// <summary>Margin after infrastructure less overhead.</summary>
    NetReturnOfCrops,

    /// <summary>Income no crop is named for.</summary>
    OtherIncome,

    /// <summary>Sales no planting could take.</summary>
    UnassignedSales,

    /// <summary>Cost of capacity nobody used.</summary>
    UnusedCapacity,

    /// <summary>Cost that reached no crop.</summary>
    UnassignedCost,

    /// <summary>What the farm netted.</summary>
    NetReturnOfFarm,

    /// <summary>The household's part of shared bills.</summary>
    HouseholdPart,

    /// <summary>What stays outside the budget.</summary>
    Excluded,
}

/// <summary>A line of the whole-farm statement.</summary>
/// <param name="Item">Which line it is.</param>
/// <param name="Name">The line in words.</param>
/// <param name="Amount">The amount; null: not available.</param>
/// <param name="Reason">Why it isn't available; null when it is.</param>
/// <param name="IsTotal">True for a line derived from those above it.</param>
public sealed record FarmStatementLine(FarmStatementItem Item, string Name, decimal? Amount, string? Reason = null, bool IsTotal = false);

/// <summary>
/// The whole farm on one page: all crops' budget lines, then what no crop carries, down to what the farm earned. Crops plus the lines below
/// them hold every cent of the year once.
/// </summary>
public static class FarmStatement
{
    /// <summary>The statement of a season.</summary>
    /// <param name="season">The season.</param>
    /// <returns>Its lines from top to bottom.</returns>
    public static IReadOnlyList<FarmStatementLine> Of(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        EnterpriseBudget farm = season.Farm;
        Availability known = farm.Known;
        string? labor = known.LaborCost ?? known.OwnerLabor;
        string? net = known.NoFullNetReturn;
        decimal other = season.OtherIncome.Sum(income => income.Amount.Amount);
        return
        [
            Line(FarmStatementItem.Sales, "sales", farm.Sums.Sales, known.Value),
            Line(FarmStatementItem.ShareIncome, "share income", farm.Sums.ShareIncome, known.Value),
            Line(FarmStatementItem.HouseholdUse, "household use", farm.Sums.Household, known.Value),
            Line(FarmStatementItem.ClosingStock, "closing stock", farm.Sums.ClosingStock, known.Value),
            Line(FarmStatementItem.Output, "output", farm.Output, known.Value, isTotal: true),
            Line(FarmStatementItem.Materials, "materials", farm.Sums.Materials, known.Costs),
            Line(FarmStatementItem.Selling, "selling", farm.Sums.Selling, known.Costs),
            Line(FarmStatementItem.GrossMargin, "gross margin", farm.GrossMargin, known.NoGrossMargin, isTotal: true),
            Line(FarmStatementItem.HiredLabor, "hired labor", farm.Sums.HiredLabor, known.LaborCost),
            Line(FarmStatementItem.OwnerLabor, "owner labor", farm.Sums.OwnerLabor, labor),
            Line(FarmStatementItem.MarginAfterLabor, "margin after labor", farm.MarginAfterLabor, known.NoGrossMargin ?? labor, isTotal: true),
            Line(FarmStatementItem.Infrastructure, "infrastructure", farm.Sums.Infrastructure, known.Costs ?? known.Ownership),
            Line(FarmStatementItem.MarginAfterInfrastructure, "margin after infrastructure", farm.MarginAfterInfrastructure, net, isTotal: true),
            Line(FarmStatementItem.Overhead, "overhead", farm.Sums.Overhead, known.Overhead),
            Line(FarmStatementItem.NetReturnOfCrops, "net return of the crops", farm.NetReturn, net, isTotal: true),
            new(FarmStatementItem.OtherIncome, "other income", other),
            new(FarmStatementItem.UnassignedSales, "sales not assigned to a crop", season.UnassignedSales),
            Line(FarmStatementItem.UnusedCapacity, "unused capacity", new Money(season.OutsideTotal(Outside.Unused)), known.Ownership),
            new(FarmStatementItem.UnassignedCost, "cost not assigned to a crop", season.OutsideTotal(Outside.NotAssigned)),
            Line(FarmStatementItem.NetReturnOfFarm, "net return of the farm", new Money(season.FarmNet), net, isTotal: true),
            new(FarmStatementItem.HouseholdPart, "household's part of costs, not a farm cost", season.OutsideTotal(Outside.Household)),
            new(FarmStatementItem.Excluded, "capital, principal, interest on asset loans, tax and drawings, outside the budget", season.OutsideTotal(Outside.Excluded)),
        ];
    }

    private static FarmStatementLine Line(FarmStatementItem item, string name, Money amount, string? reason, bool isTotal = false) =>
        new(item, name, reason is null ? amount.Amount : null, reason, isTotal);
}
