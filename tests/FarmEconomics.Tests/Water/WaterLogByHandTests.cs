using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tracing;
using FarmEconomics.Water;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>
/// Two blocks on a metric farm, so that liters and millimeters are whole: North with two beds of 50 m x 1 m, of which four fifths of the
/// water reach the roots, South with a covered one of 20 m x 1 m. A sprinkler of North gives 100 liters an hour.
/// </summary>
public class WaterLogByHandTests
{
    // Worked out for every test: a mutation tester sees only what happens while a test runs.
    private FarmWater Farm { get; } = Of(
        Built()
            .Add<WateringRow>(Row("2025-06-02", "North", null, 1000m, null))
            .Add<WateringRow>(Row("2025-06-02", null, "N1", 250m, null))
            .Add<WateringRow>(Row("2025-06-02", "North", null, null, 5m))
            .Add<WateringRow>(Row("2025-06-10", "South", null, 100m, null))
            .Add<WateringRow>(Row("2025-06-30", "South", null, null, 2m))
            .Add<WateringRow>(Row("2025-06-04", "South", null, 50m, null))
            .Add<WateringRow>(Row("2025-06-26", "North", null, 10m, null))
            .Add<WateringRow>(Row("2025-06-24", null, "Far", 70m, null))
    );

    private SowingWater Sowing(string planting) => Farm.Sowings.Single(one => one.Planting.Name == planting);

    [Fact]
    public void Blocks_HaveTheAreaOfTheirBeds()
    {
        Assert.Equal([100.0, 20.0], Farm.Blocks.Select(block => Math.Round(block.AreaM2, 9)));
        Assert.Equal(
            [(150.0, 0.8), (120.0, WaterBlock.UsualEfficiency)],
            Farm.Blocks.Select(block => (block.SoilMmPerM, block.Efficiency))
        );
        Assert.Equal(
            (100.0, 400.0, 125.0),
            (Farm.Blocks[0].SprinklerLiters!.Value, Farm.Blocks[0].SetLiters!.Value, Math.Round(Farm.Blocks[0].LitersPerMm, 9))
        );
        Assert.Equal(50.0, Sowing("in N1").AreaM2, 1e-9);
    }

    /// <summary>1,000 liters and 5 hours of 100 on 100 m2, four fifths of it: 12 mm; on bed N1 of 50 m2 another 250 liters: 4 mm.</summary>
    [Fact]
    public void Water_ReachesTheRootsOfItsBlockOrBed()
    {
        DateOnly day = new(2025, 6, 2);
        Assert.Equal(16.0, Farm.Log.On(Sowing("in N1"), day), 1e-9);
        Assert.Equal(12.0, Farm.Log.On(Sowing("in N2"), day), 1e-9);
        Assert.Equal(0.0, Farm.Log.On(Sowing("in S"), day));
        Assert.Equal((1750.0, 0.0), (Farm.Log.Liters(day), Farm.Log.Liters(day.AddDays(1))));
        Assert.True(Farm.Log.IsThere);
        Assert.Equal(1, Farm.Log.NotLaid); // a bed in no block
    }

    /// <summary>North: two weeks between June 2 and 26 without a row. South: the week of June 16 and 23 lie between, that of June 30 has a row nobody can measure.</summary>
    [Fact]
    public void Weeks_WithoutARowOrWithoutAnAmount_AreUnknown() => Assert.Equal(
        [("North", 9), ("North", 16), ("South", 16), ("South", 23), ("South", 30)],
        Farm.Log.Unknown.Select(week => (week.Block.Name, week.Monday.Day)));

    /// <summary>Under the roof only the days between the first and the last row with an amount are known, June 4 to 10.</summary>
    [Fact]
    public void Days_UnderARoof_AreKnownBetweenTheFirstRowAndTheLast()
    {
        int[] known = [.. Enumerable.Range(1, 30).Where(day => !Farm.Log.IsUnknown(Sowing("in S"), new DateOnly(2025, 6, day)))];
        Assert.Equal([4, 5, 6, 7, 8, 9, 10], known);
        Assert.False(Farm.Log.IsUnknown(Sowing("in N1"), new DateOnly(2025, 6, 1)));
        Assert.True(Farm.Log.IsUnknown(Sowing("in N1"), new DateOnly(2025, 6, 9)));
    }

    [Fact]
    public void Log_WithoutARow_IsNotThere() => Assert.False(Of(Built()).Log.IsThere);

    /// <summary>A perennial has a curve for each crop year, its roots grown: from its first day, or the year's, to the year's last, or its own.</summary>
    [Fact]
    public void Perennial_IsFollowedYearByYear()
    {
        FarmBuilder farm = Built()
            .Perennial("Rhubarb")
            .Planting("stand", "Rhubarb", "N2", 10, "2024-05-05", "2025-08-01")
            .Pick("2025-06-01", "stand", 5);
        SowingWater[] years = [.. Of(farm).Sowings.Where(one => one.Planting.Name == "stand")];
        Assert.Equal(
            [(new DateOnly(2025, 1, 1), new DateOnly(2025, 8, 1), 2025)],
            years.Select(one => (one.Span.From, one.Span.End, one.Span.CropYear))
        );

        // 150 mm a meter: all of a stand's depth on the first day, 0.20 m of what was just planted.
        Assert.Equal(years[0].Crop.RootDepthM * 150, years[0].Soil(new DateOnly(2025, 1, 1)).Total, 1e-9);
        Assert.Equal(0.20 * 150, Sowing("in N1").Soil(new DateOnly(2025, 5, 20)).Total, 1e-9);
    }

    [Fact]
    public void Nothing_WithoutBlocksOrWeather_SaysWhy()
    {
        Assert.Equal("there is no blocks table", FarmWater.Of(Built().Without<BlockRow>(_ => true).Review().Trace).WhyUnknown);
        FarmWater dark = FarmWater.Of(Built().Without<WeatherRow>(_ => true).Review().Trace);
        Assert.Equal(("there is no weather table", 0), (dark.WhyUnknown, dark.Sowings.Count));
        Assert.Null(Farm.WhyUnknown);
    }

    /// <summary>Days after the weather table are looked at only when asked for; beds may be taken to be free on another day.</summary>
    [Fact]
    public void DaysToCome_AreLookedAtWhenAskedFor()
    {
        FarmTrace trace = Built().Review().Trace;
        DateOnly after = new(2025, 7, 5);
        Assert.False(FarmWater.Of(trace).WeatherOn(after).IsKnown);
        Assert.Equal(EtSource.Ahead, FarmWater.Of(trace, ahead: true).WeatherOn(after).Source);
        Assert.Equal(EtSource.Station, FarmWater.Of(trace, ahead: true).WeatherOn(new DateOnly(2025, 6, 30)).Source);
        Assert.All(FarmWater.Of(trace, _ => new DateOnly(2025, 6, 20)).Sowings, one =>
            Assert.Equal(new DateOnly(2025, 6, 20), one.Span.End)
        );
        Assert.Empty(FarmWater.Of(trace, _ => new DateOnly(2025, 6, 1)).Sowings); // free before the weather begins
    }

    /// <summary>The grower's own coefficients and Ky go before the table's, one by one, and are named as given.</summary>
    [Fact]
    public void Crop_WithFiguresOfItsOwn_GoesBeforeTheTable()
    {
        CropWater listed = CropWaterTable.Find("Kale");
        CropWater Kale(NumberColumn? column)
        {
            FarmBuilder farm = new FarmBuilder().Crop("Kale");
            return CropWater.Of((column is null ? farm : farm.Set(farm.Tables.Crops[0], column, 0.77m)).Link().Crop("Kale"));
        }

        Assert.Equal((listed.Coefficients, listed.Response, listed.CoefficientsFrom, listed.ResponseFrom), Of4(Kale(null)));
        Assert.Equal(
            (listed.Coefficients with { Initial = 0.77 }, listed.Response, WaterFigure.Given, listed.ResponseFrom),
            Of4(Kale(CropRow.KcIniColumn))
        );
        Assert.Equal(
            (listed.Coefficients with { Mid = 0.77 }, listed.Response, WaterFigure.Given, listed.ResponseFrom),
            Of4(Kale(CropRow.KcMidColumn))
        );
        Assert.Equal(
            (listed.Coefficients with { End = 0.77 }, listed.Response, WaterFigure.Given, listed.ResponseFrom),
            Of4(Kale(CropRow.KcEndColumn))
        );
        Assert.Equal((listed.Coefficients, 0.77, listed.CoefficientsFrom, WaterFigure.Given), Of4(Kale(CropRow.KyColumn)));
        Assert.NotEqual(WaterFigure.Given, listed.CoefficientsFrom);
    }

    private static (CropCoefficients, double, WaterFigure, WaterFigure) Of4(CropWater crop) =>
        (crop.Coefficients, crop.Response, crop.CoefficientsFrom, crop.ResponseFrom);

    private static FarmWater Of(FarmBuilder farm) => FarmWater.Of(farm.Review().Trace);

    private static RowValues Row(string day, string? block, string? bed, decimal? liters, decimal? hours) =>
        new() { ["date"] = FarmBuilder.Day(day), ["block"] = block, ["bed"] = bed, ["gallons"] = liters, ["sprinkler_hours"] = hours };

    private static FarmBuilder Built()
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings { LengthUnit = LengthUnit.M, StandardBedWidthIn = 100m })
            .AsOf("2025-12-31")
            .Crop("Kale");
        foreach (
            (string bed, decimal length, string? block, string? structure) in (ReadOnlySpan<(string, decimal, string?, string?)>)
                [("N1", 50m, "North", null), ("N2", 50m, "North", null), ("S", 20m, "South", "Tunnel"), ("Far", 10m, null, null)]
        )
        {
            farm.Add<BedRow>(new RowValues { ["bed"] = bed, ["length_ft"] = length, ["block"] = block, ["structure"] = structure });
        }

        farm.Add<BlockRow>(
                new RowValues
                {
                    ["block"] = "North",
                    ["soil_water_in_ft"] = 150m,
                    ["efficiency_percent"] = 80m,
                    ["sprinkler_gph"] = 100m,
                    ["set_gallons"] = 400m,
                }
            )
            .Add<BlockRow>(new RowValues { ["block"] = "South", ["soil_water_in_ft"] = 120m });
        foreach (string bed in (string[])["N1", "N2", "S"])
        {
            farm.Planting("in " + bed, "Kale", bed, bed == "S" ? 20 : 50, "2025-05-20", "2025-07-10").Pick("2025-07-01", "in " + bed, 10);
        }

        for (DateOnly day = new(2025, 6, 1); day < new DateOnly(2025, 7, 1); day = day.AddDays(1))
        {
            farm.Add<WeatherRow>(new RowValues { ["date"] = day, ["et0_in"] = 5m, ["rain_in"] = 0m });
        }

        return farm;
    }
}
