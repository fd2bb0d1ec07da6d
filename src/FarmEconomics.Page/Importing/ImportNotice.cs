using FarmEconomics.Files.Importing;

namespace FarmEconomics.Page.Importing;

/// <summary>What a page of a file being brought in says of the last press of a button.</summary>
internal sealed record ImportNotice
{
    /// <summary>What was done; blank: nothing.</summary>
    internal string Done { get; init; } = "";

    /// <summary>Why it was not; blank: nothing is wrong.</summary>
    internal string Fault { get; init; } = "";

    /// <summary>Names that can't be taken.</summary>
    internal IReadOnlyList<(GivenName Name, string Why)> Names { get; init; } = [];

    /// <summary>What was added to the tables of names, with the way back; blank: nothing.</summary>
    internal string Named { get; init; } = "";

    /// <summary>New names that could not be added, as they were filled in.</summary>
    internal IReadOnlyList<NewName> New { get; init; } = [];

    /// <summary>What a new crop may be counted in.</summary>
    internal IReadOnlyList<string> Units { get; init; } = [];
}
