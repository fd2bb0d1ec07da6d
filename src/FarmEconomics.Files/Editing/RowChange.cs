namespace FarmEconomics.Files.Editing;

/// <summary>One row of a file of the records as it stands there.</summary>
/// <param name="File">The file's name, without its folder.</param>
/// <param name="Line">The line the row starts in; 0 for a row that isn't there yet.</param>
/// <param name="Version">What the file holds, as a hash: a change is only made to the file that was looked at.</param>
/// <param name="Headings">The file's headings.</param>
/// <param name="Fields">The fields under them, as written; blank where the row is shorter.</param>
public sealed record EditableRow(string File, int Line, string Version, IReadOnlyList<string> Headings, IReadOnlyList<string> Fields);

/// <summary>A change a grower asks for: one row corrected, added or taken out.</summary>
/// <param name="File">The file's name, without its folder.</param>
/// <param name="Version">The version of the file the grower saw.</param>
/// <param name="Line">The line of the row; 0 to add one at the end.</param>
/// <param name="Fields">The new texts by heading, those that stay left out; null: the row is taken out.</param>
public sealed record RowChange(string File, string Version, int Line, IReadOnlyDictionary<string, string>? Fields);

/// <summary>Rows of a file that are taken out and rows that are added at its end, as one change.</summary>
/// <param name="File">The file's name, without its folder; it need not be there.</param>
/// <param name="Version">The version of the file that was looked at; blank: it wasn't there.</param>
/// <param name="Headings">The headings of the rows that are added; those of the file where it is made.</param>
/// <param name="Rows">The rows that are added, a text per heading.</param>
public sealed record RowsChange(string File, string Version, IReadOnlyList<string> Headings, IReadOnlyList<IReadOnlyList<string>> Rows)
{
    /// <summary>The lines the rows start in that are taken out.</summary>
    public IReadOnlySet<int> Without { get; init; } = new HashSet<int>();

    /// <summary>What separates the fields of a file that is made.</summary>
    public char Separator { get; init; } = ',';
}
