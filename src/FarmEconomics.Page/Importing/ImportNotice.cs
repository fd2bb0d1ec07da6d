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
}
