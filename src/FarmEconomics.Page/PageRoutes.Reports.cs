using FarmEconomics.Page.Farm;
using FarmEconomics.Page.Fields;
using FarmEconomics.Page.Views;
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
            app.MapGet(path, (HttpContext context) => Report(context, report, path, ""));
        }

        foreach (IReport report in ReportCatalog.PerCrop)
        {
            string folder = "/" + ReportCatalog.FolderOf(report.Id) + "/";
            app.MapGet(folder + "{slug}", (HttpContext context, string slug) => Report(context, report, folder + slug, slug));
        }
    }

    private IResult Report(HttpContext context, IReport report, string path, string slug)
    {
        FarmNow now = shelf.Look();
        Dictionary<string, string> given = Given(context.Request.Query);
        OpenedFarm plain = now.Farm(skipBadRows: given.GetValueOrDefault("skip_bad_rows") == "true");
        if (slug.Length > 0)
        {
            if (plain.With(folder => ReviewedFarm.Of(folder).Slugs.Find(slug)) is not { } crop)
            {
                return NoSuchPage("There is no crop of that name.");
            }

            given["crop"] = crop;
        }

        FieldForm form = Form(now, report.Fields, given);
        bool faulty = form.Faults.Count > 0;
        FieldForm shown = faulty ? Form(now, report.Fields, Without(given, form)) : form;
        return now.Farm(shown.Settings, shown.SkipBadRows).WithReviewed(shown.Year, farm =>
            farm.IsReviewed || report.TakesAnyRecords
                ? Shown(context, new Asked(report, path, form, shown), farm)
                : Page("The records have errors", ErrorsView.Render(farm.Folder, shelf.Folder), path));
    }

    /// <summary>What a request asks for.</summary>
    private sealed record Asked(IReport Report, string Path, FieldForm Form, FieldForm Shown);

    private IResult Shown(HttpContext context, Asked asked, ReviewedFarm farm)
    {
        string along = NotebookView.YearAndSettings(asked.Shown);
        bool copy = context.Request.Query.ContainsKey("_copy");
        try
        {
            (PageFrame frame, string body) = Made(context, asked, farm, along, copy);
            frame = frame with { Tabs = copy ? [] : Nav.Of(notebooks, asked.Path, along), Years = copy ? [] : Years(asked, farm) };
            if (copy)
            {
                string name = asked.Path == "/" ? "season" : asked.Path.Trim('/').Replace('/', '-');
                context.Response.Headers.ContentDisposition = $"attachment; filename=\"{name}.html\"";
                return Results.Text(PageShell.Render(frame with { HoldsFonts = true }, body), "text/html; charset=utf-8");
            }

            return Results.Text(LiveShell.Render(frame, body), "text/html; charset=utf-8", statusCode: asked.Form.Faults.Count > 0 ? StatusCodes.Status422UnprocessableEntity : StatusCodes.Status200OK);
        }
        catch (ArgumentException refused)
        {
            return Page("That can't be shown", $"<h1>That can’t be shown</h1>\n<p>{PageShell.Encode(refused.Message.Split(" (Parameter")[0])}</p>\n<p><a href=\"{PageShell.Encode(asked.Path)}\">Back to the page as the records have it</a></p>", asked.Path, status: StatusCodes.Status422UnprocessableEntity);
        }
    }

    private (PageFrame Frame, string Body) Made(HttpContext context, Asked asked, ReviewedFarm farm, string along, bool copy)
    {
        IReadOnlyList<Block> blocks = asked.Report.Make(farm, asked.Shown.Parameters, context.RequestAborted);
        PageFrame frame = ReviewBook.Frame(farm, blocks);
        if (copy)
        {
            return (frame, PageShell.WithAddresses(BlockHtml.Of(blocks).Text, _ => null));
        }

        Dictionary<string, string> idle = asked.Report.Fields.Select(field => (field.Name, Why: asked.Report.ChangesNothing(field.Name, farm)))
            .Concat(SettingFields.Of(farm.Settings).Select(field => (Name: field.Key, Why: SettingFields.ChangesNothing(field.Key, farm))))
            .Where(pair => pair.Why is not null).ToDictionary(pair => pair.Name, pair => pair.Why!);
        string form = Plan(context, asked, farm) + ReportView.Form(asked.Form, asked.Path, idle, Scenarios(asked.Report, asked.Form) + ReportView.Downloads(asked.Path, asked.Shown.Query));
        return (frame, Done(context, asked) + ReportView.Body(blocks, form, along));
    }

    private static IReadOnlyList<PageTab> Years(Asked asked, ReviewedFarm farm) => !farm.IsReviewed ? []
        : [.. farm.Review.CropYears.Where(year => year != farm.Season.CropYear).Reverse().Select(year => new PageTab($"{year}", $"{asked.Path}?year={year}"))];

    private static Dictionary<string, string> Without(Dictionary<string, string> given, FieldForm form) =>
        given.Where(pair => !form.Faults.ContainsKey(pair.Key)).ToDictionary(pair => pair.Key, pair => pair.Value, StringComparer.Ordinal);
}
