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

    // Answers for the first page are worked out one at a time, so that a child is free for whoever asks for something.
    private readonly SemaphoreSlim behind = new(1);

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
    internal PageRun Get(NotebookEntry notebook, string key, IReadOnlyDictionary<string, object> parameters, bool urgent = true)
    {
        lock (gate)
        {
            // One that was only to be worked out beforehand and still waits is too slow for a reader.
            return Ended(key)
                ?? runs.FirstOrDefault(run =>
                    run.Key == key && !run.Now.HasEnded && (run.IsUrgent || !urgent || run.Now.State == RunState.Running))
                ?? Start(notebook, key, parameters, urgent);
        }
    }

    /// <summary>A run of its own for someone who asked for it; only a whole page that is there already spares it.</summary>
    internal PageRun Again(NotebookEntry notebook, string key, IReadOnlyDictionary<string, object> parameters)
    {
        lock (gate)
        {
            return runs.FirstOrDefault(run => run.Key == key && run.Now.State == RunState.Done)
                ?? Start(notebook, key, parameters, urgent: true);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await ends.CancelAsync().ConfigureAwait(false);
        await workers.DisposeAsync().ConfigureAwait(false);
        ends.Dispose();
        behind.Dispose();
    }

    private PageRun Start(NotebookEntry notebook, string key, IReadOnlyDictionary<string, object> parameters, bool urgent)
    {
        PageRun run = new(Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(8)), key, ends.Token) { IsUrgent = urgent };
        runs.AddFirst(run);
        Tidy();
        NotebookRunOptions limits = new()
        {
            CellTimeLimit = options.CellTimeLimit,
            TotalTimeLimit = options.TotalTimeLimit,
            Progress = run,
        };
        NotebookJob job = new(notebook.FilePath, parameters, limits);
        _ = Task.Run(() => RunAsync(run, job, urgent));
        return run;
    }

    // Called within the gate.
    private void Tidy()
    {
        foreach (PageRun old in runs.Where(run => run.IsUrgent && run.Now.State == RunState.Waiting).Skip(MostWaiting))
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

    private async Task RunAsync(PageRun run, NotebookJob job, bool urgent)
    {
        bool queued = false;
        try
        {
            if (!urgent)
            {
                await behind.WaitAsync(run.Cancellation).ConfigureAwait(false);
                queued = true;
                if (Ended(run.Key)?.Now.Result is { } made)
                {
                    // A reader could not wait and has had it worked out meanwhile.
                    run.End(made);
                    return;
                }
            }

            run.End(await workers.RunAsync(job, urgent, run.Cancellation).ConfigureAwait(false));
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
        finally
        {
            if (queued)
            {
                behind.Release();
            }
        }
    }
}
