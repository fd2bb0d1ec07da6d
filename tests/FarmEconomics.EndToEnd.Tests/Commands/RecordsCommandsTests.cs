using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

/// <summary>The commands that help a grower to records: start, import, and check with its proposals.</summary>
public class RecordsCommandsTests
{
    private static readonly string Imports = Path.Combine(Repository.Root, "demo-data", "imports");
    private static readonly string Sound = Path.Combine(Repository.Root, "tests", "FarmEconomics.Tests", "BadRecords", "sound");

    [Fact]
    public async Task Start_FolderAndWorkbook_ThenCheck_FindNothingWrong()
    {
        using Scratch scratch = new();
        foreach (string place in new[] { scratch.File("farm"), scratch.File("farm.xlsx") })
        {
            Assert.Equal(0, (await Program.RunAsync("start", place)).ExitCode);
            ProgramRun check = await Program.RunAsync("check", place);
            Assert.Equal(0, check.ExitCode);
            Assert.Contains("No problems found.", check.Output, StringComparison.Ordinal);
        }

        ProgramRun again = await Program.RunAsync("start", scratch.File("farm.xlsx"));
        Assert.Equal(2, again.ExitCode);
        Assert.Contains("is there already", again.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Import_DryRunThenApplyThenAgain_AddsOnce()
    {
        using Scratch scratch = new();
        foreach (string file in Directory.EnumerateFiles(Sound))
        {
            File.Copy(file, scratch.File(Path.GetFileName(file)));
        }

        string[] command = ["import", Path.Combine(Imports, "card-reader.csv"), "--as", "sales", "--map", Path.Combine(Imports, "card-reader.map.csv"), "--into", scratch.Folder];
        int before = Directory.GetFiles(scratch.Folder).Length;
        ProgramRun dry = await Program.RunAsync(command);
        Assert.Equal(before, Directory.GetFiles(scratch.Folder).Length);
        ProgramRun apply = await Program.RunAsync([.. command, "--apply"]);
        ProgramRun again = await Program.RunAsync([.. command, "--apply"]);

        Assert.Equal((0, 0, 0), (dry.ExitCode, apply.ExitCode, again.ExitCode));
        Assert.Contains("3 to add, 0 added before, 1 left out", dry.Output, StringComparison.Ordinal);
        Assert.Contains("The records are as they were.", dry.Output, StringComparison.Ordinal);
        Assert.Contains("0 to add, 3 added before", again.Output, StringComparison.Ordinal);
        Assert.Equal(before + 2, Directory.GetFiles(scratch.Folder).Length);
    }

    [Fact]
    public async Task Check_FixNames_ProposesAndLeavesTheRecordsAlone()
    {
        using Scratch scratch = new();
        string messy = Path.Combine(Repository.Root, "demo-data", "messy");

        ProgramRun run = await Program.RunAsync("check", messy, "--fix-names", "--out", scratch.File("proposed.csv"));

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("crops,Head lettce,Head lettuce\n", File.ReadAllText(scratch.File("proposed.csv")), StringComparison.Ordinal);
        Assert.Equal(2, (await Program.RunAsync("check", messy, "--fix-names", "--out", Path.Combine(messy, "aliases.csv"))).ExitCode);
        Assert.False(File.Exists(Path.Combine(messy, "aliases.csv")));
    }

    [Fact]
    public async Task Check_WithControlTotals_ShowsThemBesideTheRecords()
    {
        ProgramRun run = await Program.RunAsync("check", Path.Combine(Repository.Root, "demo-data"));

        Assert.Contains("filled up by time standards", run.Output, StringComparison.Ordinal);
        Assert.Matches(@"sales amount +2025-01-01 - 2025-12-31 +86341\.33", run.Output);
        Assert.DoesNotContain("MISSED", run.Output, StringComparison.Ordinal);
    }
}
