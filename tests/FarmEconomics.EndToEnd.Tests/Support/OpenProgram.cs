using System.Diagnostics;
using System.Text.RegularExpressions;
using FarmEconomics.EndToEnd.Tests.Support;

// Started once for all tests that ask for it: its notebooks are worked out once.
[assembly: AssemblyFixture(typeof(OpenDemoFarm))]

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>The program serving pages, started as a user starts it; ended with all its children.</summary>
public sealed partial class OpenProgram : IAsyncDisposable
{
    private readonly Process process;

    private readonly ErrorStream errors;

    private OpenProgram(Process process, string door, ErrorStream errors)
    {
        this.process = process;
        this.errors = errors;
        Door = door;
        Base = door[..door.IndexOf("/enter", StringComparison.Ordinal)];
        Token = door[(door.IndexOf('=', StringComparison.Ordinal) + 1)..];
    }

    /// <summary>The address it printed, with the key.</summary>
    public string Door { get; }

    /// <summary>The address without path.</summary>
    public string Base { get; }

    public string Token { get; }

    public int Port => new Uri(Base).Port;

    public int Id => process.Id;

    public bool IsRunning => !process.HasExited;

    /// <summary>What it wrote on the error stream so far.</summary>
    public string Errors => errors.Text;

    public static Task<OpenProgram> StartAsync(string records, params string[] more) => StartOtherAsync("dotnet", [Program.Assembly, "open", records, "--no-browser", .. more]);

    /// <summary>Starts the program in another way, such as the installed tool.</summary>
    public static async Task<OpenProgram> StartOtherAsync(string program, IReadOnlyList<string> arguments)
    {
        ProcessStartInfo start = new(program, arguments)
        {
            WorkingDirectory = Path.GetTempPath(),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        };
        Process process = Process.Start(start)!;
        ErrorStream errors = new(process);
        using CancellationTokenSource limit = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
        limit.CancelAfter(TimeSpan.FromSeconds(120));
        while (await process.StandardOutput.ReadLineAsync(limit.Token) is { } line)
        {
            if (Address().Match(line) is { Success: true } found)
            {
                // Read on, so that the pipe never fills.
                _ = process.StandardOutput.ReadToEndAsync(CancellationToken.None);
                return new OpenProgram(process, found.Value, errors);
            }
        }

        throw new InvalidOperationException($"No address was printed: {errors.Text}");
    }

    /// <summary>A client that holds the key, without a browser.</summary>
    public HttpClient Client()
    {
        HttpClient client = new(new HttpClientHandler { UseCookies = false, AllowAutoRedirect = false }) { BaseAddress = new Uri(Base), Timeout = TimeSpan.FromSeconds(120) };
        client.DefaultRequestHeaders.Add("Cookie", $"farm-page-{Port}={Token}");
        return client;
    }

    public async ValueTask DisposeAsync()
    {
        if (!process.HasExited)
        {
            process.Kill(entireProcessTree: true);
            await process.WaitForExitAsync();
        }

        process.Dispose();
    }

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+/enter\?token=[0-9a-f]+")]
    private static partial Regex Address();
}

/// <summary>One program on the demo farm and one browser for all tests.</summary>
public sealed class OpenDemoFarm : IAsyncDisposable
{
    private readonly Lazy<Task<OpenProgram>> program = new(() => OpenProgram.StartAsync(Path.Combine(Repository.Root, "demo-data"), "--scenarios", Path.Combine(Path.GetTempPath(), $"farm-scenarios-{Guid.NewGuid():N}.csv")));

    private readonly Lazy<Task<Microsoft.Playwright.IBrowser>> browser = new(Browser.LaunchAsync);

    public Task<OpenProgram> Program() => program.Value;

    /// <summary>A window that holds the key; with a context of its own, so that nothing is shared but the program.</summary>
    public async Task<Microsoft.Playwright.IPage> WindowAsync(Microsoft.Playwright.BrowserNewContextOptions? options = null)
    {
        Microsoft.Playwright.IBrowser chromium = await browser.Value;
        OpenProgram open = await program.Value;
        Microsoft.Playwright.IBrowserContext context = await chromium.NewContextAsync(options ?? new() { ViewportSize = new() { Width = 1280, Height = 900 } });
        context.SetDefaultTimeout(120_000);
        Microsoft.Playwright.IPage page = await context.NewPageAsync();
        // Tests of a page don't go through the door and the first page every time; AccessTests do.
        await context.AddCookiesAsync([new() { Name = $"farm-page-{open.Port}", Value = open.Token, Url = open.Base }]);
        await page.GotoAsync(open.Base + "/live.css");
        return page;
    }

    public async ValueTask DisposeAsync()
    {
        if (browser is { IsValueCreated: true, Value.IsCompletedSuccessfully: true })
        {
            await (await browser.Value).DisposeAsync();
        }

        if (program is { IsValueCreated: true, Value.IsCompletedSuccessfully: true })
        {
            await (await program.Value).DisposeAsync();
        }
    }
}
