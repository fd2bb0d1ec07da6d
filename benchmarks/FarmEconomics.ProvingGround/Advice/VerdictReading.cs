using FarmEconomics.Budgets;
using FarmEconomics.Decisions;

namespace FarmEconomics.ProvingGround.Advice;

/// <summary>What a grower is told to do with a crop.</summary>
internal enum Move
{
    /// <summary>Nothing: keep, fix, too close to call, can't tell.</summary>
    None,

    /// <summary>Not grown; beds left empty.</summary>
    Drop,

    /// <summary>Not grown; another crop in its beds.</summary>
    Another,

    /// <summary>More of it.</summary>
    Grow,
}

/// <summary>Advice on one crop.</summary>
/// <param name="Crop">The crop.</param>
/// <param name="Move">What to do.</param>
/// <param name="Other">The crop in its place.</param>
/// <param name="Feet">Bed-feet more, of the crop or of the one in its place.</param>
internal sealed record Advised(string Crop, Move Move, string? Other = null, double Feet = 0.0)
{
    /// <summary>What the program says the farm gains by it, $ a season; what it says dropping would gain where nothing is advised.</summary>
    internal double Said { get; init; }
}

/// <summary>
/// Reads the program's verdicts as the page on what to drop and grow gives them. The only file that knows how the program words them.
/// </summary>
internal static class VerdictReading
{
    /// <summary>The advice on every crop of the last season, with the program's own thresholds.</summary>
    internal static IReadOnlyList<Advised> Of(FarmReview review)
    {
        Verdicts verdicts = Verdicts.Of(review, SeasonCosts.Of(review.Season(review.LatestCropYear)));
        return [.. verdicts.Crops.Select(verdict => Read(verdict, verdicts.Settings))];
    }

    private static Advised Read(Verdict verdict, VerdictSettings settings)
    {
        string crop = verdict.Budget.Name;
        double drop = -(double)verdict.Contribution.Amount;

        // The page names a step and, where it is less, the room.
        decimal more = Math.Min(settings.GrowStep * verdict.Budget.Sums.BedFeet.Value, verdict.Room.Value ?? 0m);
        return verdict.Direction switch
        {
            Direction.Drop => new Advised(crop, Move.Drop) { Said = drop },
            Direction.Replace when verdict.BestFit is { } fit =>
                new Advised(crop, Move.Another, fit.Crop, (double)fit.BedFeet) { Said = (double)fit.Swap.NetChange.Amount },
            Direction.Grow => new Advised(crop, Move.Grow, null, (double)more) { Said = (double)(verdict.GrowthGain.Value ?? 0m) },
            _ => new Advised(crop, Move.None) { Said = drop },
        };
    }
}
