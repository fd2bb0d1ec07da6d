using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Water;
using FarmEconomics.Tracing;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Decisions.Short;

/// <summary>What a sowing is still to bring: in a season over as it was, else by the crop's mean (docs/methods.md, section 19).</summary>
public class SowingWorthByHandTests
{
    /// <summary>
    /// Leaves of May 1, 2025. L brought 100 less 10 of packaging, its seed spent either way: 90, on 10 m for 92 days and 5 m for 46, four
    /// parts of five and one of its bed time. M brought 30, on 10 m for 61 days and, from May 11, on 5 m for 31. Together 120 on 30 m.
    /// </summary>
    private static FarmBuilder Farm(string asOf = "2025-12-31")
    {
        FarmBuilder farm = WholeFarm.Built().AsOf(asOf).Weather("2025-04-01", "2025-04-02", 8m).Block("A")
            .Channel("stall", ChannelKind.Market)
            .Spend("2025-05-01", 15m, "seed", planting: "L").Spend("2025-06-10", 10m, "packaging", planting: "L");
        foreach ((string bed, decimal length) in ((string, decimal)[])[("one", 10m), ("two", 5m), ("three", 10m), ("four", 5m)])
        {
            farm.Add<BedRow>(new RowValues { ["bed"] = bed, ["length_ft"] = length, ["block"] = "A" });
        }

        return farm.Planting("L", "Leaves", "one", 10m, "2025-05-01", "2025-08-01")
            .Planting("L", "Leaves", "two", 5m, "2025-05-01", "2025-06-16")
            .Pick("2025-06-10", "L", 20m).Pick("2025-06-20", "L", 10m).Pick("2025-06-30", "L", 10m)
            .Sell("2025-07-01", "Leaves", "stall", 40m, price: 2.5m, planting: "L")
            .Planting("M", "Leaves", "three", 10m, "2025-05-01", "2025-07-01")
            .Planting("M", "Leaves", "four", 5m, "2025-05-11", "2025-06-11")
            .Pick("2025-06-10", "M", 20m).Sell("2025-07-01", "Leaves", "stall", 20m, price: 1.5m, planting: "M");
    }

    private static WaterAndPower Of(FarmBuilder farm) => WaterAndPower.Of(SeasonCosts.Of(farm.Season(2025)));

    private static SowingWater Sowing(WaterAndPower supply, string planting, string bed) => supply.Farm.Sowings
        .Single(sowing => sowing.Planting.Name == planting && sowing.Stay.Bed.Name == bed);

    private static double? Still(WaterAndPower supply, SowingWater sowing, string day) =>
        supply.Worth.StillToCome(sowing, FarmBuilder.Day(day)) is { } money ? Math.Round(money, 6) : null;

    private static double? Left(WaterAndPower supply, SowingWater sowing, string day) =>
        supply.Worth.LeftToPick(sowing, FarmBuilder.Day(day)) is { } part ? Math.Round(part, 6) : null;

    /// <summary>Half of L was picked on June 10, a quarter each on the 20th and 30th.</summary>
    [Fact]
    public void SeasonOver_IsAsItWas()
    {
        WaterAndPower supply = Of(Farm());
        SowingWater one = Sowing(supply, "L", "one"), two = Sowing(supply, "L", "two"), three = Sowing(supply, "M", "three");

        Assert.Equal([72.0, 36.0, 36.0, 18.0, 0.0],
            new[] { "2025-06-10", "2025-06-11", "2025-06-20", "2025-06-21", "2025-07-01" }.Select(day => Still(supply, one, day)));
        Assert.Equal((18.0, 9.0), (Still(supply, two, "2025-06-10"), Still(supply, two, "2025-06-11")));
        Assert.Equal((1.0, 0.5, 0.0), (Left(supply, two, "2025-06-10"), Left(supply, two, "2025-06-20"), Left(supply, two, "2025-07-01")));
        Assert.Equal(30.0 * 610 / 765, Still(supply, three, "2025-06-10")!.Value, 6); // 10 m x 61 d of it and 5 m x 31 d
    }

    /// <summary>
    /// Leaves of 2026 on 10 m are worth 10 of the 120 / 30 a meter, 40. 40 of 60 were picked 40 days after planting, 10 after 50 days and
    /// 10 after 60. The stays of 2025 were 31, 46, 61 and 92 days: the upper of the middle two counts. On 5 m set ten
    /// days later, 20 come ten days later.
    /// </summary>
    [Fact]
    public void SeasonUnderWay_IsTheCropsMeanAsLongAfterPlanting()
    {
        FarmBuilder farm = Farm("2026-05-20").Planting("Next", "Leaves", "one", 10m, "2026-05-01")
            .Planting("Out", "Leaves", "two", 5m, "2026-05-01", "2026-05-15").Planting("Old", "Leaves", "three", 10m, "2026-03-01")
            .Pick("2026-04-19", "Old", 1m).Planting("Late", "Leaves", "four", 5m, "2026-05-11");
        WaterAndPower supply = Of(farm);
        SowingWater next = Sowing(supply, "Next", "one"), late = Sowing(supply, "Late", "four");

        Assert.Equal([40.0, 40.0, 13.333333, 13.333333, 6.666667, 0.0, 0.0], new[] { "2026-04-30", "2026-06-10", "2026-06-11", "2026-06-20",
            "2026-06-21", "2026-07-01", "2026-12-31" }.Select(day => Still(supply, next, day)));
        Assert.Equal(
            [(1.0, 20.0), (0.333333, 6.666667), (0.166667, 3.333333), (0.0, 0.0)],
            new[] { "2026-06-20", "2026-06-21", "2026-07-01", "2026-07-11" }
                .Select(day => (Left(supply, late, day), Still(supply, late, day))));
        Assert.Equal(4.0, supply.Worth.PerBedFoot(next.Planting.Crop)!.Value, 9);
        Assert.Equal(new DateOnly(2026, 7, 1), supply.Worth.EndOf(next.Stay));
        Assert.Equal(new DateOnly(2026, 5, 15), supply.Worth.EndOf(Sowing(supply, "Out", "two").Stay)); // as written
        Assert.Equal(new DateOnly(2026, 4, 20), supply.Worth.EndOf(Sowing(supply, "Old", "three").Stay)); // picked last 31 days ago: over
    }

    /// <summary>Chives set in 2024 were picked on June 10, 2025; the year after, all is to come up to that day.</summary>
    [Fact]
    public void Perennial_IsPickedOnTheSameDaysOfTheYear()
    {
        FarmBuilder farm = Farm("2026-05-20").Planting("C", "Chives", "four", 5m, "2024-05-01").Pick("2025-06-10", "C", 10m)
            .Sell("2025-06-10", "Chives", "stall", 10m, price: 5m);
        WaterAndPower supply = Of(farm);
        SowingWater[] years = [.. supply.Farm.Sowings.Where(sowing => sowing.Planting.Name == "C" && sowing.Span.CropYear >= 2025)];

        Assert.Equal([2025, 2026], years.Select(sowing => sowing.Span.CropYear));
        Assert.Equal((50.0, 0.0), (Still(supply, years[0], "2025-06-10"), Still(supply, years[0], "2025-06-11")));
        Assert.Equal((50.0, 0.0), (Still(supply, years[1], "2026-06-10"), Still(supply, years[1], "2026-06-11")));
        Assert.Equal(DateOnly.MaxValue, supply.Worth.EndOf(years[1].Stay));
    }

    /// <summary>
    /// Where the crop year begins in October, and for chives set in April of the year, the same holds: picked on June 10 of the year
    /// before,
    /// nothing of them is to come on June 11.
    /// </summary>
    [Theory]
    [InlineData(10, "2024-11-01", 2025)]
    [InlineData(1, "2026-04-01", 2026)]
    public void Perennial_IsPickedOnTheSameDaysOfItsCropYear(int startMonth, string setOn, int cropYear)
    {
        FarmBuilder farm = Farm("2026-05-20").With(settings => settings with { CropYearStartMonth = startMonth })
            .Planting("C", "Chives", "four", 5m, "2023-11-01", "2025-09-01").Pick("2025-06-10", "C", 10m)
            .Sell("2025-06-10", "Chives", "stall", 10m, price: 5m, planting: "C").Planting("D", "Chives", "four", 5m, setOn);
        FarmReview review = farm.Review();
        WaterAndPower supply = WaterAndPower.Of(SeasonCosts.Of(review.Season(cropYear - 1)));
        SowingWater chives = supply.Farm.Sowings.Single(sowing => sowing.Planting.Name == "D" && sowing.Span.CropYear == cropYear);
        double each = supply.Worth.PerBedFoot(chives.Planting.Crop)!.Value * 5;

        Assert.True(each > 0.0);
        Assert.Equal((Math.Round(each, 6), 0.0), (Still(supply, chives, "2026-06-10"), Still(supply, chives, "2026-06-11")));
    }

    /// <summary>
    /// Chives dug out on July 12 need 8 mm on two days and none to the end of the year. The soil gives 3 mm of the first, 50 liters the
    /// rest.
    /// </summary>
    [Fact]
    public void Perennial_ThatWasDugOut_NeedsNoWaterAfterwards()
    {
        FarmBuilder farm = WholeFarm.Built().Weather("2025-07-10", "2025-07-31", 8m).Block("A").Grows("A", "2025-07-10", "2025-07-12")
            .Channel("stall", ChannelKind.Market).Spend("2025-03-01", 300m, "rent").Limit("water", 50m, "liters a day")
            .Pick("2025-07-10", "A, bed 0", 10m).Sell("2025-07-10", "Chives", "stall", 10m, price: 160m);
        WaterAndPower supply = Of(farm);
        SowingWater chives = Assert.Single(supply.Farm.Sowings);

        Assert.Equal((new DateOnly(2025, 7, 12), 16.0), (chives.Span.End, chives.PotentialMm));
        Assert.Equal(0.0, supply.Water!.LostAtLimit!.Value, 6);
        Assert.Equal(0.0, chives.Need(new DateOnly(2025, 7, 12)));
    }

    /// <summary>Kale picked on the day it was set, as when plants are sold with their first leaves: half is gone the day after.</summary>
    [Fact]
    public void Mean_OfACropPickedOnItsFirstDay_CountsThatDay()
    {
        FarmBuilder farm = Farm().Crop("Kale").Planting("K", "Kale", "four", 5m, "2025-07-01", "2025-08-01").Pick("2025-07-01", "K", 20m)
            .Pick("2025-07-11", "K", 20m).Sell("2025-07-11", "Kale", "stall", 40m, price: 1m);
        SeasonReview season = farm.Season(2025);
        Enterprise kale = season.PlantingNamed("K").Enterprises[0];
        CropHarvest mean = CropHarvest.Of([new SowingHarvest(kale, new DateOnly(2025, 7, 1), 40.0,
            [.. season.Lots.Where(lot => lot.Enterprise == kale)])])!;

        Assert.Equal([1.0, 1.0, 0.5, 0.5, 0.0, 0.0], new[] { -1, 0, 1, 10, 11, 300 }.Select(mean.NotPicked));
        Assert.Equal((8.0, 31), (mean.WorthPerBedFoot, mean.DaysInBed));
    }

    /// <summary>Of what nothing was picked of, nothing is to come after the day it was set; no sowings have no mean.</summary>
    [Fact]
    public void Harvest_OfNothing_HasNothingToCome()
    {
        SeasonReview season = Farm().Planting("C", "Chives", "four", 5m, "2024-05-01", "2024-10-01").Pick("2025-05-01", "C", 1m)
            .Season(2025);
        Enterprise leaves = season.PlantingNamed("L").Enterprises[0], chives = season.PlantingNamed("C").Enterprises[0];
        SowingHarvest none = new(leaves, new DateOnly(2025, 5, 1), 90.0, []);

        Assert.Equal(0.0, none.NotPicked(new DateOnly(2025, 1, 1)));
        Assert.Equal([1.0, 0.0, 0.0], new[] { 0, 1, 2 }.Select(CropHarvest.Of([none])!.NotPicked));
        Assert.Equal(0.0, none.PartOf(season.PlantingNamed("M").Enterprises[0].Stays[0]));
        Assert.Equal(0m, chives.BedFootDays.Value); // dug out the year before
        Assert.Equal(0.0, new SowingHarvest(chives, new DateOnly(2025, 1, 1), 1.0, [])
            .PartOf(season.Trace.Stays.Single(stay => stay.Planting == chives.Planting)));
        Assert.Null(CropHarvest.Of([]));
    }

    /// <summary>
    /// Chard eaten in June before any price of it is on record; what was sold in July doesn't tell what the crop is worth.
    /// </summary>
    [Fact]
    public void Worth_OfACropThatIsUnknownInPart_IsUnknown()
    {
        FarmBuilder farm = Farm("2026-05-20").Crop("Chard").Price("Chard", 3m, from: "2025-07-01").Channel("home", ChannelKind.Household)
            .Planting("C1", "Chard", "four", 2m, "2025-07-01", "2025-08-01").Pick("2025-06-02", "C1", 10m)
            .Sell("2025-06-02", "Chard", "home", 10m, planting: "C1")
            .Planting("C2", "Chard", "four", 2m, "2025-07-01", "2025-08-01").Pick("2025-07-02", "C2", 10m)
            .Sell("2025-07-02", "Chard", "stall", 10m, planting: "C2");
        WaterAndPower supply = Of(farm);

        Assert.Null(supply.Worth.PerBedFoot(supply.Season.Records.Crop("Chard")));
        Assert.Null(Still(supply, Sowing(supply, "C1", "four"), "2025-06-01"));
        Assert.Equal(30.0, Still(supply, Sowing(supply, "C2", "four"), "2025-07-02"));
    }

    /// <summary>
    /// Members paid 200, 20 of it a fee; two weeks' boxes held 30 of beets each and nothing else. Without them 60 is bought in, against the
    /// 180 that stand to their credit.
    /// </summary>
    [Fact]
    public void MoreThanPaid_LeavesOutTheFeesOnShares()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { UnpaidHours = UnpaidHours.None }).AsOf("2025-12-31").Bed("One")
            .Spend("2025-04-01", 10m, "insurance").Channel("stall", ChannelKind.Market)
            .Channel("boxes", ChannelKind.Share, fee: 10m, valuesFrom: "stall").Income("2025-03-01", "boxes", 200m).Crop("Beets")
            .Price("Beets", 3m)
            .Planting("B", "Beets", "One", 100m, "2025-05-01", "2025-09-01").Pick("2025-07-01", "B", 20m)
            .Sell("2025-07-02", "Beets", "boxes", 10m).Sell("2025-07-09", "Beets", "boxes", 10m);
        SeasonReview season = farm.Season(2025);

        SeasonCosts costs = SeasonCosts.Of(season);
        Assert.Equal(60m - 180m, new BoxesOfCrop(costs, season.CropNamed("Beets")).MoreThanPaid(season.PlantingNamed("B").Enterprises[0]));

        // So beets add 60, the crop as its one planting: the payments stay without them.
        Assert.Equal(60m, Contribution.Of(costs, season.CropNamed("Beets")).Value);
        Assert.Equal(60m, Contribution.Of(costs, season.PlantingNamed("B")).Value);
    }
}
