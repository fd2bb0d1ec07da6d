using FarmEconomics.Budgets;
using FarmEconomics.Files;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.House;
using Xunit;

namespace FarmEconomics.WholeWay.Tests.Demo;

/// <summary>The demo farm through the engine: nothing lost in any year, and real decisions to make.</summary>
public class DemoSeasonTests
{
    private static readonly Lazy<FarmReview> Demo = new(() =>
    {
        FarmFolder folder = FarmFolder.Open(Path.Combine(Repository.Root, "demo-data"));
        Assert.DoesNotContain(folder.Problems, problem => problem.Severity == Severity.Error);
        return folder.Review!;
    });

    [Fact]
    public void EveryCropYear_EveryReconciliation_IsExact()
    {
        Assert.True(Demo.Value.CropYears.Count >= 3);
        foreach (int year in Demo.Value.Charges.Years)
        {
            SeasonReview season = Demo.Value.Season(year);
            season.AssertProven();
            Assert.All(season.Reconciliation.Where(check => check.Check.StartsWith("pool", StringComparison.Ordinal) || check.Check.StartsWith("books", StringComparison.Ordinal)),
                check => Assert.Equal(check.Left, check.Right));
        }
    }

    [Fact]
    public void LatestSeason_CropsChangePlacesBetweenBedFootWeekAndHour()
    {
        List<EnterpriseBudget> crops = Demo.Value.Season(Demo.Value.LatestCropYear).Crops.Where(crop => crop.GrossMarginPerLaborHour.IsAvailable && crop.Sums.Sold > 0m).ToList();
        int reversals = crops.Sum(a => crops.Count(b => a.GrossMarginPerBedFootWeek.Value > b.GrossMarginPerBedFootWeek.Value && a.GrossMarginPerLaborHour.Value < b.GrossMarginPerLaborHour.Value));
        Assert.True(reversals >= crops.Count, $"{reversals} pairs of {crops.Count} crops change places");
    }

    [Fact]
    public void LatestSeason_SomeCropsEarnAndSomeLose()
    {
        SeasonReview season = Demo.Value.Season(Demo.Value.LatestCropYear);
        Assert.Contains(season.Crops, crop => crop.Sums.Sold > 0m && crop.NetReturn.Amount < 0m);
        Assert.Contains(season.Crops, crop => crop.NetReturn.Amount > 0m);
    }
}
