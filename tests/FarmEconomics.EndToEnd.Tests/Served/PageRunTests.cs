using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Notebooks;
using FarmEconomics.Page.Runs;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>A run is read by pages while it goes on.</summary>
public sealed class PageRunTests
{
    private static NotebookRun Result(NotebookFailure? failure = null) => new(NotebookDocument.Load(Repository.Sample("season")), failure, [], TimeSpan.Zero);

    [Fact]
    public async Task Run_ReadWhileItEnds_NeverHasEndedWithoutItsPage()
    {
        NotebookRun result = Result();
        for (int i = 0; i < 2000; i++)
        {
            using PageRun run = new("a", "key", CancellationToken.None);
            Task<RunStanding> reader = Task.Run(() =>
            {
                RunStanding seen = run.Now;
                while (!seen.HasEnded)
                {
                    seen = run.Now;
                }

                return seen;
            });
            run.Report(new CellProgress("season", 1, 2));
            run.End(result);
            Assert.Same(result, (await reader).Result);
        }
    }

    [Fact]
    public async Task Ended_IsTold_WhenTheRunHasAndNotBefore()
    {
        using PageRun run = new("a", "key", CancellationToken.None);
        run.Report(new CellProgress("season", 1, 2));
        Assert.False(run.Ended.IsCompleted);
        Assert.Equal((RunState.Running, 1, 2), (run.Now.State, run.Now.Cell, run.Now.Of));

        run.End(Result(new NotebookFailure(3, 2, "no such crop")));

        await run.Ended;
        Assert.Equal((RunState.Failed, "cell 2: no such crop"), (run.Now.State, run.Now.Why));
    }

    [Fact]
    public void StepToldOfLate_DoesNotBringBackARunThatHasEnded()
    {
        using PageRun run = new("a", "key", CancellationToken.None);
        run.End(Result());
        run.Report(new CellProgress("season", 2, 2));
        run.Fail("too late");
        Assert.Equal(RunState.Done, run.Now.State);
        Assert.NotNull(run.Now.Result);
    }
}
