using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Changes;

/// <summary>A line of a partial budget.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Amount">The money, to the cent.</param>
/// <param name="NonCash">True when no money changes hands.</param>
public sealed record PartialBudgetLine(string Name, Money Amount, bool NonCash = false);

/// <summary>
/// A partial budget: added returns + reduced costs - added costs - reduced returns, against the season as it was. Source: the four-part form of
/// extension partial budgets (for example Iowa State University Extension, Ag Decision Maker C1-50).
/// </summary>
/// <param name="Title">What is changed.</param>
/// <param name="AddedReturns">Returns that come.</param>
/// <param name="ReducedCosts">Costs that go.</param>
/// <param name="AddedCosts">Costs that come.</param>
/// <param name="ReducedReturns">Returns that go.</param>
public sealed record PartialBudget(
    string Title,
    IReadOnlyList<PartialBudgetLine> AddedReturns,
    IReadOnlyList<PartialBudgetLine> ReducedCosts,
    IReadOnlyList<PartialBudgetLine> AddedCosts,
    IReadOnlyList<PartialBudgetLine> ReducedReturns)
{
    /// <summary>Added returns and reduced costs.</summary>
    public Money Positive => Sum(AddedReturns) + Sum(ReducedCosts);

    /// <summary>Added costs and reduced returns.</summary>
    public Money Negative => Sum(AddedCosts) + Sum(ReducedReturns);

    /// <summary>What the change does to the farm's net return.</summary>
    public Money NetChange => Positive - Negative;

    /// <summary>The part of the net change that money changes hands for: unpaid hours and household use left out.</summary>
    public Money CashChange => Cash(AddedReturns) + Cash(ReducedCosts) - Cash(AddedCosts) - Cash(ReducedReturns);

    /// <summary>Total of one part.</summary>
    /// <param name="lines">The part.</param>
    /// <returns>The sum.</returns>
    public static Money Sum(IEnumerable<PartialBudgetLine> lines) => Money.Sum(lines.Select(line => line.Amount));

    private static Money Cash(IEnumerable<PartialBudgetLine> lines) => Sum(lines.Where(line => !line.NonCash));
}
