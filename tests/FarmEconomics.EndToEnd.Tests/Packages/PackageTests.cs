using System.IO.Compression;
using System.Xml.Linq;
using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Packages;

/// <summary>What others would get: the library's packages and the tool, packed, installed and used.</summary>
public class PackageTests
{
    private static readonly string Configuration = new DirectoryInfo(AppContext.BaseDirectory).Parent!.Name;

    [Theory]
    [InlineData("FarmEconomics", "MathNet.Numerics")]
    [InlineData("FarmEconomics.Files", "FarmEconomics ADRaffy.ENSNormalize CsvHelper DocumentFormat.OpenXml")]
    [InlineData("FarmEconomics.Reports", "FarmEconomics FarmEconomics.Files Markdig Microsoft.Data.Analysis ScottPlot")]
    public async Task Library_Packed_BringsDocsReadmeSymbolsAndWhatItNeeds(string name, string needs)
    {
        using Scratch scratch = new();
        await PackAsync(name, scratch.Folder);

        string[] files = [.. Directory.GetFiles(scratch.Folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal)];
        Assert.Equal(2, files.Length);
        Assert.EndsWith(".nupkg", files[0], StringComparison.Ordinal);
        Assert.EndsWith(".snupkg", files[1], StringComparison.Ordinal);
        using ZipArchive package = ZipFile.OpenRead(scratch.File(files[0]));
        Assert.All([$"lib/net10.0/{name}.dll", $"lib/net10.0/{name}.xml", "README.md", $"{name}.nuspec"], entry => Assert.NotNull(package.GetEntry(entry)));
        using ZipArchive symbols = ZipFile.OpenRead(scratch.File(files[1]));
        Assert.NotNull(symbols.GetEntry($"lib/net10.0/{name}.pdb"));
        await using Stream nuspec = package.GetEntry($"{name}.nuspec")!.Open();
        XDocument description = await XDocument.LoadAsync(nuspec, LoadOptions.None, TestContext.Current.CancellationToken);
        Assert.Equal("MIT", description.Descendants().Single(element => element.Name.LocalName == "license").Value);
        Assert.StartsWith("MIT License", await File.ReadAllTextAsync(Path.Combine(Repository.Root, "LICENSE"), TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(
            needs.Split(' '),
            description.Descendants().Where(element => element.Name.LocalName == "dependency").Select(element => (string)element.Attribute("id")!).OrderBy(id => Array.IndexOf(needs.Split(' '), id)));
    }

    [SlowFact]
    public async Task Tool_PackedAndInstalled_ReviewsChecksAndServes()
    {
        using Scratch scratch = new();
        string packages = scratch.File("packages");
        await PackAsync("FarmEconomics.Cli", packages);

        // Nothing but the package just made may be found, so nothing is asked of anybody outside.
        File.WriteAllText(scratch.File("nuget.config"), "<configuration><packageSources><clear /></packageSources></configuration>");
        Dictionary<string, string> own = new() { ["NUGET_PACKAGES"] = scratch.File("cache"), ["DOTNET_CLI_HOME"] = scratch.Folder, ["DOTNET_NOLOGO"] = "1", ["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1" };
        (int code, string said) = await Tool.RunAsync(
            "dotnet", scratch.Folder, ["tool", "install", "FarmEconomics.Cli", "--tool-path", scratch.File("tools"), "--add-source", packages, "--configfile", scratch.File("nuget.config")], own, 300);
        Assert.True(code == 0, said);
        string tool = Path.Combine(scratch.File("tools"), "farm-economics" + (OperatingSystem.IsWindows() ? ".exe" : ""));
        string records = Checksums.Copy(ManyFarms.Sound, scratch.File("farms/a farm"));

        ProgramRun check = await Tool.RunApartAsync(tool, scratch.Folder, ["check", records]);
        ProgramRun review = await Tool.RunApartAsync(tool, scratch.Folder, ["review", records, "--out", scratch.File("out")], seconds: 300);
        ProgramRun many = await Tool.RunApartAsync(tool, scratch.Folder, ["review-all", scratch.File("farms"), "--out", scratch.File("all")]);

        Assert.True(check.ExitCode == 0, check.Output + check.Error);
        Assert.True(review.ExitCode == 0, review.Output + review.Error);
        Assert.True(many.ExitCode == 0, many.Output + many.Error);
        Assert.Equal(
            Directory.GetFiles(Path.Combine(Repository.Root, "notebooks"), "*.ipynb").Length,
            Directory.GetFiles(Path.Combine(scratch.File("out"), "notebooks"), "*.ipynb").Length);
        Assert.Contains("data-block=\"season.headline\"", File.ReadAllText(Path.Combine(scratch.File("out"), "index.html")), StringComparison.Ordinal);
        await using OpenProgram open = await OpenProgram.StartOtherAsync(tool, ["open", records, "--no-browser"]);
        using HttpClient client = open.Client();
        Assert.Contains("drop-or-grow", await client.GetStringAsync("/", TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    private static async Task PackAsync(string project, string to)
    {
        (int code, string said) = await Tool.RunAsync(
            "dotnet",
            Repository.Root,
            ["pack", Path.Combine("src", project), "-c", Configuration, "-o", to, "--no-build", "--no-restore", "-m:1", "-nodeReuse:false", "-v", "q"],
            new Dictionary<string, string> { ["DOTNET_NOLOGO"] = "1", ["DOTNET_CLI_TELEMETRY_OPTOUT"] = "1" },
            300);
        Assert.True(code == 0, said);
        Assert.DoesNotContain("warning", said, StringComparison.Ordinal);
    }
}
