using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

public class ExplainCommandTests
{
    private static readonly string Demo = Path.Combine(Repository.Root, "demo-data");

    [Fact]
    public async Task Explain_CropOfTheDemoFarm_GoesDownToRowsWithFileAndLine()
    {
        ProgramRun run = await Program.RunAsync("explain", Demo, "--year", "2025", "--crop", "carrots");

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Matches(@"sales\.csv:\d+", run.Output);
        Assert.Matches(@"labor\.csv:\d+", run.Output);
        Assert.Contains("grid power", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', run.Output);
    }

    [Fact]
    public async Task Explain_OneLine_ShowsThatLineOnly()
    {
        ProgramRun run = await Program.RunAsync("explain", Demo, "--crop", "Carrots", "--line", "overhead");

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("general overhead", run.Output, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"sales\.csv:\d+", run.Output);
    }

    [Fact]
    public async Task Explain_MisspelledCrop_NamesTheNearest()
    {
        ProgramRun run = await Program.RunAsync("explain", Demo, "--crop", "Carots");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("Did you mean Carrots?", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Explain_UnknownLine_NamesTheLines()
    {
        ProgramRun run = await Program.RunAsync("explain", Demo, "--crop", "Carrots", "--line", "magic");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("materials, selling, labor, infrastructure, overhead", run.Error, StringComparison.Ordinal);
    }
}
