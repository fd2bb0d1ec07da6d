using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>Where a verdict points.</summary>
public enum Direction
{
    /// <summary>
    /// Over the seasons on record the farm would have been better off without it, or with other crops in its place, by more than the noise.
    /// </summary>
    DropOrChange,

    /// <summary>It doesn't carry its full cost, but helps to pay what stays.</summary>
    Fix,

    /// <summary>It carries its full cost.</summary>
    Keep,

    /// <summary>More of it adds to the farm by more than the noise, and there is room, time and store space for it.</summary>
    Grow,

    /// <summary>What it adds is smaller than what the records can tell.</summary>
    TooClose,

    /// <summary>The records can't tell.</summary>
    Unknown,
}

/// <summary>What would change a verdict: each alone.</summary>
/// <param name="Price">Money more a unit (less where negative), outside boxes in the short run.</param>
/// <param name="Yield">More of the yield, as a fraction: 0.38 is 38% more.</param>
/// <param name="Hours">Hours less; not available where labor costs nothing or less than what is missing.</param>
public sealed record TurningPoints(Result Price, Result Yield, Result Hours)
{
    /// <summary>Why nobody knows any of them; null: where one isn't there, it alone changes nothing.</summary>
    public string? WhyUnknown { get; init; }

    internal static TurningPoints Unknown(string why)
    {
        Result unknown = Result.NotAvailable(why);
        return new TurningPoints(unknown, unknown, unknown) { WhyUnknown = why };
    }
}

/// <summary>More of a crop, tried.</summary>
/// <param name="BedFeet">Bed-feet more.</param>
/// <param name="Means">Cash, hours and value.</param>
/// <param name="StopsAtElasticity">The elasticity at which it stops paying; not available where none turns it.</param>
/// <param name="Short">What it would run short of; empty when nothing.</param>
public sealed record GrowthTried(decimal BedFeet, MeansChange Means, Result StopsAtElasticity, IReadOnlyList<ShortOf> Short);

/// <summary>A verdict on a crop: where it points, why, and what would change it.</summary>
public sealed record Verdict
{
    /// <summary>The crop's budget.</summary>
    public required EnterpriseBudget Budget { get; init; }

    /// <summary>Where it points.</summary>
    public required Direction Direction { get; init; }

    /// <summary>Why the records can't tell; null when they can.</summary>
    public string? WhyUnknown { get; init; }

    /// <summary>What it added in each season on record, at the reviewed season's level, oldest first.</summary>
    public required IReadOnlyList<SeasonContribution> Seasons { get; init; }

    /// <summary>The plain mean of them: what the farm would lose in a year without it.</summary>
    public required Money Mean { get; init; }

    /// <summary>How far the records can tell it: the spread of seasons, hours and harvests divided by rule.</summary>
    public required Money Noise { get; init; }

    /// <summary>Cash, hours and value without it, as the reviewed season went.</summary>
    public required MeansChange Without { get; init; }

    /// <summary>
    /// Crops that would do better in its place; null when none does, by more than the noise of both and a part of its output; never for a
    /// perennial.
    /// </summary>
    public Mix? BetterMix { get; init; }

    /// <summary>Cash, hours and value with <see cref="BetterMix"/> in its place; null without one.</summary>
    public MeansChange? WithMix { get; init; }

    /// <summary>Weeks in which <see cref="BetterMix"/> would need more hours than there are; empty without one.</summary>
    public IReadOnlyList<WeekBeyondLimit> BeyondLimit { get; init; } = [];

    /// <summary>Crops whose beds it takes by their verdicts, with its bed-feet there; empty when none.</summary>
    public IReadOnlyList<(string Crop, decimal BedFeet)> InPlaceOf { get; init; } = [];

    /// <summary>More of it, tried; null where there is no room or no length.</summary>
    public GrowthTried? More { get; init; }

    /// <summary>Bed-feet more there is room for under its covers while it stands.</summary>
    public required decimal Room { get; init; }

    /// <summary>The value of an own hour at which the answer turns; not available where it doesn't.</summary>
    public required Result TurnsAtWage { get; init; }

    /// <summary>What would change it.</summary>
    public required TurningPoints Needs { get; init; }

    /// <summary>The part of its hours that no log names: divided by rule, 0 to 1.</summary>
    public required Result HoursByRule { get; init; }

    /// <summary>Net return per bed-foot-week.</summary>
    public required Result NetPerBedFootWeek { get; init; }

    /// <summary>The simulated net returns.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>Cash, hours and value of what the verdict advises; of going without it where it advises no change.</summary>
    public MeansChange Advised => Direction switch
    {
        Direction.Grow => More?.Means ?? Without,
        Direction.DropOrChange => WithMix ?? Without,
        _ => Without,
    };

    /// <summary>
    /// True for a loss that dropping the crop would make good only if hired hours that are paid all the same did other work.
    /// </summary>
    public bool LosesPaidHoursOnly { get; init; }

    /// <summary>True when what it advises lowers cash.</summary>
    public bool LowersCash =>
        (Direction == Direction.DropOrChange || (Direction == Direction.Grow && More is not null)) && Advised.Cash.Amount < 0m;
}
