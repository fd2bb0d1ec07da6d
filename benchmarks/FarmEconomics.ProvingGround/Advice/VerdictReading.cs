using FarmEconomics.Budgets;
using FarmEconomics.Decisions;

namespace FarmEconomics.ProvingGround.Advice;

/// <summary>
/// Reads the program's verdicts as the page on what to drop and grow gives them. The only file that knows how the program words them.
/// </summary>
internal static class VerdictReading
{
    /// <summary>The advice on every crop of the last season, with the program's own thresholds.</summary>
    internal static IReadOnlyList<Advised> Of(FarmReview review)
    {
        Verdicts verdicts = Verdicts.Of(review, SeasonCosts.Of(review.Season(review.LatestCropYear)));
        Dictionary<string, Verdict> byCrop = verdicts.Crops.ToDictionary(verdict => verdict.Budget.Name);
        return [.. verdicts.Crops.Select(verdict => Read(verdict, byCrop))];
    }

    private static Advised Read(Verdict verdict, Dictionary<string, Verdict> byCrop)
    {
        string crop = verdict.Budget.Name;
        Advised advised = verdict.Direction switch
        {
            Direction.DropOrChange when verdict.BetterMix is { } mix => new Advised(crop, Move.Another) { Grown = Feet(mix.Crops) },
            Direction.DropOrChange => new Advised(crop, Move.Drop),
            Direction.Grow when verdict.InPlaceOf.Count > 0 => InPlace(verdict, byCrop),
            Direction.Grow when verdict.More is { } more => new Advised(crop, Move.Grow) { Grown = [(crop, (double)more.BedFeet)] },
            _ => new Advised(crop, Move.None),
        };

        // What a crop does in the beds of others is said with those others, not with it.
        return advised.Move == Move.InPlace ? advised with
        {
            SaidCash = (double)verdict.InPlaceOf.Select(one => one.Crop).Distinct().Sum(one => byCrop[one].Advised.Cash.Amount),
        }
        : advised with
        {
            Said = advised.Move == Move.Drop ? -(double)verdict.Mean.Amount : (double)verdict.Advised.Net.Amount,
            SaidCash = (double)verdict.Advised.Cash.Amount,
        };
    }

    /// <summary>A crop that takes a part of another's beds, beside others that take the rest: that part of the other goes.</summary>
    private static Advised InPlace(Verdict verdict, Dictionary<string, Verdict> byCrop)
    {
        string crop = verdict.Budget.Name;
        return new Advised(crop, Move.InPlace)
        {
            Grown = [(crop, (double)verdict.InPlaceOf.Sum(one => one.BedFeet))],
            Shrunk = [.. verdict.InPlaceOf.Select(one =>
                (one.Crop, (double)(one.BedFeet / byCrop[one.Crop].BetterMix!.Crops.Sum(other => other.BedFeet))))],
        };
    }

    private static (string Crop, double Feet)[] Feet(IEnumerable<(string Crop, decimal BedFeet)> crops) =>
        [.. crops.Select(one => (one.Crop, (double)one.BedFeet))];
}
