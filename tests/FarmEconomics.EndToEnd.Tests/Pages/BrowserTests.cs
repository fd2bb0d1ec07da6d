using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Pages;

/// <summary>The page in a real browser (Debian's chromium).</summary>
public class BrowserTests
{
    private const string Required = "FARMECONOMICS_REQUIRE_BROWSER";

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

    private static async Task<string[]> OpenAsync(string page)
    {
        string chromium = Tool.Require(Required, "the pages are not checked in a browser", "chromium", "chromium-browser", "google-chrome");
        using Scratch scratch = new();
        string file = scratch.File("page.html");
        await File.WriteAllTextAsync(file, page, TestContext.Current.CancellationToken);
        (int exitCode, string said) = await Tool.RunAsync(
            chromium,
            scratch.Folder,
            [
                "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update",
                $"--user-data-dir={scratch.File("profile")}", "--enable-logging=stderr", "--window-size=1200,900",
                $"--screenshot={scratch.File("page.png")}", new Uri(file).AbsoluteUri,
            ]);
        Assert.True(exitCode == 0, said);
        Assert.True(new FileInfo(scratch.File("page.png")).Length > 10_000, said);
        return [.. said.Split('\n').Where(line => line.Contains("CONSOLE", StringComparison.Ordinal))];
    }
}
