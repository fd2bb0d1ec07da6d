using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Tests.DemoFarm;

namespace FarmEconomics.Tests.Reports;

/// <summary>The committed demo farm, opened once for all tests of the reports.</summary>
internal static class DemoSeason
{
    private static readonly Lazy<FarmFolder> Opened = new(() => FarmFolder.Open(PlainCsv.Folder()));

    internal static FarmFolder Farm => Opened.Value;

    internal static FarmReview Review => Farm.Review!;

    internal static SeasonReview Latest => Review.Season(Review.LatestCropYear);
}
