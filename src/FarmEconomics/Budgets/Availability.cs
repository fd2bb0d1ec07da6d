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
    public bool NetReturnIsWhole => OwnerLabor is null && Ownership is null && Establishment is null;

    /// <summary>Whether net return leaves the same out here and there, so that the two may be compared.</summary>
    internal bool LeavesOutTheSameAs(Availability other) =>
        (OwnerLabor is null, Ownership is null, Establishment is null)
        == (other.OwnerLabor is null, other.Ownership is null, other.Establishment is null);

    /// <summary>
    /// Why overhead isn't known: the costs aren't, or an overhead pool holds hours without a value or assets without an interest rate.
    /// </summary>
    public string? Overhead { get; init; }

    /// <summary>
    /// Why what perennials take of their establishment, or carry to later years, isn't known. Told of a budget, never of a whole season.
    /// </summary>
    public string? Establishment { get; init; }

    /// <summary>
    /// Why what the produce was worth isn't known: a part of it has no price. Told of a budget or a channel, never of a whole season.
    /// </summary>
    public string? Value { get; init; }

    /// <summary>What stands behind the name of an amount that leaves out ownership cost nobody knows.</summary>
    public const string BeforeOwnership = ", before ownership cost";

    /// <summary>
    /// What an amount that may hold ownership cost must say while that isn't known, to stand behind its name; empty where it is known.
    /// </summary>
    public string OwnershipLeftOut => Ownership is null ? "" : BeforeOwnership;

    internal static string NoPriceOf(IEnumerable<string> crops) =>
        $"no price of {string.Join(", ", crops)} is on record, at least for a part of it";

    /// <summary>Why gross margin isn't known.</summary>
    public string? NoGrossMargin => Value ?? Costs;

    /// <summary>Why net return isn't known under its <see cref="NetReturnLabel"/>.</summary>
    public string? NoNetReturn => NoGrossMargin ?? LaborCost;

    /// <summary>Why net return after all costs isn't known.</summary>
    public string? NoFullNetReturn => Value ?? NoCostBeforeEstablishment ?? Establishment;

    /// <summary>Why all costs but the establishment of perennials aren't known.</summary>
    internal string? NoCostBeforeEstablishment => Costs ?? LaborCost ?? OwnerLabor ?? Ownership;

    /// <summary>How net return must be labeled: "net return", or with "before owner labor" and what else isn't known.</summary>
    public string NetReturnLabel => $"net return{LeftOut}";

    /// <summary>How all cost must be labeled: "full cost", or "cost" with "before owner labor" and what else isn't known.</summary>
    public string FullCostLabel => NetReturnIsWhole ? "full cost" : $"cost{LeftOut}";

    private string LeftOut
    {
        get
        {
            List<string> without = [];
            (string? Reason, string Name)[] costs =
            [
                (OwnerLabor, "owner labor"),
                (Ownership, "ownership cost"),
                (Establishment, "establishment"),
            ];
            without.AddRange(costs.Where(cost => cost.Reason is not null).Select(cost => cost.Name));
            return without.Count switch
            {
                0 => "",
                1 => $" before {without[0]}",
                _ => $" before {string.Join(", ", without.SkipLast(1))} and {without[^1]}",
            };
        }
    }
}
