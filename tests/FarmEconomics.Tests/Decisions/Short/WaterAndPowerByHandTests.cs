using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Water;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Short;

/// <summary>
/// Units of a season's water, the crops beside what they take, and the season that tells what a sowing is worth (docs/methods.md, section
/// 19).
/// </summary>
public class WaterAndPowerByHandTests
{
    private static readonly DateOnly First = new(2025, 7, 10);

    private static WaterAndPower Of(FarmBuilder farm) => WaterAndPower.Of(SeasonCosts.Of(farm.Season(2025)));

    private static FarmBuilder Metric(params string[] blocks)
    {
        FarmBuilder farm = WholeFarm.Built().Weather("2025-07-10", "2025-07-13", 8m).Channel("stall", ChannelKind.Market)
            .Channel("home", ChannelKind.Household).Spend("2025-03-01", 300m, "rent");
        Array.ForEach(blocks, block => farm.Block(block).Grows(block, "2025-07-10", null, 1000m));
        return farm;
    }

    /// <summary>Weather of other seasons tells nothing of this one's water; one day of this season tells of it.</summary>
    [Theory]
    [InlineData("2024-12-20", "2024-12-31", false)]
    [InlineData("2024-12-20", "2025-01-01", true)]
    [InlineData("2025-12-31", "2026-01-10", true)]
    [InlineData("2026-01-01", "2026-01-10", false)]
    public void Water_IsToldOfSeasonsTheWeatherHoldsADayOf(string first, string last, bool told)
    {
        WaterAndPower supply = Of(WholeFarm.Built().Weather(first, last, 8m).Channel("stall", ChannelKind.Market)
            .Spend("2025-03-01", 300m, "rent").Block("A").Grows("A", "2025-07-10", null, 1000m));
        Assert.Equal(told ? null : $"the weather table holds {first} to {last}, no day of 2025", supply.WhyNoWater);
        Assert.Equal(told, supply.Water is not null);
    }

    /// <summary>
    /// In feet: 1,000 ft of bed 30 in wide are 232.2576 m², a day's 0.3 in 7.62 mm, of which the soil gives the first 3. Of 100 gallons a
    /// day the first takes all; without a limit it would take 7.62 mm, 467.5 gallons.
    /// </summary>
    [Fact]
    public void Feet_AreCountedInGallons()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { UnpaidHours = UnpaidHours.None }).AsOf("2025-12-31")
            .Crop("Chives", perennial: true).Weather("2025-07-10", "2025-07-13", 0.3m).Channel("stall", ChannelKind.Market)
            .Spend("2025-03-01", 300m, "rent").Block("A", 0.12m).Grows("A", "2025-07-10", null, 1000m)
            .Pick("2025-07-10", "A, bed 0", 10m).Sell("2025-07-10", "Chives", "stall", 10m, price: 100m)
            .Limit("water", 100m, "gallons a day");
        foreach (NumberColumn column in (NumberColumn[])[CropRow.KcIniColumn, CropRow.KcMidColumn, CropRow.KcEndColumn, CropRow.KyColumn])
        {
            farm.Set(farm.Tables.Crops[0], column, 1m);
        }

        WaterAndPower supply = Of(farm);
        Assert.Equal((3.785411784, 100), (supply.LitersPerUnit, supply.LimitStep));
        Assert.Equal(378.5411784, supply.LitersOn(First)!.Value, 9);
        CropWaterMargin chives = Assert.Single(supply.Crops);
        Close.To(7.62m * 232.2576m / 3785.411784m, chives.Needed, 0.0000001m);
        Close.To(1000m / chives.Needed, chives.PerThousand.Value!.Value, 0.0001m);

        ScarceResource water = WhatWasShort.Of(SeasonCosts.Of(farm.Season(2025))).Resources.Single(thing => thing.Kind == ScarceKind.Water);
        Close.To(100m, water.Spans[0].Used, 0.000001m);
        Close.To(100m, Assert.Single(water.Crops).Use, 0.000001m);
    }

    /// <summary>
    /// Two plantings of chives bring 14,000 and 2,000, and each takes 8 mm on its 1,000 m² that day: 16,000 over 16,000 liters. Of leaves
    /// and chard one planting each was eaten before any price of them is on record: what they add isn't known, whichever comes first.
    /// </summary>
    [Fact]
    public void Crops_ByHand_StandBesideTheWaterTheyTake()
    {
        FarmBuilder farm = Metric("A", "C").Crop("Chard").Block("B").Price("Leaves", 3m, from: "2025-07-01")
            .Price("Chard", 3m, from: "2025-07-01")
            .Grows("B", "2025-05-01", "2025-08-01", crop: "Leaves").Grows("B", "2025-05-01", "2025-08-01", crop: "Leaves")
            .Grows("B", "2025-05-01", "2025-08-01", crop: "Chard").Grows("B", "2025-05-01", "2025-08-01", crop: "Chard")
            .Pick("2025-07-10", "A, bed 0", 140m).Sell("2025-07-10", "Chives", "stall", 140m, price: 100m, planting: "A, bed 0")
            .Pick("2025-07-10", "C, bed 1", 10m).Sell("2025-07-10", "Chives", "stall", 10m, price: 200m, planting: "C, bed 1");
        foreach ((string planting, string crop, bool eaten) in ((string, string, bool)[])[("B, bed 2", "Leaves", false), ("B, bed 3",
            "Leaves", true),
            ("B, bed 4", "Chard", true), ("B, bed 5", "Chard", false)])
        {
            string day = eaten ? "2025-06-02" : "2025-07-02";
            farm.Pick(day, planting, 10m).Sell(day, crop, eaten ? "home" : "stall", 10m, planting: planting);
        }

        WaterAndPower supply = Of(farm);
        Assert.Equal((1.0, 400), (supply.LitersPerUnit, supply.LimitStep));
        Assert.Equal([("Chives", 16000m, 16m, 1000m), ("Leaves", null, 0m, null), ("Chard", null, 0m, null)],
            supply.Crops.Select(crop => (crop.Use.Crop.Name, crop.Contribution.Value, Math.Round(crop.Needed, 6), crop.PerThousand.Value)));
        Assert.All(supply.Crops.Skip(1), crop => Assert.StartsWith("no price of ", crop.PerThousand.Reason, StringComparison.Ordinal));
    }

    /// <summary>
    /// Chives that nobody valued: 10 eaten before any price of them is on record. Their budget isn't known, so no loss can be told
    /// in money, and that budget's reason says why. Sold at 100 each they tell.
    /// </summary>
    [Fact]
    public void WhyNoWorth_IsTheReasonOfTheFirstBudgetThatIsUnknown()
    {
        WaterAndPower eaten = Of(Metric("A").Price("Chives", 3m, from: "2025-08-01").Pick("2025-07-10", "A, bed 0", 10m)
            .Sell("2025-07-10", "Chives", "home", 10m));
        string? why = Assert.Single(eaten.Crops).Contribution.Reason;
        Assert.StartsWith("no price of ", why, StringComparison.Ordinal);
        Assert.Equal(why, eaten.WhyNoWorth);

        WaterAndPower sold = Of(Metric("A").Pick("2025-07-10", "A, bed 0", 10m).Sell("2025-07-10", "Chives", "stall", 10m, price: 100m));
        Assert.Null(sold.WhyNoWorth);
    }

    /// <summary>
    /// In a season under way the crop's mean counts, of which a second planting in no block isn't known: it is that planting's budget that
    /// says why, though the watered one's is known.
    /// </summary>
    [Fact]
    public void WhyNoWorth_OfACropKnownInPart_IsThePartThatIsUnknown()
    {
        FarmBuilder farm = WholeFarm.Built().AsOf("2025-07-20").Weather("2025-07-10", "2025-07-13", 8m).Block("A")
            .Channel("stall", ChannelKind.Market).Channel("home", ChannelKind.Household).Spend("2025-03-01", 300m, "rent")
            .Price("Leaves", 3m, from: "2025-07-01").Grows("A", "2025-05-01", "2025-09-01", crop: "Leaves").Bed("dry", 10m)
            .Planting("D", "Leaves", "dry", 10m, "2025-05-01", "2025-09-01")
            .Pick("2025-07-02", "A, bed 0", 10m).Sell("2025-07-02", "Leaves", "stall", 10m, planting: "A, bed 0")
            .Pick("2025-06-02", "D", 10m).Sell("2025-06-02", "Leaves", "home", 10m, planting: "D");
        WaterAndPower supply = Of(farm);
        Assert.True(Assert.Single(supply.Crops).Contribution.IsAvailable);
        Assert.StartsWith("no price of Leaves", supply.WhyNoWorth, StringComparison.Ordinal);
    }

    /// <summary>Without weather there is no water to tell, and no worth of it that would be missing.</summary>
    [Fact]
    public void WhyNoWorth_WithoutABalanceOfWater_IsNothing() =>
        Assert.Null(Of(Metric("A").Without<WeatherRow>(_ => true)).WhyNoWorth);

    [Fact]
    public void IsTold_ByAnyOfItsRecords()
    {
        FarmBuilder Plain() => new FarmBuilder().AsOf("2025-12-31").Crop("Kale").Bed("A")
            .Planting("K", "Kale", "A", 10m, "2025-05-01", "2025-06-01")
            .Pool("panels", "measured");

        Assert.False(Of(Plain()).IsTold);
        Assert.True(Of(Plain().Weather("2025-07-10", "2025-07-10", 0.3m)).IsTold);
        Assert.True(Of(Plain().Block("A")).IsTold);
        Assert.True(Of(Plain().With(settings => settings with { Supply = new PowerSupply { PanelKw = 2m } })).IsTold);
        Assert.True(Of(Plain().Load("fan", "panels", "Kale", 100m, 1m, "2025-01-01", "2025-12-31").Add<PowerMadeRow>(new RowValues
        {
            ["date"] = First,
            ["pool"] = "panels",
            ["kwh"] = 3m,
        })).IsTold);
    }

    /// <summary>The day's own season once it is over, else the last one over, else the only one there is.</summary>
    [Theory]
    [InlineData("2025-12-31", "2024-07-01", 2024)]
    [InlineData("2025-12-31", "2025-07-01", 2025)] // over with its last day
    [InlineData("2025-12-31", "2026-07-01", 2025)]
    [InlineData("2025-12-30", "2025-07-01", 2024)]
    [InlineData("2025-07-01", "2025-07-01", 2024)]
    [InlineData("2023-07-01", "2023-07-01", 2023)]
    public void SeasonFor_IsTheLastOneOver(string asOf, string day, int season)
    {
        FarmBuilder farm = new FarmBuilder().AsOf(asOf).Crop("Kale").Bed("A");
        for (int year = 2023; year <= FarmBuilder.Day(asOf).Year; year++)
        {
            farm.Planting($"K{year}", "Kale", "A", 10m, $"{year}-05-01", $"{year}-06-01").Pick($"{year}-05-20", $"K{year}", 10m);
        }

        Assert.Equal(season, WaterAndPower.SeasonFor(farm.Review(), FarmBuilder.Day(day)).CropYear);
    }

    /// <summary>
    /// July 14, the day after the weather table, is taken as the days before it, 8 mm; so are the six after. The soil is empty by then: all
    /// 7 x 8 mm are missed, of 175 x 8 that 14,000 hang on, and 1,000 liters are a mm of it.
    /// </summary>
    [Fact]
    public void Triage_AfterTheWeatherTable_GoesOnAsTheLastDays()
    {
        FarmBuilder farm = Metric("A").Pick("2025-07-25", "A, bed 0", 140m).Sell("2025-07-25", "Chives", "stall", 140m, price: 100m);
        TriageLine line = Assert.Single(Of(farm).Triage(new WaterAtHand(new DateOnly(2025, 7, 14), 1, 1000, false)).Lines);

        Assert.Equal((560.0, 1000.0), (Math.Round(line.Unwatered, 6), Math.Round(line.Amount, 6)));
    }
}
