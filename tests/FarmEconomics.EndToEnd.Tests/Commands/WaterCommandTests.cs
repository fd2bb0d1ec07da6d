using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Commands;

/// <summary>The list of a dry morning, as typed.</summary>
public class WaterCommandTests
{
    private static readonly string Demo = Path.Combine(Repository.Root, "demo-data");

    [Fact]
    public async Task Water_OfADryDay_ListsBlocksAndWhatWaitingLoses()
    {
        ProgramRun run = await Program.RunAsync("water", Demo, "--date", "2025-08-12", "--gallons", "4200");
        Assert.Equal(0, run.ExitCode);
        Assert.Contains("Water these, from the top down", run.Output, StringComparison.Ordinal);
        Assert.Contains("100 gallons more would save $", run.Output, StringComparison.Ordinal);
        Assert.Contains("Water rights, wells and wiring", run.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Say how much water there is", "--date", "2025-08-12")]
    [InlineData("--sprinklers and --hours go together", "--sprinklers", "12")]
    [InlineData("Say how much water there is", "--gallons", "100", "--hours", "2")]
    [InlineData("--date takes a day", "--gallons", "100", "--date", "soon")]
    [InlineData("weather.csv tells of 2025-04-01 to 2025-10-31", "--gallons", "100", "--date", "2024-07-01")]
    public async Task Water_AskedWrongly_SaysWhatToWrite(string said, params string[] options)
    {
        ProgramRun run = await Program.RunAsync(["water", Demo, .. options]);
        Assert.Equal(2, run.ExitCode);
        Assert.Contains(said, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Water_WithoutWeather_SaysInOneLineWhatItWouldTell()
    {
        ProgramRun run = await Program.RunAsync("water", ManyFarms.Sound, "--gallons", "100");
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("Nothing can be said about water: there is no weather table. With weather.csv", run.Error,
            StringComparison.Ordinal);
    }
}
