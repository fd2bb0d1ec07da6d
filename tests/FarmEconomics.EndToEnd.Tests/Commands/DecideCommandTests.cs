using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

public class DecideCommandTests
{
    private static readonly string Demo = Path.Combine(Repository.Root, "demo-data");

    [Fact]
    public async Task Decide_DropACrop_BeginsWithCashAndOwnHours()
    {
        ProgramRun run = await Program.RunAsync("decide", Demo, "--year", "2025", "--drop", "micro mix");

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.All(run.Output.Split('\n'), line => Assert.InRange(line.TrimEnd().Length, 0, 100));
        string first = run.Output[..run.Output.IndexOf("\n\n", StringComparison.Ordinal)];
        Assert.StartsWith("Without Micro mix: $", first, StringComparison.Ordinal);
        Assert.Contains("less cash a year", first, StringComparison.Ordinal);
        Assert.True(first.Split("own hours").Length > 2, first);
        Assert.Contains("cash, hours and value", run.Output, StringComparison.Ordinal);
        Assert.Contains("cost that stays, on other crops", run.Output, StringComparison.Ordinal);
        Assert.Contains("not tax, legal, lending or food-safety", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhatIf_WithoutACrop_BeginsAsDecideDoes()
    {
        ProgramRun decide = await Program.RunAsync("decide", Demo, "--year", "2025", "--drop", "Beets");
        ProgramRun whatIf = await Program.RunAsync("whatif", Demo, "--year", "2025", "--change", "without beets");

        Assert.True(whatIf.ExitCode == 0, whatIf.Error);
        string words = decide.Output[..decide.Output.IndexOf("Drop Beets: cash", StringComparison.Ordinal)].TrimEnd();
        Assert.StartsWith(words, whatIf.Output, StringComparison.Ordinal);
        Assert.Contains("Worked through all records again", whatIf.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Decide_WithoutAChange_GivesTheSameVerdictsTwice()
    {
        ProgramRun once = await Program.RunAsync("decide", Demo, "--year", "2025");
        ProgramRun again = await Program.RunAsync("decide", Demo, "--year", "2025");

        Assert.True(once.ExitCode == 0, once.Error);
        Assert.Equal(once.Output, again.Output);
        Assert.Contains("What it added, at today's prices", once.Output, StringComparison.Ordinal);
        Assert.Contains("yours to set", once.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Did you mean Peppers?", "--drop", "Pepers")]
    [InlineData("need --by LENGTH", "--grow", "Carrots")]
    [InlineData("one change at a time", "--drop", "Carrots", "--grow", "Kale", "--by", "10")]
    [InlineData("--by goes with", "--drop", "Carrots", "--by", "10")]
    public async Task Decide_WrongUse_SaysHowToFixIt(string expected, params string[] arguments)
    {
        ProgramRun run = await Program.RunAsync(["decide", Demo, .. arguments]);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains(expected, run.Error, StringComparison.Ordinal);
    }
}
