using FarmEconomics.Files.Inputs;

namespace FarmEconomics.Files.Importing.Sources;

/// <summary>A row of a file of another program: its line and its fields.</summary>
internal sealed record SourceCells(int Line, string[] Fields)
{
    /// <summary>The field of a column, from 0; blank where the row is shorter.</summary>
    public string At(int column) => column >= 0 && column < Fields.Length ? Fields[column].Trim() : "";

    public int Filled => Fields.Count(text => !string.IsNullOrWhiteSpace(text));
}

/// <summary>All rows of a file, or of a sheet, that have text; nothing is known of their meaning yet.</summary>
internal sealed record SourceGrid(string Name, IReadOnlyList<SourceCells> Rows)
{
    /// <summary>How the file is written, in words.</summary>
    public string Look { get; init; } = "";

    /// <summary>True for a text file, whose rows may be longer than its headings; a sheet has cells.</summary>
    public bool IsText { get; init; }

    /// <summary>What can't be read of a row, by its line.</summary>
    public IReadOnlyDictionary<int, List<CellFault>> Faults { get; init; } = new Dictionary<int, List<CellFault>>();
}
