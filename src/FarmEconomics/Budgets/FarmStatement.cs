using FarmEconomics.Costing;

namespace FarmEconomics.Budgets;

/// <summary>The lines of the whole-farm statement below the crops, top to bottom. Those of the crops are the lines of a budget.</summary>
public enum FarmStatementItem
{
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

/// <summary>A line of the whole-farm statement: of the crops' budget, or below it.</summary>
/// <param name="Line">The line of the crops' budget; null below them.</param>
/// <param name="Item">The line below the crops; null for one of theirs.</param>
/// <param name="Name">The line in words.</param>
/// <param name="Amount">The amount; null: not available.</param>
/// <param name="Reason">Why it isn't available; null when it is.</param>
/// <param name="IsTotal">True for a line derived from those above it.</param>
public sealed record FarmStatementLine(
    BudgetLine? Line,
    FarmStatementItem? Item,
    string Name,
    decimal? Amount,
    string? Reason = null,
    bool IsTotal = false
)
{
    /// <summary>True where the amount leaves out ownership cost nobody knows; the name says so.</summary>
    public bool LeavesOutOwnership { get; init; }
}

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
        bool before = farm.Known.Ownership is not null;
        string? net = BudgetLines.Missing(BudgetLine.NetReturn, farm.Known);
        return
        [
            .. BudgetLines
                .All.Where(line => line != BudgetLine.Labor)
                .Select(line => Line(line, farm.Line(line), WithoutOwnership(season, line))),
            Line(FarmStatementItem.OtherIncome, "other income", season.OtherIncome.Sum(income => income.Amount.Amount)),
            Line(FarmStatementItem.UnassignedSales, "sales not assigned to a crop", season.UnassignedSales),
            Line(FarmStatementItem.UnusedCapacity, "unused capacity", season.UnallocatedTotal(Unallocated.Unused), farm.Known.Ownership),
            Before(
                before,
                Line(FarmStatementItem.UnassignedCost, "cost not assigned to a crop", season.UnallocatedTotal(Unallocated.NotAssigned))),
            Line(FarmStatementItem.NetReturnOfFarm, "net return of the farm", season.FarmNet, net, isTotal: true),
            Before(
                before,
                Line(
                    FarmStatementItem.HouseholdPart,
                    "household's part of costs, not a farm cost",
                    season.UnallocatedTotal(Unallocated.Household)
                )
            ),
            Line(
                FarmStatementItem.Excluded,
                "capital, principal, interest on asset loans, tax and drawings, outside the budget",
                season.UnallocatedTotal(Unallocated.Excluded)
            ),
        ];
    }

    /// <summary>
    /// Whether a known line leaves out ownership cost that isn't: of pools that stand on it (a market van's on selling), or on a line above
    /// that it counts.
    /// </summary>
    private static bool WithoutOwnership(SeasonReview season, BudgetLine line) =>
        line.IsTotal()
            ? BudgetLines.All.Any(part => part.Parent() == line && WithoutOwnership(season, part))
            : season.Pools.Any(pool => !pool.OwnershipKnown
                && (line == BudgetLine.HiredLabor ? BudgetLine.Labor : line) == BudgetLines.Of(pool.Pool.Line));

    private static FarmStatementLine Line(BudgetLine line, BudgetFigure figure, bool before) => Before(
        before && figure.Missing is null,
        new(
            line,
            null,
            line == BudgetLine.NetReturn ? "net return of the crops" : line.Name(),
            figure.Value,
            figure.Missing,
            line.IsTotal()
        ));

    private static FarmStatementLine Before(bool ownership, FarmStatementLine line) =>
        ownership ? line with { Name = line.Name + Availability.BeforeOwnership, LeavesOutOwnership = true } : line;

    private static FarmStatementLine Line(
        FarmStatementItem item,
        string name,
        decimal amount,
        string? reason = null,
        bool isTotal = false
    ) => new(null, item, name, reason is null ? amount : null, reason, isTotal);
}
