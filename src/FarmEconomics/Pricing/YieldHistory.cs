using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Pricing;

/// <summary>
/// A crop's yields per bed-foot over the years, to tell a failed one from a normal one. Normal is the median of the crop's own yields in
/// the crop years that are over at the closing date and the year looked at, where there was a harvest.
/// </summary>
/// <param name="CropYear">The year looked at.</param>
/// <param name="ByYear">Picked per bed-foot, in the crop's unit, year by year.</param>
/// <param name="FailedBelowPercent">A yield under this percent of normal counts as failed.</param>
public sealed record YieldHistory(int CropYear, IReadOnlyList<(int Year, decimal PerBedFoot)> ByYear, decimal FailedBelowPercent)
{
    /// <summary>The year's own yield per bed-foot.</summary>
    public Result Yield => ByYear.Any(item => item.Year == CropYear)
        ? Result.Known(ByYear.First(item => item.Year == CropYear).PerBedFoot)
        : Result.NotAvailable($"no harvest in {CropYear}");

    /// <summary>The median over the years.</summary>
    public Result Normal => ByYear.Count < 2
        ? Result.NotAvailable("only one year of harvests: no normal yield to compare with")
        : Result.Known(Numbers.Median(ByYear.Select(item => item.PerBedFoot)));

    /// <summary>True when the yield was under the percent of normal; false when it wasn't or can't be told.</summary>
    public bool Failed => Yield.Value is { } yield && Normal.Value is { } normal && yield < normal * FailedBelowPercent / 100m;

    /// <summary>Normal yield over the year's yield; 1 when it can't be told.</summary>
    public decimal NormalFactor => Yield.Value is > 0m and { } yield && Normal.Value is { } normal ? normal / yield : 1m;

    internal static YieldHistory Of(FarmReview review, Crop crop, int year, decimal failedBelowPercent)
    {
        List<(int, decimal)> years = review.Trace.Enterprises
            .Where(enterprise => enterprise.Crop == crop)
            .GroupBy(enterprise => enterprise.CropYear)
            .Where(group => group.Key == year || review.Records.Settings.EndOf(group.Key) <= review.Records.AsOf.AddDays(1))
            .Select(group => (group.Key, Picked: group.Sum(item => item.Harvested), Feet: group.Sum(item => item.BedFeet.Value)))
            .Where(item => item.Picked > 0m && item.Feet > 0m)
            .OrderBy(item => item.Key)
            .Select(item => (item.Key, item.Picked / item.Feet))
            .ToList();
        return new YieldHistory(year, years, failedBelowPercent);
    }
}
