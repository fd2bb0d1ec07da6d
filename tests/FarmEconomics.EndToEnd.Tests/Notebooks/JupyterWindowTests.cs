using System.Globalization;
using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Notebooks;

namespace FarmEconomics.EndToEnd.Tests.Notebooks;

/// <summary>
/// Notebooks that ship in Jupyter's own window, as the command <c>jupyter</c> gets them ready: the check of the records, the season and a
/// question of one's own, or each of them where FARMECONOMICS_WINDOWS=1 asks for it. All of them run in the project's own host as well.
/// </summary>
public partial class JupyterWindowTests(JupyterOfClass jupyter, BrowserOfClass chromium, ReviewedDemo reviewed)
    : IClassFixture<JupyterOfClass>, IClassFixture<BrowserOfClass>
{
    private static readonly bool Every = Environment.GetEnvironmentVariable("FARMECONOMICS_WINDOWS") == "1";

    public static TheoryData<string> Notebooks() =>
        [.. Runs.Shipped.Where(name => Every || name[..2] is "01" or "02" or "09")];

    [SlowTheory]
    [MemberData(nameof(Notebooks))]
    public async Task Notebook_Run_ShowsWhatTheReviewShows(string name)
    {
        // One of them with its kernel restarted; the others find what earlier ones left in it.
        bool restarted = name == Runs.Shipped[0];
        IReadOnlyList<ShownCell> shown = await JupyterWindow.RunAllAsync(await chromium.Get(), await jupyter.Get(), name, restarted);

        Assert.All(shown, cell => Assert.Empty(cell.Red));
        int first = int.Parse(Digits().Match(shown[0].Prompt).Value, CultureInfo.InvariantCulture);
        Assert.All(shown, (cell, index) => Assert.Equal($"In [{first + index}]:", cell.Prompt.Replace('\u00a0', ' ')));

        // The same notebook in the project's own host.
        NotebookCell[] own = [.. (await reviewed.Notebook(name)).Cells.Where(cell => cell.IsCode)];
        Assert.Equal(own.Select(PicturesOf), shown.Select(cell => cell.Pictures.Length));
        Assert.NotEmpty(shown.SelectMany(cell => cell.Pictures));
        Assert.All(shown.SelectMany(cell => cell.Pictures), width => Assert.True(width > 0));
        // Below its first cell the kernel puts a script of its own.
        Assert.Equal(own.Skip(1).SelectMany(TextsOf), shown.Skip(1).SelectMany(cell => cell.Texts).Select(WithoutSpace));
        string[][] proofs =
        [
            .. shown.Where((_, index) => own[index].Id!.EndsWith("proof", StringComparison.Ordinal)).Select(cell => cell.Texts),
        ];
        Assert.All(proofs, Assert.NotEmpty);
        Assert.Contains(proofs.SelectMany(texts => texts), text => text.Contains("checks of ", StringComparison.Ordinal));
    }

    [SlowTheory]
    [InlineData("error", "the cents don't add up")]
    [InlineData("warning", "look here")]
    public async Task Sample_ThatGoesWrong_ShowsInRed(string name, string what)
    {
        // What the test above looks for does happen.
        JupyterServer server = await jupyter.Get();
        JupyterFolder.Write(jupyter.Folder, Repository.Root, [Repository.Sample(name)], Runs.NoParameters);
        IReadOnlyList<ShownCell> shown = await JupyterWindow.RunAllAsync(await chromium.Get(), server, name + ".ipynb");
        Assert.Contains(shown.SelectMany(cell => cell.Red), red => red.Contains(what, StringComparison.Ordinal));
    }

    private static int PicturesOf(NotebookCell cell) => cell.Outputs.Count(output => output["data"] is JsonObject data && data.ContainsKey("image/png"));

    private static IEnumerable<string> TextsOf(NotebookCell cell) => cell.Outputs
        .Select(output => output["data"]).OfType<JsonObject>().Where(data => !data.ContainsKey("image/png"))
        .Select(data => WithoutSpace(data.ContainsKey("text/html") ? WebUtility.HtmlDecode(HtmlTag().Replace(Text(data["text/html"]), "")) : Text(data["text/plain"])));

    private static string Text(JsonNode? text) => text is JsonArray lines ? string.Concat(lines.Select(line => (string?)line)) : (string?)text ?? "";

    private static string WithoutSpace(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    [GeneratedRegex(@"\d+")]
    private static partial Regex Digits();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex HtmlTag();
}

/// <summary>The demo farm's notebooks as the command writes them, and one Jupyter on them for all tests of a class.</summary>
public sealed class JupyterOfClass : IAsyncDisposable
{
    private readonly Scratch scratch = new();
    private readonly Lazy<Task<JupyterServer>> server;

    public JupyterOfClass() => server = new(StartAsync);

    /// <summary>The folder that the command wrote.</summary>
    internal string Folder => scratch.File("jupyter");

    /// <summary>The server; every test that asks is skipped or fails where Jupyter is missing.</summary>
    internal Task<JupyterServer> Get() => server.Value;

    public async ValueTask DisposeAsync()
    {
        if (server is { IsValueCreated: true, Value.IsCompletedSuccessfully: true })
        {
            await (await server.Value).DisposeAsync();
        }

        scratch.Dispose();
    }

    private async Task<JupyterServer> StartAsync()
    {
        (int restored, string why) = await Tool.RunAsync("dotnet", Repository.Root, ["tool", "restore"]);
        Assert.True(restored == 0, why);
        ProgramRun run = await Program.RunAsync("jupyter", Path.Combine(Repository.Root, "demo-data"), "--out", Folder);
        Assert.True(run.ExitCode == 0, run.Error);
        return await JupyterServer.StartAsync(Folder);
    }
}
