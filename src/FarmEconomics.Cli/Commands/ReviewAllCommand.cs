using System.Collections.Concurrent;
using System.CommandLine;
using FarmEconomics.Cli.Many;
using FarmEconomics.Files.Places;
using FarmEconomics.Records;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Commands;

/// <summary><c>review-all FOLDER --out DIR</c>: many farms, each on its own, and tables over all of them.</summary>
internal static class ReviewAllCommand
{
    /// <summary>Marks a folder as ours; held while a run works in it.</summary>
    private const string Mark = ".farm-review-all";

    private const int FarmsBetweenReports = 100;

    internal static Command Create()
    {
        Argument<string> folder = new("FOLDER") { Description = "The folder that holds a folder or a workbook (.xlsx) per farm." };
        Option<string> output = OptionRules.Text("--out", "DIR", "review-all",
            "The folder for the results: farms/NAME for each farm, summary for the tables over all of them.");
        Option<int?> parallel = OptionRules.Whole("--parallel", "N", 1, 1024, "How many farms at the same time. Default: one per core.");
        Option<int?> year = CommonOptions.Year();
        Option<string[]> set = CommonOptions.Set();
        Option<bool> skip = CommonOptions.SkipBadRows();
        Option<bool> pages = OptionRules.Flag("--pages", "Pages and notebooks for each farm as well; much slower than tables.");
        Command command = new(
            "review-all",
            "Review many farms, each on its own; a farm whose results are there, of the same records, is not done again."
        )
        {
            folder,
            output,
            parallel,
            year,
            set,
            skip,
            pages,
        };
        command.SetAction(
            (parsed, cancellation) =>
                RunAsync(
                    parsed.GetValue(folder)!,
                    parsed.GetValue(output)!,
                    parsed.GetValue(parallel) ?? Environment.ProcessorCount,
                    new FarmRunOptions(
                        parsed.GetValue(year),
                        CommonOptions.Settings(parsed.GetValue(set)),
                        parsed.GetValue(skip),
                        parsed.GetValue(pages)
                    ),
                    cancellation
                )
        );
        return command;
    }

    private static async Task<int> RunAsync(
        string folder, string output, int parallel, FarmRunOptions options, CancellationToken cancellation)
    {
        IReadOnlyList<FarmPlace> places = FarmPlace.In(folder);
        string full = Place(output, folder, places);
        string farms = Path.Combine(full, "farms");
        Directory.CreateDirectory(full);
        using FileHold hold = Hold(full, output);
        Directory.CreateDirectory(farms);
        OutputLeftovers.RemoveAll(farms);
        Terminal terminal = new();
        ConcurrentDictionary<string, FarmOutcome> outcomes = new(StringComparer.Ordinal);
        ParallelOptions limits = new() { MaxDegreeOfParallelism = parallel, CancellationToken = cancellation };
        await Parallel.ForEachAsync(places, limits, async (place, stop) =>
        {
            outcomes[place.Name] = await FarmRun.RunAsync(place, options, Path.Combine(farms, place.Name), stop).ConfigureAwait(false);
            Tell(terminal, outcomes.Count, places.Count);
        }).ConfigureAwait(false);
        terminal.Clear();
        OutputPlace summed = new(Path.Combine(full, "summary"), OutputPlace.Summary) { IsOneOfMany = true };
        using (OutputFolder summary = OutputFolder.Start(summed, folder))
        {
            await SummaryTables
                .WriteAsync(summary.Path, places.Select(place => (place.Name, Record(place, outcomes[place.Name], farms))))
                .ConfigureAwait(false);
            summary.SwapIn();
        }

        await TellFaultsAsync(places, outcomes).ConfigureAwait(false);
        await TellGoneAsync(farms, outcomes, folder, output).ConfigureAwait(false);
        return await TellCountsAsync(places.Count, outcomes, output).ConfigureAwait(false);
    }

    private static async Task TellFaultsAsync(IReadOnlyList<FarmPlace> places, ConcurrentDictionary<string, FarmOutcome> outcomes)
    {
        foreach (FarmPlace place in places)
        {
            if (outcomes[place.Name] is { Reason: { } reason, Status: var status })
            {
                await Console.Error.WriteLineAsync($"{place.Name} ({status}): {reason}").ConfigureAwait(false);
            }
        }
    }

    /// <summary>Names the farms whose results stand there from an earlier run and whose records do not.</summary>
    private static async Task TellGoneAsync(
        string farms, ConcurrentDictionary<string, FarmOutcome> outcomes, string folder, string output)
    {
        string[] gone =
        [
            .. Directory
                .GetDirectories(farms)
                .Select(Path.GetFileName)
                .Where(name => name![0] != '.' && !outcomes.ContainsKey(name))
                .Order(StringComparer.Ordinal)!,
        ];
        if (gone.Length > 0)
        {
            await Console.Error.WriteLineAsync($"Results of {Notation.Default.Count(gone.Length, "farm")} that {folder} doesn't hold any "
                + $"more are left in {Path.Combine(output, "farms")}, and not in the summary: "
                + $"{string.Join(", ", gone.Take(10))}{(gone.Length > 10 ? ", ..." : "")}").ConfigureAwait(false);
        }
    }

    private static async Task<int> TellCountsAsync(int farms, ConcurrentDictionary<string, FarmOutcome> outcomes, string output)
    {
        int Count(string status) => outcomes.Values.Count(outcome => outcome.Status == status);
        int bad = Count(FarmRun.Failed) + Count(FarmRun.NotProven);
        await Console
            .Out.WriteLineAsync(
                Notation.Default.Text(
                    $"{Notation.Default.Count(farms, "farm")}: "
                        + $"{Count(FarmRun.Done):N0} done "
                        + $"({outcomes.Values.Count(outcome => outcome.WasThere && outcome.Status == FarmRun.Done):N0} of them before, "
                        + $"of the same records), "
                        + $"{Count(FarmRun.Failed):N0} failed, {Count(FarmRun.NotProven):N0} not proven, {Count(FarmRun.Empty):N0} empty."
                )
            )
            .ConfigureAwait(false);
        await Console.Out.WriteLineAsync($"The tables over all farms are in {Path.Combine(output, "summary")}.").ConfigureAwait(false);
        return bad == 0 ? ExitCode.Done : ExitCode.RecordsInError;
    }

    /// <summary>
    /// Where the results go: apart from all records, also those that a link in the folder of farms leads to, and in a folder of our own.
    /// </summary>
    private static string Place(string output, string folder, IReadOnlyList<FarmPlace> farms)
    {
        OutputPlace place = new(output, OutputPlace.Summary);
        foreach (string records in farms.Select(farm => farm.Records).Prepend(folder))
        {
            place.RequireApart(records);
        }

        return FolderMark.RequireOwn(place.Full, output, HoldsFarmsAlone(output) ? "farms" : Mark, "review-all");
    }

    /// <summary>True when single reviews have written their results there, as the tasks of a queue do, and nothing else is in it.</summary>
    private static bool HoldsFarmsAlone(string output) =>
        Directory.Exists(output) && Directory.EnumerateFileSystemEntries(output).All(entry => Path.GetFileName(entry) == "farms")
        && Directory.Exists(Path.Combine(output, "farms"))
        && Directory
            .EnumerateFileSystemEntries(Path.Combine(output, "farms"))
            .All(farm => File.Exists(Path.Combine(farm, Files.Results.ResultMark.FileName)));

    private static FileHold Hold(string full, string output)
    {
        string mark = Path.Combine(full, Mark);
        return FileHold.IsHeld(mark)
            ? throw new WrongUseException($"Another review-all is working in {output}, or it can't be written to; nothing was changed.")
            : FileHold.Take(mark, "Written by review-all, which replaces what it wrote here.\n");
    }

    /// <summary>What a farm's results say now: they were written a moment ago, or before.</summary>
    private static FarmRecord Record(FarmPlace place, FarmOutcome outcome, string farms) =>
        outcome.NotSaved ?? FarmRecord.Read(Path.Combine(farms, place.Name), verify: false)
        ?? throw new IOException($"The results of {place.Name} vanished while the tables over all farms were written; run it again.");

    private static void Tell(Terminal terminal, int done, int of)
    {
        if (done % FarmsBetweenReports == 0)
        {
            terminal.Step(Notation.Default.Text($"{done:N0} of {of:N0} farms"));
        }
        else
        {
            terminal.Detail(Notation.Default.Text($"{done:N0} of {of:N0} farms"));
        }
    }
}
