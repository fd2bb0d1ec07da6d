using FarmEconomics.Budgets;

namespace FarmEconomics.Reports.Words;

/// <summary>
/// The lines of a budget as a grower reads them. A lender's pages, the tables of results and the ledger keep the trade's names
/// (<see cref="BudgetLines.Name"/>).
/// </summary>
public static class LineWords
{
    /// <summary>A line of a budget.</summary>
    /// <param name="line">The line.</param>
    /// <returns>Its name, beginning small.</returns>
    public static string Of(BudgetLine line) => line switch
    {
        BudgetLine.Output => "brought in",
        BudgetLine.OwnerLabor => "your own hours",
        BudgetLine.NetReturn => "left over",
        _ => line.Name(),
    };

    /// <summary>A line of the whole farm.</summary>
    /// <param name="line">The line.</param>
    /// <returns>Its name, beginning small.</returns>
    public static string Of(FarmStatementLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        return line switch
        {
            { Line: BudgetLine.NetReturn } => "left over from the crops",
            { Line: { } budget } => Of(budget) + (line.LeavesOutOwnership ? Availability.BeforeOwnership : ""),
            { Item: FarmStatementItem.NetReturnOfFarm } => "left over for the farm",
            _ => line.Name,
        };
    }

    /// <summary>What is left after every cost; while one of them isn't known, what it is before.</summary>
    /// <param name="known">What is known.</param>
    /// <returns>The name, beginning small.</returns>
    public static string Net(Availability known)
    {
        ArgumentNullException.ThrowIfNull(known);
        return known.NetReturnIsWhole ? Of(BudgetLine.NetReturn) : known.NetReturnLabel;
    }
}
