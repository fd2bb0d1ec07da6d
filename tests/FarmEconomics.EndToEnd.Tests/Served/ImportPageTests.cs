using System.Net;
using Deque.AxeCore.Playwright;
using FarmEconomics.EndToEnd.Tests.Support;
using Microsoft.Playwright;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>
/// A file brought in on a page: chosen, asked about, seen, added; by keyboard, narrow and dark; refused where nothing may be written.
/// </summary>
public class ImportPageTests
{
    private const string Till =
        "Date,Item,Qty,Net Sales\n6/7/2025,lettuce,3,$12.00\n6/8/2025,Kalee bunch,2,$8.00\n6/9/2025,Rhubarb,1,$2.00\n";

    [Fact]
    public async Task File_ChosenAskedSeen_IsAddedOnceByKeyboard()
    {
        using Scratch scratch = new();
        string farm = scratch.File("farm");
        Checksums.Copy(ManyFarms.Sound, farm);
        File.WriteAllText(scratch.File("till.csv"), Till);
        await using OpenProgram open = await OpenProgram.StartAsync(farm, "--scenarios", scratch.File("scenarios.csv"));
        await using IBrowser browser = await Browser.LaunchAsync();
        IPage page = await WindowAsync(browser, open);

        await page.GotoAsync(open.Base + "/import");
        await SoundAsync(page);
        await page.GetByLabel("File").SetInputFilesAsync(scratch.File("till.csv"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at it" }).PressAsync("Enter");

        await Assertions
            .Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 }))
            .ToHaveTextAsync("till.csv: 1 question only you can answer");
        await SoundAsync(page);
        await page.GetByLabel("date: Date (needed)").SelectOptionAsync("6/7/2025 is Jun 7, 2025");
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at it again" }).PressAsync("Enter");

        await Assertions
            .Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 }))
            .ToHaveTextAsync("till.csv: 1 row of sales to add, 2 rows held back");
        await Assertions.Expect(page.GetByLabel("Kalee bunch (crops)")).ToHaveValueAsync("kale");
        await SoundAsync(page);
        string[] before = [.. Directory.GetFiles(farm)];
        await page.GetByRole(AriaRole.Button, new() { Name = "Add 1 row to sales" }).PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Alert)).ToContainTextAsync("what would be added is not what you saw");
        Assert.Equal(before, Directory.GetFiles(farm));

        await page.GetByRole(AriaRole.Button, new() { Name = "Add 2 rows to sales" }).PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("2 rows added to sales, in sales.till.csv.");
        await Assertions
            .Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 }))
            .ToHaveTextAsync("till.csv: 0 rows of sales to add, 1 row held back");
        await SoundAsync(page);
        Assert.Equal(before.Length + 3, Directory.GetFiles(farm).Length);
        Assert.Contains(
            "2025-06-08,Kalee bunch,market,2,bunch,8.00",
            File.ReadAllText(Path.Combine(farm, "sales.till.csv")),
            StringComparison.Ordinal
        );
        Assert.Equal("table,alias,name\ncrops,Kalee bunch,kale\n", File.ReadAllText(Path.Combine(farm, "aliases.till.csv")));

        // The name nobody guessed is one of the list of all unknown names, once a row holds it.
        File.AppendAllText(Path.Combine(farm, "sales.csv"), "2025-06-10,letuce,market,1,2.00\n");
        await page.GotoAsync(open.Base + "/fix");
        await Assertions.Expect(page.GetByLabel("letuce (crops)")).ToHaveValueAsync("lettuce");
        await SoundAsync(page);
        await page.GetByRole(AriaRole.Button, new() { Name = "Save these names" }).PressAsync("Enter");
        await Assertions.Expect(page.GetByRole(AriaRole.Status)).ToContainTextAsync("1 name saved in aliases.names.csv");

        // A figure's row leads to where it can be changed.
        await page.GotoAsync(open.Base + "/rows/kale");
        await page.GetByRole(AriaRole.Link, new() { Name = "sales.till.csv:3" }).First.ClickAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 })).ToHaveTextAsync("Line 3 of sales.till.csv");
    }

    /// <summary>A frame without a field or a button stood there.</summary>
    [Fact]
    public async Task File_WithNothingToAnswerAndNothingToAdd_ShowsItsDaysAndNoForm()
    {
        using Scratch scratch = new();
        await using OpenProgram open = await OpenProgram.StartAsync(ManyFarms.Sound, "--scenarios", scratch.File("scenarios.csv"));
        await using IBrowser browser = await Browser.LaunchAsync();
        IPage page = await WindowAsync(browser, open);
        File.WriteAllText(scratch.File("notes.txt"), "Mon 1/13/2025\nkale, 3 bunch\nTue 1/14/2025\nkale, 2 bunch\n");

        await page.GotoAsync(open.Base + "/import");
        await page.GetByLabel("File").SetInputFilesAsync(scratch.File("notes.txt"));
        await page.GetByRole(AriaRole.Button, new() { Name = "Look at it" }).PressAsync("Enter");

        await Assertions
            .Expect(page.GetByRole(AriaRole.Heading, new() { Level = 1 }))
            .ToHaveTextAsync("notes.txt: 0 rows of harvests to add, 2 rows held back");
        await Assertions.Expect(page.GetByRole(AriaRole.Cell, new() { Name = "Tue 1/14/2025" })).ToBeVisibleAsync();
        await Assertions.Expect(page.Locator("form[method=post]")).ToHaveCountAsync(0);
        await SoundAsync(page);
    }

    [Fact]
    public async Task File_ThatMayNotBeWrittenOrIsWrong_IsRefusedWithTheReason()
    {
        using Scratch scratch = new();
        string farm = scratch.File("farm");
        Checksums.Copy(ManyFarms.Sound, farm);
        await using (OpenProgram open = await OpenProgram.StartAsync(farm, "--scenarios", scratch.File("scenarios.csv")))
        {
            Assert.Equal(
                (HttpStatusCode.UnprocessableEntity, "Choose a file first"),
                await SentAsync(open, "x.csv", [], open.Base, "Choose a file first")
            );
            Assert.Equal(
                (HttpStatusCode.UnprocessableEntity, "more than 16 MB"),
                await SentAsync(open, "x.csv", new byte[17 * 1024 * 1024], open.Base, "more than 16 MB")
            );
            Assert.Equal(
                (HttpStatusCode.Forbidden, "Another site"),
                await SentAsync(open, "x.csv", [65], "http://example.org", "Another site")
            );
            Assert.Equal((HttpStatusCode.NotFound, "choose it again"), await GotAsync(open, "/import/0123456789abcdef", "choose it again"));
        }

        await using OpenProgram readOnly = await OpenProgram.StartAsync(farm, "--read-only", "--scenarios", scratch.File("scenarios.csv"));
        Assert.Equal(
            (HttpStatusCode.Forbidden, "--read-only"),
            await SentAsync(readOnly, "till.csv", System.Text.Encoding.UTF8.GetBytes(Till), readOnly.Base, "--read-only")
        );
        Assert.Equal((HttpStatusCode.OK, "--read-only"), await GotAsync(readOnly, "/import", "--read-only"));
    }

    private static async Task<(HttpStatusCode Status, string Says)> SentAsync(
        OpenProgram open,
        string name,
        byte[] bytes,
        string origin,
        string says
    )
    {
        using HttpClient client = open.Client();
        client.DefaultRequestHeaders.Add("Origin", origin);
        using MultipartFormDataContent form = [];
        form.Add(new ByteArrayContent(bytes), "file", name);
        using HttpResponseMessage answer = await client.PostAsync("/import", form);
        string body = await answer.Content.ReadAsStringAsync();
        return (answer.StatusCode, body.Contains(says, StringComparison.Ordinal) ? says : body);
    }

    private static async Task<(HttpStatusCode Status, string Says)> GotAsync(OpenProgram open, string address, string says)
    {
        using HttpClient client = open.Client();
        using HttpResponseMessage answer = await client.GetAsync(address);
        string body = await answer.Content.ReadAsStringAsync();
        return (answer.StatusCode, body.Contains(says, StringComparison.Ordinal) ? says : body);
    }

    private static async Task<IPage> WindowAsync(IBrowser browser, OpenProgram open)
    {
        IBrowserContext context = await browser.NewContextAsync(
            new()
            {
                ViewportSize = new() { Width = 400, Height = 800 },
                ColorScheme = ColorScheme.Dark,
            }
        );
        context.SetDefaultTimeout(60_000);
        await context.AddCookiesAsync([new() { Name = $"farm-page-{open.Port}", Value = open.Token, Url = open.Base }]);
        return await context.NewPageAsync();
    }

    private static async Task SoundAsync(IPage page)
    {
        Assert.True(
            await page.EvaluateAsync<bool>("() => document.documentElement.scrollWidth <= document.documentElement.clientWidth"),
            "the page is wider than the window"
        );
        await page.EvaluateAsync("() => document.querySelectorAll('details').forEach(each => each.open = true)");
        Assert.Empty(
            (await page.RunAxe()).Violations.SelectMany(violation => violation.Nodes.Select(node => $"{violation.Id}: {node.Html}"))
        );
    }
}
