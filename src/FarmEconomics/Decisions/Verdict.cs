using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Decisions.Chances;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions;

/// <summary>Where a verdict points; always shown with its reasons.</summary>
public enum Direction
{
    /// <summary>It doesn't even pay what it alone causes: leaving the beds empty is better.</summary>
    Drop,

    /// <summary>It doesn't carry its full cost, and another crop that fits its beds and dates would earn the farm more.</summary>
    Replace,

    /// <summary>It doesn't carry its full cost, but it helps to pay what stays, and nothing that fits would do better.</summary>
    Mend,

    /// <summary>It carries its full cost.</summary>
    Keep,

    /// <summary>It carries its full cost with room to spare, as well per bed-foot-week as the best, and seldom fails.</summary>
    Grow,

    /// <summary>The records can't tell.</summary>
    Unknown,
}

/// <summary>The assumption a verdict would turn on first.</summary>
/// <param name="Input">"price", "yield" or "labor cost".</param>
/// <param name="Change">By how much it would have to change, as a fraction: -0.12 is 12 % lower.</param>
public sealed record TurningPoint(string Input, decimal Change);

/// <summary>A verdict on a crop: where it points, why, and what it hangs on.</summary>
public sealed record Verdict
{
    /// <summary>The crop's budget.</summary>
    public required EnterpriseBudget Budget { get; init; }

    /// <summary>Where it points.</summary>
    public required Direction Direction { get; init; }

    /// <summary>Why the records can't tell; null when they can.</summary>
    public string? WhyUnknown { get; init; }

    /// <summary>Output less avoidable cost: what the farm would lose without it.</summary>
    public required Money Contribution { get; init; }

    /// <summary>Net return per bed-foot-week.</summary>
    public required Rate NetPerBedFootWeek { get; init; }

    /// <summary>Place by net return per bed-foot-week, 1 is best.</summary>
    public required int Rank { get; init; }

    /// <summary>The drawn net returns.</summary>
    public required Outcome Outcome { get; init; }

    /// <summary>The crop next below by net return per bed-foot-week; null for the last.</summary>
    public string? NextBelow { get; init; }

    /// <summary>The chance that it beats the crop next below.</summary>
    public Rate ChanceAhead { get; init; }

    /// <summary>The price per unit below which the crop next below is ahead of it.</summary>
    public Rate PriceToStayAhead { get; init; }

    /// <summary>The best crop that fits its beds and dates; null when none does or it wasn't looked for.</summary>
    public Fit? BestFit { get; init; }

    /// <summary>What a step of <see cref="VerdictSettings.GrowStep"/> more would add to the farm at the price the elasticity leaves; not available where it wasn't looked at.</summary>
    public Rate GrowthGain { get; init; }

    /// <summary>Bed-feet more there is room for under its covers while it stands; not available where it wasn't looked at.</summary>
    public Rate Room { get; init; }

    /// <summary>What the verdict turns on first; null when nothing within doubling or vanishing turns it.</summary>
    public TurningPoint? TurnsOn { get; init; }

    /// <summary>Further weak points of the records behind it, in words.</summary>
    public required IReadOnlyList<string> WeakPoints { get; init; }
}
