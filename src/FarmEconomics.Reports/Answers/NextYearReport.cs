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
    /// <summary>What the plan brings beyond this season's plantings again.</summary>
    Headline,

    /// <summary>Cash, own hours, cash at its lowest, sales that break even.</summary>
    Figures,

    /// <summary>The lengths that change most.</summary>
    Changes,

    /// <summary>What one more of what is short is worth.</summary>
    Worth,

    /// <summary>Cash month by month, as lines.</summary>
    Cash,

    /// <summary>What won't work, and how to go on.</summary>
    ToDo,

    /// <summary>Length by crop beside this season's.</summary>
    Crops,

    /// <summary>This season's lengths, the best mix, and one nearly as good.</summary>
    Plans,

    /// <summary>Hours by week, as bars.</summary>
    Hours,

    /// <summary>Hours, trays and crates week by week.</summary>
    Weeks,

    /// <summary>Seed and supplies.</summary>
    Supplies,

    /// <summary>Cash month by month, line by line.</summary>
    CashTable,

    /// <summary>Crops left out, and by how much.</summary>
    LeftOut,

    /// <summary>The season beside its plan.</summary>
    Variances,

    /// <summary>What the plan rests on.</summary>
    RestsOn,

    /// <summary>Everything folded away, by part.</summary>
    Details,

    /// <summary>Plans from most to safest, where they are asked for.</summary>
    Safe,
}

/// <summary>What may be asked of it.</summary>
public sealed record NextYearParameters : ReportParameters
{
    /// <summary>The value of <see cref="Plan"/> that asks for the best mix.</summary>
    public const string BestMix = "best mix";

    /// <summary>The value of <see cref="Plan"/> that asks for the plan tables.</summary>
    public const string AsInRecords = "as in your records";

    /// <summary>The value of <see cref="Plan"/> that asks for the season's plantings again.</summary>
    public const string LikeLastYear = "like last year";

    /// <summary>What <see cref="Plan"/> may be.</summary>
    public static IReadOnlyList<string> Plans { get; } = [AsInRecords, BestMix, LikeLastYear];

    /// <summary>Which plan is shown.</summary>
    [Field("Plan", "empty = the one in your records, else the best mix", Choice = "plan")]
    public string Plan { get; init; } = "";

    /// <summary>What an own hour is worth.</summary>
    [Field("What an hour of your own is worth", "-1 = as in your records; 0 = cash alone", Unit = "money", Lowest = -1, Highest = 1000)]
    public decimal OwnHour { get; init; } = -1m;

    /// <summary>The piece lengths are multiples of.</summary>
    [Field("Lengths in multiples of", "", Unit = "length of bed", Lowest = 1, Highest = 1000)]
    public decimal Piece { get; init; } = 5m;

    /// <summary>True: plans that look at bad seasons, next to the best mix.</summary>
    [Field("How safe?", "plans that look at bad seasons, next to the best mix; takes about a minute")]
    public bool HowSafe { get; init; }
}

/// <summary>
/// What to plant next year: the plan on file, else the best mix within what is short, what it does to cash and hours; and the last plan
/// beside what came.
/// </summary>
public sealed class NextYearReport : Report<NextYearParameters>
{
    private const int MostBars = 12;

    /// <summary>The fold that holds the season beside its plan crop by crop.</summary>
    internal static BlockKey VariancesFold => BlockKey.Of(NextYearBlock.Variances, "plan");

    /// <summary>
    /// Finds the solver of the program that shows the page; gives null where there is none, and the page repeats the season. Set once, when
    /// the program starts: the library has no solver of its own.
    /// </summary>
    public static Func<ILinearSolver?> FindSolver { get; set; } = () => null;

    /// <inheritdoc/>
    public override ReportId Id => ReportId.NextYear;

    /// <inheritdoc/>
    public override string? Tab => "Next year";

    /// <inheritdoc/>
    public override bool IsInstant => false;

    /// <summary>The plan a page shows, as rows to be put into the records.</summary>
    /// <param name="farm">The farm.</param>
    /// <param name="parameters">What is asked.</param>
    /// <param name="cancellation">Stopped by a newer request.</param>
    /// <exception cref="ArgumentException">There is no such plan.</exception>
    public static PlanDraft DraftOf(ReviewedFarm farm, NextYearParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        return Shown(farm, parameters, cancellation).Draft;
    }

    /// <summary>What the plan a page shows does, week by week and month by month, and where it doesn't fit.</summary>
    /// <param name="farm">The farm.</param>
    /// <param name="parameters">What is asked.</param>
    /// <param name="cancellation">Stopped by a newer request.</param>
    /// <exception cref="ArgumentException">There is no such plan.</exception>
    public static PlanOutlook OutlookOf(ReviewedFarm farm, NextYearParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        return Shown(farm, parameters, cancellation).Outlook;
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, NextYearParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        return Blocks(Shown(farm, parameters, cancellation));
    }

    /// <summary>The blocks with a solver of the caller's; the page's own is for the whole program.</summary>
    internal static IReadOnlyList<Block> MakeWith(ReviewedFarm farm, NextYearParameters parameters, ILinearSolver? solver) =>
        Blocks(ShownPlan.Of(farm, parameters, solver, CancellationToken.None));

    private static IReadOnlyList<Block> Blocks(ShownPlan plan) => [.. FirstScreen(plan), .. Folds(plan)];

    /// <inheritdoc/>
    public override string? ChangesNothing(string field, ReviewedFarm farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        bool written = PlanOnFile.Years(farm.Season.Records).Contains(farm.Season.CropYear + 1);
        return field is "piece" or "how_safe" && (written || FindSolver() is null)
            ? written
                ? "a plan in your records has its own lengths"
                : "this computer has no solver to look for a best mix"
            : null;
    }

    /// <inheritdoc/>
    public override (string Question, Prose Answer)? InALine(ReviewedFarm farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        int next = farm.Season.CropYear + 1;
        return ("What to plant next year?", new Prose(PlanOnFile.Years(farm.Season.Records).Contains(next)
            ? $"Your plan for {next} is on file."
            : ShownPlan.NoPrices(farm) is not null ? "Can't be told: no price is on record."
            : $"The mix that would bring most in {next}."));
    }

    private static ShownPlan Shown(ReviewedFarm farm, NextYearParameters parameters, CancellationToken cancellation) =>
        farm.Kept(parameters, () => ShownPlan.Of(farm, parameters, FindSolver(), cancellation));

    private static IEnumerable<Block> FirstScreen(ShownPlan plan)
    {
        NextYearWords words = new(plan);
        PlanSheets sheets = new(plan);
        Notation notation = plan.Farm.Notation;
        IReadOnlyList<CropLength> lengths = plan.Lengths();
        yield return new HeadlineBlock(NextYearBlock.Headline, words.Headline, words.Why, words.HowSure);
        yield return words.Figures;
        if (plan.Source != PlanSource.LikeLastYear && lengths.Any(crop => Math.Abs(crop.After - crop.Before) >= 0.5m))
        {
            string caption = $"Bed-feet over the year, {plan.Farm.Season.CropYear} to {plan.Model.CropYear}; those that change most.";
            Chart chart = PlanPlots.Changes(lengths, MostBars, sheets.Lengths(lengths), notation);
            yield return new PlotBlock(NextYearBlock.Changes, words.ChangesHeading(lengths), notation.Label(caption), chart);
        }

        if (plan is { Mix: { } mix, Chosen: not null })
        {
            ReportTable worth = PlanWords.Limits(mix, notation);
            yield return new TableBlock(NextYearBlock.Worth, "What one more hour, crate or length of bed is worth", worth) { Rows = 6 };
        }

        if (plan.Safe is { } safe)
        {
            yield return new TableBlock(
                NextYearBlock.Safe,
                CarefulWords.Headline(safe.Plans, safe.Seasons, notation, false) ?? "No steadier plan was found",
                CarefulWords.Plans(plan.Mix!, safe.Plans, safe.Seasons, notation));
        }

        yield return Cash(plan, words);
        yield return new ProseBlock(NextYearBlock.ToDo, "What to do", words.ToDo);
    }

    private static Block Cash(ShownPlan plan, NextYearWords words) =>
        (plan.Outlook.SalesUnknown ?? plan.CostsUnknown) is { } why
        ? Unknown(NextYearBlock.Cash, "Cash isn't known", why)
        : new PlotBlock(
            NextYearBlock.Cash,
            words.CashHeading,
            $"Cash at the end of the month, {plan.Farm.Notation.Currency}"
                + $"{(plan.Opening is null ? ", from a beginning not known and taken as 0" : "")}; "
                + $"taxes and what you draw as in {plan.Farm.Season.CropYear}, no equipment bought",
            PlanPlots.Cash(plan, words.CashHeading, PlanWords.Cash(plan.Outlook, plan.Credit, plan.Farm.Notation)));

    private static IEnumerable<FoldBlock> Folds(ShownPlan plan)
    {
        NextYearWords words = new(plan);
        PlanSheets sheets = new(plan);
        Notation notation = plan.Farm.Notation;
        ReportTable weeks = sheets.Weeks();
        List<Block> lengths = [new TableBlock(NextYearBlock.Crops, null, sheets.Lengths(plan.Lengths())) { Rows = 0 }];
        if (sheets.Plans() is { } plans)
        {
            lengths.Add(new TableBlock(NextYearBlock.Plans, null, plans));
        }

        if (plan.Mix is { LeftOut.Count: > 0 } some)
        {
            lengths.Add(new TableBlock(NextYearBlock.LeftOut, null, PlanWords.LeftOut(some, notation)));
        }

        yield return Fold("lengths", "Every crop's length, and when it goes in", lengths);
        Block hours = plan.Outlook.HoursUnknown is { } why
            ? Unknown(NextYearBlock.Hours, "Hours aren't known", why)
            : new PlotBlock(
                NextYearBlock.Hours,
                words.HoursHeading,
                "Hours of work by week, under the hours there are; your own dashed",
                PlanPlots.Hours(plan, words.HoursHeading, weeks));
        yield return Fold("weeks", "Hours, trays and crates week by week", [hours, new TableBlock(NextYearBlock.Weeks, null, weeks)]);
        TableBlock supplies = new(NextYearBlock.Supplies, null, sheets.Supplies()) { Rows = 0 };
        yield return Fold("supplies", "Seed and supplies to buy", [supplies]);
        if (CashTable(plan) is { } cash)
        {
            yield return Fold("cash", "Cash line by line", [cash]);
        }

        yield return Fold("rests-on", "What the plan rests on", [new ProseBlock(NextYearBlock.RestsOn, null, words.RestsOn)]);
        if (plan.Farm.Planned is { } variances)
        {
            yield return CameOut(variances);
        }
    }

    private static FoldBlock CameOut(PlanVariances variances) =>
        new(VariancesFold, $"How the plan of {variances.Season.CropYear} came out",
        [
            new ProseBlock(NextYearBlock.Variances, null, new Prose(Prose.Text(VarianceWords.Headline(variances)))),
            new TableBlock(BlockKey.Of(NextYearBlock.Variances, "crops"), null, VarianceWords.Crops(variances)) { Rows = 0 },
        ]);

    private static TableBlock? CashTable(ShownPlan plan) => plan.Outlook.SalesUnknown is not null ? null
        : new TableBlock(NextYearBlock.CashTable, null, PlanWords.Cash(plan.Outlook, plan.Credit, plan.Farm.Notation)) { Rows = 0 };

    private static ProseBlock Unknown(NextYearBlock key, string heading, string why) =>
        new(key, heading, new Prose(Prose.Text($"{FarmEconomics.Reports.Words.Phrase.Sentence(why)}.")));

    private static FoldBlock Fold(string part, string heading, IReadOnlyList<Block> blocks) =>
        new(BlockKey.Of(NextYearBlock.Details, part), heading, blocks);
}
