namespace FarmEconomics.Files;

/// <summary>Settings for one reading of the records as a person writes them: <c>owner_wage=22; interest_percent=5</c>.</summary>
public static class SettingText
{
    /// <summary>Several settings with semicolons between them.</summary>
    /// <param name="text">The settings; blank: none.</param>
    /// <returns>Name and value of each, trimmed.</returns>
    /// <exception cref="ArgumentException">A part has no name before an equals sign; the message says how to write it.</exception>
    public static IReadOnlyList<KeyValuePair<string, string>> Pairs(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return
        [
            .. text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
                .Select(part =>
                    Pair(part)
                    ?? throw new ArgumentException(
                        $"'{part}' is not a setting: write name=value, several with a semicolon between them.",
                        nameof(text)
                    )
                ),
        ];
    }

    /// <summary>One setting.</summary>
    /// <param name="text">The setting.</param>
    /// <returns>Name and value, trimmed; null when there is no name before an equals sign.</returns>
    public static KeyValuePair<string, string>? Pair(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        int equals = text.IndexOf('=', StringComparison.Ordinal);
        string name = equals < 0 ? "" : text[..equals].Trim();
        return name.Length == 0 ? null : KeyValuePair.Create(name, text[(equals + 1)..].Trim());
    }
}
