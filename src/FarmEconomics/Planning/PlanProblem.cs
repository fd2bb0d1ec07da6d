namespace FarmEconomics.Planning;

/// <summary>What about a plan won't work.</summary>
public enum PlanProblemKind
{
    /// <summary>A bed has less length than its plantings take; short are bed-feet.</summary>
    Bed,

    /// <summary>A week has fewer hours than the work in it takes; short are hours.</summary>
    Hours,

    /// <summary>More of a crop is planned to be sold than picked; short is produce, <see cref="PlanProblem.Where"/> is the crop.</summary>
    Sales,

    /// <summary>The nursery has too little room; short are trays.</summary>
    Trays,

    /// <summary>More must be owed at the end of the month than the line of credit lets be; short is money.</summary>
    Credit,

    /// <summary>A row lies outside the year planned, and counts in none of its weeks; nothing is short.</summary>
    Outside,

    /// <summary>A planting stands already and isn't in the plan: neither its harvest nor its hours are; nothing is short.</summary>
    NotPlanned,

    /// <summary>A family comes again too soon into a bed, or twice in the year; short are bed-feet.</summary>
    Rotation,

    /// <summary>
    /// A sowing far from every week the crop came into a bed on this farm, where enough are on record: <see cref="PlanProblem.OnRecord"/>;
    /// nothing is short, and it may well be meant.
    /// </summary>
    OutOfSeason,

    /// <summary>
    /// What stands is to leave its bed before its usual picking is over; short is produce, <see cref="PlanProblem.Where"/> is the crop.
    /// </summary>
    LeavesEarly,
}

/// <summary>When a crop came into beds, in the crop year a plan is held against.</summary>
/// <param name="First">The first day of the earliest week.</param>
/// <param name="Last">The first day of the latest.</param>
/// <param name="Sowings">Of how many plantings that is.</param>
/// <param name="Seasons">In how many crop years.</param>
public sealed record SownOnRecord(DateOnly First, DateOnly Last, int Sowings, int Seasons);

/// <summary>Something about a plan that won't work, told where it arises.</summary>
/// <param name="Kind">What.</param>
/// <param name="Day">The day or the first day of the week.</param>
/// <param name="Where">The bed, the crop, "hours", "trays" or "line of credit".</param>
/// <param name="Short">How much is short.</param>
/// <param name="Plantings">The plantings concerned.</param>
public sealed record PlanProblem(PlanProblemKind Kind, DateOnly Day, string Where, decimal Short, IReadOnlyList<string> Plantings)
{
    /// <summary>The family, where it is about rotation.</summary>
    public string? Family { get; init; }

    /// <summary>When the crop came into beds before, where it is about that.</summary>
    public SownOnRecord? OnRecord { get; init; }

    /// <summary>What is short is counted in, where it is produce.</summary>
    public string Unit { get; init; } = "";
}
