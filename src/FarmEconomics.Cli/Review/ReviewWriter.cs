using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Notebooks;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Review;

/// <summary>Fills a result folder: tables and pages, then the executed notebooks.</summary>
internal sealed class ReviewWriter
{
    private readonly FarmFolder farm;
    private readonly SeasonReview season;
    private readonly List<KeyValuePair<string, string>> settings;
    private readonly bool skipBadRows;
    private readonly Terminal terminal;

    internal ReviewWriter(
        FarmFolder farm,
        SeasonReview season,
        List<KeyValuePair<string, string>> settings,
        bool skipBadRows,
        Terminal terminal
    )
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

    /// <summary>Writes pages and tables, as one set.</summary>
    internal void WritePages(string folder, CancellationToken cancellation)
    {
        Task tables = Task.Run(() => WriteTables(folder), cancellation);
        foreach (ReviewPage page in ReviewBook.Pages(ReviewedFarm.Of(farm, season.CropYear), cancellation))
        {
            string file = Path.Combine([folder, .. page.Path.Split('/')]);
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllText(file, page.Html);
        }

        tables.GetAwaiter().GetResult();
    }

    /// <summary>Executes the notebooks and writes them.</summary>
    /// <returns>What went wrong: the notebooks that stopped, each with the reason; none when all are there.</returns>
    internal async Task<IReadOnlyList<string>> WriteNotebooksAsync(string folder, CancellationToken cancellation)
    {
        string[] notebooks = [.. ShippedNotebooks.Find()];
        IReadOnlyList<NotebookRun> runs = await RunAsync(notebooks, cancellation).ConfigureAwait(false);
        string executed = Directory.CreateDirectory(Path.Combine(folder, "notebooks")).FullName;
        List<string> stopped = [];
        foreach ((string notebook, NotebookRun run) in notebooks.Zip(runs))
        {
            if (run.Failure is { } failure)
            {
                stopped.Add($"{Path.GetFileName(notebook)} stopped: {failure}");
            }
            else
            {
                run.Document.WithoutSvg().Save(Path.Combine(executed, Path.GetFileName(notebook)));
            }
        }

        return stopped;
    }

    /// <summary>What a grower reads in the terminal when the review is done.</summary>
    internal IReadOnlyList<string> Summary() => ReviewSummary.Of(farm, season);

    /// <summary>What every notebook is told of a run.</summary>
    internal static Dictionary<string, object> Parameters(
        FarmFolder farm,
        int cropYear,
        List<KeyValuePair<string, string>> settings,
        bool skipBadRows
    ) =>
        new()
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
        return await NotebookChildProcess
            .RunAllAsync(
                notebooks.Select(path => new NotebookJob(path, parameters, options)).ToList(),
                parallel: 2,
                cancellation: cancellation
            )
            .ConfigureAwait(false);
    }

    private sealed class CellSteps(Terminal terminal) : IProgress<CellProgress>
    {
        public void Report(CellProgress value) =>
            terminal.Detail($"Running {Path.GetFileNameWithoutExtension(value.Notebook)}: cell {value.Cell} of {value.Of}");
    }
}
