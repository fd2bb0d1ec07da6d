namespace FarmEconomics.Decisions;

/// <summary>The thresholds verdicts rest on: the user's to set, printed with every verdict. None has a published source; they are our own.</summary>
public sealed record VerdictSettings
{
    /// <summary>Growing more is only suggested where the chance of a loss is at most this, 0 to 1.</summary>
    public decimal GrowAtMostLossChance { get; init; } = 0.20m;

    /// <summary>... and the crop's net return per bed-foot-week is in this best part of the crops, 0 to 1.</summary>
    public decimal GrowBestPart { get; init; } = 0.25m;

    /// <summary>... and a step of so much more of it, 0 to 1, still adds to the farm at the price the elasticity leaves.</summary>
    public decimal GrowStep { get; init; } = 0.10m;

    /// <summary>Another crop in its place is only suggested where it earns the farm at least so much more in a season.</summary>
    public decimal SwapGain { get; init; } = 100m;

    /// <summary>Price elasticity of demand of what is grown more, by size; null: the price stays as it was, which flatters growing more.</summary>
    public decimal? Elasticity { get; init; } = 2m;

    /// <summary>Above this part of hours filled in from standards, 0 to 1, the hours are named as a weak assumption.</summary>
    public decimal EstimatedHours { get; init; } = 0.5m;

    /// <summary>Fewer plantings on record than this are named as a weak assumption.</summary>
    public int FewPlantings { get; init; } = 3;
}
