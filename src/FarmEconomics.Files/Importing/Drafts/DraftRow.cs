namespace FarmEconomics.Files.Importing.Drafts;

/// <summary>A row of a drafted mapping.</summary>
/// <param name="Column">The column it fills; null for what is left out.</param>
/// <param name="Source">The heading of the source.</param>
internal sealed record DraftRow(string? Column, string? Source)
{
    public string? Constant { get; init; }

    public string? When { get; init; }

    public string? Match { get; init; }

    public string? Becomes { get; init; }

    public string? Format { get; init; }

    /// <summary>Why it is drafted so; begins with a question mark where somebody has to look.</summary>
    public string? Note { get; init; }

    /// <summary>True for what only the grower knows.</summary>
    public bool IsOpen => Constant == "?" || Format?.Contains(" or ", StringComparison.Ordinal) == true;

    public string[] Fields(string import, string table) => [import, table, Column ?? "", Source ?? "", Constant ?? "", When ?? "", Match
        ?? "", Becomes ?? "", Format ?? "", Note ?? ""];
}
