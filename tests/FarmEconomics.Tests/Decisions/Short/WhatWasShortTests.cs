using CsCheck;
using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Generators;
using FarmEconomics.Tests.Reports;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Short;

public class WhatWasShortTests
{
    private static readonly long Farms = long.TryParse(Environment.GetEnvironmentVariable("FARMECONOMICS_FARMS"), out long farms) ? farms
        : 100;

    /// <summary>
    /// Two open beds of 100: kale holds one for four weeks from May 5, beets 80 of the other for the two in the middle. A tunnel stands
    /// empty.
    /// </summary>
    private static FarmBuilder Farm() => new FarmBuilder(new FarmSettings { OwnerWage = 20m, InterestPercent = 5m }).AsOf("2025-12-31")
        .Bed("One").Bed("Two").Bed("Roof", 50m, structure: "Tunnel").Channel("stall", ChannelKind.Market).Worker("me", WorkerKind.Owner)
            .Task("pick", Stage.Harvest)
        .Pool("cold", "crate-days").Pool("house", "tray-days")
        .Crop("Beets", perCrate: 10m).Planting("B1", "Beets", "Two", 80m, "2025-05-12", "2025-05-26").Pick("2025-05-13", "B1", 200m)
            .Sell("2025-05-13", "Beets", "stall", 200m, price: 1.2m)
        .Crop("Kale", perCrate: 10m).Planting("K1", "Kale", "One", 100m, "2025-05-05", "2025-06-02", sown: "2025-04-20", trays: 12m)
            .Pick("2025-05-13", "K1", 150m).Sell("2025-05-15", "Kale", "stall", 150m, price: 6m)
        .Work("2025-05-06", "me", 4m, "pick", crop: "Kale").Work("2025-05-13", "me", 5m, "pick", crop: "Beets")
            .Work("2025-05-14", "me", 6m, "pick", crop: "Kale")
        .Spend("2025-05-01", 30m, "seed", crop: "Beets").Spend("2025-03-01", 300m, "rent");

    private static WhatWasShort Of(FarmBuilder farm, decimal shortAt = WhatWasShort.UsualShortAt) =>
        WhatWasShort.Of(SeasonCosts.Of(farm.Season(2025)), shortAt);

    private static ScarceResource Thing(WhatWasShort season, ScarceKind kind, string? name = null) =>
        season.Resources.Single(thing => thing.Kind == kind && (name is null || thing.Name == name));

    /// <summary>
    /// By hand: 180 of 200 bed-feet from May 12 to 25. Kale adds 900 - 10 h x 20 = 700 on 200 bed-foot-weeks, beets 240 - 30 - 100 = 110 on
    /// 160.
    /// </summary>
    [Fact]
    public void Beds_ByHand_AreShortInTheTwoWeeksBothStood()
    {
        WhatWasShort season = Of(Farm());
        ScarceResource open = Thing(season, ScarceKind.BedLength, "open field");

        Assert.Equal([new DateOnly(2025, 5, 12), new DateOnly(2025, 5, 19)], open.Short.Select(span => span.From));
        Assert.Equal([(180m, 200m, LimitSource.Beds)], open.Short.Select(span => (span.Used, span.Limit, span.Source)).Distinct());
        Assert.Equal([("Kale", 700m, 200m, 3.5m), ("Beets", 110m, 160m, 0.6875m)],
            open.Crops.Select(use => (use.Crop.Name, use.Contribution.Value!.Value, use.Use, use.PerUnit.Value!.Value)));
        Assert.Empty(Thing(season, ScarceKind.BedLength, "Tunnel").Short);
        Assert.Equal(52, open.Spans.Count);
    }

    [Fact]
    public void Hours_WithoutALimit_AreHeldAgainstTheMostEverWorked()
    {
        ScarceResource hours = Thing(Of(Farm().Work("2024-06-04", "me", 12.5m, "pick", crop: "Kale")), ScarceKind.Hours);

        ScarceSpan week = Assert.Single(hours.Short);
        Assert.Equal((new DateOnly(2025, 5, 12), 11m, 12.5m, LimitSource.MostEver), (week.From, week.Used, week.Limit, week.Source));
        Assert.Equal([("Kale", 6m), ("Beets", 5m)], hours.Crops.Select(use => (use.Crop.Name, use.Use)));
    }

    [Fact]
    public void Hours_OfOwnerAndHired_AreListsApart()
    {
        WhatWasShort season = Of(Farm().Worker("Ada", WorkerKind.Hired, 15m).Work("2025-05-13", "Ada", 3m, "pick", crop: "Beets"));

        Assert.Equal([(ScarceKind.Hours, 14m), (ScarceKind.OwnHours, 11m), (ScarceKind.HiredHours, 3m)],
            season.Resources.Where(thing => thing.Name.Contains("hours")).Select(thing => (thing.Kind, thing.Fullest!.Used)));
        Assert.Equal(["Beets"], Thing(season, ScarceKind.HiredHours).Crops.Select(use => use.Crop.Name));
    }

    [Fact]
    public void Limit_WrittenForTheYearAfter_CountsAsWell()
    {
        ScarceResource hours = Thing(Of(Farm().Limit("Labor", 10m, "hours a week", "2026-05-01", "2026-05-31")), ScarceKind.Hours);

        Assert.Equal([(new DateOnly(2025, 5, 12), 10m, LimitSource.Limits)],
            hours.Short.Select(span => (span.From, span.Limit, span.Source)));
        Assert.Equal(1.1m, hours.Short[0].Share);
    }

    /// <summary>
    /// Fifteen crates of kale lay two days, from the pick on the 13th to the day before the sale; the beets left the day they were picked.
    /// </summary>
    [Fact]
    public void Crates_ByHand_LieFromThePickToTheDayBeforeTheyLeft()
    {
        ScarceResource cold = Thing(Of(Farm().Limit("cold", 16m, "crates")), ScarceKind.Crates);

        Assert.Equal([new DateOnly(2025, 5, 13), new DateOnly(2025, 5, 14)], cold.Short.Select(span => span.From));
        Assert.Equal([("Kale", 30m)], cold.Crops.Select(use => (use.Crop.Name, use.Use)));
        Assert.Equal(30m, cold.Spans.Sum(span => span.Used));
    }

    [Fact]
    public void Trays_ByHand_StandFromSowingToTheBed()
    {
        ScarceResource house = Thing(Of(Farm().Limit("House", 12m, "trays")), ScarceKind.Trays);

        Assert.Equal((new DateOnly(2025, 4, 20), new DateOnly(2025, 5, 4), 15),
            (house.Short[0].From, house.Short[^1].From, house.Short.Count));
        Assert.Equal(180m, Assert.Single(house.Crops).Use);
    }

    [Fact]
    public void Power_WithALimit_IsHeldAgainstTheLoadsOfTheDay()
    {
        WhatWasShort season = Of(Farm().Pool("panels", "measured").Load("pump", "panels", "cold", 750m, 2m, "2025-06-01", "2025-06-10")
            .Load("fan", "panels", "cold", 500m, 4m, "2025-06-10", "2025-06-11").Limit("kWh", 3m, "kWh a day"));

        ScarceResource power = Thing(season, ScarceKind.Power);
        Assert.Equal([(new DateOnly(2025, 6, 10), 3.5m)], power.Short.Select(span => (span.From, span.Used)));
        Assert.False(power.IsRanked);
    }

    [Fact]
    public void NotChecked_SaysWhatNoRecordTells()
    {
        WhatWasShort season = Of(Farm().Limit("water", 3200m, "gallons a day").Limit("sprinklers", 12m));

        Assert.Equal(["cold", "trays", "sprinklers", "water"], season.NotChecked.Select(item => item.Name));
        Assert.Equal("no row of limits says how many hours a day they run (watering, hours a day)", season.NotChecked[2].Reason);
        string words = ShortWords.Sentence(season);
        Assert.Contains("Short in 2025: beds, open field (2 weeks between May 12 and May 19; at most 180 of 200)", words,
            StringComparison.Ordinal);
        Assert.Contains("water (there is no weather table)", words, StringComparison.Ordinal);
        Assert.Contains("cold (no row of limits says how many crates it holds)", words, StringComparison.Ordinal);
    }

    /// <summary>
    /// Days on which the well was nearly all used and days on which more of it would have saved harvest are two things: where they aren't
    /// as many, the words say which is which.
    /// </summary>
    [Fact]
    public void Water_NearItsLimit_IsToldApartFromDaysThatCostHarvest()
    {
        WhatWasShort season = WhatWasShort.Of(SeasonCosts.Of(DemoSeason.Review.Season(2025)));
        int near = Thing(season, ScarceKind.Water).Short.Count, cost = season.WaterAndPower.Water!.DaysShort;
        Assert.NotEqual(near, cost);
        string told = $"Water was that near its limit on {near} days; "
            + $"the page on water counts the {cost} days on which the limit cost harvest.";
        Assert.Contains(told, ShortWords.Sentence(season), StringComparison.Ordinal);
        Assert.Contains(told, ShortWords.Things(season).Notes);
    }

    [Fact]
    public void Crops_WithoutCosts_SayWhyNothingIsRanked()
    {
        FarmBuilder farm = new FarmBuilder().Bed("One").Channel("stall", ChannelKind.Market).Crop("Kale")
            .Planting("K1", "Kale", "One", 100m, "2025-05-05", "2025-06-02").Pick("2025-05-13", "K1", 10m)
            .Sell("2025-05-13", "Kale", "stall", 10m, price: 6m);
        WhatWasShort season = Of(farm);

        Assert.Equal("no expense records", Assert.Single(Thing(season, ScarceKind.BedLength).Crops).PerUnit.Reason);
        Assert.Contains(season.NotChecked, item => item.Name == "hours");
        Assert.Throws<ArgumentOutOfRangeException>(() => WhatWasShort.Of(SeasonCosts.Of(farm.Season(2025)), 0m));
    }

    /// <summary>
    /// Nobody uses more of a thing than was in use: with every span called short, the crops' use is at most the spans', and where it is all
    /// of one crop year's, all of it.
    /// </summary>
    [Fact]
    public void Use_OfAnyFarm_IsNeverMoreThanWasInUse() => RandomFarm.Gen.Sample(
        farm =>
        {
            FarmReview review = farm.Farm.Review();
            foreach (Pool pool in review.Records.Pools.Where(pool => pool.Basis.Kind == BasisKind.CrateDays || pool.Basis.Kind == BasisKind.TrayDays))
            {
                farm.Farm.Limit(pool.Name, 5m);
            }

            review = farm.Farm.Review();
            foreach (int year in review.Trace.CropYears)
            {
                WhatWasShort season = WhatWasShort.Of(SeasonCosts.Of(review.Season(year)), 0.0000001m);
                foreach (ScarceResource thing in season.Resources)
                {
                    decimal days = thing.Kind == ScarceKind.BedLength
                        ? thing.Spans.Sum(span => span.Used * Math.Min(7, review.Records.AsOf.DayNumber + 1 - span.From.DayNumber)) / 7m
                        : thing.Spans.Sum(span => span.Used);
                    Assert.True(thing.Crops.Sum(use => use.Use) <= days
                        + 0.0001m, $"{year} {thing.Kind} {thing.Name}: {thing.Crops.Sum(use => use.Use)} of {days}");
                    Assert.All(thing.Crops,
                        use => Assert.True(use.Use > 0m && (use.PerUnit.IsAvailable || use.PerUnit.Reason!.Length > 0)));
                }

                Assert.NotEmpty(ShortWords.Sentence(season));
                Assert.NotEmpty(ShortWords.Things(season).ToPlainText());
            }
        },
        iter: Farms);

    /// <summary>The cold room's day by day, added up from the lots once more without the program's way of laying spans out.</summary>
    [Fact]
    public void DemoFarm_ColdRoom_IsFullestInMidOctoberAndAddsUpToItsCrateDays()
    {
        SeasonReview review = DemoSeason.Review.Season(2025);
        WhatWasShort season = WhatWasShort.Of(SeasonCosts.Of(review));
        ScarceResource cold = Thing(season, ScarceKind.Crates, "cold room");

        Assert.Equal(103.0m, decimal.Round(cold.Fullest!.Used, 1));
        Assert.InRange(cold.Fullest.From, new DateOnly(2025, 10, 8), new DateOnly(2025, 10, 18));
        decimal onTheDay = DemoSeason.Review.Trace.Lots.Where(lot => lot.Date <= cold.Fullest.From
            && lot.Enterprise.Crop.Stores.Contains("cold room"))
            .Sum(lot => (lot.Quantity - lot.Draws.Where(draw => draw.Disposition.Row.Date <= cold.Fullest.From)
                .Sum(draw => draw.Quantity)
                - (lot.KeptUntil <= cold.Fullest.From ? lot.Remaining
                : 0m)) / lot.Enterprise.Crop.Row.UnitsPerCrate!.Value / lot.Enterprise.Crop.Stores.Count);
        Close.To(onTheDay, cold.Fullest.Used, 0.0001m);
        Assert.Empty(season.NotChecked);
        Assert.Equal(72m, Thing(season, ScarceKind.Sprinklers).Fullest!.Limit);
        Assert.True(ShortWords.Crops(season).Tables.Count == season.Short.Count(thing => thing.IsRanked));
    }
}
