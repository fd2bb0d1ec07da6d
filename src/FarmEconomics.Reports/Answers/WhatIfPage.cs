using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Files;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.WhatIf;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of the page on what if.</summary>
public enum WhatIfBlock
{
    /// <summary>The finding.</summary>
    Headline,

    /// <summary>Three figures before and after.</summary>
    Figures,

    /// <summary>The crops that move most.</summary>
    Moves,

    /// <summary>Every crop that moves.</summary>
    Crops,

    /// <summary>What that means.</summary>
    ToDo,

    /// <summary>The folds, by part.</summary>
    Details,
}

/// <summary>What may be asked of it.</summary>
public sealed record WhatIfParameters : ReportParameters
{
    /// <summary>What is different.</summary>
    [Field("Changes", "what is different: \"price of Carrots=+10%; wages=+5%\"; empty = an example out of your farm", Choice = "change")]
    public string Changes { get; init; } = "";

    /// <summary>A file of named scenarios.</summary>
    [Field("Scenarios to compare", "a CSV file of named scenarios (scenario, change, note); empty = none", Unit = "scenario file")]
    public string Scenarios { get; init; } = "";
}

/// <summary>A season as it was beside the same season with something changed.</summary>
public sealed class WhatIfPage : Report<WhatIfParameters>
{
    /// <inheritdoc/>
    public override ReportId Id => ReportId.WhatIf;

    /// <inheritdoc/>
    public override string? Tab => "What if";

    /// <inheritdoc/>
    public override bool StandsAlone => true;

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, WhatIfParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        IReadOnlyList<FarmScenario> kept =
            parameters.Scenarios.Length == 0 ? [] : ScenarioFile.Read(parameters.Scenarios, farm.Review.Records);
        WhatIfReport report = WhatIfReport.Of(farm.Review, farm.Season, parameters.Changes, kept);
        cancellation.ThrowIfCancellationRequested();
        WhatIfParts parts = new(farm, report);
        List<Block> blocks = [parts.Headline, parts.Figures];
        if (parts.Moves() is { } moves)
        {
            blocks.AddRange([moves, parts.Crops()]);
        }

        blocks.Add(parts.ToDo());
        if (kept.Count > 0)
        {
            blocks.Add(Fold("scenarios", "Scenarios side by side", ("farm", report.Scenarios()), ("crops", report.ScenariosByCrop())));
        }

        blocks.AddRange([
            Fold("farm", "The whole farm, line by line", ("answer", report.Answer()), ("table", report.Farm())),
            Fold("changes", "What was changed, and how many rows", ("table", report.Changes())),
            Fold(
                "crops",
                "Every crop in full",
                ("figure", new Picture(report.Figure)),
                ("words", report.FigureInWords()),
                ("table", report.Crops())) with { ScreenOnly = true },
            Fold("sure", "What it rests on", ("sure", report.HowSure())),
        ]);
        return blocks;
    }

    private static FoldBlock Fold(string part, string heading, params IEnumerable<(string Part, object Shown)> shown) =>
        Carried.Fold(WhatIfBlock.Details, part, heading, shown);
}
