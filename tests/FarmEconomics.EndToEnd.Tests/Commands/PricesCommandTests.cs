using FarmEconomics.EndToEnd.Tests.Support;

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

        string chromium = Tool.Require("FARMECONOMICS_REQUIRE_BROWSER", "the price sheets are not printed", "chromium", "chromium-browser", "google-chrome");
        foreach (string sheet in sheets)
        {
            string pdf = Path.ChangeExtension(sheet, ".pdf");
            (int exitCode, string said) = await Tool.RunAsync(
                chromium,
                scratch.Folder,
                ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", $"--user-data-dir={scratch.File("profile")}", "--no-pdf-header-footer", $"--print-to-pdf={pdf}", new Uri(sheet).AbsoluteUri]);
            Assert.True(exitCode == 0, said);
            Assert.True(PageCount(pdf) == 1, $"{Path.GetFileName(sheet)} takes {PageCount(pdf)} pages");
        }
    }

    /// <summary>The pages of a PDF, counted by their objects: the browser writes them uncompressed.</summary>
    private static int PageCount(string pdf)
    {
        string text = System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(pdf));
        return System.Text.RegularExpressions.Regex.Count(text, @"/Type\s*/Page\b(?!s)");
    }
}
