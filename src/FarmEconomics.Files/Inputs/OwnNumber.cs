namespace FarmEconomics.Files.Inputs;

/// <summary>The source's own number within what an imported row is known by: <c>#1031.0f3a...</c>.</summary>
internal static class OwnNumber
{
    public const char Sign = '#';
    public const char Joint = '.';

    /// <summary>The number with its sign; null when the row has none.</summary>
    public static string? Of(string id) => id.Length > 1 && id[0] == Sign && id.LastIndexOf(Joint) is > 0 and var at ? id[..at] : null;
}
