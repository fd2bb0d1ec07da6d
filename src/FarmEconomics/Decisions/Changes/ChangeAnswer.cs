using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Changes;

/// <summary>A week in which a change needs more hours than there are.</summary>
/// <param name="Monday">The first day of the week, in the season as it was.</param>
/// <param name="Hours">The farm's hours after the change.</param>
/// <param name="Limit">The hours there are.</param>
public sealed record WeekBeyondLimit(DateOnly Monday, decimal Hours, decimal Limit);

/// <summary>A crop that could stand where another stood.</summary>
/// <param name="Crop">The crop.</param>
/// <param name="BedFeet">Bed-feet of it that fit with the dates its plantings had, under the same cover.</param>
/// <param name="Growth">How much more of it that is than was grown: 0.5 is half as much again.</param>
/// <param name="Swap">The partial budget of the swap.</param>
/// <param name="BeyondLimit">Weeks in which the swap needs more hours than there are.</param>
public sealed record Fit(string Crop, decimal BedFeet, decimal Growth, PartialBudget Swap, IReadOnlyList<WeekBeyondLimit> BeyondLimit);

/// <summary>Crops that could stand where another stood, together.</summary>
/// <param name="Crops">Each with its bed-feet, the most first.</param>
/// <param name="Change">What the swap does to the farm's net return.</param>
public sealed record Mix(IReadOnlyList<(string Crop, decimal BedFeet)> Crops, Money Change);

/// <summary>
/// A change judged: the partial budget, cash and hours, both answers, what moves, what is freed, and what could take its place.
/// </summary>
public sealed record ChangeAnswer
{
    /// <summary>The change, with the crops' names as the records have them.</summary>
    public required Change Change { get; init; }

    /// <summary>
    /// Why what comes or goes isn't known: a crop of the change has no price for a part of it, then only the costs count; or no costs are
    /// (<see cref="WhyCostsUnknown"/>). Null where it is known.
    /// </summary>
    public string? WhyUnknown { get; init; }

    /// <summary>What isn't known of the crops of the change, so that net return and full cost are called what they are.</summary>
    internal Availability Known { get; init; } = new(null, null, null, null, null);

    /// <summary>Why what its costs are isn't known: no books, no hours, or hours of no known cost; null where it is.</summary>
    internal string? WhyCostsUnknown => Known.Costs ?? Known.LaborCost;

    /// <summary>The partial budget: avoidable cost only.</summary>
    public required PartialBudget Partial { get; init; }

    /// <summary>Cash, hours and value told apart.</summary>
    public required MeansChange Means { get; init; }

    /// <summary>What refilling the boxes takes.</summary>
    public required Refill Refill { get; init; }

    /// <summary>
    /// What full cost would make of it: the same, with fixed cost and trips counted as if they came and went with the beds, and share
    /// payments with the crop.
    /// </summary>
    public required Money FullCostChange { get; init; }

    /// <summary>What the change does to the farm: the partial budget's net change.</summary>
    public Money AvoidableChange => Partial.NetChange;

    /// <summary>True when full and avoidable cost point different ways.</summary>
    public bool Disagree =>
        (FullCostChange.Amount > 0m && AvoidableChange.Amount < 0m) || (FullCostChange.Amount < 0m && AvoidableChange.Amount > 0m);

    /// <summary>Cost that stays, by pool, on other shoulders. Each sums to 0, or to minus the trips no longer made.</summary>
    public required IReadOnlyList<MovedCost> Moved { get; init; }

    /// <summary>
    /// Share payments that now stand to other crops' credit: by crop, or "other income" where boxes hold nothing else; sums to 0.
    /// </summary>
    public required IReadOnlyList<(string To, Money Change)> SharesMoved { get; init; }

    /// <summary>Net return by crop, before and after, with cost and share payments moved; crops in the season's order.</summary>
    public required IReadOnlyList<(string Crop, Money Before, Money After)> Crops { get; init; }

    /// <summary>Crops of the season whose net return isn't known, each with the reason.</summary>
    public required IReadOnlyDictionary<string, string> CropsUnknown { get; init; }

    /// <summary>
    /// What changes outside the crops: cost that ends elsewhere, share payments without boxes, produce bought in. With the crops' changes
    /// it sums to the net change.
    /// </summary>
    public required IReadOnlyList<(string What, Money Change)> Elsewhere { get; init; }

    /// <summary>The bed-feet that go, as the change says or all of the crop; 0 for grow.</summary>
    public required decimal FeetGone { get; init; }

    /// <summary>The bed-feet that come: what the user said, or what fits; 0 for drop and shrink.</summary>
    public required decimal FeetAdded { get; init; }

    /// <summary>
    /// True when the replacement's plantings don't fit the freed time under that cover, so it was taken bed-foot for bed-foot.
    /// </summary>
    public required bool ReplacementDoesNotFit { get; init; }

    /// <summary>The part of what is grown more that sells below today's price, 0 to 1; 0 where nothing more is grown.</summary>
    public required decimal BelowTodaysPrice { get; init; }

    /// <summary>The part of what is grown more that no channel takes, 0 to 1.</summary>
    public required decimal NotTaken { get; init; }

    /// <summary>
    /// The elasticity at which what is grown more stops paying, where channels' elasticities decide it; not available where they don't.
    /// </summary>
    public required Result TurnsAtElasticity { get; init; }

    /// <summary>Bed-foot-weeks and hours freed, week by week; empty when nothing is.</summary>
    public required IReadOnlyList<WeeklyUse> Freed { get; init; }

    /// <summary>Bed-foot-weeks and hours that more of a crop takes, week by week.</summary>
    public required IReadOnlyList<WeeklyUse> Taken { get; init; }

    /// <summary>Bed-feet there is room for under the grown crop's covers; null unless the change is to grow.</summary>
    public required decimal? Room { get; init; }

    /// <summary>What fits where the crop stood, the best first; for drop and swap.</summary>
    public required IReadOnlyList<Fit> Fits { get; init; }

    /// <summary>The best mix of up to three crops that fits; null where nothing fits that adds to the farm.</summary>
    public required Mix? BestMix { get; init; }

    /// <summary>Weeks in which the change needs more hours than the limit.</summary>
    public required IReadOnlyList<WeekBeyondLimit> BeyondLimit { get; init; }

    /// <summary>Limits of the records that aren't checked, because no record says how much of them a crop takes.</summary>
    public required IReadOnlyList<string> LimitsNotChecked { get; init; }

    /// <summary>True when the hours of a week were checked against a limit.</summary>
    public required bool HoursChecked { get; init; }
}
