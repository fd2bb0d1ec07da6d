using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Avoidable;

/// <summary>What goes when crops go, or a part of one: returns, costs, trips, and what refilling the boxes takes.</summary>
/// <param name="Crops">The crops.</param>
/// <param name="Part">The part of them that goes, above 0 and at most 1.</param>
/// <param name="Returns">Returns that go. Payments for shares are not among them: members have paid.</param>
/// <param name="Costs">Costs that go.</param>
/// <param name="Trips">Trip money that goes with whole channels, pool by pool.</param>
/// <param name="Refill">What refilling the boxes takes.</param>
public sealed record Departure(
    IReadOnlyList<EnterpriseBudget> Crops,
    decimal Part,
    IReadOnlyList<PartialBudgetLine> Returns,
    IReadOnlyList<PartialBudgetLine> Costs,
    IReadOnlyList<TripSaving> Trips,
    Refill Refill)
{
    /// <summary>What it does to the farm's net return.</summary>
    public Money Change => PartialBudget.Sum(Costs) - PartialBudget.Sum(Returns) - Refill.Total;
}
