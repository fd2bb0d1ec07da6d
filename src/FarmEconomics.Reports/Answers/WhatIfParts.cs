using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.WhatIf;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The columns of the table of crops that move.</summary>
public enum WhatIfColumn
{
    /// <summary>The crop.</summary>
    Crop,

    /// <summary>What it brought in.</summary>
    BroughtIn,

    /// <summary>What it would bring in.</summary>
    WouldBringIn,

    /// <summary>What was left over.</summary>
    LeftOver,

    /// <summary>What would be left over.</summary>
    WouldBeLeft,

    /// <summary>The difference of that.</summary>
    Change,
}

/// <summary>The first screen of the page on what if: three figures before and after, and the crops that move.</summary>
internal sealed class WhatIfParts(ReviewedFarm farm, WhatIfReport report)
{
    private const int Drawn = 8;
    private readonly Notation notation = farm.Notation;

    private ScenarioOutcome Outcome => report.Outcome;

    private bool NetKnown => Outcome.FarmNet.Difference.IsAvailable;

    /// <summary>The finding, an example named as one.</summary>
    internal HeadlineBlock Headline => new(WhatIfBlock.Headline, (report.IsExample ? "For example: " : "") + Finding(), Why(), Sure());

    /// <summary>Three figures: what was left, what the crops brought in, what an hour earned; each with what it was.</summary>
    internal FiguresBlock Figures =>
        new(
            WhatIfBlock.Figures,
            [
                Figure("left-over", Outcome.FarmNet, Look.WholeMoney, "left over after every cost"),
                Figure("brought-in", Outcome.AllCrops.Output, Look.WholeMoney, "the crops would bring in"),
                Figure(
                    "hour",
                    new BeforeAfter(Outcome.Before.Farm.ReturnToLaborPerHour, Outcome.After.Farm.ReturnToLaborPerHour),
                    Look.Rate,
                    "an hour would earn after all other costs"
                ),
            ]
        );

    /// <summary>The crops that move most, as bars; null when none does.</summary>
    internal PlotBlock? Moves()
    {
        List<CropDifference> moved = [.. Moved().Take(Drawn)];
        if (moved.Count == 0)
        {
            return null;
        }

        int all = Moved().Count(),
            up = Moved().Count(crop => WhatIfTables.Moved(crop).Value > 0m);
        string heading =
            all == 1 ? $"Only {moved[0].Name} moves"
            : up == all ? $"All {notation.Count(all, "crop")} that move gain"
            : up == 0 ? $"All {notation.Count(all, "crop")} that move lose"
            : $"{moved[0].Name} moves most; {notation.Count(up, "crop gains", "crops gain")}, {all - up} lose";
        return new PlotBlock(
            WhatIfBlock.Moves,
            heading,
            $"Change in what is {(NetKnown ? "left over" : "brought in")}, "
                + $"{notation.Sign} in {Outcome.Before.CropYear}{(all > moved.Count ? $"; the {moved.Count} that move most" : "")}.",
            new Chart(WhatIfTables.Crops(Outcome))
            {
                Bars = new BarList($"How far {notation.Count(moved.Count, "crop")} would move", [.. moved.Select(Bar)]),
            }
        );
    }

    /// <summary>Every crop that moves: brought in and left over, before and after.</summary>
    internal TableBlock Crops()
    {
        string year = $"{Outcome.Before.CropYear}";
        ReportTable table = new ReportTable(
            $"Those that move most first, {notation.Sign} in {year}. A crop that isn't listed doesn't move.",
            notation
        )
            .Column("Crop")
            .As(WhatIfColumn.Crop)
            .Column("Brought in", Look.WholeMoney)
            .As(WhatIfColumn.BroughtIn)
            .HiddenOnPhone()
            .Column("would be", Look.WholeMoney)
            .As(WhatIfColumn.WouldBringIn)
            .HiddenOnPhone()
            .Column("Left over", Look.WholeMoney)
            .As(WhatIfColumn.LeftOver)
            .Column("would be", Look.WholeMoney)
            .As(WhatIfColumn.WouldBeLeft)
            .Column("Change", CentsCount ? Look.Money : Look.WholeMoney)
            .As(WhatIfColumn.Change)
            .AsChange();
        foreach (CropDifference crop in Moved())
        {
            table.Row([((ReportCell)crop.Name).To(PageTarget.Crop(farm.Slugs[crop.Name])), .. Cells(crop)]);
        }

        table.Total(["All crops", .. Cells(Outcome.AllCrops)]);
        return new TableBlock(WhatIfBlock.Crops, "The crops, before and after", table);
    }

    /// <summary>What to try next.</summary>
    internal ProseBlock ToDo()
    {
        List<string> lines = [];
        List<CropDifference> fallen = [.. Moved().Where(crop => crop.NetReturn.Before.Value >= 0m && crop.NetReturn.After.Value < 0m)];
        List<CropDifference> risen = [.. Moved().Where(crop => crop.NetReturn.Before.Value < 0m && crop.NetReturn.After.Value >= 0m)];
        if (fallen.Count > 0)
        {
            lines.Add($"{Names(fallen)} would no longer pay {(fallen.Count == 1 ? "its" : "their")} way.");
        }

        if (risen.Count > 0)
        {
            lines.Add($"{Names(risen)} would pay {(risen.Count == 1 ? "its" : "their")} way.");
        }

        if (fallen.Count + risen.Count == 0 && NetKnown)
        {
            lines.Add("No crop starts or stops paying its way.");
        }

        lines.Add(report.IsExample
            ? "Try your own: a price, a wage, hours, a yield, costs, or the season without a crop. Several at once, too."
            : "Keep it under a name to set several side by side.");
        return new ProseBlock(WhatIfBlock.ToDo, "What that means", new Prose(string.Join("\n", lines.Select(line => "- " + line))));
    }

    private string Finding()
    {
        string with = Outcome.Scenario.Changes.Count switch
        {
            0 => "nothing changed",
            1 or 2 => ChangeWords.Of(Outcome.Scenario, Outcome.Before.Records),
            _ => $"{notation.Count(Outcome.Scenario.Changes.Count, "change")}",
        };
        string start = $"with {BlockNumber.Tidy(with)}, ";
        string text = Outcome.FarmNet.Difference.Value is { } net ? Difference(net, "would be left")
            : Outcome.AllCrops.Output.Difference.Value is { } output ? Difference(output, "would come in")
            : "what would be left isn't known";
        return report.IsExample ? start + text : Phrase.Sentence(start + text);
    }

    private string Difference(decimal difference, string verb) => difference == 0m ? "nothing would change"
        : $"{BlockNumber.Of(Math.Abs(difference), Math.Abs(difference) < 100m ? Look.Money : Look.WholeMoney, notation)} "
            + $"{(difference > 0m ? "more" : "less")} {verb}";

    private Prose? Why()
    {
        if (Outcome.Without is { } without && NetKnown)
        {
            return new Prose(BlockNumber.Tidy(string.Join(" ", ChangeSentences.First(without, notation).Select(line => Prose.Text(line)))));
        }

        if (Outcome.FarmNet.Difference is { IsAvailable: false } unknown)
        {
            return new Prose($"What is left over isn't known: {Prose.Text(unknown.Reason)}.");
        }

        return WhatIfSentences.Sources(Outcome, notation) is { Length: > 0 } sources ? new Prose(BlockNumber.Tidy(sources.Trim())) : null;
    }

    private static string Sure() =>
        "How sure: what isn't changed stays as it was. Nobody buys less at a higher price or works faster for a higher wage.";

    private KeyFigure Figure(string name, BeforeAfter figure, Look look, string words)
    {
        if (figure.After.Value is not { } after)
        {
            return new(name, "", null, $"{words}: not known, {figure.After.Reason}");
        }

        string was = figure.Before.Value is not { } before ? ""
            : before == after ? ", as it was"
            : $", instead of {BlockNumber.Of(before, look, notation)}";
        return new(name, BlockNumber.Of(after, look, notation), after, words + was);
    }

    private Bar Bar(CropDifference crop)
    {
        BeforeAfter figure = NetKnown ? crop.NetReturn : crop.Output;
        decimal change = WhatIfTables.Moved(crop).Value ?? 0m;
        string shown = BlockNumber.Of(change, Math.Abs(change) < 100m ? Look.Money : Look.WholeMoney, notation);
        return new Bar(crop.Name, change, change > 0m ? "+" + shown : shown,
            $"{crop.Name}: {BlockNumber.Of(figure.Before.Value ?? 0m, Look.WholeMoney, notation)}, "
                + $"would be {BlockNumber.Of(figure.After.Value ?? 0m, Look.WholeMoney, notation)}");
    }

    // Beside whole amounts cents tell nothing, but where a crop moves by less than one.
    private bool CentsCount => Moved().Any(crop => Math.Abs(crop.NetReturn.Difference.Value ?? 0m) < 1m);

    private IEnumerable<CropDifference> Moved() =>
        WhatIfTables.Ordered(Outcome).Where(crop => WhatIfTables.Moved(crop).Value is not (null or 0m));

    private string Names(List<CropDifference> crops) =>
        Phrase.List([.. crops.Select(crop => PageTarget.Link(crop.Name, PageTarget.Crop(farm.Slugs[crop.Name])))]);

    private static ReportCell[] Cells(CropDifference crop) =>
        [crop.Output.Before, crop.Output.After, crop.NetReturn.Before, crop.NetReturn.After, crop.NetReturn.Difference];
}
