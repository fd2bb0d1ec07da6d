using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Notebooks;

namespace FarmEconomics.EndToEnd.Tests.Commands;

/// <summary>What the command writes and says; that Jupyter then opens it is shown in the tests of the window.</summary>
public class JupyterCommandTests
{
    private static readonly string Sound = Path.Combine(Repository.Root, "tests", "FarmEconomics.Tests", "BadRecords", "sound");

    [Fact]
    public async Task Jupyter_NewFolder_HoldsKernelManifestAndNotebooksOnTheseRecords()
    {
        using Scratch scratch = new();
        string output = scratch.File("my farm");
        ProgramRun run = await Program.RunAsync("jupyter", Sound, "--out", output, "--set", "owner_wage=22");

        Assert.True(run.ExitCode == 0, run.Error);
        string kernel = File.ReadAllText(Path.Combine(output, "kernels", JupyterKernelSpec.Name, "kernel.json"));
        Assert.Contains("--http-local-only", kernel, StringComparison.Ordinal);
        Assert.Contains("\"DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT\": \"1\"", kernel, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(output, ".config", "dotnet-tools.json")));
        Assert.Equal(Names(Path.Combine(Repository.Root, "notebooks")), Names(Path.Combine(output, "notebooks")));
        NotebookDocument review = NotebookDocument.Load(Path.Combine(output, "notebooks", "02-season-review.ipynb"));
        string injected = review.Cells.Single(cell => cell.Tags.Contains(NotebookParameters.InjectedTag)).Source;
        string records = Path.GetRelativePath(Path.Combine(output, "notebooks"), Sound).Replace('\\', '/');
        Assert.Contains($"records = {NotebookParameters.Literal(records)};", injected, StringComparison.Ordinal);
        Assert.Contains("settings = \"owner_wage=22\";", injected, StringComparison.Ordinal);
        Assert.StartsWith($"#r \"{JupyterFolder.KitOf(Repository.Root)}\"\n", review.Cells.First(cell => cell.IsCode).Source, StringComparison.Ordinal);
        if (!OperatingSystem.IsWindows() && Environment.GetEnvironmentVariable("JUPYTER_PATH") is null)
        {
            Assert.Matches($"JUPYTER_PATH='{output}' jupyter (notebook|lab) '{output}/notebooks'", run.Output);
        }
    }

    [Fact]
    public async Task Jupyter_RunAgain_KeepsOutputsAndSetsChangedNotebooksAside()
    {
        using Scratch scratch = new();
        string output = scratch.File("jupyter");
        Assert.Equal(0, (await Program.RunAsync("jupyter", Sound, "--out", output)).ExitCode);
        string ran = Path.Combine(output, "notebooks", "01-records-check.ipynb");
        string changed = Path.Combine(output, "notebooks", "02-season-review.ipynb");
        string fresh = File.ReadAllText(changed);
        File.WriteAllText(ran, File.ReadAllText(ran).Replace("\"execution_count\": null", "\"execution_count\": 7", StringComparison.Ordinal));
        File.WriteAllText(changed, fresh.Replace("## The answer", "## My answer", StringComparison.Ordinal));
        File.WriteAllText(Path.Combine(output, "notebooks", "mine.ipynb"), "mine");

        ProgramRun run = await Program.RunAsync("jupyter", Sound, "--out", output);

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Contains("\"execution_count\": 7", File.ReadAllText(ran), StringComparison.Ordinal);
        Assert.Equal(fresh, File.ReadAllText(changed));
        Assert.Contains("## My answer", File.ReadAllText(Path.Combine(output, "earlier", "02-season-review.ipynb")), StringComparison.Ordinal);
        Assert.Contains($"1 notebook of an earlier time with other cells: now in {Path.Combine(output, "earlier")}", run.Output, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(Path.Combine(output, "notebooks", "mine.ipynb")));
    }

    [Fact]
    public async Task Jupyter_IntoTheRecordsOrFilesOfOthers_IsRefused()
    {
        using Scratch scratch = new();
        string taken = Directory.CreateDirectory(scratch.File("taken")).FullName;
        File.WriteAllText(Path.Combine(taken, "letter.txt"), "keep me");

        ProgramRun others = await Program.RunAsync("jupyter", Sound, "--out", taken);
        ProgramRun records = await Program.RunAsync("jupyter", Sound, "--out", Path.Combine(Sound, "jupyter"));

        Assert.Equal(2, others.ExitCode);
        Assert.Contains("nothing was changed", others.Error, StringComparison.Ordinal);
        Assert.Equal(["letter.txt"], Names(taken));
        Assert.Equal(2, records.ExitCode);
        Assert.False(Directory.Exists(Path.Combine(Sound, "jupyter")));
    }

    [Fact]
    public async Task Jupyter_RecordsInError_SaysWhichNotebookListsThem()
    {
        using Scratch scratch = new();
        string records = Directory.CreateDirectory(scratch.File("records")).FullName;
        File.WriteAllText(Path.Combine(records, "crops.csv"), "crop,unit\nKale,\n");
        ProgramRun run = await Program.RunAsync("jupyter", records, "--out", scratch.File("jupyter"));
        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Contains("01-records-check lists them", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Jupyter_WithoutJupyterOrKernel_SaysWhatIsMissingAndHowToGetIt()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "A link to the .NET program needs rights there.");
        using Scratch scratch = new();
        string path = Directory.CreateDirectory(scratch.File("path")).FullName;
        File.CreateSymbolicLink(Path.Combine(path, "dotnet"), Dotnet());
        // A home of its own: there nobody has restored the tool.
        Dictionary<string, string> bare = new() { ["PATH"] = path, ["DOTNET_CLI_HOME"] = scratch.File("home") };
        ProgramRun run = await Program.RunInAsync(bare, "jupyter", Sound, "--out", scratch.File("jupyter"));

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Contains("Jupyter is not installed. Debian or Ubuntu: sudo apt install jupyter-notebook.", run.Output, StringComparison.Ordinal);
        Assert.Contains($"The C# kernel is not there. In {Repository.Root}: dotnet tool restore", run.Output, StringComparison.Ordinal);
        Assert.Contains("Then start Jupyter with", run.Output, StringComparison.Ordinal);
    }

    private static string Dotnet() => (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator)
        .Select(folder => Path.Combine(folder, "dotnet")).First(File.Exists);

    private static string[] Names(string folder) => [.. Directory.GetFileSystemEntries(folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];
}
