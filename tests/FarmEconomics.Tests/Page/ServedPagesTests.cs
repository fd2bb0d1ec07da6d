using System.Net;
using System.Text.RegularExpressions;
using FarmEconomics.Notebooks;
using FarmEconomics.Page;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Page;

/// <summary>What the server answers while the records are not what a page was made of, asked without a browser.</summary>
public sealed class ServedPagesTests : IDisposable
{
    private readonly CookieContainer cookies = new();
    private readonly List<IDisposable> clients = [];

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public void Dispose() => clients.ForEach(client => client.Dispose());

    [Theory]
    [InlineData("/crops/kale")]
    [InlineData("/explain?crop=kale")]
    [InlineData("/plan/sales?year=2026&crop=kale")]
    public async Task Page_WhileTheRecordsHaveErrors_SaysSo(string address)
    {
        string folder = TestFolders.MakeBad("sound");
        await using PageServer server = await ServeAsync(folder);
        HttpClient client = await EnterAsync(server);
        File.AppendAllText(Path.Combine(folder, "harvests.csv"), "2025-06-31,K1,10\n");

        string page = await client.GetStringAsync(new Uri(address, UriKind.Relative), Cancel);

        Assert.Contains("<h1>The records have 1 error</h1>", page, StringComparison.Ordinal);
    }

    // A place of the bar on top is never "not found".
    [Fact]
    public async Task Tables_WhileTheRecordsHaveErrors_LeadToWhatToFix()
    {
        string folder = TestFolders.MakeBad("sound");
        await using PageServer server = await ServeAsync(folder);
        HttpClient client = await EnterAsync(server);
        File.AppendAllText(Path.Combine(folder, "harvests.csv"), "2025-06-31,K1,10\n");

        string page = await client.GetStringAsync(new Uri("/tables", UriKind.Relative), Cancel);

        Assert.Contains("<h1>No tables yet</h1>", page, StringComparison.Ordinal);
        Assert.Contains("href=\"/records\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_WorkedOutFromOtherRecords_IsNotWritten()
    {
        string folder = TestFolders.MakeBad("sound");
        await using PageServer server = await ServeAsync(folder);
        HttpClient client = await EnterAsync(server);
        Dictionary<string, string> form = await HiddenAsync(client, "/next-year?_wait=1", "/plan/take");
        File.AppendAllText(Path.Combine(folder, "harvests.csv"), "2025-06-20,K1,10\n");

        HttpResponseMessage refused = await SendAsync(client, "/plan/take", form);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("Your records changed after this plan", await refused.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        Assert.False(File.Exists(Path.Combine(folder, "plan.csv")));

        form = await HiddenAsync(client, "/next-year?_wait=1", "/plan/take");
        Assert.Equal(HttpStatusCode.SeeOther, (await SendAsync(client, "/plan/take", form)).StatusCode);
        Assert.True(File.Exists(Path.Combine(folder, "plan.csv")));
    }

    [Theory]
    [InlineData("2025-7-45", "is no day")]
    [InlineData("2031-07-15", "not of 2031-07-15")]
    public async Task Value_ThatOnlyTheReportFindsWrong_IsToldBesideItsField(string date, string fault)
    {
        await using PageServer server = await ServeAsync(Path.Combine(TestFolders.Repository, "demo-data"));
        HttpClient client = await EnterAsync(server);

        HttpResponseMessage answer = await client.GetAsync(new Uri($"/water?date={date}", UriKind.Relative), Cancel);

        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.StatusCode);
        string page = await answer.Content.ReadAsStringAsync(Cancel);
        Assert.Matches($"<p class=\"fault\" id=\"f-date-fault\">[^<]*{fault}", page);
        Assert.Contains($"name=\"date\" data-default=\"\" aria-describedby", page, StringComparison.Ordinal);
        Assert.Contains($"value=\"{date}\"", page, StringComparison.Ordinal);
        Assert.Contains("this page is worked out without it", page, StringComparison.Ordinal);
    }

    // What isn't changed stays byte for byte: columns told apart by their place alone, and a line break, which no field of a form holds.
    [Theory]
    [InlineData("extra,extra")]
    [InlineData("Extra,extra")]
    public async Task Row_WithColumnsOfOneHeading_IsSavedWithoutTouchingThem(string headings)
    {
        string folder = TestFolders.MakeBad("sound");
        string place = Path.Combine(folder, "harvests.csv");
        File.WriteAllText(place, $"date,planting,quantity,notes,{headings}\n2025-05-10,L1,40,\"wet\nday\",one,two\n");
        await using PageServer server = await ServeAsync(folder);
        HttpClient client = await EnterAsync(server);
        Dictionary<string, string> form = await HiddenAsync(client, "/fix/row?file=harvests.csv&line=2", "/fix/row");
        string[] shown = ["2025-05-10", "L1", "41", "wetday", "one", "two"];
        foreach ((int at, string text) in shown.Index())
        {
            form[$"c{at}"] = text;
        }

        Assert.Equal(HttpStatusCode.SeeOther, (await SendAsync(client, "/fix/row", form)).StatusCode);
        string saved = $"date,planting,quantity,notes,{headings}\n2025-05-10,L1,41,\"wet\nday\",one,two\n";
        Assert.Equal(saved, File.ReadAllText(place));

        form["version"] = (await HiddenAsync(client, "/fix/row?file=harvests.csv&line=2", "/fix/row"))["version"];
        form["c5"] = "three";
        HttpResponseMessage refused = await SendAsync(client, "/fix/row", form);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused.StatusCode);
        Assert.Contains("2 columns", await refused.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        Assert.Equal(saved, File.ReadAllText(place));
    }

    // The page of a crop is that crop's: a field for another one would change nothing, and nothing is changed on it as it comes.
    [Fact]
    public async Task CropPage_HasNoFieldForTheCropAndNothingToTakeBack()
    {
        await using PageServer server = await ServeAsync(TestFolders.MakeBad("sound"));
        HttpClient client = await EnterAsync(server);

        string page = await client.GetStringAsync(new Uri("/crops/kale", UriKind.Relative), Cancel);

        Assert.DoesNotContain("name=\"crop\"", page, StringComparison.Ordinal);
        Assert.Contains("<details class=\"try\" id=\"try\">", page, StringComparison.Ordinal);
        Assert.Contains("<a href=\"/crops/kale\" hidden data-reset>", page, StringComparison.Ordinal);
    }

    // A farm begun with nothing: the first page leads to where rows are typed, a table that isn't there is begun there, and who typed one
    // row types the next.
    [Fact]
    public async Task Row_OfATableNotBegun_BeginsItAndTheNextOneIsAsked()
    {
        string folder = TestFolders.Make(("crops.csv", "crop,unit\n"), ("beds.csv", "bed,length_ft\n"),
            ("harvests.csv", "date,crop,quantity\n"),
            ("plantings.csv", "crop,bed,bed_feet,in_bed\n"),
            ("sales.csv", "date,crop,channel,quantity,amount\n"));
        await using PageServer server = await ServeAsync(folder);
        HttpClient client = await EnterAsync(server);
        Assert.Contains("href=\"/fix/row?file=crops.csv&amp;line=0\"", await client.GetStringAsync(new Uri("/", UriKind.Relative), Cancel),
            StringComparison.Ordinal);
        Assert.Contains("<option value=\"channels.csv\">", await client.GetStringAsync(new Uri("/fix", UriKind.Relative), Cancel),
            StringComparison.Ordinal);
        Dictionary<string, string> form = await HiddenAsync(client, "/fix/row?file=channels.csv&line=", "/fix/row");
        (form["c0"], form["c1"]) = ("Saturday market", "market");

        HttpResponseMessage saved = await SendAsync(client, "/fix/row", form);
        Assert.Equal(HttpStatusCode.SeeOther, saved.StatusCode);
        Assert.Equal("channel,kind,fee_percent,values_from,elasticity\nSaturday market,market,,,\n",
            File.ReadAllText(Path.Combine(folder, "channels.csv")));
        string next = await client.GetStringAsync(saved.Headers.Location!, Cancel);
        Assert.Contains("<strong>Saved in channels.csv.", next, StringComparison.Ordinal);
        Assert.Contains("<h1>A new row of channels.csv</h1>", next, StringComparison.Ordinal);
        Assert.Contains("<a href=\"/fix/row?file=channels.csv&amp;line=2\">2</a></th><td>Saturday market</td>", next,
            StringComparison.Ordinal);

        // The same form from another window, or sent twice: refused, and what was typed stands there still.
        HttpResponseMessage again = await SendAsync(client, "/fix/row", form);
        Assert.Equal(HttpStatusCode.UnprocessableEntity, again.StatusCode);
        string page = await again.Content.ReadAsStringAsync(Cancel);
        Assert.Contains("value=\"Saturday market\"", page, StringComparison.Ordinal);
        Assert.Contains("press Save again", page, StringComparison.Ordinal);
        form = await HiddenAsync(client, "/fix/row?file=channels.csv&line=", "/fix/row");
        Assert.Contains($"value=\"{form["version"]}\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Row_TypedAsPeopleWrite_IsSavedAsTheRecordsWriteAndSaysSo()
    {
        string folder = TestFolders.MakeBad("sound");
        await using PageServer server = await ServeAsync(folder);
        HttpClient client = await EnterAsync(server);
        Dictionary<string, string> form = await HiddenAsync(client, "/fix/row?file=harvests.csv&line=", "/fix/row");
        (form["c0"], form["c1"], form["c2"]) = ("6/13/2025", "K1", "1,200");

        HttpResponseMessage saved = await SendAsync(client, "/fix/row", form);

        Assert.EndsWith("2025-06-13,K1,1200\n", File.ReadAllText(Path.Combine(folder, "harvests.csv")), StringComparison.Ordinal);
        Assert.Contains("“6/13/2025” was saved as 2025-06-13. “1,200” was saved as 1200.",
            await client.GetStringAsync(saved.Headers.Location!, Cancel), StringComparison.Ordinal);
    }

    // Pressed twice, or again after going back: one change is taken back, not the one before it as well.
    [Fact]
    public async Task Undo_PressedTwice_TakesOneChangeBack()
    {
        string folder = TestFolders.MakeBad("sound");
        await using PageServer server = await ServeAsync(folder);
        HttpClient client = await EnterAsync(server);
        HttpResponseMessage saved = new();
        foreach (string day in (string[])["2025-06-13", "2025-06-14"])
        {
            Dictionary<string, string> form = await HiddenAsync(client, "/fix/row?file=harvests.csv&line=", "/fix/row");
            (form["c0"], form["c1"], form["c2"]) = (day, "K1", "4");
            saved = await SendAsync(client, "/fix/row", form);
        }

        Dictionary<string, string> undo = await HiddenAsync(client, saved.Headers.Location!.OriginalString, "/fix/undo");
        await SendAsync(client, "/fix/undo", undo);
        HttpResponseMessage again = await SendAsync(client, "/fix/undo", undo);

        Assert.EndsWith("2025-06-13,K1,4\n", File.ReadAllText(Path.Combine(folder, "harvests.csv")), StringComparison.Ordinal);
        string told = await client.GetStringAsync(again.Headers.Location!, Cancel);
        Assert.Contains("nothing more was put back", told, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Notebook_WithAnyLettersInItsName_HasAnAddress_AndIsReadAgainWhenItChanged()
    {
        string folder = TestFolders.MakeBad("sound");
        string notebook = Path.Combine(TestFolders.Make(), "möhren frage#2.ipynb");
        File.WriteAllText(notebook, Notebook("int rounds = 1;"));
        await using PageServer server = await ServeAsync(folder, notebook);
        HttpClient client = await EnterAsync(server);
        string season = await client.GetStringAsync(new Uri("/", UriKind.Relative), Cancel);
        string address = Regex.Match(season, "href=\"(/notebook/[^\"]*)\"").Groups[1].Value;

        Assert.Equal("/notebook/m%C3%B6hren%20frage%232", address);
        string page = await client.GetStringAsync(new Uri(address, UriKind.Relative), Cancel);
        Assert.Contains($"action=\"{address}\"", page, StringComparison.Ordinal);
        HttpResponseMessage run = await SendAsync(client, address, new() { ["rounds"] = "3" });
        Assert.Equal((HttpStatusCode.SeeOther, address + "?rounds=3"), (run.StatusCode, run.Headers.Location?.OriginalString));

        File.WriteAllText(notebook, Notebook("int weeks = 2;"));
        File.SetLastWriteTimeUtc(notebook, DateTime.UtcNow.AddMinutes(1));
        string changed = await client.GetStringAsync(new Uri(address, UriKind.Relative), Cancel);
        Assert.Contains("name=\"weeks\"", changed, StringComparison.Ordinal);
    }

    private static string Notebook(string parameters) =>
        "{\"nbformat\":4,\"nbformat_minor\":5,\"metadata\":{},\"cells\":[{\"cell_type\":\"code\",\"id\":\"p\",\"execution_count\":null,"
        + $"\"metadata\":{{\"tags\":[\"parameters\"]}},\"outputs\":[],\"source\":[\"{parameters}\"]}}]}}";

    private static Task<PageServer> ServeAsync(string folder, params string[] notebooks) => PageServer.StartAsync(
        new PageServerOptions
        {
            Records = folder,
            Notebooks = notebooks,
            ScenarioFile = Path.Combine(TestFolders.Make(), "scenarios.csv"),
            Log = TextWriter.Null,
            // No notebook is run here.
            Workers = new NotebookWorkersOptions { Command = new WorkerCommand("no-such-program", []) },
        },
        Cancel);

    private async Task<HttpClient> EnterAsync(PageServer server)
    {
        HttpClient client = new(new HttpClientHandler { CookieContainer = cookies, AllowAutoRedirect = false })
        {
            BaseAddress = new Uri(new Uri(server.Address).GetLeftPart(UriPartial.Authority)),
        };
        clients.Add(client);
        await client.GetStringAsync(new Uri(server.Address), Cancel);
        return client;
    }

    // The fields a form holds beside those a person fills in.
    private static async Task<Dictionary<string, string>> HiddenAsync(HttpClient client, string address, string action)
    {
        string page = await client.GetStringAsync(new Uri(address, UriKind.Relative), Cancel);
        string form = page[page.IndexOf($"action=\"{action}\"", StringComparison.Ordinal)..];
        return Regex.Matches(form, "<input type=\"hidden\" name=\"([^\"]*)\" value=\"([^\"]*)\">|</form>")
            .TakeWhile(found => found.Groups[1].Success)
            .ToDictionary(found => found.Groups[1].Value, found => WebUtility.HtmlDecode(found.Groups[2].Value));
    }

    private static async Task<HttpResponseMessage> SendAsync(HttpClient client, string address, Dictionary<string, string> form)
    {
        using HttpRequestMessage request = new(HttpMethod.Post, address) { Content = new FormUrlEncodedContent(form) };
        request.Headers.Add("Origin", client.BaseAddress!.GetLeftPart(UriPartial.Authority));
        return await client.SendAsync(request, Cancel);
    }
}
