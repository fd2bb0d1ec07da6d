namespace FarmEconomics.Budgets;

/// <summary>What a season's records can't tell, each with its reason; null where they can. Unknown is never 0.</summary>
/// <param name="Costs">Why direct and shared costs aren't known.</param>
/// <param name="Hours">Why labor hours aren't known.</param>
/// <param name="LaborCost">Why the cost of labor isn't known.</param>
/// <param name="OwnerLabor">Why unpaid hours carry no value: labor and net return are before owner labor.</param>
/// <param name="Ownership">Why ownership cost isn't known: net return is before ownership cost.</param>
public sealed record Availability(string? Costs, string? Hours, string? LaborCost, string? OwnerLabor, string? Ownership)
{
    /// <summary>Whether net return leaves nothing out.</summary>
    public bool NetReturnIsWhole => OwnerLabor is null && Ownership is null;

    /// <summary>Whether net return leaves the same out here and there, so that the two may be compared.</summary>
    internal bool LeavesOutTheSameAs(Availability other) => (OwnerLabor is null, Ownership is null) == (other.OwnerLabor is null, other.Ownership is null);

    /// <summary>Why overhead isn't known: the costs aren't, or an overhead pool holds hours without a value or assets without an interest rate.</summary>
    public string? Overhead { get; init; }

    /// <summary>Why what the produce was worth isn't known: a part of it has no price. Told of a budget or a channel, never of a whole season.</summary>
    public string? Value { get; init; }

    internal static string NoPriceOf(IEnumerable<string> crops) => $"no price of {string.Join(", ", crops)} is on record, at least for a part of it";

    /// <summary>Why gross margin isn't known.</summary>
    public string? NoGrossMargin => Value ?? Costs;

    /// <summary>Why net return isn't known under its <see cref="NetReturnLabel"/>.</summary>
    public string? NoNetReturn => NoGrossMargin ?? LaborCost;

    /// <summary>Why net return after all costs isn't known.</summary>
    public string? NoFullNetReturn => NoNetReturn ?? OwnerLabor ?? Ownership;

    /// <summary>How net return must be labeled: "net return", or with "before owner labor" or "before ownership cost".</summary>
    public string NetReturnLabel => (OwnerLabor, Ownership) switch
    {
        (null, null) => "net return",
        (not null, null) => "net return before owner labor",
        (null, not null) => "net return before ownership cost",
        _ => "net return before owner labor and ownership cost",
    };
}
