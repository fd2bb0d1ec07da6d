using System.Diagnostics;
using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>Notebooks that never end, take too much or die: the page says so, stays, and the program goes on.</summary>
public class LimitsTests(BrowserOfClass chromium) : IClassFixture<BrowserOfClass>
{
    [SlowFact]
    public async Task HangingStep_IsStopped_AndThePageSaysSo()
    {
        await using OpenProgram open = await StartAsync("stuck", "--time-limit", "12");
        IPage page = await EnterAsync(open);
        await page.OpenNotebookAsync(open.Base + "/notebook/stuck");
        await OpenGroupAsync(page);
        await page.GetByLabel("Stuck").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Calculate" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("stopped after 12 s", new() { Timeout = 60_000 });
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Below stands the page as it was");
        await Assertions.Expect(page.Locator(".result")).ToContainTextAsync("over");

        // And the next run is as good as ever.
        await page.GetByLabel("Stuck").UncheckAsync();
        await page.GetByLabel("Memory to take").FillAsync("1");
        await page.CalculateAsync();
    }

    [SlowFact]
    public async Task Step_ThatTakesTooMuchMemory_IsStopped_AndThePageSaysSo()
    {
        await using OpenProgram open = await StartAsync("stuck", "--memory-limit", "600");
        IPage page = await EnterAsync(open);
        await page.OpenNotebookAsync(open.Base + "/notebook/stuck");
        await page.GetByLabel("Memory to take").FillAsync("4000");
        await page.GetByRole(AriaRole.Button, new() { Name = "Calculate" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("600 MB of memory", new() { Timeout = 90_000 });
        Assert.True(open.IsRunning);
    }

    [SlowFact]
    public async Task Kernel_ThatIsKilled_DoesNotTakeThePageAlong()
    {
        await using OpenProgram open = await StartAsync("stuck");
        IPage page = await EnterAsync(open);
        await page.OpenNotebookAsync(open.Base + "/notebook/stuck");
        await OpenGroupAsync(page);
        await page.GetByLabel("Stuck").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Calculate" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("step");
        foreach (Process child in ChildrenOf(open.Id))
        {
            child.Kill();
        }

        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("process ended", new() { Timeout = 30_000 });
        await page.GetByLabel("Stuck").UncheckAsync();
        await page.GetByLabel("Memory to take").FillAsync("2");
        await page.CalculateAsync();
    }

    [SlowFact]
    public async Task Run_CalledOff_LeavesThePageAsItWas()
    {
        await using OpenProgram open = await StartAsync("slow");
        IPage page = await EnterAsync(open);
        await page.OpenNotebookAsync(open.Base + "/notebook/slow");
        await page.GetByLabel("Rounds").FillAsync("90");

        // A slow answer: the button must not be there before there is a run it can call off.
        await page.RouteAsync("**/notebook/slow", async route =>
        {
            await Task.Delay(1000);
            await route.ContinueAsync();
        });
        await page.GetByRole(AriaRole.Button, new() { Name = "Calculate" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Cancel" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Stopped");
        await Assertions.Expect(page.Locator(".result")).ToContainTextAsync("rounds: 0");
    }

    [Fact]
    public async Task OwnNotebook_WithoutAgreement_IsNotRun()
    {
        ProgramRun run = await Support.Program.RunAsync("open", Path.Combine(Repository.Root, "demo-data"), "--no-browser", "--notebook", Repository.Sample("stuck"));
        Assert.Equal(2, run.ExitCode);
        Assert.Contains("--run-my-notebooks", run.Error, StringComparison.Ordinal);
    }

    private static Task<OpenProgram> StartAsync(string notebook, params string[] more) =>
        OpenProgram.StartAsync(Path.Combine(Repository.Root, "demo-data"), ["--notebook", Repository.Sample(notebook), "--run-my-notebooks", .. more]);

    private static async Task OpenGroupAsync(IPage page) => await page.EvaluateAsync("() => document.querySelectorAll('details').forEach(each => each.open = true)");

    private static IEnumerable<Process> ChildrenOf(int id) => Process.GetProcesses().Where(process =>
    {
        try
        {
            string[] stat = File.ReadAllText($"/proc/{process.Id}/stat").Split(')')[^1].Split(' ', StringSplitOptions.RemoveEmptyEntries);
            return int.Parse(stat[1], System.Globalization.CultureInfo.InvariantCulture) == id;
        }
        catch (Exception gone) when (gone is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    });

    private async Task<IPage> EnterAsync(OpenProgram open)
    {
        IBrowserContext context = await (await chromium.Get()).NewContextAsync();
        context.SetDefaultTimeout(120_000);
        // Not through the door: AccessTests go there.
        await context.AddCookiesAsync([new() { Name = $"farm-page-{open.Port}", Value = open.Token, Url = open.Base }]);
        return await context.NewPageAsync();
    }
}
