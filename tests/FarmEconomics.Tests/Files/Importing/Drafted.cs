using FarmEconomics.Files.Importing;
using FarmEconomics.Files.Importing.Drafts;

namespace FarmEconomics.Tests.Files.Importing;

/// <summary>A file imported as a grower does it: the draft taken as it is, with the answers to what it asks.</summary>
internal static class Drafted
{
    /// <summary>Drafts, answers, and plans.</summary>
    /// <param name="source">The file.</param>
    /// <param name="folder">The records; null: none.</param>
    /// <param name="answers">What takes the place of the question of a column, such as channel=market.</param>
    public static ImportPlan Plan(string source, string? folder, params string[] answers)
    {
        var request = new ImportRequest(source) { Folder = folder };
        string map = Path.Combine(TestFolders.Make(), "map.csv");
        File.WriteAllText(map, Of(request, answers));
        return RecordsImport.Plan(request with { Map = map });
    }

    /// <summary>The mapping, with the answers.</summary>
    public static string Of(ImportRequest request, params string[] answers) => Answer(ImportDraft.Of(request).Csv, answers);

    /// <summary>Writes a file and does the same.</summary>
    public static ImportPlan PlanText(string name, string text, string? folder, params string[] answers) =>
        Plan(Source(name, text), folder, answers);

    /// <summary>A file of its own, written.</summary>
    public static string Source(string name, string text) => Path.Combine(TestFolders.Make((name, text)), name);

    public static IEnumerable<string> Rows(ImportPlan plan) => plan.Rows.Select(row => string.Join(' ', row.Fields));

    private static string Answer(string csv, string[] answers)
    {
        foreach (string[] answer in answers.Select(answer => answer.Split('=', 2)))
        {
            csv = string.Join('\n', csv.Split('\n').Select(line => line.Split(',') is { Length: > 4 } fields && fields[2] == answer[0] && fields[4] == "?"
                ? string.Join(',', fields.Select((field, at) => at == 4 ? answer[1] : field))
                : line.Split(',') is { Length: > 8 } forms && forms[2] == answer[0] && forms[8].Contains(" or ", StringComparison.Ordinal)
                    ? string.Join(',', forms.Select((field, at) => at == 8 ? answer[1] : field)) : line));
        }

        return csv;
    }
}
