using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>
/// docs/methods.md 6, an asset that went before its life was over: a washer of 10,000 less a grant of 1,000, worth 1,000 at the end of ten
/// years, four fifths the farm's, in service from April 2020 and gone in October 2025 for 2,000. It served 5.5 years.
/// </summary>
public class EarlyRetirementByHandTests
{
    private static readonly FarmSettings SixPercent = new() { InterestPercent = 6m };

    private static IReadOnlyList<EarlyRetirement> Of(FarmSettings settings, string asOf = "2025-12-31", int year = 2025,
        string retired = "2025-10-05", decimal? soldFor = 2000m, decimal? life = 10m, bool bare = false)
    {
        FarmBuilder farm = new FarmBuilder(settings).AsOf(asOf).Crop("Kale").Pool("wash", "bed-feet");
        return EarlyRetirement.Of(farm.Add<AssetRow>(new RowValues
        {
            ["asset"] = "Washer",
            ["pool"] = "wash",
            ["in_service"] = FarmBuilder.Day("2020-04-10"),
            ["cost"] = 10000m,
            ["grant"] = bare ? null : 1000m,
            ["salvage"] = bare ? null : 1000m,
            ["farm_percent"] = bare ? null : 80m,
            ["life_years"] = life,
            ["retired"] = FarmBuilder.Day(retired),
            ["sold_for"] = soldFor,
        }).Link(), year);
    }

    private static FarmSettings Depreciating => SixPercent with { OwnershipMethod = OwnershipMethod.DepreciationAndInterest };

    /// <summary>
    /// Depreciation: 9,000 - 8,000 x 5.5 / 10 = 4,600 are open, 3,680 of them the farm's; of 2,000 fetched 1,600 are.
    /// </summary>
    [Fact]
    public void Depreciation_LeavesWhatWasNotDepreciated()
    {
        EarlyRetirement washer = Assert.Single(Of(Depreciating));
        Assert.Equal((5.5m, 3680m, 2080m), (washer.YearsServed, washer.Unrecovered.Value, washer.Loss.Value));
    }

    /// <summary>Without grant, salvage and the household's part: 10,000 - 10,000 x 5.5 / 10 = 4,500, less the 2,000 fetched.</summary>
    [Fact]
    public void BlankGrantSalvageAndPart_AreNoneAndTheWhole()
    {
        EarlyRetirement washer = Assert.Single(Of(Depreciating, bare: true));
        Assert.Equal((4500m, 2500m), (washer.Unrecovered.Value, washer.Loss.Value));
    }

    /// <summary>
    /// Capital recovery: the yearly payment on 8,000 over ten years, 8,000 x 0.06 / (1 - 1.06^-10) = 1,086.94, pays for another 4.5 years;
    /// the balance is what those are worth, (1 - 1.06^-4.5) / 0.06 of them, and the salvage of 1,000. Four fifths of it are the farm's.
    /// </summary>
    [Fact]
    public void CapitalRecovery_LeavesTheBalanceOfItsPayments()
    {
        double payment = 8000 * 0.06 / (1 - Math.Pow(1.06, -10));
        Assert.Equal(1086.94, payment, 0.005);
        double open = 0.8 * ((payment * (1 - Math.Pow(1.06, -4.5)) / 0.06) + 1000);
        EarlyRetirement washer = Assert.Single(Of(SixPercent));
        Assert.Equal(Math.Round(open, 2), (double)washer.Unrecovered.Value!.Value, 1e-9);
        Assert.Equal(Math.Round(open, 2) - 1600, (double)washer.Loss.Value!.Value, 1e-9);
    }

    [Fact]
    public void WhatIsNotKnown_SaysWhy()
    {
        EarlyRetirement unsold = Assert.Single(Of(Depreciating, soldFor: null));
        Assert.Equal((3680m, false), (unsold.Unrecovered.Value, unsold.Loss.IsAvailable));
        Assert.Contains("sold_for", unsold.Loss.Reason, StringComparison.Ordinal);
        EarlyRetirement rateless = Assert.Single(Of(new FarmSettings()));
        Assert.Contains("interest_percent", rateless.Unrecovered.Reason, StringComparison.Ordinal);
        Assert.Equal(rateless.Unrecovered, rateless.Loss);
    }

    /// <summary>A life of 5.5 years is over in October 2025, one of 5 was; of 6 half a year is left.</summary>
    [Theory]
    [InlineData(5.0, 0)]
    [InlineData(5.5, 0)]
    [InlineData(6.0, 1)]
    public void LifeThatIsOver_LeavesNothing(double life, int left) => Assert.Equal(left, Of(Depreciating, life: (decimal)life).Count);

    /// <summary>It counts in the crop year of its day, from the closing date on.</summary>
    [Theory]
    [InlineData("2025-10-05", 2025, 1)]
    [InlineData("2025-10-04", 2025, 0)]
    [InlineData("2025-12-31", 2025, 1)]
    [InlineData("2025-12-31", 2024, 0)]
    [InlineData("2026-12-31", 2026, 0)]
    public void Retirement_IsOfItsYearAndUpToTheClosingDate(string asOf, int year, int told) =>
        Assert.Equal(told, Of(Depreciating, asOf, year).Count);
}
