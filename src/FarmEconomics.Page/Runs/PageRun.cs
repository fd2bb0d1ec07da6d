using FarmEconomics.Notebooks;

namespace FarmEconomics.Page.Runs;

/// <summary>One run of a notebook for a page. Safe to use from several threads.</summary>
internal sealed class PageRun : IProgress<CellProgress>, IDisposable
{
    private readonly CancellationTokenSource cancellation;
    private readonly TaskCompletionSource ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Lock gate = new();
    private volatile RunStanding now;
    private string? calledOffBecause;

    internal PageRun(string id, string key, CancellationToken serverEnds)
    {
        Id = id;
        Key = key;
        now = new RunStanding(id, RunState.Waiting);
        cancellation = CancellationTokenSource.CreateLinkedTokenSource(serverEnds);
    }

    /// <summary>A random name, so that one window can't guess another's.</summary>
    internal string Id { get; }

    /// <summary>Notebook, values and records: equal keys give equal pages.</summary>
    internal string Key { get; }

    /// <summary>How it stands now, as one whole: a reader never sees a run that has ended and has no page yet.</summary>
    internal RunStanding Now => now;

    /// <summary>Ends when the run has.</summary>
    internal Task Ended => ended.Task;

    internal CancellationToken Cancellation => cancellation.Token;

    public void Report(CellProgress value) => Change(known => known with { State = RunState.Running, Cell = value.Cell, Of = value.Of });

    internal void End(NotebookRun result) =>
        Change(known =>
            known with
            {
                State = result.Succeeded ? RunState.Done : RunState.Failed,
                Result = result,
                Why = result.Failure?.ToString(),
            }
        );

    internal void Fail(string why) => Change(known => known with { State = RunState.Failed, Why = why });

    internal void EndCalledOff() => Change(known => known with { State = RunState.CalledOff, Why = calledOffBecause });

    /// <summary>Calls it off; the first reason given stays.</summary>
    internal void CallOff(string? why = null)
    {
        Interlocked.CompareExchange(ref calledOffBecause, why, null);
        cancellation.Cancel();
    }

    public void Dispose() => cancellation.Dispose();

    private void Change(Func<RunStanding, RunStanding> change)
    {
        lock (gate)
        {
            // A step that is told of late doesn't bring back a run that has ended.
            if (!now.HasEnded)
            {
                now = change(now);
            }
        }

        if (now.HasEnded)
        {
            ended.TrySetResult();
        }
    }
}
