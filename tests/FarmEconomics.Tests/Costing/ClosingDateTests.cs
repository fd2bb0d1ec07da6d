using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>docs/methods.md 6 and 7: nothing after the closing date is charged, and capacity counts the months its assets stood.</summary>
public class ClosingDateTests
{
    private static FarmBuilder Farm(string closing) => new FarmBuilder(new FarmSettings { InterestPercent = 0m, OwnerWage = 10m }).Crop("beets").Bed("bed")
        .Planting("b", "beets", "bed", 10, "2025-03-01", "2025-09-01").Pool("shed", "measured", capacity: 1200).Use("shed", "beets", 100).AsOf(closing);

    [Theory]
    [InlineData("2025-12-01", 120, null)]
    [InlineData("2025-11-30", 110, 11)]
    [InlineData("2025-06-01", 60, 6)]
    [InlineData("2026-01-01", 120, null)]
    public void YearlyCost_ToTheClosingDate_CountsTheMonthsBegun(string closing, int cost, int? months)
    {
        SeasonReview season = Farm(closing).Asset("shed", "shed", "2020-01-01", 1200, 10).Season(2025);
        Assert.Equal(cost, season.PoolNamed("shed").Ownership.Amount);
        Assert.Equal(months is not null, season.Codes().Contains("W513"));
        Assert.All(season.Problems.Where(problem => problem.Code == "W513"), problem => Assert.Contains($"{months} of 12 months", problem.Message, StringComparison.Ordinal));
        season.AssertProven();
    }

    [Theory]
    [InlineData("2025-06-15", 10)]
    [InlineData("2025-06-16", 0)]
    [InlineData("2025-08-01", 0)]
    public void Asset_PutIntoServiceAfterTheClosingDate_IsNotCharged(string inService, int cost)
    {
        SeasonReview season = Farm("2025-06-15").Asset("shed", "shed", inService, 1200, 10).Season(2025);
        Assert.Equal(cost, season.PoolNamed("shed").Ownership.Amount);
        season.AssertProven();
    }

    [Fact]
    public void CropYear_AfterTheClosingDate_CarriesNoYearlyCost()
    {
        SeasonReview season = Farm("2025-06-15").Planting("next", "beets", "bed", 10, "2025-06-01", cropYear: 2026).Asset("shed", "shed", "2020-01-01", 1200, 10).Season(2026);
        Assert.Equal(0m, season.PoolNamed("shed").Ownership.Amount);
        season.AssertProven();
    }

    [Fact]
    public void Load_AfterTheClosingDate_IsNoUse()
    {
        SeasonReview season = Farm("2025-06-10").Pool("power", "measured").Load("fan", "power", "beets", 1000, 1, "2025-06-01", "2025-06-30").Load("later", "power", "household", 1000, 1, "2025-07-01", "2025-07-30").Season(2025);
        Assert.Equal((10m, 0m), (season.PoolNamed("power").Users.Total, season.PoolNamed("power").Users.Household));
    }

    [Theory]
    [InlineData("2020-01-01", null, 1200)]
    [InlineData("2025-10-20", null, 300)]
    [InlineData("2020-01-01", "2025-03-05", 200)]
    public void Capacity_IsThatOfTheMonthsItsAssetsStood(string inService, string? retired, int capacity)
    {
        SeasonReview season = Farm("2025-12-31").Asset("shed", "shed", inService, 1200, 10, retired: retired).Season(2025);
        int pool = season.PoolNamed("shed").Pool.Index;
        Assert.Equal(capacity, season.Network.Capacity[pool]);
        Assert.Equal(100m / capacity, season.Network.UsedFactor[pool]);
        season.AssertProven();
    }

    [Fact]
    public void Capacity_OfSeveralAssets_CountsAMonthOnceAndOnlyThoseBegun()
    {
        FarmBuilder farm = Farm("2025-06-10").Asset("old", "shed", "2020-01-01", 1200, 10, retired: "2025-03-01").Asset("new", "shed", "2025-02-01", 1200, 10).Asset("ordered", "shed", "2025-06-20", 1200, 10);
        Assert.Equal(600m, farm.Season(2025).Network.Capacity[farm.Season(2025).PoolNamed("shed").Pool.Index]);
        FarmBuilder none = Farm("2025-06-10");
        Assert.Equal(600m, none.Season(2025).Network.Capacity[none.Season(2025).PoolNamed("shed").Pool.Index]);
    }
}
