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

    /// <summary>How net return must be labeled: "net return", or with "before owner labor" or "before ownership cost".</summary>
    public string NetReturnLabel => (OwnerLabor, Ownership) switch
    {
        (null, null) => "net return",
        (not null, null) => "net return before owner labor",
        (null, not null) => "net return before ownership cost",
        _ => "net return before owner labor and ownership cost",
    };
}
