using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Answers;

/// <summary>Tables, plots and sentences that are there already, as blocks.</summary>
internal static class Carried
{
    /// <summary>What is shown, as blocks under one key.</summary>
    /// <param name="key">The key.</param>
    /// <param name="part">What tells it apart from others under that key.</param>
    /// <param name="shown">Sentences, a table, some tables, a plot, or a text.</param>
    internal static IEnumerable<Block> Of(Enum key, string part, object shown) => shown switch
    {
        ReportTable table => [new TableBlock(BlockKey.Of(key, part), null, table)],
        TableSet set => set.Tables.Select((table, index) => new TableBlock(BlockKey.Of(key, $"{part}-{index + 1}"), null, table)),
        Picture picture => [new PlotBlock(BlockKey.Of(key, part), null, null, picture.AsChart())],
        Figure figure => [new PlotBlock(BlockKey.Of(key, part), null, null, new Chart((ReportTable?)null) { Figure = figure })],
        Prose prose => [new ProseBlock(BlockKey.Of(key, part), null, prose)],
        string text => [new ProseBlock(BlockKey.Of(key, part), null, new Prose(Prose.Text(text)))],
        _ => throw new ArgumentException($"There is no block for a {shown.GetType().Name}.", nameof(shown)),
    };

    /// <summary>A fold of them.</summary>
    internal static FoldBlock Fold(Enum key, string part, string heading, params IEnumerable<(string Part, object Shown)> shown) =>
        new(BlockKey.Of(key, part), heading, [.. shown.SelectMany(one => Of(key, $"{part}-{one.Part}", one.Shown))]);
}
