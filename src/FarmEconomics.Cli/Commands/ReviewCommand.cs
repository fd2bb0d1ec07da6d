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
        Option<string> output = new("--out")
        {
            Description = "The folder for the results; written whole or not at all. Only what an earlier review wrote is replaced.",
            HelpName = "DIR",
            DefaultValueFactory = _ => "review",
        };
        Option<string[]> set = CommonOptions.Set();
        Option<bool> skip = CommonOptions.SkipBadRows();
        Option<bool> tablesOnly = new("--tables-only") { Description = "The tables alone, without pages and notebooks: about a second. What review-all does for each farm." };
        Command command = new("review", "Review a crop year: open DIR/index.html afterwards.") { folder, year, output, set, skip, tablesOnly };
        command.SetAction((parsed, cancellation) => RunAsync(
            parsed.GetValue(folder)!,
            parsed.GetValue(output)!,
            new FarmRunOptions(parsed.GetValue(year), CommonOptions.Settings(parsed.GetValue(set)), parsed.GetValue(skip), Pages: !parsed.GetValue(tablesOnly)),
            set: parsed.GetValue(set),
            cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string folder, string output, FarmRunOptions options, string[]? set, CancellationToken cancellation)
    {
        Terminal terminal = new();
        CommonOptions.RequireRecords(folder);

        // Taken before the records are read: whoever changes them meanwhile has them reviewed again.
        string key = options.Pages ? "" : options.Key(folder);
        FarmFolder farm = CommonOptions.Open(folder, set, options.SkipBadRows, terminal);
        if (CommonOptions.ReviewOrProblems(farm, options.SkipBadRows) is not { } review)
        {
            return ExitCode.RecordsInError;
        }

        SeasonReview season = review.Season(CommonOptions.YearOf(review, options.Year));
        CommonOptions.PrintSkipped(farm, Console.Error);
        using OutputFolder results = OutputFolder.Start(new OutputPlace(output, OutputPlace.Review), folder);
        ReviewWriter writer = new(farm, season, options.Settings, options.SkipBadRows, terminal);
        IReadOnlyList<string> stopped = [];
        if (options.Pages)
        {
            stopped = await writer.WriteAsync(results.Path, cancellation).ConfigureAwait(false);
        }
        else
        {
            FarmRun.WriteTables(results.Path, key, farm, season, writer);
        }

        terminal.Clear();
        if (stopped.Count > 0)
        {
            await Console.Error.WriteLineAsync(string.Join(Environment.NewLine, [.. stopped, "No result was written."])).ConfigureAwait(false);
            return ExitCode.RecordsInError;
        }

        results.SwapIn();
        foreach (string sentence in writer.Summary())
        {
            await Console.Out.WriteLineAsync(sentence).ConfigureAwait(false);
        }

        await Console.Out.WriteLineAsync(options.Pages ? $"Open {Path.Combine(output, "index.html")}" : $"The tables are in {Path.Combine(output, "tables")}").ConfigureAwait(false);
        return ExitCode.Done;
    }
}
