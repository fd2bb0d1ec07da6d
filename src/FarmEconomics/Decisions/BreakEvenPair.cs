using FarmEconomics.Budgets;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>Which of the published definitions of break-even.</summary>
public enum BreakEvenForm
{
    /// <summary>
    /// Textbook: cost / units sold, and cost / price. Every cost is held where it was.
    /// Source: extension enterprise budgets ("break-even price = total cost / yield, break-even yield = total cost / price").
    /// </summary>
    Textbook,

    /// <summary>Full: a channel's fee follows the price, and costs that follow quantity or sales follow the yield; as in the columns of the result tables.</summary>
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
        return
        [
            new(BreakEvenForm.Full, Run.Long, budget.BreakEvenPrice, budget.BreakEvenYield),
            Pair(BreakEvenForm.Full, Run.Short, budget),
            Pair(BreakEvenForm.Textbook, Run.Long, budget),
            Pair(BreakEvenForm.Textbook, Run.Short, budget),
        ];
    }

    private static BreakEvenPair Pair(BreakEvenForm form, Run run, EnterpriseBudget budget)
    {
        Availability known = budget.Known;
        bool longRun = run == Run.Long;
        if ((known.NoNetReturn ?? known.OwnerLabor ?? (longRun ? known.Ownership : null) ?? BreakEven.Missing(budget)) is { } reason)
        {
            return new BreakEvenPair(form, run, Rate.NotAvailable(reason), Rate.NotAvailable(reason));
        }

        if (form == BreakEvenForm.Full)
        {
            return new BreakEvenPair(form, run, BreakEven.Price(budget, longRun), BreakEven.YieldPerBedFoot(budget, longRun));
        }

        decimal cost = BreakEven.ToCover(budget, longRun);
        return new BreakEvenPair(
            form, run, Rate.Known(cost / budget.Sums.Sold),
            Rate.Of(cost * budget.Sums.Sold / budget.Sums.SoldValue.Amount, budget.Sums.BedFeet.Value, "nothing planted in beds"));
    }
}
