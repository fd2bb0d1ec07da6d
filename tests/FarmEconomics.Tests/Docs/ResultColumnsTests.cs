using System.Text.RegularExpressions;
using FarmEconomics.Files.Results;
using FarmEconomics.Tests.Answers;
using FarmEconomics.Tests.Files;
using Xunit;

namespace FarmEconomics.Tests.Docs;

/// <summary>docs/records.md names the columns of every result table: other programs are written by it.</summary>
public class ResultColumnsTests
{
    private static readonly string Document = File.ReadAllText(Path.Combine(TestFolders.Repository, "docs", "records.md"));

    [Fact]
    public void Columns_OfEveryResultTable_AreNamedInTheDocument()
    {
        string folder = TestFolders.Make();
        ResultTables.Write(AnswerFarms.Demo.Season, [], folder);
        List<string> missing = [];
        foreach ((string name, _) in ResultTables.All)
        {
            string told = Told(name);
            string[] columns = File.ReadLines(Path.Combine(folder, name)).First().Split(',');
            missing.AddRange(columns.Where(column => !Names(told, column) && !InWords(name, column)).Select(column => $"{name}: {column}"));
        }

        Assert.Empty(missing);
    }

    // A table's part of the list, up to the next table's.
    private static string Told(string name)
    {
        int at = Document.IndexOf($"\n- `{name}`:", StringComparison.Ordinal);
        Assert.True(at >= 0, $"docs/records.md does not list {name}");
        int next = Document.IndexOf("\n- `", at + 1, StringComparison.Ordinal);
        return Document[at..(next < 0 ? Document.Length : next)];
    }

    private static bool Names(string told, string column) => Regex.IsMatch(told, $"(?<![a-z0-9_]){Regex.Escape(column)}(?![a-z0-9_])");

    // Columns the document describes instead of listing them.
    private static bool InWords(string table, string column) => table switch
    {
        "plantings.csv" => Names(Told("crops.csv"), column),
        "sowings.csv" => column.StartsWith("crop_", StringComparison.Ordinal) && Names(Told(table), column["crop_".Length..]),
        "power_months.csv" => column.Contains("_by_1_k", StringComparison.Ordinal),
        _ => false,
    };
}
