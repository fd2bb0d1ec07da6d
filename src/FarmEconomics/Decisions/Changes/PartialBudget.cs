using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Changes;

/// <summary>What a change is made of, told in this order.</summary>
public enum Means
{
    /// <summary>Money changes hands.</summary>
    Cash,

    /// <summary>Money for hours of hired people: cash where their hours can be cut.</summary>
    HiredHours,

    /// <summary>Hours of the farm's own people, at their value; no money changes hands.</summary>
    OwnHours,

    /// <summary>Value without cash: household use, stock on hand, the yearly cost of equipment and buildings.</summary>
    Value,
}

/// <summary>A line of a partial budget.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Amount">The money, to the cent.</param>
/// <param name="Kind">Cash, hours or value.</param>
public sealed record PartialBudgetLine(string Name, Money Amount, Means Kind = Means.Cash);

/// <summary>
/// A partial budget: added returns + reduced costs - added costs - reduced returns, against the season as it was. Source: the four-part
/// form of extension partial budgets (for example Iowa State University Extension, Ag Decision Maker C1-50).
/// </summary>
/// <param name="AddedReturns">Returns that come.</param>
/// <param name="ReducedCosts">Costs that go.</param>
/// <param name="AddedCosts">Costs that come.</param>
/// <param name="ReducedReturns">Returns that go.</param>
public sealed record PartialBudget(
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

    /// <summary>Total of one part.</summary>
    /// <param name="lines">The part.</param>
    /// <returns>The sum.</returns>
    public static Money Sum(IEnumerable<PartialBudgetLine> lines) => Money.Sum(lines.Select(line => line.Amount));

    /// <summary>The part of the net change that is of one kind, as the books and the log have it.</summary>
    /// <param name="kind">The kind.</param>
    /// <returns>The money.</returns>
    public Money Change(Means kind) => Of(AddedReturns, kind) + Of(ReducedCosts, kind) - Of(AddedCosts, kind) - Of(ReducedReturns, kind);

    private static Money Of(IEnumerable<PartialBudgetLine> lines, Means kind) => Sum(lines.Where(line => line.Kind == kind));
}
