using FarmEconomics.Budgets;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>
/// What a crop or planting adds to the farm as it stands: output less avoidable cost, where boxes count what filling them again would take
/// and not the payments, which stay. The one place that says so for lists and losses.
/// </summary>
public static class Contribution
{
    /// <summary>The contribution of a budget.</summary>
    /// <param name="costs">The season's costs.</param>
    /// <param name="budget">A planting, a crop, a group or the farm of that season.</param>
    /// <returns>Money; not available where the output or the costs aren't known.</returns>
    public static Result Of(SeasonCosts costs, EnterpriseBudget budget)
    {
        ArgumentNullException.ThrowIfNull(costs);
        ArgumentNullException.ThrowIfNull(budget);
        if (budget.Known.NoNetReturn is { } reason)
        {
            return Result.NotAvailable(reason);
        }

        decimal alone = AsItStood(costs, budget);
        EnterpriseBudget? crop = budget.Crop is { } one && budget.Enterprises.Count == 1 ? costs.Season.FindBudget(one.Name) : null;
        return Result.Known(
            crop is null || ReferenceEquals(crop, budget)
                ? alone
                : alone + costs.Avoidable.BoxesOf(crop).MoreThanPaid(budget.Enterprises[0]));
    }

    /// <summary>What is known of it, at the yield and price it had: where costs aren't known, output alone.</summary>
    internal static decimal AsItStood(SeasonCosts costs, EnterpriseBudget budget) => costs.Model(budget).Contribution(1m, 1m);
}
