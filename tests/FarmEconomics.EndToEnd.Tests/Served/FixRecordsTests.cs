using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>A row in error is fixed in the browser, by keyboard, in a narrow window; refused when wrong, undone, and never offered with --read-only.</summary>
public class FixRecordsTests
{
    private const string Wrong = "date,planting,quantity\n2025-05-10,L1,40\n2025-06-10,K1,thirty\n";

    [Fact]
    public async Task RowInError_FixedByKeyboardInANarrowWindow_IsSavedAndUndone()
    {
        using Scratch scratch = new();
        Checksums.Copy(ManyFarms.Sound, scratch.File("farm"));
        string place = Path.Combine(scratch.File("farm"), "harvests.csv");
        File.WriteAllText(place, Wrong);
        await using OpenProgram open = await OpenProgram.StartAsync(scratch.File("farm"), "--scenarios", scratch.File("scenarios.csv"));
        await using IBrowser browser = await Browser.LaunchAsync();
        IPage page = await WindowAsync(browser, open);

        await page.GotoAsync(open.Base + "/fix");
        await page.GetByRole(AriaRole.Link, new() { Name = "harvests.csv:3" }).FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        ILocator quantity = page.GetByLabel("quantity (needed)");
        await Assertions.Expect(quantity).ToHaveValueAsync("thirty");
        await Assertions.Expect(quantity).ToBeFocusedAsync();
        Assert.True(await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= document.documentElement.clientWidth"), "the form is wider than the window");
        await quantity.FillAsync("3O");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("Nothing was saved");
        await Assertions.Expect(quantity).ToHaveAttributeAsync("aria-invalid", "true");
        Assert.Equal(Wrong, File.ReadAllText(place));

        await quantity.FillAsync("30");
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("Saved in harvests.csv");
        Assert.Equal(Wrong.Replace("thirty", "30", StringComparison.Ordinal), File.ReadAllText(place));
        Assert.Equal(Wrong, File.ReadAllText(Assert.Single(Directory.GetFiles(Path.Combine(scratch.File("farm"), "history")))));

        await page.GetByRole(AriaRole.Button, new() { Name = "Undo the last change of harvests.csv" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("as it was");
        Assert.Equal(Wrong, File.ReadAllText(place));
    }

    [Fact]
    public async Task ReadOnly_ShowsTheRowAndSavesNothing()
    {
        using Scratch scratch = new();
        Checksums.Copy(ManyFarms.Sound, scratch.File("farm"));
        string place = Path.Combine(scratch.File("farm"), "harvests.csv");
        string before = File.ReadAllText(place);
        await using OpenProgram open = await OpenProgram.StartAsync(scratch.File("farm"), "--read-only", "--scenarios", scratch.File("scenarios.csv"));
        await using IBrowser browser = await Browser.LaunchAsync();
        IPage page = await WindowAsync(browser, open);

        await page.GotoAsync(open.Base + "/fix/row?file=harvests.csv&line=2");
        await Assertions.Expect(page.GetByText("Opened with --read-only")).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Save" })).ToHaveCountAsync(0);
        await page.GetByLabel("quantity (needed)").FillAsync("1");
        await page.EvaluateAsync("() => document.querySelector('form.fields').submit()");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Nothing was saved" })).ToBeVisibleAsync();
        Assert.Equal(before, File.ReadAllText(place));
    }

    private static async Task<IPage> WindowAsync(IBrowser browser, OpenProgram open)
    {
        IBrowserContext context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 400, Height = 800 } });
        context.SetDefaultTimeout(60_000);
        await context.AddCookiesAsync([new() { Name = $"farm-page-{open.Port}", Value = open.Token, Url = open.Base }]);
        IPage page = await context.NewPageAsync();
        if (Environment.GetEnvironmentVariable("FARMECONOMICS_SCREENSHOTS") is { Length: > 0 } folder)
        {
            await page.GotoAsync(open.Base + "/fix");
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, "fix.png"), FullPage = true });
            await page.GotoAsync(open.Base + "/fix/row?file=harvests.csv&line=3");
            await page.ScreenshotAsync(new() { Path = Path.Combine(folder, "fix-row.png"), FullPage = true });
        }

        return page;
    }
}
