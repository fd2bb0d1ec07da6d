using System.Text;
using FarmEconomics.Files;
using FarmEconomics.Files.Editing;
using FarmEconomics.Files.Importing.Sessions;
using FarmEconomics.Files.Start;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Schema;
using FarmEconomics.Reports.Words;
using Microsoft.AspNetCore.Http;

namespace FarmEconomics.Page.Importing;

/// <summary>A name of a file that is new to the farm, with the one thing its table needs to know of it.</summary>
/// <param name="Table">The table it becomes a row of.</param>
/// <param name="Name">The name.</param>
/// <param name="Needed">What a crop is counted in, the kind of a channel; blank: not said.</param>
internal sealed record NewName(string Table, string Name, string Needed);

/// <summary>
/// Crops, channels and workers that a file names for the first time: each becomes a row of its table, when the grower says what the
/// table needs and presses the button. Without it a first year's sales could not be brought in before all crops were written by hand.
/// </summary>
internal static class NewNames
{
    private const char Part = '|';

    // What growers count in (common practice, no source).
    private static readonly string[] UsualUnits = ["bunch", "head", "each", "pint", "bag"];

    /// <summary>What a row of a table needs besides its name, where that is one thing somebody can choose or say.</summary>
    internal static ColumnSchema? Needs(string table) =>
        RecordSchema.Find(table)?.Columns.Where(column => column.Required).ToArray() is [_, { } other]
        && (other.Allowed.Count > 0 || other is { Name: "unit", Type: ColumnType.Name })
            ? other
            : null;

    /// <summary>A field for every name that may be new, and the button that adds them; blank where there is none.</summary>
    /// <param name="look">What there is to see of the file.</param>
    /// <param name="told">What is said of the last press of a button.</param>
    internal static string Form(ImportLook look, ImportNotice told)
    {
        SessionName[] names = [.. look.Names.Where(name => name.Rows > 0 && Needs(name.Table) is not null).Take(ImportFields.MostNames)];
        if (names.Length == 0)
        {
            return "";
        }

        string tables = string.Join(" and ", names.Select(name => $"{name.Table}.csv").Distinct());
        string title = names.All(name => name.Choices.Count == 0) ? "New to your farm" : "Or new to your farm?";
        StringBuilder html = new($"<h2>{title}</h2>\n<p class=\"hint\">Fill in what is new and leave the rest blank: "
            + $"each becomes a row of {tables} when you press Add these names. "
            + "Family, wage and the like can be filled in there later.</p>\n");
        html.Append(Units(told.Units)).Append("<div class=\"grid\">\n");
        foreach ((int at, SessionName name) in names.Index())
        {
            Field(html, at, name, told.New.FirstOrDefault(one => one.Table == name.Table && one.Name == name.Alias)?.Needed ?? "");
        }

        return html.Append("</div>\n<p class=\"buttons\"><button name=\"do\" value=\"new\">Add these names</button></p>\n").ToString();
    }

    /// <summary>What a new crop may be counted in: the units on record first, then the usual ones.</summary>
    /// <param name="reading">The records.</param>
    internal static IReadOnlyList<string> UnitsOf(RecordsReading reading) =>
        [
            .. new KnownNames(reading.Tables, reading.FarmSettings).Of("units")
                .Append(reading.FarmSettings.LengthUnit == LengthUnit.M ? "kg" : "lb")
                .Concat(UsualUnits)
                .Distinct(StringComparer.OrdinalIgnoreCase),
        ];

    /// <summary>The new names of a form, those left blank among them.</summary>
    internal static IReadOnlyList<NewName> Of(IFormCollection sent) =>
        [
            .. sent.Where(pair => pair.Key.StartsWith("w" + Part, StringComparison.Ordinal))
                .Select(pair => (Key: pair.Key.Split(Part), Said: pair.Value.LastOrDefault()?.Trim() ?? ""))
                .Where(pair => pair.Key.Length == 3 && Needs(pair.Key[1]) is not null)
                .Select(pair => new NewName(pair.Key[1], Uri.UnescapeDataString(pair.Key[2]), pair.Said)),
        ];

    /// <summary>Adds the names, all or none: what a table has by now is left out, so that pressing twice adds once.</summary>
    /// <param name="editor">The records.</param>
    /// <param name="reading">What they hold.</param>
    /// <param name="names">The names.</param>
    /// <returns>What came of it, and the files that changed.</returns>
    internal static (EditOutcome Outcome, IReadOnlyList<string> Files) Add(
        RecordsEditor editor,
        RecordsReading reading,
        IEnumerable<NewName> names
    )
    {
        var known = new KnownNames(reading.Tables, reading.FarmSettings);
        NewName[] added =
        [
            .. names.Where(name => name.Needed.Length > 0
                && !known.Of(name.Table).Contains(name.Name.Trim(), StringComparer.OrdinalIgnoreCase)),
        ];
        if (added.Length == 0)
        {
            return (new EditOutcome(false, "No name was added: say first what a new one is counted in, or its kind."), []);
        }

        RowsChange[] changes =
        [
            .. added.GroupBy(name => name.Table).Select(table => Change(editor, reading.FarmSettings, table.Key, [.. table])),
        ];
        string[] files = [.. changes.Select(change => change.File)];
        EditOutcome outcome = editor.Save(changes);
        return outcome.Saved
            ? (outcome with { Message = $"{Counted(reading.FarmSettings.Notation, added)} added to {string.Join(" and ", files)}." }, files)
            : (outcome, []);
    }

    private static RowsChange Change(RecordsEditor editor, FarmSettings settings, string table, NewName[] names)
    {
        string file = $"{table}.csv";
        EditableRow blank = editor.Row(file, 0) ?? throw new ArgumentException($"{file} can't be changed here.");
        string name = RecordSchema.Find(table)!.Columns.First(column => column.Required).Name;
        string needed = Needs(table)!.Name;
        return new RowsChange(
            file,
            blank.Version,
            blank.Headings,
            [.. names.Select(one => blank.Headings.Select(heading => Text(one, HeadingKey.Of(heading))).ToArray())]
        )
        {
            Separator = PlanRecords.Separator(settings),
        };

        string Text(NewName one, string heading) =>
            heading == HeadingKey.Of(name) ? one.Name.Trim() : heading == HeadingKey.Of(needed) ? one.Needed : "";
    }

    private static string Counted(Notation notation, NewName[] names) =>
        names.Length == 1 ? names[0].Name.Trim() : notation.Count(names.Length, "name");

    private static void Field(StringBuilder html, int at, SessionName name, string said)
    {
        ColumnSchema needed = Needs(name.Table)!;
        string id = $"new{at}";
        string marks = $"id=\"{id}\" name=\"w{Part}{name.Table}{Part}{ImportPages.Text(Uri.EscapeDataString(name.Alias))}\"";
        string words = needed.Allowed.Count > 0 ? $"{needed.Name} of {name.Alias}" : $"{name.Alias} is counted in";
        html.Append($"<div class=\"field\"><label for=\"{id}\">{ImportPages.Text(words)}</label>\n");
        html.Append(
                needed.Allowed.Count == 0
                    ? $"<input type=\"text\" {marks} value=\"{ImportPages.Text(said)}\" list=\"new-units\" autocomplete=\"off\">\n"
                    : $"<select {marks}>{ImportFields.OptionsHtml(ImportFields.Options(needed.Allowed, said), said)}</select>\n"
            )
            .Append("</div>\n");
    }

    private static string Units(IReadOnlyList<string> units) =>
        $"<datalist id=\"new-units\">"
        + string.Concat(units.Select(unit => $"<option value=\"{ImportPages.Text(unit)}\"></option>"))
        + "</datalist>\n";
}
