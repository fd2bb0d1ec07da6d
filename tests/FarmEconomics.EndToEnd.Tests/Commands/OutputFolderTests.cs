using FarmEconomics.EndToEnd.Tests.Faults;
using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

/// <summary>What a command replaces: what the same command wrote, and nothing a grower put there.</summary>
public class OutputFolderTests
{
    private const string Mark = ".farm-review";
    private static readonly string Sound = ManyFarms.Sound;

    [Fact]
    public async Task Review_AfterOneThatWasKilled_CleansUpAndKeepsTheResultWhole()
    {
        using Scratch scratch = new();
        string output = scratch.File("out");
        Assert.Equal(0, (await Tables(output)).ExitCode);

        // What a run killed before the swap, one killed as it began, and one killed in the middle of two renames leave behind.
        Directory.CreateDirectory(scratch.File(".out.new-0123456789ab"));
        File.WriteAllText(scratch.File(".out.new-0123456789ab/half.html"), "half");
        File.Copy(Path.Combine(output, Mark), scratch.File($".out.new-0123456789ab/{Mark}"));
        Directory.CreateDirectory(scratch.File(".out.new-0123456789ac"));
        Directory.Move(output, scratch.File(".out.old-0123456789ad"));

        ProgramRun run = await Tables(output);

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.True(File.Exists(Path.Combine(output, "tables", "crops.csv")));
        Assert.Equal(["out"], Entries(scratch.Folder));
    }

    [Theory]
    [InlineData("/sys/out", "review", "--tables-only", "--out", "/sys/out")]
    [InlineData("/sys/a.xlsx", "start")]
    public async Task Write_WithoutTheRight_NamesThePlaceAsGivenAndNoFileOfOurs(string place, string command, params string[] options)
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "Only there is a folder nobody may write in.");

        ProgramRun run = await Program.RunAsync([command, command == "start" ? place : Sound, .. options]);

        Assert.Equal(2, run.ExitCode);
        Assert.EndsWith($"{place} can't be written: you have no right to write in its folder. Give a place in a folder of yours.",
            run.Error.Trim(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Review_FoldersOfTheGrowersWithNamesLikeLeftovers_StayAsTheyAre()
    {
        using Scratch scratch = new();
        Assert.Equal(0, (await Tables(scratch.File(".out.old-2024"))).ExitCode);
        foreach (string name in new[] { ".out.old-photos", ".out.new-0123456789ab", ".out.old-mine/deep" })
        {
            Directory.CreateDirectory(scratch.File(name));
            File.WriteAllText(scratch.File(Path.Combine(name, "letter.txt")), "keep me");
        }

        string before = Checksums.Of(scratch.Folder);
        ProgramRun run = await Tables(scratch.File("out"));
        Directory.Delete(scratch.File("out"), recursive: true);

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Equal(before, Checksums.Of(scratch.Folder));
    }

    [Fact]
    public async Task Review_FileAddedOrChangedInItsResults_IsRefusedByName()
    {
        using Scratch scratch = new();
        string output = scratch.File("out");
        Assert.Equal(0, (await Tables(output)).ExitCode);
        File.WriteAllText(Path.Combine(output, "tables", "my notes.txt"), "keep me");
        File.AppendAllText(Path.Combine(output, "tables", "crops.csv"), "my remark\n");
        string before = Checksums.Of(output);

        ProgramRun refused = await Tables(output);
        string after = Checksums.Of(output);
        File.Delete(Path.Combine(output, "tables", "my notes.txt"));
        File.Delete(Path.Combine(output, "tables", "crops.csv"));
        ProgramRun again = await Tables(output);

        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("tables/crops.csv, tables/my notes.txt", refused.Error, StringComparison.Ordinal);
        Assert.Equal(before, after);
        Assert.True(again.ExitCode == 0, again.Error);
    }

    [Theory]
    [InlineData("review", "--tables-only")]
    [InlineData("prices")]
    [InlineData("writeup")]
    public async Task Command_ResultsOfAnotherCommand_AreRefusedAndItsOwnReplaced(string command, params string[] more)
    {
        using Scratch scratch = new();
        string[] own = [command, ManyFarms.Demo, .. more, "--out", scratch.File("own")];
        Assert.Equal(0, (await Program.RunAsync(own)).ExitCode);
        string other = scratch.File("other");
        string[] first = command == "review" ? ["writeup", ManyFarms.Demo, "--out", other] : ["review", Sound, "--tables-only", "--out", other];
        Assert.Equal(0, (await Program.RunAsync(first)).ExitCode);
        string before = Checksums.Of(other);

        ProgramRun again = await Program.RunAsync(own);
        ProgramRun refused = await Program.RunAsync([command, ManyFarms.Demo, .. more, "--out", other]);
        ProgramRun all = await Program.RunAsync("review-all", Path.GetDirectoryName(Sound)!, "--out", other);
        ProgramRun jupyter = await Program.RunAsync("jupyter", Sound, "--out", other);

        Assert.True(again.ExitCode == 0, again.Error);
        Assert.Equal((2, 2, 2), (refused.ExitCode, all.ExitCode, jupyter.ExitCode));
        Assert.Contains($"holds the results of {first[0]}; nothing was changed", refused.Error, StringComparison.Ordinal);
        Assert.Equal(before, Checksums.Of(other));
    }

    [Fact]
    public async Task ReviewAll_FileAddedToOneFarmsResults_FailsThatFarmAlone()
    {
        using Scratch scratch = new();
        Checksums.Copy(Sound, scratch.File("farms/a"));
        Checksums.Copy(Sound, scratch.File("farms/b"));
        string[] line = ["review-all", scratch.File("farms"), "--out", scratch.File("out")];
        Assert.Equal(0, (await Program.RunAsync(line)).ExitCode);
        File.WriteAllText(scratch.File("out/farms/a/letter.txt"), "keep me");
        File.WriteAllText(scratch.File("out/letter.txt"), "keep me");
        File.AppendAllText(scratch.File("farms/a/sales.csv"), "2025-05-12,lettuce,market,1,9.75\n");
        File.AppendAllText(scratch.File("farms/b/sales.csv"), "2025-05-12,lettuce,market,1,9.75\n");

        ProgramRun run = await Program.RunAsync(line);

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("a (failed): ", run.Error, StringComparison.Ordinal);
        Assert.Contains("letter.txt", run.Error, StringComparison.Ordinal);
        Assert.Contains("2 farms: 1 done", run.Output, StringComparison.Ordinal);
        Assert.Equal("keep me", File.ReadAllText(scratch.File("out/farms/a/letter.txt")));
        Assert.Equal("keep me", File.ReadAllText(scratch.File("out/letter.txt")));
    }

    [Fact]
    public async Task Review_OutIsALink_WritesWhereItLeadsAndKeepsTheLink()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights of their own on Windows.");
        using Scratch scratch = new();
        string link = scratch.File("out");
        Directory.CreateDirectory(scratch.File("far"));
        File.CreateSymbolicLink(link, "far/review");

        ProgramRun first = await Tables(link);
        ProgramRun second = await Tables(link);

        Assert.True(first.ExitCode == 0, first.Error);
        Assert.True(second.ExitCode == 0, second.Error);
        Assert.Equal("far/review", new FileInfo(link).LinkTarget);
        Assert.True(File.Exists(scratch.File("far/review/tables/crops.csv")));
        Assert.Equal(["review"], Entries(scratch.File("far")));
    }

    [Fact]
    public async Task Review_OutLeadsIntoTheRecordsByTwoLinks_IsRefused()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "Links need rights of their own on Windows.");
        using Scratch scratch = new();
        string records = Checksums.Copy(Sound, scratch.File("farm/records"));
        Directory.CreateSymbolicLink(scratch.File("to-farm"), scratch.File("farm"));
        Directory.CreateSymbolicLink(scratch.File("detour"), scratch.File("to-farm/records"));
        string before = Checksums.Of(records);

        ProgramRun review = await Program.RunAsync("review", records, "--tables-only", "--out", scratch.File("detour/out"));
        ProgramRun all = await Program.RunAsync("review-all", scratch.File("to-farm"), "--out", scratch.File("detour/out"));
        ProgramRun whatIf = await Program.RunAsync("whatif", records, "--change", "prices=+1%", "--name", "a", "--save", scratch.File("detour/s.csv"));

        Assert.Equal((2, 2, 2), (review.ExitCode, all.ExitCode, whatIf.ExitCode));
        Assert.Equal(before, Checksums.Of(records));
        Assert.Empty(Directory.GetDirectories(records));
    }

    [Fact]
    public async Task Review_OutIsATopOfADisk_IsRefusedWithAPlaceOnIt()
    {
        await using SmallDisk disk = await SmallDisk.MountAsync(2000);

        ProgramRun refused = await Tables(disk.Folder);
        ProgramRun inIt = await Tables(Path.Combine(disk.Folder, "review"));

        Assert.Equal(2, refused.ExitCode);
        Assert.Contains("is the top folder of a disk", refused.Error, StringComparison.Ordinal);
        Assert.True(inIt.ExitCode == 0, inIt.Error);
        Assert.Equal(["review"], Entries(disk.Folder));
    }

    private static Task<ProgramRun> Tables(string output) => Program.RunAsync("review", Sound, "--tables-only", "--out", output);

    private static IEnumerable<string> Entries(string folder) => Directory.GetFileSystemEntries(folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal);
}
