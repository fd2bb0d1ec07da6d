using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(FarmEconomics.EndToEnd.Tests.Support.DriverOfTheRun))]

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>A real browser, the one of the system (Debian's chromium) driven by Playwright; none is ever downloaded.</summary>
internal static class Browser
{
    private const string Required = "FARMECONOMICS_REQUIRE_BROWSER";

    // No network but what a page asks for; the sandbox needs rights that a container seldom has.
    private static readonly string[] Flags =
    [
        "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    // Playwright's driver is a process of its own: one for all tests, ended with them.
    private static readonly Lazy<Task<IPlaywright>> Driver = new(Playwright.CreateAsync);

    /// <summary>A new browser without a window; the test is skipped where none is installed, or fails where one is required.</summary>
    /// <returns>The browser, with a profile of its own that goes with it; the caller disposes of it.</returns>
    public static async Task<IBrowser> LaunchAsync()
    {
        string chromium = Tool.Require(Required, "the pages are not checked in a browser", "chromium", "chromium-browser", "google-chrome");
        IPlaywright driver = await Driver.Value;
        return await driver.Chromium.LaunchAsync(new() { ExecutablePath = chromium, Args = Flags });
    }

    internal static void EndDriver()
    {
        if (Driver is { IsValueCreated: true, Value.IsCompletedSuccessfully: true })
        {
            Driver.Value.Result.Dispose();
        }
    }
}

/// <summary>Ends the browser's driver with the last test.</summary>
public sealed class DriverOfTheRun : IDisposable
{
    /// <inheritdoc/>
    public void Dispose() => Browser.EndDriver();
}

/// <summary>One browser for all tests of a class (<c>IClassFixture&lt;BrowserOfClass&gt;</c>), started by the first that asks.</summary>
public sealed class BrowserOfClass : IAsyncDisposable
{
    private readonly Lazy<Task<IBrowser>> browser = new(Browser.LaunchAsync);

    /// <summary>The browser; every test that asks is skipped or fails where there is none.</summary>
    public Task<IBrowser> Get() => browser.Value;

    public async ValueTask DisposeAsync()
    {
        if (browser is { IsValueCreated: true, Value.IsCompletedSuccessfully: true })
        {
            await (await browser.Value).DisposeAsync();
        }
    }
}
