using System.Globalization;
using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Editing;
using FarmEconomics.Page.Fixing;
using FarmEconomics.Page.Importing;
using FarmEconomics.Page.Views;
using FarmEconomics.Records;
using FarmEconomics.Reports.Words;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace FarmEconomics.Page;

/// <summary>Rows of the records, corrected, added and taken out where the grower presses save.</summary>
internal sealed partial class PageRoutes
{
    private void MapFixing(WebApplication app)
    {
        app.MapGet(FixView.Path, (HttpContext context) =>
        {
            Dictionary<string, string> given = Given(context.Request.Query);
            return Page("Fix records",
                cache.Look().Farm().With(folder => FixView.List(folder, WhyNotFixed, given.GetValueOrDefault("done", ""),
                given.GetValueOrDefault("undo", ""), WhyNotFixed is null ? NamesView.Form(folder, [], []) : "")), FixView.Path);
        });
        app.MapGet(FixView.RowPath, (HttpContext context) =>
        {
            Dictionary<string, string> given = Given(context.Request.Query);
            return FixRow(given.GetValueOrDefault("file", ""), given.GetValueOrDefault("line", ""));
        });
        app.MapGet(FixView.RowPath + "/{file}/{line}", (string file, string line) => FixRow(file, line));
        app.MapPost(FixView.RowPath, (Delegate)SaveRowAsync);
        app.MapPost(FixView.UndoPath, (Delegate)UndoRowAsync);
        app.MapPost(NamesView.Path, (Delegate)SaveNamesAsync);
    }

    private RecordsEditor Editor => new(cache.Folder, TimeProvider.System);

    private string? WhyNotFixed => options.ReadOnly ? "Opened with --read-only: nothing can be saved here." : Editor.WhyNot;

    private LengthUnit Unit => cache.Look().Farm().Settings.LengthUnit;

    private IResult FixRow(string file, string line)
    {
        int at = 0;
        if (line.Trim().Length > 0 && !int.TryParse(line, NumberStyles.None, CultureInfo.InvariantCulture, out at))
        {
            return NoSuchPage("A line is a whole number.");
        }

        if (!Directory.Exists(cache.Folder))
        {
            return NoSuchPage(WhyNotFixed ?? "");
        }

        try
        {
            return Editor.Row(file, at) is { } row
                ? Page($"{file}, line {line}", FixView.Row(row, Faults(file, at), "", WhyNotFixed, Unit), FixView.Path)
                : NoSuchPage($"No row that can be changed here begins in line {at} of {file}.");
        }
        catch (FileNotFoundException missing)
        {
            return NoSuchPage(missing.Message);
        }
    }

    // What the checks say of the row as it stands.
    private List<Problem> Faults(string file, int line) =>
        cache.Look().Farm().With(folder => folder.Problems.Where(problem => line > 0 && problem.Source.File == file
            && problem.Source.Line == line).ToList());

    private async Task<IResult> SaveRowAsync(HttpContext context)
    {
        IFormCollection sent = await SentAsync(context).ConfigureAwait(false);
        string file = sent["file"].ToString();
        _ = int.TryParse(sent["line"].ToString(), NumberStyles.None, CultureInfo.InvariantCulture, out int line);
        if (WhyNotFixed is { } why)
        {
            return Page("Nothing was saved", $"<h1>Nothing was saved</h1>\n<p>{Reports.Frame.PageShell.Encode(why)}</p>\n", FixView.Path,
                status: StatusCodes.Status403Forbidden);
        }

        try
        {
            if (Editor.Row(file, line) is not { } row)
            {
                return NoSuchPage($"No row that can be changed here begins in line {line} of {file}.");
            }

            bool remove = sent["do"] == "remove";
            string[] typed = [.. row.Headings.Select((_, at) => sent.ContainsKey($"c{at}") ? sent[$"c{at}"].ToString() : row.Fields[at])];
            EditOutcome outcome = Editor.Save(
                new RowChange(file, sent["version"].ToString(), line, remove ? null : Changed(row, typed)));
            return outcome.Saved
                ? SeeOther(context, Nav.Address(PlanView.Files.Contains(file) ? NextYearPath : FixView.Path,
                    $"done={Uri.EscapeDataString(outcome.Message)}&undo={Uri.EscapeDataString(file)}"))
                : Page("Nothing was saved", FixView.Row(row with { Fields = typed, Version = sent["version"].ToString() }, outcome.Problems,
                    outcome.Message, null, Unit), FixView.Path, status: StatusCodes.Status422UnprocessableEntity);
        }
        catch (FileNotFoundException missing)
        {
            return NoSuchPage(missing.Message);
        }
    }

    // What stays as it was isn't sent along: two columns of one heading are told apart by their place alone.
    private static Dictionary<string, string> Changed(EditableRow row, string[] typed)
    {
        Dictionary<string, string> fields = [];
        foreach ((int at, string heading) in row.Headings.Index())
        {
            if (heading.Trim().Length > 0 && AsInAField(typed[at]) != AsInAField(row.Fields[at]))
            {
                fields[heading] = typed[at];
            }
        }

        return fields;
    }

    // A field of a form has one line: a browser leaves out the breaks of what stands in it.
    private static string AsInAField(string text) =>
        text.Replace("\r", "", StringComparison.Ordinal).Replace("\n", "", StringComparison.Ordinal).Trim();

    private async Task<IResult> UndoRowAsync(HttpContext context)
    {
        IFormCollection sent = await SentAsync(context).ConfigureAwait(false);
        if (WhyNotFixed is not null)
        {
            return SeeOther(context, FixView.Path);
        }

        try
        {
            EditOutcome outcome = Editor.Undo(sent["file"].ToString());
            return SeeOther(
                context,
                Nav.Address(sent["back"] == NextYearPath ? NextYearPath : FixView.Path, $"done={Uri.EscapeDataString(outcome.Message)}")
            );
        }
        catch (FileNotFoundException missing)
        {
            return NoSuchPage(missing.Message);
        }
    }

    private async Task<IResult> SaveNamesAsync(HttpContext context)
    {
        if (WhyNotFixed is { } why)
        {
            return NothingAdded(why);
        }

        RaiseLimit(context, 16 * AroundAFile);
        IReadOnlyList<GivenName> names = ImportPages.Names(await SentAsync(context).ConfigureAwait(false));
        return cache.Look().Farm().With(folder =>
        {
            IReadOnlyList<(GivenName Name, string Why)> faults = NameList.Faults(names, folder.Reading);
            GivenName[] said = [.. names.Where(name => name.Name.Trim().Length > 0 && !NameList.IsKnown(name, folder.Reading))];
            return faults.Count > 0 || said.Length == 0
                ? Page(
                    "Nothing was saved",
                    $"<h1>Nothing was saved</h1>\n<p class=\"fault\" role=\"alert\">"
                        + $"{(faults.Count > 0 ? "Some names can’t be taken." : "No name was chosen.")}</p>\n"
                        + $"{NamesView.Form(folder, names, faults)}",
                    FixView.Path, status: StatusCodes.Status422UnprocessableEntity)
                : SeeOther(context, Nav.Address(FixView.Path, "done=" + Uri.EscapeDataString(Confirmed(said))));
        });
    }

    private string Confirmed(GivenName[] names)
    {
        string file = NameList.Confirm(cache.Folder, names);
        return $"{cache.Look().Farm().Settings.Notation.Count(names.Length, "name")} saved in {file}. "
            + $"To take them back, delete that file from your records.";
    }
}
