using FarmEconomics.Decisions.Scenarios;
using FarmEconomics.Files;
using FarmEconomics.Page.Farm;
using FarmEconomics.Page.Fields;
using FarmEconomics.Page.Runs;
using FarmEconomics.Page.Views;
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

    /// <summary>The notebook that takes changes, if it is among those shown.</summary>
    private NotebookEntry? WhatIf => notebooks.FirstOrDefault(notebook => notebook.Parameters.Any(parameter => parameter.Choice == "change"));

    // What stands below the fields of the notebook that takes changes; nothing on the others.
    private string Scenarios(NotebookEntry notebook, FieldForm form, string name = "", string? fault = null)
    {
        if (notebook != WhatIf)
        {
            return "";
        }

        string address = $"/notebook/{notebook.Name}";
        try
        {
            return ScenarioView.Render(File.Exists(options.ScenarioFile) ? ScenarioFile.Texts(options.ScenarioFile) : [], options.ScenarioFile, form, address, name, fault);
        }
        catch (Exception unreadable) when (unreadable is IOException or FormatException or UnauthorizedAccessException)
        {
            return ScenarioView.Render([], options.ScenarioFile, form, address, name, fault ?? unreadable.Message);
        }
    }

    private async Task<IResult> KeepScenarioAsync(HttpContext context)
    {
        IFormCollection sent = await SentAsync(context).ConfigureAwait(false);
        if (WhatIf is not { } notebook)
        {
            return NoSuchPage("There is no notebook that takes changes.");
        }

        string name = sent["name"].ToString().Trim();
        FarmNow now = shelf.Look();
        FieldForm form = Form(now, notebook, Parsed(sent["_query"].ToString()));
        string? fault = form.Faults.Count > 0 || form.Changes.Length == 0 ? "Change something above and work it out first."
            : name.Length == 0 ? "Give the changes a name."
            : Keep(now, name, form);
        return fault is null
            ? SeeOther(context, Nav.Address($"/notebook/{notebook.Name}", form.Query))
            : await ShowAsync(now, notebook, form, form.Query, context.RequestAborted, Scenarios(notebook, form, name, fault)).ConfigureAwait(false);
    }

    private string? Keep(FarmNow now, string name, FieldForm form)
    {
        try
        {
            return now.Farm(form.Settings, form.SkipBadRows).With(folder =>
            {
                if (folder.Review is not { } review)
                {
                    return "The records have errors; nothing can be kept.";
                }

                ScenarioFile.Save(options.ScenarioFile, shelf.Folder, FarmScenario.Parse(name, form.Changes, review.Records));
                return null;
            });
        }
        catch (Exception refused) when (refused is IOException or FormatException or UnauthorizedAccessException or ScenarioTextException or ArgumentException)
        {
            return refused.Message;
        }
    }

    private async Task<IResult> RemoveScenarioAsync(HttpContext context)
    {
        IFormCollection sent = await SentAsync(context).ConfigureAwait(false);
        if (WhatIf is not { } notebook)
        {
            return NoSuchPage("There is no notebook that takes changes.");
        }

        FarmNow now = shelf.Look();
        FieldForm form = Form(now, notebook, Parsed(sent["_query"].ToString()));
        try
        {
            if (File.Exists(options.ScenarioFile))
            {
                ScenarioFile.Remove(options.ScenarioFile, shelf.Folder, sent["name"].ToString());
            }
        }
        catch (Exception refused) when (refused is IOException or FormatException or UnauthorizedAccessException)
        {
            return await ShowAsync(now, notebook, form, form.Query, context.RequestAborted, Scenarios(notebook, form, "", refused.Message)).ConfigureAwait(false);
        }

        return SeeOther(context, Nav.Address($"/notebook/{notebook.Name}", form.Query));
    }

    private static IResult SeeOther(HttpContext context, string address)
    {
        context.Response.Headers.Location = address;
        return Results.StatusCode(StatusCodes.Status303SeeOther);
    }
}
