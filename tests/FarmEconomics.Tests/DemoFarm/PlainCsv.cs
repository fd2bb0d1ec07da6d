using System.Globalization;
using System.Text;

namespace FarmEconomics.Tests.DemoFarm;

/// <summary>A few lines of RFC 4180, so that the demo farm is judged from its text and not through the reader it is meant to exercise.</summary>
internal static class PlainCsv
{
    public static IReadOnlyList<Dictionary<string, string>> Rows(string text)
    {
        var lines = Fields(text).ToList();
        return [.. lines.Skip(1).Select(line => lines[0].Zip(line).ToDictionary(pair => pair.First, pair => pair.Second))];
    }

    public static IReadOnlyList<Dictionary<string, string>> Demo(string table) =>
        Rows(File.ReadAllText(Path.Combine(Folder(), table + ".csv")));

    /// <summary>The committed demo-data folder, found from where the test runs.</summary>
    public static string Folder()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at != null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "FarmEconomics.sln")))
            {
                return Path.Combine(at.FullName, "demo-data");
            }
        }

        throw new DirectoryNotFoundException("no FarmEconomics.sln above " + AppContext.BaseDirectory);
    }

    public static decimal Number(this Dictionary<string, string> row, string column) =>
        row[column].Length == 0 ? 0m : decimal.Parse(row[column], CultureInfo.InvariantCulture);

    public static DateOnly? Date(this Dictionary<string, string> row, string column) =>
        row[column].Length == 0 ? null : DateOnly.ParseExact(row[column], "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static IEnumerable<List<string>> Fields(string text)
    {
        var line = new List<string>();
        var field = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (quoted)
            {
                if (c != '"')
                {
                    field.Append(c);
                }
                else if (i + 1 < text.Length && text[i + 1] == '"')
                {
                    field.Append('"');
                    i++;
                }
                else
                {
                    quoted = false;
                }
            }
            else if (c == '"')
            {
                quoted = true;
            }
            else if (c is ',' or '\n')
            {
                line.Add(field.ToString());
                field.Clear();
                if (c == '\n')
                {
                    yield return line;
                    line = [];
                }
            }
            else
            {
                field.Append(c);
            }
        }
    }
}
