using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using FarmEconomics.Files;
using FarmEconomics.Notebooks;
using FarmEconomics.Notebooks.Pages;
using FarmEconomics.Page.Farm;
using FarmEconomics.Page.Fields;
using FarmEconomics.Page.Runs;
using FarmEconomics.Page.Views;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Season;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace FarmEconomics.Page;

/// <summary>The addresses of the server and what stands at each.</summary>
internal sealed partial class PageRoutes(
    PageServerOptions options,
    FarmCache cache,
    IReadOnlyList<NotebookEntry> notebooks,
    RunBoard board,
    Importing.ImportSessions sessions
)
{
    // A page that is ready in this time comes at once; for a longer one the reader sees how far it is.
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1.5);

    internal void MapTo(WebApplication app)
    {
        MapReports(app);
        app.MapGet("/" + PageShell.FontsFile, () => Results.Text(PageShell.Fonts, "text/css; charset=utf-8"));
        app.MapGet(LiveShell.FootPath, (HttpContext context) =>
            Results.Text(
                PageShell.Foot(context.Request.Query["text"].ToString(), context.Request.Query["metric"] == "yes"),
                "text/css; charset=utf-8"
            )
        );
        app.MapGet(LiveShell.StylePath, () => Results.Text(LiveShell.Stylesheet, "text/css; charset=utf-8"));
        app.MapGet(LiveShell.ScriptPath, () => Results.Text(LiveShell.Script, "text/javascript; charset=utf-8"));
        app.MapGet("/notebook/{name}", NotebookAsync);
        app.MapPost("/notebook/{name}", RunAsync);
        app.MapGet("/notebook/{name}/page.html", (HttpContext context, string name) => Copy(context, name, "html"));
        app.MapGet("/notebook/{name}/notebook.ipynb", (HttpContext context, string name) => Copy(context, name, "ipynb"));
        app.MapGet("/runs/{id}", (string id) =>
            board.Find(id) is { } run
                ? Results.Text(Json(run.Now).ToJsonString(), "application/json")
                : NoSuchPage("There is no such run any more.")
        );
        app.MapPost("/runs/{id}/cancel", Cancel);
        app.MapGet("/explain", Explain);
        MapTables(app);
        MapScenarios(app);
        MapFixing(app);
        MapImporting(app);
        MapPlan(app);
        // A browser asks for it by itself; there is none.
        app.MapGet("/favicon.ico", () => Results.NoContent());
        app.MapFallback(() => NoSuchPage("There is no such page."));
    }

    /// <summary>What an address asks for, key by key; of a key given twice the last counts.</summary>
    private static Dictionary<string, string> Given(
        IEnumerable<KeyValuePair<string, Microsoft.Extensions.Primitives.StringValues>> values
    ) => values.ToDictionary(pair => pair.Key, pair => pair.Value.LastOrDefault() ?? "", StringComparer.Ordinal);

    private static Dictionary<string, string> Parsed(string query) =>
        Given(Microsoft.AspNetCore.WebUtilities.QueryHelpers.ParseQuery(query));

    private async Task<IResult> NotebookAsync(HttpContext context, string name)
    {
        if (Find(name) is not { } notebook)
        {
            return NoSuchPage("There is no such notebook.");
        }

        FarmSnapshot now = cache.Look();
        FieldForm form = Form(now, notebook, Given(context.Request.Query));
        return await ShowAsync(now, notebook, form, context.Request.Query["_shown"].ToString(), context.RequestAborted)
            .ConfigureAwait(false);
    }

    private async Task<IResult> ShowAsync(
        FarmSnapshot now,
        NotebookEntry notebook,
        FieldForm form,
        string shown,
        CancellationToken aborted,
        string? scenarios = null
    )
    {
        RunStanding? run = null;
        if (form.Faults.Count == 0)
        {
            PageRun asked = board.Get(notebook, Key(now, notebook, form), form.Parameters);
            await Task.WhenAny(asked.Ended, Task.Delay(Patience, aborted)).ConfigureAwait(false);
            run = asked.Now;
        }

        FieldForm shownForm = Form(now, notebook, Parsed(shown));
        NotebookRun? below = shownForm.Faults.Count == 0 ? board.Ended(Key(now, notebook, shownForm))?.Now.Result : null;
        NotebookView.Page page = NotebookView.Render(notebook, form, run, shownForm, below, scenarios ?? "");
        return Page(
            page.Title,
            page.Body,
            notebook.Address,
            run is { HasEnded: false } ? 2 : null,
            form.Faults.Count > 0 ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK
        );
    }

    private async Task<IResult> RunAsync(HttpContext context, string name)
    {
        if (Find(name) is not { } notebook)
        {
            return NoSuchPage("There is no such notebook.");
        }

        IFormCollection sent = await SentAsync(context).ConfigureAwait(false);
        FarmSnapshot now = cache.Look();
        FieldForm form = Form(now, notebook, Given(sent));
        bool byScript = context.Request.Headers.Accept.ToString().StartsWith("application/json", StringComparison.Ordinal);
        if (form.Faults.Count > 0)
        {
            return byScript
                ? FaultsAsJson(form)
                : await ShowAsync(now, notebook, form, sent["_shown"].ToString(), context.RequestAborted).ConfigureAwait(false);
        }

        PageRun run = board.Again(notebook, Key(now, notebook, form), form.Parameters);
        string address = Nav.Address(notebook.Address, form.Query);
        if (byScript)
        {
            return Results.Text(new JsonObject { ["run"] = run.Id, ["address"] = address }.ToJsonString(), "application/json");
        }

        string shown = sent["_shown"].ToString();
        return SeeOther(
            context,
            shown.Length > 0 ? $"{address}{(form.Query.Length > 0 ? '&' : '?')}_shown={Uri.EscapeDataString(shown)}" : address
        );
    }

    // Reading what is no form, or is broken, fails in several ways; they are one to whoever sent it.
    private static async Task<IFormCollection> SentAsync(HttpContext context)
    {
        if (!context.Request.HasFormContentType)
        {
            throw new BadHttpRequestException("What was sent is no form.", StatusCodes.Status415UnsupportedMediaType);
        }

        try
        {
            return await context.Request.ReadFormAsync(context.RequestAborted).ConfigureAwait(false);
        }
        catch (Exception broken) when (broken is InvalidDataException or IOException and not BadHttpRequestException)
        {
            throw new BadHttpRequestException(broken.Message, StatusCodes.Status400BadRequest, broken);
        }
    }

    private static IResult FaultsAsJson(FieldForm form)
    {
        JsonObject faults = [];
        foreach ((string field, string fault) in form.Faults)
        {
            faults[field] = fault;
        }

        return Results.Text(
            new JsonObject { ["line"] = FormView.FaultLine(form.Faults.Count), ["faults"] = faults }.ToJsonString(),
            "application/json",
            statusCode: StatusCodes.Status422UnprocessableEntity
        );
    }

    private IResult Cancel(HttpContext context, string id)
    {
        PageRun? run = board.Find(id);
        run?.CallOff();
        if (context.Request.Headers.Accept.ToString().StartsWith("application/json", StringComparison.Ordinal))
        {
            return Results.NoContent();
        }

        string back =
            context.Request.Headers.Referer.ToString() is { Length: > 0 } from && Uri.TryCreate(from, UriKind.Absolute, out Uri? page)
                ? page.AbsolutePath
                : "/";
        return SeeOther(context, back);
    }

    private IResult Explain(HttpContext context)
    {
        Dictionary<string, string> given = Given(context.Request.Query);
        FarmSnapshot now = cache.Look();
        FieldForm form = Form(now, SeasonFields, given);
        string crop = given.GetValueOrDefault("crop", "");
        string query = NotebookView.YearAndSettings(form);
        OpenedFarm opened = now.Farm(form.Settings, form.SkipBadRows);
        try
        {
            return opened.WithSeason(form.Year, (_, season) => ExplainView.Render(season, crop, Nav.Address("/", query))) is { } body
                ? Page($"Where the figures of {crop} come from", body, "/")
                : NoFigure(opened, "/", "The records tell nothing of that crop year.");
        }
        catch (ArgumentException unknown)
        {
            return NoSuchPage(unknown.Message);
        }
    }

    private IResult Copy(HttpContext context, string name, string kind)
    {
        if (Find(name) is not { } notebook)
        {
            return NoSuchPage("There is no such notebook.");
        }

        FarmSnapshot now = cache.Look();
        FieldForm form = Form(now, notebook, Given(context.Request.Query));
        if (form.Faults.Count > 0 || board.Ended(Key(now, notebook, form))?.Now.Result is not { } result)
        {
            return NoSuchPage("This page is not there any more; work it out again, then keep a copy.");
        }

        bool isPage = kind == "html";
        string text = !isPage
            ? result.Document.WithoutSvg().ToJson()
            : NotebookPage.Render(
                result.Document,
                new NotebookPageOptions
                {
                    Title = notebook.Question,
                    Failure = result.Failure,
                    Footer = [ProofTables.Cautions],
                }
            );
        return Results.File(
            Encoding.UTF8.GetBytes(text),
            isPage ? "text/html; charset=utf-8" : "application/x-ipynb+json",
            $"{notebook.Name}.{kind}"
        );
    }

    /// <summary>The fields every page about a season understands.</summary>
    private static IReadOnlyList<ReportField> SeasonFields => ReportCatalog.Get(ReportId.Season).Fields;

    private NotebookEntry? Find(string name) => notebooks.FirstOrDefault(notebook => notebook.Name == name)?.Now();

    // The names to choose from come from the records as they are; a form that leaves rows out is read with those left out.
    private FieldForm Form(FarmSnapshot now, NotebookEntry notebook, Dictionary<string, string> given) =>
        Form(now, notebook.Parameters, given);

    private FieldForm Form(FarmSnapshot now, IReadOnlyList<ReportField> fields, Dictionary<string, string> given)
    {
        FieldForm form = FieldForm.Read(fields, now.Farm(skipBadRows: given.GetValueOrDefault("skip_bad_rows") == "true"),
            cache.Folder, options.ScenarioFile, given);
        RecordsFit.Check(form, fields, () => now.Farm(form.Settings, form.SkipBadRows));
        return form;
    }

    private string Key(FarmSnapshot now, NotebookEntry notebook, FieldForm form)
    {
        string scenarios =
            form.Parameters.Values.Contains(options.ScenarioFile) && File.Exists(options.ScenarioFile)
                ? $"{File.GetLastWriteTimeUtc(options.ScenarioFile).Ticks}"
                : "";
        return $"{notebook.Name} {notebook.Version}?{form.Query}#{now.Fingerprint}{scenarios}";
    }

    private static JsonObject Json(RunStanding run) => new()
    {
        ["state"] = JsonNamingPolicy.CamelCase.ConvertName(run.State.ToString()),
        ["cell"] = run.Cell,
        ["of"] = run.Of,
        ["words"] = NotebookView.Words(run),
        ["ended"] = run.HasEnded,
        ["page"] = run.Result is not null,
    };

    private IResult Page(string title, string body, string current, int? refresh = null, int status = StatusCodes.Status200OK) =>
        Results.Text(
            LiveShell.Render(new PageFrame(title, cache.FarmName, "") { Tabs = Nav.Of(notebooks, current) }, body, refresh),
            "text/html; charset=utf-8",
            statusCode: status
        );

    /// <summary>What stands where no figure can: the errors that stop all of them, else why this one isn't there.</summary>
    private IResult NoFigure(OpenedFarm opened, string path, string why) =>
        opened.LatestYear == 0 ? opened.With(folder => Stopped(folder, path)) : NoSuchPage(why);

    private IResult Stopped(FarmFolder folder, string path) =>
        Page(
            folder.ErrorCount == 0 ? "No crop year yet" : "The records have errors",
            ErrorsView.Render(folder, cache.Folder),
            path
        );

    private IResult NoSuchPage(string why) =>
        Page(
            "Not found",
            $"<h1>Not found</h1>\n<p>{PageShell.Encode(why)}</p>\n<p><a href=\"/\">Back to the farm</a></p>",
            "",
            status: StatusCodes.Status404NotFound
        );
}
