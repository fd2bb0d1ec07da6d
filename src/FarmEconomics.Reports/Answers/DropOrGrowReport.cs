using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Decisions;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of the page on what to drop and what to grow.</summary>
public enum DropOrGrowBlock
{
    /// <summary>The finding.</summary>
    Headline,

    /// <summary>Everything else, by part.</summary>
    Details,
}

/// <summary>What may be asked of it.</summary>
public sealed record DropOrGrowParameters : ReportParameters
{
    /// <summary>The crop to try without.</summary>
    [Field("Crop to try without", "empty = the one where the two answers disagree by most", Choice = "crop")]
    public string Drop { get; init; } = "";

    /// <summary>The crop to try more of.</summary>
    [Field("Crop to try more of", "empty = the one with the best net return for its bed time", Choice = "crop")]
    public string Grow { get; init; } = "";

    /// <summary>How much more of it.</summary>
    [Field("How much more of it", "beside what stands now; 0 = half a usual bed", Unit = "length of bed", Lowest = 0, Highest = 100000)]
    public decimal ByLength { get; init; }

    /// <summary>How the market takes more.</summary>
    [Field("How far the price drops when you sell more", "2 = sell 2% more by cutting the price 1%; 0 = as channels.csv says, else 2", Unit = "% sold per % of price", Lowest = 0, Highest = 100)]
    public decimal Elasticity { get; init; }

    /// <summary>The random seed.</summary>
    [Field("Random seed of the simulated seasons", "the same seed, the same numbers", Lowest = 0, Highest = 2147483647)]
    public int Seed { get; init; } = 2025;
}

/// <summary>What to drop, fix, keep and grow.</summary>
public sealed class DropOrGrowReport : Report<DropOrGrowParameters>
{
    /// <inheritdoc/>
    public override ReportId Id => ReportId.DropOrGrow;

    /// <inheritdoc/>
    public override string? Tab => "Drop or grow";

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, DropOrGrowParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        DropOrGrow plan = DropOrGrow.Of(farm.Review, farm.Season, parameters.Drop, parameters.Grow, parameters.ByLength, parameters.Elasticity, parameters.Seed);
        return
        [
            new HeadlineBlock(DropOrGrowBlock.Headline, "What to drop, fix, keep and grow", DecisionSentences.Answer(plan.Verdicts), SeasonWords.SureLine(farm)),
            .. Carried.Of(DropOrGrowBlock.Details, "verdicts", DecisionSentences.Verdicts(plan.Verdicts)),
            Carried.Fold(DropOrGrowBlock.Details, "short", "What was short", ("things", ShortWords.Things(farm.Shorts)), ("crops", ShortWords.Crops(farm.Shorts))),
        ];
    }

    /// <inheritdoc/>
    public override (string Question, Prose Answer)? InALine(ReviewedFarm farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        int drop = farm.Verdicts.Crops.Count(verdict => verdict.Direction == Direction.DropOrChange), grow = farm.Verdicts.Crops.Count(verdict => verdict.Direction == Direction.Grow);
        return ("What do I drop, what do I grow?", new Prose($"{drop} to drop or change, {grow} to grow, each with what would change it."));
    }
}
