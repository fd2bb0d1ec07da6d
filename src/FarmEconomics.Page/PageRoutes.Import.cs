using System.Globalization;
using System.Text;
using FarmEconomics.Files;
using FarmEconomics.Files.Editing;
using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Sessions;
using FarmEconomics.Page.Importing;
using FarmEconomics.Page.Views;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;

namespace FarmEconomics.Page;

/// <summary>Files of other programs, looked at, and added to the records where the grower presses the button.</summary>
internal sealed partial class PageRoutes
{
    // The form's other fields and the marks between them.
    private const int AroundAFile = 64 * 1024;

    private string? WhyNotImported => options.ReadOnly ? "Opened with --read-only: nothing can be added here."
        : !Directory.Exists(cache.Folder) ? "Files are added to a folder of CSV tables; this is a workbook, which is only ever read."
        : Editor.WhyNot;

    private void MapImporting(WebApplication app)
    {
        app.MapGet(ImportPages.Path, () => Page("Import a file", ImportPages.Choose(WhyNotImported, ""), ImportPages.Path));
        app.MapPost(ImportPages.Path, (Delegate)TakeFileAsync);
        app.MapGet(ImportPages.Path + "/{id}", LookAtFile);
        app.MapPost(ImportPages.Path + "/{id}", (Delegate)AnswerFileAsync);
        app.MapGet(ImportPages.Path + "/{id}/to-fix.csv", (string id) =>
            sessions.With(id, session => session.Look().Plan?.HeldBackCsv ?? "") is { Length: > 0 } csv
                ? Results.File(Encoding.UTF8.GetBytes(csv), "text/csv; charset=utf-8", "to-fix.csv")
                : NoSuchPage("There is no row to fix.")
        );
    }

    // Every other form is small; these may hold a file, or a field for every name of one.
    private static void RaiseLimit(HttpContext context, long? most)
    {
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
        {
            limit.MaxRequestBodySize = most;
        }
    }

    private async Task<IResult> TakeFileAsync(HttpContext context)
    {
        if (WhyNotImported is { } why)
        {
            return NothingAdded(why);
        }

        if (context.Request.ContentLength > ImportPages.LargestFile + AroundAFile)
        {
            // Taken and dropped: a browser that is cut off in the middle of sending shows no page at all.
            RaiseLimit(context, null);
            await context.Request.Body.CopyToAsync(Stream.Null, context.RequestAborted).ConfigureAwait(false);
            return NoFile(ImportPages.TooLarge);
        }

        RaiseLimit(context, ImportPages.LargestFile + AroundAFile);
        try
        {
            IFormCollection sent = await SentAsync(context).ConfigureAwait(false);
            if (sent.Files.GetFile("file") is not { Length: > 0 } file)
            {
                return NoFile("Choose a file first; this one is empty.");
            }

            if (file.Length > ImportPages.LargestFile)
            {
                return NoFile(ImportPages.TooLarge);
            }

            using Stream content = file.OpenReadStream();
            return SeeOther(context, $"{ImportPages.Path}/{sessions.Keep(ImportSession.Begin(cache.Folder, file.FileName, content))}");
        }
        catch (BadHttpRequestException large) when (large.StatusCode == StatusCodes.Status413PayloadTooLarge)
        {
            return NoFile(ImportPages.TooLarge);
        }
    }

    private IResult NoFile(string fault) => Page("Import a file", ImportPages.Choose(null, fault), ImportPages.Path,
        status: StatusCodes.Status422UnprocessableEntity);

    private IResult NothingAdded(string why) =>
        Page(
            "Nothing was added",
            $"<h1>Nothing was added</h1>\n<p>{Reports.Frame.PageShell.Encode(why)}</p>\n",
            ImportPages.Path,
            status: StatusCodes.Status403Forbidden
        );

    private IResult LookAtFile(HttpContext context, string id)
    {
        Dictionary<string, string> given = Given(context.Request.Query);
        return sessions.With(id, session =>
        {
            if (given.ContainsKey("table"))
            {
                session.Turn(
                    new ImportView
                    {
                        Table = Said("table"),
                        Sheet = Said("sheet"),
                        HeadingsAt =
                            int.TryParse(Said("line"), NumberStyles.None, CultureInfo.InvariantCulture, out int line) && line > 0
                                ? line
                                : null,
                        Anew = given.GetValueOrDefault("anew") == "true",
                    }
                );
            }

            return Shown(
                id,
                session,
                given.TryGetValue("undo", out string? files)
                    ? new ImportNotice { Named = DoneTo(given, files.Split(' '), "") }
                    : new ImportNotice { Done = given.GetValueOrDefault("done", "") }
            );
        }) ?? GoneFile();

        string? Said(string key) => given.GetValueOrDefault(key, "").Trim() is { Length: > 0 } said ? said : null;
    }

    private IResult GoneFile() => NoSuchPage("This file is not here any more: choose it again.");

    private IResult Shown(string id, ImportSession session, ImportNotice told, int status = StatusCodes.Status200OK) =>
        Page(
            session.Name,
            ImportPages.File(id, session, session.Look(), told with { Units = Reading(NewNames.UnitsOf) }),
            ImportPages.Path,
            status: status
        );

    private T Reading<T>(Func<RecordsReading, T> of) => cache.Look().Farm().With(folder => of(folder.Reading));

    private async Task<IResult> AnswerFileAsync(HttpContext context, string id)
    {
        if (WhyNotImported is { } why)
        {
            return NothingAdded(why);
        }

        RaiseLimit(context, 16 * AroundAFile);
        IFormCollection sent = await SentAsync(context).ConfigureAwait(false);
        return sessions.With(id, session => Answered(context, id, session, sent)) ?? GoneFile();
    }

    private IResult Answered(HttpContext context, string id, ImportSession session, IFormCollection sent)
    {
        const int Wrong = StatusCodes.Status422UnprocessableEntity;
        if (!session.Answer(sent["draft"].ToString(), ImportPages.Answers(sent)))
        {
            return Shown(
                id,
                session,
                new ImportNotice { Fault = "Your records changed, and the file is read another way now. Look at it again." },
                Wrong
            );
        }

        IReadOnlyList<(GivenName Name, string Why)> faults = session.Give(ImportPages.Names(sent));
        if (faults.Count > 0)
        {
            return Shown(id, session, new ImportNotice { Fault = "Some names can't be taken.", Names = faults }, Wrong);
        }

        // Enter in any field presses the first button of the form: with no new name said, it is looked at again.
        IReadOnlyList<NewName> names = NewNames.Of(sent);
        if (sent["do"] == "new" && names.Any(name => name.Needed.Length > 0))
        {
            return Named(context, id, session, names);
        }

        if (sent["do"] != "add")
        {
            return SeeOther(context, $"{ImportPages.Path}/{id}");
        }

        (bool added, string message) = session.Add(sent["version"].ToString());
        return added ? SeeOther(context, Nav.Address($"{ImportPages.Path}/{id}", $"done={Uri.EscapeDataString(message)}"))
            : Shown(id, session, new ImportNotice { Fault = message }, Wrong);
    }

    // Names that are new to the farm become rows of their tables; the file is then looked at again.
    private IResult Named(HttpContext context, string id, ImportSession session, IReadOnlyList<NewName> names)
    {
        (EditOutcome outcome, IReadOnlyList<string> files) = Reading(reading => NewNames.Add(Editor, reading, names));
        return outcome.Saved
            ? SeeOther(
                context,
                Nav.Address(
                    $"{ImportPages.Path}/{id}",
                    $"done={Uri.EscapeDataString(outcome.Message)}&undo={Uri.EscapeDataString(string.Join(' ', files))}"
                )
            )
            : Shown(
                id,
                session,
                new ImportNotice
                {
                    Fault = string.Join(' ', outcome.Problems.Select(problem => problem.Message).Distinct().Prepend(outcome.Message)),
                    New = names,
                },
                StatusCodes.Status422UnprocessableEntity
            );
    }
}
