using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>
/// docs/methods.md 1 and 2, harvests that name only their crop at the edges of the rules: 10 lb of garlic, split by bed-feet over the
/// plantings that can have given them. The days are ours, without a source.
/// </summary>
public class CropHarvestEdgeTests
{
    private static FarmBuilder Farm() => new FarmBuilder().Crop("garlic").Bed("bed", 1000).AsOf("2026-12-31");

    private static string Split(FarmBuilder farm, string day) => Split(farm, day, out _);

    private static string Split(FarmBuilder farm, string day, out IReadOnlyList<Problem> problems)
    {
        FarmTrace trace = farm.PickCrop(day, "garlic", 10).Review().Trace;
        problems = trace.Problems;
        return string.Join(", ", trace.Lots.Where(lot => lot.Row.Planting is null)
            .Select(lot => $"{lot.Enterprise.Planting.Name} {lot.Quantity:0.##}"));
    }

    [Fact]
    public void PickedTheDayItCameIn_WhereNothingElseEverStood_IsOfThatPlanting()
    {
        Assert.Equal("a 10", Split(Farm().Planting("a", "garlic", "bed", 10, "2024-04-01", "2024-09-01"), "2024-04-01", out var problems));
        Assert.Contains(problems, problem => problem.Code == "W417");
    }

    /// <summary>
    /// The only planting picked by name waited 99 days and is out of its bed the day after. That day another stands, 9 days old: too young,
    /// and the first left its bed that very day.
    /// </summary>
    [Fact]
    public void PickedTheDayTheBedWasFree_IsOfThePlantingThatLeft()
    {
        FarmBuilder farm = Farm().Planting("a", "garlic", "bed", 10, "2024-04-01").Pick("2024-07-09", "a", 1)
            .Planting("b", "garlic", "bed", 10, "2024-07-01", "2024-08-01");
        Assert.Equal("a 10", Split(farm, "2024-07-10", out IReadOnlyList<Problem> problems));
        Problem told = Assert.Single(problems, problem => problem.Code == "W417");
        Assert.Contains("counted to a, which left its bed last before, on 2024-07-10", told.Message, StringComparison.Ordinal);
    }

    /// <summary>A stay of 80 days lets a planting give for 160 after it left; but it left in December, and a young one stands.</summary>
    [Fact]
    public void YoungPlanting_GoesBeforeOneThatLeftInAnEarlierCropYear()
    {
        static FarmBuilder Two(string left) => Farm().Planting("a", "garlic", "bed", 10, "2023-10-01", left)
            .Planting("b", "garlic", "bed", 10, "2024-01-05");
        Assert.Equal("b 10", Split(Two("2023-12-20"), "2024-01-10"));
        Assert.Equal("a 10", Split(Two("2024-01-02"), "2024-01-10"));
    }

    /// <summary>Volunteers in May, 284 days after last year's crop: stays of 50, 31 and 50 days allow 100.</summary>
    [Fact]
    public void Volunteers_AreOfTheNextPlantingNotOfALaterOne() => Assert.Equal("next 10", Split(
        Farm().Planting("later", "garlic", "bed", 10, "2025-07-01", "2025-08-01")
            .Planting("next", "garlic", "bed", 10, "2025-06-01", "2025-07-21")
            .Planting("last", "garlic", "bed", 10, "2024-06-01", "2024-07-21"),
        "2025-05-01"));

    [Fact]
    public void HarvestNothingCanHaveGiven_NamesThePlantingThatLeftLast()
    {
        FarmBuilder farm = Farm().Planting("first", "garlic", "bed", 10, "2024-03-01", "2024-04-20")
            .Planting("second", "garlic", "bed", 10, "2024-06-01", "2024-07-21").PickCrop("2025-05-01", "garlic", 1);
        Problem told = Assert.Single(Assert.Throws<RecordsException>(() => farm.Review()).Problems);
        Assert.Contains("second, left its bed on 2024-07-21, more than 100 days before", told.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// c was picked by name the day it came in: least days are 0. On the one day a had its bed, its 30 feet count beside b's 20.
    /// </summary>
    [Fact]
    public void BedTakenForOneDay_CountsOnThatDay()
    {
        static FarmBuilder Three() => Farm().Planting("a", "garlic", "bed", 30, "2024-07-10", "2024-07-10")
            .Planting("b", "garlic", "bed", 20, "2024-06-01", "2024-08-01")
            .Planting("c", "garlic", "bed", 10, "2024-05-01", "2024-06-01").Pick("2024-05-01", "c", 1);
        Assert.Equal("a 6, b 4", Split(Three(), "2024-07-10"));
        Assert.Equal("b 10", Split(Three(), "2024-07-09"));
        Assert.Equal("b 10", Split(Three(), "2024-07-11"));
    }

    /// <summary>Stays of 50 days: one without an end, never picked, is taken to have stood 100 days, to 9 July.</summary>
    [Fact]
    public void NeverPicked_GivesNothingAfterItsCropsLongestStay()
    {
        static FarmBuilder Failed() => Farm().Planting("old", "garlic", "bed", 10, "2023-04-01", "2023-05-21")
            .Planting("failed", "garlic", "bed", 10, "2024-04-01").Planting("b", "garlic", "bed", 10, "2024-06-15", "2024-08-04");
        Assert.Equal("failed 5, b 5", Split(Failed(), "2024-07-09"));
        Assert.Equal("b 10", Split(Failed(), "2024-07-10"));
    }
}
