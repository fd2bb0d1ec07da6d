using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

public class DecideCommandTests
{
    private static readonly string Demo = Path.Combine(Repository.Root, "demo-data");

    [Fact]
    public async Task Decide_DropALosingCrop_ShowsTwoAnswersAndSaysWhyTheyDisagree()
    {
        ProgramRun run = await Program.RunAsync("decide", Demo, "--year", "2025", "--drop", "peppers");

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Contains("The two disagree because", run.Output, StringComparison.Ordinal);
        Assert.Contains("full cost", run.Output, StringComparison.Ordinal);
        Assert.Contains("avoidable cost", run.Output, StringComparison.Ordinal);
        Assert.Contains("fixed cost on other shoulders", run.Output, StringComparison.Ordinal);
        Assert.Contains("not tax, legal, lending or food-safety advice", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Decide_WithoutAChange_GivesTheSameVerdictsTwice()
    {
        ProgramRun once = await Program.RunAsync("decide", Demo, "--year", "2025");
        ProgramRun again = await Program.RunAsync("decide", Demo, "--year", "2025");

        Assert.True(once.ExitCode == 0, once.Error);
        Assert.Equal(once.Output, again.Output);
        Assert.Contains("stays ahead of", once.Output, StringComparison.Ordinal);
        Assert.Contains("yours to set", once.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Did you mean Peppers?", "--drop", "Pepers")]
    [InlineData("need --by LENGTH", "--grow", "Carrots")]
    [InlineData("one change at a time", "--drop", "Carrots", "--grow", "Kale", "--by", "10")]
    [InlineData("--by goes with", "--drop", "Carrots", "--by", "10")]
    public async Task Decide_WrongUse_SaysHowToMendIt(string expected, params string[] arguments)
    {
        ProgramRun run = await Program.RunAsync(["decide", Demo, .. arguments]);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains(expected, run.Error, StringComparison.Ordinal);
    }
}
