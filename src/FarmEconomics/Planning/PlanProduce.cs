namespace FarmEconomics.Planning;

/// <summary>
/// What becomes of a crop's produce when a plan is worked through as records: what its rows pick, and what is left of the season before,
/// is sold or left, by the day.
/// </summary>
/// <param name="Crop">The crop.</param>
/// <param name="Picked">Units picked in the year.</param>
/// <param name="Sold">Units sold and boxed.</param>
/// <param name="Left">Units of what was picked that nothing took: still there at the end of the year, or gone bad before.</param>
public sealed record PlanProduce(string Crop, decimal Picked, decimal Sold, decimal Left)
{
    // As where beds are looked at: less is what rounding to rows leaves.
    private const decimal RoundingLeaves = 0.005m;
    private const decimal Least = 0.01m;

    /// <summary>Units sold of what was left of the season before.</summary>
    public decimal FromBefore { get; init; }

    /// <summary>The first day on which more was sold than there was; null where there always was enough.</summary>
    public DateOnly? First { get; init; }

    /// <summary>Units sold beyond what had been picked by then and still kept.</summary>
    public decimal Beyond => Sold + Left - Picked - FromBefore;

    /// <summary>True where picked + from before = sold + left, but for what rounding leaves.</summary>
    public bool AddsUp => Math.Abs(Beyond) <= (Sold * RoundingLeaves) + Least;
}
