using FarmEconomics.Budgets;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Season;

namespace FarmEconomics.Reports.Answers;

/// <summary>A page of a review, as a file.</summary>
/// <param name="Path">Its place in the result folder, with slashes.</param>
/// <param name="Html">Its content.</param>
public sealed record ReviewPage(string Path, string Html);

/// <summary>All pages of a review as files that need nothing but each other: the reports, a page per crop, the rows behind each.</summary>
public static class ReviewBook
{
    /// <summary>Writes the pages one after the other, the season's first.</summary>
    /// <param name="farm">The farm.</param>
    /// <param name="cancellation">Stops it between two pages.</param>
    public static IEnumerable<ReviewPage> Pages(ReviewedFarm farm, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        yield return new ReviewPage(PageShell.FontsFile, PageShell.Fonts);
        foreach (IReport report in ReportCatalog.Tabs)
        {
            cancellation.ThrowIfCancellationRequested();
            yield return Page(farm, report, FileOf(ReportCatalog.Name(report.Id)), new Dictionary<string, object>(), cancellation);
        }

        foreach (IReport report in ReportCatalog.PerCrop)
        {
            foreach (EnterpriseBudget crop in farm.IsReviewed ? farm.Season.Crops : [])
            {
                cancellation.ThrowIfCancellationRequested();
                yield return Page(farm, report, $"{ReportCatalog.FolderOf(report.Id)}/{farm.Slugs[crop.Name]}.html", new Dictionary<string, object> { ["crop"] = crop.Name }, cancellation);
            }
        }
    }

    /// <summary>What stands around the blocks of a page.</summary>
    /// <param name="farm">The farm.</param>
    /// <param name="blocks">The blocks: the first headline is the window's title.</param>
    internal static PageFrame Frame(ReviewedFarm farm, IReadOnlyList<Block> blocks)
    {
        string title = blocks.OfType<HeadlineBlock>().FirstOrDefault()?.Headline ?? farm.Settings.FarmName;
        string through = farm.Folder.Review is { } review ? $"records through {Day(review.Records.AsOf)}" : "";
        string season = farm.IsReviewed ? $"season {farm.Season.CropYear}" : "";
        return new PageFrame(title, farm.Settings.FarmName, season)
        {
            Foot = farm.IsReviewed ? $"{farm.Settings.FarmName}, {farm.Season.CropYear} · {through}" : farm.Settings.FarmName,
            Footer = [through.Length > 0 ? $"Uses {through}. {ProofTables.Cautions}" : ProofTables.Cautions],
        };
    }

    /// <summary>A day as sentences have it.</summary>
    internal static string Day(DateOnly day) => day.ToString("MMM d, yyyy", System.Globalization.CultureInfo.InvariantCulture);

    private static ReviewPage Page(ReviewedFarm farm, IReport report, string path, Dictionary<string, object> given, CancellationToken cancellation)
    {
        IReadOnlyList<Block> blocks = report.Make(farm, given, cancellation);
        string root = path.Contains('/', StringComparison.Ordinal) ? "../" : "";
        PageFrame frame = Frame(farm, blocks) with
        {
            Root = root,
            Tabs = [.. ReportCatalog.Tabs.Select(tab => new PageTab(tab.Tab!, root + FileOf(ReportCatalog.Name(tab.Id)), tab.Id == report.Id))],
        };
        return new ReviewPage(path, PageShell.Render(frame, PageShell.WithAddresses(BlockHtml.Of(blocks).Text, target => root + Address(target))));
    }

    private static string Address(string target)
    {
        int hash = target.IndexOf('#', StringComparison.Ordinal);
        return hash < 0 ? FileOf(target) : FileOf(target[..hash]) + target[hash..];
    }

    private static string FileOf(string page) => (page == ReportCatalog.Name(ReportId.Season) ? "index" : page) + ".html";
}
