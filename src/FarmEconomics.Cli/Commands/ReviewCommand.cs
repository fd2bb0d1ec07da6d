using System.CommandLine;
using FarmEconomics.Budgets;
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
            Description = "The folder for the results; written whole or not at all. Only a folder that an earlier review wrote is replaced.",
            HelpName = "DIR",
            DefaultValueFactory = _ => "review",
        };
        Option<string[]> set = CommonOptions.Set();
        Option<bool> skip = CommonOptions.SkipBadRows();
        Command command = new("review", "Review a crop year: open DIR/index.html afterwards.") { folder, year, output, set, skip };
        command.SetAction((parsed, cancellation) =>
            RunAsync(parsed.GetValue(folder)!, parsed.GetValue(year), parsed.GetValue(output)!, parsed.GetValue(set), parsed.GetValue(skip), cancellation));
        return command;
    }

    private static async Task<int> RunAsync(string folder, int? year, string output, string[]? set, bool skip, CancellationToken cancellation)
    {
        Terminal terminal = new();
        FarmFolder farm = CommonOptions.Open(folder, set, skip, terminal);
        if (farm.Review is not { } review)
        {
            CommonOptions.PrintProblems(farm, Console.Error);
            await Console.Error.WriteLineAsync(skip
                ? "No result was made: the errors above can't be skipped row by row."
                : "No result was made. Mend the errors, or use --skip-bad-rows to leave those rows out.").ConfigureAwait(false);
            return ExitCode.RecordsInError;
        }

        int cropYear = CommonOptions.YearOf(review, year);
        SeasonReview season = review.Season(cropYear);
        CommonOptions.PrintSkipped(farm, Console.Error);
        using OutputFolder results = OutputFolder.Start(output, folder);
        ReviewWriter writer = new(farm, season, CommonOptions.Settings(set), skip, terminal);
        bool complete = await writer.WriteAsync(results.Path, cancellation).ConfigureAwait(false);
        terminal.Clear();
        if (!complete)
        {
            return ExitCode.RecordsInError;
        }

        results.SwapIn();
        foreach (string sentence in writer.Summary())
        {
            await Console.Out.WriteLineAsync(sentence).ConfigureAwait(false);
        }

        await Console.Out.WriteLineAsync($"Open {Path.Combine(output, "index.html")}").ConfigureAwait(false);
        return ExitCode.Done;
    }
}
