namespace FarmEconomics.Files.Importing;

/// <summary>What is to be imported, and how.</summary>
/// <param name="Source">The file of the other program.</param>
public sealed record ImportRequest(string Source)
{
    /// <summary>The table the rows are for; null: the one the mapping fills.</summary>
    public string? Table { get; init; }

    /// <summary>A file with the columns of <c>imports</c>, or the name of a mapping the records remember; null: one they remember that
    /// fits the headings.</summary>
    public string? Map { get; init; }

    /// <summary>The records folder, or null to look at the rows by themselves.</summary>
    public string? Folder { get; init; }

    /// <summary>The sheet of a workbook; null: its first one that is not hidden.</summary>
    public string? Sheet { get; init; }

    /// <summary>What the files that lie beside the source for it begin with: its name without the ending, and that of the sheet.</summary>
    public string NameBeside =>
        Path.GetFileNameWithoutExtension(Source) + (Sheet is null ? "" : $"-{Sheet.ToLowerInvariant().Replace(' ', '-')}");

    /// <summary>A file with the columns of <c>aliases</c> that says what names of the source mean; rows whose name is blank say
    /// nothing.</summary>
    public string? Names { get; init; }
}
