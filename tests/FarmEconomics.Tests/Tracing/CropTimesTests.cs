using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>docs/methods.md 1 and 2: a crop's least days and longest stay, and the days of a perennial, worked out by hand.</summary>
public class CropTimesTests
{
    private static FarmBuilder Farm(bool perennial = false) =>
        new FarmBuilder().Crop("garlic", perennial: perennial).Bed("bed", 1000).AsOf("2026-12-31");

    /// <summary>What of 10 lb that name only garlic goes to a second planting as long as the first, set out on 1 June.</summary>
    private static decimal OfYoung(FarmBuilder farm, string day) => farm
        .Planting("young", "garlic", "bed", 20, "2024-06-01", "2024-09-01").PickCrop(day, "garlic", 10).Review()
        .Trace.Lots.Where(lot => lot.Enterprise.Planting.Name == "young").Sum(lot => lot.Quantity);

    /// <summary>
    /// Set out on 1 April and picked by name on 11, 21 and 31 May: 40 days from bed to first picking, whatever row stands first.
    /// </summary>
    [Theory]
    [InlineData("2024-05-31", "2024-05-11", "2024-05-21")]
    [InlineData("2024-05-11", "2024-05-31", "2024-05-21")]
    [InlineData("2024-05-21", "2024-05-31", "2024-05-11")]
    public void LeastDays_AreToTheFirstPickingNotTheFirstRow(string first, string second, string third)
    {
        FarmBuilder Picked() => Farm().Planting("a", "garlic", "bed", 20, "2024-04-01", "2024-09-01")
            .Pick(first, "a", 1).Pick(second, "a", 1).Pick(third, "a", 1);
        Assert.Equal(0m, OfYoung(Picked(), "2024-07-10"));
        Assert.Equal(5m, OfYoung(Picked(), "2024-07-11"));
    }

    /// <summary>Half of it followed on 21 April: from the first day in a bed it is 40 days all the same.</summary>
    [Fact]
    public void LeastDays_CountFromTheFirstOfAPlantingsBeds()
    {
        static FarmBuilder Picked() => Farm().Planting("a", "garlic", "bed", 10, "2024-04-21", "2024-09-01")
            .Planting("a", "garlic", "bed", 10, "2024-04-01", "2024-09-01").Pick("2024-05-11", "a", 1);
        Assert.Equal(0m, OfYoung(Picked(), "2024-07-10"));
        Assert.Equal(5m, OfYoung(Picked(), "2024-07-11"));
    }

    private static decimal DaysOfFailed(FarmBuilder farm) => farm.Planting("failed", "garlic", "bed", 1, "2025-05-01").Review().Trace
        .Enterprises.Single(enterprise => enterprise.Planting.Name == "failed").BedFootDays.Value;

    /// <summary>In its bed from 1 April to 10 July, 100 days, though last picked on 20 May: one that failed stands twice that.</summary>
    [Fact]
    public void LongestStay_RestsOnTheWrittenEndWhereThereIsOne() => Assert.Equal(
        200m, DaysOfFailed(Farm().Planting("a", "garlic", "bed", 10, "2024-04-01", "2024-07-10").Pick("2024-05-20", "a", 1)));

    /// <summary>Without a written end the bed is free the day after the last picking, 10 June: 70 days, twice that is 140.</summary>
    [Fact]
    public void LongestStay_ElseRestsOnTheLastPickByName() => Assert.Equal(
        140m, DaysOfFailed(Farm().Planting("a", "garlic", "bed", 10, "2024-04-01").Pick("2024-06-09", "a", 1).Pick("2024-05-01", "a", 1)));

    /// <summary>
    /// Ten feet from 1 November 2024 to 1 March 2026: 61 days of the first crop year, all 365 of the next, 59 of the last.
    /// </summary>
    [Fact]
    public void Perennial_HoldsItsBedInEachCropYearForTheDaysInside() => Assert.Equal(
        [(2024, 610m), (2025, 3650m), (2026, 590m)],
        Farm(perennial: true).Planting("p", "garlic", "bed", 10, "2024-11-01", "2026-03-01").Review().Trace
            .Enterprises.Select(enterprise => (enterprise.CropYear, enterprise.BedFootDays.Value)));
}
