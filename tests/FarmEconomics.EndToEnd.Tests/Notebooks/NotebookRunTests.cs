using System.Text.Json.Nodes;
using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Notebooks;

namespace FarmEconomics.EndToEnd.Tests.Notebooks;

public class NotebookRunTests
{
    [Fact]
    public async Task Season_RunsToItsEnd_WithoutWarnings()
    {
        NotebookRun run = await Runs.Season();
        Assert.Null(run.Failure);
        Assert.Empty(run.Warnings);
        Assert.Empty(Runs.OfKind(run.Document, "error"));
        Assert.Equal("full: False, from 2024-05-01\n", Runs.Printed(run.Document.Cells[^1]));
        Assert.Equal(Enumerable.Range(1, 7), run.Document.Cells.Where(c => c.IsCode).Select(c => (int)c.Json["execution_count"]!));
    }

    [Fact]
    public async Task Season_InThisProcess_GivesTheSameOutputsAsInAChild()
    {
        string before = Directory.GetCurrentDirectory();
        NotebookRun here = await NotebookHost.RunAsync(
            Repository.Sample("season"), Runs.NoParameters, new NotebookRunOptions(), TestContext.Current.CancellationToken);
        Assert.Equal((await Runs.Season()).Document.ToJson(), here.Document.ToJson());
        Assert.Equal(before, Directory.GetCurrentDirectory());
    }

    [Fact]
    public async Task Figure_InExecutedDocument_HasPictureVectorAndWords()
    {
        NotebookRun run = await Runs.Season();
        JsonObject data = Runs.OfKind(run.Document, "execute_result").Select(o => o["data"]!.AsObject()).First(d => d.ContainsKey("image/png"));
        Assert.StartsWith("iVBORw0KGgo", (string?)data["image/png"], StringComparison.Ordinal);
        Assert.StartsWith("<svg ", (string?)data["image/svg+xml"]![0], StringComparison.Ordinal);
        Assert.StartsWith("Line plot: carrots pass beans", (string?)data["text/plain"]![0], StringComparison.Ordinal);

        NotebookDocument saved = run.Document.WithoutSvg();
        Assert.DoesNotContain("image/svg", saved.ToJson(), StringComparison.Ordinal);
        JsonNode size = Runs.OfKind(saved, "display_data").First()["metadata"]!["image/png"]!;
        Assert.Equal((600, 320), ((int)size["width"]!, (int)size["height"]!));
    }

    [Fact]
    public async Task ExecutedDocument_KeepsTheSourceAsWritten()
    {
        NotebookRun run = await Runs.Season();
        Assert.StartsWith("#r \"../artifacts/notebooks/FarmEconomics.NotebookKit.dll\"\n", run.Document.Cells[1].Source, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Parameters_OfEveryType_ReachTheNotebook()
    {
        NotebookRun run = await Runs.Sample("season", new Dictionary<string, object>
        {
            ["year"] = 2025,
            ["farm"] = "Hill & \"Dale\" <b>\\\n",
            ["wage"] = 21.75m,
            ["full"] = true,
            ["day"] = new DateOnly(2025, 6, 30),
        });
        Assert.Null(run.Failure);
        NotebookCell injected = run.Document.Cells[3];
        Assert.Equal([NotebookParameters.InjectedTag], injected.Tags);
        Assert.Contains("wage = 21.75m;", injected.Source, StringComparison.Ordinal);
        string html = string.Concat(run.Document.Cells[4].Outputs[0]["data"]!["text/html"]!.AsArray().Select(l => (string?)l));
        Assert.Contains("Hill &amp; &quot;Dale&quot; &lt;b&gt;\\", html, StringComparison.Ordinal);
        Assert.Contains("in 2025, at a wage of $21.75", html, StringComparison.Ordinal);
        Assert.Equal("full: True, from 2025-06-30\n", Runs.Printed(run.Document.Cells[^1]));
    }

    [Theory]
    [InlineData("year", "twenty", "CS0029")] // a string for an int
    [InlineData("yeer", 2025, "The name 'yeer' does not exist")]
    public async Task Parameter_ThatDoesNotFit_IsACompileError(string name, object value, string expected)
    {
        NotebookRun run = await Runs.Sample("season", new Dictionary<string, object> { [name] = value });
        Assert.Equal(0, run.Failure!.Cell);
        Assert.Equal(3, run.Failure.CellIndex);
        Assert.StartsWith("the parameters don't fit the notebook: ", run.Failure.ToString(), StringComparison.Ordinal);
        Assert.Contains(expected, run.Failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Parameters_ForANotebookWithNone_AreRefused()
    {
        NotebookException fault = await Assert.ThrowsAsync<NotebookException>(
            () => Runs.Sample("error", new Dictionary<string, object> { ["year"] = 2025 }));
        Assert.Contains("it has no cell tagged \"parameters\" (given: year)", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Error_InACell_StopsThereAndKeepsTheRest()
    {
        NotebookRun run = await Runs.Sample("error");
        Assert.Equal("cell 2: the cents don't add up: 0.01 is missing", OneLine(run));
        Assert.Equal("before\n", Runs.Printed(run.Document.Cells[1]));
        JsonObject error = Assert.Single(Runs.OfKind(run.Document, "error"));
        Assert.Equal("InvalidOperationException", (string?)error["ename"]);
        Assert.DoesNotContain('\u001b', run.Document.ToJson());
        Assert.DoesNotContain(":line ", run.Document.ToJson(), StringComparison.Ordinal);
        Assert.Empty(run.Document.Cells[3].Outputs);
    }

    [Fact]
    public async Task CompileError_InACell_SaysWhatTheCompilerSays()
    {
        NotebookRun run = await Runs.Sample("compile-error");
        Assert.Contains("error CS0029", run.Failure!.Message, StringComparison.Ordinal);
        Assert.Equal("CompilationError", (string?)Assert.Single(Runs.OfKind(run.Document, "error"))["ename"]);
    }

    [Fact]
    public async Task CompilerWarning_Surfaces()
    {
        NotebookRun run = await Runs.Sample("warning");
        Assert.Null(run.Failure);
        Assert.Contains("warning CS1030", Assert.Single(run.Warnings), StringComparison.Ordinal);
        Assert.Equal("stderr", (string?)Assert.Single(Runs.OfKind(run.Document, "stream"))["name"]);
    }

    [SlowFact]
    public async Task EndlessCell_IsStoppedAfterItsTime()
    {
        // Long enough for the first cells' compiler on a busy machine; only the third never ends.
        NotebookRun run = await Runs.Sample("hang", options: new NotebookRunOptions { CellTimeLimit = TimeSpan.FromSeconds(20) });
        Assert.Equal("cell 3: stopped after 20 s", run.Failure!.ToString());
        Assert.Equal("two\n", Runs.Printed(run.Document.Cells[1]));
        Assert.Single(Runs.OfKind(run.Document, "error"));
    }

    [SlowFact]
    public async Task Notebook_BeyondItsWholeTime_SaysSo()
    {
        NotebookRun run = await Runs.Sample(
            "slow",
            new Dictionary<string, object> { ["rounds"] = 100 },
            new NotebookRunOptions { TotalTimeLimit = TimeSpan.FromSeconds(30) });
        Assert.Equal("cell 3: stopped after 30 s, the time allowed for the whole notebook", run.Failure!.ToString());
    }

    [Fact]
    public async Task Child_ThatDies_LeavesAReasonAndWhatItHad()
    {
        NotebookRun run = await Runs.Sample("die");
        Assert.Equal(2, run.Failure!.Cell);
        Assert.Contains("the notebook's process ended (exit code", run.Failure.Message, StringComparison.Ordinal);
        Assert.Equal("one\n", Runs.Printed(run.Document.Cells[0]));
        Assert.Single(run.Document.Cells[1].Outputs, o => (string?)o["output_type"] == "error");
    }

    [Fact]
    public async Task SeveralNotebooks_AroundADeadOne_AllComeBackInOrder()
    {
        List<CellProgress> heard = [];
        NotebookJob Job(string name) => new(
            Repository.Sample(name),
            Runs.NoParameters,
            new NotebookRunOptions { CellTimeLimit = TimeSpan.FromSeconds(20), Progress = new Listener(heard) });
        IReadOnlyList<NotebookRun> runs = await NotebookChildProcess.RunAllAsync(
            [Job("die"), Job("warning"), Job("error"), Job("warning")], Runs.Worker, parallel: 2, TestContext.Current.CancellationToken);
        Assert.Equal([false, true, false, true], runs.Select(r => r.Succeeded));
        Assert.Contains(heard, p => Path.GetFileName(p.Notebook) == "error.ipynb" && p is { Cell: 2, Of: 3 });
    }

    [Fact]
    public async Task Program_ThatIsNoWorker_IsReported()
    {
        Assert.SkipUnless(File.Exists("/bin/true"), "needs a program that ends at once");
        NotebookRun run = await NotebookChildProcess.RunAsync(
            new NotebookJob(Repository.Sample("error"), Runs.NoParameters, new NotebookRunOptions()),
            new WorkerCommand("/bin/true", []),
            TestContext.Current.CancellationToken);
        Assert.StartsWith("the notebook's process ended", run.Failure!.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Cancellation_EndsTheChild()
    {
        using CancellationTokenSource stop = new(TimeSpan.FromSeconds(3));
        NotebookJob job = new(Repository.Sample("hang"), Runs.NoParameters, new NotebookRunOptions());
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => NotebookChildProcess.RunAsync(job, Runs.Worker, stop.Token));
    }

    private static string OneLine(NotebookRun run) => run.Failure!.ToString().ReplaceLineEndings(" ").Trim();

    private sealed class Listener(List<CellProgress> heard) : IProgress<CellProgress>
    {
        public void Report(CellProgress value)
        {
            lock (heard)
            {
                heard.Add(value);
            }
        }
    }
}
