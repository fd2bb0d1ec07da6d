namespace FarmEconomics.Records.Schema;

/// <summary>The words of a pool's basis; <c>labor-hours</c> may name a stage: <c>labor-hours:harvest</c>.</summary>
public static class BasisWords
{
    private const string LaborHours = "labor-hours";

    /// <summary>The bases, in documented order.</summary>
    public static IReadOnlyList<string> All => Records.Basis.KnownNames;

    /// <summary>What a message lists as allowed.</summary>
    public static IReadOnlyList<string> Allowed { get; } = [.. All, .. Words.All<Stage>().Select(stage => $"{LaborHours}:{stage}")];

    /// <summary>Reads a basis and gives it its documented spelling.</summary>
    /// <param name="text">The text as written.</param>
    /// <param name="basis">The documented spelling, or an empty text.</param>
    /// <returns>Whether the text is a basis.</returns>
    public static bool TryParse(string text, out string basis)
    {
        int colon = text.IndexOf(':', StringComparison.Ordinal);
        string key = HeadingKey.Of(colon < 0 ? text : text[..colon]);
        basis = All.FirstOrDefault(known => HeadingKey.Of(known) == key) ?? "";
        if (colon < 0 || basis.Length == 0)
        {
            return basis.Length > 0;
        }

        if (basis != LaborHours || !Words.TryParse(text[(colon + 1)..], out Stage stage))
        {
            basis = "";
            return false;
        }

        basis = $"{LaborHours}:{Words.Of(stage)}";
        return true;
    }
}
