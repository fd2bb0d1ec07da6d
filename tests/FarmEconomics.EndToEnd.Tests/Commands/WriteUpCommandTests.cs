using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

public class WriteUpCommandTests
{
    private static readonly string Demo = Path.Combine(Repository.Root, "demo-data");

    [Fact]
    public async Task WriteUp_DemoProject_WritesPageAndWorkbookAndSaysTheAnswer()
    {
        using Scratch scratch = new();
        string output = scratch.File("out");
        ProgramRun run = await Program.RunAsync("writeup", Demo, "--year", "2025", "--project", "Larger cold room", "--out", output, "--assume", "hours_saved=60", "--class", "Truck=5");

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Contains("net present value", run.Output, StringComparison.Ordinal);
        string page = await File.ReadAllTextAsync(Path.Combine(output, "writeup.html"), TestContext.Current.CancellationToken);
        Assert.Contains("not tax, legal, lending or food-safety advice", page, StringComparison.Ordinal);
        Assert.Contains("<svg", page, StringComparison.Ordinal);
        Assert.True(new FileInfo(Path.Combine(output, "writeup.xlsx")).Length > 20_000);
    }

    [Fact]
    public async Task WriteUp_WrongUse_WritesNothingAndSaysWhatIsKnown()
    {
        using Scratch scratch = new();
        string output = scratch.File("out");
        ProgramRun project = await Program.RunAsync("writeup", Demo, "--project", "Barn", "--out", output);
        ProgramRun assumption = await Program.RunAsync("writeup", Demo, "--assume", "hours_savd=60", "--out", output);

        Assert.Equal((2, 2), (project.ExitCode, assumption.ExitCode));
        Assert.Contains("it holds Larger cold room", project.Error, StringComparison.Ordinal);
        Assert.Contains("did you mean hours_saved", assumption.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(output));
    }
}
