namespace FarmEconomics.Records.Reading;

/// <summary>Reads yes and no.</summary>
public static class YesNoText
{
    private static readonly string[] Yes = ["yes", "y", "true", "1"];
    private static readonly string[] No = ["no", "n", "false", "0"];

    /// <summary>Reads yes (also y, true, 1) or no (also n, false, 0), in any case.</summary>
    /// <param name="text">The text.</param>
    /// <param name="value">True for yes.</param>
    /// <returns>Whether it is one of them.</returns>
    public static bool TryRead(string text, out bool value)
    {
        value = Yes.Contains(text, StringComparer.OrdinalIgnoreCase);
        return value || No.Contains(text, StringComparer.OrdinalIgnoreCase);
    }
}
