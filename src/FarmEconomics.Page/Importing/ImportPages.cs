using System.Globalization;
using System.Text;
using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Sessions;
using FarmEconomics.Records;
using FarmEconomics.Records.Checks;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Words;
using Microsoft.AspNetCore.Http;

namespace FarmEconomics.Page.Importing;

/// <summary>The pages where a file of another program is brought in: chosen, looked at, asked about, added.</summary>
internal static class ImportPages
{
    /// <summary>Where a file is chosen.</summary>
    internal const string Path = "/import";

    /// <summary>The largest file, in bytes.</summary>
    internal const int LargestFile = 16 * 1024 * 1024;

    /// <summary>What is said of a larger one.</summary>
    internal const string TooLarge = "The file has more than 16 MB. The command import reads larger ones.";

    private const char Part = '|';
    private const int MostCauses = 7;

    /// <summary>The field to choose a file in.</summary>
    /// <param name="whyNot">Why nothing can be added here; null when it can.</param>
    /// <param name="fault">What is wrong with what was chosen; blank: nothing.</param>
    internal static string Choose(string? whyNot, string fault)
    {
        StringBuilder html = new("<h1>Bring in a file</h1>\n<p>A picking sheet, a register’s or a bank’s download, a time sheet, "
            + "deliveries: CSV, text with tabs, or .xlsx. ");
        html.Append("You see first how it is read and what would be added. "
            + "It stays on this machine, and your tables change only when you press Add.</p>\n");
        if (whyNot is not null)
        {
            return html.Append($"<p>{Text(whyNot)}</p>\n").ToString();
        }

        html.Append($"<form class=\"fields\" method=\"post\" action=\"{Path}\" enctype=\"multipart/form-data\">\n"
            + $"<div class=\"grid\"><div class=\"field\"><label for=\"file\">File</label>\n");
        html.Append($"<input type=\"file\" id=\"file\" name=\"file\" required accept=\".csv,.tsv,.tab,.txt,.dat,.xlsx\" "
            + $"data-most=\"{LargestFile}\" data-too-large=\"{TooLarge}\" "
            + $"aria-describedby=\"file-help{(fault.Length == 0 ? "" : " file-fault")}\""
            + $"{(fault.Length == 0 ? "" : " aria-invalid=\"true\" autofocus")}>\n");
        html.Append("<p class=\"help\" id=\"file-help\">Any other spreadsheet: save it as .xlsx or CSV first.</p>\n");
        html.Append(fault.Length == 0 ? "" : $"<p class=\"fault\" id=\"file-fault\">{Text(fault)}</p>\n");
        return html.Append("</div></div>\n<p class=\"buttons\"><button class=\"main\">Look at it</button></p>\n</form>\n").ToString();
    }

    /// <summary>What a file holds and what would be added.</summary>
    /// <param name="id">The file's name in the address.</param>
    /// <param name="session">The file.</param>
    /// <param name="look">What there is to see of it.</param>
    /// <param name="told">What is said of the last press of a button.</param>
    internal static string File(string id, ImportSession session, ImportLook look, ImportNotice told)
    {
        StringBuilder html = new($"<h1>{Text(Headline(session, look))}</h1>\n");
        html.Append(told.Done.Length == 0
            ? ""
            : $"<p role=\"status\"><strong>{Text(told.Done)}</strong> To take them back, delete that file from your records. "
                + $"<a href=\"{Fixing.FixView.Path}\">What the checks say</a></p>\n");
        html.Append(told.Named);
        html.Append(told.Fault.Length == 0 ? "" : $"<p class=\"fault\" role=\"alert\">{Text(told.Fault)}</p>\n");
        html.Append(look.Fault is { } fault ? $"<p class=\"fault\" role=\"alert\">{Text(fault)}</p>\n" : "");
        html.Append(look.Draft is { } draft ? $"<p>{Text(draft.Sees)}</p>\n"
            : look.Fault is null ? "<p>Read by the mapping your records remember for files like this one.</p>\n" : "");
        if (look.Fault is null)
        {
            html.Append(ImportTables.Sides(look));
            html.Append(look.Plan is { } plan ? Sums(plan, look.Draft?.Sees ?? "") : "");
            string fields = ImportFields.Questions(look) + ImportFields.Names(look, told) + NewNames.Form(look, told) + Buttons(look);
            html.Append(fields.Length == 0 ? "" : $"<form class=\"fields\" method=\"post\" action=\"{Path}/{id}\">\n"
                + $"<input type=\"hidden\" name=\"draft\" value=\"{look.DraftVersion}\">\n"
                + $"<input type=\"hidden\" name=\"version\" value=\"{look.Version}\">\n{fields}</form>\n");
            html.Append(look.Plan is { } held ? HeldBack(id, held) : "");
        }

        html.Append(ImportFields.Turn(id, session, look));
        html.Append(look.Draft is { } drafted ? ImportTables.Mapping(drafted) : "");
        return html.Append($"<p><a href=\"{Path}\">Another file</a></p>\n").ToString();
    }

    /// <summary>The answers of a form, by line of the draft.</summary>
    internal static IEnumerable<KeyValuePair<int, string>> Answers(IFormCollection sent) =>
        sent.Where(pair =>
                pair.Key.Length > 1
                && pair.Key[0] == 'q'
                && int.TryParse(pair.Key[1..], NumberStyles.None, CultureInfo.InvariantCulture, out _)
            )
            .Select(pair => new KeyValuePair<int, string>(
                int.Parse(pair.Key[1..], CultureInfo.InvariantCulture),
                pair.Value.FirstOrDefault(said => !string.IsNullOrWhiteSpace(said)) ?? ""
            ));

    /// <summary>The names of a form.</summary>
    internal static IReadOnlyList<GivenName> Names(IFormCollection sent) =>
        [
            .. sent.Where(pair => pair.Key.StartsWith("n" + Part, StringComparison.Ordinal))
                .Select(pair => (Key: pair.Key.Split(Part), pair.Value))
                .Where(pair => pair.Key.Length == 3)
                .Select(pair => new GivenName(pair.Key[1], Uri.UnescapeDataString(pair.Key[2]), pair.Value.LastOrDefault() ?? "")),
        ];

    /// <summary>The name of the field of a name.</summary>
    internal static string FieldOf(string table, string alias) => $"n{Part}{table}{Part}{Uri.EscapeDataString(alias)}";

    private static string Headline(ImportSession session, ImportLook look)
    {
        if (look.Fault is not null)
        {
            return $"{session.Name} can't be read yet";
        }

        if (look.Plan is not { } plan)
        {
            int open = look.Draft!.Questions.Count(question =>
                question.IsOpen && look.Answers.GetValueOrDefault(question.Line, "").Length == 0
            );
            return $"{session.Name}: {look.Notation.Count(open, "question")} only you can answer";
        }

        return $"{session.Name}: {look.Notation.Count(plan.Rows.Count, "row")} of {plan.Table} to "
            + $"add{(plan.RowsHeldBack == 0 ? "" : $", {look.Notation.Count(plan.RowsHeldBack, "row")} held back")}";
    }

    private static string Buttons(ImportLook look)
    {
        bool canAdd = look.Plan?.CanApply == true;
        string add = canAdd
            ? $"<button class=\"main\" name=\"do\" value=\"add\">Add {Text(look.Notation.Count(look.Plan!.Rows.Count, "row"))} "
                + $"to {Text(look.Plan.Table)}</button>"
            : "";
        string again = look.Plan is null ? "<button class=\"main\" name=\"do\" value=\"look\">Look at it again</button>"
            : look.Names.Count > 0 || look.Draft?.Questions.Count > 0
                ? $"<button{(canAdd ? "" : " class=\"main\"")} name=\"do\" value=\"look\">Look at it again with these answers</button>"
                : "";
        return add.Length + again.Length == 0 ? "" : $"<p class=\"buttons\">{add}{again}</p>\n";
    }

    private static string Sums(ImportPlan plan, string sees)
    {
        StringBuilder html = new("<h2>Does it add up?</h2>\n<ul>\n");
        string rows = plan.Notation.Text($"{plan.Notation.Count(plan.RowsInSource, "row")} in the file: {plan.Rows.Count:N0} to add, "
            + $"{plan.AlreadyThere.Count:N0} added before, {plan.LeftOut.Count:N0} left out, {plan.RowsHeldBack:N0} held back.");
        html.Append($"<li>{Text(rows)}</li>\n");
        html.Append(plan.Contents.Count == 0 ? "" : $"<li>To add: {Text(string.Join("; ", plan.Contents))}.</li>\n");
        int agree = plan.Sums.Count(sum => sum.Agrees);
        html.Append(
            agree == 0
                ? ""
                : $"<li>{Text(plan.Notation.Count(agree, "total"))} of the file {(agree == 1 ? "agrees" : "agree")} with the rows.</li>\n"
        );
        foreach (ImportSum sum in plan.Sums.Where(sum => !sum.Agrees).Take(MostCauses))
        {
            string sums = plan.Notation.Text($"{sum.What}: the file says {sum.InSource:#,0.####}, its rows come to {sum.Read:#,0.####}.");
            html.Append($"<li class=\"fault\">Does not add up: {Text(sums)}</li>\n");
        }

        // How the file is read stands above already.
        foreach (string remark in plan.Remarks.Where(remark => !sees.Contains(
            remark.Replace("Read as ", "", StringComparison.Ordinal).TrimEnd('.'), StringComparison.Ordinal)))
        {
            html.Append($"<li>{Text(remark)}</li>\n");
        }

        return html.Append("</ul>\n").ToString();
    }

    private static string HeldBack(string id, ImportPlan plan)
    {
        if (plan.HeldBack.Count == 0)
        {
            return "";
        }

        // Names have their fields above.
        IReadOnlyList<ProblemCause> causes = ProblemCause.Of(plan.ProblemsBesideNames.Where(problem => problem.Severity == Severity.Error));
        StringBuilder html = new("<h2>Held back</h2>\n");
        html.Append(
            causes.Count == 0
                ? "<p>All of them wait for the names above.</p>\n"
                : $"<p>These rows stop no other; the costliest stand first.</p>\n<ul class=\"problems\">\n"
                    + $"{string.Concat(causes.Take(MostCauses).Select(cause => Cause(cause, plan.Notation)))}</ul>\n"
        );
        html.Append(
            causes.Count > MostCauses
                ? $"<p>And {Text(plan.Notation.Count(causes.Count - MostCauses, "more kind of problem", "more kinds of problems"))}.</p>\n"
                : ""
        );
        return html.Append(
                $"<p><a href=\"{Path}/{id}/to-fix.csv\" download>These rows as a file to fix</a>; bring that file in afterwards, "
                    + $"by the same mapping.</p>\n"
            )
            .ToString();
    }

    private static string Cause(ProblemCause cause, Notation notation)
    {
        string money = cause.Money == 0m ? "" : notation.Text($", {cause.Money:#,0.00} of money in {(cause.Count == 1 ? "it" : "them")}");
        string row = cause.First.Row is { Length: > 0 } written ? $"<br><span class=\"hint\">{Text(written)}</span>" : "";
        return $"<li>{Text(cause.First.Message)} {Text(notation.Count(cause.Count, "row"))}, "
            + $"first in line {cause.First.Source.Line}{Text(money)}.{row}</li>\n";
    }

    internal static string Text(string text) => PageShell.Encode(text);
}
