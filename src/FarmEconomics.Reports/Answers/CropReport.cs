using FarmEconomics.Budgets;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Season;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of a crop's page.</summary>
public enum CropBlock
{
    /// <summary>What was left.</summary>
    Headline,

    /// <summary>Brought in, hour, break-even, verdict.</summary>
    Figures,

    /// <summary>Its sowings beside each other.</summary>
    Sowings,

    /// <summary>The same as a table.</summary>
    SowingTable,

    /// <summary>Price by channel.</summary>
    Channels,

    /// <summary>Hours and cost beside each other.</summary>
    Pair,

    /// <summary>Hours by stage.</summary>
    Hours,

    /// <summary>Where its costs come from.</summary>
    Cost,

    /// <summary>What was picked and not sold.</summary>
    Losses,

    /// <summary>Its years.</summary>
    Years,

    /// <summary>The verdict.</summary>
    Verdict,

    /// <summary>Its budget, each line leading to its rows.</summary>
    Budget,

    /// <summary>The lines.</summary>
    BudgetLines,

    /// <summary>Its part of each shared cost.</summary>
    Shared,

    /// <summary>The charges.</summary>
    Charges,

    /// <summary>Picked and sold week by week.</summary>
    Weeks,

    /// <summary>The weeks.</summary>
    WeekTable,

    /// <summary>What each cost varies with, and break-even.</summary>
    Behavior,

    /// <summary>Break-even.</summary>
    BreakEven,

    /// <summary>What each cost varies with.</summary>
    Varies,
}

/// <summary>What may be asked of a crop's page.</summary>
public sealed record CropParameters : ReportParameters
{
    /// <summary>The crop.</summary>
    [Field("Crop", "empty = the one that brought in most", Choice = "crop")]
    public string Crop { get; init; } = "";
}

/// <summary>
/// One crop: its sowings, prices, hours, costs, losses and years beside each other, and its verdict; every figure leads to its rows.
/// </summary>
public sealed class CropReport : Report<CropParameters>
{
    /// <inheritdoc/>
    public override ReportId Id => ReportId.Crop;

    /// <inheritdoc/>
    public override string? Tab => null;

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, CropParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        EnterpriseBudget crop = Find(farm, parameters.Crop);
        CropWords words = new(farm, crop);
        CropParts parts = new(farm, crop);
        string slug = farm.Slugs[crop.Name];
        List<Block> blocks = [new HeadlineBlock(CropBlock.Headline, words.Headline, words.Why, words.HowSure), words.Figures];
        blocks.AddRange(parts.Sowings());
        blocks.AddRange(parts.Channels());
        blocks.Add(new PairBlock(CropBlock.Pair, [.. new[] { parts.Hours(), parts.Cost() }.OfType<Block>()]));
        cancellation.ThrowIfCancellationRequested();
        blocks.Add(new ProseBlock(CropBlock.Losses, words.LossHeading, words.Losses));
        blocks.AddRange(parts.Years());
        blocks.Add(
            new ProseBlock(
                CropBlock.Verdict,
                words.VerdictHeading,
                new Prose(
                    $"{words.VerdictText}\n\n{PageTarget.Link("Every sowing, harvest, sale and hour", PageTarget.Rows(slug))} behind "
                        + $"these figures has its row on a page of its own."
                )
            )
        );
        blocks.AddRange(Folds(farm, crop, parts, slug));
        return blocks;
    }

    private static IEnumerable<Block> Folds(ReviewedFarm farm, EnterpriseBudget crop, CropParts parts, string slug) =>
    [
        new FoldBlock(CropBlock.Budget, "Its budget, line by line",
            [new TableBlock(CropBlock.BudgetLines, null, parts.Budget(slug)) { Rows = 0 }]),
        new FoldBlock(CropBlock.Shared, "Its part of each shared cost",
            [new TableBlock(CropBlock.Charges, null, PoolTables.ChargesOf(farm.Season, crop.Name))]),
        new FoldBlock(CropBlock.Weeks, "Picked and sold, week by week",
            [new TableBlock(CropBlock.WeekTable, null, parts.Weeks()) { Rows = 0 }]),
        new FoldBlock(CropBlock.Behavior, "Break-even, and what each cost varies with",
            [
                new TableBlock(CropBlock.BreakEven, null, DecisionTables.BreakEvens(farm.Costs, crop)),
                new TableBlock(CropBlock.Varies, null, DecisionTables.Behavior(farm.Costs, crop)),
            ]),
    ];

    /// <summary>The budget of a crop; of the one with the most output where none is named.</summary>
    /// <exception cref="ArgumentException">The season has no such crop.</exception>
    internal static EnterpriseBudget Find(ReviewedFarm farm, string name) =>
        name.Length == 0
            ? farm.Season.Crops.MaxBy(crop => crop.Output.Amount)
                ?? throw new ArgumentException($"There are no plantings of {farm.Season.CropYear}.", nameof(name))
            : farm.Season.FindBudget(name)
                ?? throw new ArgumentException($"{name} has no planting in {farm.Season.CropYear}.", nameof(name));
}
