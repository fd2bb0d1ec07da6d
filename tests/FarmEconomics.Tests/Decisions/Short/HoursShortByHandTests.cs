using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Short;

/// <summary>Hours by week and who used them, stores, trays and power by day (docs/methods.md, section 16).</summary>
public class HoursShortByHandTests
{
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31")
        .Bed("One").Channel("stall", ChannelKind.Market).Worker("me", WorkerKind.Owner).Spend("2025-03-01", 300m, "rent")
        .Task("pick", Stage.Harvest).Task("sort", Stage.Pack).Task("sell", Stage.Sell)
        .Crop("Kale", perCrate: 10m).Planting("K1", "Kale", "One", 20m, "2025-05-05", "2025-06-02").Pick("2025-05-13", "K1", 150m)
        .Sell("2025-05-15", "Kale", "stall", 150m, price: 6m)
        .Crop("Beets", perCrate: 10m).Planting("B1", "Beets", "One", 20m, "2025-05-12", "2025-06-16").Pick("2025-06-10", "B1", 50m)
        .Sell("2025-06-15", "Beets", "stall", 50m, price: 2m);

    private static WhatWasShort Of(FarmBuilder farm, decimal shortAt = WhatWasShort.UsualShortAt) =>
        WhatWasShort.Of(SeasonCosts.Of(farm.Season(2025)), shortAt);

    private static IEnumerable<ScarceKind> HourLists(WhatWasShort season) => season.Resources.Select(thing => thing.Kind)
        .Where(kind => kind is ScarceKind.Hours or ScarceKind.OwnHours or ScarceKind.HiredHours);

    /// <summary>
    /// The week of May 12: 6 h picking and 2 h selling kale; 3 + 1 h of sorting in the shed, of which kale takes three parts of
    /// four; 4 h at the stall, a trip, and 5 h in the office stay whatever is grown. 21 h, the most ever; the 8 h of June 10 are far from
    /// it.
    /// </summary>
    [Fact]
    public void Hours_ThroughPools_GoByThePoolsSharesAndTripsStay()
    {
        WhatWasShort season = Of(Farm().Pool("shed", "measured").Use("shed", "Kale", 3m).Use("shed", "Beets", 1m)
            .Pool("office", "measured", StatementLine.Overhead).Use("office", "Kale", 1m)
            .Work("2025-05-12", "me", 6m, "pick", crop: "Kale").Work("2025-05-15", "me", 2m, "sell", crop: "Kale")
            .Work("2025-05-13", "me", 3m, "sort", pool: "shed").Work("2025-05-18", "me", 1m, "sort", pool: "shed")
            .Work("2025-05-15", "me", 4m, "sell", channel: "stall").Work("2025-05-16", "me", 5m, "sort", pool: "office")
            .Work("2025-06-10", "me", 8m, "sort", pool: "shed"));

        ScarceResource hours = season.Resources.Single(thing => thing.Kind == ScarceKind.Hours);
        ScarceSpan week = Assert.Single(hours.Short);
        Assert.Equal((new DateOnly(2025, 5, 12), 21m, 21m, LimitSource.MostEver), (week.From, week.Used, week.Limit, week.Source));
        Assert.Equal([("Beets", 1m), ("Kale", 11m)], hours.Crops.Select(use => (use.Crop.Name, use.Use)).Order());
    }

    /// <summary>
    /// Where the owner works alone, all hours and own ones are one list, held against the limit of own ones if there is one and not against
    /// the most ever worked beside it; a limit of both makes two; help of other years too.
    /// </summary>
    [Fact]
    public void Hours_ListsAreThoseThatDiffer()
    {
        FarmBuilder Alone() => Farm().Work("2025-05-12", "me", 6m, "pick", crop: "Kale")
            .Work("2025-06-10", "me", 4m, "pick", crop: "Beets");
        FarmBuilder helped = Alone().Worker("Ada", WorkerKind.Hired, 15m).Work("2024-05-12", "Ada", 3m, "pick");

        Assert.Equal([ScarceKind.Hours], HourLists(Of(Alone())));
        Assert.Equal([ScarceKind.OwnHours], HourLists(Of(Alone().Limit("own labor", 40m, "hours a week"))));
        Assert.Equal([ScarceKind.Hours, ScarceKind.OwnHours],
            HourLists(Of(Alone().Limit("own labor", 40m, "hours a week").Limit("labor", 50m, "hours a week"))));
        Assert.Equal([ScarceKind.Hours, ScarceKind.OwnHours], HourLists(Of(helped)));
        Assert.Equal(52, Of(Alone()).Resources.Single(thing => thing.Kind == ScarceKind.Hours).Spans.Count);
    }

    /// <summary>
    /// 15 crates of kale lay on May 13 and 14 in a store of 16; the 5 of beets in June, when there was room, aren't listed.
    /// </summary>
    [Fact]
    public void Stores_ListTheCropsOfTheFullDaysAndOneWithoutALimitIsNamed()
    {
        WhatWasShort season = Of(Farm().Pool("cold", "crate-days").Limit("cold", 16m, "crates"));
        ScarceResource cold = season.Resources.Single(thing => thing.Kind == ScarceKind.Crates);

        Assert.Equal((2, 7), (cold.Short.Count, cold.Spans.Count(span => span.Used > 0m)));
        Assert.Equal([("Kale", 30m)], cold.Crops.Select(use => (use.Crop.Name, use.Use)));

        WhatWasShort cellar = Of(Farm().Pool("cellar", "crate-days"));
        Assert.DoesNotContain(cellar.Resources, thing => thing.Kind == ScarceKind.Crates);
        Assert.Contains(new NotChecked("cellar", "no row of limits says how many crates it holds"), cellar.NotChecked);
    }

    /// <summary>
    /// Twelve trays from April 20 to May 4, 15 days; kale sown without trays, trays without a day, and both on one day hold none.
    /// </summary>
    [Fact]
    public void Trays_CountFromADaySownBeforeTheBed()
    {
        FarmBuilder farm = Farm().Pool("house", "tray-days").Limit("House", 12m, "trays").Limit("trays", 60m, "at once")
            .Crop("Leeks").Planting("L1", "Leeks", "One", 5m, "2025-05-05", "2025-06-02", sown: "2025-04-20", trays: 12m)
            .Planting("L2", "Leeks", "One", 5m, "2025-05-05", "2025-06-02", sown: "2025-04-20")
            .Planting("L3", "Leeks", "One", 5m, "2025-05-05", "2025-06-02", trays: 9m)
            .Planting("L4", "Leeks", "One", 5m, "2025-05-05", "2025-06-02", sown: "2025-05-05", trays: 7m);
        ScarceResource[] trays = [.. Of(farm).Resources.Where(thing => thing.Kind == ScarceKind.Trays)];

        Assert.Equal([("house", 15, 12m), ("trays", 0, 60m)], trays.Select(thing => (thing.Name, thing.Short.Count, thing.Spans[0].Limit)));
        Assert.All(trays, thing => Assert.Equal(15 * 12m, thing.Spans.Sum(span => span.Used)));
        Assert.Equal([("Leeks", 180m)], trays[0].Crops.Select(use => (use.Crop.Name, use.Use)));
    }

    /// <summary>Plantings without trays, with none, or sown the day they were set: no tray is held against a limit.</summary>
    [Fact]
    public void Trays_WithoutPlantingsOrLimits_SayWhichIsMissing()
    {
        FarmBuilder Leeks(decimal? trays, string sown) => Farm().Crop("Leeks")
            .Planting("L1", "Leeks", "One", 5m, "2025-05-05", "2025-06-02", sown: sown, trays: trays);
        const string NoPlanting = "no planting says how many trays it had and when they were sown";

        foreach (FarmBuilder farm in (FarmBuilder[])[Leeks(null, "2025-04-20"), Leeks(0m, "2025-04-20"), Leeks(8m, "2025-05-05")])
        {
            WhatWasShort season = Of(farm.Pool("house", "tray-days").Limit("house", 12m, "trays").Limit("trays", 20m));
            Assert.DoesNotContain(season.Resources, thing => thing.Kind == ScarceKind.Trays);
            Assert.Equal([new NotChecked("house", NoPlanting), new NotChecked("trays", NoPlanting)],
                season.NotChecked.Where(item => item.Name != "hours"));
        }

        Assert.Equal([new NotChecked("trays", "no row of limits says how many there is room for")],
            Of(Leeks(8m, "2025-04-20")).NotChecked.Where(item => item.Name != "hours"));
    }

    /// <summary>
    /// Panels make 1 kWh a day in January and 4 in February; loads take 1.4, the battery gives two of its four kWh. On January 1 there are
    /// 1 made and 2 held, on the 6th the 1 alone; on February 1 the battery is empty in the morning, so the 4 made are all there is.
    /// </summary>
    [Fact]
    public void Power_OfPanelsAndBattery_IsHeldAgainstWhatThereWasThatDay()
    {
        FarmBuilder farm = Farm().With(settings => settings with
        {
            Supply = new PowerSupply
            {
                PanelKw = 2m,
                PanelYield = new MonthFigures([0.5m, 2m, 3m, 4m, 5m, 5m, 5m, 4m, 3m, 2m, 1m, 0.5m]),
                BatteryKwh = 4m,
                BatteryUsablePercent = 50m,
                BatteryEfficiencyPercent = 100m,
            },
        }).Pool("panels", "measured").Load("fan", "panels", "Kale", 100m, 14m, "2025-01-01", "2025-12-31");
        WhatWasShort season = Of(farm);
        ScarceResource power = season.Resources.Single(thing => thing.Kind == ScarceKind.Power);

        Assert.DoesNotContain(season.NotChecked, item => item.Name == "kWh");
        Assert.Equal(("panels", 365), (power.Name, power.Spans.Count));
        Assert.Equal([3.0, 2.6, 1.0, 4.0], new[] { 0, 1, 5, 31 }.Select(day => Math.Round((double)power.Spans[day].Limit, 9)));
        Assert.All(power.Spans.Take(40), span => Assert.Equal((1.4, LimitSource.Supply), (Math.Round((double)span.Used, 9), span.Source)));
        Assert.Equal(new DateOnly(2025, 1, 5), power.Short[0].From); // 1.4 held, 1 made on the 4th; 1 and 0.4 left on the 5th
        Assert.Empty(power.Crops);
    }

    /// <summary>750 W for 2 h are 1.5 kWh a day from the panels, 500 W for 4 h another 2 from the mill, which stays switched on.</summary>
    [Fact]
    public void Power_WithLimitsOfPools_CountsEachPoolsOwnLoads()
    {
        WhatWasShort season = Of(Farm().Pool("panels", "measured").Pool("mill", "measured")
            .Load("pump", "panels", "Kale", 750m, 2m, "2025-06-01", "2025-06-10")
            .Load("saw", "mill", "Kale", 500m, 4m, "2025-06-10", "9999-12-31")
            .Limit("panels", 1.6m, "kWh a day").Limit("mill", 2m, "kWh a day").Limit("kWh", 7m, "a day"));
        ScarceResource[] power = [.. season.Resources.Where(thing => thing.Kind == ScarceKind.Power)];

        Assert.Equal([("panels", 10, 1.5m), ("mill", 205, 2m), ("kWh", 0, 3.5m)],
            power.Select(thing => (thing.Name, thing.Short.Count, thing.Fullest!.Used)));
    }

    [Fact]
    public void Power_WithoutLoadsOrALimit_SaysWhichIsMissing()
    {
        WhatWasShort noLoads = Of(Farm().Limit("kWh", 3m, "a day"));
        Assert.DoesNotContain(noLoads.Resources, thing => thing.Kind == ScarceKind.Power);
        Assert.Contains(new NotChecked("kWh", "no row of loads"), noLoads.NotChecked);

        NotChecked noLimit = Assert.Single(Of(Farm().Pool("panels", "measured")
            .Load("pump", "panels", "Kale", 750m, 2m, "2025-06-01", "2025-06-10"))
            .NotChecked, item => item.Name == "kWh");
        Assert.StartsWith("no row of limits says how many there are a day, and ", noLimit.Reason, StringComparison.Ordinal);
        Assert.DoesNotContain(Of(Farm()).NotChecked, item => item.Name == "kWh");
    }
}
