using FarmEconomics.Budgets;
using FarmEconomics.Cli.Commands;
using FarmEconomics.Cli.Review;
using FarmEconomics.Files;
using FarmEconomics.Files.Results;
using FarmEconomics.Records;

namespace FarmEconomics.Cli.Many;

/// <summary>How farms are reviewed; the same for all of a run.</summary>
/// <param name="Year">The crop year, or null for each farm's season just ended.</param>
/// <param name="Settings">Settings before those of the farm table.</param>
/// <param name="SkipBadRows">Leave rows in error out.</param>
/// <param name="Pages">Pages and notebooks as well as tables.</param>
internal sealed record FarmRunOptions(int? Year, List<KeyValuePair<string, string>> Settings, bool SkipBadRows, bool Pages)
{
    // Changes with every change of the code, so that results of an older program are made again.
    private static readonly string Engine = string.Join('-', new[] { typeof(SeasonReview), typeof(FarmFolder), typeof(FarmRun) }
        .Select(type => type.Assembly.ManifestModule.ModuleVersionId.ToString("N")[..12]));

    /// <summary>What the results of these records depend on.</summary>
    internal string Key(string records) =>
        string.Join(
            "; ",
            [
                $"records {RecordsFingerprint.Of(records)}",
                $"program {Engine}",
                $"year {Year?.ToString() ?? "latest"}",
                $"skip bad rows {(SkipBadRows ? "yes" : "no")}",
                $"pages {(Pages ? "yes" : "no")}",
                .. Settings.Select(pair => $"{pair.Key}={pair.Value}"),
            ]
        );
}

/// <summary>How it went with one farm of many.</summary>
/// <param name="Status">done, not proven, failed or empty.</param>
/// <param name="Reason">Why it isn't done; null when it is.</param>
/// <param name="WasThere">True: its results were there already, of the same records.</param>
/// <param name="NotSaved">What could not be written into its results, or null.</param>
internal sealed record FarmOutcome(string Status, string? Reason, bool WasThere, FarmRecord? NotSaved)
{
    internal static FarmOutcome Of(FarmRecord record, bool wasThere = false) => new(record.Status, record.Reason, wasThere, null);
}

/// <summary>Reviews one farm of many; nothing that is wrong with it gets past here.</summary>
internal static class FarmRun
{
    internal const string Done = "done";
    internal const string NotProven = "not proven";
    internal const string Failed = "failed";
    internal const string Empty = "empty";

    /// <summary>Reviews a farm, unless its results are there already, whole and of these records.</summary>
    /// <param name="place">The farm.</param>
    /// <param name="options">How.</param>
    /// <param name="output">Where its results stand in the end.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <returns>How it went.</returns>
    internal static async Task<FarmOutcome> RunAsync(FarmPlace place, FarmRunOptions options, string output, CancellationToken cancellation)
    {
        string key = "";
        try
        {
            if (place.Fault is { } fault)
            {
                FarmRecord none = Without("", place.IsEmpty ? Empty : Failed, PathWords.Hidden(fault, Path.GetFullPath(place.Records)));
                return FarmOutcome.Of(Save(none, place, output, null));
            }

            key = options.Key(place.Records);
            if (FarmRecord.Read(output, verify: true) is { } before && before.Key == key)
            {
                return FarmOutcome.Of(before, wasThere: true);
            }

            return FarmOutcome.Of(await ReviewAsync(key, place, options, output, cancellation).ConfigureAwait(false));
        }
#pragma warning disable CA1031 // Do not catch general exception types: whatever is wrong with one farm, the others go on, and it is told
        catch (Exception fault) when (fault is not OperationCanceledException && !cancellation.IsCancellationRequested)
#pragma warning restore CA1031
        {
            // Records that can't be made into a result won't be the next time either; a full disk may be.
            string lasting = fault is RecordsException or WrongUseException ? key : "";
            return TrySave(Without(lasting, Failed, PathWords.Hidden(Reason(fault), Path.GetFullPath(place.Records))), place, output);
        }
    }

    /// <summary>Fills a folder with a farm's tables and their record.</summary>
    internal static void WriteTables(string folder, string key, FarmFolder farm, SeasonReview season, ReviewWriter writer)
    {
        writer.WriteTables(folder);
        _ = Finish(folder, key, farm, season);
    }

    private static FarmRecord Finish(string folder, string key, FarmFolder farm, SeasonReview season)
    {
        int lost = season.Reconciliation.Count(check => !check.Holds);
        FarmRecord record = FarmRecord.Of(
            key,
            new FarmResult(
                lost == 0 ? Done : NotProven,
                lost == 0 ? null : $"{lost} of {season.Reconciliation.Count} reconciliation checks do not hold",
                farm,
                season
            )
        );
        record.Write(folder);
        return record;
    }

    /// <summary>The record of a farm without results, with the reason.</summary>
    private static FarmRecord Without(string key, string status, string reason, FarmFolder? farm = null) =>
        FarmRecord.Of(key, new FarmResult(status, reason, farm, null));

    private static async Task<FarmRecord> ReviewAsync(
        string key, FarmPlace place, FarmRunOptions options, string output, CancellationToken cancellation)
    {
        FarmFolder farm = FarmFolder.Open(place.Records, options.Settings, options.SkipBadRows);
        if (farm.Review is not { } review)
        {
            Problem first = farm.Problems.First(problem => problem.Severity == Severity.Error);
            string more = farm.ErrorCount > 1 ? farm.Notation.Text($" (and {farm.ErrorCount - 1:N0} more)") : "";
            string why = $"{first.Source}: {first.Code}: {first.Message}{more}".ReplaceLineEndings(" ");
            return Save(Without(key, Failed, why, farm), place, output, farm);
        }

        if (review.CropYears.Count == 0)
        {
            return Save(Without(key, Empty, "no harvests, sales, hours or expenses of any planting yet", farm), place, output, farm);
        }

        SeasonReview season = review.Season(CommonOptions.YearOf(review, options.Year));
        using OutputFolder results = OutputFolder.Start(new OutputPlace(output, OutputPlace.Review) { IsOneOfMany = true }, place.Records);
        ReviewWriter writer = new(farm, season, options.Settings, options.SkipBadRows, new Terminal(silent: true));
        if (!options.Pages)
        {
            writer.WriteTables(results.Path);
        }
        else
        {
            writer.WritePages(results.Path, cancellation);
            IReadOnlyList<string> stopped = await writer.WriteNotebooksAsync(results.Path, cancellation).ConfigureAwait(false);
            if (stopped.Count > 0)
            {
                throw new IOException(string.Join("; ", stopped));
            }
        }

        FarmRecord record = Finish(results.Path, key, farm, season);
        results.SwapIn();
        return record;
    }

    /// <summary>Results that say why there are none, in place of what an earlier run wrote of other records.</summary>
    private static FarmRecord Save(FarmRecord record, FarmPlace place, string output, FarmFolder? farm)
    {
        using OutputFolder results = OutputFolder.Start(new OutputPlace(output, OutputPlace.Review) { IsOneOfMany = true }, place.Records);
        if (farm is not null)
        {
            ResultTables.WriteProblems(
                farm.Problems,
                farm.Notation,
                Path.Combine(Directory.CreateDirectory(Path.Combine(results.Path, "tables")).FullName, "problems.csv")
            );
        }

        record.Write(results.Path);
        results.SwapIn();
        return record;
    }

    private static FarmOutcome TrySave(FarmRecord record, FarmPlace place, string output)
    {
        try
        {
            return FarmOutcome.Of(Save(record, place, output, null));
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or WrongUseException)
        {
            // Its reason is kept in the tables over all farms, if those can be written.
            return FarmOutcome.Of(record) with { NotSaved = record };
        }
    }

    private static string Reason(Exception fault)
    {
        string reason = fault is RecordsException or WrongUseException or IOException or UnauthorizedAccessException
            ? fault.Message
            : $"{fault.GetType().Name}: {fault.Message}";
        return reason.ReplaceLineEndings(" ");
    }
}
