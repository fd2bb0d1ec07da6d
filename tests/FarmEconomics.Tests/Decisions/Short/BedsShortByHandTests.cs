using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Short;

/// <summary>Bed length by cover and week, and what crops add per bed-foot-week of it (docs/methods.md, section 16).</summary>
public class BedsShortByHandTests
{
    /// <summary>
    /// Open field: a wide bed of 100 ft at 60 in, 200 bed-feet; 40 more from July 7 to September 7. From June 2 on a tunnel of
    /// 100 ft stands, 60 ft under fleece all year. The beets held 90 ft of the tunnel for 14 days and 45 of fleece for 28: half of their
    /// 2,520
    /// bed-foot-days each.
    /// </summary>
    private static FarmBuilder Farm()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { UnpaidHours = UnpaidHours.None }).AsOf("2025-12-31")
            .Channel("stall", ChannelKind.Market).Spend("2025-03-01", 300m, "rent")
            .Bed("Wide", 100m, 60m).Bed("New", 40m).Bed("T", 100m, structure: "Tunnel").Bed("F", 60m, structure: "Fleece");
        farm.Set(farm.Tables.Beds[1], BedRow.FromColumn, FarmBuilder.Day("2025-07-07"))
            .Set(farm.Tables.Beds[1], BedRow.ToColumn, FarmBuilder.Day("2025-09-07"))
            .Set(farm.Tables.Beds[2], BedRow.FromColumn, FarmBuilder.Day("2025-06-02"))
            .Set(farm.Tables.Beds[2], BedRow.ToColumn, DateOnly.MaxValue);
        return Sold(Sold(Sold(Sold(farm, "Kale", 340m), "Lettuce", 7m), "Spinach", 50m), "Beets", 200m)
            .Planting("Kale", "Kale", "Wide", 85m, "2025-05-05", "2025-05-19")
            .Planting("Lettuce", "Lettuce", "Wide", 7m, "2025-05-07", "2025-05-07")
            .Planting("Spinach", "Spinach", "Wide", 50m, "2025-06-02", "2025-06-30")
            .Planting("Beets", "Beets", "T", 90m, "2025-06-02", "2025-06-16")
            .Planting("Beets", "Beets", "F", 45m, "2025-06-02", "2025-06-30");
    }

    private static FarmBuilder Sold(FarmBuilder farm, string crop, decimal amount) => farm.Crop(crop)
        .Pick("2025-07-01", crop, 10m).Sell("2025-07-01", crop, "stall", 10m, amount: amount, planting: crop);

    private static WhatWasShort Of(FarmBuilder farm, decimal shortAt = WhatWasShort.UsualShortAt) =>
        WhatWasShort.Of(SeasonCosts.Of(farm.Season(2025)), shortAt);

    private static ScarceResource Cover(WhatWasShort season, string name) => season.Resources.Single(thing => thing.Name == name);

    /// <summary>
    /// 85 ft of the wide bed are 170 of 200 bed-feet, just short; the lettuce, set and cleared the same day, held 14 for one day of seven.
    /// </summary>
    [Fact]
    public void OpenField_ByHand_IsShortAtJustEightyFivePercent()
    {
        ScarceResource open = Cover(Of(Farm()), "open field");

        Assert.Equal([(new DateOnly(2025, 5, 5), 172m, 200m), (new DateOnly(2025, 5, 12), 170m, 200m)],
            open.Short.Select(span => (span.From, span.Used, span.Limit)));
        Assert.Equal([("Kale", 340m, 340m, 1m), ("Lettuce", 7m, 2m, 3.5m)], open.Crops.OrderBy(use => use.Crop.Index)
            .Select(use => (use.Crop.Name, use.Contribution.Value!.Value, use.Use, use.PerUnit.Value!.Value)));
        Assert.Equal(["Lettuce", "Kale"], open.Crops.Select(use => use.Crop.Name));
    }

    [Fact]
    public void Beds_WithDates_CountWhileTheyAreThere()
    {
        WhatWasShort season = Of(Farm());

        Assert.Equal([(new DateOnly(2025, 6, 30), 200m), (new DateOnly(2025, 7, 7), 240m), (new DateOnly(2025, 9, 1), 240m),
            (new DateOnly(2025, 9, 8), 200m)], Cover(season, "open field").Spans
            .Where(span => span.From == new DateOnly(2025, 6, 30) || span.From == new DateOnly(2025, 7, 7)
                || span.From == new DateOnly(2025, 9, 1) || span.From == new DateOnly(2025, 9, 8)).Select(span => (span.From, span.Limit)));
        ScarceResource tunnel = Cover(season, "Tunnel");
        Assert.Equal((new DateOnly(2025, 6, 2), new DateOnly(2025, 12, 29), 31),
            (tunnel.Spans[0].From, tunnel.Spans[^1].From, tunnel.Spans.Count));
        Assert.All(tunnel.Spans, span => Assert.Equal(100m, span.Limit));
    }

    /// <summary>Half of the beets' 200 belong to the tunnel, where they used 90 ft for two weeks.</summary>
    [Fact]
    public void PlantingUnderTwoCovers_CountsWithItsPartByBedTime()
    {
        ScarceResource tunnel = Cover(Of(Farm()), "Tunnel");

        Assert.Equal(2, tunnel.Short.Count);
        ScarceUse beets = Assert.Single(tunnel.Crops);
        Assert.Equal(("Beets", 100m, 180m), (beets.Crop.Name, beets.Contribution.Value, beets.Use));
    }

    /// <summary>Called short at 70 %, the fleece with 45 of 60 ft is as well; at 85 % it isn't.</summary>
    [Fact]
    public void ShortAt_SetLower_ListsMore()
    {
        WhatWasShort usual = Of(Farm()), lower = Of(Farm(), 0.7m);

        Assert.Equal((0.85m, 0.7m), (usual.ShortAt, lower.ShortAt));
        Assert.Equal((0, 4), (Cover(usual, "Fleece").Short.Count, Cover(lower, "Fleece").Short.Count));
        Assert.Equal(100m, Assert.Single(Cover(lower, "Fleece").Crops).Contribution.Value);
        Assert.Equal(["open field", "Tunnel"], usual.Short.Select(thing => thing.Name));
    }

    /// <summary>
    /// Four crops on 25 ft each for four weeks: 100 bed-foot-weeks a crop. Nobody knows what chard brings; kale and beets tie.
    /// </summary>
    [Fact]
    public void Crops_AreRankedByWhatTheyAddAndUnknownOnesComeLast()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { UnpaidHours = UnpaidHours.None }).AsOf("2025-12-31").Bed("One")
            .Channel("stall", ChannelKind.Market).Spend("2025-03-01", 300m, "rent").Crop("Chard").Pick("2025-07-01", "Chard", 10m);
        farm = Sold(Sold(Sold(farm, "Kale", 100m), "Beets", 100m), "Leeks", 300m);
        foreach (string crop in (string[])["Chard", "Kale", "Beets", "Leeks"])
        {
            farm.Planting(crop, crop, "One", 25m, "2025-05-05", "2025-06-02");
        }

        ScarceResource beds = Cover(Of(farm), "open field");
        Assert.Equal([("Leeks", 3m), ("Kale", 1m), ("Beets", 1m), ("Chard", null)],
            beds.Crops.Select(use => (use.Crop.Name, use.PerUnit.Value)));
        Assert.All(beds.Crops, use => Assert.Equal(100m, use.Use));
    }

    /// <summary>
    /// Chard eaten in June, before any price of it is on record, has no value; what was sold in July at 3 has. Of the two together it isn't
    /// known what they added.
    /// </summary>
    [Fact]
    public void Crop_OfWhichOnePlantingIsUnknown_IsUnknown()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { UnpaidHours = UnpaidHours.None }).AsOf("2025-12-31").Bed("One")
            .Channel("stall", ChannelKind.Market).Channel("home", ChannelKind.Household).Spend("2025-03-01", 300m, "rent")
            .Crop("Chard").Price("Chard", 3m, from: "2025-07-01")
            .Planting("C1", "Chard", "One", 50m, "2025-05-05", "2025-06-02").Pick("2025-06-01", "C1", 10m)
            .Planting("C2", "Chard", "One", 50m, "2025-05-05", "2025-08-04").Pick("2025-07-10", "C2", 10m)
            .Sell("2025-06-01", "Chard", "home", 10m, planting: "C1").Sell("2025-07-10", "Chard", "stall", 10m, planting: "C2");
        SeasonCosts costs = SeasonCosts.Of(farm.Season(2025));
        Assert.Equal([null, 30m], costs.Season.Plantings.Select(one => Contribution.Of(costs, one).Value));

        ScarceUse chard = Assert.Single(Cover(WhatWasShort.Of(costs), "open field").Crops);
        Assert.StartsWith("no price of Chard is on record", chard.PerUnit.Reason, StringComparison.Ordinal);
        Assert.Equal(400m, chard.Use);
    }
}
