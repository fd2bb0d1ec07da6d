using FarmEconomics.Costing;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>A line of the whole-farm statement.</summary>
/// <param name="Name">The line.</param>
/// <param name="Amount">The amount; null: not available.</param>
/// <param name="Reason">Why it isn't available; null when it is.</param>
/// <param name="IsTotal">True for a line derived from those above it.</param>
public sealed record FarmStatementLine(string Name, decimal? Amount, string? Reason = null, bool IsTotal = false);

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
            Line("sales", farm.Sums.Sales, known.Value),
            Line("share income", farm.Sums.ShareIncome, known.Value),
            Line("household use", farm.Sums.Household, known.Value),
            Line("closing stock", farm.Sums.ClosingStock, known.Value),
            Line("output", farm.Output, known.Value, isTotal: true),
            Line("materials", farm.Sums.Materials, known.Costs),
            Line("selling", farm.Sums.Selling, known.Costs),
            Line("gross margin", farm.GrossMargin, known.NoGrossMargin, isTotal: true),
            Line("hired labor", farm.Sums.HiredLabor, known.LaborCost),
            Line("owner labor", farm.Sums.OwnerLabor, labor),
            Line("margin after labor", farm.MarginAfterLabor, known.NoGrossMargin ?? labor, isTotal: true),
            Line("infrastructure", farm.Sums.Infrastructure, known.Costs ?? known.Ownership),
            Line("margin after infrastructure", farm.MarginAfterInfrastructure, net, isTotal: true),
            Line("overhead", farm.Sums.Overhead, known.Overhead),
            Line("net return of the crops", farm.NetReturn, net, isTotal: true),
            new("other income", other),
            new("sales not assigned to a crop", season.UnassignedSales),
            Line("unused capacity", new Money(season.OutsideTotal(Outside.Unused)), known.Ownership),
            new("cost not assigned to a crop", season.OutsideTotal(Outside.NotAssigned)),
            Line("net return of the farm", new Money(season.FarmNet), net, isTotal: true),
            new("household's part of costs, not a farm cost", season.OutsideTotal(Outside.Household)),
            new("capital, principal, interest on asset loans, tax and drawings, outside the budget", season.OutsideTotal(Outside.Excluded)),
        ];
    }

    private static FarmStatementLine Line(string name, Money amount, string? reason, bool isTotal = false) =>
        new(name, reason is null ? amount.Amount : null, reason, isTotal);
}
