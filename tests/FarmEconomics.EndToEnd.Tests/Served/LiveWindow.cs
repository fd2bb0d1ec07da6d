using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>What the tests do in a window, in a reader's words.</summary>
internal static class LiveWindow
{
    /// <summary>Opens a page (a path of the same program, or a whole address) and waits until its run is over.</summary>
    public static async Task OpenAsync(this IPage page, string address)
    {
        await page.GotoAsync(address.StartsWith('/') ? new Uri(new Uri(page.Url), address).ToString() : address);
        await page.WaitForFunctionAsync("() => !document.querySelector('[data-working]') || document.querySelector('[data-working]').hidden");
    }

    /// <summary>Presses the button and waits for the new page; a run that ends without one is told in the program's words.</summary>
    public static async Task WorkItOutAsync(this IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Work it out" }).ClickAsync();
        await page.WaitForFunctionAsync("() => { const box = document.querySelector('[data-working]'); return !box.hidden && box.querySelector('progress').hidden; }");
        Assert.Equal("Done: the page below is the new one.", (await page.Locator("[data-working] [data-words]").InnerTextAsync()).Trim());
    }

    /// <summary>The paragraph under "The answer".</summary>
    public static async Task<string> AnswerAsync(this IPage page) =>
        await page.Locator("h2:has-text('The answer') + p").First.InnerTextAsync();
}
