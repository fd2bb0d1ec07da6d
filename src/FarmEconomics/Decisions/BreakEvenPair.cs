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

    /// <summary>
    /// Full: a channel's fee follows the price, and costs that follow quantity or sales follow the yield; as in the columns of the result
    /// tables.
    /// </summary>
    Full,
}

/// <summary>For whom costs are to be covered.</summary>
public enum Run
{
    /// <summary>
    /// For the crop: the price at which its own net return is 0, charges of pools as reviewed. What must be earned in the long run.
    /// </summary>
    Long,

    /// <summary>
    /// For the farm: the price at which it nets what it nets without the crop, refilling of boxes included. Below it, growing the crop
    /// costs the farm money now.
    /// </summary>
    Short,
}

/// <summary>A break-even price and yield.</summary>
/// <param name="Form">Textbook or full.</param>
/// <param name="Run">For the crop in the long run, or for the farm in the short run.</param>
/// <param name="Price">Money per unit of the crop; in the short run of the units sold outside boxes.</param>
/// <param name="YieldPerBedFoot">Units sold per bed-foot.</param>
public sealed record BreakEvenPair(BreakEvenForm Form, Run Run, Result Price, Result YieldPerBedFoot)
{
    /// <summary>"for the crop, long run, full form" and the like.</summary>
    public string Label => $"{(Run == Run.Long ? "for the crop, long run" : "for the farm, short run")}, "
        + $"{(Form == BreakEvenForm.Full ? "full form" : "textbook form")}";

    /// <summary>All four pairs of a crop: full long, full short, textbook long, textbook short.</summary>
    /// <param name="budget">The budget of a crop.</param>
    /// <param name="model">Its what-if model, which knows what goes with it.</param>
    /// <returns>The pairs; what the records can't tell is not available, with the reason.</returns>
    public static IReadOnlyList<BreakEvenPair> Of(EnterpriseBudget budget, SensitivityModel model)
    {
        ArgumentNullException.ThrowIfNull(budget);
        ArgumentNullException.ThrowIfNull(model);
        return
        [
            new(BreakEvenForm.Full, Run.Long, budget.BreakEvenPrice, budget.BreakEvenYield),
            Pair(BreakEvenForm.Full, Run.Short, budget, model),
            Pair(BreakEvenForm.Textbook, Run.Long, budget, model),
            Pair(BreakEvenForm.Textbook, Run.Short, budget, model),
        ];
    }

    private static BreakEvenPair Pair(BreakEvenForm form, Run run, EnterpriseBudget budget, SensitivityModel model)
    {
        Availability known = budget.Known;
        string? unknown = known.NoNetReturn
            ?? known.OwnerLabor
            ?? (run == Run.Long ? known.Ownership ?? known.Establishment : null)
            ?? BreakEven.Missing(budget);
        return unknown is { } reason ? new BreakEvenPair(form, run, Result.NotAvailable(reason), Result.NotAvailable(reason))
            : form == BreakEvenForm.Full ? FullShort(budget, model)
            : Textbook(run, budget, model);
    }

    private static BreakEvenPair FullShort(EnterpriseBudget budget, SensitivityModel model)
    {
        Result factor = model.PriceFactorFor(1m, longRun: false), today = model.PriceOutsideBoxes;
        Result price = factor.Combine(today, (times, each) => times * each);
        return new BreakEvenPair(BreakEvenForm.Full, Run.Short, price, PerFoot(budget, model.YieldFactorFor(1m, longRun: false)));
    }

    private static BreakEvenPair Textbook(Run run, EnterpriseBudget budget, SensitivityModel model)
    {
        bool longRun = run == Run.Long;
        decimal sold = budget.Sums.Sold;
        Result cost = longRun ? Result.Known(BreakEven.ToCover(budget) / sold) : model.FloorCost();
        decimal fees = longRun ? 0m : model.FeesOutsideBoxes.Amount / Math.Max(model.UnitsOutsideBoxes, 1e-9m);
        Result price = cost.Map(unit => unit + fees);
        Result average = longRun ? Result.Of(budget.Sums.SoldValue.Amount, sold, "nothing sold") : model.PriceOutsideBoxes;
        Result yield = price.Value is { } each && average.Value is > 0m and { } got
            ? PerFoot(budget, Result.Known(each / got))
            : Result.NotAvailable(price.Reason ?? average.Reason ?? "nothing sold");
        return new BreakEvenPair(BreakEvenForm.Textbook, run, price, yield);
    }

    private static Result PerFoot(EnterpriseBudget budget, Result factor) => factor.Value is { } times
        ? Result.Of(times * budget.Sums.Sold, budget.Sums.BedFeet.Value, "nothing planted in beds")
        : factor;
}
