namespace FarmEconomics.Records.Reading;

/// <summary>One setting of <c>farm</c>.</summary>
/// <param name="Name">The setting's name.</param>
/// <param name="Expected">What its value may be, to end the sentence "... must be".</param>
/// <param name="Default">Its default as the grower would write it, or why there is none.</param>
/// <param name="Description">One sentence for the grower.</param>
/// <param name="Apply">Gives the settings with the value in place, or null when the text can't be read.</param>
public sealed record SettingSpec(
    string Name,
    string Expected,
    string Default,
    string Description,
    Func<FarmSettings, string, FarmSettings?> Apply);
