using FarmEconomics.Costing;

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
    private static readonly (FarmStatementItem Item, BudgetLine Line)[] CropLines =
    [
        (FarmStatementItem.Sales, BudgetLine.Sales),
        (FarmStatementItem.ShareIncome, BudgetLine.ShareIncome),
        (FarmStatementItem.HouseholdUse, BudgetLine.HouseholdUse),
        (FarmStatementItem.ClosingStock, BudgetLine.ClosingStock),
        (FarmStatementItem.Output, BudgetLine.Output),
        (FarmStatementItem.Materials, BudgetLine.Materials),
        (FarmStatementItem.Selling, BudgetLine.Selling),
        (FarmStatementItem.GrossMargin, BudgetLine.GrossMargin),
        (FarmStatementItem.HiredLabor, BudgetLine.HiredLabor),
        (FarmStatementItem.OwnerLabor, BudgetLine.OwnerLabor),
        (FarmStatementItem.MarginAfterLabor, BudgetLine.MarginAfterLabor),
        (FarmStatementItem.Infrastructure, BudgetLine.Infrastructure),
        (FarmStatementItem.MarginAfterInfrastructure, BudgetLine.MarginAfterInfrastructure),
        (FarmStatementItem.Overhead, BudgetLine.Overhead),
        (FarmStatementItem.NetReturnOfCrops, BudgetLine.NetReturn),
    ];

    /// <summary>The statement of a season.</summary>
    /// <param name="season">The season.</param>
    /// <returns>Its lines from top to bottom.</returns>
    public static IReadOnlyList<FarmStatementLine> Of(SeasonReview season)
    {
        ArgumentNullException.ThrowIfNull(season);
        EnterpriseBudget farm = season.Farm;
        string? net = BudgetLines.Missing(BudgetLine.NetReturn, farm.Known);
        return
        [
            .. CropLines.Select(line => Line(line.Item, line.Item == FarmStatementItem.NetReturnOfCrops ? "net return of the crops" : line.Line.Name(), farm.Line(line.Line))),
            new(FarmStatementItem.OtherIncome, "other income", season.OtherIncome.Sum(income => income.Amount.Amount)),
            new(FarmStatementItem.UnassignedSales, "sales not assigned to a crop", season.UnassignedSales),
            Line(FarmStatementItem.UnusedCapacity, "unused capacity", season.OutsideTotal(Outside.Unused), farm.Known.Ownership),
            new(FarmStatementItem.UnassignedCost, "cost not assigned to a crop", season.OutsideTotal(Outside.NotAssigned)),
            Line(FarmStatementItem.NetReturnOfFarm, "net return of the farm", season.FarmNet, net, isTotal: true),
            new(FarmStatementItem.HouseholdPart, "household's part of costs, not a farm cost", season.OutsideTotal(Outside.Household)),
            new(FarmStatementItem.Excluded, "capital, principal, interest on asset loans, tax and drawings, outside the budget", season.OutsideTotal(Outside.Excluded)),
        ];
    }

    private static FarmStatementLine Line(FarmStatementItem item, string name, BudgetFigure figure) => new(item, name, figure.Value, figure.Missing, figure.Line.IsTotal());

    private static FarmStatementLine Line(FarmStatementItem item, string name, decimal amount, string? reason, bool isTotal = false) =>
        new(item, name, reason is null ? amount : null, reason, isTotal);
}
