using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Explain;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of the rows behind a crop's figures.</summary>
public enum RowsBlock
{
    /// <summary>What it is.</summary>
    Headline,

    /// <summary>The budget.</summary>
    Budget,

    /// <summary>Sales and use.</summary>
    Output,

    /// <summary>Materials.</summary>
    Materials,

    /// <summary>Selling.</summary>
    Selling,

    /// <summary>Labor.</summary>
    Labor,

    /// <summary>Equipment and buildings.</summary>
    Infrastructure,

    /// <summary>Overhead.</summary>
    Overhead,

    /// <summary>Establishment of perennials.</summary>
    Establishment,

    /// <summary>The shared costs' own rows.</summary>
    Pools,
}

/// <summary>Every row behind a crop's figures, with file and line: no limit of length, a page to look things up in.</summary>
public sealed class RowsReport : Report<CropParameters>
{
    /// <inheritdoc/>
    public override ReportId Id => ReportId.Rows;

    /// <inheritdoc/>
    public override string? Tab => null;

    /// <inheritdoc/>
    public override bool StandsAlone => true;

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, CropParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        EnterpriseBudget crop = CropReport.Find(farm, parameters.Crop);
        CropExplanation explained = CropExplanation.Of(farm.Season, crop.Name);
        string slug = farm.Slugs[crop.Name];
        List<Block> blocks =
        [
            new HeadlineBlock(RowsBlock.Headline, $"Where the figures of {crop.Name} come from, {explained.CropYear}",
                new Prose($"Every row that names the crop, with its file and line, and its part of each shared cost. "
                    + $"Each table adds up to the line above it, to the cent. "
                    + $"{PageTarget.Link("Back to " + crop.Name, PageTarget.Crop(slug))}."),
                null),
            new TableBlock(RowsBlock.Budget, null, explained.Budget) { Rows = 0 },
        ];
        blocks.AddRange(explained.Lines.SelectMany(Section));
        if (explained.Pools.Count > 0)
        {
            blocks.Add(
                new FoldBlock(
                    RowsBlock.Pools,
                    "The shared costs' own rows",
                    [
                        .. explained.Pools.Select(
                            (table, index) => new TableBlock(BlockKey.Of(RowsBlock.Pools, Number(index)), null, table) { Rows = 24 }
                        ),
                    ]
                )
                {
                    ScreenOnly = true,
                }
            );
        }

        return blocks;
    }

    private static IEnumerable<Block> Section(ExplainSection section)
    {
        RowsBlock key = section.Line switch
        {
            null => RowsBlock.Output,
            BudgetLine.Materials => RowsBlock.Materials,
            BudgetLine.Selling => RowsBlock.Selling,
            BudgetLine.Labor => RowsBlock.Labor,
            BudgetLine.Infrastructure => RowsBlock.Infrastructure,
            BudgetLine.Establishment => RowsBlock.Establishment,
            _ => RowsBlock.Overhead,
        };
        yield return new ProseBlock(key, section.Title, new Prose(string.Join("\n\n", section.Sentences.Select(Prose.Text))));
        foreach ((int index, ReportTable table) in section.Tables.Index())
        {
            yield return new TableBlock(BlockKey.Of(key, Number(index)), null, table) { Rows = 24 };
        }
    }

    private static string Number(int index) => (index + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
}
