using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Faults;

/// <summary>A named pipe or a device among the records: nobody waits for it, and of many farms one fails.</summary>
public class PipeTests
{
    [Fact]
    public async Task ReviewAll_FarmsWithPipesAndDevices_FailAloneAndNothingWaits()
    {
        using Scratch scratch = new();
        foreach (string name in new[] { "a-table", "b-other", "c-below", "d-device", "f-fine" })
        {
            Checksums.Copy(ManyFarms.Sound, scratch.File($"farms/{name}"));
        }

        File.Delete(scratch.File("farms/a-table/sales.csv"));
        await MakePipeAsync(scratch.File("farms/a-table/sales.csv"));
        await MakePipeAsync(scratch.File("farms/b-other/notes.csv"));
        Directory.CreateDirectory(scratch.File("farms/c-below/deep"));
        await MakePipeAsync(scratch.File("farms/c-below/deep/sales.csv"));
        File.Delete(scratch.File("farms/d-device/sales.csv"));
        File.CreateSymbolicLink(scratch.File("farms/d-device/sales.csv"), "/dev/zero");
        Directory.CreateDirectory(scratch.File("farms/e-workbook"));
        await MakePipeAsync(scratch.File("farms/e-workbook/records.xlsx"));
        await MakePipeAsync(scratch.File("farms/g-workbook.xlsx"));

        ProgramRun run = await RunAsync("review-all", scratch.File("farms"), "--out", scratch.File("out"));

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("7 farms: 3 done (0 of them before, of the same records), 4 failed", run.Output, StringComparison.Ordinal);
        foreach (string name in new[] { "a-table", "d-device", "e-workbook", "g-workbook" })
        {
            string line = Assert.Single(run.Error.Split('\n'), line => line.StartsWith(name, StringComparison.Ordinal));
            Assert.Contains("is no plain file", line, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("review", "--tables-only")]
    [InlineData("review")]
    [InlineData("writeup")]
    [InlineData("check")]
    [InlineData("whatif")]
    public async Task Command_PipeAmongTheRecords_NamesItAndEnds(string command, params string[] more)
    {
        using Scratch scratch = new();
        string records = Checksums.Copy(ManyFarms.Sound, scratch.File("records"));
        File.Delete(Path.Combine(records, "harvests.csv"));
        await MakePipeAsync(Path.Combine(records, "harvests.csv"));

        ProgramRun run = await RunAsync([command, records, .. more]);

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("harvests.csv is no plain file but a pipe", run.Error + run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task OtherFilesOfTheCommands_ThatArePipes_AreNamed()
    {
        using Scratch scratch = new();
        string pipe = scratch.File("pipe.csv");
        await MakePipeAsync(pipe);
        string records = Checksums.Copy(ManyFarms.Sound, scratch.File("records"));
        await MakePipeAsync(Path.Combine(records, "imports.till.csv"));
        string imports = Path.Combine(ManyFarms.Demo, "imports");
        string[][] lines =
        [
            ["whatif", ManyFarms.Sound, "--compare", pipe],
            ["whatif", ManyFarms.Sound, "--change", "prices=+1%", "--name", "a", "--save", pipe],
            ["prices", ManyFarms.Sound, "--members", "10", "--plan", pipe],
            ["import", pipe, "--as", "sales", "--map", Path.Combine(imports, "card-reader.map.csv")],
            ["import", Path.Combine(imports, "card-reader.csv"), "--as", "sales", "--map", pipe],
            ["import", Path.Combine(imports, "card-reader.csv"), "--as", "sales", "--map", Path.Combine(imports, "card-reader.map.csv"), "--into", records],
            ["start", pipe],
        ];
        foreach (string[] line in lines)
        {
            ProgramRun run = await RunAsync(line);
            Assert.True(run.ExitCode is 0 or 1 or 2, run.Error);
            StackTraces.AssertNone(run.Error);
        }
    }

    [Fact]
    public async Task Open_PipeAmongTheRecords_ServesAllTheSame()
    {
        using Scratch scratch = new();
        string records = Checksums.Copy(ManyFarms.Sound, scratch.File("records"));
        await MakePipeAsync(Path.Combine(records, "notes.csv"));

        await using OpenProgram open = await OpenProgram.StartAsync(records, "--scenarios", scratch.File("s.csv"));
        using HttpClient client = open.Client();
        string page = await client.GetStringAsync(new Uri("/", UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Contains("</html>", page, StringComparison.Ordinal);
    }

    private static Task<ProgramRun> RunAsync(params string[] line) => Program.RunInAsync(null, 120, line);

    private static async Task MakePipeAsync(string path)
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "pipes are no files on Windows");
        Assert.Equal(0, (await Tool.RunAsync("mkfifo", "/", [path])).ExitCode);
    }
}
