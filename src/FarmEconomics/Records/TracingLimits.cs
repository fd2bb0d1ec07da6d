namespace FarmEconomics.Records;

/// <summary>
/// How far a sale may lie from the harvest it draws on, and a harvest from the planting it came from. The values are ours, without a
/// source; they stand among the printed assumptions.
/// </summary>
public sealed record TracingLimits
{
    /// <summary>Days after a lot stopped keeping on which it may still be drawn on; later what left is unmatched.</summary>
    public int DaysBeyondKeeping { get; init; } = 7;

    /// <summary>Days by which a sale may be noted before the harvest that covers it.</summary>
    public int DaysNotedEarly { get; init; } = 3;

    /// <summary>Percentile of a crop's days from bed to first harvest that counts as its least; 0 to 100.</summary>
    public decimal LeastDaysPercentile { get; init; } = 5m;

    /// <summary>Least days from bed to harvest of a crop none of whose harvests name a planting; perennials have none.</summary>
    public int LeastDaysWithoutHistory { get; init; } = 20;

    /// <summary>How many times its crop's median stay a planting without an end stands at most.</summary>
    public int TimesMedianStay { get; init; } = 2;

    /// <summary>Percentile of a crop's stays below which that bound never lies: some sowings stand through the winter; 0 to 100.</summary>
    public decimal LongestStayPercentile { get; init; } = 95m;

    /// <summary>The fewest days that bound comes to.</summary>
    public int ShortestBound { get; init; } = 60;

    /// <summary>
    /// That bound for a crop none of whose plantings has an end: garlic set early in October is lifted by early August (common practice, no
    /// source).
    /// </summary>
    public int BoundWithoutHistory { get; init; } = 300;
}
