using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Costing;

/// <summary>docs/methods.md 7, crate-days: who stands how long in which store.</summary>
public class CrateDaysTests
{
    // 2 crates of beets held to the closing date 10 days after the pick, 1 crate of kale that keeps 5 days.
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { InterestPercent = 0m }).Crop("beets", perCrate: 10, storageDays: null).Crop("kale", perCrate: 10, storageDays: 5).Bed("bed").Channel("market", ChannelKind.Market)
        .Planting("b", "beets", "bed", 10, "2025-05-01", "2025-06-30").Planting("k", "kale", "bed", 30, "2025-05-01", "2025-06-30").Pick("2025-06-01", "b", 20).Pick("2025-06-01", "k", 10).AsOf("2025-06-11");

    private static SeasonReview Shared(FarmBuilder farm) => farm.Spend("2025-06-01", 100, "repairs", pool: "cooler").Season(2025);

    private static decimal[] Charged(SeasonReview season) => [.. season.Plantings.Select(budget => season.PoolNamed("cooler").Charged(budget.Name))];

    [Fact]
    public void WhatNeverLeft_CountsToTheClosingDateOrAsLongAsItKeeps()
    {
        SeasonReview season = Shared(Farm().Pool("cooler", "crate-days"));
        Assert.Equal([80m, 20m], Charged(season)); // 2 x 10 and 1 x 5
        Assert.DoesNotContain("W503", season.Codes());
    }

    [Fact]
    public void PartsThatLeft_CountToTheirDayAndTheRestAfterwards()
    {
        // beets: 1 crate 4 days, 1 crate 10 days = 14; kale: half a crate 2 days, half a crate 5 days = 3.5
        SeasonReview season = Shared(Farm().Pool("cooler", "crate-days").Sell("2025-06-05", "beets", "market", 10, 1).Sell("2025-06-03", "kale", "market", 5, 1));
        Assert.Equal([80m, 20m], Charged(season));
    }

    [Fact]
    public void SoldOnTheDayOfThePick_NeedsNoStore()
    {
        SeasonReview season = Shared(Farm().Crop("chard", perCrate: 10, store: "cooler", storageDays: 5).Pool("cooler", "crate-days").Pool("cellar", "crate-days").Planting("c", "chard", "bed", 10, "2025-05-01", "2025-06-30").Pick("2025-06-01", "c", 10)
            .Sell("2025-06-01", "beets", "market", 20, 1).Sell("2025-06-01", "kale", "market", 10, 1));
        Assert.Equal([0m, 0m, 100m], Charged(season));
        Assert.DoesNotContain("W503", season.Codes());
    }

    [Fact]
    public void BlankStoreAmongSeveral_CarriesNothingAndIsToldOncePerCropAndPool()
    {
        SeasonReview season = Shared(Farm().Crop("chard", perCrate: 10, store: "COOLER", storageDays: 5).Pool("cooler", "crate-days").Pool("cellar", "crate-days").Planting("c", "chard", "bed", 10, "2025-05-01", "2025-06-30").Pick("2025-06-01", "c", 10).Pick("2025-06-02", "b", 20));
        Assert.Equal([0m, 0m, 100m], Charged(season));
        Assert.Equal(["crops.csv:2", "crops.csv:3"], season.Problems.Where(problem => problem.Code == "W503").Select(problem => problem.Source.ToString()));
    }

    [Fact]
    public void StoreNamedTwice_CountsByItsPart()
    {
        // chard: two of three places are the cooler: 2/3 of 15 crate-days beside 10 of spinach
        SeasonReview season = Shared(Farm().Crop("chard", perCrate: 10, store: "cooler; cellar; cooler", storageDays: 5).Crop("spinach", perCrate: 10, store: "cooler", storageDays: 10).Pool("cooler", "crate-days").Pool("cellar", "crate-days")
            .Planting("c", "chard", "bed", 10, "2025-05-01", "2025-06-30").Planting("s", "spinach", "bed", 10, "2025-05-01", "2025-06-30").Pick("2025-06-01", "c", 30).Pick("2025-06-01", "s", 10));
        Assert.Equal([0m, 0m, 50m, 50m], Charged(season));
    }
}
