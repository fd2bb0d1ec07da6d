namespace FarmEconomics.Planning;

/// <summary>Something about a plan that won't work, told where it arises.</summary>
/// <param name="Day">The day or the first day of the week.</param>
/// <param name="Where">The bed, the crop, "hours", "trays" or "line of credit".</param>
/// <param name="Short">How much is short.</param>
/// <param name="Plantings">The plantings concerned.</param>
public sealed record PlanProblem(DateOnly Day, string Where, decimal Short, IReadOnlyList<string> Plantings)
{
    /// <summary>True when hours are short.</summary>
    public bool IsHours { get; init; }

    /// <summary>True when more of a crop is planned to be sold than picked; <see cref="Where"/> is the crop.</summary>
    public bool IsSales { get; init; }

    /// <summary>True when the nursery has too little room; short are trays.</summary>
    public bool IsTrays { get; init; }

    /// <summary>True when more must be owed at the end of the month than the line of credit lets be; short is money.</summary>
    public bool IsCredit { get; init; }

    /// <summary>True when a row lies outside the year planned, and counts in none of its weeks; nothing is short.</summary>
    public bool IsOutside { get; init; }

    /// <summary>True when a planting stands already and isn't in the plan: neither its harvest nor its hours are.</summary>
    public bool IsNotPlanned { get; init; }

    /// <summary>The family that comes again too soon into the bed, or twice in the year; null: it isn't about that.</summary>
    public string? Family { get; init; }

    /// <summary>What is short is counted in, where it is produce.</summary>
    public string Unit { get; init; } = "";
}
