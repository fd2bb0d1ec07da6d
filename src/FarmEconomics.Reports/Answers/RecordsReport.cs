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

    /// <summary>Everything else, by part.</summary>
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
        SeasonReview? season = farm.IsReviewed ? farm.Season : null;
        List<Block> blocks =
        [
            new HeadlineBlock(RecordsBlock.Headline, season is null ? "The records have errors" : "Can these records be trusted?", RecordsSentences.Answer(folder, season), null),
            .. Carried.Of(RecordsBlock.Details, "problems", RecordsTables.Problems(folder)),
            .. Carried.Of(RecordsBlock.Details, "skipped", RecordsTables.Skipped(folder)),
            Carried.Fold(RecordsBlock.Details, "read", "What was read", ("files", RecordsTables.FilesRead(folder)), ("missing", RecordsTables.Missing(folder)), ("totals", CompletenessTables.Totals(folder))),
        ];
        if (season is null)
        {
            return blocks;
        }

        blocks.AddRange([
            Carried.Fold(RecordsBlock.Details, "gaps", "What each gap changes", ("gaps", CompletenessTables.Gaps(season)), ("far", CompletenessTables.FarFromTheirKind(season))),
            Carried.Fold(RecordsBlock.Details, "months", "Month by month", ("months", RecordsTables.ByMonth(season)), ("figure", RecordsPlots.HoursByMonth(season)), ("words", FigureSentences.HoursByMonth(season))),
            Carried.Fold(RecordsBlock.Details, "hours", "Hours: logged, divided, estimated", ("hours", RecordGaps.HoursByCrop(season)), ("words", RecordsSentences.Hours(season))),
            Carried.Fold(RecordsBlock.Details, "unmatched", "Sold without a harvest", ("table", RecordGaps.SoldWithoutHarvest(season)), ("words", RecordsSentences.Gaps(season))),
            Carried.Fold(RecordsBlock.Details, "after", "After the closing date", ("table", RecordsTables.AfterAsOf(season.Records))),
            Carried.Fold(RecordsBlock.Details, "rests-on", "How sure, and what it rests on", ("sure", SeasonSentences.HowSure(season)), ("assumptions", ProofTables.Assumptions(season)), ("proof", ProofTables.Reconciliation(season))),
        ]);
        return blocks;
    }

    /// <inheritdoc/>
    public override (string Question, Prose Answer)? InALine(ReviewedFarm farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        int warnings = farm.Folder.Problems.Count(problem => problem.Severity == Severity.Warning);
        bool agree = farm.Season.Reconciliation.All(check => check.Holds);
        return ("Can I trust the records?", new Prose(farm.Notation.Text($"{farm.Notation.Count(warnings, "warning")} in {farm.Folder.Reading.Files.Sum(file => file.RowsInFile):#,0} rows; ")
            + (agree ? "the totals agree with your records to the cent." : "**the totals do not agree: don't rely on these figures.**")));
    }
}
