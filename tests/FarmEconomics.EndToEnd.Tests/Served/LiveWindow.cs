using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>What the tests do in a window, in a reader's words.</summary>
internal static class LiveWindow
{
    /// <summary>Opens a page: a path of the same program, or a whole address.</summary>
    public static Task OpenAsync(this IPage page, string address) => page.GotoAsync(address.StartsWith('/') ? new Uri(new Uri(page.Url), address).ToString() : address);

    /// <summary>Opens the fold with the fields, does something to one and waits for the page drawn anew.</summary>
    public static async Task ChangeAsync(this IPage page, Func<Task> change)
    {
        await page.OpenFieldsAsync();
        await page.EvaluateAsync("() => { document.querySelector('main').dataset.old = 'yes'; }");
        await change();
        await page.WaitForFunctionAsync("() => !document.querySelector('main').dataset.old");
    }

    /// <summary>Opens the fold with the fields.</summary>
    public static Task OpenFieldsAsync(this IPage page) => page.EvaluateAsync("() => { document.querySelector('#try').open = true; }");

    /// <summary>Fills in a field and leaves it.</summary>
    public static async Task EnterAsync(this ILocator field, string text)
    {
        await field.FillAsync(text);
        await field.PressAsync("Tab");
    }

    /// <summary>Opens a notebook of the grower's own and waits until its run is over.</summary>
    public static async Task OpenNotebookAsync(this IPage page, string address)
    {
        await page.GotoAsync(address);
        await page.WaitForFunctionAsync("() => !document.querySelector('[data-working]') || document.querySelector('[data-working]').hidden");
    }

    /// <summary>Presses the button of a notebook and waits for the new page; a run that ends without one is told in the program's words.</summary>
    public static async Task CalculateAsync(this IPage page)
    {
        await page.GetByRole(AriaRole.Button, new() { Name = "Calculate" }).ClickAsync();
        await page.WaitForFunctionAsync("() => { const box = document.querySelector('[data-working]'); return !box.hidden && box.querySelector('progress').hidden; }");
        Assert.Equal("Done: the page below is the new one.", (await page.Locator("[data-working] [data-words]").InnerTextAsync()).Trim());
    }

    /// <summary>The finding of the page.</summary>
    public static Task<string> HeadlineAsync(this IPage page) => page.Locator("h1").InnerTextAsync();
}
