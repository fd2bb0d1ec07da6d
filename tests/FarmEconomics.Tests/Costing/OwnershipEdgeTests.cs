using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>Ownership cost at its edges: long lives to the last digit, parts of a year, after the life, wrong arguments.</summary>
public class OwnershipEdgeTests
{
    private static readonly FarmSettings Six = new() { InterestPercent = 6m };

    private static AssetRow Asset(string inService = "2025-01-01", decimal life = 10) => new FarmBuilder().Asset("cooler", "room", inService, 1000, life, 100, repairs: 2, insuranceTax: 1).Tables.Assets[0];

    [Fact]
    public void CapitalRecoveryFactor_OfWholeYears_IsExact() =>
        // 1.06 multiplied ten times by hand: 1.79084769654285362176; i x g / (g - 1).
        Close.To(0.06m * 1.79084769654285362176m / 0.79084769654285362176m, Ownership.CapitalRecoveryFactor(0.06m, 10m), 0.00000000000000000001m);

    [Fact]
    public void CapitalRecoveryFactor_OfSevenAndAHalfYears_FollowsTheRoot() =>
        // 1.06^7.5 is the root of 1.06^15 = 2.39655819309969: 1.548082101537154; 0.06 / (1 - 1 / 1.548082101537154).
        Close.To(0.06m / (1m - (1m / 1.548082101537154m)), Ownership.CapitalRecoveryFactor(0.06m, 7.5m), 0.000000000001m);

    [Fact]
    public void CapitalRecoveryFactor_OfWrongArguments_IsRefused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Ownership.CapitalRecoveryFactor(-0.01m, 10m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Ownership.CapitalRecoveryFactor(0.05m, 0m));
        Assert.Throws<ArgumentOutOfRangeException>(() => Ownership.CapitalRecoveryFactor(0.05m, -1m));
    }

    [Fact]
    public void AfterItsLife_RepairsAndInsuranceGoOnButNoCapital() =>
        Assert.Equal([("repairs", 20m), ("insurance and tax", 10m)], Ownership.Of(Asset("2010-01-01"), 2025, Six).Select(part => (part.Part, part.Farm.Amount)));

    [Fact]
    public void InTheYearItsLifeEnds_CapitalCountsByMonthAndTheRestForTheYear()
    {
        // In service from April 2015 for 10 years: 3 months of 2025. Without interest 900 / 10 x 3 / 12 = 22.50.
        IReadOnlyList<OwnershipPart> parts = Ownership.Of(Asset("2015-04-01"), 2025, Six with { InterestPercent = 0m });
        Assert.Equal([(22.50m, 3), (20m, 12), (10m, 12)], parts.Select(part => (part.Farm.Amount, part.Months)));
    }

    [Fact]
    public void LifeOfHalfAMonthMore_IsRoundedUp() => // 0.375 years are 4.5 months
        Assert.Equal(5, Ownership.MonthsInService(Asset(life: 0.375m), 2025, Six, withinLife: true));

    /// <summary>
    /// 900 over 7.5 years at 6% is 900 x 0.06 / (1 - 1 / 1.548082101537154) = 152.53 a year, and 6 on the salvage of 100; without interest
    /// 900 / 7.5 = 120.
    /// </summary>
    [Theory]
    [InlineData(6, 158.53)]
    [InlineData(0, 120.00)]
    public void LifeOfSevenAndAHalfYears_IsRecoveredInThem(int percent, double yearly) =>
        Assert.Equal((decimal)yearly, Ownership.Of(Asset(life: 7.5m), 2025, Six with { InterestPercent = percent })[0].Farm.Amount);

    /// <summary>A month counts from its first day on: a closing date on the year's first day is in its first month.</summary>
    [Theory]
    [InlineData("2024-12-31", 0)]
    [InlineData("2025-01-01", 1)]
    [InlineData("2025-12-31", 12)]
    public void MonthsPassed_BeginWithTheFirstDay(string closing, int months) =>
        Assert.Equal(months, Ownership.MonthsPassed(2025, Six, FarmBuilder.Day(closing)));

    /// <summary>What comes into service on the closing date stands that month; what comes the day after doesn't.</summary>
    [Theory]
    [InlineData("2025-06-15", 1)]
    [InlineData("2025-06-16", 0)]
    public void MonthsStanding_CountTheMonthOfTheClosingDate(string inService, int months) =>
        Assert.Equal(months, Ownership.MonthsStanding([Asset(inService)], 2025, Six, FarmBuilder.Day("2025-06-15")));

    [Fact]
    public void Nothing_IsRefused()
    {
        Assert.Throws<ArgumentNullException>(() => Ownership.Of(Asset(), 2025, null!));
        Assert.Throws<ArgumentNullException>(() => Ownership.MonthsInService(Asset(), 2025, null!, withinLife: true));
    }
}
