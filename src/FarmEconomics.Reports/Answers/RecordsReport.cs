using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Completeness;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.RecordsCheck;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of the page on the records.</summary>
public enum RecordsBlock
{
    /// <summary>The finding.</summary>
    Headline,

    /// <summary>Rows, what to fix, hours logged, totals.</summary>
    Figures,

    /// <summary>What to fix, by kind.</summary>
    Fixes,

    /// <summary>Rows in error that were left out.</summary>
    LeftOut,

    /// <summary>What weakens the answers.</summary>
    Gaps,

    /// <summary>The folds, by part.</summary>
    Details,
}

/// <summary>Whether the records can be trusted, and what to fix first. It is made of records in error as well.</summary>
public sealed class RecordsReport : Report<ReportParameters>
{
    /// <inheritdoc/>
    public override ReportId Id => ReportId.Records;

    /// <inheritdoc/>
    public override string? Tab => "Records";

    /// <inheritdoc/>
    public override bool StandsAlone => true;

    /// <inheritdoc/>
    public override bool TakesAnyRecords => true;

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, ReportParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        FarmFolder folder = farm.Folder;
        RecordsParts parts = new(farm);
        List<Block> blocks = [parts.Headline, parts.Figures, parts.Fixes()];
        if (folder.Skipped.Count > 0)
        {
            blocks.Add(new TableBlock(RecordsBlock.LeftOut, "Left out of every figure", RecordsTables.Skipped(folder)));
        }

        if (parts.Weak() is { } gaps)
        {
            blocks.Add(gaps);
        }

        if (folder.Problems.Count > 1)
        {
            blocks.Add(
                Carried.Fold(RecordsBlock.Details, "every", "Every error and warning", ("rows", parts.Every())) with { ScreenOnly = true }
            );
        }

        if (farm.IsReviewed)
        {
            blocks.AddRange(OfSeason(folder, farm.Season, parts));
        }

        blocks.Add(
            Carried.Fold(
                RecordsBlock.Details,
                "read",
                "What was read",
                ("files", RecordsTables.FilesRead(folder)),
                ("missing", RecordsTables.Missing(folder))
            ) with
            { ScreenOnly = true }
        );
        return blocks;
    }

    /// <inheritdoc/>
    public override (string Question, Prose Answer)? InALine(ReviewedFarm farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        int warnings = farm.Folder.WarningCount;
        bool agree = farm.Season.Reconciliation.All(check => check.Holds);
        return (
            "Can I trust the records?",
            new Prose(
                farm.Notation.Text(
                    $"{farm.Notation.Count(warnings, "warning")} in {farm.Folder.Reading.Files.Sum(file => file.RowsInFile):#,0} rows; "
                )
                    + (
                        agree
                            ? "the totals agree with your records to the cent."
                            : "**the totals do not agree: don't rely on these figures.**"
                    )
            )
        );
    }

    private static IEnumerable<Block> OfSeason(FarmFolder folder, SeasonReview season, RecordsParts parts) =>
        [
            Carried.Fold(
                RecordsBlock.Details,
                "hours",
                "Hours: logged, divided, estimated",
                ("words", RecordsSentences.Hours(season)),
                ("hours", RecordGaps.HoursByCrop(season)),
                ("figure", new Picture(onPhone => RecordsPlots.HoursByMonth(season, onPhone))),
                ("month", FigureSentences.HoursByMonth(season))
            ),
            Carried.Fold(RecordsBlock.Details, "months", "Month by month", ("months", RecordsTables.ByMonth(season))),
            Carried.Fold(
                RecordsBlock.Details,
                "unmatched",
                "Sold without a harvest",
                ("words", RecordsSentences.Gaps(season)),
                ("table", RecordGaps.SoldWithoutHarvest(season))
            ),
            Carried.Fold(
                RecordsBlock.Details,
                "unusual",
                "Unusual values: typos, or real?",
                ("kinds", parts.Unusual()),
                ("rows", CompletenessTables.FarFromTheirKind(season))
            ) with { ScreenOnly = true },
            Carried.Fold(
                RecordsBlock.Details,
                "totals",
                "Totals kept outside the records, and rows after the last day used",
                ("totals", CompletenessTables.Totals(folder)),
                ("after", RecordsTables.AfterAsOf(season.Records))
            ),
            Carried.Fold(
                RecordsBlock.Details,
                "rests-on",
                "What the figures rest on, and every total that agrees",
                ("sure", SeasonSentences.HowSure(season)),
                ("assumptions", ProofTables.Assumptions(season)),
                ("proof", ProofTables.Reconciliation(season))
            ),
        ];
}
