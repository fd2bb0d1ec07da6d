using System.Globalization;
using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>A grower changes a year, a price or a wage and reads the changed numbers, in a real browser.</summary>
public class ChangeTests(OpenDemoFarm farm)
{
    [Fact]
    public async Task Address_ThatWasPrinted_LeadsToTheSeason()
    {
        OpenProgram open = await farm.Program();
        IPage page = await farm.WindowAsync();
        await page.Context.ClearCookiesAsync();
        await page.GotoAsync(open.Door);
        await Assertions.Expect(page).ToHaveURLAsync(open.Base + "/");
        Assert.StartsWith("2025 ", await page.HeadlineAsync(), StringComparison.Ordinal);
        await Assertions.Expect(page.Locator("[data-block='season.ladder'] tbody tr")).ToHaveCountAsync(5);
    }

    [Fact]
    public async Task Year_Changed_ShowsThatYearsNumbers()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/");
        string before = await page.Locator("[data-block='season.figures'] b").First.InnerTextAsync();
        await page.ChangeAsync(() => page.GetByLabel("Crop year").SelectOptionAsync("2024"));
        string after = await page.Locator("[data-block='season.figures'] b").First.InnerTextAsync();
        Assert.StartsWith("2024 ", await page.HeadlineAsync(), StringComparison.Ordinal);
        Assert.EndsWith("?year=2024", page.Url, StringComparison.Ordinal);

        // The numbers are those of the tables, which go another way: no page, no browser.
        Assert.Equal((await OutputAsync(2024)).ToString("$#,0", CultureInfo.InvariantCulture), after);
        Assert.NotEqual(before, after);
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "Drop or grow", Exact = true })).ToHaveAttributeAsync("href", "/drop-or-grow?year=2024");

        await page.GoBackAsync();
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("2025");
    }

    // A place on the page is no other page: drawing it anew would lose what isn't sent yet.
    [Fact]
    public async Task LinkToThePagesContent_KeepsWhatWasTyped()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/prices");
        await page.EvaluateAsync("() => { document.querySelector('main').dataset.old = 'yes'; document.querySelector('a.skip').click(); }");
        await page.EvaluateAsync("() => new Promise(done => setTimeout(done, 1500))");
        await Assertions.Expect(page.Locator("main")).ToHaveAttributeAsync("data-old", "yes");
    }

    [Fact]
    public async Task Interest_Raised_LowersWhatWasLeft_AndAWageThatChangesNothingSaysSo()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/");
        ILocator left = page.Locator("[data-block='season.ladder'] td.n").First;
        decimal before = decimal.Parse(await left.InnerTextAsync(), NumberStyles.Number, CultureInfo.InvariantCulture);
        await page.ChangeAsync(() => page.GetByLabel("Yearly cost of capital").EnterAsync("15"));
        Assert.True(decimal.Parse((await left.InnerTextAsync()).Replace('\u2212', '-'), NumberStyles.Number, CultureInfo.InvariantCulture) < before);
        Assert.Equal("15", await page.GetByLabel("Yearly cost of capital").InputValueAsync());
    }

    [Fact]
    public async Task NextYear_AskedSomethingElse_PutsTheNewAnswerInByItself()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/next-year");
        ILocator figures = page.Locator("[data-block='next-year.figures']");
        ILocator waiting = page.Locator("[data-anew]");
        await Assertions.Expect(figures).ToBeVisibleAsync(new() { Timeout = 120_000 });
        await Assertions.Expect(waiting).ToHaveCountAsync(0);
        string before = await figures.InnerTextAsync();
        await page.ChangeAsync(() => page.GetByLabel("What an hour of your own is worth").EnterAsync("60"));
        await Assertions.Expect(waiting).ToHaveCountAsync(0, new() { Timeout = 120_000 });
        Assert.NotEqual(before, await figures.InnerTextAsync());
    }

    // Whoever picks a channel and goes on to the next field types while the page of the channel is on its way.
    [Fact]
    public async Task Field_TypedIntoWhileThePageIsDrawnAnew_KeepsItsText_AndCountsOnceItIsLeft()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/prices");
        TaskCompletionSource typed = new(TaskCreationOptions.RunContinuationsAsynchronously);
        await page.RouteAsync("**/prices?channel=*", async route =>
        {
            await typed.Task;
            await route.ContinueAsync();
        });
        ILocator step = page.GetByLabel("Price step"), main = page.Locator("main");
        await page.EvaluateAsync("() => document.querySelectorAll('details').forEach(each => each.open = true)");
        await main.EvaluateAsync("each => { each.dataset.old = 'yes'; }");
        await page.Locator("[name=channel]").SelectOptionAsync("Depot Market");
        await step.FillAsync("0.5");
        typed.SetResult();
        await Assertions.Expect(main).Not.ToHaveAttributeAsync("data-old", "yes");
        await Assertions.Expect(step).ToHaveValueAsync("0.5");
        await Assertions.Expect(step).ToBeFocusedAsync();
        Assert.EndsWith("?channel=Depot+Market", page.Url, StringComparison.Ordinal);

        await step.PressAsync("Tab");
        await page.WaitForURLAsync("**/prices?channel=Depot+Market&step=0.5");
        await Assertions.Expect(step).ToHaveValueAsync("0.5");
    }

    [Fact]
    public async Task WrongValue_IsExplainedBesideItsField_AndThePageStays()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/prices");
        string before = await page.HeadlineAsync();
        ILocator step = page.GetByLabel("Price step");
        await page.ChangeAsync(() => step.EnterAsync("a quarter"));
        await Assertions.Expect(step).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(page.Locator("#f-step-fault")).ToHaveTextAsync("“a quarter” is not a number; write digits, such as 4.50.");
        Assert.Equal(before, await page.HeadlineAsync());
    }

    [Fact]
    public async Task Figure_OfACrop_OpensItsRowsWithFileAndLine()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/?year=2024");
        await page.Locator("[data-block='season.crops']").GetByRole(AriaRole.Link, new() { Name = "Garlic" }).ClickAsync();
        await page.WaitForURLAsync("**/crops/garlic?year=2024");
        await page.EvaluateAsync("() => { document.querySelector('#crop-budget').open = true; }");
        string labor = await page.Locator("[data-block='crop.budget-lines'] tr", new() { HasText = "less labor" }).Locator("td a").InnerTextAsync();
        await page.Locator("[data-block='crop.budget-lines'] tr", new() { HasText = "less labor" }).Locator("td a").ClickAsync();
        await page.WaitForURLAsync("**/rows/garlic?year=2024#rows-labor");
        string text = await page.Locator("main").InnerTextAsync();
        Assert.Matches(@"labor\.csv:\d+", text);
        Assert.Contains(labor, text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Table_SortsByAHeadingAndSearches()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/");
        ILocator table = page.Locator("[data-block='season.crops'] table");
        await table.GetByRole(AriaRole.Button, new() { Name = "Length" }).ClickAsync();
        IReadOnlyList<string> length = await table.Locator("tbody tr:visible td:last-child").EvaluateAllAsync<string[]>("cells => cells.map(cell => cell.dataset.value)");
        List<decimal> sorted = [.. length.Select(value => decimal.Parse(value, CultureInfo.InvariantCulture))];
        Assert.True(sorted.Count > 30);
        Assert.Equal(sorted.OrderDescending(), sorted);
        await Assertions.Expect(table.Locator("th[aria-sort=descending]")).ToHaveCountAsync(1);

        await page.GetByLabel("Find in this table").First.FillAsync("tomatoes");
        await Assertions.Expect(table.Locator("tbody tr:visible")).ToHaveCountAsync(2);
    }

    [Fact]
    public async Task TwoWindows_OnTheSamePage_DontMix()
    {
        IPage one = await farm.WindowAsync();
        IPage other = await farm.WindowAsync();
        await Task.WhenAll(one.OpenAsync("/"), other.OpenAsync("/"));
        await Task.WhenAll(one.ChangeAsync(() => one.GetByLabel("Crop year").SelectOptionAsync("2024")), other.ChangeAsync(() => other.GetByLabel("Crop year").SelectOptionAsync("2023")));
        Assert.StartsWith("2024", await one.HeadlineAsync(), StringComparison.Ordinal);
        Assert.StartsWith("2023", await other.HeadlineAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Keyboard_Alone_ChangesTheYear()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/records");
        await page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(page.GetByText("Skip to the content")).ToBeFocusedAsync();
        await page.Locator("#try summary").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(page.GetByLabel("Crop year")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync("2024", new() { Delay = 250 });
        await page.WaitForURLAsync("**/records?year=2024");
        await Assertions.Expect(page.GetByLabel("Crop year")).ToBeFocusedAsync();
    }

    [Fact]
    public async Task Browser_WithoutScripts_StillChangesTheYear()
    {
        IPage page = await farm.WindowAsync(new() { JavaScriptEnabled = false });
        await page.OpenAsync("/");
        await page.Locator("#try summary").ClickAsync();
        await page.GetByLabel("Crop year").SelectOptionAsync("2023");
        await page.GetByRole(AriaRole.Button, new() { Name = "Calculate" }).ClickAsync();
        await Assertions.Expect(page.Locator("h1")).ToContainTextAsync("2023");
    }

    [Fact]
    public async Task Copies_AreAPageAndTables()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/?year=2024");
        await page.OpenFieldsAsync();
        string saved = await DownloadAsync(page, "Keep this page as a file");
        Assert.Contains("Content-Security-Policy", saved, StringComparison.Ordinal);
        Assert.Contains("<h1>2024 ", saved, StringComparison.Ordinal);
        Assert.Contains("font/woff2", saved, StringComparison.Ordinal);
        await page.OpenAsync("/tables?year=2024");
        Assert.StartsWith("crop_year,crop,", await DownloadAsync(page, "crops.csv"), StringComparison.Ordinal);
        Assert.StartsWith("PK", await DownloadAsync(page, "All of them as one workbook"), StringComparison.Ordinal);
    }

    private static async Task<string> DownloadAsync(IPage page, string link)
    {
        IDownload download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = link, Exact = true }).ClickAsync());
        return await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
    }

    private async Task<decimal> OutputAsync(int year)
    {
        using HttpClient client = (await farm.Program()).Client();
        string csv = await client.GetStringAsync(new Uri($"/tables/crops.csv?year={year}", UriKind.Relative), TestContext.Current.CancellationToken);
        string[] lines = csv.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        int column = Array.IndexOf(lines[0].Split(','), "output");
        return lines.Skip(1).Sum(line => decimal.Parse(line.Split(',')[column], CultureInfo.InvariantCulture));
    }
}
