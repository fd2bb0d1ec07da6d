namespace FarmEconomics.Notebooks;

/// <summary>Limits for the child processes of <see cref="NotebookWorkers"/>.</summary>
public sealed record NotebookWorkersOptions
{
    /// <summary>How to start a child; by default this same program.</summary>
    public WorkerCommand? Command { get; init; }

    /// <summary>How many notebooks may run at the same time, each in a process of its own.</summary>
    public int Most { get; init; } = 2;

    /// <summary>The most memory a child may use, in bytes.</summary>
    public long MemoryLimit { get; init; } = 2L << 30;
}

/// <summary>Child processes that stay ready between notebooks, for a program that runs them as they are asked for.</summary>
/// <remarks>
/// A child runs one notebook at a time, each with a kernel of its own. A run that is called off, runs over its time or takes too much
/// memory ends its child, never this process; the next run gets a new one. Safe to use from several threads.
/// </remarks>
public sealed class NotebookWorkers : IAsyncDisposable
{
    private readonly NotebookWorkersOptions options;
    private readonly WorkerCommand command;
    private readonly NewestFirst slots;
    private readonly Stack<WorkerProcess> ready = new();
    private readonly WorkFolder folder = new();
    private int runs;
    private bool ended;

    /// <summary>Makes ready to run; no child is started yet.</summary>
    public NotebookWorkers(NotebookWorkersOptions? options = null)
    {
        this.options = options ?? new();
        command = this.options.Command ?? WorkerCommand.SameProgram();
        slots = new NewestFirst(this.options.Most);
    }

    /// <summary>Runs a notebook; it waits while all children are busy, and goes before those that wait already.</summary>
    /// <param name="job">The notebook.</param>
    /// <param name="cancellation">Calls the run off and ends the child it runs in.</param>
    /// <exception cref="NotebookException">The notebook can't be read, or takes no such parameters.</exception>
    /// <exception cref="OperationCanceledException">It was called off.</exception>
    public async Task<NotebookRun> RunAsync(NotebookJob job, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(job);
        NotebookDocument prepared = NotebookChildProcess.Prepare(job);
        using IDisposable slot = await slots.TakeAsync(cancellation).ConfigureAwait(false);
        WorkerProcess worker = Take();
        string output = Path.Combine(folder.FullName, $"{Interlocked.Increment(ref runs)}.ipynb");
        try
        {
            return await worker.RunAsync(job, prepared, output, cancellation).ConfigureAwait(false);
        }
        finally
        {
            File.Delete(output);
            await GiveBackAsync(worker).ConfigureAwait(false);
        }
    }

    /// <summary>Ends the children.</summary>
    public async ValueTask DisposeAsync()
    {
        WorkerProcess[] last;
        lock (ready)
        {
            ended = true;
            last = [.. ready];
            ready.Clear();
        }

        await Task.WhenAll(last.Select(worker => worker.DisposeAsync().AsTask())).ConfigureAwait(false);
        folder.Dispose();
    }

    private WorkerProcess Take()
    {
        lock (ready)
        {
            ObjectDisposedException.ThrowIf(ended, this);
            return ready.TryPop(out WorkerProcess? worker) ? worker : WorkerProcess.Start(command, options.MemoryLimit);
        }
    }

    private async Task GiveBackAsync(WorkerProcess worker)
    {
        lock (ready)
        {
            // What a kernel compiled stays in its process: one that has grown makes room for a new one before it meets the limit.
            if (worker.IsUsable && !ended && worker.MemoryInUse < options.MemoryLimit / 2)
            {
                ready.Push(worker);
                return;
            }
        }

        await worker.DisposeAsync().ConfigureAwait(false);
    }

    /// <summary>
    /// So many may go on at once; of those that wait the newest goes first: what a reader asked for last is what they look at.
    /// </summary>
    private sealed class NewestFirst(int free)
    {
        private readonly LinkedList<TaskCompletionSource<IDisposable>> waits = new();
        private int free = free;

        public async Task<IDisposable> TakeAsync(CancellationToken cancellation)
        {
            TaskCompletionSource<IDisposable> waiting = new(TaskCreationOptions.RunContinuationsAsynchronously);
            LinkedListNode<TaskCompletionSource<IDisposable>> place;
            lock (waits)
            {
                if (free > 0)
                {
                    free--;
                    return new Slot(this);
                }

                place = waits.AddFirst(waiting);
            }

            using (cancellation.Register(() => GiveUp(place, cancellation)))
            {
                return await waiting.Task.ConfigureAwait(false);
            }
        }

        private void GiveUp(LinkedListNode<TaskCompletionSource<IDisposable>> place, CancellationToken cancellation)
        {
            lock (waits)
            {
                place.List?.Remove(place);
            }

            place.Value.TrySetCanceled(cancellation);
        }

        private void Free()
        {
            lock (waits)
            {
                while (waits.First is { } next)
                {
                    waits.Remove(next);
                    // One that was called off meanwhile doesn't take it.
                    if (next.Value.TrySetResult(new Slot(this)))
                    {
                        return;
                    }
                }

                free++;
            }
        }

        private sealed class Slot(NewestFirst owner) : IDisposable
        {
            private int given;

            public void Dispose()
            {
                if (Interlocked.Exchange(ref given, 1) == 0)
                {
                    owner.Free();
                }
            }
        }
    }
}
