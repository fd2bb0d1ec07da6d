using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>
/// Next year's plan where a farm is opened: taken over when the button is pressed, changed row by row, put back; in a narrow window.
/// </summary>
public class PlanPageTests
{
    [Fact]
    public async Task Plan_TakenOverChangedAndUndone_WritesOnlyWhenPressed()
    {
        using Scratch scratch = new();
        Checksums.Copy(ManyFarms.Sound, scratch.File("farm"));
        string plan = Path.Combine(scratch.File("farm"), "plan.csv");
        await using OpenProgram open = await OpenProgram.StartAsync(scratch.File("farm"), "--scenarios", scratch.File("scenarios.csv"));
        await using IBrowser browser = await Browser.LaunchAsync();
        IPage page = await WindowAsync(browser, open);

        await page.GotoAsync(open.Base + "/next-year");
        Assert.False(File.Exists(plan));
        Assert.True(
            await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= document.documentElement.clientWidth"),
            "the page is wider than the window"
        );
        await page.GetByRole(AriaRole.Button, new() { Name = "Save the plan in my records" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Saved in plan.csv and plan_sales.csv");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToContainTextAsync("Your plan for 2026");
        string[] rows = File.ReadAllLines(plan);
        Assert.StartsWith("2026,kale 2026-1,kale,A1,100,", Assert.Single(rows.Skip(1)), StringComparison.Ordinal);

        await page.GetByText("Change your plan, row by row").ClickAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "kale 2026-1" }).ClickAsync();
        await page.GetByLabel("bed_feet (needed)").FillAsync("150");
        await page.GetByRole(AriaRole.Button, new() { Name = "Save" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Saved in plan.csv");
        await Assertions.Expect(page.Locator("#plan-rows .problems")).ToContainTextAsync("A1, from");
        await Assertions.Expect(page.Locator("#plan-rows .problems")).ToContainTextAsync("50 bed-feet more than there are");

        await page.GetByRole(AriaRole.Button, new() { Name = "Undo the last change of plan.csv" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("as it was");
        Assert.Equal(rows, File.ReadAllLines(plan));
    }

    [Fact]
    public async Task Plan_OpenedReadOnly_OffersNoWayToWriteAndRefusesOne()
    {
        using Scratch scratch = new();
        Checksums.Copy(ManyFarms.Sound, scratch.File("farm"));
        await using OpenProgram open = await OpenProgram.StartAsync(
            scratch.File("farm"),
            "--read-only",
            "--scenarios",
            scratch.File("scenarios.csv")
        );
        await using IBrowser browser = await Browser.LaunchAsync();
        IPage page = await WindowAsync(browser, open);

        await page.GotoAsync(open.Base + "/next-year");
        await Assertions.Expect(page.GetByText("Opened with --read-only")).ToBeVisibleAsync();
        await page.EvaluateAsync("() => { const form = document.createElement('form'); form.method = 'post'; form.action = '/plan/take'; document.body.append(form); form.submit(); }");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Nothing was saved" })).ToBeVisibleAsync();
        Assert.False(File.Exists(Path.Combine(scratch.File("farm"), "plan.csv")));
    }

    private static async Task<IPage> WindowAsync(IBrowser browser, OpenProgram open)
    {
        IBrowserContext context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 400, Height = 800 } });
        context.SetDefaultTimeout(60_000);
        await context.AddCookiesAsync([new() { Name = $"farm-page-{open.Port}", Value = open.Token, Url = open.Base }]);
        return await context.NewPageAsync();
    }
}
