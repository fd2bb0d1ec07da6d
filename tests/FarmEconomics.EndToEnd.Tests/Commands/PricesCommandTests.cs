using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.Playwright;
using Program = FarmEconomics.EndToEnd.Tests.Support.Program;

namespace FarmEconomics.EndToEnd.Tests.Commands;

public class PricesCommandTests
{
    private static readonly string Demo = Path.Combine(Repository.Root, "demo-data");

    [Fact]
    public async Task Prices_OneChannel_PrintsItsTableAndItsAssumptions()
    {
        ProgramRun run = await Program.RunAsync("prices", Demo, "--year", "2025", "--channel", "saturday market", "--target-hour", "30", "--step", "0.5");

        Assert.True(run.ExitCode == 0, run.Error);
        Assert.Contains("Prices through Saturday Market, 2025", run.Output, StringComparison.Ordinal);
        Assert.Contains("30.00 per labor hour", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Juniper Shop", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Prices_UnknownChannel_NamesTheNearest()
    {
        ProgramRun run = await Program.RunAsync("prices", Demo, "--channel", "Saturday Markt");

        Assert.Equal(2, run.ExitCode);
        Assert.Contains("Did you mean Saturday Market?", run.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--step", "0")]
    [InlineData("--target-hour", "-1")]
    [InlineData("--target-margin", "100")]
    [InlineData("--members", "0")]
    public async Task Prices_NumberOutOfRange_IsRefused(string option, string value)
    {
        ProgramRun run = await Program.RunAsync("prices", Demo, option, value);

        Assert.Equal(2, run.ExitCode);
        Assert.NotEmpty(run.Error);
        Assert.Empty(run.Output);
    }

    [Fact]
    public async Task Prices_OutInsideTheRecords_IsRefusedAndNothingWritten()
    {
        string inside = Path.Combine(Demo, "sheets");
        ProgramRun run = await Program.RunAsync("prices", Demo, "--out", inside);

        Assert.Equal(2, run.ExitCode);
        Assert.False(Directory.Exists(inside));
    }

    [Fact]
    public async Task Sheets_OfEveryChannel_FitOnePrintedPageEach()
    {
        using Scratch scratch = new();
        string output = scratch.File("sheets");
        ProgramRun run = await Program.RunAsync("prices", Demo, "--year", "2025", "--members", "36", "--out", output);
        Assert.True(run.ExitCode == 0, run.Error);
        string[] sheets = Directory.GetFiles(output, "*.html");
        Assert.Equal(6, sheets.Length);
        Assert.All(sheets, sheet => Assert.Contains("not tax, legal, lending or food-safety advice", File.ReadAllText(sheet), StringComparison.Ordinal));

        await using IBrowser browser = await Browser.LaunchAsync();
        foreach ((string sheet, string paper) in sheets.SelectMany(sheet => new[] { (sheet, "letter"), (sheet, "A4") }))
        {
            PrintedPage printed = await PrintedPage.Of(browser, sheet, paper);
            Assert.True(printed.Sheets == 1, $"{Path.GetFileName(sheet)} takes {printed.Sheets} sheets of {paper}");
            Assert.Empty(printed.Cut);
        }
    }
}
