using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Tracing;

/// <summary>How long plantings without out_of_bed stood, told by which of them a harvest that names only the crop is split over.</summary>
public class BedStayTests
{
    private static FarmBuilder Farm() => new FarmBuilder().Crop("garlic").Bed("bed").Bed("other").AsOf("2026-12-31");

    private static string Split(FarmBuilder farm, string day = "2025-07-01") =>
        string.Join(", ", farm.PickCrop(day, "garlic", 10).Review().Trace.Lots.Where(lot => lot.Row.Planting is null).Select(lot => $"{lot.Enterprise.Planting.Name} {lot.Quantity:0.##}"));

    [Fact]
    public void NeverPicked_StoodUntilItsBedFeetWereNeeded()
    {
        Assert.Equal("new 10", Split(Farm().Planting("old", "garlic", "bed", 100, "2024-12-01").Planting("new", "garlic", "bed", 100, "2025-04-01")));
        Assert.Equal("new 10", Split(Farm().Planting("old", "garlic", "bed", 70, "2024-12-01").Planting("new", "garlic", "bed", 40, "2025-04-01")));
        Assert.Equal("new 10", Split(Farm().Planting("new", "garlic", "bed", 40, "2025-04-01").Planting("old", "garlic", "bed", 70, "2024-12-01")));
    }

    [Fact]
    public void NeverPicked_StillStandsWhereTheBedHasRoom() => Assert.Equal("old 6, new 4", Split(Farm().Planting("old", "garlic", "bed", 60, "2024-12-01").Planting("new", "garlic", "bed", 40, "2025-04-01")));

    [Fact]
    public void OldestGoesFirst_AndOnlyAsManyAsNeeded() =>
        Assert.Equal("second 6.67, third 3.33", Split(Farm().Planting("second", "garlic", "bed", 60, "2024-12-15").Planting("first", "garlic", "bed", 40, "2024-12-01").Planting("third", "garlic", "bed", 30, "2025-04-01")));

    [Fact]
    public void TwoSetOutTheSameDay_DoNotPushEachOtherOut() => Assert.Equal("a 5, b 5", Split(Farm().Planting("a", "garlic", "bed", 80, "2025-04-01").Planting("b", "garlic", "bed", 80, "2025-04-01")));

    [Fact]
    public void WhatIsWrittenOut_NeedsNoRoomAnyMore()
    {
        // 60 of the bed's 100 are freed on the day the next 60 come: the 40 that were never picked may stay.
        Assert.Equal("old 4, new 6", Split(Farm().Crop("kale").Planting("old", "garlic", "bed", 40, "2025-01-01").Planting("k", "kale", "bed", 60, "2024-05-01", "2025-04-01").Planting("new", "garlic", "bed", 60, "2025-04-01")));
    }

    [Fact]
    public void WhatIsWrittenOut_IsNotPushedOutBefore()
    {
        // Overfull by the records, but the old planting's day is written: it stands until then.
        Assert.Equal("old 5, new 5", Split(Farm().Planting("old", "garlic", "bed", 100, "2024-04-01", "2025-08-01").Planting("new", "garlic", "bed", 100, "2025-04-01")));
    }

    [Fact]
    public void PickedByName_StoodUpToTheLastOfThosePicks()
    {
        static FarmBuilder Named() => Farm().Planting("a", "garlic", "bed", 50, "2025-04-01").Planting("b", "garlic", "other", 50, "2025-04-01").Pick("2025-07-20", "a", 1).Pick("2025-07-05", "a", 1);
        Assert.Equal("a 5, b 5", Split(Named(), "2025-07-10"));
        Assert.Equal("a 5, b 5", Split(Named(), "2025-07-20"));
        Assert.Equal("b 10", Split(Named(), "2025-07-21"));

        // The order of the rows makes no difference.
        Assert.Equal("a 5, b 5", Split(Named().Pick("2025-07-25", "a", 1), "2025-07-25"));
    }

    [Fact]
    public void PickedByName_IsNotPushedOutByNeed() =>
        Assert.Equal("a 5, b 5", Split(Farm().Planting("a", "garlic", "bed", 100, "2025-04-01").Planting("b", "garlic", "bed", 100, "2025-05-01").Pick("2025-07-20", "a", 1)));

    [Fact]
    public void PickedByNameOnItsFirstDay_StoodThatDay()
    {
        static FarmBuilder Named() => Farm().Planting("a", "garlic", "bed", 50, "2025-07-01").Planting("b", "garlic", "other", 50, "2025-06-01").Pick("2025-07-01", "a", 1);
        Assert.Equal("a 5, b 5", Split(Named()));
        Assert.Equal("b 10", Split(Named(), "2025-07-02"));
    }

    [Fact]
    public void BedAddedAfterTheLastPickByName_StillStands() =>
        Assert.Equal("a 5, b 5", Split(Farm().Bed("third").Planting("a", "garlic", "bed", 50, "2025-04-01").Planting("a", "garlic", "third", 50, "2025-08-01").Planting("b", "garlic", "other", 50, "2025-07-01").Pick("2025-07-01", "a", 1), "2025-11-05"));

    [Fact]
    public void Perennial_StandsWhateverWasPickedOrNeeded()
    {
        static FarmBuilder Asparagus() => new FarmBuilder().Crop("garlic", perennial: true).Bed("bed").Bed("other").Planting("old", "garlic", "bed", 100, "2023-04-01").Planting("new", "garlic", "bed", 100, "2024-04-01").AsOf("2026-12-31");
        Assert.Equal("old 5, new 5", Split(Asparagus()));
        Assert.Equal("old 5, new 5", Split(Asparagus().Pick("2024-06-01", "old", 1)));
    }
}
