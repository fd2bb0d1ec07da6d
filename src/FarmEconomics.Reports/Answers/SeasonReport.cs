using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Losses;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Planning;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.RecordsCheck;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of the season's page.</summary>
public enum SeasonBlock
{
    /// <summary>Rows in error that were left out.</summary>
    LeftOut,

    /// <summary>What was left.</summary>
    Headline,

    /// <summary>Brought in, cost, what an own hour brought, cash.</summary>
    Figures,

    /// <summary>What to do next season.</summary>
    ToDo,

    /// <summary>What was short.</summary>
    Short,

    /// <summary>The season beside its plan, where one is on file.</summary>
    Plan,

    /// <summary>The five net figures beside each other.</summary>
    Ladder,

    /// <summary>Every crop.</summary>
    Crops,

    /// <summary>By bed and by hour.</summary>
    BedAndHour,

    /// <summary>The other questions.</summary>
    Answers,

    /// <summary>Groups, structures and channels.</summary>
    Parts,

    /// <summary>Groups of crops.</summary>
    Groups,

    /// <summary>Structures.</summary>
    Structures,

    /// <summary>Channels.</summary>
    Channels,

    /// <summary>Hours by task.</summary>
    Work,

    /// <summary>Hours by stage.</summary>
    Stages,

    /// <summary>Minutes by task and year.</summary>
    Tasks,

    /// <summary>Where the harvest went.</summary>
    Harvest,

    /// <summary>Losses in words.</summary>
    Lost,

    /// <summary>By where it went.</summary>
    Fates,

    /// <summary>Losses by crop.</summary>
    LossesByCrop,

    /// <summary>By days held.</summary>
    DaysHeld,

    /// <summary>By channel.</summary>
    LossesByChannel,

    /// <summary>By week.</summary>
    LossesByWeek,

    /// <summary>Which sowings paid.</summary>
    Sowings,

    /// <summary>In words.</summary>
    SowingsAnswer,

    /// <summary>Worst sowings of good crops.</summary>
    WorstSowings,

    /// <summary>First and last sowing that paid.</summary>
    FirstAndLast,

    /// <summary>Bed time.</summary>
    BedTime,

    /// <summary>What each bed earned.</summary>
    BedYear,

    /// <summary>A block or structure, bed by bed.</summary>
    BedMap,

    /// <summary>The whole farm, line by line.</summary>
    Statement,

    /// <summary>Lines.</summary>
    StatementLines,

    /// <summary>What it rests on.</summary>
    RestsOn,

    /// <summary>Assumptions.</summary>
    Assumptions,

    /// <summary>How sure.</summary>
    HowSure,

    /// <summary>Cautions.</summary>
    Cautions,
}

/// <summary>What may be asked of the season's page.</summary>
public sealed record SeasonParameters : ReportParameters
{
    /// <summary>Whose bed map is drawn.</summary>
    [Field("Block or structure", "whose bed map is drawn; empty = the one used most", Choice = "place")]
    public string Place { get; init; } = "";
}

/// <summary>The season: what was left, who earned it, what to do next season, and a line to each other page.</summary>
public sealed class SeasonReport : Report<SeasonParameters>
{
    /// <inheritdoc/>
    public override ReportId Id => ReportId.Season;

    /// <inheritdoc/>
    public override string? Tab => "Season";

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, SeasonParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        if (farm.Season.Crops.Count > 0)
        {
            farm.BeginAside();
        }

        // The folds ask for nothing of what stands above them: they are made beside it.
        Task<FoldBlock[]> folds =
            farm.Season.Crops.Count > 0 ? Task.Run(() => Folds(farm, parameters), cancellation) : Task.FromResult<FoldBlock[]>([]);
        List<Block> blocks = [];
        if (farm.Folder.Skipped.Count > 0)
        {
            blocks.Add(new TableBlock(SeasonBlock.LeftOut, "Left out of every figure below", RecordsTables.Skipped(farm.Folder)));
        }

        SeasonWords words = new(farm);
        blocks.Add(new HeadlineBlock(SeasonBlock.Headline, words.Headline, words.Why, words.HowSure));
        if (farm.Season.Crops.Count > 0)
        {
            blocks.Add(words.Figures);
            cancellation.ThrowIfCancellationRequested();
            blocks.AddRange(Standing(farm));
            cancellation.ThrowIfCancellationRequested();
            blocks.Add(new AnswersBlock(SeasonBlock.Answers, "The other questions, answered", [.. ReportCatalog.Answers(farm)]));
            blocks.AddRange(folds.GetAwaiter().GetResult());
        }

        return blocks;
    }

    /// <summary>How the crops and the farm stand: what to do with each crop, what was short, the plan, net by net, crop by crop.</summary>
    private static IEnumerable<Block> Standing(ReviewedFarm farm)
    {
        yield return VerdictCards.Of(farm);
        yield return new ProseBlock(SeasonBlock.Short, "What was short", ShortList.Of(farm.Shorts));
        if (farm.Planned is { } planned)
        {
            string rest = PageTarget.Page($"{ReportCatalog.Name(ReportId.NextYear)}#{NextYearReport.VariancesFold.Id}");
            yield return new ProseBlock(SeasonBlock.Plan, "Against the plan", VarianceWords.Short(planned, farm.Slugs, rest));
        }

        if (farm.Season.Farm.Line(BudgetLine.NetReturn).Missing is null || farm.WriteUp.Tax.NetUnknown is null)
        {
            yield return new TableBlock(SeasonBlock.Ladder, "Five net figures, and why they differ", SeasonLadder.Of(farm));
        }

        yield return SeasonCrops.Of(farm);
    }

    private static FoldBlock[] Folds(ReviewedFarm farm, SeasonParameters parameters) =>
    [
        Parts(farm),
        Work(farm.Season),
        Harvest(farm.Picked),
        Sowings(farm.Sowings),
        BedTime(farm.Season, parameters),
        new FoldBlock(
            SeasonBlock.Statement,
            "The whole farm, line by line",
            [new TableBlock(SeasonBlock.StatementLines, null, ProofTables.Statement(farm.Season)) { Rows = 0 }]),
        new FoldBlock(
            SeasonBlock.RestsOn,
            "What these figures rest on",
            [
                new ProseBlock(SeasonBlock.HowSure, null, SeasonSentences.HowSure(farm.Season)),
                new TableBlock(SeasonBlock.Assumptions, null, ProofTables.Assumptions(farm.Season)),
            ]),
    ];

    private static FoldBlock Parts(ReviewedFarm farm)
    {
        SeasonReview season = farm.Season;
        Chart scatter = new Picture(onPhone => MarginScatter.Of(season, onPhone)).AsChart(SeasonTables.CropRanking(season));
        const string Caption = "Gross margin per bed-foot-week and per hour. Short of beds? Look to the right. Short of labor? Look up.";
        return new FoldBlock(
            SeasonBlock.Parts,
            "By bed and hour, group, structure and channel",
            [
                new PlotBlock(SeasonBlock.BedAndHour, null, farm.Notation.Label(Caption), scatter),
                new TableBlock(SeasonBlock.Groups, null, SeasonTables.Groups(season)),
                new TableBlock(SeasonBlock.Structures, null, SeasonTables.Structures(season)),
                new TableBlock(SeasonBlock.Channels, null, SeasonTables.Channels(season)),
            ]);
    }

    private static FoldBlock Work(SeasonReview season) => new(
        SeasonBlock.Work,
        "Where the hours went",
        [
            new PlotBlock(SeasonBlock.Stages, null, null, new Picture(onPhone => SeasonPlots.HoursByStage(season, onPhone)).AsChart()),
            new TableBlock(SeasonBlock.Tasks, null, SowingTables.Tasks(season)),
        ]);

    private static FoldBlock Harvest(PickedTree picked) => new(
        SeasonBlock.Harvest,
        "Where the harvest went",
        [
            new ProseBlock(SeasonBlock.Lost, null, LossTables.Answer(picked)),
            .. picked.Parts.Any(part => part.Value is not null) ? Losses(picked) : [],
        ]);

    private static FoldBlock Sowings(Sowings sowings) => new(
        SeasonBlock.Sowings,
        "Which sowings paid",
        [
            new ProseBlock(SeasonBlock.SowingsAnswer, null, SowingTables.Answer(sowings)),
            new TableBlock(SeasonBlock.WorstSowings, null, SowingTables.Worst(sowings)),
            new TableBlock(SeasonBlock.FirstAndLast, null, SowingTables.FirstAndLast(sowings)),
        ]);

    private static FoldBlock BedTime(SeasonReview season, SeasonParameters parameters)
    {
        string place = parameters.Place.Length == 0 ? BedYear.MostUsed(season) : parameters.Place;
        Chart year = new Picture(onPhone => BedYear.Of(season, onPhone)).AsChart();
        Chart map = new Picture(onPhone => BedMap.Of(season, place, onPhone)).AsChart();
        return new FoldBlock(
            SeasonBlock.BedTime,
            "Bed time",
            [
                new PlotBlock(SeasonBlock.BedYear, null, FigureSentences.BedTime(season).ToPlainText(), year),
                new PlotBlock(SeasonBlock.BedMap, null, null, map),
            ]);
    }

    private static Block[] Losses(PickedTree picked) =>
        [
            new TableBlock(SeasonBlock.Fates, null, LossTables.ByFate(picked)),
            new TableBlock(SeasonBlock.LossesByCrop, null, LossTables.ByCrop(picked)),
            new TableBlock(SeasonBlock.DaysHeld, null, LossTables.ByDaysHeld(picked)),
            new TableBlock(SeasonBlock.LossesByChannel, null, LossTables.ByChannel(picked)),
            new TableBlock(SeasonBlock.LossesByWeek, null, LossTables.ByWeek(picked)),
        ];
}
