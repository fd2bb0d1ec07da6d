using System.Security.Cryptography;
using FarmEconomics.Notebooks;

namespace FarmEconomics.Page.Runs;

/// <summary>All runs: starts them in child processes, keeps the last pages, and lets them be called off.</summary>
internal sealed class RunBoard : IAsyncDisposable
{
    private const int Most = 60;

    // More pages than these nobody waits for: of all that wait for their turn the oldest go.
    private const int MostWaiting = 8;
    private readonly Lock gate = new();
    private readonly LinkedList<PageRun> runs = new();
    private readonly NotebookWorkers workers;
    private readonly PageServerOptions options;
    private readonly CancellationTokenSource ends = new();

    internal RunBoard(PageServerOptions options)
    {
        this.options = options;
        workers = new NotebookWorkers(options.Workers);
    }

    /// <summary>The run with this name, or null.</summary>
    internal PageRun? Find(string id)
    {
        lock (gate)
        {
            return runs.FirstOrDefault(run => run.Id == id);
        }
    }

    /// <summary>The last run of a key that has ended with a page, or null.</summary>
    internal PageRun? Ended(string key)
    {
        lock (gate)
        {
            return runs.FirstOrDefault(run => run.Key == key && run.Now.Result is not null);
        }
    }

    /// <summary>The page of a key: one that is there, one on its way, or a new run.</summary>
    internal PageRun Get(NotebookEntry notebook, string key, IReadOnlyDictionary<string, object> parameters)
    {
        lock (gate)
        {
            return Ended(key)
                ?? runs.FirstOrDefault(run => run.Key == key && !run.Now.HasEnded)
                ?? Start(notebook, key, parameters);
        }
    }

    /// <summary>A run of its own for someone who asked for it; only a whole page that is there already spares it.</summary>
    internal PageRun Again(NotebookEntry notebook, string key, IReadOnlyDictionary<string, object> parameters)
    {
        lock (gate)
        {
            return runs.FirstOrDefault(run => run.Key == key && run.Now.State == RunState.Done)
                ?? Start(notebook, key, parameters);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await ends.CancelAsync().ConfigureAwait(false);
        await workers.DisposeAsync().ConfigureAwait(false);
        ends.Dispose();
    }

    private PageRun Start(NotebookEntry notebook, string key, IReadOnlyDictionary<string, object> parameters)
    {
        PageRun run = new(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(8)), key, ends.Token);
        runs.AddFirst(run);
        Tidy();
        NotebookRunOptions limits = new()
        {
            CellTimeLimit = options.CellTimeLimit,
            TotalTimeLimit = options.TotalTimeLimit,
            Progress = run,
        };
        NotebookJob job = new(notebook.FilePath, parameters, limits);
        _ = Task.Run(() => RunAsync(run, job));
        return run;
    }

    // Called within the gate.
    private void Tidy()
    {
        foreach (PageRun old in runs.Where(run => run.Now.State == RunState.Waiting).Skip(MostWaiting))
        {
            old.CallOff("Called off before its turn: newer pages were asked for. Load this page again to see it.");
        }

        for (LinkedListNode<PageRun>? last = runs.Last, before; runs.Count > Most && last is not null; last = before)
        {
            before = last.Previous;
            if (last.Value.Now.HasEnded)
            {
                runs.Remove(last);
            }
        }
    }

    private async Task RunAsync(PageRun run, NotebookJob job)
    {
        try
        {
            run.End(await workers.RunAsync(job, run.Cancellation).ConfigureAwait(false));
        }
        catch (OperationCanceledException)
        {
            run.EndCalledOff();
        }
#pragma warning disable CA1031 // Do not catch general exception types: what happens to a run is said on its page, and the server goes on
        catch (Exception fault)
#pragma warning restore CA1031
        {
            run.Fail(fault.Message);
        }
    }
}
