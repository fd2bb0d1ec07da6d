using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Water;
using FarmEconomics.Units;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Short;

/// <summary>
/// What a season's limits of water and sprinklers cost, and what more would save (docs/methods.md, section 19). Chives on 1,000 m² stand
/// from July 10 to the end of the year, 175 days that need 8 mm each, 1,400 mm; their soil holds 3 mm. 14,000 is to come, all of it picked
/// on July 10: a mm missed that day, which takes 1,000 liters, loses 10. Unwatered the day misses 5 of its 8 mm and loses 50.
/// </summary>
public class WaterShortByHandTests
{
    private static readonly DateOnly First = new(2025, 7, 10);

    /// <summary>The farm, with a second block in which leaves stand that bring nothing any more.</summary>
    private static FarmBuilder Farm(decimal? sprinkler = 250m, decimal? other = null)
    {
        FarmBuilder farm = WholeFarm.Built().Weather("2025-07-10", "2025-07-13", 8m).Channel("stall", ChannelKind.Market)
            .Spend("2025-03-01", 300m, "rent").Block("A").Grows("A", "2025-07-10", null, 1000m)
            .Block("B").Grows("B", "2025-06-01", "2025-08-01", 100m, "Leaves")
            .Pick("2025-07-10", "A, bed 0", 140m).Sell("2025-07-10", "Chives", "stall", 140m, price: 100m)
            .Pick("2025-07-01", "B, bed 1", 10m).Sell("2025-07-01", "Leaves", "stall", 10m, price: 2m);
        return farm.Set(farm.Tables.Blocks[0], BlockRow.SprinklerGphColumn, sprinkler)
            .Set(farm.Tables.Blocks[1], BlockRow.SprinklerGphColumn, other);
    }

    private static FarmBuilder Sprinklers(FarmBuilder farm) => farm.Limit("sprinklers", 2m, "at once").Limit("watering", 2m, "hours a day");

    private static WaterAndPower Of(FarmBuilder farm) => WaterAndPower.Of(SeasonCosts.Of(farm.Season(2025)));

    private static WhatWasShort Shorts(FarmBuilder farm) => WhatWasShort.Of(SeasonCosts.Of(farm.Season(2025)));

    private static IEnumerable<(WaterStep, decimal, double?, double?)> Worths(FarmBuilder farm) => Of(farm).WorthOfMore
        .Select(one => (one.Step, one.Amount, Rounded(one.Saved), Rounded(one.LostByLess)));

    private static double? Rounded(Result result) => result.Value is { } known ? Math.Round((double)known, 6) : null;

    /// <summary>2,000 liters a day are 2 mm: 3 missed, 30 lost. 400 liters, 0.4 mm, more save 4; as much less lose 4 more.</summary>
    [Fact]
    public void Water_ALimitOfLiters_IsWorthWhatAStepSaves()
    {
        WaterAndPower supply = Of(Farm().Limit("water", 2000m, "liters a day"));

        Assert.Equal((2000.0, null), (supply.LimitOn(First).Liters, supply.LimitOn(First).SprinklerHours));
        Assert.Equal(30.0, supply.Water!.LostAtLimit!.Value, 6);
        Assert.Equal([(WaterStep.Water, 400m, 4.0, 4.0)], Worths(Farm().Limit("water", 2000m, "liters a day")));
        Assert.Equal((4.0, 4.0), (Rounded(supply.SavedByMore), Rounded(supply.LostByLess)));
        Assert.Equal([(WaterStep.Water, 400m, 4.0, 3.0)], Worths(Farm().Limit("water", 300m, "liters a day"))); // no less than none
        Assert.Empty(Of(Farm()).WorthOfMore);
    }

    /// <summary>
    /// 2 sprinklers of 250 liters for 2 hours give 1,000, the water there is: 40 lost. More of the one without the other saves nothing; an
    /// hour's pumping brings 500 liters and the sprinklers for it, and saves 5.
    /// </summary>
    [Fact]
    public void Sprinklers_AndWaterOfTheSameAmount_SaveOnlyTogether()
    {
        Assert.Equal(40.0, Of(Sprinklers(Farm()).Limit("water", 1000m, "liters a day")).Water!.LostAtLimit!.Value, 6);
        Assert.Equal(
            [(WaterStep.Water, 400m, 0.0, 4.0), (WaterStep.Sprinklers, 2m, 0.0, null), (WaterStep.Hour, 1m, 0.0, 5.0),
                (WaterStep.PumpHour, 1m, 5.0, 5.0)],
            Worths(Sprinklers(Farm()).Limit("water", 1000m, "liters a day")));

        // Another block's sprinklers give 150: 200 on the mean, so that two give 400 liters more to pump in an hour.
        Assert.Equal((WaterStep.PumpHour, 1m, 4.0, 5.0), Worths(Sprinklers(Farm(other: 150m)).Limit("water", 1000m, "liters a day"))
            .Last());
    }

    /// <summary>With water enough a second set of two gives 2,000 liters, 10 saved; an hour more gives 1,500, 5 saved.</summary>
    [Fact]
    public void Sprinklers_Alone_AreWorthWhatTheyGive()
    {
        Assert.Equal([(WaterStep.Sprinklers, 2m, 10.0, null), (WaterStep.Hour, 1m, 5.0, 5.0)], Worths(Sprinklers(Farm())));
        Assert.Equal("no row of limits says how much water there is a day", Of(Sprinklers(Farm())).SavedByMore.Reason);
    }

    /// <summary>Three sprinklers from July 11 on, hours written up to that day: the most there ever are is a set; no more is said of days
    /// without hours.</summary>
    [Fact]
    public void Sprinklers_WithDates_AreTakenAsTheyAreOnEachDay()
    {
        FarmBuilder farm = Farm().Limit("sprinklers", 2m, null, null, "2025-07-10").Limit("sprinklers", 3m, null, "2025-07-11")
            .Limit("watering", 2m, "hours a day", "2025-07-01", "2025-07-11");

        Assert.Equal([(WaterStep.Sprinklers, 3m, 10.0, null), (WaterStep.Hour, 1m, 5.0, 5.0)], Worths(farm));
        Assert.Equal([4.0, 6.0, null], new[] { 0, 1, 2 }.Select(day => Of(farm).LimitOn(First.AddDays(day)).SprinklerHours));
    }

    /// <summary>A limit of July 11 alone holds nothing back on the 10th, with a step more or less of it either.</summary>
    [Fact]
    public void Day_WithoutALimit_StaysWithoutOne()
    {
        Assert.Equal([(WaterStep.Water, 400m, 0.0, 0.0)], Worths(Farm().Limit("water", 2000m, "liters a day", "2025-07-11", "2025-07-11")));
        Assert.Equal([(WaterStep.Sprinklers, 2m, 0.0, null), (WaterStep.Hour, 1m, 0.0, 0.0)],
            Worths(Farm().Limit("sprinklers", 2m, null, "2025-07-11", "2025-07-11").Limit("watering", 2m, "hours a day")));
    }

    /// <summary>Half of what there is to know of sprinklers, or nothing of what one gives, tells nothing of their worth.</summary>
    [Fact]
    public void Sprinklers_OfWhichSomethingIsMissing_HaveNoWorth()
    {
        foreach (FarmBuilder farm in (FarmBuilder[])[Farm().Limit("sprinklers", 2m), Farm().Limit("watering", 2m, "hours a day"),
            Sprinklers(Farm(sprinkler: null))])
        {
            Assert.Equal([WaterStep.Water], Worths(farm.Limit("water", 2000m, "liters a day")).Select(one => one.Item1));
        }
    }

    /// <summary>
    /// All is picked on July 11, so that both days want the 2,000 liters there are, the 11th for the day after; then nothing is to come.
    /// Of them all fall on the chives, whose 14,000 are 3.50 a liter.
    /// </summary>
    [Fact]
    public void WhatWasShort_OfWater_ListsWhatFellOnTheCropsOnFullDays()
    {
        FarmBuilder farm = Sprinklers(Farm(sprinkler: 500m).Without<HarvestRow>(row => row.Planting == "A, bed 0")
            .Without<SaleRow>(row => row.Crop == "Chives")
            .Pick("2025-07-11", "A, bed 0", 140m).Sell("2025-07-11", "Chives", "stall", 140m, price: 100m))
            .Limit("water", 2000m, "liters a day");
        WhatWasShort season = Shorts(farm);
        ScarceResource water = season.Resources.Single(thing => thing.Kind == ScarceKind.Water);
        ScarceResource sprinklers = season.Resources.Single(thing => thing.Kind == ScarceKind.Sprinklers);

        Assert.Equal(
            [(First, 2000m, 2000m), (First.AddDays(1), 2000m, 2000m), (First.AddDays(2), 0m, 2000m), (First.AddDays(3), 0m, 2000m)],
            water.Spans.Select(span => (span.From, Math.Round(span.Used, 6), span.Limit)));
        Assert.Equal([("Chives", 4000m, 3.5m)], Read(water));
        Assert.Equal([4m, 4m, 0m, 0m], sprinklers.Spans.Select(span => Math.Round(span.Used, 6)));
        Assert.Equal([("Chives", 8m, 1750m)], Read(sprinklers));
        Assert.Equal(2, Shorts(farm.AsOf("2025-07-11")).Resources.Single(thing => thing.Kind == ScarceKind.Water).Spans.Count);

        static IEnumerable<(string, decimal, decimal)> Read(ScarceResource thing) => thing.Crops
            .Select(use => (use.Crop.Name, Math.Round(use.Use, 6), Math.Round(use.PerUnit.Value!.Value, 6)));
    }

    [Fact]
    public void WhatWasShort_NamesWaterAndSprinklersThatAreNotHeldAgainstAnything()
    {
        FarmBuilder Dry(FarmBuilder farm) => farm.Empty("weather");
        const string NoWeather = "there is no weather table";

        Assert.Equal([new NotChecked("water", NoWeather)], Named(Dry(Farm()).Limit("water", 2000m, "liters a day")));
        Assert.Equal([new NotChecked("sprinklers", NoWeather)], Named(Sprinklers(Dry(Farm()))));
        Assert.Equal([new NotChecked("sprinklers", "blocks.csv doesn't say what a sprinkler gives")],
            Named(Sprinklers(Farm(sprinkler: null))));
        Assert.Empty(Named(Sprinklers(Farm())));
        Assert.Empty(Named(Farm()));
        Assert.DoesNotContain(Shorts(Farm()).Resources, thing => thing.Kind is ScarceKind.Water or ScarceKind.Sprinklers);
        Assert.DoesNotContain(Shorts(Farm().Limit("sprinklers", 2m)).Resources, thing => thing.Kind == ScarceKind.Sprinklers);

        static IEnumerable<NotChecked> Named(FarmBuilder farm) => Shorts(farm).NotChecked.Where(item => item.Name != "hours");
    }
}
