using System.Text.Json.Nodes;
using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.NotebookKit;
using FarmEconomics.Notebooks;

namespace FarmEconomics.EndToEnd.Tests.Notebooks;

public class NotebookKitTests
{
    [Fact]
    public void KitFolder_IsFlatAndHasOneNativeLibraryOfEachKind()
    {
        string folder = Path.Combine(Repository.Root, "artifacts", "notebooks");
        Assert.Empty(Directory.GetDirectories(folder));
        string[] files = [.. Directory.GetFiles(folder).Select(path => Path.GetFileName(path))];
        Assert.Single(files, name => name.StartsWith("libSkiaSharp.", StringComparison.Ordinal) && Path.GetExtension(name) is ".so" or ".dylib" or ".dll");
        foreach (string assembly in Kit.Assemblies)
        {
            Assert.Contains(assembly + ".dll", files);
        }
    }

    [Theory]
    [InlineData("#r \"../artifacts/notebooks/FarmEconomics.NotebookKit.dll\"\nusing X;", true)]
    [InlineData("  #r   \"/elsewhere/FarmEconomics.NotebookKit.dll\"  \r\nint x;", true)]
    [InlineData("// #r \"../artifacts/notebooks/FarmEconomics.NotebookKit.dll\"", false)]
    [InlineData("#r \"../artifacts/notebooks/Other.dll\"", false)]
    public void KitReference_WhileRunning_IsTheHostsOwn(string source, bool changed)
    {
        string running = NotebookHost.WithOwnKit(source);
        Assert.Equal(changed, running != source);
        Assert.Equal(changed, running.Contains($"#r \"{Path.Combine(AppContext.BaseDirectory, NotebookHost.KitFile)}\"", StringComparison.Ordinal));
    }

    [Fact]
    public void KernelSpec_Written_RunsThePinnedToolOnThisMachineOnly()
    {
        using Scratch scratch = new();
        string file = JupyterKernelSpec.Write(scratch.Folder, Repository.Root);
        Assert.Equal(Path.Combine(scratch.Folder, "kernels", ".net-csharp", "kernel.json"), file);
        JsonNode spec = JsonNode.Parse(File.ReadAllText(file))!;
        string[] argv = [.. spec["argv"]!.AsArray().Select(a => (string)a!)];
        Assert.Contains("--http-local-only", argv);
        Assert.Equal(["dotnet", "tool", "run", "dotnet-interactive"], argv[..4]);
        Assert.Equal("1", (string?)spec["env"]!["DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT"]);
        JsonNode manifest = JsonNode.Parse(File.ReadAllText(Path.Combine(Repository.Root, ".config", "dotnet-tools.json")))!;
        Assert.Equal("1.0.712001", (string?)manifest["tools"]!["microsoft.dotnet-interactive"]!["version"]);
    }

    [Fact]
    public void KernelSpec_OfTwoFolders_LooksForPortsInTwoRanges()
    {
        using Scratch scratch = new();
        string[] ranges = [.. Enumerable.Range(0, 4).Select(i => PortsOf(scratch.File($"farm{i}")))];
        Assert.Equal(ranges[0], PortsOf(scratch.File("farm0")));
        Assert.True(ranges.Distinct().Count() > 1, "four folders look in one range");
        Assert.All(ranges, range => Assert.Matches(@"\A[12]\d{4}-[12]\d{4}\z", range));

        static string PortsOf(string folder)
        {
            JsonNode spec = JsonNode.Parse(File.ReadAllText(JupyterKernelSpec.Write(folder, Repository.Root)))!;
            string[] argv = [.. spec["argv"]!.AsArray().Select(a => (string)a!)];
            return argv[Array.IndexOf(argv, "--http-port-range") + 1];
        }
    }

    [Fact]
    public void KernelSpec_WithoutAManifest_IsRefused()
    {
        using Scratch scratch = new();
        Assert.Throws<NotebookException>(() => JupyterKernelSpec.Write(scratch.Folder, scratch.Folder));
    }
}
