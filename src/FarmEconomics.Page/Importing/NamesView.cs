using System.Text;
using FarmEconomics.Files;
using FarmEconomics.Files.Importing;
using FarmEconomics.Records.Checks;
using FarmEconomics.Records.Names;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Page.Importing;

/// <summary>Every name the records don't know as one form, confirmed at once.</summary>
internal static class NamesView
{
    /// <summary>Where the names go.</summary>
    internal const string Path = "/fix/names";

    /// <summary>The form; blank when every name is known.</summary>
    /// <param name="folder">The records.</param>
    /// <param name="said">What was chosen before.</param>
    /// <param name="faults">Names that can't be taken.</param>
    internal static string Form(FarmFolder folder, IReadOnlyList<GivenName> said, IReadOnlyList<(GivenName Name, string Why)> faults)
    {
        IReadOnlyList<AliasProposal> names = AliasProposal.All(folder.Problems, folder.Reading.Tables);
        if (names.Count == 0)
        {
            return "";
        }

        var known = new KnownNames(folder.Reading.Tables, folder.Reading.FarmSettings);
        StringBuilder html = new($"<form class=\"fields\" method=\"post\" action=\"{Path}\">\n"
            + $"<h2>{ImportPages.Text(folder.Notation.Count(names.Count, "name"))} your records don’t know</h2>\n");
        html.Append("<p class=\"hint\">Each is a guess or blank; what you confirm goes into a file of its own, aliases.names.csv. "
            + "A new crop or buyer: add it to its table instead.</p>\n<div class=\"grid\">\n");
        foreach ((int at, AliasProposal name) in names.Take(ImportFields.MostNames).Index())
        {
            string field = ImportPages.FieldOf(name.Table, name.Alias);
            GivenName? given = said.FirstOrDefault(one => one.Table == name.Table && one.Alias == name.Alias);
            string? why = faults
                .Where(fault => fault.Name.Table == name.Table && fault.Name.Alias == name.Alias)
                .Select(fault => fault.Why)
                .FirstOrDefault();
            ImportFields.Field(
                html,
                new FieldMarks($"name{at}", field, $"{name.Alias} ({name.Table})"),
                given?.Name ?? name.Name,
                ImportFields.Options(known.Of(name.Table), name.Name),
                ($"{folder.Notation.Count(name.Rows, "row")}, first {name.First}", why)
            );
        }

        html.Append("</div>\n");
        html.Append(names.Count > ImportFields.MostNames
            ? $"<p>And {ImportPages.Text(folder.Notation.Count(names.Count - ImportFields.MostNames, "more name"))}: "
                + $"confirm these first.</p>\n"
            : "");
        return html.Append("<p class=\"buttons\"><button class=\"main\">Save these names</button></p>\n</form>\n").ToString();
    }
}
