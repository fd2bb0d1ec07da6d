using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Reports.Frame;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Pages;

/// <summary>The page in a real browser (Debian's chromium).</summary>
public class BrowserTests(BrowserOfClass chromium) : IClassFixture<BrowserOfClass>
{
    [Fact]
    public async Task Page_InABrowser_HasNothingToComplainOf()
    {
        string[] complaints = await OpenAsync(await NotebookPageTests.SeasonPage());
        Assert.Empty(complaints);
    }

    [Fact]
    public async Task Page_ThatReachesOut_IsStoppedAndHeard()
    {
        // The policy stops every request and says so on the console, so silence above means that none was tried.
        string page = (await NotebookPageTests.SeasonPage()).Replace("</main>", "<img src=\"http://127.0.0.1:9/x.png\" alt=\"\"></main>", StringComparison.Ordinal);
        Assert.Contains(await OpenAsync(page), line => line.Contains("Content Security Policy", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Page_WithAStyleThatWasChanged_IsRefusedAndHeard()
    {
        string page = (await NotebookPageTests.SeasonPage()).Replace("</style>", " </style>", StringComparison.Ordinal);
        Assert.Contains(await OpenAsync(page), line => line.Contains("style", StringComparison.Ordinal));
    }

    private async Task<string[]> OpenAsync(string page)
    {
        IBrowser browser = await chromium.Get();
        using Scratch scratch = new();
        string file = scratch.File("page.html");
        await File.WriteAllTextAsync(file, page, TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(scratch.File(PageShell.FontsFile), PageShell.Fonts, TestContext.Current.CancellationToken);
        List<string> said = [];
        IPage tab = await browser.NewPageAsync(new() { ViewportSize = new() { Width = 1200, Height = 900 } });
        tab.Console += (_, message) => said.Add(message.Text);
        await tab.GotoAsync(new Uri(file).AbsoluteUri);
        byte[] picture = await tab.ScreenshotAsync();
        await tab.CloseAsync();
        Assert.True(picture.Length > 10_000, string.Join('\n', said));
        return [.. said];
    }
}
