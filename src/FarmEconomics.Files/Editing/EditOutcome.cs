using FarmEconomics.Records;

namespace FarmEconomics.Files.Editing;

/// <summary>What came of a change.</summary>
/// <param name="Saved">True when the file holds it now.</param>
/// <param name="Message">A sentence for the grower.</param>
public sealed record EditOutcome(bool Saved, string Message)
{
    /// <summary>The errors the change would bring; then nothing was saved.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>True when the file is no longer the one that was looked at.</summary>
    public bool IsOutdated { get; init; }

    /// <summary>The version of the file now; null when nothing was saved.</summary>
    public string? Version { get; init; }
}
