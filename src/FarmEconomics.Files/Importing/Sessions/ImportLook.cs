using FarmEconomics.Files.Importing.Drafts;
using FarmEconomics.Records;

namespace FarmEconomics.Files.Importing.Sessions;

/// <summary>How a file is looked at: what a person says where the program would tell by itself.</summary>
public sealed record ImportView
{
    /// <summary>The table its rows are for; null: told from the headings.</summary>
    public string? Table { get; init; }

    /// <summary>The sheet of a workbook; null: its first one that is not hidden.</summary>
    public string? Sheet { get; init; }

    /// <summary>The line the headings stand in; null: found.</summary>
    public int? HeadingsAt { get; init; }

    /// <summary>True: a mapping the records remember is not used; a new one is drafted.</summary>
    public bool Anew { get; init; }
}

/// <summary>A name of a file that the records don't know, or that was given a meaning.</summary>
/// <param name="Table">The table it should stand in.</param>
/// <param name="Alias">The name as written.</param>
/// <param name="Name">What it means, or is likely to; blank: not known.</param>
/// <param name="Rows">How many rows wait for it; 0 once it has its meaning.</param>
/// <param name="Choices">The names to choose from.</param>
public sealed record SessionName(string Table, string Alias, string Name, int Rows, IReadOnlyList<string> Choices);

/// <summary>What there is to see of a file being brought in. Nothing is written.</summary>
public sealed record ImportLook
{
    /// <summary>What stops it, in a sentence; null: nothing.</summary>
    public string? Fault { get; init; }

    /// <summary>The mapping as drafted; null when the records remember one.</summary>
    public ImportDraft? Draft { get; init; }

    /// <summary>The answers given so far, by line of the draft.</summary>
    public IReadOnlyDictionary<int, string> Answers { get; init; } = new Dictionary<int, string>();

    /// <summary>What would be added; null while a question is open.</summary>
    public ImportPlan? Plan { get; init; }

    /// <summary>Names to give a meaning, most rows first.</summary>
    public IReadOnlyList<SessionName> Names { get; init; } = [];

    /// <summary>The sheets of a workbook; none for another file.</summary>
    public IReadOnlyList<string> Sheets { get; init; } = [];

    /// <summary>Names that answer a question, by the table they stand in.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<string>> Known { get; init; } = new Dictionary<string, IReadOnlyList<string>>();

    /// <summary>How the farm writes numbers.</summary>
    public Notation Notation { get; init; } = Notation.Default;

    /// <summary>Known by this; another one means that something else would be added.</summary>
    public string Version { get; init; } = "";

    /// <summary>The draft's own version: answers to another one mean other lines.</summary>
    public string DraftVersion { get; init; } = "";
}
