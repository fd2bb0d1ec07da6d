using System.Text;
using FarmEconomics.Records.Reading;
using FarmEconomics.Records.Schema;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Records.Checks;

/// <summary>
/// One thing entered under two names (Carrot and Carrots, Jalapeno and Jalapeño, Farm stand and Farm-stand): its sowings, hours and sales
/// would fall apart into two, and neither figure would be true.
/// </summary>
internal static class NamesAlike
{
    private const int ShortestPlural = 4;

    /// <summary>The check of a table whose names are its first column.</summary>
    public static RecordCheck Of(TableSchema table) => new TableCheck($"{table.Name}: no two names are one", context =>
    {
        var seen = new Dictionary<string, (string Name, SourceLine Source)>();
        RecordTable rows = context.Tables.Of(table);
        HashSet<string> own = OwnNames(context.Tables, table);
        for (int i = 0; i < rows.Count; i++)
        {
            IRecordRow row = rows[i];
            string name = ((TextColumn)table.Stored[0]).Of(rows, i).Trim();
            // The same name again is another fault, or none.
            if (!own.Contains(name) && Key(name) is { Length: > 0 } key && !seen.TryAdd(key, (name, row.Source))
                && !seen[key].Name.Equals(name, StringComparison.OrdinalIgnoreCase))
            {
                (string first, SourceLine source) = seen[key];
                context.Report(ProblemCodes.NamesAlike, row, table.Columns[0].Name,
                    $"{name} and {first} in line {source.Line} read as one name written two ways.");
            }
        }
    });

    // The grower's word that a name is another than the one it reads like: an alias of itself.
    private static HashSet<string> OwnNames(RecordTables tables, TableSchema table) => new(
        tables.Aliases
            .Where(row => HeadingKey.Of(row.Table) == table.Name)
            .Where(row => row.Alias.Trim().Equals(row.Name.Trim(), StringComparison.OrdinalIgnoreCase))
            .Select(row => row.Name.Trim()),
        StringComparer.OrdinalIgnoreCase);

    /// <summary>What is left of a name without case, accents, blanks, dashes and plural; blank where that tells nothing.</summary>
    internal static string Key(string name)
    {
        var letters = new StringBuilder(name.Length);
        foreach (char c in PlainLetters.Of(name))
        {
            if (char.IsLetter(c))
            {
                letters.Append(c);
            }
            else if (c is not (' ' or '\u00A0' or '-' or '\u2010' or '\u2011' or '\u2013'))
            {
                // A number or a sign may be all the difference: block 1-1 is not block 11.
                return "";
            }
        }

        return Singular(letters.ToString());
    }

    private static string Singular(string word) =>
        word.Length < ShortestPlural || word.EndsWith("ss", StringComparison.Ordinal) ? word
        : word.EndsWith("ies", StringComparison.Ordinal) ? $"{word[..^3]}y"
        : word.EndsWith("oes", StringComparison.Ordinal) || word.EndsWith("hes", StringComparison.Ordinal) ? word[..^2]
        : word.EndsWith('s') ? word[..^1]
        : word;
}
