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

    /// <summary>Two readings of a format, in words, where it asks which one is meant.</summary>
    public IReadOnlyList<string> Readings { get; init; } = [];

    /// <summary>Rows that fill the column from one of the file's, where none was told from its headings.</summary>
    public IReadOnlyList<DraftRow> Instead { get; init; } = [];

    /// <summary>True for what only the grower knows.</summary>
    public bool IsOpen => Constant == "?" || Format?.Contains(" or ", StringComparison.Ordinal) == true;

    /// <summary>True where the grower is asked: what is open, and a guess worth a look.</summary>
    public bool IsAsked => IsOpen || (Note?.StartsWith('?') == true && (Constant is not null || (Column is not null && When is not null)));

    /// <summary>What is filled in now; blank for what is open.</summary>
    public string Answer => IsOpen ? "" : Constant ?? Becomes ?? "";

    /// <summary>The forms to choose from; none where a text is asked for.</summary>
    public string[] Forms =>
        Format?.Split(';').FirstOrDefault(word => word.Contains(" or ", StringComparison.Ordinal))?.Split(" or ") ?? [];

    /// <summary>The row with an answer in the place of its question.</summary>
    public DraftRow With(string answer) =>
        answer.Trim() is not { Length: > 0 } said ? this
        : OfColumn(said) is { } row ? row
        : Forms.Length > 0 ? this with
        {
            Format = string.Join(';', Format!.Split(';').Select(word => word.Contains(" or ", StringComparison.Ordinal) ? said : word)),
        }
        : Constant is not null ? this with { Constant = said }
        : this with { Becomes = said };

    /// <summary>The answer that takes one of <see cref="Instead"/>; no name of the records begins so.</summary>
    public static string AnswerOf(int instead) => $"={instead}";

    private DraftRow? OfColumn(string said) => Enumerable.Range(0, Instead.Count).Where(at => AnswerOf(at) == said)
        .Select(at => Instead[at]).FirstOrDefault();

    public string[] Fields(string import, string table) => [import, table, Column ?? "", Source ?? "", Constant ?? "", When ?? "", Match
        ?? "", Becomes ?? "", Format ?? "", Note ?? ""];
}
