using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

public class WhatIfCommandTests
{
    private static readonly string Demo = Path.Combine(Repository.Root, "demo-data");

    [Fact]
    public async Task WhatIf_Changes_AreAnsweredSavedAndComparedAndTheRecordsStay()
    {
        using Scratch scratch = new();
        string file = scratch.File("scenarios.csv");
        Dictionary<string, string> before = Contents();
        ProgramRun run = await Program.RunAsync("whatif", Demo, "--year", "2025", "--change", "price of Carrots=-10%", "--change", "wages=+5%", "--name", "Lean year", "--save", file);

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Contains("instead of", run.Output, StringComparison.Ordinal);
        Assert.Contains("the price of Carrots 10% lower", string.Join(' ', run.Output.Split()), StringComparison.Ordinal);
        Assert.Contains("They hold in the scenario too.", run.Output, StringComparison.Ordinal);
        Assert.Contains("not tax, legal, lending or food-safety", run.Output, StringComparison.Ordinal);
        Assert.Equal("scenario,change,note\nLean year,price of Carrots=-10%,\nLean year,wage of hired=+5%,\n", File.ReadAllText(file));
        Assert.Equal(before, Contents());

        ProgramRun compared = await Program.RunAsync("whatif", Demo, "--year", "2025", "--change", "owner_wage=25", "--compare", file);
        Assert.True(compared.ExitCode == 0, compared.Error);
        Assert.Contains("scenarios side by side", compared.Output, StringComparison.Ordinal);
        Assert.Contains("Lean year", compared.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Did you mean Carrots?", "--change", "price of Carots=+5%")]
    [InlineData("By how much, up or down?", "--change", "prices=5%")]
    [InlineData("A change is one of:", "--change", "everything")]
    [InlineData("give --name NAME", "--change", "prices=+5%", "--save", "x.csv")]
    [InlineData("There is no file nowhere.csv", "--compare", "nowhere.csv")]
    public async Task WhatIf_WrongUse_SaysHowToMendIt(string expected, params string[] arguments)
    {
        ProgramRun run = await Program.RunAsync(["whatif", Demo, .. arguments]);

        Assert.Equal(2, run.ExitCode);
        Assert.Contains(expected, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task WhatIf_EightSaveAtOnce_AllAreKept()
    {
        using Scratch scratch = new();
        string file = scratch.File("scenarios.csv");

        ProgramRun[] runs = await Task.WhenAll(Enumerable.Range(1, 8).Select(i =>
            Program.RunAsync("whatif", ManyFarms.Sound, "--change", "prices=+5%", "--name", $"scenario {i}", "--save", file)));

        Assert.All(runs, run => Assert.True(run.ExitCode == 0, run.Error));
        Assert.Equal(9, File.ReadAllLines(file).Length);
        Assert.All(Enumerable.Range(1, 8), i => Assert.Contains($"\nscenario {i},", File.ReadAllText(file), StringComparison.Ordinal));
        Assert.Equal([file], Directory.GetFileSystemEntries(scratch.Folder));
    }

    [Fact]
    public async Task WhatIf_SaveAmongTheRecords_IsRefused()
    {
        ProgramRun run = await Program.RunAsync("whatif", Demo, "--change", "prices=+5%", "--name", "x", "--save", Path.Combine(Demo, "scenarios.csv"));

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("lies in the records", run.Error, StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(Demo, "scenarios.csv")));
    }

    private static Dictionary<string, string> Contents() => Directory.GetFiles(Demo).ToDictionary(path => path, File.ReadAllText);
}
