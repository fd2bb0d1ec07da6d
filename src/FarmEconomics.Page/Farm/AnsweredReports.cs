using System.Globalization;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.Page.Farm;

/// <summary>
/// The reports worked out of one state of the records, by season and parameters: asked for again, they are there. One that takes long goes
/// on by itself while the reader looks at the last answer, until somebody asks the same report something else.
/// </summary>
internal sealed class AnsweredReports
{
    /// <summary>A grower goes back and forth between a few pages; each holds its tables and drawings.</summary>
    private const int Most = 40;

    private readonly Lock gate = new();
    private readonly List<(string Key, IReadOnlyList<Block> Blocks)> kept = [];
    private readonly List<Running> running = [];

    /// <summary>A report's blocks, worked out by whoever asks unless they are there.</summary>
    /// <exception cref="ArgumentException">A value the records don't allow.</exception>
    internal IReadOnlyList<Block> Of(
        IReport report, ReviewedFarm farm, IReadOnlyDictionary<string, object> given, CancellationToken cancellation)
    {
        string key = KeyOf(report, farm, given);
        return Kept(key) ?? Keep(key, report.Make(farm, given, cancellation));
    }

    /// <summary>
    /// A report's blocks, worked out beside whoever asks. What the same report was asked before is stopped unless somebody waits for it.
    /// </summary>
    /// <param name="report">The report.</param>
    /// <param name="farm">The farm.</param>
    /// <param name="given">Its parameters.</param>
    /// <param name="patience">How long to wait for it.</param>
    /// <param name="aborted">Whoever waits has gone.</param>
    /// <returns>The blocks; null when they aren't there in that time.</returns>
    /// <exception cref="ArgumentException">A value the records don't allow.</exception>
    internal async Task<IReadOnlyList<Block>?> WithinAsync(
        IReport report, ReviewedFarm farm, IReadOnlyDictionary<string, object> given, TimeSpan patience, CancellationToken aborted)
    {
        Running wanted = Start(report, farm, given);
        try
        {
            await Task.WhenAny(wanted.Task, Task.Delay(patience, aborted)).ConfigureAwait(false);
            aborted.ThrowIfCancellationRequested();
            return wanted.Task.IsCompleted && !wanted.Task.IsCanceled ? await wanted.Task.ConfigureAwait(false) : null;
        }
        finally
        {
            lock (gate)
            {
                wanted.Waiting--;
            }
        }
    }

    private Running Start(IReport report, ReviewedFarm farm, IReadOnlyDictionary<string, object> given)
    {
        string key = KeyOf(report, farm, given);
        lock (gate)
        {
            running.RemoveAll(one => one.Task.IsCompleted);
            Running? wanted = running.Find(one => one.Key == key && !one.Cancel.IsCancellationRequested);
            if (wanted is null)
            {
                foreach (Running idle in running.Where(one => one.Id == report.Id && one.Waiting == 0))
                {
                    idle.Cancel.Cancel();
                }

                CancellationTokenSource cancel = new();
                Task<IReadOnlyList<Block>> task = Kept(key) is { } there
                    ? Task.FromResult(there) : Task.Run(() => Keep(key, report.Make(farm, given, cancel.Token)), cancel.Token);
                running.Add(wanted = new Running(report.Id, key, task, cancel));
            }

            wanted.Waiting++;
            return wanted;
        }
    }

    private IReadOnlyList<Block>? Kept(string key)
    {
        lock (gate)
        {
            return kept.Find(one => one.Key == key).Blocks;
        }
    }

    private IReadOnlyList<Block> Keep(string key, IReadOnlyList<Block> blocks)
    {
        lock (gate)
        {
            kept.RemoveAll(one => one.Key == key);
            kept.Insert(0, (key, blocks));
            if (kept.Count > Most)
            {
                kept.RemoveAt(Most);
            }

            return blocks;
        }
    }

    private static string KeyOf(IReport report, ReviewedFarm farm, IReadOnlyDictionary<string, object> given) =>
        string.Join('\n', given.OrderBy(one => one.Key, StringComparer.Ordinal)
            .Select(one => string.Create(CultureInfo.InvariantCulture, $"{one.Key}={one.Value}{FileSign(one.Value)}"))
            .Prepend($"{report.Id} {(farm.IsReviewed ? farm.Season.CropYear : 0)}"));

    // A value may name a file that lies outside the records, kept scenarios say: what is in it counts.
    private static string FileSign(object value) => value is string { Length: > 0 } path && File.Exists(path)
        ? string.Create(CultureInfo.InvariantCulture, $" {File.GetLastWriteTimeUtc(path).Ticks} {new FileInfo(path).Length}") : "";

    /// <summary>What is being worked out.</summary>
    private sealed class Running(ReportId id, string key, Task<IReadOnlyList<Block>> task, CancellationTokenSource cancel)
    {
        internal ReportId Id => id;

        internal string Key => key;

        internal Task<IReadOnlyList<Block>> Task => task;

        internal CancellationTokenSource Cancel => cancel;

        /// <summary>How many wait for it now.</summary>
        internal int Waiting { get; set; }
    }
}
