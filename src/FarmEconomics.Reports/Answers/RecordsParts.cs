using FarmEconomics.Budgets;
using FarmEconomics.Budgets.Completeness;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Explain;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.RecordsCheck;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The columns of the table of what to fix.</summary>
public enum RecordsFixColumn
{
    /// <summary>What is wrong.</summary>
    What,

    /// <summary>How many times.</summary>
    Times,

    /// <summary>The money in it.</summary>
    Money,

    /// <summary>How to fix it.</summary>
    Fix,

    /// <summary>The first one.</summary>
    First,
}

/// <summary>The first screen of the page on the records: can they be trusted, and what to fix first.</summary>
internal sealed class RecordsParts
{
    private const int Listed = 500;
    private readonly ReviewedFarm farm;
    private readonly FarmFolder folder;
    private readonly SeasonReview? season;
    private readonly Notation notation;
    private readonly int errors;
    private readonly int warnings;
    private readonly int rows;

    internal RecordsParts(ReviewedFarm farm)
    {
        this.farm = farm;
        folder = farm.Folder;
        season = farm.IsReviewed ? farm.Season : null;
        notation = farm.Notation;
        errors = folder.ErrorCount;
        warnings = folder.WarningCount;
        rows = folder.Reading.Files.Sum(file => file.RowsInFile);
    }

    private bool Agrees => season is null || season.Reconciliation.All(check => check.Holds);

    /// <summary>The finding.</summary>
    internal HeadlineBlock Headline => new(RecordsBlock.Headline, Finding(), Why(), season is null ? null : SeasonWords.SureLine(farm));

    /// <summary>Rows, what to fix, hours logged by crop, totals.</summary>
    internal FiguresBlock Figures
    {
        get
        {
            List<KeyFigure> figures =
            [
                new(
                    "rows",
                    notation.Number(rows, Look.Count),
                    (decimal)rows,
                    $"rows read from {notation.Count(folder.Reading.Files.Count, "file")}"
                ),
                ToFix(),
            ];
            if (season is not null)
            {
                figures.Add(Logged(season));
                figures.Add(Totals(season));
            }

            return new FiguresBlock(RecordsBlock.Figures, figures);
        }
    }

    /// <summary>What to fix, by kind: errors first, then by the money in the rows.</summary>
    internal TableBlock Fixes()
    {
        ReportTable table = new ReportTable("Errors first, then by the money in the rows.", notation)
            .Column("What").As(RecordsFixColumn.What).Wrapping()
            .Column("Times", Look.Count).As(RecordsFixColumn.Times)
            .Column("Money", Look.WholeMoney).As(RecordsFixColumn.Money).HiddenOnPhone()
            .Column("Fix").As(RecordsFixColumn.Fix).Wrapping()
            .Column("The first one").As(RecordsFixColumn.First).Wrapping().HiddenOnPhone();
        IEnumerable<IGrouping<string, Problem>> kinds = folder
            .Problems.GroupBy(problem => problem.Code)
            .OrderByDescending(kind => kind.First().Severity)
            .ThenByDescending(kind => kind.Sum(problem => problem.Money ?? 0m))
            .ThenByDescending(kind => kind.Sum(problem => 1 + problem.Further))
            .ThenBy(kind => kind.Key, StringComparer.Ordinal);
        Severity? last = null;
        foreach (IGrouping<string, Problem> kind in kinds)
        {
            if (kind.First().Severity is var severity && severity != last)
            {
                last = severity;
                _ = severity == Severity.Error
                    ? table.Group("Errors", "fix these first")
                    : table.Group("Warnings", "right or not, only you can tell");
            }

            table.Row(Fix(kind));
        }

        return folder.Problems.Count == 0
            ? new TableBlock(RecordsBlock.Fixes, "Nothing to fix", table.Note("No error and no warning.")) { Rows = 0 }
            : new TableBlock(RecordsBlock.Fixes, errors > 0 ? "What to fix" : "What to look at", table) { Rows = 0 };
    }

    private static IReadOnlyList<ReportCell> Fix(IGrouping<string, Problem> kind)
    {
        Problem first = kind.First();
        string title = ProblemCatalog.All.FirstOrDefault(known => known.Code == kind.Key)?.Title ?? "";
        ReportCell money = kind.Any(problem => problem.Money is not null) ? kind.Sum(problem => problem.Money ?? 0m) : (ReportCell)"";
        int times = kind.Sum(problem => 1 + problem.Further);
        return [$"{title} ({kind.Key})", times, money, first.Hint, Found(first, $"{first.Source}: {first.Message}")];
    }

    // A fault leads to its row; what is of no row says no line.
    private static ReportCell Found(Problem problem, string words) =>
        problem.Source.Line == 0 ? problem.Message : ((ReportCell)words).To(PageTarget.Record(problem.Source));

    /// <summary>Every error and warning, in the order of the files; so many at most, since a page must stay one that opens.</summary>
    internal ReportTable Every() =>
        folder
            .Problems.Aggregate(
                new ReportTable($"{Phrase.Sentence(notation.Count(errors, "error"))} and {notation.Count(warnings, "warning")}", notation)
                    .Column("Where")
                    .Column("Code")
                    .Column("What")
                    .Wrapping(),
                (table, problem) => table.Row(problem.Source.Line == 0 ? "" : RowWords.Place(problem.Source), problem.Code, problem.Message)
            )
            .Top(Listed);

    /// <summary>What weakens the answers, worst first by the money it touches; null where there is no season.</summary>
    internal Block? Weak()
    {
        if (season is null)
        {
            return null;
        }

        List<RecordGap> gaps = [.. CompletenessReview.Gaps(season)];
        if (gaps.Count == 0)
        {
            return new ProseBlock(RecordsBlock.Gaps, null, new Prose("No harvest, hours or totals were found missing.")) { IsSmall = true };
        }

        ReportTable table = new ReportTable($"The worst first, by the money it touches in {season.CropYear}.", notation).Of<RecordGap>()
            .Column("What", gap => gap.What).Wrapping()
            .Column("What it changes", gap => gap.Changes).Wrapping()
            .Column("Money", Look.WholeMoney, gap => gap.Money)
            .Column("First row", gap => gap.First?.ToString() ?? "").HiddenOnPhone()
            .Rows(gaps);
        return new TableBlock(
            RecordsBlock.Gaps,
            $"{Phrase.Sentence(notation.Count(gaps.Count, "gap weakens", "gaps weaken"))} the answers",
            table
        );
    }

    /// <summary>Unusual values, by kind: how many, the usual one, how far they go.</summary>
    internal ReportTable Unusual()
    {
        ReportTable table = new ReportTable($"Unusual values of {season!.CropYear}: typos, or real?", notation)
            .Column("What")
            .Wrapping()
            .Column("How many", Look.Count)
            .Column("of", Look.Count)
            .Column("Usually", Look.Quantity)
            .Column("Lowest", Look.Quantity)
            .Column("Highest", Look.Quantity)
            .Column("First row");
        foreach (
            IGrouping<string, Outlier> kind in Outliers
                .Of(season.Records.Tables, season.Settings.StartOf(season.CropYear), season.Settings.EndOf(season.CropYear))
                .GroupBy(outlier => outlier.What)
        )
        {
            Outlier first = kind.First();
            table.Row(
                Phrase.Sentence(kind.Key),
                kind.Count(),
                first.Count,
                first.Median,
                kind.Min(outlier => outlier.Value),
                kind.Max(outlier => outlier.Value),
                first.Source.ToString()
            );
        }

        return table.Rows.Count == 0 ? table.Note("none.") : table;
    }

    private string Finding()
    {
        if (errors > 0 && season is null)
        {
            return $"{Phrase.Sentence(notation.Count(errors, "error"))} must be fixed before any figure can be worked out";
        }

        if (!Agrees)
        {
            return "The totals don't agree: don't rely on these figures";
        }

        if (season is null)
        {
            return "There is no season to review yet";
        }

        if (folder.Skipped.Count > 0)
        {
            return $"{Phrase.Sentence(notation.Count(folder.Skipped.Count, "row"))} in error "
                + $"{(folder.Skipped.Count == 1 ? "was" : "were")} left out of every figure";
        }

        int weak = RecordsSentences.Weaknesses(season).Count;
        return weak > 0 ? $"The records of {season.CropYear} can be used, with {notation.Count(weak, "reservation")}"
            : warnings > 0 ? $"The records of {season.CropYear} hold: no errors, {notation.Count(warnings, "warning")} to look at"
            : $"The records of {season.CropYear} hold: no errors and no warnings in {notation.Count(rows, "row")}";
    }

    private Prose? Why()
    {
        if (season is null)
        {
            return errors > 0
                ? new Prose("Fix these in your records, save, and load this page again. Nothing in your files was changed.")
                : null;
        }

        List<string> weak = RecordsSentences.Weaknesses(season);
        string agree = Agrees
            ? "The totals agree with your records to the cent."
            : "**What went in and what came out are not the same**: tell the makers of the program.";
        string rest =
            weak.Count > 0 ? $" What weakens them: {BlockNumber.Tidy(Phrase.List(weak))}."
            : warnings > 0
                ? $" Apart from {(warnings == 1 ? "a warning" : $"these {notation.Count(warnings, "warning")}")} they look complete."
            : " They look complete.";
        return new Prose(agree + rest);
    }

    private KeyFigure ToFix() =>
        errors > 0
            ? new(
                "errors",
                notation.Number(errors, Look.Count),
                (decimal)errors,
                $"{(errors == 1 ? "error" : "errors")} to fix, and {notation.Count(warnings, "warning")}"
            )
            : new(
                "warnings",
                notation.Number(warnings, Look.Count),
                (decimal)warnings,
                warnings == 1 ? "warning to look at; no error" : "warnings to look at; no errors"
            );

    private KeyFigure Logged(SeasonReview of)
    {
        if (of.Known.Hours is { } why || of.Farm.LaborHours.Value <= 0m)
        {
            return new("logged", "", null, $"hours by crop aren't known: {of.Known.Hours ?? "none reached a crop"}");
        }

        decimal logged = of.Crops.Sum(crop => RecordGaps.Logged(of, crop)),
            all = of.Farm.LaborHours.Value;
        return new(
            "logged",
            BlockNumber.Percent(logged / all, notation),
            logged / all,
            $"of {notation.Number(all, Look.Count)} crop hours were logged to a crop; the rest was divided"
        );
    }

    private static KeyFigure Totals(SeasonReview of)
    {
        int holds = of.Reconciliation.Count(check => check.Holds);
        return new("totals", $"{holds}", (decimal)holds, $"of {of.Reconciliation.Count} totals agree to the cent, the hour and the unit");
    }
}
