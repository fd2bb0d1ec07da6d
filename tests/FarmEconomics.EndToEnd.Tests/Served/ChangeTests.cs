using System.Globalization;
using System.Text.RegularExpressions;
using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>A grower changes a year, a price or a wage and reads the changed numbers, in a real browser.</summary>
public partial class ChangeTests(OpenDemoFarm farm)
{
    [Fact]
    public async Task Address_ThatWasPrinted_LeadsToTheFirstPage_WhereAnswersComeIn()
    {
        OpenProgram open = await farm.Program();
        IPage page = await farm.WindowAsync();
        await page.Context.ClearCookiesAsync();
        await page.GotoAsync(open.Door);
        await Assertions.Expect(page).ToHaveURLAsync(open.Base + "/");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Quillfrost Acre: crop year 2025" })).ToBeVisibleAsync();
        await page.WaitForFunctionAsync("() => !document.querySelector('[data-answer]')");
        Assert.Equal(7, await page.Locator(".question .answer p").CountAsync());
        await Assertions.Expect(page.Locator(".answer").Nth(1)).ToContainTextAsync("the 40 crops of Quillfrost Acre brought in $112,712");
    }

    [Fact]
    public async Task Year_Changed_ShowsThatYearsNumbers()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/notebook/02-season-review");
        string before = await page.AnswerAsync();
        await page.GetByLabel("Crop year").SelectOptionAsync("2024");
        await page.WorkItOutAsync();
        string after = await page.AnswerAsync();
        Assert.StartsWith("In 2025", before, StringComparison.Ordinal);
        Assert.StartsWith("In 2024", after, StringComparison.Ordinal);
        Assert.EndsWith("?year=2024", page.Url, StringComparison.Ordinal);

        // The numbers are those of the tables, which go another way: no notebook, no browser.
        decimal output = await OutputAsync(2024);
        Assert.Contains(output.ToString("$#,0", CultureInfo.InvariantCulture), after, StringComparison.Ordinal);
        Assert.DoesNotContain(output.ToString("$#,0", CultureInfo.InvariantCulture), before, StringComparison.Ordinal);

        await page.GoBackAsync();
        await Assertions.Expect(page.Locator("h2:has-text('The answer') + p").First).ToContainTextAsync("In 2025");
    }

    [Fact]
    public async Task Wage_Raised_LowersTheNetReturnByTheOwnersHours()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/notebook/02-season-review");
        decimal before = NetReturn(await page.AnswerAsync());
        await page.GetByText("Wage, interest and other settings to try").ClickAsync();
        await page.GetByLabel("Worth of an unpaid hour of the owner").FillAsync("25");
        await page.WorkItOutAsync();
        decimal after = NetReturn(await page.AnswerAsync());
        Assert.True(after < before - 1000m, $"{before} became {after}");
        Assert.Equal("25", await page.GetByLabel("Worth of an unpaid hour of the owner").InputValueAsync());
    }

    [Fact]
    public async Task PriceStep_Changed_RoundsThePricesToIt()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/notebook/05-prices-and-shares");
        await page.GetByLabel("Price step").FillAsync("2");
        await page.WorkItOutAsync();
        await Assertions.Expect(page.Locator("tr:has(th:text-is('price step')) td").First).ToHaveTextAsync("$2.00");
    }

    [Fact]
    public async Task WrongValue_IsExplainedBesideItsField_AndThePageStays()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/notebook/05-prices-and-shares");
        string before = await page.AnswerAsync();
        ILocator step = page.GetByLabel("Price step");
        await step.FillAsync("a quarter");
        await page.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
        await Assertions.Expect(step).ToHaveAttributeAsync("aria-invalid", "true");
        await Assertions.Expect(step).ToBeFocusedAsync();
        await Assertions.Expect(page.Locator("#f-step-fault")).ToHaveTextAsync("“a quarter” is not a number; write digits, such as 4.50.");
        Assert.Equal(before, await page.AnswerAsync());
    }

    [Fact]
    public async Task Figure_OfACrop_OpensItsExplanationWithFileAndLine()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/notebook/02-season-review?year=2024");
        ILocator row = page.Locator("tr[data-opens='Garlic']").First;
        string hours = await row.Locator("td[data-part=labor] a").First.InnerTextAsync();
        await row.Locator("td[data-part=labor] a").First.ClickAsync();
        await page.WaitForURLAsync("**/explain?crop=Garlic&year=2024#labor");
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Name = "Where the figures of Garlic come from" })).ToBeVisibleAsync();
        string text = await page.Locator("main").InnerTextAsync();
        Assert.Matches(@"labor\.csv:\d+", text);
        Assert.Contains("Shares of pools charged to Garlic", text, StringComparison.Ordinal);
        Assert.Contains($"{hours} labor hours stand behind it", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Table_SortsByAHeadingAndFilters()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/");
        ILocator table = page.Locator("table", new() { HasText = "What each crop earned" });
        await table.GetByRole(AriaRole.Button, new() { Name = "Labor hours" }).ClickAsync();
        IReadOnlyList<string> hours = await table.Locator("tbody td:nth-child(5)").EvaluateAllAsync<string[]>("cells => cells.map(cell => cell.dataset.value)");
        List<decimal> sorted = [.. hours.Select(value => decimal.Parse(value, CultureInfo.InvariantCulture))];
        Assert.Equal(40, sorted.Count);
        Assert.Equal(sorted.OrderDescending(), sorted);
        await Assertions.Expect(table.Locator("th[aria-sort=descending]")).ToHaveCountAsync(1);

        await page.GetByLabel("Show only rows with").First.FillAsync("tomatoes");
        await Assertions.Expect(table.Locator("tbody tr:visible")).ToHaveCountAsync(2);
        await Assertions.Expect(page.GetByText("2 of 40 rows; totals are of all")).ToBeVisibleAsync();
    }

    [Fact]
    public async Task TwoWindows_OnTheSameNotebook_DontMix()
    {
        IPage one = await farm.WindowAsync();
        IPage other = await farm.WindowAsync();
        await Task.WhenAll(one.OpenAsync("/notebook/02-season-review"), other.OpenAsync("/notebook/02-season-review"));
        await one.GetByLabel("Crop year").SelectOptionAsync("2024");
        await other.GetByLabel("Crop year").SelectOptionAsync("2023");
        await Task.WhenAll(one.WorkItOutAsync(), other.WorkItOutAsync());
        Assert.StartsWith("In 2024", await one.AnswerAsync(), StringComparison.Ordinal);
        Assert.StartsWith("In 2023", await other.AnswerAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Keyboard_Alone_ChangesTheYear()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/notebook/01-records-check");
        await page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(page.GetByText("Skip to the content")).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        for (int presses = 0; presses < 5 && !await page.GetByLabel("Crop year").EvaluateAsync<bool>("field => field === document.activeElement"); presses++)
        {
            await page.Keyboard.PressAsync("Tab");
        }

        await Assertions.Expect(page.GetByLabel("Crop year")).ToBeFocusedAsync();
        await page.Keyboard.TypeAsync("2024");
        await page.Keyboard.PressAsync("Tab");
        await page.Keyboard.PressAsync("Tab");
        await Assertions.Expect(page.GetByRole(AriaRole.Button, new() { Name = "Work it out" })).ToBeFocusedAsync();
        await page.Keyboard.PressAsync("Enter");
        await page.GetByText("Done: the page below is the new one.").WaitForAsync();
        Assert.Contains("2024", await page.AnswerAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Browser_WithoutScripts_StillChangesTheYear()
    {
        IPage page = await farm.WindowAsync(new() { JavaScriptEnabled = false });
        await page.GotoAsync(new Uri(new Uri(page.Url), "/notebook/02-season-review").ToString());
        await page.GetByLabel("Crop year").SelectOptionAsync("2023");
        await page.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
        await Assertions.Expect(page.Locator("h2:has-text('The answer') + p").First).ToContainTextAsync("In 2023", new() { Timeout = 120_000 });
    }

    [Fact]
    public async Task Copies_AreAPageANotebookAndTables()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/notebook/02-season-review?year=2024");
        string saved = await DownloadAsync(page, "This page as a file");
        Assert.Contains("Content-Security-Policy", saved, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", saved, StringComparison.Ordinal);
        Assert.Contains("In <strong>2024</strong>", saved, StringComparison.Ordinal);
        Assert.Contains("\"nbformat\": 4", await DownloadAsync(page, "The notebook as it was run"), StringComparison.Ordinal);
        await page.OpenAsync("/tables?year=2024");
        Assert.StartsWith("crop_year,crop,", await DownloadAsync(page, "crops.csv"), StringComparison.Ordinal);
        Assert.StartsWith("PK", await DownloadAsync(page, "All of them as one workbook"), StringComparison.Ordinal);
    }

    private static async Task<string> DownloadAsync(IPage page, string link)
    {
        IDownload download = await page.RunAndWaitForDownloadAsync(() => page.GetByRole(AriaRole.Link, new() { Name = link, Exact = true }).ClickAsync());
        return await File.ReadAllTextAsync(await download.PathAsync(), TestContext.Current.CancellationToken);
    }

    private static decimal NetReturn(string answer) =>
        decimal.Parse(NetReturnWords().Match(answer).Groups[1].Value.Replace("$", "", StringComparison.Ordinal), NumberStyles.Number, CultureInfo.InvariantCulture);

    private async Task<decimal> OutputAsync(int year)
    {
        using HttpClient client = (await farm.Program()).Client();
        string csv = await client.GetStringAsync(new Uri($"/tables/crops.csv?year={year}", UriKind.Relative), TestContext.Current.CancellationToken);
        string[] lines = csv.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        int column = Array.IndexOf(lines[0].Split(','), "output");
        return lines.Skip(1).Sum(line => decimal.Parse(line.Split(',')[column], CultureInfo.InvariantCulture));
    }

    [GeneratedRegex(@"net return of all crops was (-?\$[\d,]+)")]
    private static partial Regex NetReturnWords();
}
