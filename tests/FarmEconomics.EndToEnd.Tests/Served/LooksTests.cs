using Deque.AxeCore.Commons;
using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>Every page, for everyone: WCAG 2.2 level AA as axe checks it, no request but to the program, nothing wider than the window.</summary>
/// <remarks>axe finds what a program can find; reading order, sense and words are looked at by people.</remarks>
public class LooksTests(OpenDemoFarm farm)
{
    // Asked in the page itself: what a page does well is ten thousand places that nobody reads, and to bring them here takes longer than
    // to look. In the dark the same page has other colors and nothing else, so only the rules of colors are asked once more.
    private const string Violations =
        """
        async looks => {
          const found = await axe.run(document, {
            reporter: 'no-passes',
            runOnly: looks === 'dark' ? ['color-contrast', 'link-in-text-block']
              : { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] },
          });
          return found.violations.flatMap(violation => violation.nodes.map(node => `${violation.id}: ${node.html}`));
        }
        """;

    // Rows built alike are judged alike: two of each kind stay, the second for what only shows between them. A thousand more make axe
    // slow and find nothing. What can only be wrong in the whole (two elements of one id) is looked for before.
    private const string KeepTwoRowsOfAKind =
        """
        () => {
          const ids = [...document.querySelectorAll('[id]')].map(each => each.id);
          const twice = ids.filter((id, at) => ids.indexOf(id) !== at);
          const kind = each => each.tagName + each.getAttributeNames().sort().map(name =>
              ['class', 'colspan', 'scope', 'role', 'style', 'hidden']
            .includes(name) ? name + each.getAttribute(name) : name) + (each.textContent.trim() ? 'text' : '')
            + '(' + [...each.children].map(kind).join() + ')';
          for (const body of document.querySelectorAll('tbody')) {
            const seen = {};
            for (const row of [...body.rows]) if ((seen[kind(row)] = (seen[kind(row)] ?? 0) + 1) > 2) row.remove();
          }
          return twice;
        }
        """;

    private static readonly (string Look, int Width, ColorScheme Scheme)[] OnScreen =
        [("wide", 1280, ColorScheme.Light), ("narrow", 400, ColorScheme.Light), ("dark", 1280, ColorScheme.Dark)];

    public static TheoryData<string> Pages =>
    [
        "/tables", "/explain?crop=Broccoli", "/nothing-here", "/prices?step=wrong", "/crops/radish?set.owner_wage=30", "/rows/garlic",
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
        foreach ((string look, int width, ColorScheme scheme) in OnScreen)
        {
            await LookAsync(page, width, scheme, Media.Screen);
            int wider = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - window.innerWidth");
            Assert.True(wider <= 0, $"{look}: {wider} pixels wider than the window");
        }

        await LookAsync(page, 800, ColorScheme.Light, Media.Print);
        Assert.False(await page.Locator("form.fields:visible, nav:visible, .filter:visible").CountAsync() > 0,
            "what can't be used on paper is printed");

        complaints.AddRange((await page.EvaluateAsync<string[]>(KeepTwoRowsOfAKind)).Select(id => $"two elements have the id {id}"));
        await page.EvaluateAsync(new BundledAxeScriptProvider().GetScript());
        foreach ((string look, int width, ColorScheme scheme) in OnScreen)
        {
            await LookAsync(page, width, scheme, Media.Screen);
            complaints.AddRange((await page.EvaluateAsync<string[]>(Violations, look)).Select(violation => $"{look}: {violation}"));
        }

        await page.Context.CloseAsync();
        Assert.Empty(complaints);
    }

    private static async Task LookAsync(IPage page, int width, ColorScheme scheme, Media media)
    {
        await page.SetViewportSizeAsync(width, 900);
        await page.EmulateMediaAsync(new() { ColorScheme = scheme, Media = media });
    }
}
