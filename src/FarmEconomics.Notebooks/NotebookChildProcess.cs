using System.Collections.Concurrent;
using System.Reflection;

namespace FarmEconomics.Notebooks;

/// <summary>A notebook to run and with what.</summary>
/// <param name="Notebook">The notebook's path; the file is only read.</param>
/// <param name="Parameters">Values by name: int, decimal, double, string, bool or DateOnly.</param>
/// <param name="Options">Folder, time limits, progress.</param>
public sealed record NotebookJob(string Notebook, IReadOnlyDictionary<string, object> Parameters, NotebookRunOptions Options);

/// <summary>How to start the program that runs the notebooks.</summary>
/// <param name="FileName">The program.</param>
/// <param name="Arguments">Its arguments.</param>
public sealed record WorkerCommand(string FileName, IReadOnlyList<string> Arguments)
{
    /// <summary>This same program with the hidden verb.</summary>
    public static WorkerCommand SameProgram()
    {
        string host = Environment.ProcessPath ?? throw new NotebookException("the program's own path is unknown");
        string name = Path.GetFileNameWithoutExtension(host);
        // Started as `dotnet program.dll`, the process is the runtime's and the program is its first argument.
        return name.Equals("dotnet", StringComparison.OrdinalIgnoreCase) && Assembly.GetEntryAssembly()?.Location is { Length: > 0 } entry
            ? new(host, [entry, NotebookWorker.Verb])
            : new(host, [NotebookWorker.Verb]);
    }
}

/// <summary>Runs notebooks in child processes, so that a cell that never comes back can be ended.</summary>
/// <remarks>
/// Each notebook has a kernel of its own; a child runs several, one after the other, because its start is most of the time.
/// </remarks>
public static class NotebookChildProcess
{
    /// <summary>Runs one notebook.</summary>
    /// <exception cref="NotebookException">The notebook can't be read, or takes no such parameters.</exception>
    public static async Task<NotebookRun> RunAsync(
        NotebookJob job,
        WorkerCommand? command = null,
        CancellationToken cancellation = default
    ) => (await RunAllAsync([job], command, parallel: 1, cancellation).ConfigureAwait(false))[0];

    /// <summary>Runs notebooks, some at the same time; the results stand in the order of the jobs.</summary>
    /// <exception cref="NotebookException">A notebook can't be read, or takes no such parameters; then none is run.</exception>
    public static async Task<IReadOnlyList<NotebookRun>> RunAllAsync(
        IReadOnlyList<NotebookJob> jobs, WorkerCommand? command = null, int parallel = 2, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(jobs);
        ArgumentOutOfRangeException.ThrowIfLessThan(parallel, 1);
        command ??= WorkerCommand.SameProgram();
        NotebookDocument[] prepared = [.. jobs.Select(Prepare)];
        NotebookRun[] results = new NotebookRun[jobs.Count];
        using WorkFolder folder = new();
        string place = folder.FullName;
        ConcurrentQueue<int> waiting = new(Enumerable.Range(0, jobs.Count));
        await Task.WhenAll(Enumerable.Range(0, Math.Min(parallel, jobs.Count)).Select(_ => Task.Run(DrainAsync, cancellation)))
            .ConfigureAwait(false);
        return results;

        async Task DrainAsync()
        {
            WorkerProcess? worker = null;
            try
            {
                while (waiting.TryDequeue(out int next))
                {
                    worker = worker is { IsUsable: true } ? worker : await ReplaceAsync(worker, command).ConfigureAwait(false);
                    string output = Path.Combine(place, $"{next}.ipynb");
                    results[next] = await worker.RunAsync(jobs[next], prepared[next], output, cancellation).ConfigureAwait(false);
                }
            }
            finally
            {
                if (worker is not null)
                {
                    await worker.DisposeAsync().ConfigureAwait(false);
                }
            }
        }
    }

    private static async Task<WorkerProcess> ReplaceAsync(WorkerProcess? old, WorkerCommand command)
    {
        if (old is not null)
        {
            await old.DisposeAsync().ConfigureAwait(false);
        }

        return WorkerProcess.Start(command);
    }

    internal static NotebookDocument Prepare(NotebookJob job)
    {
        NotebookDocument document = NotebookDocument.Load(job.Notebook);
        NotebookParameters.Inject(document, job.Parameters);
        return document;
    }
}
