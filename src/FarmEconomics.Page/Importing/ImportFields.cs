using System.Text;
using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;
using FarmEconomics.Files.Importing.Sessions;
using FarmEconomics.Records.Schema;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Page.Importing;

/// <summary>How a field is known.</summary>
internal readonly record struct FieldMarks(string Id, string Name, string Label);

/// <summary>The fields of a file being brought in: its questions, its names, and how it is looked at.</summary>
internal static class ImportFields
{
    internal const int MostNames = 200;

    // In the order in which a farm has them; the other tables follow.
    private static readonly string[] FirstTables = ["sales", "harvests", "expenses", "labor", "plantings"];

    /// <summary>What only the grower knows, and guesses worth a look; what is open stands first.</summary>
    internal static string Questions(ImportLook look)
    {
        if (look.Draft is not { Questions.Count: > 0 } draft)
        {
            return "";
        }

        StringBuilder html = new(
            "<h2>Questions</h2>\n<p class=\"hint\">A blank stays blank: rows that need it are held back.</p>\n<div class=\"grid\">\n"
        );
        foreach (
            DraftQuestion question in draft
                .Questions.OrderByDescending(question => question.IsOpen)
                .ThenBy(question => question.Answer.Length > 0)
        )
        {
            string said = look.Answers.TryGetValue(question.Line, out string? answer) && answer.Length > 0 ? answer : question.Answer;
            Question(html, question, said, question.NamesOf is { } table ? look.Known.GetValueOrDefault(table, []) : []);
        }

        return html.Append("</div>\n").ToString();
    }

    /// <summary>Every name the records don't know, with a guess where one is near.</summary>
    internal static string Names(ImportLook look, ImportNotice told)
    {
        // Where no name is on record yet, none can be meant: such a name is new, and has its field below.
        SessionName[] names = [.. look.Names.Where(name => name.Choices.Count > 0 || NewNames.Needs(name.Table) is null)];
        if (names.Length == 0)
        {
            return "";
        }

        StringBuilder html = new("<h2>Names your records don’t know</h2>\n<p class=\"hint\">Choose the name you mean where it is only "
            + "written another way, or leave out the rows of what is nothing of yours. Nothing is taken before you press a button.</p>\n"
            + "<div class=\"grid\">\n");
        foreach ((int at, SessionName name) in names.Take(MostNames).Index())
        {
            (GivenName Name, string Why)? wrong = told
                .Names.Where(fault => fault.Name.Table == name.Table && fault.Name.Alias == name.Alias)
                .Cast<(GivenName, string)?>()
                .FirstOrDefault();
            Field(
                html,
                new FieldMarks($"name{at}", ImportPages.FieldOf(name.Table, name.Alias), $"{name.Alias} ({name.Table})"),
                wrong is null ? name.Name : wrong.Value.Name.Name,
                OptionsOf(name, look.Plan?.Table),
                (
                    name.Rows == 0 ? "as you said" : $"{look.Notation.Count(name.Rows, "row")} {(name.Rows == 1 ? "has" : "have")} it",
                    wrong?.Why
                )
            );
        }

        html.Append("</div>\n");
        html.Append(
            names.Length > MostNames
                ? $"<p>And {ImportPages.Text(look.Notation.Count(names.Length - MostNames, "more name"))}: give these first.</p>\n"
                : ""
        );
        return html.Append(ToAdd(names)).ToString();
    }

    // A unit is no reason to leave a row out: only a name that its own column holds.
    private static List<KeyValuePair<string, string>> OptionsOf(SessionName name, string? table)
    {
        List<KeyValuePair<string, string>> known = Options(name.Choices, name.Name == GivenName.LeftOut ? "" : name.Name);
        bool canGo = RecordSchema.Find(table ?? "")?.Columns.Any(column => column.RefersTo == name.Table) == true;
        return known.Count == 0 || !canGo ? known : [.. known, Option(GivenName.LeftOut, "nothing of mine: leave its rows out")];
    }

    // Where a new name is written that needs more than one thing beside it.
    private static string ToAdd(IEnumerable<SessionName> names)
    {
        string[] links =
        [
            .. names
                .Where(name => name.Rows > 0 && NewNames.Needs(name.Table) is null)
                .Select(name => name.Table)
                .Distinct()
                .Select(table => $"<a href=\"{ImportPages.Text(Fixing.FixView.Address(table + ".csv", 0))}\">{table}.csv</a>"),
        ];
        return links.Length == 0 ? "" : $"<p class=\"hint\">New to your farm? Add a row to {string.Join(", ", links)}.</p>\n";
    }

    /// <summary>Another table, sheet or block of the same file.</summary>
    internal static string Turn(string id, ImportSession session, ImportLook look)
    {
        string now = look.Plan?.Table ?? look.Draft?.Table ?? session.View.Table ?? "";
        StringBuilder html = new(
            $"<form class=\"fields\" method=\"get\" action=\"{ImportPages.Path}/{id}\">\n<h2>Read it another way</h2>\n"
                + $"<div class=\"grid\">\n"
        );
        string[] tables = [.. FirstTables, .. RecordsImport.Tables.Except(FirstTables)];
        Select(html, "table", "The rows are", [new("", "told from the headings"), .. tables.Select(table => Option(table, table))], now);
        if (look.Sheets.Count > 1)
        {
            Select(html, "sheet", "Sheet", [.. look.Sheets.Select(name => Option(name, name))], session.View.Sheet ?? look.Sheets[0]);
        }

        DraftBlock[] blocks = [.. look.Draft?.Others ?? []];
        int? chosen = session.View.HeadingsAt;
        if (blocks.Length > 0 || chosen is not null)
        {
            List<KeyValuePair<string, string>> lines = [new("", "the first one"), .. blocks.Select(OfBlock)];
            lines.AddRange(chosen is { } at ? [Option($"{at}", $"headings in line {at}")] : []);
            Select(html, "line", "Table in the file", lines, $"{chosen}");
        }

        html.Append("</div>\n");
        html.Append(look.Draft is null && look.Fault is null
            ? "<p class=\"field\"><span class=\"check\"><input type=\"checkbox\" id=\"anew\" name=\"anew\" value=\"true\">"
                + "<label for=\"anew\">Draft a new mapping in place of the remembered one</label></span></p>\n"
            : session.View.Anew ? "<input type=\"hidden\" name=\"anew\" value=\"true\">\n" : "");
        return html.Append("<p class=\"buttons\"><button>Read it so</button></p>\n</form>\n").ToString();
    }

    private static KeyValuePair<string, string> Option(string value, string text) => new(value, text);

    private static KeyValuePair<string, string> OfBlock(DraftBlock block) => Option(
        $"{block.HeadingLine}",
        $"headings in line {block.HeadingLine}: "
            + $"{string.Join(", ", block.Headings.Where(heading => heading.Length > 0).Take(3))}");

    private static void Question(StringBuilder html, DraftQuestion question, string said, IReadOnlyList<string> known)
    {
        string id = $"q{question.Line}";
        string label =
            $"{question.Column}{(question.About.Length == 0 ? "" : $": {question.About}")}{(question.IsOpen ? " (needed)" : "")}";
        List<KeyValuePair<string, string>> options =
            question.Readings.Count > 0 ? [new("", "choose one"), .. question.Readings] : Options(known, question.Answer);
        if (question.Columns.Count == 0 || options.Count > 0)
        {
            Field(html, new FieldMarks(id, id, label), said, [.. options, .. question.Columns], (question.Why, null));
            return;
        }

        // Any text, or a column of the file: the first that is filled in counts.
        Field(html, new FieldMarks(id, id, label), said, [new("", "no column: as said beside"), .. question.Columns], (question.Why, null));
        Field(html, new FieldMarks($"{id}-all", id, $"{question.Column} of all rows"), question.Columns.Any(column => column.Key == said)
            ? "" : said, [], ("Where the file doesn't say it.", null));
    }

    /// <summary>Names to choose from, and none; no list where no name is known.</summary>
    internal static List<KeyValuePair<string, string>> Options(IReadOnlyList<string> known, string now) => known.Count == 0 ? []
        : [new("", "not said"), .. known.Concat(now.Length == 0 || known.Contains(now, StringComparer.OrdinalIgnoreCase) ? [] : [now])
            .Select(name => new KeyValuePair<string, string>(name, name))];

    /// <summary>A field with its help, and its fault beside it.</summary>
    internal static void Field(StringBuilder html, FieldMarks field, string value, IReadOnlyList<KeyValuePair<string, string>> options,
        (string Help, string? Fault) words)
    {
        (string id, string? fault) = (field.Id, words.Fault);
        string marks = $"id=\"{id}\" name=\"{ImportPages.Text(field.Name)}\" "
            + $"aria-describedby=\"{id}-help{(fault is null ? "" : $" {id}-fault")}\"{(fault is null ? "" : " aria-invalid=\"true\"")}";
        html.Append($"<div class=\"field\"><label for=\"{id}\">{ImportPages.Text(field.Label)}</label>\n");
        html.Append(options.Count == 0 ? $"<input type=\"text\" {marks} value=\"{ImportPages.Text(value)}\" autocomplete=\"off\">\n"
            : $"<select {marks}>{OptionsHtml(options, value)}</select>\n");
        html.Append($"<p class=\"help\" id=\"{id}-help\">{ImportPages.Text(words.Help)}</p>\n");
        html.Append(fault is null ? "" : $"<p class=\"fault\" id=\"{id}-fault\">{ImportPages.Text(fault)}</p>\n").Append("</div>\n");
    }

    private static void Select(
        StringBuilder html,
        string name,
        string label,
        IReadOnlyList<KeyValuePair<string, string>> options,
        string now
    ) =>
        html.Append(
            $"<div class=\"field\"><label for=\"turn-{name}\">{label}</label>\n"
                + $"<select id=\"turn-{name}\" name=\"{name}\">{OptionsHtml(options, now)}</select></div>\n"
        );

    internal static string OptionsHtml(IEnumerable<KeyValuePair<string, string>> options, string now) =>
        string.Concat(options.Select(option => $"<option value=\"{ImportPages.Text(option.Key)}\""
            + $"{(option.Key.Equals(now, StringComparison.OrdinalIgnoreCase) ? " selected" : "")}>"
            + $"{ImportPages.Text(option.Value)}</option>"));
}
