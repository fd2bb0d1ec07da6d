using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Files;
using FarmEconomics.Page.Farm;
using FarmEconomics.Page.Fields;
using FarmEconomics.Page.Views;
using FarmEconomics.Reports.Answers;
using FarmEconomics.Reports.Frame;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace FarmEconomics.Page;

/// <summary>Scenarios kept under a name, in a file beside the output.</summary>
internal sealed partial class PageRoutes
{
    private void MapScenarios(WebApplication app)
    {
        app.MapPost("/scenarios", (Delegate)KeepScenarioAsync);
        app.MapPost("/scenarios/remove", (Delegate)RemoveScenarioAsync);
    }

    private static IReport WhatIf => ReportCatalog.Get(ReportId.WhatIf);

    private static string WhatIfPath => Nav.PathOf(ReportId.WhatIf);

    // What stands below the fields of the report that takes changes; nothing on the others.
    private string Scenarios(IReport report, FieldForm form, string name = "", string? fault = null)
    {
        if (report.Id != ReportId.WhatIf)
        {
            return "";
        }

        string address = WhatIfPath;
        try
        {
            return ScenarioView.Render(
                File.Exists(options.ScenarioFile) ? ScenarioFile.Texts(options.ScenarioFile) : [],
                options.ScenarioFile,
                form,
                address,
                name,
                fault
            );
        }
        catch (Exception unreadable) when (unreadable is IOException or FormatException or UnauthorizedAccessException)
        {
            return ScenarioView.Render([], options.ScenarioFile, form, address, name, fault ?? unreadable.Message);
        }
    }

    private async Task<IResult> KeepScenarioAsync(HttpContext context)
    {
        IFormCollection sent = await SentAsync(context).ConfigureAwait(false);
        string name = sent["name"].ToString().Trim();
        FarmSnapshot now = cache.Look();
        FieldForm form = Form(now, WhatIf.Fields, Parsed(sent["_query"].ToString()));
        string? fault = form.Faults.Count > 0 || form.Changes.Length == 0 ? "Change something above and work it out first."
            : name.Length == 0 ? "Give the changes a name."
            : Keep(now, name, form);
        return fault is null
            ? SeeOther(context, Nav.Address(WhatIfPath, form.Query))
            : NotKept(form, name, fault);
    }

    private string? Keep(FarmSnapshot now, string name, FieldForm form)
    {
        try
        {
            return now.Farm(form.Settings, form.SkipBadRows).With(folder =>
            {
                if (folder.Review is not { } review)
                {
                    return "The records have errors; nothing can be kept.";
                }

                ScenarioFile.Save(options.ScenarioFile, cache.Folder, FarmScenario.Parse(name, form.Changes, review.Records));
                return null;
            });
        }
        catch (Exception refused)
            when (refused is IOException or FormatException or UnauthorizedAccessException or ScenarioTextException or ArgumentException)
        {
            return refused.Message;
        }
    }

    private async Task<IResult> RemoveScenarioAsync(HttpContext context)
    {
        IFormCollection sent = await SentAsync(context).ConfigureAwait(false);
        FarmSnapshot now = cache.Look();
        FieldForm form = Form(now, WhatIf.Fields, Parsed(sent["_query"].ToString()));
        try
        {
            if (File.Exists(options.ScenarioFile))
            {
                ScenarioFile.Remove(options.ScenarioFile, cache.Folder, sent["name"].ToString());
            }
        }
        catch (Exception refused) when (refused is IOException or FormatException or UnauthorizedAccessException)
        {
            return NotKept(form, "", refused.Message);
        }

        return SeeOther(context, Nav.Address(WhatIfPath, form.Query));
    }

    private IResult NotKept(FieldForm form, string name, string fault) => Page("Not kept",
        $"<h1>Nothing was kept</h1>\n{Scenarios(WhatIf, form, name, fault)}<p class=\"fault\">{PageShell.Encode(fault)}</p>\n"
            + $"<p><a href=\"{PageShell.Encode(Nav.Address(WhatIfPath, form.Query))}\">Back to the changes</a></p>",
        WhatIfPath);

    private static IResult SeeOther(HttpContext context, string address)
    {
        context.Response.Headers.Location = address;
        return Results.StatusCode(StatusCodes.Status303SeeOther);
    }
}
