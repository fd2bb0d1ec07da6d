using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Notebooks;
using FarmEconomics.Notebooks.Pages;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Review;

/// <summary>Fills a result folder: tables, executed notebooks with their pages, and the index.</summary>
internal sealed class ReviewWriter
{
    private readonly FarmFolder farm;
    private readonly SeasonReview season;
    private readonly List<KeyValuePair<string, string>> settings;
    private readonly bool skipBadRows;
    private readonly Terminal terminal;

    internal ReviewWriter(FarmFolder farm, SeasonReview season, List<KeyValuePair<string, string>> settings, bool skipBadRows, Terminal terminal)
    {
        this.farm = farm;
        this.season = season;
        this.settings = settings;
        this.skipBadRows = skipBadRows;
        this.terminal = terminal;
    }

    /// <summary>Writes the tables alone.</summary>
    internal void WriteTables(string folder)
    {
        string tables = Directory.CreateDirectory(Path.Combine(folder, "tables")).FullName;
        ResultTables.Write(season, farm.ProblemsWith(season), tables);
    }

    /// <summary>Writes everything.</summary>
    /// <returns>What went wrong: the notebooks that stopped, each with the reason; none when the result is complete.</returns>
    internal async Task<IReadOnlyList<string>> WriteAsync(string folder, CancellationToken cancellation)
    {
        WriteTables(folder);
        string[] notebooks = [.. ShippedNotebooks.Find()];
        IReadOnlyList<NotebookRun> runs = await RunAsync(notebooks, cancellation).ConfigureAwait(false);
        List<string> stopped = [];
        for (int i = 0; i < runs.Count; i++)
        {
            if (runs[i].Failure is { } failure)
            {
                stopped.Add($"{Path.GetFileName(notebooks[i])} stopped: {failure}");
            }
        }

        if (stopped.Count == 0)
        {
            WritePages(folder, notebooks, runs);
        }

        return stopped;
    }

    /// <summary>What a grower reads in the terminal when the review is done.</summary>
    internal IReadOnlyList<string> Summary() => IndexPage.Answer(farm, season);

    /// <summary>What every notebook is told of a run.</summary>
    internal static Dictionary<string, object> Parameters(FarmFolder farm, int cropYear, List<KeyValuePair<string, string>> settings, bool skipBadRows) => new()
    {
        ["records"] = Path.GetFullPath(farm.Folder),
        ["year"] = cropYear,
        ["settings"] = string.Join("; ", settings.Select(pair => $"{pair.Key}={pair.Value}")),
        ["skip_bad_rows"] = skipBadRows,
    };

    private async Task<IReadOnlyList<NotebookRun>> RunAsync(string[] notebooks, CancellationToken cancellation)
    {
        Dictionary<string, object> parameters = Parameters(farm, season.CropYear, settings, skipBadRows);
        NotebookRunOptions options = new() { Progress = new CellSteps(terminal) };
        terminal.Step($"Running {farm.Notation.Count(notebooks.Length, "notebook")}");
        return await NotebookChildProcess.RunAllAsync(
            notebooks.Select(path => new NotebookJob(path, parameters, options)).ToList(), parallel: 2, cancellation: cancellation).ConfigureAwait(false);
    }

    private void WritePages(string folder, string[] notebooks, IReadOnlyList<NotebookRun> runs)
    {
        string[] names = notebooks.Select(path => Path.GetFileNameWithoutExtension(path)).ToArray();
        string[] titles = runs.Select(run => run.Document.Title ?? "Notebook").ToArray();
        string executed = Directory.CreateDirectory(Path.Combine(folder, "notebooks")).FullName;
        for (int i = 0; i < runs.Count; i++)
        {
            runs[i].Document.WithoutSvg().Save(Path.Combine(executed, names[i] + ".ipynb"));
            NotebookPageOptions options = new() { Title = titles[i], Nav = Nav(i), Footer = [ProofTables.Cautions] };
            File.WriteAllText(Path.Combine(folder, names[i] + ".html"), NotebookPage.Render(runs[i].Document, options));
        }

        string body = IndexPage.Body(farm, season, Enumerable.Range(0, names.Length).Select(i => new PageLink(titles[i], names[i] + ".html")).ToList());
        File.WriteAllText(Path.Combine(folder, "index.html"), PageShell.Render($"{season.Settings.FarmName}, crop year {season.CropYear}", body, Nav(-1), [ProofTables.Cautions]));

        List<PageLink> Nav(int current) =>
        [
            new("Review", "index.html", current < 0),
            .. Enumerable.Range(0, names.Length).Select(i => new PageLink(NotebookPage.ShortTitle(names[i]), names[i] + ".html", i == current)),
        ];
    }

    private sealed class CellSteps(Terminal terminal) : IProgress<CellProgress>
    {
        public void Report(CellProgress value) =>
            terminal.Detail($"Running {Path.GetFileNameWithoutExtension(value.Notebook)}: cell {value.Cell} of {value.Of}");
    }
}
