using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

public class PlanCommandTests
{
    private static readonly string Demo = Path.Combine(Repository.Root, "demo-data");

    [Fact]
    public async Task Plan_Best_GainsIsProvedAndWritten()
    {
        string output = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        ProgramRun run = await Program.RunAsync("plan", Demo, "--best", "--out", output);

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Contains("The best mix would bring $", run.Output, StringComparison.Ordinal);
        Assert.Contains("brings the same to the cent", run.Output, StringComparison.Ordinal);
        Assert.True(File.ReadLines(Path.Combine(output, "plan.csv")).Count() > 100);
        Assert.Equal(13, File.ReadLines(Path.Combine(output, "cash.csv")).Count());
        Directory.Delete(output, recursive: true);
    }

    [Fact]
    public async Task Plan_WithoutAnything_RepeatsTheSeasonAndTellsHowThePlanOnFileCameOut()
    {
        ProgramRun run = await Program.RunAsync("plan", Demo);

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Contains("2026 planned like 2025", run.Output, StringComparison.Ordinal);
        Assert.Contains("than planned", run.Output, StringComparison.Ordinal);
        Assert.Contains("Cash month by month", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("There is no crop \"Garlc\". Did you mean Garlic?", "--best", "--least", "Garlc=400")]
    [InlineData("takes CROP=LENGTH", "--best", "--most", "Garlic")]
    [InlineData("not both", "--best", "--like-last-year")]
    [InlineData("--piece", "--best", "--piece", "0")]
    [InlineData("--least is a wish for the best mix; give --best as well.", "--least", "Garlic=400")]
    [InlineData("tell nothing of crop year 1999", "--year", "1999")]
    public async Task Plan_AskedWrongly_SaysHow(string says, params string[] options)
    {
        ProgramRun run = await Program.RunAsync(["plan", Demo, .. options]);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Fact]
    public async Task Plan_WithMoreWishedThanFits_SaysWhatIsShort()
    {
        ProgramRun run = await Program.RunAsync("plan", Demo, "--best", "--least", "Melons=40000");

        Assert.Equal(1, run.ExitCode);
        Assert.Contains("No plan keeps within your limits", run.Output, StringComparison.Ordinal);
    }

    /// <summary>
    /// Where there is no solver the command says so in one sentence, as a wrong use (exit code 2), before it reads anything.
    /// </summary>
    [Theory]
    [InlineData("--best")]
    [InlineData("--careful")]
    public async Task Plan_WithoutASolver_SaysSoInOneSentence(string option)
    {
        ProgramRun run = await Program.RunInAsync(
            new Dictionary<string, string> { ["FARMECONOMICS_SOLVER"] = "none" },
            "plan",
            Demo,
            option
        );

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("no solver for this computer", run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }
}
