using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Answers;

/// <summary>Blocks of a report by their key, for notebooks and other programs.</summary>
public static class ReportBlocks
{
    /// <summary>A block; words that say so where the records don't give it.</summary>
    /// <param name="blocks">The report's blocks.</param>
    /// <param name="key">Its key.</param>
    public static Block Show(this IReadOnlyList<Block> blocks, Enum key) => BlockJson.Flat(blocks).FirstOrDefault(block => block.Key == key)
        ?? new ProseBlock(key, null, new Display.Prose("The records don't tell."));

    /// <summary>A part of what a fold holds; words that say so where the records don't give it.</summary>
    /// <param name="blocks">The report's blocks.</param>
    /// <param name="key">The key of the fold.</param>
    /// <param name="part">The part: <c>share-weeks</c>.</param>
    public static Block Show(this IReadOnlyList<Block> blocks, Enum key, string part) =>
        BlockJson.Flat(blocks).FirstOrDefault(block => block.Key == BlockKey.Of(key, part))
        ?? new ProseBlock(BlockKey.Of(key, part), null, new Display.Prose("The records don't tell."));

    /// <summary>A table of a block, to be made a data frame of; an empty one where the records don't give it.</summary>
    /// <param name="blocks">The report's blocks.</param>
    /// <param name="key">Its key.</param>
    public static ReportTable Table(this IReadOnlyList<Block> blocks, Enum key) => blocks.Show(key) switch
    {
        TableBlock block => block.Table,
        PlotBlock { Chart.Data: { } data } => data,
        _ => new ReportTable("The records don't tell", Records.Notation.Default),
    };
}
