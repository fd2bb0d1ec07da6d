using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Budgets;

/// <summary>
/// Break-even of an enterprise budget (docs/methods.md, section 8). Price: that of the units sold at which net return is 0 while every
/// charge stays as it was; only a channel's fee, a percentage, follows the price, and what else the crop gave (household use, closing
/// stock) counts at its value. Yield: the one at which net return is 0 at the season's price. Source: the break-even definitions of
/// extension enterprise budgets, extended by a fee that follows the price and by output that wasn't sold.
/// </summary>
internal static class BreakEven
{
    /// <summary>Why a budget has no break-even of its own; null when it has.</summary>
    internal static string? Missing(EnterpriseBudget budget) => budget.Crop is null ? "several crops have no common unit"
        : budget.Sums.Sold <= 0m || budget.Sums.SoldValue.Amount <= 0m ? "nothing sold"
        : null;

    /// <summary>The price at which the costs are covered; below 0 where what wasn't sold covers them alone.</summary>
    /// <param name="budget">A crop's or planting's budget.</param>
    internal static Result Price(EnterpriseBudget budget)
    {
        if (Missing(budget) is { } reason)
        {
            return Result.NotAvailable(reason);
        }

        decimal keptOfPrice = 1m - (budget.Sums.SoldFees.Amount / budget.Sums.SoldValue.Amount);
        return (Line(budget) with { Followed = budget.Sums.Sold * keptOfPrice }).PriceFor(1m, "the channel's fee takes all of the sales");
    }

    /// <summary>Units sold per bed-foot at which the costs are covered, while what wasn't sold grows and shrinks with them.</summary>
    internal static Result YieldPerBedFoot(EnterpriseBudget budget)
    {
        if (Missing(budget) is { } reason)
        {
            return Result.NotAvailable(reason);
        }

        Result factor = Line(budget).YieldFor(1m, "a unit earns less than it costs to pick, pack and sell");
        return factor.Value is { } times
            ? Result.Of(times * budget.Sums.Sold, budget.Sums.BedFeet.Value, "nothing planted in beds")
            : factor;
    }

    /// <summary>Costs that what was sold must cover: all, less the value of what wasn't sold.</summary>
    internal static decimal ToCover(EnterpriseBudget budget) =>
        budget.Sums.CostByBehavior.Sum() - budget.OutputNotSold.Amount;

    // Fees are among the costs of the units, and follow the price.
    private static CostVolumeProfit Line(EnterpriseBudget budget)
    {
        decimal fees = budget.Sums.SoldFees.Amount;
        return new(
            budget.Sums.SoldValue.Amount - fees,
            budget.OutputNotSold.Amount - Cost(budget, CostDriver.Quantity) - Cost(budget, CostDriver.Units) + fees,
            Cost(budget, CostDriver.Length)
                + Cost(budget, CostDriver.BedTime)
                + Cost(budget, CostDriver.Fixed)
                + Cost(budget, CostDriver.Trips)
        );
    }

    private static decimal Cost(EnterpriseBudget budget, CostDriver behavior) => budget.Sums.CostByBehavior[(int)behavior];
}
