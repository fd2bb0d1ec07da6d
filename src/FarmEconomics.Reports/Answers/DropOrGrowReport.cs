using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of the page on what to drop and what to grow.</summary>
public enum DropOrGrowBlock
{
    /// <summary>The finding.</summary>
    Headline,

    /// <summary>What the advice would do.</summary>
    Figures,

    /// <summary>The crops nearest to dropping.</summary>
    Means,

    /// <summary>What was short.</summary>
    Short,

    /// <summary>Crops to drop, change or fix, and those too close to call.</summary>
    Below,

    /// <summary>Crops to grow.</summary>
    Grow,

    /// <summary>Crops to keep.</summary>
    Keep,

    /// <summary>Everything folded away, by part.</summary>
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
    [Field(
        "How far the price drops when you sell more",
        "2 = sell 2% more by cutting the price 1%; 0 = as channels.csv says, else 2",
        Unit = "% sold per % of price",
        Lowest = 0,
        Highest = 100
    )]
    public decimal Elasticity { get; init; }

    /// <summary>The random seed.</summary>
    [Field("Random seed of the simulated seasons", "the same seed, the same numbers", Lowest = 0, Highest = 2147483647)]
    public int Seed { get; init; } = 2025;
}

/// <summary>What to drop, fix, keep and grow, with cash and own hours beside each, and what was scarce.</summary>
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
        DropOrGrow plan = DropOrGrow.Of(
            farm.Review,
            farm.Costs,
            new(parameters.Drop, parameters.Grow, parameters.ByLength, parameters.Elasticity, parameters.Seed),
            () => farm.Verdicts
        );
        cancellation.ThrowIfCancellationRequested();
        DropOrGrowWords words = new(farm, plan.Verdicts);
        VerdictTables tables = new(farm, plan.Verdicts);
        List<Block> blocks =
        [
            new HeadlineBlock(DropOrGrowBlock.Headline, words.Headline, words.Why, SeasonWords.SureLine(farm)),
            words.Figures,
        ];
        if (plan.Verdicts.Crops.Any(verdict => verdict.WhyUnknown is null))
        {
            blocks.Add(
                new PlotBlock(
                    DropOrGrowBlock.Means,
                    words.MeansHeading,
                    words.MeansCaption,
                    MeansPlot.Of(plan.Verdicts, words.MeansHeading)
                )
            );
        }

        blocks.Add(new ProseBlock(DropOrGrowBlock.Short, "What was short decides what to put in its place", ShortList.Of(farm.Shorts)));
        blocks.AddRange(tables.Blocks());
        cancellation.ThrowIfCancellationRequested();
        blocks.AddRange(Tried(plan));
        blocks.AddRange(Folds(farm, plan));
        return blocks;
    }

    /// <inheritdoc/>
    public override (string Question, Prose Answer)? InALine(ReviewedFarm farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        return farm.Verdicts.Crops.Count == 0
            ? null
            : ("What do I drop, what do I grow?", new Prose(new DropOrGrowWords(farm, farm.Verdicts).Headline + "."));
    }

    // What the fields change: one crop tried without, one tried with more.
    private static IEnumerable<Block> Tried(DropOrGrow plan)
    {
        Notation notation = plan.Notation;
        yield return Carried.Fold(
            DropOrGrowBlock.Details,
            "without",
            plan.Dropped.Change.Title,
            ("words", ChangeSentences.Prose(plan.Dropped, notation)),
            ("cash", ChangeTables.CashAndHours(plan.Dropped, notation)),
            ("answers", ChangeTables.BothAnswers(plan.Dropped, notation)),
            ("filling", ChangeTables.Filling(plan.Dropped, notation)),
            ("boxes", ChangeTables.Boxes(plan.Dropped, notation)),
            ("partial", ChangeTables.Partial(plan.Dropped, notation)),
            ("figure", new Picture(onPhone => DecisionPlots.BeforeAndAfter(plan.Dropped, notation, onPhone: onPhone))),
            ("moved", ChangeTables.Moved(plan.Dropped, notation)),
            ("fits", ChangeTables.Fits(plan.Dropped, notation)),
            ("weeks", ChangeTables.Weeks(plan.Dropped))
        );
        yield return Carried.Fold(
            DropOrGrowBlock.Details,
            "more",
            plan.Grown.Change.Title,
            ("words", ChangeSentences.Prose(plan.Grown, notation)),
            ("partial", ChangeTables.Partial(plan.Grown, notation))
        );
    }

    private static IEnumerable<Block> Folds(ReviewedFarm farm, DropOrGrow plan)
    {
        Notation notation = plan.Notation;
        yield return Fold(
            "carry",
            $"At what price and yield {plan.DropBudget.Name} would carry itself",
            ("figure", new Picture(onPhone => GridHeatMap.Of(plan.Grid, notation, onPhone))),
            ("words", GridHeatMap.Sentence(plan.Grid, notation)),
            ("grid", DecisionTables.Grid(plan.Grid, plan.Season.Settings, perBedTime: true)),
            ("even", DecisionTables.BreakEvens(plan.Costs, plan.DropBudget)),
            ("swings", new Picture(onPhone => DecisionPlots.Swings(plan.Grid.Model, notation, onPhone: onPhone))));
        yield return Fold(
            "chance",
            "How sure that is",
            ("figure", new Picture(onPhone => DecisionPlots.Distributions(plan.Verdicts, onPhone))),
            ("outcomes", DecisionTables.Outcomes(plan.Verdicts.Simulation, notation)),
            ("swings", new Picture(onPhone => DecisionPlots.Swings(plan.Costs.Model(plan.Season.Farm), notation, onPhone: onPhone))),
            ("years", DecisionTables.Years(
                CropOverYears.Of(farm.Review, plan.DropBudget.Name, plan.Season.CropYear), plan.Season.Settings)));
        yield return Fold(
            "short",
            "What was held against a limit, and what each crop added while it was short",
            ("things", ShortWords.Things(farm.Shorts)),
            ("crops", ShortWords.Crops(farm.Shorts)));
        yield return Fold("costs", "Which costs go with a crop and which stay", ("crops", DecisionTables.BehaviorOfCrops(plan.Costs)));
        yield return Fold(
            "verdicts",
            "How a verdict is found, and every verdict in full",
            ("table", DecisionSentences.Verdicts(plan.Verdicts)),
            ("rests-on", DecisionTables.Assumptions(plan.Verdicts)),
            ("proof", plan.Proof()));
    }

    private static FoldBlock Fold(string part, string heading, params IEnumerable<(string Part, object Shown)> shown) =>
        Carried.Fold(DropOrGrowBlock.Details, part, heading, shown);
}
