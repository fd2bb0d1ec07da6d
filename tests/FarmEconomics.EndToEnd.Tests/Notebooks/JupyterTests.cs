using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Notebooks;

namespace FarmEconomics.EndToEnd.Tests.Notebooks;

/// <summary>Notebooks as they lie in the project, in Jupyter with the pinned kernel, run by Debian's nbconvert (jupyter-nbconvert, jupyter-client).</summary>
/// <remarks>One of those that ship stands for all: each of them runs in Jupyter's own window (<see cref="JupyterWindowTests"/>).</remarks>
public class JupyterTests
{
    [Theory]
    [InlineData("sample: season")]
    [InlineData("02-season-review.ipynb")]
    public async Task Notebook_InJupyter_RunsWithoutErrorsOrWarnings(string name)
    {
        (int exitCode, string said, NotebookDocument? document) = await ExecuteAsync(name);
        Assert.True(exitCode == 0, said);
        Assert.Empty(Runs.OfKind(document!, "error"));
        Assert.Empty(document!.Cells.SelectMany(c => c.Outputs).Where(o => (string?)o["name"] == "stderr").Select(o => o["text"]!.ToJsonString()));
        if (name == "sample: season")
        {
            Assert.Equal(2, document.Cells.SelectMany(c => c.Outputs).Count(o => o["data"]?["image/png"] is not null && o["data"]?["text/plain"] is not null));
            Assert.Contains("<strong>Example Farm</strong> sold 1,250 lb", document.ToJson(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Warning_InJupyter_ShowsAsErrorText()
    {
        // What the test above looks for does happen.
        (int _, string said, NotebookDocument? document) = await ExecuteAsync("sample: warning");
        Assert.True(document is not null, said);
        Assert.Contains(document.Cells.SelectMany(c => c.Outputs), o => (string?)o["name"] == "stderr");
    }

    private static async Task<(int ExitCode, string Said, NotebookDocument? Document)> ExecuteAsync(string name)
    {
        string jupyter = Tool.Require(Jupyter.Required, "the notebooks are not checked in Jupyter", "jupyter");
        using Scratch scratch = new();
        JupyterKernelSpec.Write(scratch.Folder, Repository.Root);
        (int restored, string why) = await Tool.RunAsync("dotnet", Repository.Root, ["tool", "restore"]);
        Assert.True(restored == 0, why);

        // A sample stands one folder below the root while it runs, as the notebooks do: its first line names ../artifacts.
        using Scratch beside = new(Repository.Root);
        string notebook = Path.Combine(Repository.Root, "notebooks", name);
        if (name.StartsWith("sample: ", StringComparison.Ordinal))
        {
            notebook = beside.File(name[8..] + ".ipynb");
            File.Copy(Repository.Sample(name[8..]), notebook);
        }

        (int exitCode, string said) = await Tool.RunAsync(
            jupyter,
            Repository.Root,
            ["nbconvert", "--to", "notebook", "--execute", notebook, "--output-dir", scratch.Folder, "--output", "executed.ipynb", "--ExecutePreprocessor.timeout=120"],
            new Dictionary<string, string> { ["JUPYTER_PATH"] = scratch.Folder });
        string executed = scratch.File("executed.ipynb");
        return (exitCode, said, File.Exists(executed) ? NotebookDocument.Load(executed) : null);
    }
}
