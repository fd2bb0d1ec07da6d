using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Reports.Season;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Cli.Review;

/// <summary>What happened, in plain sentences, for the terminal.</summary>
internal static class ReviewSummary
{
    internal static IReadOnlyList<string> Of(FarmFolder farm, SeasonReview season) =>
    [
        SeasonSentences.Answer(season).ToPlainText().Trim(),
        Found(farm),
        ProofTables.InWords(season),
    ];

    private static string Found(FarmFolder farm)
    {
        string found =
            $"The records check found {farm.Notation.Count(farm.ErrorCount, "error")} and "
                + farm.Notation.Count(farm.WarningCount, "warning");
        return farm.Skipped.Count == 0 ? found + "." : $"{found}; {farm.Notation.Count(farm.Skipped.Count, "row")} in error left out.";
    }
}
