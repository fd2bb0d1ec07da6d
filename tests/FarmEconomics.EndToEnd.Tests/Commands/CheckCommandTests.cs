using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

public class CheckCommandTests
{
    private static readonly string Demo = Path.Combine(Repository.Root, "demo-data");
    private static readonly string BadRecords = Path.Combine(Repository.Root, "tests", "FarmEconomics.Tests", "BadRecords");

    [Fact]
    public async Task Check_DemoFarm_EndsWithZeroAndCountsItsWarnings()
    {
        ProgramRun run = await Program.RunApartAsync("check", Demo);

        Assert.Equal(0, run.ExitCode);
        Assert.Contains("sales.csv", run.Output, StringComparison.Ordinal);
        Assert.Contains("0 errors, ", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', run.Output);
    }

    [Fact]
    public async Task Check_TwentyPlantedFaults_ReportsTwentyWithPlaceAndMend()
    {
        ProgramRun run = await Program.RunApartAsync("check", Path.Combine(BadRecords, "twenty-faults"), "--all");

        Assert.Equal(1, run.ExitCode);
        string[] faults = [.. run.Output.Split('\n').Where(line => line.Contains(": error ", StringComparison.Ordinal) || line.Contains(": warning ", StringComparison.Ordinal))];
        Assert.Equal(20, faults.Length);
        Assert.All(faults, fault => Assert.Matches(@"\.csv(:\d+:\d+)?: (error|warning) [EW]\d{3}: ", fault));
        Assert.Equal(20, run.Output.Split('\n').Count(line => line.StartsWith("    fix: ", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Check_ManyFaults_TellsAScreenInFullAndEachFurtherKindInALine()
    {
        using Scratch scratch = new();
        string list = scratch.File("list.csv");

        ProgramRun run = await Program.RunApartAsync("check", Path.Combine(BadRecords, "twenty-faults"), "--list", list);

        Assert.Equal(1, run.ExitCode);
        string[] told = run.Output[run.Output.IndexOf("In /", StringComparison.Ordinal)..].TrimEnd().Split('\n');
        int more = Array.FindIndex(told, line => line.StartsWith("... and ", StringComparison.Ordinal));
        Assert.InRange(more, 5, 24);
        Assert.All(told[(more + 1)..^2], line => Assert.StartsWith("    ", line, StringComparison.Ordinal));
        string[] codes = [.. File.ReadLines(list).Skip(1).Select(line => line.Split(',')[1]).Distinct()];
        Assert.All(codes, code => Assert.Contains($" {code}: ", run.Output, StringComparison.Ordinal));
        Assert.Contains("check --all tells every row", run.Output, StringComparison.Ordinal);
        Assert.Equal(1, run.Output.Split(BadRecords).Length - 1);
        Assert.Equal(21, File.ReadLines(list).Count());
        Assert.Equal(2, (await Program.RunApartAsync("check", Path.Combine(BadRecords, "twenty-faults"), "--list", list)).ExitCode);
    }

    [Fact]
    public async Task Check_NoSuchFolder_SaysSoAndEndsWithTwo()
    {
        ProgramRun run = await Program.RunApartAsync("check", "/no/such/folder");

        Assert.Equal(2, run.ExitCode);
        Assert.Equal("There is no folder \"/no/such/folder\".", run.Error.Trim());
    }

    [Fact]
    public async Task Check_SettingWithoutEquals_SaysHowAndEndsWithTwo()
    {
        ProgramRun run = await Program.RunApartAsync("check", Demo, "--set", "owner_wage");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("--set takes name=value", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Program_Help_NamesEveryCommandAndExitCode()
    {
        ProgramRun run = await Program.RunApartAsync("--help");

        Assert.Equal(0, run.ExitCode);
        foreach (string word in new[] { "check", "review", "explain", "Exit code 0", "only read your records" })
        {
            Assert.Contains(word, run.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Program_UnknownCommand_EndsWithTwo()
    {
        ProgramRun run = await Program.RunApartAsync("harvest", Demo);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("--help", run.Error, StringComparison.Ordinal);
    }
}
