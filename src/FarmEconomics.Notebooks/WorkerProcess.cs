using System.Diagnostics;
using System.Text;
using FarmEconomics.Records;

namespace FarmEconomics.Notebooks;

/// <summary>The parent's side of one child process.</summary>
internal sealed class WorkerProcess : IAsyncDisposable
{
    // Beyond the notebook's own limit, which the child watches itself: its start, and writing the file.
    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(20);
    private static readonly TimeSpan MemoryGlance = TimeSpan.FromMilliseconds(200);

    private readonly Process process;
    private readonly Task<string> errors;
    private readonly Timer? memoryWatch;
    private string? overMemory;

    private WorkerProcess(Process process, long? memoryLimit)
    {
        this.process = process;
        if (memoryLimit is { } most)
        {
            memoryWatch = new Timer(_ => EndOver(most), null, MemoryGlance, MemoryGlance);
        }

        errors = LastLinesAsync(process.StandardError);
    }

    /// <summary>Whether it can take another notebook.</summary>
    public bool IsUsable { get; private set; } = true;

    /// <summary>How much memory it holds now, in bytes; 0 when it has ended.</summary>
    public long MemoryInUse
    {
        get
        {
            try
            {
                process.Refresh();
                return process.HasExited ? 0 : process.WorkingSet64;
            }
            catch (InvalidOperationException)
            {
                return 0;
            }
        }
    }

    /// <summary>Starts a child.</summary>
    /// <param name="command">How.</param>
    /// <param name="memoryLimit">The most memory it may use, in bytes; then it is ended. Null: as much as there is.</param>
    public static WorkerProcess Start(WorkerCommand command, long? memoryLimit = null)
    {
        ProcessStartInfo start = new(command.FileName, command.Arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            StandardInputEncoding = new UTF8Encoding(false),
            StandardOutputEncoding = new UTF8Encoding(false),
            StandardErrorEncoding = new UTF8Encoding(false),
            UseShellExecute = false,
        };
        start.Environment["DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT"] = "1";
        return new(Process.Start(start) ?? throw new NotebookException($"{command.FileName} did not start"), memoryLimit);
    }

    /// <summary>Has the child run a notebook; comes back whatever happens to the child.</summary>
    public async Task<NotebookRun> RunAsync(NotebookJob job, NotebookDocument prepared, string output, CancellationToken cancellation) =>
        PrivatePaths.Without(await RunAsGivenAsync(job, prepared, output, cancellation).ConfigureAwait(false), job.Parameters);

    private async Task<NotebookRun> RunAsGivenAsync(
        NotebookJob job, NotebookDocument prepared, string output, CancellationToken cancellation)
    {
        Stopwatch clock = Stopwatch.StartNew();
        CellReached reached = new();
        string why;
        using CancellationTokenSource limit = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        limit.CancelAfter(job.Options.TotalTimeLimit + Grace);
        try
        {
            if (await ReportsAsync(job, output, reached, limit.Token).ConfigureAwait(false) is { } done)
            {
                IsUsable = done.Failure is null;
                return new NotebookRun(Written(output, prepared), done.Failure, done.Warnings, clock.Elapsed);
            }

            IsUsable = false;
            await process.WaitForExitAsync(limit.Token).ConfigureAwait(false);
            why = await WhyEndedAsync().ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            string seconds = Notation.Default.Text($"{job.Options.TotalTimeLimit.TotalSeconds:0.#}");
            why = $"stopped after {seconds} s, the time allowed for the whole notebook";
        }
        catch (Exception fault) when (fault is IOException or TimeoutException)
        {
            why = overMemory ?? "the notebook's process ended" + (fault is IOException ? $": {fault.Message}" : "");
        }
        finally
        {
            if (cancellation.IsCancellationRequested)
            {
                GiveUp();
            }
        }

        GiveUp();
        return Lost(prepared, output, reached.Cell, why, clock.Elapsed);
    }

    private static NotebookDocument Written(string output, NotebookDocument prepared) =>
        File.Exists(output) ? NotebookDocument.Load(output) : prepared;

    private void GiveUp()
    {
        IsUsable = false;
        Kill();
    }

    private async Task<string> WhyEndedAsync()
    {
        string said = await errors.WaitAsync(TimeSpan.FromSeconds(2), CancellationToken.None).ConfigureAwait(false);
        return overMemory ?? $"the notebook's process ended (exit code {process.ExitCode}){(said.Length > 0 ? ": " + said : "")}";
    }

    /// <summary>The last cell begun; -1 before the first.</summary>
    private sealed class CellReached
    {
        internal int Cell { get; set; } = -1;
    }

    /// <summary>Hands the job over and follows it; null when the process ends before it says that it is done.</summary>
    private async Task<WorkerReport?> ReportsAsync(NotebookJob job, string output, CellReached reached, CancellationToken cancellation)
    {
        NotebookRunOptions options = job.Options;
        string path = Path.GetFullPath(job.Notebook);
        WorkerJob message = new(
            path,
            output,
            [.. job.Parameters.Select(p => WorkerParameter.From(p.Key, p.Value))],
            options.WorkingDirectory is null ? null : Path.GetFullPath(options.WorkingDirectory),
            options.CellTimeLimit.TotalSeconds,
            options.TotalTimeLimit.TotalSeconds);
        await process.StandardInput.WriteLineAsync(message.ToLine().AsMemory(), cancellation).ConfigureAwait(false);
        await process.StandardInput.FlushAsync(cancellation).ConfigureAwait(false);
        while (await process.StandardOutput.ReadLineAsync(cancellation).ConfigureAwait(false) is { } line)
        {
            WorkerReport? report = WorkerReport.FromLine(line);
            if (report?.Event == WorkerReport.CellStarts)
            {
                reached.Cell = report.Cell;
                options.Progress?.Report(new CellProgress(path, report.Cell, report.Of));
            }
            else if (report?.Event == WorkerReport.IsDone)
            {
                return report;
            }
        }

        return null;
    }

    public async ValueTask DisposeAsync()
    {
        if (IsUsable)
        {
            try
            {
                // The end of its input is the child's sign to leave.
                process.StandardInput.Close();
            }
            catch (IOException)
            {
                // It has left already.
            }
        }

        using (CancellationTokenSource patience = new(TimeSpan.FromSeconds(3)))
        {
            try
            {
                await process.WaitForExitAsync(patience.Token).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                Kill();
            }
        }

        if (memoryWatch is not null)
        {
            await memoryWatch.DisposeAsync().ConfigureAwait(false);
        }

        process.Dispose();
    }

    // What the child had written after the last whole cell, with the reason at the cell it was in.
    private static NotebookRun Lost(NotebookDocument prepared, string output, int cell, string why, TimeSpan elapsed)
    {
        NotebookDocument document = Written(output, prepared);
        IReadOnlyList<NotebookCell> cells = document.Cells;
        int index = -1;
        for (int i = 0, number = 0; i < cells.Count && index < 0; i++)
        {
            if (cells[i].IsCode)
            {
                int shown = cells[i].Tags.Contains(NotebookParameters.InjectedTag) ? 0 : ++number;
                index = shown == cell ? i : -1;
            }
        }

        if (index >= 0)
        {
            cells[index]
                .SetOutputs(
                    [
                        .. cells[index].Outputs.Select(o => (System.Text.Json.Nodes.JsonObject)o.DeepClone()),
                        CellOutputs.Error("ProcessEnded", why),
                    ],
                    null
                );
        }

        return new NotebookRun(document, new NotebookFailure(index, cell, why), [], elapsed);
    }

    private static async Task<string> LastLinesAsync(StreamReader reader)
    {
        Queue<string> last = new();
        while (await reader.ReadLineAsync().ConfigureAwait(false) is { } line)
        {
            if (line.Length > 0)
            {
                last.Enqueue(line.Trim());
            }

            if (last.Count > 5)
            {
                last.Dequeue();
            }
        }

        return string.Join(" / ", last);
    }

    // Sampled, not enforced by the system: the same on every system, and a cell that takes a gigabyte needs longer than a glance.
    private void EndOver(long most)
    {
        try
        {
            process.Refresh();
            if (!process.HasExited && process.WorkingSet64 > most)
            {
                overMemory = Notation.Default.Text($"stopped at {most / 1048576.0:0} MB of memory, the most a notebook may use");
                Kill();
            }
        }
        catch (InvalidOperationException)
        {
            // It has ended already.
        }
    }

    private void Kill()
    {
        try
        {
            process.Kill(entireProcessTree: true);
        }
        catch (InvalidOperationException)
        {
            // It has ended already.
        }
    }
}
