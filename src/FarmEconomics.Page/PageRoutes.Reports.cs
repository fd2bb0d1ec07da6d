using FarmEconomics.Page.Farm;
using FarmEconomics.Page.Fields;
using FarmEconomics.Page.Views;
using FarmEconomics.Records;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Frame;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace FarmEconomics.Page;

/// <summary>The reports, worked out in this process when they are asked for.</summary>
internal sealed partial class PageRoutes
{
    private void MapReports(WebApplication app)
    {
        foreach (IReport report in ReportCatalog.Tabs)
        {
            string path = Nav.PathOf(report.Id);
            // As a Delegate: what takes the context alone and gives a task would count as writing its own answer.
            app.MapGet(path, (Delegate)((HttpContext context) => ReportAsync(context, report, path, "")));
        }

        foreach (IReport report in ReportCatalog.PerCrop)
        {
            string folder = "/" + ReportCatalog.FolderOf(report.Id) + "/";
            app.MapGet(folder + "{slug}", (HttpContext context, string slug) => ReportAsync(context, report, folder + slug, slug));
        }
    }

    /// <summary>Works out the first page and the pages that take long, so that they are there when somebody asks.</summary>
    internal async Task WorkAheadAsync()
    {
        try
        {
            OpenedFarm opened = cache.Look().Farm();
            if (opened.LatestYear == 0)
            {
                return;
            }

            foreach (IReport report in ReportCatalog.Tabs.Where(report => report.Id == ReportId.Season || !report.IsInstant)
                .OrderByDescending(report => report.Id == ReportId.Season))
            {
                IReadOnlyDictionary<string, object> given = Form(cache.Look(), report.Fields, []).Parameters;
                ReviewedFarm farm = opened.Reviewed(0);
                IReadOnlyList<Block>? blocks = await opened.Answered
                    .WithinAsync(report, farm, given, Timeout.InfiniteTimeSpan, CancellationToken.None).ConfigureAwait(false);
                if (blocks is not null && !report.IsInstant)
                {
                    cache.LastAnswers.TryAdd(report.Id, (farm, blocks));
                }
            }
        }
        catch (Exception fault) when (fault is RecordsException or IOException or UnauthorizedAccessException or ArgumentException)
        {
            // Nobody asked yet: whoever does is told.
        }
    }

    private async Task<IResult> ReportAsync(HttpContext context, IReport report, string path, string slug)
    {
        FarmSnapshot now = cache.Look();
        Dictionary<string, string> given = Given(context.Request.Query);
        OpenedFarm plain = now.Farm(skipBadRows: given.GetValueOrDefault("skip_bad_rows") == "true");
        if (slug.Length > 0)
        {
            if (plain.Reviewed(0).Slugs.Find(slug) is not { } crop)
            {
                return NoFigure(plain, path, "There is no crop of that name.");
            }

            given["crop"] = crop;
        }

        FieldForm form = PageForm(now, (report, slug), given);
        for (; ; )
        {
            FieldForm shown = form.Faults.Count > 0 ? PageForm(now, (report, slug), Without(given, form)) : form;
            OpenedFarm opened = now.Farm(shown.Settings, shown.SkipBadRows);
            ReviewedFarm farm = opened.Reviewed(shown.Year);
            if (!farm.IsReviewed && !report.TakesAnyRecords)
            {
                return Stopped(farm.Folder, path);
            }

            try
            {
                return await ShownAsync(context, new Asked(report, path, form, shown, opened), farm).ConfigureAwait(false);
            }
            catch (ArgumentException refused) when (FieldOf(form, refused) is { } key)
            {
                form.Refuse(key, Sentence(refused));
            }
        }
    }

    // The page of a crop says the crop by its address.
    private FieldForm PageForm(FarmSnapshot now, (IReport Report, string Slug) asking, Dictionary<string, string> given)
    {
        FieldForm form = Form(now, asking.Report.Fields, given);
        if (asking.Slug.Length > 0)
        {
            form.SaidByThePage("crop");
        }

        return form;
    }

    // A value that only the report itself finds wrong is told beside its field as well; each is refused once.
    private static string? FieldOf(FieldForm form, ArgumentException refused) => form.Fields.FirstOrDefault(field =>
        field.Key.Replace("_", "", StringComparison.Ordinal).Equals(refused.ParamName, StringComparison.OrdinalIgnoreCase)
            && form.Value(field) != field.Default && !form.Faults.ContainsKey(field.Key))?.Key;

    private static string Sentence(Exception refused) => refused.Message.Split(" (Parameter")[0];

    /// <summary>What a request asks for.</summary>
    private sealed record Asked(IReport Report, string Path, FieldForm Form, FieldForm Shown, OpenedFarm Opened);

    /// <summary>A report's blocks with the farm they are of.</summary>
    /// <param name="Farm">The farm.</param>
    /// <param name="Blocks">The blocks.</param>
    /// <param name="IsLast">True for the last answer: the one asked for is being worked out.</param>
    private sealed record Answer(ReviewedFarm Farm, IReadOnlyList<Block> Blocks, bool IsLast = false);

    private async Task<IResult> ShownAsync(HttpContext context, Asked asked, ReviewedFarm farm)
    {
        string along = NotebookView.YearAndSettings(asked.Shown);
        bool copy = context.Request.Query.ContainsKey("_copy");
        try
        {
            bool waits = copy || context.Request.Query.ContainsKey("_wait");
            if (await AnswerAsync(asked, farm, waits, context.RequestAborted).ConfigureAwait(false) is not { } answer)
            {
                return Page(asked.Report.Tab ?? "", ReportView.Nothing(asked.Report.Tab ?? ""), asked.Path, refresh: 2);
            }

            (PageFrame frame, string body) = Made(context, asked, answer, farm, along, copy);
            frame = frame with { Tabs = copy ? [] : Nav.Of(notebooks, asked.Path, along), Years = copy ? [] : Years(asked, farm) };
            if (copy)
            {
                string name = asked.Path == "/" ? "season" : asked.Path.Trim('/').Replace('/', '-');
                context.Response.Headers.ContentDisposition = $"attachment; filename=\"{name}.html\"";
                return Results.Text(PageShell.Render(frame with { HoldsFonts = true }, body), "text/html; charset=utf-8");
            }

            return Results.Text(
                LiveShell.Render(frame, body, answer.IsLast ? 2 : null),
                "text/html; charset=utf-8",
                statusCode: asked.Form.Faults.Count > 0 ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK
            );
        }
        catch (ArgumentException refused) when (FieldOf(asked.Form, refused) is null)
        {
            return Page(
                "That can't be shown",
                $"<h1>That can’t be shown</h1>\n<p>{PageShell.Encode(Sentence(refused))}</p>\n"
                    + $"<p><a href=\"{PageShell.Encode(asked.Path)}\">Back to the page as the records have it</a></p>",
                asked.Path,
                status: StatusCodes.Status422UnprocessableEntity);
        }
    }

    /// <summary>What is asked; of a report that takes long the last answer meanwhile, or null where there is none yet.</summary>
    private async Task<Answer?> AnswerAsync(Asked asked, ReviewedFarm farm, bool waits, CancellationToken aborted)
    {
        AnsweredReports answered = asked.Opened.Answered;
        if (asked.Report.IsInstant)
        {
            return new Answer(farm, answered.Of(asked.Report, farm, asked.Shown.Parameters, aborted));
        }

        TimeSpan patience = waits ? Timeout.InfiniteTimeSpan : AtOnce;
        IReadOnlyDictionary<string, object> given = asked.Shown.Parameters;
        if (await answered.WithinAsync(asked.Report, farm, given, patience, aborted).ConfigureAwait(false) is { } blocks)
        {
            cache.LastAnswers[asked.Report.Id] = (farm, blocks);
            return new Answer(farm, blocks);
        }

        return cache.LastAnswers.TryGetValue(asked.Report.Id, out (ReviewedFarm Farm, IReadOnlyList<Block> Blocks) last)
            ? new Answer(last.Farm, last.Blocks, IsLast: true) : null;
    }

    // A page that is ready in this time comes at once; else the last answer does, and the page asks again by itself.
    private static readonly TimeSpan AtOnce = TimeSpan.FromMilliseconds(200);

    private (PageFrame Frame, string Body) Made(
        HttpContext context, Asked asked, Answer answer, ReviewedFarm farm, string along, bool copy)
    {
        IReadOnlyList<Block> blocks = answer.Blocks;
        PageFrame frame = ReviewBook.Frame(answer.Farm, blocks);
        if (copy)
        {
            return (frame, PageShell.WithAddresses(BlockHtml.Of(blocks).Text, _ => null));
        }

        Dictionary<string, string> idle = asked
            .Report.Fields.Select(field => (field.Name, Why: asked.Report.ChangesNothing(field.Name, farm)))
            .Concat(SettingFields.Of(farm.Settings).Select(field => (Name: field.Key, Why: SettingFields.ChangesNothing(field.Key, farm))))
            .Where(pair => pair.Why is not null).ToDictionary(pair => pair.Name, pair => pair.Why!);
        // Taking over is offered with the plan that was asked for, not beside the last one.
        string form =
            (answer.IsLast ? "" : Plan(context, asked, farm))
            + ReportView.Form(
                asked.Form,
                asked.Path,
                idle,
                Scenarios(asked.Report, asked.Form) + ReportView.Downloads(asked.Path, asked.Shown.Query)
            );
        string before = Done(context, asked) + (answer.IsLast ? ReportView.BeingWorkedOut : "");
        return (frame, before + ReportView.Body(blocks, form, along));
    }

    private static IReadOnlyList<PageTab> Years(Asked asked, ReviewedFarm farm) =>
        !farm.IsReviewed
            ? []
            :
            [
                .. farm
                    .Review.CropYears.Where(year => year != farm.Season.CropYear)
                    .Reverse()
                    .Select(year => new PageTab($"{year}", $"{asked.Path}?year={year}")),
            ];

    private static Dictionary<string, string> Without(Dictionary<string, string> given, FieldForm form) =>
        given.Where(pair => !form.Faults.ContainsKey(pair.Key)).ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);
}
