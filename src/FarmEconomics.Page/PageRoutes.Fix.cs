using System.Globalization;
using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Editing;
using FarmEconomics.Page.Fixing;
using FarmEconomics.Page.Importing;
using FarmEconomics.Page.Views;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
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
                cache.Look().Farm().With(folder => FixView.List(folder, WhyNotFixed, DoneTo(given),
                WhyNotFixed is null ? NamesView.Form(folder, [], []) : "")), FixView.Path);
        });
        app.MapGet(FixView.RowPath, (HttpContext context) =>
        {
            Dictionary<string, string> given = Given(context.Request.Query);
            return FixRow(given.GetValueOrDefault("file", ""), given.GetValueOrDefault("line", ""), DoneTo(given));
        });
        app.MapGet(FixView.RowPath + "/{file}/{line}", (string file, string line) => FixRow(file, line, ""));
        app.MapPost(FixView.RowPath, (Delegate)SaveRowAsync);
        app.MapPost(FixView.UndoPath, (Delegate)UndoRowAsync);
        app.MapPost(NamesView.Path, (Delegate)SaveNamesAsync);
    }

    private RecordsEditor Editor => new(cache.Folder, TimeProvider.System);

    private string? WhyNotFixed => options.ReadOnly ? "Opened with --read-only: nothing can be saved here." : Editor.WhyNot;

    // What was just done to a file, with the way back to what it was before; asked for twice, one change is taken back.
    private string DoneTo(Dictionary<string, string> given) => DoneTo(given, [given.GetValueOrDefault("undo", "")], "");

    private string DoneTo(Dictionary<string, string> given, IEnumerable<string> undo, string back)
    {
        string done = given.GetValueOrDefault("done", "");
        return FixView.Done(done, done.Length == 0 || WhyNotFixed is not null ? []
            : undo.Select(file => KeyValuePair.Create(file, SeenVersion(file))).Where(file => file.Value.Length > 0), back);
    }

    // An address says the file; one that is none has no version.
    private string SeenVersion(string file)
    {
        try
        {
            return file.Length == 0 ? "" : Editor.VersionOf(file);
        }
        catch (FileNotFoundException)
        {
            return "";
        }
    }

    private IResult FixRow(string file, string line, string done)
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
            if (Editor.Row(file, at) is not { } row)
            {
                return NoSuchPage($"No row that can be changed here begins in line {at} of {file}.");
            }

            List<Problem> faults = Faults(file, at);
            return RowPage(row, look => look with
            {
                Faults = faults,
                Done = done,
                WhyNot = WhyNotFixed,
                Rows = at == 0 ? Editor.Rows(file) : [],
            });
        }
        catch (FileNotFoundException missing)
        {
            return NoSuchPage(missing.Message);
        }
    }

    private IResult RowPage(EditableRow row, Func<RowLook, RowLook> with, int status = StatusCodes.Status200OK) =>
        cache.Look().Farm().With(folder =>
        {
            FarmSettings settings = folder.Reading.FarmSettings;
            RowLook look = with(new RowLook(row, settings, new KnownNames(folder.Reading.Tables, settings)));
            return Page(look.Message.Length > 0 ? "Nothing was saved" : RowView.Title(row.File, row.Line), RowView.Render(look),
                FixView.Path, status: status);
        });

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
            string[] written = AsWritten(row, typed);
            EditOutcome outcome = Editor.Save(
                new RowChange(file, sent["version"].ToString(), line, remove ? null : Changed(row, written)));
            return outcome.Saved
                ? SeeOther(context, Nav.Address(AfterSaving(file, line), $"done={Uri.EscapeDataString(outcome.Message
                    + (remove ? "" : ReadAs(typed, written)))}&undo={Uri.EscapeDataString(file)}"
                    + (line == 0 ? $"&file={Uri.EscapeDataString(file)}" : "")))
                : NotSaved(row with { Fields = typed, Version = sent["version"].ToString() }, outcome);
        }
        catch (FileNotFoundException missing)
        {
            return NoSuchPage(missing.Message);
        }
    }

    // A new row fits the file as it is now as well: seen beside those that came meanwhile, it is saved by pressing again.
    private IResult NotSaved(EditableRow typed, EditOutcome outcome)
    {
        bool again = outcome.IsOutdated && typed.Line == 0;
        IReadOnlyList<(int Line, IReadOnlyList<string> Fields)> rows = again ? Editor.Rows(typed.File) : [];
        return RowPage(again ? typed with { Version = Editor.VersionOf(typed.File) } : typed, look => look with
        {
            Faults = outcome.Problems,
            Message = outcome.Message + (again ? " Its rows stand below: if yours isn't among them, press Save again." : ""),
            IsOutdated = outcome.IsOutdated && !again,
            Rows = rows,
        }, StatusCodes.Status422UnprocessableEntity);
    }

    // Who adds a row has another one to add.
    private static string AfterSaving(string file, int line) =>
        PlanView.Files.Contains(file) ? NextYearPath : line == 0 ? FixView.RowPath : FixView.Path;

    private string[] AsWritten(EditableRow row, string[] typed)
    {
        FarmSettings settings = cache.Look().Farm().Settings;
        TableSchema? table = RecordSchema.Find(row.File.Split('.')[0]);
        return
        [
            .. typed.Select((text, at) => table?.Find(row.Headings[at], settings.LengthUnit) is { } column
                && AsInAField(text) != AsInAField(row.Fields[at]) ? TypedFields.Written(text, column, settings) : text),
        ];
    }

    private static string ReadAs(string[] typed, string[] written) => string.Concat(typed.Zip(written)
        .Where(pair => pair.First != pair.Second).Select(pair => $" “{pair.First.Trim()}” was saved as {pair.Second}."));

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
            EditOutcome outcome = Editor.Undo(sent["file"].ToString(), sent["version"].ToString());
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
