using System.Text.Json.Nodes;
using FarmEconomics.EndToEnd.Tests.Support;
using FarmEconomics.Files;
using FarmEconomics.Notebooks;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.EndToEnd.Tests.Notebooks;

/// <summary>The notebooks that ship, over the demo farm as a review writes them and over others as the program runs them.</summary>
public class FarmNotebookTests(FarmNotebookTests.FiveTables fiveTables, ReviewedDemo reviewed) : IClassFixture<FarmNotebookTests.FiveTables>
{
    private const string Season = "02-season-review.ipynb";

    private static readonly Lazy<ReviewedFarm> DemoFarm = new(() =>
        ReviewedFarm.Of(FarmFolder.Open(Path.Combine(Repository.Root, "demo-data")))
    );

    private static readonly string[] Cautions = ["not tax, legal, lending or food-safety advice", "local codes and licensed practice come first"];

    public static TheoryData<string> AllNotebooks() =>
        [.. Runs.Shipped];

    [Theory]
    [MemberData(nameof(AllNotebooks))]
    public async Task Notebook_OverTheDemoFarm_RunsCleanAndEveryFigureHasWords(string name)
    {
        NotebookDocument run = await reviewed.Notebook(name);
        Assert.Empty(Runs.OfKind(run, "error"));
        // A warning of the compiler would stand there.
        Assert.DoesNotContain(Runs.OfKind(run, "stream"), output => (string?)output["name"] == "stderr");
        List<JsonObject> figures = Data(run).Where(data => data.ContainsKey("image/png")).ToList();
        Assert.NotEmpty(figures);
        Assert.All(figures, figure => Assert.True(Text(figure, "text/plain").Length > 20));
        Assert.Contains(Data(run), data => Text(data, "text/plain").Contains("checks of ", StringComparison.Ordinal));
        Assert.All(Cautions, caution => Assert.Contains(caution, string.Concat(Data(run).Select(data => Text(data, "text/html"))), StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(AllNotebooks))]
    public void Notebook_InGit_IsPlainAndCleared(string name)
    {
        NotebookDocument document = NotebookDocument.Load(Path.Combine(Repository.Root, "notebooks", name));
        Assert.All(document.Cells.Where(cell => cell.IsCode), cell =>
        {
            Assert.Empty(cell.Outputs);
            // The cell of parameters holds one input a line; every other is a few lines that call the library.
            Assert.True(cell.Source.Split('\n').Length <= (cell.Tags.Contains(NotebookParameters.Tag) ? 20 : 14), cell.Source);
        });
        Assert.All(document.Cells, cell => Assert.False(string.IsNullOrWhiteSpace((string?)cell.Json["id"])));
        Assert.StartsWith("#r \"../artifacts/notebooks/FarmEconomics.NotebookKit.dll\"\n", document.Cells.First(cell => cell.IsCode).Source, StringComparison.Ordinal);
        Assert.Single(document.Cells, cell => cell.Tags.Contains(NotebookParameters.Tag));
    }

    [Fact]
    public async Task Parameters_ChangeTheNumbers()
    {
        string latest = Answer(await reviewed.Notebook(Season));
        IReadOnlyList<NotebookRun> changed = await RunAsync(
            (Season, new() { ["year"] = 2023 }),
            (Season, new() { ["settings"] = "owner_wage=45" })
        );
        Assert.All(changed, run => Assert.Null(run.Failure));
        (string earlier, string dearer) = (Answer(changed[0].Document), Answer(changed[1].Document));
        Assert.StartsWith("2023 ", earlier, StringComparison.Ordinal);
        Assert.NotEqual(latest, earlier);
        Assert.NotEqual(latest, dearer);
    }

    [Fact]
    public async Task Records_WithErrors_StopTheReviewWithTheListAndShowInTheCheck()
    {
        using Scratch scratch = new();
        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "demo-data"), "*.csv"))
        {
            File.Copy(file, scratch.File(Path.GetFileName(file)));
        }

        File.AppendAllText(scratch.File("harvests.csv"), "2025-07-01,,No such planting,1,lb,\n");
        Dictionary<string, object> parameters = new() { ["records"] = scratch.Folder };
        IReadOnlyList<NotebookRun> runs = await RunAsync(("01-records-check.ipynb", parameters), (Season, parameters));
        Assert.Contains("No such planting", runs[1].Failure!.Message, StringComparison.Ordinal);
        string check = string.Concat(Data(runs[0].Document).Select(data => Text(data, "text/html")));
        Assert.Contains("No such planting", check, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(AllNotebooks))]
    public async Task Notebook_OverTheFiveRequiredTables_RunsAndSaysWhatIsNotAvailable(string name)
    {
        NotebookRun run = await fiveTables.Run(name);
        Assert.Null(run.Failure);
        string shown = string.Concat(Data(run.Document).Select(data => Text(data, "text/html") + Text(data, "text/plain")));
        Assert.Contains(new[] { "not available", "no expense records", "don't tell", "isn't known", "hold no" }, words => shown.Contains(words, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(Season, ReportId.Season)]
    [InlineData("04-drop-or-grow.ipynb", ReportId.DropOrGrow)]
    [InlineData("06-loan-or-grant.ipynb", ReportId.Lender)]
    [InlineData("11-next-year.ipynb", ReportId.NextYear)]
    [InlineData("08-one-crop.ipynb", ReportId.Crop)]
    [InlineData("10-water-and-power.ipynb", ReportId.Water)]
    public async Task Blocks_OfANotebook_AreThoseOfThePage(string name, ReportId id)
    {
        NotebookDocument run = await reviewed.Notebook(name);
        NextYearReport.FindSolver = Solver.LinearSolvers.Find;
        JsonObject page = BlockJson.Of(
            ReportCatalog.Get(id).Make(DemoFarm.Value, new Dictionary<string, object>(), TestContext.Current.CancellationToken)
        );
        List<JsonObject> shown =
        [
            .. Data(run)
                .Select(data => data[BlockFormatterSource.Json])
                .OfType<JsonNode>()
                .Select(json => json as JsonObject ?? JsonNode.Parse((string)json!)!.AsObject()),
        ];
        Assert.True(shown.Count >= 5);
        Assert.All(shown, block => Assert.Equal(page[(string)block["key"]!]!.ToJsonString(), block.ToJsonString()));
    }

    [Fact]
    public async Task NextYear_AskedHowSafeItIs_ShowsTheBlockOfThePage()
    {
        // A few crops: over the demo farm's forty these plans are the work of a minute.
        string few = Path.Combine(Repository.Root, "tests", "FarmEconomics.EndToEnd.Tests", "Samples", "shoebox-written-cleanly");
        NotebookRun run = (await RunAsync(("11-next-year.ipynb", new() { ["records"] = few, ["how_safe"] = true })))[0];
        Assert.Null(run.Failure);
        NextYearReport.FindSolver = Solver.LinearSolvers.Find;
        NextYearParameters asked = new() { HowSafe = true };
        Block page = new NextYearReport()
            .Make(ReviewedFarm.Of(FarmFolder.Open(few)), asked, TestContext.Current.CancellationToken)
            .Show(NextYearBlock.Safe);
        string key = BlockKey.Of(NextYearBlock.Safe).Name;
        JsonObject shown = Data(run.Document).Select(data => data[BlockFormatterSource.Json]).OfType<JsonNode>()
            .Select(json => json as JsonObject ?? JsonNode.Parse((string)json!)!.AsObject())
            .Single(block => (string)block["key"]! == key);
        Assert.Equal(BlockJson.Of([page])[key]!.ToJsonString(), shown.ToJsonString());
    }

    /// <summary>The notebooks over a farm of the five required tables, all run once for the tests that look at them.</summary>
    public sealed class FiveTables
    {
        private readonly Lazy<Task<IReadOnlyList<NotebookRun>>> runs = new(RunAllAsync);

        public async Task<NotebookRun> Run(string name) => (await runs.Value)[Runs.Shipped.IndexOf(name)];

        private static async Task<IReadOnlyList<NotebookRun>> RunAllAsync()
        {
            using Scratch scratch = new();
            File.WriteAllText(scratch.File("crops.csv"), "crop,unit\nKale,bunch\nBeans,lb\n");
            File.WriteAllText(scratch.File("beds.csv"), "bed,length_ft\nA,100\nB,100\n");
            File.WriteAllText(
                scratch.File("plantings.csv"),
                "planting,crop,bed,bed_feet,in_bed,out_of_bed\nK1,Kale,A,50,2025-05-01,2025-09-01\nB1,Beans,B,60,2025-06-01,2025-09-01\n"
            );
            File.WriteAllText(scratch.File("harvests.csv"), "date,planting,quantity\n2025-07-01,K1,40\n2025-08-01,B1,30\n");
            File.WriteAllText(
                scratch.File("sales.csv"),
                "date,crop,channel,quantity,unit_price\n2025-07-01,Kale,Market,40,3\n2025-08-01,Beans,Market,30,4\n"
            );
            return await Runs.AllAsync(new Dictionary<string, object> { ["records"] = scratch.Folder });
        }
    }

    // In one child, one after the other: its start is most of the time.
    private static Task<IReadOnlyList<NotebookRun>> RunAsync(params (string Name, Dictionary<string, object> Parameters)[] jobs) =>
        NotebookChildProcess.RunAllAsync(
            [
                .. jobs.Select(job => new NotebookJob(
                    Path.Combine(Repository.Root, "notebooks", job.Name),
                    job.Parameters,
                    new NotebookRunOptions()
                )),
            ],
            Runs.Worker,
            parallel: 1,
            TestContext.Current.CancellationToken
        );

    private static string Answer(NotebookDocument run) =>
        Data(run).Select(data => Text(data, "text/plain")).First(text => text.StartsWith("20", StringComparison.Ordinal));

    private static IEnumerable<JsonObject> Data(NotebookDocument run) =>
        run.Cells.SelectMany(cell => cell.Outputs).Select(output => output["data"]?.AsObject()).OfType<JsonObject>();

    private static string Text(JsonObject data, string type) => data[type] switch
    {
        JsonArray lines => string.Concat(lines.Select(line => (string?)line)),
        JsonValue value => (string?)value ?? "",
        _ => "",
    };
}
