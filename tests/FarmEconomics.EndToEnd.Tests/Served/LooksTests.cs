using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>Every page, for everyone: WCAG 2.2 level AA as axe checks it, no request but to the program, nothing wider than the window.</summary>
/// <remarks>axe finds what a program can find; reading order, sense and words are looked at by people.</remarks>
public class LooksTests(OpenDemoFarm farm)
{
    private static readonly AxeRunOptions Rules = new()
    {
        RunOnly = new() { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] },
    };

    public static TheoryData<string> Pages =>
    [
        "/?year=2024", "/tables", "/explain?crop=Broccoli", "/nothing-here", "/prices?step=wrong", "/crops/tomatoes", "/crops/radish?set.owner_wage=30", "/rows/garlic",
        .. FarmEconomics.Reports.Answers.ReportCatalog.Tabs.Select(report => FarmEconomics.Page.Views.Nav.PathOf(report.Id)),
    ];

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Page_WideNarrowDarkAndPrinted_HasNothingToComplainOf(string address)
    {
        IPage page = await farm.WindowAsync();
        List<string> complaints = [];
        string home = new Uri(page.Url).GetLeftPart(UriPartial.Authority);
        page.Request += (_, request) =>
        {
            if (!request.Url.StartsWith(home, StringComparison.Ordinal) && !request.Url.StartsWith("data:", StringComparison.Ordinal))
            {
                complaints.Add($"asks for {request.Url}");
            }
        };
        page.PageError += (_, fault) => complaints.Add($"script: {fault}");
        page.Console += (_, message) =>
        {
            // That a page is not there, or a field is wrong, the browser itself says as well.
            if (message.Type == "error" && !message.Text.Contains("status of 4", StringComparison.Ordinal))
            {
                complaints.Add($"console: {message.Text}");
            }
        };
        await page.OpenAsync(address);
        await page.EvaluateAsync("() => document.querySelectorAll('details').forEach(each => each.open = true)");
        foreach ((string look, int width, ColorScheme scheme, Media media) in new[]
        {
            ("wide", 1280, ColorScheme.Light, Media.Screen), ("narrow", 400, ColorScheme.Light, Media.Screen),
            ("dark", 1280, ColorScheme.Dark, Media.Screen), ("printed", 800, ColorScheme.Light, Media.Print),
        })
        {
            await page.SetViewportSizeAsync(width, 900);
            await page.EmulateMediaAsync(new() { ColorScheme = scheme, Media = media });
            if (media == Media.Screen)
            {
                AxeResult found = await page.RunAxe(Rules);
                complaints.AddRange(found.Violations.SelectMany(violation => violation.Nodes.Select(node => $"{look}: {violation.Id}: {node.Html}")));
                int wider = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - window.innerWidth");
                Assert.True(wider <= 0, $"{look}: {wider} pixels wider than the window");
            }
            else
            {
                Assert.False(await page.Locator("form.fields:visible, nav:visible, .filter:visible").CountAsync() > 0, "what can't be used on paper is printed");
            }
        }

        await page.Context.CloseAsync();
        Assert.Empty(complaints);
    }
}
