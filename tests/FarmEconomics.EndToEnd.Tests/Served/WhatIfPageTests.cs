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
        await page.OpenAsync("/notebook/07-what-if");
        string example = await page.AnswerAsync();
        ILocator crop = page.GetByLabel("Crop", new() { Exact = true }).First;
        await crop.SelectOptionAsync("Carrots");
        await page.GetByLabel("New price").First.FillAsync("+10%");
        await page.WorkItOutAsync();
        string dearer = await page.AnswerAsync();
        Assert.NotEqual(example, dearer);
        Assert.Contains("Carrots", dearer, StringComparison.Ordinal);
        Assert.Contains("more", dearer, StringComparison.Ordinal);
        await Assertions.Expect(page.Locator("tr:has(th:text-is('Carrots'))").First).ToBeVisibleAsync();

        // Kept under a name, it stands beside other changes and can be taken up again.
        await page.GetByLabel("Keep the changes on this page as").FillAsync("Dearer carrots");
        await page.GetByRole(AriaRole.Button, new() { Name = "Keep", Exact = true }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "Dearer carrots" })).ToBeVisibleAsync();
        await page.GetByText("Change all prices or wages").ClickAsync();
        await page.GetByLabel("All wages paid").FillAsync("+5%");
        await crop.SelectOptionAsync("");
        await page.GetByLabel("New price").First.FillAsync("");
        await page.WorkItOutAsync();
        await Assertions.Expect(page.Locator(".result table", new() { HasText = "Dearer carrots" }).First).ToBeVisibleAsync();
        await page.GetByRole(AriaRole.Link, new() { Name = "Dearer carrots" }).ClickAsync();
        await page.WaitForFunctionAsync("() => !document.querySelector('[data-working]') || document.querySelector('[data-working]').hidden");
        Assert.Equal("price of Carrots=+10%", await page.GetByLabel("Other changes").InputValueAsync());
        Assert.Equal(dearer, await page.AnswerAsync());

        await page.GetByRole(AriaRole.Button, new() { Name = "Remove Dearer carrots" }).ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Link, new() { Name = "Dearer carrots" })).ToHaveCountAsync(0);
        Assert.Equal(records, Checksums());
    }

    [Fact]
    public async Task PriceWithoutACrop_AndWordsThatMeanNothing_AreExplainedBesideTheirFields()
    {
        IPage page = await farm.WindowAsync();
        await page.OpenAsync("/notebook/07-what-if");
        await page.EvaluateAsync("() => document.querySelectorAll('details').forEach(each => each.open = true)");
        await page.GetByLabel("New price").First.FillAsync("4.50");
        await page.GetByLabel("Other changes").FillAsync("hours of Carots=-20%");
        await page.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
        await Assertions.Expect(page.Locator("#f-price1-crop-fault")).ToHaveTextAsync("Choose the crop this price is for.");
        await Assertions.Expect(page.Locator("#f-change-more-fault")).ToContainTextAsync("Did you mean Carrots?");
    }

    private static Dictionary<string, string> Checksums() => Directory.GetFiles(Path.Combine(Repository.Root, "demo-data"), "*", SearchOption.AllDirectories)
        .ToDictionary(path => path, path => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(File.ReadAllBytes(path))));
}
