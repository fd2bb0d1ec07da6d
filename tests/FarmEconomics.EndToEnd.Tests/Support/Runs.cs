using FarmEconomics.Notebooks;

namespace FarmEconomics.EndToEnd.Tests.Support;

/// <summary>Runs notebooks as the program does: in children that are the program itself, as it was built.</summary>
internal static class Runs
{
    public static readonly IReadOnlyDictionary<string, object> NoParameters = new Dictionary<string, object>();

    public static WorkerCommand Worker { get; } = new("dotnet", [Program.Assembly, NotebookWorker.Verb]);

    private static readonly Lazy<Task<NotebookRun>> SeasonRun = new(() => Sample("season"));

    /// <summary>The sample with every kind of output, run once for all tests that look at it.</summary>
    public static Task<NotebookRun> Season() => SeasonRun.Value;

    public static Task<NotebookRun> Sample(
        string name, IReadOnlyDictionary<string, object>? parameters = null, NotebookRunOptions? options = null) =>
        NotebookChildProcess.RunAsync(
            new NotebookJob(Repository.Sample(name), parameters ?? NoParameters, options ?? new NotebookRunOptions()),
            Worker,
            TestContext.Current.CancellationToken);

    /// <summary>The names of the notebooks that ship, in order.</summary>
    public static List<string> Shipped { get; } =
    [
        .. Directory
            .GetFiles(Path.Combine(Repository.Root, "notebooks"), "*.ipynb")
            .Select(path => Path.GetFileName(path))
            .Order(StringComparer.Ordinal),
    ];

    /// <summary>
    /// All notebooks that ship, one after another in one child: a review takes two, but each has its own compiler to warm up.
    /// </summary>
    public static Task<IReadOnlyList<NotebookRun>> AllAsync(IReadOnlyDictionary<string, object> parameters) =>
        NotebookChildProcess.RunAllAsync(
            [
                .. Shipped.Select(name => new NotebookJob(
                    Path.Combine(Repository.Root, "notebooks", name),
                    parameters,
                    new NotebookRunOptions()
                )),
            ],
            Worker,
            parallel: 1
        );

    /// <summary>All text a cell printed.</summary>
    public static string Printed(NotebookCell cell) => string.Concat(
        cell.Outputs.Where(o => (string?)o["output_type"] == "stream").Select(o => string.Concat(o["text"]!.AsArray().Select(l => (string?)l))));

    /// <summary>The outputs of one kind.</summary>
    public static IEnumerable<System.Text.Json.Nodes.JsonObject> OfKind(NotebookDocument document, string kind) =>
        document.Cells.SelectMany(cell => cell.Outputs).Where(output => (string?)output["output_type"] == kind);
}
