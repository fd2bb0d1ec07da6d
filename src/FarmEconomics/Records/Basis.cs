using FarmEconomics.Records.Schema;

namespace FarmEconomics.Records;

/// <summary>A basis as the pools table writes it: what a pool is divided by.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Stage">The stage for <c>labor-hours:STAGE</c>; null: all stages.</param>
public sealed record Basis(BasisKind Kind, Stage? Stage = null)
{
    /// <summary>What a message lists as allowed.</summary>
    public static IReadOnlyList<string> Allowed { get; } =
    [
        .. BasisKind.Names,
        .. BasisKind.All.Where(kind => kind.TakesStage).SelectMany(kind => Words.All<Stage>().Select(stage => $"{kind.Name}:{stage}")),
    ];

    /// <summary>Reads a basis, without regard to case, spaces, hyphens and underscores.</summary>
    /// <param name="text">As written.</param>
    /// <param name="basis">The basis.</param>
    /// <returns>False when it isn't one.</returns>
    public static bool TryParse(string? text, out Basis? basis)
    {
        string name = text ?? "";
        int colon = name.IndexOf(':', StringComparison.Ordinal);
        string key = HeadingKey.Of(colon < 0 ? name : name[..colon]);
        BasisKind? kind = BasisKind.All.FirstOrDefault(known => HeadingKey.Of(known.Name) == key);
        basis = kind is null ? null
            : colon < 0 ? new Basis(kind)
            : kind.TakesStage && Words.TryParse(name[(colon + 1)..], out Stage stage) ? new Basis(kind, stage)
            : null;
        return basis is not null;
    }

    /// <summary>Reads a basis that was checked before.</summary>
    /// <param name="text">As written.</param>
    /// <returns>The basis.</returns>
    /// <exception cref="FormatException">The text isn't a basis.</exception>
    public static Basis Parse(string text) =>
        TryParse(text, out Basis? basis) ? basis! : throw new FormatException($"'{text}' is not a basis.");

    /// <summary>The basis as the pools table writes it.</summary>
    public override string ToString() => Stage is { } stage ? $"{Kind.Name}:{Words.Of(stage)}" : Kind.Name;
}
