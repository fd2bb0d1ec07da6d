namespace FarmEconomics.Cli.Review;

/// <summary>The cautions every report carries.</summary>
internal static class Cautions
{
    internal static IReadOnlyList<string> Paragraphs { get; } =
    [
        "These figures rest on the grower's own records and on the assumptions shown with them; they are as right as those are.",
        "They are not tax, legal, lending or food-safety advice. Tax lines and depreciation classes need the grower's tax preparer and the current official forms; "
        + "holding and washing produce follows local food-safety rules; local codes and licensed practice come first.",
    ];
}
