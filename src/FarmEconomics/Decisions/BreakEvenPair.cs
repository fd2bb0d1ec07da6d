using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>Which of the published definitions of break-even.</summary>
public enum BreakEvenForm
{
    /// <summary>
    /// Textbook: cost / units sold, and cost / price. Costs that follow quantity or sales are held where they were.
    /// Source: extension enterprise budgets ("break-even price = total cost / yield, break-even yield = total cost / price").
    /// </summary>
    Textbook,

    /// <summary>Full: costs that follow quantity or sales move with them, as in the columns of the result tables.</summary>
    Full,
}

/// <summary>How far the costs to be covered go.</summary>
public enum Run
{
    /// <summary>All costs: what must be earned in the long run.</summary>
    Long,

    /// <summary>Avoidable costs only: below it, growing the crop costs the farm money now.</summary>
    Short,
}

/// <summary>A break-even price and yield.</summary>
/// <param name="Form">Textbook or full.</param>
/// <param name="Run">Long or short.</param>
/// <param name="Price">Money per unit of the crop.</param>
/// <param name="YieldPerBedFoot">Units sold per bed-foot.</param>
public sealed record BreakEvenPair(BreakEvenForm Form, Run Run, Rate Price, Rate YieldPerBedFoot)
{
    /// <summary>"long run, full form" and the like.</summary>
    public string Label => $"{(Run == Run.Long ? "long run" : "short run")}, {(Form == BreakEvenForm.Full ? "full form" : "textbook form")}";

    /// <summary>All four pairs of a crop's budget: full long, full short, textbook long, textbook short.</summary>
    /// <param name="budget">The budget of a crop or planting.</param>
    /// <returns>The pairs; what the records can't tell is not available, with the reason.</returns>
    public static IReadOnlyList<BreakEvenPair> Of(EnterpriseBudget budget)
    {
        ArgumentNullException.ThrowIfNull(budget);
        Availability known = budget.Known;
        string? missing = known.Costs ?? known.LaborCost ?? known.OwnerLabor;
        return
        [
            new(BreakEvenForm.Full, Run.Long, budget.BreakEvenPrice, budget.BreakEvenYield),
            Full(budget, missing),
            Textbook(budget, Run.Long, missing ?? known.Ownership),
            Textbook(budget, Run.Short, missing),
        ];
    }

    private static decimal Cost(EnterpriseBudget budget, VariesWith behavior) => budget.Sums.CostByBehavior[(int)behavior];

    private static BreakEvenPair Full(EnterpriseBudget budget, string? missing)
    {
        decimal quantity = Units(budget);
        decimal value = budget.SalesValue.Amount + budget.Sums.ClosingStock.Amount;
        missing ??= Unsold(budget, quantity, value);
        if (missing is not null)
        {
            return Missing(BreakEvenForm.Full, Run.Short, missing);
        }

        decimal keep = 1m - (Cost(budget, VariesWith.Sales) / value);
        decimal perUnit = Cost(budget, VariesWith.Quantity) / quantity;
        Rate price = keep <= 0m
            ? Rate.NotAvailable("selling costs take all of the sales")
            : Rate.Known(((Cost(budget, VariesWith.Area) / quantity) + perUnit) / keep);
        Rate yield = budget.AveragePrice.Value is not { } average ? budget.AveragePrice
            : (average * keep) - perUnit <= BreakEven.DivisionResidue ? Rate.NotAvailable("a unit earns less than it costs to pick, pack and sell")
            : Rate.Of(Cost(budget, VariesWith.Area) / ((average * keep) - perUnit), budget.Sums.BedFeet.Value, "nothing planted in beds");
        return new BreakEvenPair(BreakEvenForm.Full, Run.Short, price, yield);
    }

    private static BreakEvenPair Textbook(EnterpriseBudget budget, Run run, string? missing)
    {
        decimal quantity = Units(budget);
        missing ??= Unsold(budget, quantity, budget.SalesValue.Amount + budget.Sums.ClosingStock.Amount);
        if (missing is not null)
        {
            return Missing(BreakEvenForm.Textbook, run, missing);
        }

        decimal cost = budget.Sums.CostByBehavior.Sum() - (run == Run.Short ? Cost(budget, VariesWith.Nothing) : 0m);
        Rate yield = budget.AveragePrice.Value is > 0m and { } average
            ? Rate.Of(cost / average, budget.Sums.BedFeet.Value, "nothing planted in beds")
            : Rate.NotAvailable(budget.AveragePrice.Reason ?? "sold for nothing");
        return new BreakEvenPair(BreakEvenForm.Textbook, run, Rate.Known(cost / quantity), yield);
    }

    private static decimal Units(EnterpriseBudget budget) => budget.Sums.Sold + (budget.Sums.ClosingStock.Amount != 0m ? budget.Sums.OnHand : 0m);

    private static string? Unsold(EnterpriseBudget budget, decimal quantity, decimal value) =>
        budget.Crop is null ? "several crops have no common unit" : quantity <= 0m || value <= 0m ? "nothing sold" : null;

    private static BreakEvenPair Missing(BreakEvenForm form, Run run, string reason) => new(form, run, Rate.NotAvailable(reason), Rate.NotAvailable(reason));
}
