using System.Net;
using System.Text;
using FarmEconomics.EndToEnd.Tests.Support;

namespace FarmEconomics.EndToEnd.Tests.Served;

/// <summary>Whatever is sent and whatever happens to the records: a page says what happened and what to do, never an empty
/// answer.</summary>
public class FaultPageTests(OpenDemoFarm farm)
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Records_PulledOut_ThePageSaysSo_AndIsBackWithThem()
    {
        string stick = Directory.CreateTempSubdirectory("farm-stick-").FullName;
        string records = Path.Combine(stick, "my records");
        Directory.CreateDirectory(records);
        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "demo-data"), "*.csv"))
        {
            File.Copy(file, Path.Combine(records, Path.GetFileName(file)));
        }

        await using OpenProgram open = await OpenProgram.StartAsync(records);
        using HttpClient client = open.Client();
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/tables", Cancel)).StatusCode);

        Directory.Move(records, records + " away");
        await ExpectAsync(await client.GetAsync("/tables", Cancel), HttpStatusCode.ServiceUnavailable, "Your records can’t be read",
            "my records is not there any more", "USB stick");
        using HttpRequestMessage byScript = Form(open, "/scenarios/remove", "year=2024");
        byScript.Headers.Add("Accept", "application/json");
        HttpResponseMessage told = await client.SendAsync(byScript, Cancel);
        Assert.Equal((HttpStatusCode.ServiceUnavailable, "text/plain"), (told.StatusCode, told.Content.Headers.ContentType?.MediaType));
        Assert.StartsWith("my records is not there any more.", await told.Content.ReadAsStringAsync(Cancel), StringComparison.Ordinal);
        Assert.Equal(2, open.Errors.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
        Assert.Contains("GET /tables: 503, ", open.Errors, StringComparison.Ordinal);

        Directory.Move(records + " away", records);
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/tables", Cancel)).StatusCode);
        Directory.Delete(stick, recursive: true);
    }

    [Theory]
    [InlineData("/scenarios")]
    [InlineData("/scenarios/remove")]
    public async Task Form_ThatIsNone_GetsAPage(string address)
    {
        OpenProgram open = await farm.Program();
        using HttpClient client = open.Client();
        using HttpRequestMessage request = Form(open, address, "year=2024");
        request.Content!.Headers.ContentType = new("text/plain");
        await ExpectAsync(await client.SendAsync(request, Cancel), HttpStatusCode.UnsupportedMediaType, "Not a form");
    }

    [Fact]
    public async Task Form_WithFiveThousandFields_GetsAPage()
    {
        OpenProgram open = await farm.Program();
        using HttpClient client = open.Client();
        using HttpRequestMessage request = Form(open, "/scenarios",
            string.Join('&', Enumerable.Range(0, 5000).Select(i => $"f{i}=1")));
        await ExpectAsync(await client.SendAsync(request, Cancel), HttpStatusCode.BadRequest, "Not understood");
    }

    [Fact]
    public async Task Form_BrokenInTheMiddle_GetsAPage()
    {
        OpenProgram open = await farm.Program();
        using HttpClient client = open.Client();
        using HttpRequestMessage request = Form(open, "/scenarios",
            "--x\r\nContent-Disposition: form-data; name=year\r\n\r\n20");
        request.Content!.Headers.ContentType = new("multipart/form-data") { Parameters = { new("boundary", "x") } };
        await ExpectAsync(await client.SendAsync(request, Cancel), HttpStatusCode.BadRequest, "Not understood");
    }

    [Fact]
    public async Task Form_TooLong_GetsAPage()
    {
        OpenProgram open = await farm.Program();
        using HttpClient client = open.Client();
        using HttpRequestMessage request = Form(open, "/scenarios", "change.more=" + new string('a', 100_000));
        await ExpectAsync(await client.SendAsync(request, Cancel), HttpStatusCode.RequestEntityTooLarge, "Too much was sent",
            "Shorten the longest text");
    }

    [Fact]
    public async Task Address_TooLong_GetsAPage()
    {
        OpenProgram open = await farm.Program();
        using HttpClient client = open.Client();
        await ExpectAsync(await client.GetAsync("/tables?x=" + new string('a', 100_000), Cancel), HttpStatusCode.RequestUriTooLong,
            "The address is too long");
        Assert.Equal(HttpStatusCode.OK, (await client.GetAsync("/tables?x=" + new string('a', 50_000), Cancel)).StatusCode);
    }

    [Fact]
    public async Task Address_ThatThereIsNot_GetsAPage()
    {
        using HttpClient client = (await farm.Program()).Client();
        await ExpectAsync(await client.GetAsync("/scenarios/remove", Cancel), HttpStatusCode.NotFound, "There is no such page");
        await ExpectAsync(await client.GetAsync("/nothing.png", Cancel), HttpStatusCode.NotFound, "There is no such page");
    }

    [Fact]
    public async Task Runs_ThreeHundredQueued_TheReadersNewestGoesFirst_AndFewWait()
    {
        await using OpenProgram open = await OpenProgram.StartAsync(Path.Combine(Repository.Root, "demo-data"), "--notebook",
            Repository.Sample("slow"), "--run-my-notebooks");
        using HttpClient client = open.Client();
        List<string> queued = [];
        for (int i = 0; i < 300; i++)
        {
            queued.Add(await RunAsync(client, open, "rounds=20"));
        }

        string own = await RunAsync(client, open, "rounds=1");
        while (!(await StandingAsync(client, own)).Contains("\"state\":\"done\"", StringComparison.Ordinal))
        {
            await Task.Delay(200, Cancel);
        }

        List<string> standings = [];
        foreach (string run in queued)
        {
            standings.Add(await StandingAsync(client, run));
        }

        // At most the two that had a process when the reader came, and the one that got it before the reader's own was queued.
        Assert.InRange(standings.Count(one => one.Contains("\"state\":\"done\"", StringComparison.Ordinal)), 0, 3);
        Assert.InRange(standings.Count(one => one.Contains("\"ended\":false", StringComparison.Ordinal)), 1, 12);
        Assert.Contains(standings, one => one.Contains("newer pages were asked for", StringComparison.Ordinal));
    }

    private static async Task<string> RunAsync(HttpClient client, OpenProgram open, string fields)
    {
        using HttpRequestMessage request = Form(open, "/notebook/slow", fields);
        request.Headers.Add("Accept", "application/json");
        using HttpResponseMessage answer = await client.SendAsync(request, Cancel);
        string text = await answer.Content.ReadAsStringAsync(Cancel);
        return System.Text.Json.JsonDocument.Parse(text).RootElement.GetProperty("run").GetString()!;
    }

    private static async Task<string> StandingAsync(HttpClient client, string run) =>
        await (await client.GetAsync($"/runs/{run}", Cancel)).Content.ReadAsStringAsync(Cancel);

    private static HttpRequestMessage Form(OpenProgram open, string address, string fields)
    {
        StringContent content = new(fields, Encoding.UTF8, "application/x-www-form-urlencoded");
        HttpRequestMessage request = new(HttpMethod.Post, address) { Content = content };
        request.Headers.Add("Origin", open.Base);
        return request;
    }

    private static async Task ExpectAsync(HttpResponseMessage answer, HttpStatusCode status, params string[] words)
    {
        string page = WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(Cancel));
        Assert.Equal(status, answer.StatusCode);
        Assert.Equal("text/html", answer.Content.Headers.ContentType?.MediaType);
        Assert.All(words, word => Assert.Contains(word, page, StringComparison.Ordinal));
        Assert.Contains("<a href=\"/\">Back to the farm</a>", page, StringComparison.Ordinal);
    }
}
