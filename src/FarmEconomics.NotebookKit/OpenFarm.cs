using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Reports.Frame;

namespace FarmEconomics.NotebookKit;

/// <summary>A farm's records opened for a notebook: what was read, what is wrong with it, and its seasons.</summary>
public sealed class OpenFarm
{
    internal OpenFarm(FarmFolder folder) => Folder = folder;

    /// <summary>The folder with everything read from it.</summary>
    public FarmFolder Folder { get; }

    /// <summary>Everything found wrong or weak.</summary>
    public IReadOnlyList<Problem> Problems => Folder.Problems;

    /// <summary>All years traced.</summary>
    /// <exception cref="RecordsException">Errors stop every figure; the message lists them.</exception>
    public FarmReview Review =>
        Folder.Review ?? throw new RecordsException(Folder.Problems.Where(problem => problem.Severity == Severity.Error).ToList());

    /// <summary>One crop year; 0: the season just ended.</summary>
    public SeasonReview Season(int year = 0)
    {
        int chosen = year == 0 ? Review.LatestCropYear : year;
        return Review.CropYears.Contains(chosen)
            ? Review.Season(chosen)
            : throw new ArgumentException(
                $"The records tell nothing of {chosen}. Years they tell of: {string.Join(", ", Review.CropYears)}.",
                nameof(year)
            );
    }

    /// <summary>One crop year as reports take it; 0: the season just ended.</summary>
    /// <param name="year">The crop year.</param>
    /// <exception cref="RecordsException">Errors stop every figure; the message lists them.</exception>
    /// <exception cref="ArgumentException">The records tell nothing of that year.</exception>
    public ReviewedFarm Reviewed(int year = 0)
    {
        _ = Season(year);
        return ReviewedFarm.Of(Folder, year);
    }
}
