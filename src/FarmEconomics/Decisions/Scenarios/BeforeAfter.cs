using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>A figure as it was and as it would be; either may be not available, and then says why.</summary>
/// <param name="Before">In the season as it was.</param>
/// <param name="After">In the scenario.</param>
public readonly record struct BeforeAfter(Result Before, Result After)
{
    /// <summary>Why the two can't be set against each other though each is known: they leave out different things.</summary>
    public string? NoMatch { get; init; }

    /// <summary>After less before.</summary>
    public Result Difference => NoMatch is { } why ? Result.NotAvailable(why)
        : Before.Value is { } before && After.Value is { } after ? Result.Known(after - before)
        : Result.NotAvailable(Before.Reason ?? After.Reason ?? "not available");
}

/// <summary>A line of the whole-farm statement before and after.</summary>
/// <param name="Name">The line, as in <see cref="Budgets.FarmStatement"/>.</param>
/// <param name="Amount">Its money.</param>
public sealed record FarmDifference(string Name, BeforeAfter Amount);
