using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Short;

/// <summary>What a farm can run short of and its records tell the use of.</summary>
public enum ScarceKind
{
    /// <summary>Bed length under one cover, week by week.</summary>
    BedLength,

    /// <summary>All hours worked, week by week.</summary>
    Hours,

    /// <summary>The owners' own hours, week by week.</summary>
    OwnHours,

    /// <summary>Hired hours, week by week.</summary>
    HiredHours,

    /// <summary>Crates in one store, day by day.</summary>
    Crates,

    /// <summary>Nursery trays, day by day.</summary>
    Trays,

    /// <summary>Electricity in kWh, day by day.</summary>
    Power,

    /// <summary>Water for the beds in gallons, or liters, day by day.</summary>
    Water,

    /// <summary>Sprinklers times the hours they run, day by day.</summary>
    Sprinklers,
}

/// <summary>Where a limit comes from.</summary>
public enum LimitSource
{
    /// <summary>A row of the <c>limits</c> table.</summary>
    Limits,

    /// <summary>The lengths of the <c>beds</c> table.</summary>
    Beds,

    /// <summary>The most ever worked in a week on record.</summary>
    MostEver,

    /// <summary>What panels made that day and the battery held.</summary>
    Supply,
}

/// <summary>How much of something was used in one week or on one day.</summary>
/// <param name="From">The Monday of the week, or the day.</param>
/// <param name="Used">How much was used: in a week bed-feet on the mean of its days, or hours; on a day crates, trays or kWh.</param>
/// <param name="Limit">How much there was, in the same unit; above 0.</param>
/// <param name="Source">Where the limit comes from.</param>
public sealed record ScarceSpan(DateOnly From, decimal Used, decimal Limit, LimitSource Source)
{
    /// <summary>Used over limit: 1 is full; above 1 where more was used than the limit says.</summary>
    public decimal Share => Used / Limit;
}

/// <summary>
/// What the plantings of a crop that used something while it was short added to the farm, over how much of it they used then.
/// </summary>
/// <param name="Crop">The crop.</param>
/// <param name="Contribution">
/// Output less avoidable cost of those plantings; of a planting that stood under several covers its part by bed time.
/// </param>
/// <param name="Use">How much they used while it was short, in <see cref="ScarceResource.UseUnit"/>; above 0.</param>
public sealed record ScarceUse(Crop Crop, Result Contribution, decimal Use)
{
    /// <summary>Contribution per unit used while it was short.</summary>
    public Result PerUnit => Contribution.Value is { } money ? Result.Of(money, Use, "none used") : Contribution;
}

/// <summary>Something that was held against its limit, week by week or day by day.</summary>
public sealed class ScarceResource
{
    internal ScarceResource(ScarceKind kind, string name, IReadOnlyList<ScarceSpan> spans, decimal shortAt)
    {
        Kind = kind;
        Name = name;
        Spans = spans;
        Short = [.. spans.Where(span => span.Share >= shortAt)];
    }

    /// <summary>What it is.</summary>
    public ScarceKind Kind { get; }

    /// <summary>The cover, the store or the pool, as the records name it; for hours and trays without a pool a word of ours.</summary>
    public string Name { get; }

    /// <summary>True when it is looked at by week, false by day.</summary>
    public bool ByWeek => Kind is ScarceKind.BedLength or ScarceKind.Hours or ScarceKind.OwnHours or ScarceKind.HiredHours;

    /// <summary>What use is counted in, as written for feet: bed-foot-weeks, hours, crate-days, tray-days, kWh.</summary>
    public string UseUnit => Kind switch
    {
        ScarceKind.BedLength => "bed-foot-week",
        ScarceKind.Crates => "crate-day",
        ScarceKind.Trays => "tray-day",
        ScarceKind.Power => "kWh",
        ScarceKind.Water => "gallon",
        ScarceKind.Sprinklers => "sprinkler-hour",
        _ => "hour",
    };

    /// <summary>All weeks or days of the crop year that were looked at, in order.</summary>
    public IReadOnlyList<ScarceSpan> Spans { get; }

    /// <summary>The weeks or days in which it was short.</summary>
    public IReadOnlyList<ScarceSpan> Short { get; }

    /// <summary>The fullest week or day, the first of equals; null when none was looked at.</summary>
    public ScarceSpan? Fullest => Spans.MaxBy(span => span.Share);

    /// <summary>
    /// The crops that used it while it was short, most contribution per unit first; crops of unknown value last. Empty for
    /// <see cref="ScarceKind.Power"/>: no record tells which crop took a day's power.
    /// </summary>
    public IReadOnlyList<ScarceUse> Crops { get; internal set; } = [];

    /// <summary>True when crops are listed for it.</summary>
    public bool IsRanked => Kind != ScarceKind.Power;
}

/// <summary>Something that can't be held against a limit.</summary>
/// <param name="Name">What.</param>
/// <param name="Reason">What no record tells.</param>
public sealed record NotChecked(string Name, string Reason);
