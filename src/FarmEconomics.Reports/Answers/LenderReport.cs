using FarmEconomics.Funding;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Funding;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of the lender's page.</summary>
public enum LenderBlock
{
    /// <summary>What is asked for, or what the farm earned.</summary>
    Headline,

    /// <summary>Income, coverage, debt to assets, how far sales may fall.</summary>
    Figures,

    /// <summary>What the project must save a year.</summary>
    MustSave,

    /// <summary>Cash month by month.</summary>
    Cash,

    /// <summary>The line of credit, and when the grant comes.</summary>
    CashWords,

    /// <summary>The project by object class.</summary>
    Budget,

    /// <summary>What to look after; not printed.</summary>
    BeforeSending,

    /// <summary>Income by tax line.</summary>
    AppendixA,

    /// <summary>Net farm income and the enterprise statement.</summary>
    AppendixB,

    /// <summary>How the two agree.</summary>
    AppendixC,

    /// <summary>Balance sheet.</summary>
    AppendixD,

    /// <summary>Measures.</summary>
    AppendixE,

    /// <summary>Cash by month.</summary>
    AppendixF,

    /// <summary>The project.</summary>
    AppendixG,

    /// <summary>Loans and equipment.</summary>
    AppendixH,

    /// <summary>Crops.</summary>
    AppendixI,

    /// <summary>What is assumed, what agrees.</summary>
    AppendixJ,
}

/// <summary>What may be asked of it.</summary>
public sealed record LenderParameters : ReportParameters
{
    /// <summary>The project.</summary>
    [Field("Project", "one of funding.csv; empty = the first one", Choice = "project")]
    public string Project { get; init; } = "";

    /// <summary>Assumptions beside the records.</summary>
    [Field(
        "Assumptions beside the records",
        "\"hours_saved=60; losses_saved_percent=50; new_loan=5000; new_loan_percent=6; new_loan_years=5\"",
        Unit = "name=value"
    )]
    public string Assumptions { get; init; } = "";

    /// <summary>Tax depreciation classes.</summary>
    [Field("Tax depreciation classes", "yours to give: \"Truck=5; Solar panels and mounts=5\"", Unit = "name=years")]
    public string Classes { get; init; } = "";
}

/// <summary>The budget for a lender or a funder.</summary>
public sealed class LenderReport : Report<LenderParameters>
{
    /// <inheritdoc/>
    public override ReportId Id => ReportId.Lender;

    /// <inheritdoc/>
    public override string? Tab => "Lender";

    /// <inheritdoc/>
    public override bool StandsAlone => true;

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, LenderParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        return Of(WriteUpReport.Make(farm.Review, farm.Season.CropYear, parameters.Project, parameters.Assumptions, parameters.Classes));
    }

    /// <summary>The page of a write-up: one page, then appendices from A on.</summary>
    /// <param name="books">The write-up.</param>
    public static IReadOnlyList<Block> Of(FundingWriteUp books)
    {
        ArgumentNullException.ThrowIfNull(books);
        LenderWords words = new(books);
        LenderTables tables = new(books);
        List<Block> blocks = [new HeadlineBlock(LenderBlock.Headline, words.Headline, words.Why, words.HowSure), words.Figures];
        if (words.Project is { } project)
        {
            blocks.Add(project);
        }

        string from = books.NextYear.OpeningCash is null ? ", from an unknown beginning taken as 0" : "";
        blocks.Add(
            books.Tax.NetUnknown is { } unknown
                ? new ProseBlock(LenderBlock.Cash, "Cash by month isn't known", new Prose(Prose.Text($"{Phrase.Sentence(unknown)}.")))
                : new PlotBlock(
                    LenderBlock.Cash,
                    words.CashHeading,
                    $"Cash at the end of the month, {books.Season.Notation.Currency}{from}.",
                    new Picture(onPhone => CashPlot.Of(books, onPhone)).AsChart(tables.Cash())
                )
        );
        if (words.CashWords.Markdown.Length > 0 && books.Tax.NetUnknown is null)
        {
            blocks.Add(new ProseBlock(LenderBlock.CashWords, null, words.CashWords));
        }

        if (tables.Budget() is { } budget)
        {
            blocks.Add(new TableBlock(LenderBlock.Budget, "The project", budget) { Rows = 0 });
        }

        ProseBlock points = new(BlockKey.Of(LenderBlock.BeforeSending, "points"), null, words.BeforeSending);
        blocks.Add(new FoldBlock(LenderBlock.BeforeSending, "Before you send this (not printed)", [points]) { ScreenOnly = true });

        // Without a project no letter is left out.
        blocks.AddRange(Books(books, tables).Concat(Rest(books, tables)).Select((fold, i) =>
            fold with { Heading = $"{(char)('A' + i)} {fold.Heading}" }));
        return blocks;
    }

    /// <summary>The same as the content of a file of its own, ready for print; every text from records is encoded.</summary>
    /// <param name="books">The write-up.</param>
    public static string Html(FundingWriteUp books) => BlockHtml.Of(Of(books)).Text;

    private static IEnumerable<FoldBlock> Books(FundingWriteUp books, LenderTables tables) =>
        [
            Appendix(
                LenderBlock.AppendixA,
                "Income by tax line",
                StatementSheets.Tax(books).Table,
                tables.Depreciation(),
                TaxSheet.Taxes(books).Table
            ),
            Appendix(
                LenderBlock.AppendixB,
                "Net farm income",
                Shown(MoneySheets.Income(books), "Accrual adjustments need balance sheets at both ends of the year."),
                StatementSheets.Enterprise(books).Table
            ),
            Appendix(LenderBlock.AppendixC, "How the two agree", StatementSheets.Bridge(books).Table),
            Appendix(
                LenderBlock.AppendixD,
                "Balance sheet",
                Shown(
                    MoneySheets.Balance(books),
                    "There is no balance sheet within a month of either end of the year: enter one in balances."
                ),
                Shown(MoneySheets.Equity(books), "The statement of equity needs balance sheets at both ends of the year.")
            ),
            Appendix(LenderBlock.AppendixE, "Measures", tables.Measures(), MoneySheets.Coverage(books).Table),
        ];

    private static IEnumerable<FoldBlock> Rest(FundingWriteUp books, LenderTables tables)
    {
        FundingSheet?[] project =
        [
            ProjectSheets.Grant(books),
            ProjectSheets.Narrative(books),
            GrantFormSheet.Of(books),
            DebtSheets.Needed(books),
            ProjectSheets.Savings(books),
            ProjectSheets.Investment(books),
            ProjectSheets.Swings(books),
        ];
        yield return Appendix(LenderBlock.AppendixF, "Cash by month", tables.Cash(), tables.CashLines(), tables.Line());
        if (books.Grant is not null || tables.Projects() is not null)
        {
            yield return Appendix(
                LenderBlock.AppendixG,
                "The project",
                [.. project.Select(sheet => (object?)sheet?.Table), tables.Projects(), tables.Tools()]
            );
        }

        yield return Appendix(
            LenderBlock.AppendixH,
            "Loans and equipment",
            tables.Loans() is { } loans ? loans : "There is no loan.",
            DebtSheets.Replacement(books)?.Table
        );
        yield return Appendix(LenderBlock.AppendixI, "Crops", tables.Crops(), tables.Stands());
        yield return Appendix(
            LenderBlock.AppendixJ,
            "What is assumed",
            tables.Changed(),
            WriteUpReport.RequireChecks(books),
            new Prose(string.Join("\n\n", WriteUpReport.Cautions))
        );
    }

    private static FoldBlock Appendix(LenderBlock key, string heading, params IReadOnlyList<object?> shown) => new(key, heading,
    [
        .. shown.Index().Where(one => one.Item is not null).SelectMany(one => Carried.Of(key, $"{one.Index + 1}", one.Item!))
            .Select(block => block is TableBlock table ? table with { Rows = 0 } : block),
    ]);

    private static object Shown(FundingSheet? sheet, string whyNot) => sheet is null ? whyNot : sheet.Table;

    /// <inheritdoc/>
    public override (string Question, Prose Answer)? InALine(ReviewedFarm farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        CashFlow next = farm.WriteUp.NextYear;
        return next.OpeningCash is null || farm.WriteUp.Tax.NetUnknown is not null ? null
            : ("Will cash last?", new Prose($"{(next.LowPoint >= 0m ? "Yes. " : "Not all year. ")}The low point is the end of "
                + $"{Looks.Month(next.Months[next.LowMonth])}, {BlockNumber.Of(next.LowPoint, Look.WholeMoney, farm.Notation)}, "
                + $"should next year repeat this one."));
    }
}
