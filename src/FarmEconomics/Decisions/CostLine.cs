using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>One cost of a budget with what it varies with: the smallest piece a what-if moves.</summary>
/// <param name="Name">A category of the books, a stage of work, "channel fees", or a pool.</param>
/// <param name="Line">The line of the budget it stands on; labor as a whole.</param>
/// <param name="VariesWith">What makes it come and go.</param>
/// <param name="Stream">Cash, ownership cost, hired labor or owner labor.</param>
/// <param name="Pool">The pool of origin; null for a cost that names the crop, a planting of it, or its sales.</param>
/// <param name="Amount">The money, in whole cents; a refund is negative.</param>
public sealed record CostLine(string Name, BudgetLine Line, CostDriver VariesWith, CostStream Stream, Pool? Pool, Money Amount)
{
    /// <summary>True for a channel's fee, a percentage of the sale: the only cost that follows the price.</summary>
    public bool IsFee { get; init; }

    /// <summary>True for hired and owner labor.</summary>
    public bool IsLabor => Stream is CostStream.HiredLabor or CostStream.OwnerLabor;

    /// <summary>
    /// True when no money changes hands in the year: unpaid hours, the cost of owning equipment and buildings and the establishment of
    /// perennials.
    /// </summary>
    public bool IsNonCash => Stream is CostStream.OwnerLabor or CostStream.Ownership;

    /// <summary>
    /// True when it goes as soon as the crop isn't grown: it varies with length, bed time, quantity or units sold. Trips go with a whole
    /// channel only.
    /// </summary>
    public bool IsAvoidable => VariesWith is not (CostDriver.Fixed or CostDriver.Trips);
}
