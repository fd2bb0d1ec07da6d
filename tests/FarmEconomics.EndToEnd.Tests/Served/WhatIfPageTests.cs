using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>What if: a price is changed, before and after are read, the changes kept under a name and compared; the records stay as they were.</summary>
public class WhatIfPageTests(OpenDemoFarm farm)
{
    [Fact]
    public async Task Price_Changed_ShowsBeforeAndAfter_AndCanBeKept()
    {
        Dictionary<string, string> records = Checksums();
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/what-if");
        string example = await AnswerAsync(page);
        await page.OpenFieldsAsync();
        await page.GetByLabel("New price").First.EvaluateAsync("field => { field.value = '+10%'; }");
        await page.ChangeAsync(() => page.GetByLabel("Crop", new() { Exact = true }).First.SelectOptionAsync("Carrots"));
        string dearer = await AnswerAsync(page);
        Assert.NotEqual(example, dearer);
        Assert.Contains("Carrots", dearer, StringComparison.Ordinal);

        // Kept under a name, it stands beside other changes and can be taken up again.
        await page.GetByLabel("Keep the changes on this page as").FillAsync("Dearer carrots");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep", Exact = true }).ClickAsync();
        await Assertions.Expect(page.Locator("#try a", new() { HasText = "Dearer carrots" })).ToHaveCountAsync(1);
        await page.OpenFieldsAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "Dearer carrots" })).ToBeVisibleAsync();
        await page.OpenAsync("/what-if?change.wages=%2B5%25");
        Assert.True(await page.Locator("#what-if-details-scenarios table", new() { HasText = "Dearer carrots" }).CountAsync() > 0);
        await page.GetByRole(AriaRole.Link, new() { Name = "Dearer carrots" }).ClickAsync();
        await page.WaitForURLAsync(new System.Text.RegularExpressions.Regex("/what-if\\?change\\.more="));
        Assert.Equal("price of Carrots=+10%", await page.GetByLabel("Other changes").InputValueAsync());
        Assert.Equal(dearer, await AnswerAsync(page));

        await page.GetByRole(AriaRole.Button, new() { Name = "Remove Dearer carrots" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "Dearer carrots" })).ToHaveCountAsync(0);
        Assert.Equal(records, Checksums());
    }

    /// <summary>Who chose a crop is on the way to its price, and isn't told that it is missing.</summary>
    [Fact]
    public async Task CropChosen_BeforeItsPriceIsTyped_AsksForNothingYet()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/what-if");
        List<string> asked = [];
        page.Request += (_, request) => asked.AddRange(request.Url.Contains("/what-if?", StringComparison.Ordinal) ? [request.Url] : []);
        await page.OpenFieldsAsync();
        await page.GetByLabel("Crop", new() { Exact = true }).First.SelectOptionAsync("Carrots");
        await page.GetByLabel("New price").First.FillAsync("+10%");
        await page.ChangeAsync(() => page.GetByLabel("New price").First.BlurAsync());

        Assert.Contains("price1.crop=Carrots", asked[0], StringComparison.Ordinal);
        Assert.Contains("price1.to=", asked[0], StringComparison.Ordinal);
        Assert.Equal(0, await page.Locator(".field .fault:visible").CountAsync());
    }

    [Fact]
    public async Task PriceWithoutACrop_AndWordsThatMeanNothing_AreExplainedBesideTheirFields()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/what-if?price1.to=4.50&change.more=hours%20of%20Carots%3D-20%25");
        await Assertions.Expect(page.Locator("#f-price1-crop-fault")).ToHaveTextAsync("Choose the crop this price is for.");
        await Assertions.Expect(page.Locator("#f-change-more-fault")).ToContainTextAsync("Did you mean Carrots?");
    }

    private static Task<string> AnswerAsync(IPage page) => page.HeadlineAsync();

    private static Dictionary<string, string> Checksums() => Directory.GetFiles(Path.Combine(Repository.Root, "demo-data"), "*", SearchOption.AllDirectories)
        .ToDictionary(path => path, path => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(path))));
}
