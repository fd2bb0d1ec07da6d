namespace FarmEconomics.Decisions;

/// <summary>
/// The assumptions verdicts rest on: the user's to set, printed with every verdict. None has a published source; they are our own.
/// </summary>
public sealed record VerdictSettings
{
    /// <summary>Growing more is tried by so much of the crop's length, 0 to 1, or by the room there is.</summary>
    public decimal GrowStep { get; init; } = 0.20m;

    /// <summary>
    /// How much more than the noise crops in another's place must add, as a part of that one's output, 0 to 1: the best of many mixes
    /// looks better than it is.
    /// </summary>
    public decimal MixShare { get; init; } = 0.15m;

    /// <summary>The part of list price from which on a sale counts as sold at today's price, 0 to 1; ours, without a source.</summary>
    public static decimal AtListPrice => 0.985m;

    /// <summary>How far off what was divided by rule may be, 0 to 1: hours not logged to a crop, harvests that name no planting.</summary>
    public decimal RuleError { get; init; } = 0.20m;

    /// <summary>Price elasticity of demand in every channel, by size; null: each channel's own, 2 unless it says otherwise.</summary>
    public decimal? Elasticity { get; init; }

    /// <summary>How much costs other than labor rise in a year, in percent; null: as the farm's setting says, else not at all.</summary>
    public decimal? PriceChangePercent { get; init; }
}
