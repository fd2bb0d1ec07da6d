using FarmEconomics.Notebooks;

namespace FarmEconomics.Page.Runs;

/// <summary>Where a run is.</summary>
internal enum RunState
{
    /// <summary>Others go first.</summary>
    Waiting,

    /// <summary>A cell is being worked out.</summary>
    Running,

    /// <summary>Every cell ran.</summary>
    Done,

    /// <summary>A cell failed, or a limit was met.</summary>
    Failed,

    /// <summary>The reader called it off.</summary>
    CalledOff,
}

/// <summary>One run of a notebook for a page. Safe to use from several threads.</summary>
internal sealed class PageRun : IProgress<CellProgress>, IDisposable
{
    private readonly Lock gate = new();
    private readonly CancellationTokenSource cancellation;
    private TaskCompletionSource changed = new(TaskCreationOptions.RunContinuationsAsynchronously);

    internal PageRun(string id, string key, CancellationToken serverEnds)
    {
        Id = id;
        Key = key;
        cancellation = CancellationTokenSource.CreateLinkedTokenSource(serverEnds);
    }

    /// <summary>A random name, so that one window can't guess another's.</summary>
    internal string Id { get; }

    /// <summary>Notebook, values and records: equal keys give equal pages.</summary>
    internal string Key { get; }

    internal RunState State { get; private set; }

    /// <summary>The code cell being worked out, from 1; 0 before the first.</summary>
    internal int Cell { get; private set; }

    internal int Of { get; private set; }

    /// <summary>What came out, when it has ended and was not called off.</summary>
    internal NotebookRun? Result { get; private set; }

    /// <summary>Why it failed, in words, or null.</summary>
    internal string? Why { get; private set; }

    internal bool HasEnded => State is RunState.Done or RunState.Failed or RunState.CalledOff;

    internal CancellationToken Cancellation => cancellation.Token;

    /// <summary>Ends when something is new.</summary>
    internal Task Changed
    {
        get
        {
            lock (gate)
            {
                return changed.Task;
            }
        }
    }

    public void Report(CellProgress value) => Change(() => (State, Cell, Of) = (RunState.Running, value.Cell, value.Of));

    internal void End(NotebookRun result) => Change(() => (State, Result, Why) = (result.Succeeded ? RunState.Done : RunState.Failed, result, result.Failure?.ToString()));

    internal void Fail(string why) => Change(() => (State, Why) = (RunState.Failed, why));

    internal void EndCalledOff() => Change(() => State = RunState.CalledOff);

    internal void CallOff() => cancellation.Cancel();

    public void Dispose() => cancellation.Dispose();

    private void Change(Action change)
    {
        TaskCompletionSource told;
        lock (gate)
        {
            change();
            told = changed;
            changed = new(TaskCreationOptions.RunContinuationsAsynchronously);
        }

        told.SetResult();
    }
}
