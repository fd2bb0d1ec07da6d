using FarmEconomics.Planning;
using FarmEconomics.Planning.Programs;
using FarmEconomics.Planning.Variances;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Planning;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of the page on next year.</summary>
public enum NextYearBlock
{
    /// <summary>What the best mix gains.</summary>
    Headline,

    /// <summary>Gain, hours, cash at its lowest, sales that break even.</summary>
    Figures,

    /// <summary>Length by crop beside this year's.</summary>
    Crops,

    /// <summary>What one more of what is short is worth.</summary>
    Worth,

    /// <summary>Cash month by month.</summary>
    Cash,

    /// <summary>What won't work.</summary>
    Problems,

    /// <summary>The season beside its plan.</summary>
    Variances,

    /// <summary>Everything folded away, by part.</summary>
    Details,
}

/// <summary>What may be asked of it.</summary>
public sealed record NextYearParameters : ReportParameters
{
    /// <summary>What an own hour is worth.</summary>
    [Field("What an hour of your own is worth", "-1 = as in your records; 0 = cash alone", Unit = "money", Lowest = -1, Highest = 1000)]
    public decimal OwnHour { get; init; } = -1m;

    /// <summary>The piece lengths are multiples of.</summary>
    [Field("Lengths in multiples of", "", Unit = "length of bed", Lowest = 1, Highest = 1000)]
    public decimal Piece { get; init; } = 5m;
}

/// <summary>What to plant next year: the best mix within what is short, what it does to cash; and the last plan beside what came.</summary>
public sealed class NextYearReport : Report<NextYearParameters>
{
    /// <summary>
    /// Finds the solver of the program that shows the page; gives null where there is none, and the page repeats the season. Set once, when the
    /// program starts: the library has no solver of its own.
    /// </summary>
    public static Func<ILinearSolver?> FindSolver { get; set; } = () => null;

    /// <inheritdoc/>
    public override ReportId Id => ReportId.NextYear;

    /// <inheritdoc/>
    public override string? Tab => "Next year";

    /// <inheritdoc/>
    public override bool IsInstant => false;

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, NextYearParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        PlanModel model = PlanFacts.Of(farm.Review, farm.Costs, new PlanSettings { OwnWage = parameters.OwnHour < 0m ? null : parameters.OwnHour });
        cancellation.ThrowIfCancellationRequested();
        BestMix? mix = FindSolver() is { } solver ? BestMix.Of(model, solver) : null;
        cancellation.ThrowIfCancellationRequested();
        PlanLengths? chosen = mix?.Simpler() is { } simpler ? mix.Rounded(simpler, (double)parameters.Piece) : null;
        cancellation.ThrowIfCancellationRequested();
        PlanDraft draft = chosen is not null && mix!.QuantitiesOf(chosen.Feet) is { } quantities
            ? DraftMaker.Of(farm.Season.Records, model, chosen.Feet, quantities) : LikeLastYear.Of(farm.Season, model);
        PlanOutlook outlook = PlanOutlook.Of(farm.Season, model, draft);
        return [.. Blocks(farm, (mix, chosen), outlook), .. Variances(farm)];
    }

    private static IEnumerable<Block> Blocks(ReviewedFarm farm, (BestMix? Mix, PlanLengths? Chosen) best, PlanOutlook outlook)
    {
        Notation notation = farm.Notation;
        FarmEconomics.Funding.CreditLine credit = PlanWords.Credit(outlook, farm.Settings);
        decimal? gain = best.Chosen is { } chosen ? best.Mix!.Gain(chosen) : null;
        yield return new HeadlineBlock(NextYearBlock.Headline, Headline(best, gain, farm), Why(best, notation), "Rests on your seasons' means; next year's weather and market will differ.");
        yield return new FiguresBlock(NextYearBlock.Figures,
        [
            new KeyFigure("gain", gain is { } more ? BlockNumber.Of(more, Look.WholeMoney, notation) : "", gain,
                best.Chosen is null ? "no best mix" : gain is null ? "this year's plantings can't be scored" : "more a year than this year's plantings"),
            new KeyFigure("hours", notation.Number(outlook.Weeks.Sum(week => week.Hours), Look.Count), outlook.Weeks.Sum(week => week.Hours), "hours of work"),
            new KeyFigure("line-of-credit", BlockNumber.Of(credit.Most, Look.WholeMoney, notation), credit.Most, "the most to borrow, starting with no cash"),
            new KeyFigure("break-even", outlook.BreakEven.Value is { } even ? BlockNumber.Of(even, Look.WholeMoney, notation) : "", outlook.BreakEven.Value, outlook.BreakEven.Reason ?? "of sales and shares pay the year's bills"),
        ]);
        if (best is { Mix: { } mix, Chosen: { } lengths })
        {
            yield return new TableBlock(NextYearBlock.Crops, "What to grow", PlanWords.Crops(mix, lengths, notation)) { Rows = 0 };
            yield return new TableBlock(NextYearBlock.Worth, "What one more hour, crate or length of bed is worth", PlanWords.Limits(mix, notation)) { Rows = 8 };
        }

        IReadOnlyList<string> problems = PlanWords.Problems(outlook, notation);
        if (problems.Count > 0)
        {
            yield return new ProseBlock(NextYearBlock.Problems, "Weeks to look at", new Prose(string.Join("\n", problems.Take(8).Select(one => $"- {Prose.Text(one)}"))));
        }

        yield return new FoldBlock(NextYearBlock.Details, "Cash month by month, and what the plan leaves out",
        [
            new TableBlock(NextYearBlock.Cash, null, PlanWords.Cash(outlook, credit, notation)) { Rows = 0 },
            .. best.Mix is { LeftOut.Count: > 0 } some ? [new TableBlock(BlockKey.Of(NextYearBlock.Details, "left-out"), null, PlanWords.LeftOut(some, notation))] : Array.Empty<Block>(),
        ]);
    }

    private static IEnumerable<Block> Variances(ReviewedFarm farm)
    {
        if (PlanVariances.Of(farm.Season) is { } variances)
        {
            yield return new FoldBlock(BlockKey.Of(NextYearBlock.Variances, "plan"), $"How the plan of {farm.Season.CropYear} came out",
            [
                new ProseBlock(NextYearBlock.Variances, null, new Prose(Prose.Text(VarianceWords.Headline(variances)))),
                new TableBlock(BlockKey.Of(NextYearBlock.Variances, "crops"), null, VarianceWords.Crops(variances)) { Rows = 0 },
            ]);
        }
    }

    private static string Headline((BestMix? Mix, PlanLengths? Chosen) best, decimal? gain, ReviewedFarm farm) => best switch
    {
        { Chosen: not null } when gain > 0m => $"Another mix of the same crops would bring {BlockNumber.Size(gain.Value, farm.Notation)} more in {farm.Season.CropYear + 1}",
        { Chosen: not null } when gain is null => $"A mix for {farm.Season.CropYear + 1} that keeps within your limits",
        { Chosen: not null } => $"This year's plantings are as good as any for {farm.Season.CropYear + 1}",
        { Mix: not null } => "No plan keeps within your limits",
        _ => $"{farm.Season.CropYear + 1} planned like {farm.Season.CropYear}",
    };

    private static Prose Why((BestMix? Mix, PlanLengths? Chosen) best, Notation notation) => new(Prose.Text(best.Mix is { } mix
        ? PlanWords.Why(mix, best.Chosen, notation) : "This computer has no solver, so no best mix was looked for; the season's sowings stand a year later."));
}
