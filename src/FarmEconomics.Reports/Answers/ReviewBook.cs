using System.Collections.Concurrent;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Answers;

/// <summary>A page of a review, as a file.</summary>
/// <param name="Path">Its place in the result folder, with slashes.</param>
/// <param name="Html">Its content.</param>
public sealed record ReviewPage(string Path, string Html);

/// <summary>All pages of a review as files that need nothing but each other: the reports, a page per crop, the rows behind each.</summary>
public static class ReviewBook
{
    /// <summary>
    /// Writes the pages, as many at a time as there are processors and at least two: what they share is worked out by whoever needs it
    /// first. One worker begins with what takes long, one with those that share most, the others with those that share least, so that none
    /// waits for another.
    /// </summary>
    /// <param name="farm">The farm.</param>
    /// <param name="cancellation">Stops it between two pages.</param>
    /// <returns>The pages; in the same order, with the same bytes, on every run.</returns>
    public static IReadOnlyList<ReviewPage> Pages(ReviewedFarm farm, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        PageShell.Prepare();
        List<(IReport Report, string Path, string? Crop)> wanted = Wanted(farm);
        ReviewPage?[] made = new ReviewPage?[wanted.Count];
        ILookup<Turn, int> turns = Enumerable.Range(0, wanted.Count).ToLookup(i => TurnOf(wanted[i].Report));
        ConcurrentQueue<int> takesLong = new(turns[Turn.Long]), shared = new(turns[Turn.Shared]), alone = new(turns[Turn.Alone]);
        Task[] workers =
        [
            Task.Run(() => MakeAll(takesLong, alone, shared), cancellation),
            Task.Run(() => MakeAll(shared, alone), cancellation),
            .. Enumerable.Range(2, Math.Max(0, Environment.ProcessorCount - 2)).Select(_ =>
                Task.Run(() => MakeAll(alone, shared), cancellation)),
        ];
        Task.WhenAll(workers).GetAwaiter().GetResult();
        return [new ReviewPage(PageShell.FontsFile, PageShell.Fonts), .. made.OfType<ReviewPage>()];

        void MakeAll(params ConcurrentQueue<int>[] queues)
        {
            foreach (ConcurrentQueue<int> queue in queues)
            {
                while (queue.TryDequeue(out int next))
                {
                    Make(next);
                }
            }
        }

        void Make(int i)
        {
            (IReport report, string path, string? crop) = wanted[i];
            cancellation.ThrowIfCancellationRequested();
            made[i] = Page(farm, report, path, crop is null ? [] : new() { ["crop"] = crop }, cancellation);
        }
    }

    private static List<(IReport Report, string Path, string? Crop)> Wanted(ReviewedFarm farm)
    {
        List<(IReport, string, string?)> wanted =
        [.. ReportCatalog.Tabs.Select(report => (report, FileOf(ReportCatalog.Name(report.Id)), (string?)null))];
        foreach (IReport report in farm.IsReviewed ? ReportCatalog.PerCrop : [])
        {
            string folder = ReportCatalog.FolderOf(report.Id);
            wanted.AddRange(farm.Season.Crops.Select(crop => (report, $"{folder}/{farm.Slugs[crop.Name]}.html", (string?)crop.Name)));
        }

        return wanted;
    }

    private enum Turn
    {
        Shared,
        Alone,
        Long,
    }

    private static Turn TurnOf(IReport report) => !report.IsInstant ? Turn.Long : report.StandsAlone ? Turn.Alone : Turn.Shared;

    /// <summary>What stands around the blocks of a page.</summary>
    /// <param name="farm">The farm.</param>
    /// <param name="blocks">The blocks: the first headline is the window's title.</param>
    internal static PageFrame Frame(ReviewedFarm farm, IReadOnlyList<Block> blocks)
    {
        string title = blocks.OfType<HeadlineBlock>().FirstOrDefault()?.Headline ?? farm.Settings.FarmName;
        string through = farm.Folder.Review is { } review ? $"records through {Looks.LongDay(review.Records.AsOf)}" : "";
        string season = farm.IsReviewed ? $"season {farm.Season.CropYear}" : "";
        return new PageFrame(title, farm.Settings.FarmName, season)
        {
            Foot = farm.IsReviewed ? $"{farm.Settings.FarmName}, {farm.Season.CropYear} · {through}" : farm.Settings.FarmName,
            IsMetric = farm.Settings.LengthUnit == LengthUnit.M,
            Footer = [through.Length > 0 ? $"Uses {through}. {ProofTables.Cautions}" : ProofTables.Cautions],
        };
    }

    private static ReviewPage Page(
        ReviewedFarm farm,
        IReport report,
        string path,
        Dictionary<string, object> given,
        CancellationToken cancellation
    )
    {
        IReadOnlyList<Block> blocks = report.Make(farm, given, cancellation);
        string root = path.Contains('/', StringComparison.Ordinal) ? "../" : "";
        PageFrame frame = Frame(farm, blocks) with
        {
            Root = root,
            Tabs =
            [
                .. ReportCatalog.Tabs.Select(tab => new PageTab(tab.Tab!, root + FileOf(ReportCatalog.Name(tab.Id)), tab.Id == report.Id)),
            ],
        };
        HtmlWriter body = new();
        BlockHtml.Write(body, blocks);
        string page = PageShell.Render(
            frame,
            html => PageShell.AddWithAddresses(html, body.Written, target => PageTarget.IsRecord(target) ? null : root + Address(target))
        );
        body.Drop();
        return new ReviewPage(path, page);
    }

    private static string Address(string target)
    {
        int hash = target.IndexOf('#', StringComparison.Ordinal);
        return hash < 0 ? FileOf(target) : FileOf(target[..hash]) + target[hash..];
    }

    private static string FileOf(string page) => (page == ReportCatalog.Name(ReportId.Season) ? "index" : page) + ".html";
}
