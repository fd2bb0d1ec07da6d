using System.CommandLine;
using FarmEconomics.Budgets;
using FarmEconomics.Cli.Many;
using FarmEconomics.Cli.Review;
using FarmEconomics.Files;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>review FOLDER</c>: the whole line, from records to pages, notebooks and tables.</summary>
internal static class ReviewCommand
{
    internal static Command Create()
    {
        Argument<string> folder = CommonOptions.Folder();
        Option<int?> year = CommonOptions.Year();
        Option<string> output = OptionRules.Text("--out", "DIR", "review",
            "The folder for the results; written whole or not at all. Only what an earlier review wrote is replaced.");
        Option<string[]> set = CommonOptions.Set();
        Option<bool> skip = CommonOptions.SkipBadRows();
        Option<bool> tablesOnly = OptionRules.Flag("--tables-only",
            "The tables alone, without pages and notebooks: about a second. What review-all does for each farm.");
        Option<bool> noNotebooks = OptionRules.Flag("--no-notebooks",
            "Leave the executed notebooks out: pages and tables take about a second.");
        Command command = new("review", "Review a crop year: open DIR/index.html afterwards.")
        {
            folder,
            year,
            output,
            set,
            skip,
            tablesOnly,
            noNotebooks,
        };
        command.SetAction(
            (parsed, cancellation) =>
                RunAsync(
                    parsed.GetValue(folder)!,
                    parsed.GetValue(output)!,
                    new FarmRunOptions(
                        parsed.GetValue(year),
                        CommonOptions.Settings(parsed.GetValue(set)),
                        parsed.GetValue(skip),
                        Pages: !parsed.GetValue(tablesOnly)
                    ),
                    new ReviewExtras(parsed.GetValue(set), !parsed.GetValue(noNotebooks)),
                    cancellation
                )
        );
        return command;
    }

    /// <summary>What a review of one farm may be asked beside what every run is.</summary>
    /// <param name="Set">The settings as they were typed.</param>
    /// <param name="Notebooks">Whether the notebooks are executed.</param>
    private sealed record ReviewExtras(string[]? Set, bool Notebooks);

    private static async Task<int> RunAsync(
        string folder, string output, FarmRunOptions options, ReviewExtras extras, CancellationToken cancellation)
    {
        Terminal terminal = new();
        CommonOptions.RequireRecords(folder);

        // Taken before the records are read: whoever changes them meanwhile has them reviewed again.
        string key = options.Pages ? "" : options.Key(folder);
        FarmFolder farm = CommonOptions.Open(folder, extras.Set, options.SkipBadRows, terminal);
        if (CommonOptions.ReviewOrProblems(farm, options.SkipBadRows) is not { } review)
        {
            return ExitCode.RecordsInError;
        }

        SeasonReview season = review.Season(CommonOptions.YearOf(review, options.Year));
        CommonOptions.PrintSkipped(farm, Console.Error);
        OutputPlace place = new(output, OutputPlace.Review);
        ReviewWriter writer = new(farm, season, options.Settings, options.SkipBadRows, terminal);
        using (OutputFolder results = OutputFolder.Start(place, folder))
        {
            if (options.Pages)
            {
                writer.WritePages(results.Path, cancellation);
            }
            else
            {
                FarmRun.WriteTables(results.Path, key, farm, season, writer);
            }

            terminal.Clear();
            results.SwapIn();
        }

        await SayAsync(writer.Summary()).ConfigureAwait(false);
        string where = options.Pages ? $"Open {Path.Combine(output, "index.html")}" : $"The tables are in {Path.Combine(output, "tables")}";
        await SayAsync([where]).ConfigureAwait(false);
        return options.Pages && extras.Notebooks
            ? await AddNotebooksAsync(place, folder, writer, terminal, cancellation).ConfigureAwait(false)
            : ExitCode.Done;
    }

    // A second set: pages and tables stand already, whole, whatever happens to the notebooks.
    private static async Task<int> AddNotebooksAsync(
        OutputPlace place,
        string folder,
        ReviewWriter writer,
        Terminal terminal,
        CancellationToken cancellation
    )
    {
        using OutputFolder results = OutputFolder.Start(place, folder);
        results.TakeOver();
        IReadOnlyList<string> stopped = await writer.WriteNotebooksAsync(results.Path, cancellation).ConfigureAwait(false);
        terminal.Clear();
        if (stopped.Count > 0)
        {
            await Console
                .Error.WriteLineAsync(
                    string.Join(Environment.NewLine, [.. stopped, "Pages and tables are there; no notebooks were written."])
                )
                .ConfigureAwait(false);
            return ExitCode.RecordsInError;
        }

        results.SwapIn();
        await SayAsync(["The notebooks, executed, are in " + Path.Combine(place.Given, "notebooks")]).ConfigureAwait(false);
        return ExitCode.Done;
    }

    private static async Task SayAsync(IEnumerable<string> lines)
    {
        foreach (string line in lines)
        {
            await Console.Out.WriteLineAsync(line).ConfigureAwait(false);
        }
    }
}
