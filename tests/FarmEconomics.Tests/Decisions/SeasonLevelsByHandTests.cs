using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions;

/// <summary>An earlier season at today's level where lists, wages and boxes differ (docs/methods.md, section 17), on paper.</summary>
public class SeasonLevelsByHandTests
{
    private static FarmBuilder Base() =>
        new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m, PriceChangePercent = 10m })
            .AsOf("2025-12-31").Bed("One", 300m).Channel("stall", ChannelKind.Market, fee: 10m).Channel("shop", ChannelKind.Wholesale)
            .Channel("table", ChannelKind.Household, valuesFrom: "stall").Channel("heap", ChannelKind.Waste)
            .Worker("me", WorkerKind.Owner, 10m).Worker("me", WorkerKind.Owner, 18m, from: "2025-01-01")
            .Worker("Bo", WorkerKind.Hired, 15m).Worker("Bo", WorkerKind.Hired, 20m, from: "2025-01-01");

    private static decimal Before(FarmBuilder farm, string crop = "Kale", VerdictSettings? settings = null)
    {
        FarmReview review = farm.Review();
        Verdicts verdicts = Verdicts.Of(review, SeasonCosts.Of(review.Season(2025)), settings);
        return verdicts.Crops.Single(verdict => verdict.Budget.Name == crop).Seasons.Single(season => season.CropYear == 2024)
            .Contribution.Amount;
    }

    /// <summary>
    /// Kale, 100 feet both years. List at the stall 2, from 2025 3, from September 5: on July 1 it rose by 1.5. Beets 1 and 2: the farm's
    /// rise is (100 x 2 x 1.5 + 40 x 1 x 2) / 240 = 380 / 240.
    /// </summary>
    private static FarmBuilder Farm() => Base().Crop("Kale", storageDays: 900m).Crop("Beets")
        .Price("Kale", 2m, "stall", from: "2024-01-01").Price("Kale", 3m, "stall", from: "2025-01-01")
        .Price("Kale", 5m, "stall", from: "2025-09-01")
        .Price("Beets", 1m, "stall", from: "2024-01-01").Price("Beets", 2m, "stall", from: "2025-01-01")
        .Planting("K24", "Kale", "One", 100m, "2024-05-01", "2024-08-01").Pick("2024-07-01", "K24", 140m)
        .Sell("2024-07-01", "Kale", "stall", 100m, price: 2m)
        .Planting("B24", "Beets", "One", 100m, "2024-05-01", "2024-08-01").Pick("2024-07-01", "B24", 40m)
        .Sell("2024-07-01", "Beets", "stall", 40m, price: 1m)
        .Spend("2024-05-01", 30m, "seed", planting: "K24")
        .Work("2024-07-01", "Bo", 5m, "harvest", planting: "K24").Work("2024-07-01", "me", 2m, "harvest", planting: "K24")
        .Planting("K25", "Kale", "One", 100m, "2025-05-01", "2025-08-01").Pick("2025-07-01", "K25", 60m)
        .Sell("2025-07-01", "Kale", "stall", 60m, price: 3m, planting: "K25").Spend("2025-05-01", 20m, "seed", planting: "K25")
        .Planting("B25", "Beets", "One", 100m, "2025-05-01", "2025-08-01").Pick("2025-07-01", "B25", 40m)
        .Sell("2025-07-01", "Beets", "stall", 40m, price: 2m)
        .Work("2025-07-01", "Bo", 3m, "harvest", planting: "K25").Work("2025-07-01", "me", 1m, "harvest", planting: "K25");

    /// <summary>
    /// 100 lb less the fee: 180 x 1.5. Eaten 10 lb, by the stall's list 20 x 1.5. 20 to the shop for 38, which has no list, by the farm's
    /// rise. 10 on hand still: what was sold brought (200 + 38) / 120 a pound, less the fee of 20 / 120: 218 / 12 = 18.17 by the farm's
    /// rise. Seed 33; 5 hired hours 75 x 20 / 15, 2 own 20 x 18 / 10.
    /// </summary>
    [Fact]
    public void SalesStockAndHours_EachRiseByTheirOwn()
    {
        FarmBuilder farm = Farm().Price("Kale", 2m, "table", from: "2024-01-01").Price("Kale", 9m, "table", from: "2025-01-01")
            .Sell("2024-07-01", "Kale", "table", 10m).Sell("2024-07-02", "Kale", "shop", 20m, amount: 38m);
        decimal farms = ((300m + 80m) / 240m * (38m + 18.17m));
        Close.To(270m + 30m + farms - 33m - 100m - 36m, Before(farm), 0.006m);

        // At a fifth dearer a year instead of the farm's tenth, seed is 36.
        Close.To(270m + 30m + farms - 36m - 100m - 36m, Before(farm, settings: new VerdictSettings { PriceChangePercent = 20m }), 0.006m);
    }

    /// <summary>
    /// Squash of 2024 of which nothing was sold lies in the cellar at the list price of today, 6: 10 lb are 60, and don't rise again.
    /// </summary>
    [Fact]
    public void StockAtTodaysListPrice_DoesntRiseAgain()
    {
        FarmBuilder farm = Farm().Crop("Squash", storageDays: 900m).Price("Squash", 4m, "stall", from: "2024-01-01")
            .Price("Squash", 6m, "stall", from: "2025-01-01")
            .Planting("S24", "Squash", "One", 100m, "2024-05-01", "2024-08-01").Pick("2024-07-01", "S24", 10m)
            .Planting("S25", "Squash", "One", 100m, "2025-05-01", "2025-08-01").Pick("2025-07-01", "S25", 10m)
            .Sell("2025-07-01", "Squash", "stall", 10m, price: 6m, planting: "S25");
        Assert.Equal(60m, Before(farm, "Squash"));
    }

    /// <summary>What was thrown out brought nothing.</summary>
    [Fact]
    public void WhatWasThrownOut_BringsNothing()
    {
        FarmBuilder farm = Farm().Sell("2024-07-01", "Kale", "heap", 40m);
        Assert.Equal(270m - 33m - 100m - 36m, Before(farm));
    }

    /// <summary>Own hours then and none now: nothing tells how they rose, so the 2 hours stay at 20.</summary>
    [Fact]
    public void HoursOfAKindNoLongerWorked_StayAtTheirMoney()
    {
        FarmBuilder farm = Farm().Sell("2024-07-01", "Kale", "heap", 40m)
            .Without<LaborRow>(row => row.Worker == "me" && row.Date.Year == 2025);
        Assert.Equal(270m - 33m - 100m - 20m, Before(farm));
    }

    /// <summary>
    /// 60 of wages that name kale and not an hour in the log but a row of 0: nothing tells what an hour cost, so they stay at 60.
    /// </summary>
    [Fact]
    public void WagesWithoutHours_StayAtTheirMoney()
    {
        FarmBuilder farm = Farm().Sell("2024-07-01", "Kale", "heap", 40m).Without<LaborRow>(row => row.Date.Year == 2024)
            .Spend("2024-07-31", 60m, "wages", planting: "K24").Work("2024-07-01", "Bo", 0m, "harvest", planting: "K24");
        Assert.Equal(270m - 33m - 60m, Before(farm));
    }

    /// <summary>
    /// 100 lb of leeks sold in January 2024 belong to no planting: their list, four times as high now, doesn't tell how the farm's rose.
    /// 38 at the shop rise by 380 / 240.
    /// </summary>
    [Fact]
    public void FarmsRise_IsThatOfWhatItsPlantingsSold()
    {
        FarmBuilder farm = Farm().Sell("2024-07-01", "Kale", "heap", 20m).Sell("2024-07-02", "Kale", "shop", 20m, amount: 38m)
            .Crop("Leeks").Price("Leeks", 1m, "stall", from: "2024-01-01").Price("Leeks", 4m, "stall", from: "2025-01-01")
            .Sell("2024-01-10", "Leeks", "stall", 100m, price: 1m);
        Close.To(270m + (38m * 380m / 240m) - 33m - 100m - 36m, Before(farm), 0.006m);
    }

    /// <summary>A sowing that took no bed in 2024 tells nothing per foot of bed.</summary>
    [Fact]
    public void SeasonWithoutBed_IsLeftOut()
    {
        FarmBuilder farm = Farm().Crop("Cress").Planting("C24", "Cress", "One", 0m, "2024-05-01", "2024-06-01")
            .Pick("2024-05-20", "C24", 5m)
            .Sell("2024-05-20", "Cress", "stall", 5m, price: 8m).Planting("C25", "Cress", "One", 10m, "2025-05-01", "2025-06-01")
            .Pick("2025-05-20", "C25", 5m).Sell("2025-05-20", "Cress", "stall", 5m, price: 8m);
        FarmReview review = farm.Review();
        Verdicts verdicts = Verdicts.Of(review, SeasonCosts.Of(review.Season(2025)));
        Assert.Equal([2025], verdicts.Crops.Single(verdict => verdict.Budget.Name == "Cress").Seasons.Select(season => season.CropYear));
    }

    /// <summary>
    /// Beets are all that the shop takes, with 4 own hours of trips; 20 lb of them went into the boxes of 2025. 2024 as it was,
    /// outside boxes, 80 less 30 of seed a tenth dearer, 47, plus what refilling the boxes takes now less the 72 of trips now.
    /// </summary>
    [Fact]
    public void EarlierSeason_CountsBoxesAndTripsAsTheyAreNow()
    {
        FarmBuilder farm = Base().Channel("boxes", ChannelKind.Share, fee: 5m, valuesFrom: "stall").Bed("Two")
            .Income("2025-03-01", "boxes", 400m)
            .Crop("Beets").Crop("Kale").Price("Beets", 2m).Price("Kale", 1m)
            .Planting("B24", "Beets", "One", 100m, "2024-05-01", "2024-08-01").Pick("2024-07-01", "B24", 50m)
            .Income("2024-03-01", "boxes", 100m).Sell("2024-07-02", "Beets", "boxes", 10m)
            .Sell("2024-07-01", "Beets", "shop", 40m, price: 2m).Spend("2024-05-01", 30m, "seed", planting: "B24")
            .Planting("B25", "Beets", "One", 100m, "2025-05-01", "2025-08-01").Pick("2025-07-01", "B25", 60m)
            .Sell("2025-07-02", "Beets", "boxes", 20m).Sell("2025-07-02", "Beets", "shop", 40m, price: 2m)
            .Spend("2025-05-01", 30m, "seed", planting: "B25")
            .Planting("K25", "Kale", "Two", 100m, "2025-05-01", "2025-08-01").Pick("2025-07-01", "K25", 200m)
            .Sell("2025-07-02", "Kale", "boxes", 60m).Sell("2025-07-09", "Kale", "boxes", 80m)
            .Sell("2025-07-10", "Kale", "stall", 60m, price: 1m)
            .Work("2024-07-02", "me", 1m, "harvest", crop: "Beets").Work("2025-07-02", "me", 4m, "delivery", channel: "shop");
        FarmReview review = farm.Review();
        SeasonCosts costs = SeasonCosts.Of(review.Season(2025));
        SensitivityModel beets = costs.Model(review.Season(2025).CropNamed("Beets"));

        Assert.Equal(72m, beets.TripsFreed.Amount);
        Assert.True(beets.Refill.Amount > 0m);
        Assert.Equal(80m - 33m - 18m + beets.Refill.Amount - 72m, Before(farm, "Beets"));
    }
}
