using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

/// <summary>Many farms in one run: each on its own, none stops the others, and what is done stays done.</summary>
public class ReviewAllCommandTests
{
    [Fact]
    public async Task ReviewAll_SoundBadAndEmptyFarms_ReviewsWhatItCanAndNamesTheRest()
    {
        using Scratch scratch = new();
        string farms = ManyFarms.In(scratch);
        string before = Checksums.Of(farms);
        string output = scratch.File("out");

        ProgramRun run = await Program.RunAsync("review-all", farms, "--out", output, "--parallel", "3");

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("7 farms: 5 done (0 of them before, of the same records), 1 failed, 0 not proven, 1 empty.", run.Output, StringComparison.Ordinal);
        Assert.Contains("bad (failed): sales.csv:4: E201", run.Error, StringComparison.Ordinal);
        Assert.Contains("nothing came (empty): no CSV tables", run.Error, StringComparison.Ordinal);
        Assert.Equal(before, Checksums.Of(farms));
        Assert.Equal([".farm-review-all", "farms", "summary"], Entries(output));
        Assert.Equal(["crops.csv", "crops.parquet", "farms.csv", "farms.parquet"], Entries(Path.Combine(output, "summary")).Where(name => name[0] != '.'));
        Assert.Contains("E201", File.ReadAllText(Path.Combine(output, "farms", "bad", "tables", "problems.csv")), StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(output, "farms", "bad", "tables", "crops.csv")));

        // Each farm's tables are those that review writes.
        foreach (string name in new[] { "demo", ManyFarms.Accented, "metric" })
        {
            ProgramRun one = await Program.RunAsync("review", Path.Combine(farms, name), "--tables-only", "--out", scratch.File("one"));
            Assert.True(one.ExitCode == 0, one.Error);
            Assert.Equal(Checksums.Of(scratch.File("one")), Checksums.Of(Path.Combine(output, "farms", name)));
        }
    }

    [Fact]
    public async Task ReviewAll_Again_DoesOnlyWhatChanged()
    {
        using Scratch scratch = new();
        string farms = ManyFarms.In(scratch);
        string output = scratch.File("out");
        Assert.Equal(1, (await Program.RunAsync("review-all", farms, "--out", output)).ExitCode);
        string first = Checksums.Of(output);

        ProgramRun same = await Program.RunAsync("review-all", farms, "--out", output);
        string second = Checksums.Of(output);

        // One mends its records, one's results are damaged, one's records go away, one is reviewed with the command for a single farm.
        File.Delete(Path.Combine(farms, "bad", "sales.csv"));
        File.Copy(Path.Combine(ManyFarms.Sound, "sales.csv"), Path.Combine(farms, "bad", "sales.csv"));
        File.AppendAllText(Path.Combine(output, "farms", "plain", "tables", "crops.csv"), "more\n");
        Directory.Delete(Path.Combine(farms, "with spaces"), recursive: true);
        Directory.Delete(Path.Combine(output, "farms", "demo"), recursive: true);
        Assert.Equal(0, (await Program.RunAsync("review", Path.Combine(farms, "demo"), "--tables-only", "--out", Path.Combine(output, "farms", "demo"))).ExitCode);
        ProgramRun changed = await Program.RunAsync("review-all", farms, "--out", output);

        Assert.Contains("5 done (5 of them before", same.Output, StringComparison.Ordinal);
        Assert.Equal(first, second);
        Assert.True(changed.ExitCode == 0, changed.Error);
        Assert.Contains("6 farms: 5 done (3 of them before", changed.Output, StringComparison.Ordinal);
        Assert.Contains("with spaces", changed.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("with spaces", File.ReadAllText(Path.Combine(output, "summary", "farms.csv")), StringComparison.Ordinal);
        Assert.DoesNotContain("more", File.ReadAllText(Path.Combine(output, "farms", "plain", "tables", "crops.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task ReviewAll_AfterSingleReviewsOfAQueue_OnlyPutsThemTogether()
    {
        using Scratch scratch = new();
        foreach (string name in new[] { "one", ManyFarms.Accented })
        {
            string records = Checksums.Copy(ManyFarms.Sound, Path.Combine(scratch.File("farms"), name));
            Assert.Equal(0, (await Program.RunAsync("review", records, "--tables-only", "--out", Path.Combine(scratch.File("out"), "farms", name))).ExitCode);
        }

        ProgramRun run = await Program.RunAsync("review-all", scratch.File("farms"), "--out", scratch.File("out"));

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Contains("2 done (2 of them before", run.Output, StringComparison.Ordinal);
        Assert.Equal(3, File.ReadAllLines(Path.Combine(scratch.File("out"), "summary", "farms.csv")).Length);
    }

    [Fact]
    public async Task ReviewAll_AnotherSetting_DoesAllAgain()
    {
        using Scratch scratch = new();
        string farms = Path.Combine(scratch.Folder, "farms");
        Checksums.Copy(ManyFarms.Sound, Path.Combine(farms, "one"));
        Assert.Equal(0, (await Program.RunAsync("review-all", farms, "--out", scratch.File("out"))).ExitCode);

        ProgramRun run = await Program.RunAsync("review-all", farms, "--out", scratch.File("out"), "--set", "currency=CAD");

        Assert.Contains("1 done (0 of them before", run.Output, StringComparison.Ordinal);
        Assert.Contains(",CAD,", File.ReadAllText(Path.Combine(scratch.File("out"), "summary", "farms.csv")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nowhere", "There is no folder")]
    [InlineData("one", "holds the tables of one farm")]
    [InlineData("empty", "holds no farms")]
    public async Task ReviewAll_NoFolderOfFarms_SaysWhatItTakes(string place, string said)
    {
        using Scratch scratch = new();
        Checksums.Copy(ManyFarms.Sound, scratch.File("one"));
        Directory.CreateDirectory(scratch.File("empty"));

        ProgramRun run = await Program.RunAsync("review-all", scratch.File(place), "--out", scratch.File("out"));

        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(scratch.File("out")));
    }

    [Fact]
    public async Task ReviewAll_IntoTheFarmsOrAFolderOfOthers_IsRefused()
    {
        using Scratch scratch = new();
        string farms = ManyFarms.In(scratch);
        Directory.CreateDirectory(scratch.File("taken"));
        File.WriteAllText(scratch.File("taken/letter.txt"), "keep me");

        Assert.Equal(2, (await Program.RunAsync("review-all", farms, "--out", Path.Combine(farms, "out"))).ExitCode);
        Assert.Equal(2, (await Program.RunAsync("review-all", farms, "--out", scratch.File("taken"))).ExitCode);
        Assert.Equal(["letter.txt"], Entries(scratch.File("taken")));
        Assert.False(Directory.Exists(Path.Combine(farms, "out")));
    }

    private static IEnumerable<string> Entries(string folder) => Directory.GetFileSystemEntries(folder).Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal);
}
