namespace FarmEconomics.Files.Workbooks;

/// <summary>A workbook to be written: its sheets in order. Not safe to fill from several threads.</summary>
public sealed class Workbook
{
    private const int LongestSheetName = 31;
    private static readonly char[] NotInSheetNames = ['[', ']', ':', '*', '?', '/', '\\'];
    private readonly List<WorkbookSheet> sheets = [];

    /// <summary>The sheets, in order.</summary>
    public IReadOnlyList<WorkbookSheet> Sheets => sheets;

    /// <summary>Adds a sheet at the end.</summary>
    /// <param name="name">Its name: 1 to 31 characters, none of <c>[ ] : * ? / \</c>, no quote at either end, not used yet in any
    /// case.</param>
    /// <returns>The empty sheet.</returns>
    /// <exception cref="ArgumentException">The name can't be that of a sheet, or is taken.</exception>
    public WorkbookSheet Sheet(string name)
    {
        if (name != SafeName(name))
        {
            throw new ArgumentException($"'{name}' can't be the name of a sheet.", nameof(name));
        }

        if (sheets.Exists(sheet => sheet.Name.Equals(name, StringComparison.OrdinalIgnoreCase)))
        {
            throw new ArgumentException($"There is a sheet '{name}' already.", nameof(name));
        }

        WorkbookSheet added = new(name);
        sheets.Add(added);
        return added;
    }

    /// <summary>Makes a text fit to name a sheet; two texts may become the same name.</summary>
    /// <param name="text">Any text, for example out of the records.</param>
    /// <returns>The nearest allowed name; <c>sheet</c> when nothing is left.</returns>
    public static string SafeName(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        string name = string.Concat(
                text.Select(c => Array.IndexOf(NotInSheetNames, c) >= 0 || char.IsControl(c) || char.IsSurrogate(c) ? ' ' : c)
            )
            .Trim()
            .Trim('\'');
        name = name.Length > LongestSheetName ? name[..LongestSheetName] : name;
        name = name.Trim().Trim('\'').Trim();
        return name.Length == 0 ? "sheet" : name;
    }

    /// <summary>A sheet's name as a formula needs it, in quotes.</summary>
    /// <param name="name">The name.</param>
    /// <returns>The name in single quotes, quotes inside doubled.</returns>
    public static string Quoted(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return $"'{name.Replace("'", "''", StringComparison.Ordinal)}'";
    }
}
