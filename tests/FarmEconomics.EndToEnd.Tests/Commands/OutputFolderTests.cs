using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

public class OutputFolderTests
{
    private static readonly string Sound = Path.Combine(Repository.Root, "tests", "FarmEconomics.Tests", "BadRecords", "sound");

    [Fact]
    public async Task Review_AfterOneThatWasKilled_CleansUpAndKeepsTheResultWhole()
    {
        using Scratch scratch = new();
        string output = scratch.File("out");
        Assert.Equal(0, (await Program.RunAsync("review", Sound, "--out", output)).ExitCode);

        // What a run killed before the swap, and one killed in the middle of two renames, leave behind; no process has these numbers.
        Directory.CreateDirectory(scratch.File(".out.new-2147480001"));
        File.WriteAllText(scratch.File(".out.new-2147480001/half.html"), "half");
        Directory.Move(output, scratch.File(".out.old-2147480002"));

        ProgramRun run = await Program.RunAsync("review", Sound, "--out", output);

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.True(File.Exists(Path.Combine(output, "index.html")));
        Assert.Equal(["out"], Directory.GetFileSystemEntries(scratch.Folder).Select(Path.GetFileName));
    }
}
