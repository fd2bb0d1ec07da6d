using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Water;
using FarmEconomics.Water;
using FarmEconomics.Water.Power;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Short;

/// <summary>A season's water and power: worth, limit, log, scarcity.</summary>
public class WaterAndPowerTests
{
    private const int Year = 2025;

    [Fact]
    public void Worth_OfTheSeasonItself_IsOutputLessWhatGoesWithItUntilPicked()
    {
        FarmBuilder builder = DryFarm.With(3).AsOf("2025-12-31").Spend("2025-08-02", 12m, "packaging", planting: "Tomatoes 0");
        WaterAndPower supply = Of(builder);
        SowingWater tomatoes = supply.Farm.Sowings.First(sowing => sowing.Planting.Name == "Tomatoes 0");

        // 40 sold at 2, less packaging that goes with the quantity; picked on August 1.
        Assert.Equal(68, supply.Worth.StillToCome(tomatoes, new DateOnly(2025, 7, 1))!.Value, 1e-6);
        Assert.Equal(68, supply.Worth.StillToCome(tomatoes, new DateOnly(2025, 8, 1))!.Value, 1e-6);
        Assert.Equal(0, supply.Worth.StillToCome(tomatoes, new DateOnly(2025, 8, 2))!.Value, 1e-6);
    }

    [Fact]
    public void Worth_OfASowingStillGrowing_IsTheCropsMeanPerBedFootOfTheSeasonOver()
    {
        FarmBuilder builder = DryFarm.With(1).AsOf("2026-07-01").Planting("Tomatoes next", "Tomatoes", "Bed 0", 30, "2026-06-01");
        FarmReview review = builder.Review();
        WaterAndPower supply = WaterAndPower.Of(SeasonCosts.Of(WaterAndPower.SeasonFor(review, new DateOnly(2026, 7, 1))));

        Assert.Equal(Year, supply.Season.CropYear);
        FarmEconomics.Tracing.BedStay stay = review.Trace.Stays.Single(one => one.Planting.Name == "Tomatoes next");
        Assert.Equal(stay.In.AddDays(104), supply.Worth.EndOf(stay)); // May 20 to September 1 is 104 days
        WeatherRow last = builder.Tables.Weather[^1];
        builder.Set(last, WeatherRow.DateColumn, new DateOnly(2026, 6, 30));
        supply = WaterAndPower.Of(SeasonCosts.Of(builder.Review().Season(Year)));
        SowingWater next = supply.Farm.Sowings.Single(sowing => sowing.Planting.Name == "Tomatoes next");

        // 80 over 60 bed-feet, 30 planted; all of it was picked 73 days after planting.
        Assert.Equal(40, supply.Worth.StillToCome(next, next.Span.From.AddDays(73))!.Value, 1e-6);
        Assert.Equal(0, supply.Worth.StillToCome(next, next.Span.From.AddDays(74))!.Value, 1e-6);
    }

    [Fact]
    public void Season_TighterLimits_NeverLoseLessAndAreCountedShort()
    {
        WaterAndPower supply = Of(Limited(100m));
        WaterSeason water = supply.Water!;
        double[] lost = [.. new[] { -90.0, -50, 0, 100, 5000 }.Select(more => water.LostWith(more * supply.LitersPerUnit)!.Value)];

        Assert.True(water.DaysShort > 0);
        Assert.All(lost.Zip(lost.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 0.01));
        Assert.InRange(lost[^1], 0, 0.05 * lost[0]);
        Assert.Equal(water.LostAtLimit!.Value, lost[2], 1e-9);
        Assert.Equal(lost[2] - lost[3], (double)supply.SavedByMore.Value!.Value, 1e-6);
        Assert.All(water.Weeks.Where(week => week.DaysShort > 0), week => Assert.True(week.LostAtLimit > 0));
        Assert.Equal(700m, decimal.Round((decimal)(water.Weeks[5].Limit!.Value / supply.LitersPerUnit), 6));
    }

    [Fact]
    public void Season_SprinklersAndHours_AreALimitOfTheirOwnAndMoreOfThemIsTold()
    {
        FarmBuilder builder = Limited(400m).Limit("sprinklers", 2m, "sprinklers at once").Limit("watering", 1m, "hours a day");
        WaterAndPower supply = Of(builder);
        WaterSeason water = supply.Water!;

        // 2 sprinklers of 60 gallons an hour for an hour leave 120 of the 400 gallons.
        DateOnly[] days = [.. Enumerable.Range(0, water.Days).Select(water.First.AddDays)];
        Assert.Equal(2.0, days.Max(day => water.SprinklerHoursAtLimit(day))!.Value, 1e-9);
        Assert.Equal(120.0, days.Max(day => water.PutAtLimit(day))!.Value / supply.LitersPerUnit, 1e-6);
        Assert.Equal(
            [WaterStep.Water, WaterStep.Sprinklers, WaterStep.Hour, WaterStep.PumpHour],
            supply.WorthOfMore.Select(one => one.Step)
        );
        Assert.Equal(0m, decimal.Round(supply.WorthOfMore[0].Saved.Value!.Value, 6)); // water isn't what holds it back
        Assert.True(supply.WorthOfMore[1].Saved.Value > 1m);
        Assert.Equal(supply.WorthOfMore[1].Saved.Value!.Value, supply.WorthOfMore[2].Saved.Value!.Value, 6); // twice the sprinklers, or twice the hour
        Assert.False(supply.WorthOfMore[1].LostByLess.IsAvailable);

        ScarceResource sprinklers = WhatWasShort
            .Of(SeasonCosts.Of(builder.Season(Year)))
            .Short.Single(thing => thing.Kind == ScarceKind.Sprinklers);
        Assert.Equal(2m, sprinklers.Fullest!.Limit);
        Assert.True(
            sprinklers.Crops.Count > 0 && sprinklers.Crops.Sum(crop => crop.Use) <= sprinklers.Short.Sum(span => span.Used) + 0.0001m
        );
    }

    [Fact]
    public void Season_BlocksWithoutSprinklers_AreNotHeldByThem()
    {
        FarmBuilder builder = Limited(400m).Limit("sprinklers", 2m).Limit("sprinklers", 1m, "sprinkler-hours a day");
        foreach (BlockRow row in builder.Tables.Blocks)
        {
            builder.Set(row, BlockRow.SprinklerGphColumn, null);
        }

        Assert.Equal(Of(Limited(400m)).Water!.LostAtLimit!.Value, Of(builder).Water!.LostAtLimit!.Value, 1e-9);
        Assert.Contains(WhatWasShort.Of(SeasonCosts.Of(builder.Season(Year))).NotChecked, item =>
            item.Reason == "blocks.csv doesn't say what a sprinkler gives"
        );
    }

    [Fact]
    public void Blocks_DayByDay_PutInWhatTheyUseStoreAndDrain()
    {
        FarmBuilder builder = DryFarm.With(3).AsOf("2025-12-31");
        Water(builder, "2025-07-07", "Block 0", 300m);
        Water(builder, "2025-07-14", "Block 0", 900m);
        WaterSeason water = Of(builder).Water!;
        BlockDay[] days = [.. water.BlockDays()];

        Assert.Equal(["Block 0", "Block 1", "Block 2"], days.Select(day => day.Block.Name).Distinct());
        Assert.All(days, day => Assert.Equal(day.Rain + day.Watering, day.Used + day.Stored + day.Drained, 1e-6));
        Assert.Contains(days, day => day.Drained > 1);
        Assert.Contains(days, day => day.Stress < 0.5);
        Assert.Equal(water.LostAsWatered!.Value, days.Sum(day => day.MoneyLost), 1e-6);
        Assert.Equal(water.Balances.Sum(balance => balance.MissedMm * balance.Sowing.AreaM2), days.Sum(day => day.Missed), 1e-6);
        Assert.All(days, day => Assert.InRange(day.YieldLost ?? 0, 0, 1));
    }

    [Fact]
    public void Season_Losses_AddUpByCropAndWeekAndNeverPassAllThereWas()
    {
        WaterAndPower supply = Of(Limited(1m));
        WaterSeason water = supply.Water!;
        Assert.Equal(water.LostAtLimit!.Value, water.Weeks.Sum(week => week.LostAtLimit!.Value), 1e-6);
        Assert.Equal(water.LostAtLimit!.Value, water.Crops.Sum(crop => crop.LostAtLimit!.Value), 1e-6);
        double most = supply.Farm.Sowings.Sum(sowing => supply.Worth.StillToCome(sowing, sowing.Span.From)!.Value);
        Assert.InRange(water.LostAtLimit.Value, 0.01, most);
    }

    [Fact]
    public void Log_WeekWithoutANote_IsTakenAsRefilledNamedAndLosesNothing()
    {
        FarmBuilder builder = DryFarm.With(1).AsOf("2025-12-31");
        Water(builder, "2025-07-07", "Block 0", 10m);
        Water(builder, "2025-07-21", "Block 0", 10m);
        WaterAndPower supply = Of(builder);
        WaterBalance balance = Assert.Single(supply.Water!.Balances);

        Assert.Equal([new DateOnly(2025, 7, 14)], supply.Farm.Log.Unknown.Select(week => week.Monday));
        int monday = new DateOnly(2025, 7, 14).DayNumber - balance.Sowing.Span.From.DayNumber;
        Assert.True(balance.Missed(monday - 1) > 0);
        Assert.All(Enumerable.Range(monday, 7), day => Assert.False(balance.IsTold(day)));
        Assert.Equal(0, balance.Missed(monday + 6));
        Assert.Equal(0, balance.Days[monday + 7].Before);
        Assert.Equal(0m, (decimal)supply.Water.Weeks.Single(week => week.Monday == new DateOnly(2025, 7, 14)).LostAsWatered!.Value);
        Assert.All(balance.Days, day => Assert.Equal(0, day.NotAccountedFor, 1e-9));
    }

    [Fact]
    public void Log_Gallons_ReachTheRootsByAreaAndEfficiency()
    {
        FarmBuilder builder = DryFarm.With(1).AsOf("2025-12-31");
        Water(builder, "2025-07-07", "Block 0", 623.376623m);
        FarmWater farm = Of(builder).Farm;

        // An inch on 1,000 square feet takes 623 gallons; this bed has 250 square feet, and three quarters get to the roots.
        Assert.Equal(4 * 25.4 * 0.75, farm.Log.On(farm.Sowings[0], new DateOnly(2025, 7, 7)), 1e-3);
    }

    [Fact]
    public void Covered_Beds_GetNoRain()
    {
        FarmBuilder builder = DryFarm.With(2);
        builder.Set(builder.Tables.Beds[1], BedRow.StructureColumn, "Tunnel");
        FarmWater farm = DryFarm.Farm(builder);
        DateOnly wet = builder.Tables.Weather.First(row => row.RainIn > 0m && row.Date > new DateOnly(2025, 6, 1)).Date;
        Assert.Equal(0.9 * 25.4, farm.Sowings[0].Rain(wet), 1e-9);
        Assert.Equal(0, farm.Sowings[1].Rain(wet));
    }

    [Fact]
    public void Weather_ShortGap_IsFilledAndALongOneIsUnknown()
    {
        FarmBuilder builder = DryFarm.With(1).Without<WeatherRow>(row =>
            row.Date == new DateOnly(2025, 7, 2) || (row.Date.Month == 8 && row.Date.Day <= 5));
        FarmWeather weather = FarmWeather.Of(builder.Link());
        Assert.Equal((EtSource.Gap, 0.25 * 25.4), (weather.On(new DateOnly(2025, 7, 2)).Source, weather.On(new DateOnly(2025, 7, 2)).Et0));
        Assert.False(weather.On(new DateOnly(2025, 8, 3)).IsKnown);
        Assert.Equal(EtSource.Ahead, weather.Ahead(new DateOnly(2025, 10, 3)).Source);
        Assert.Equal("weather.csv has no et0, and farm.csv no latitude to work it out from temperatures",
            FarmWeather.Of(DryFarm.With(1, et0: 0.2m).Without<WeatherRow>(_ => true).Sky().Link()).WhyUnknown);
    }

    [Fact]
    public void WhatWasShort_WithALimitOfWater_NamesTheDaysAndRanksTheCrops()
    {
        WhatWasShort shorts = WhatWasShort.Of(SeasonCosts.Of(Limited(300m).Season(Year)));
        ScarceResource water = shorts.Short.Single(thing => thing.Kind == ScarceKind.Water);
        Assert.Equal(300m, water.Fullest!.Limit);
        Assert.Equal(["Tomatoes", "Lettuce", "Potatoes", "Basil", "Carrots"], water.Crops.Select(crop => crop.Crop.Name)
            .OrderBy(name => Array.IndexOf(["Tomatoes", "Lettuce", "Potatoes", "Basil", "Carrots"], name)));
        Assert.All(water.Crops.Zip(water.Crops.Skip(1)), pair => Assert.True(pair.First.PerUnit.Value >= pair.Second.PerUnit.Value));
    }

    [Fact]
    public void Nothing_Written_SaysWhy()
    {
        FarmBuilder builder = new FarmBuilder().Crop("Kale").Bed("A").Planting("Kale 1", "Kale", "A", 100, "2025-05-01", "2025-09-01")
            .Channel("Market", ChannelKind.Market)
            .Pick("2025-07-01", "Kale 1", 10).Sell("2025-07-01", "Kale", "Market", 10, 3m).Limit("water", 3000, "gallons a day");
        WaterAndPower supply = Of(builder);
        Assert.False(supply.IsTold);
        Assert.Null(supply.Water);
        Assert.Equal("there is no weather table", supply.Farm.WhyUnknown);
        Assert.Equal("there is no loads table", supply.Power.WhyUnknown);
        Assert.Equal("there is no weather table", supply.SavedByMore.Reason);
        Assert.Contains(WhatWasShort.Of(SeasonCosts.Of(builder.Season(Year))).NotChecked, item =>
            item == new NotChecked("water", "there is no weather table"));
    }

    [Fact]
    public void Power_DarkWeek_ShedsInOrderAndTellsWhatMoreWouldSave()
    {
        FarmBuilder builder = DryFarm.With(1).AsOf("2025-12-31").With(settings => settings with
        {
            Supply = new PowerSupply
            {
                PanelKw = 2m,
                PanelYield = new MonthFigures([0.5m, 2m, 3m, 4m, 5m, 5m, 5m, 4m, 3m, 2m, 1m, 0.5m]),
                BatteryKwh = 4m,
                GeneratorCostPerKwh = 1m
            },
        }).Pool("power", "measured").Pool("cold room", "crate-days").Pool("wash", "quantity-crates")
            .Load("compressor", "power", "cold room", 50, 24, "2025-01-01", "2025-12-31")
                .Load("lights", "power", "wash", 100, 2, "2025-01-01", "2025-12-31");
        PowerSeason power = Of(builder).Power;

        // January: 1 kWh a day made, 1.4 wanted; two of the four kWh of battery carry five days.
        Assert.Null(power.WhyUnknown);
        Assert.Equal(["lights", "compressor"], power.Loads.Select(load => load.Row.Load));
        Assert.Equal(26, power.Months[0].DaysShort);
        Assert.Equal((31 * 0.4) - 2, power.Months[0].Short, 1e-9);
        Assert.Equal(0.5, power.Months[0].SavedByBattery, 1e-9);
        Assert.Equal(power.Months[0].Short, power.Months[0].SavedByPanels!.Value, 1e-9); // half a kWh a day more, and nothing is missing
        Assert.Equal(power.Missing, power.SavedWith(0, 1)!.Value, 1e-9);
        ShedLoad lights = power.Shed[0];
        Assert.InRange(lights.Shed, 0.01, lights.Wanted);
        Assert.Equal(power.Missing, power.Shed.Sum(load => load.Shed), 1e-9);
        Assert.InRange(power.MarginalPerKwh.Value!.Value, 0.05m, 1m);
    }

    private static WaterAndPower Of(FarmBuilder builder) => WaterAndPower.Of(SeasonCosts.Of(builder.Season(Year)));

    private static FarmBuilder Limited(decimal gallons) => DryFarm.With(5).AsOf("2025-12-31").Limit("water", gallons, "gallons a day");

    private static void Water(FarmBuilder builder, string day, string block, decimal gallons) =>
        builder.Tables.Add<WateringRow>(new RowValues
        {
            ["date"] = FarmBuilder.Day(day),
            ["block"] = block,
            ["gallons"] = gallons,
            Source = new SourceLine("watering.csv", 2)
        });
}

/// <summary>Weather of temperatures alone.</summary>
internal static class SkyRows
{
    internal static FarmBuilder Sky(this FarmBuilder builder)
    {
        builder.Tables.Add<WeatherRow>(new RowValues
        {
            ["date"] = new DateOnly(2025, 7, 1),
            ["tmin_f"] = 50m,
            ["tmax_f"] = 80m,
            Source = new SourceLine("weather.csv", 2)
        });
        return builder;
    }
}
