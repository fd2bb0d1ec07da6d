using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>docs/methods.md 6, ownership cost.</summary>
public class OwnershipTests
{
    private static readonly FarmSettings Six = new() { InterestPercent = 6m };

    private static AssetRow Asset(string inService = "2025-01-01", decimal life = 10, string? retired = null, decimal? farm = null, decimal? grant = null) =>
        new FarmBuilder().Asset("cooler", "room", inService, 1000, life, 100, farm, grant, 2, 1, retired).Tables.Assets[0];

    [Theory]
    [InlineData(0, 8, 0.125)]
    [InlineData(0.06, 1, 1.06)]
    public void CapitalRecoveryFactor_ByDefinition(double rate, double years, double factor) =>
        Close.To((decimal)factor, Ownership.CapitalRecoveryFactor((decimal)rate, (decimal)years), 0.0000000000001m);

    [Fact]
    public void CapitalRecoveryFactor_PartsOfAYear_LieBetweenTheWholeYears()
    {
        decimal factor = Ownership.CapitalRecoveryFactor(0.06m, 7.5m);
        Assert.InRange(factor, Ownership.CapitalRecoveryFactor(0.06m, 8m), Ownership.CapitalRecoveryFactor(0.06m, 7m));
    }

    [Fact]
    public void CapitalRecoveryFactor_OfAVeryLongLife_IsTheInterest()
    {
        Close.To(0.1m, Ownership.CapitalRecoveryFactor(0.1m, 999m), 0.0000000001m);
        Close.To(0.1m, Ownership.CapitalRecoveryFactor(0.1m, 999.5m), 0.0000000001m);
    }

    [Fact]
    public void CapitalRecovery_SalvageAndGrant()
    {
        // (1000 - 200 - 100) x CRF(6 %, 10) + 100 x 6 %: 700 x 0.13586796 + 6
        Assert.Equal(101.11m, Ownership.Of(Asset(grant: 200), 2025, Six)[0].Farm.Amount);
        Assert.Equal([20m, 10m], Ownership.Of(Asset(grant: 200), 2025, Six).Skip(1).Select(part => part.Farm.Amount));
    }

    [Fact]
    public void DepreciationAndInterest_SalvageAndGrant()
    {
        IReadOnlyList<OwnershipPart> parts = Ownership.Of(Asset(grant: 200), 2025, Six with { OwnershipMethod = OwnershipMethod.DepreciationAndInterest });
        Assert.Equal([70m, 27m, 20m, 10m], parts.Select(part => part.Farm.Amount)); // (800 - 100) / 10; 6 % of (800 + 100) / 2
    }

    [Theory]
    [InlineData("2025-01-31", null, 12, 12)]
    [InlineData("2025-04-30", null, 9, 9)]
    [InlineData("2020-04-01", "2025-04-30", 3, 3)]
    [InlineData("2025-04-01", "2025-04-30", 0, 0)]
    [InlineData("2015-04-01", null, 3, 12)] // its life ends with March 2025; percents go on in service
    [InlineData("2010-01-01", null, 0, 12)]
    [InlineData("2026-01-01", null, 0, 0)]
    public void Months_InServiceAndWithinLife(string inService, string? retired, int life, int service)
    {
        AssetRow asset = Asset(inService, 10, retired);
        Assert.Equal(life, Ownership.MonthsInService(asset, 2025, Six, withinLife: true));
        Assert.Equal(service, Ownership.MonthsInService(asset, 2025, Six, withinLife: false));
    }

    [Fact]
    public void Months_OfACropYearFromNovember_CountFromThere() =>
        Assert.Equal(10, Ownership.MonthsInService(Asset("2025-01-10"), 2024, Six with { CropYearStartMonth = 11 }, withinLife: true));

    [Fact]
    public void FarmPercent_SplitsEveryPart()
    {
        OwnershipPart repairs = Ownership.Of(Asset(farm: 33), 2025, Six)[1];
        Assert.Equal((6.60m, 13.40m), (repairs.Farm.Amount, repairs.Household.Amount));
    }

    [Fact]
    public void WithoutInterest_NetReturnIsBeforeOwnershipCost()
    {
        SeasonReview season = new FarmBuilder().Crop("beets").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30").AsOf("2025-12-31").Spend("2025-05-01", 1, "seed")
            .Pool("room", "bed-feet").Asset("cooler", "room", "2025-01-01", 1000, 10, repairs: 2).Season(2025);
        Assert.Equal("net return before ownership cost", season.Known.NetReturnLabel);
        Assert.Contains("W505", season.Codes());
        Assert.False(season.Farm.ReturnToLaborPerHour.IsAvailable);
        Assert.Equal(20m, season.PoolNamed("room").Total.Amount);
        season.AssertProven();
    }

    [Fact]
    public void RepairsInPercentBesideTheBooks_AreWarnedOf()
    {
        FarmBuilder farm = new FarmBuilder(Six).Crop("beets").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30").Pool("room", "bed-feet").Asset("cooler", "room", "2025-01-01", 1000, 10, repairs: 2);
        Assert.DoesNotContain("W507", farm.Spend("2025-05-01", 5, "repairs").Season(2025).Codes());
        Assert.Contains("W507", farm.Spend("2025-05-01", 5, "repairs", pool: "room").Season(2025).Codes());
    }

    [Fact]
    public void Household_PartOfAnAsset_StaysInTheProof()
    {
        SeasonReview season = new FarmBuilder(Six).Crop("beets").Bed("bed").Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30").Pool("room", "bed-feet")
            .Asset("cooler", "room", "2025-01-01", 1234.56m, 7, 11.11m, 66.6m, 99.99m, 1.5m, 0.7m).Season(2025);
        Assert.True(season.UnallocatedTotal(Unallocated.Household) > 0m);
        season.AssertProven();
    }
}
