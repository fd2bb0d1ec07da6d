using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Water of the year planned for sorrel, which no table lists, under three covers (docs/methods.md, section 20). 100 feet under each stand
/// 105 days from April 9 (day 98: week 14), 15 weeks: 28 days of Kc 0.5, 42 in which it rises to 1, 35 of 1. Each day 6.35 mm evaporate
/// from grass, from March 26 (week 12) to August 19 (week 32). Roots go 0.20 to 0.30 m deep; 30% are taken up without stress.
/// </summary>
public class WaterOfSeveralByHandTests
{
    private const double Et0 = 6.35;

    /// <summary>28 x 0.5 + 42 x 0.5 + 0.5 x (1 + 2 + ... + 42) / 42 + 35: 14 + 21 + 10.75 + 35.</summary>
    private const double Whole = 80.75;

    /// <summary>
    /// In the open lie 100 feet of a block at 50% and 300 of one at 70%: (50 + 210) / 400 = 65%; in the tunnel 80%.
    /// </summary>
    private static double Unit(double efficiency) => 0.762 * 0.3048 / efficiency / 3785.411784;

    /// <summary>
    /// Days 1 to 7 take 3.5 of a day's 6.35 mm, days 29 to 35 3.5 + 0.5 x (1 + ... + 7) / 42, the last seven 7; none before and after. The
    /// shed lies in no block.
    /// </summary>
    [Fact]
    public void Need_FollowsTheCurveOfTheSowingsOwnWeeks()
    {
        PlanWater water = Of(Farm())!;
        Assert.Equal(3, water.Need.Count);
        foreach ((int place, double efficiency) in new[] { (0, 0.65), (1, 0.8) })
        {
            double[] weeks = [.. water.Need[place].Select(units => units / (Et0 * Unit(efficiency)))];
            Programs.Near([0.0, 3.5, 3.5 + (28.0 / 84.0), 7.0, 0.0], [weeks[13], weeks[14], weeks[18], weeks[28], weeks[29]], 1e-9);
            Programs.Near(Whole, weeks.Sum(), 1e-9);
        }

        Assert.Equal(0.0, water.Need[2].Sum());
    }

    /// <summary>
    /// Halfway, at day 52.5, roots have grown 51.5 of 69 days (28 + 42 - 1): 0.20 + 0.10 x 51.5 / 69 m. The soil holds 100 mm a meter under
    /// 100 feet of the open and 50 under 300: 62.5; 100 in the tunnel.
    /// </summary>
    [Fact]
    public void Soil_HoldsWhatRootsReachHalfwayOfTheStay()
    {
        PlanWater water = Of(Farm())!;
        double depth = 0.2 + (0.1 * 51.5 / 69.0);
        Programs.Near([0.3 * depth * 62.5 * Unit(0.65), 0.3 * depth * 100.0 * Unit(0.8), 0.0], water.Soil, 1e-12);
    }

    /// <summary>
    /// 3,000 from 300 feet, 10 a foot, all of it lost (Ky 1) with what the curve takes in all: the mean of the two covers whose need
    /// is known.
    /// </summary>
    [Fact]
    public void Loss_GoesByTheMeanOfWhatSowingsTakeUp() =>
        Assert.Equal(10.0 / (Whole * Et0 * (Unit(0.65) + Unit(0.8)) / 2.0), Assert.Single(Of(Farm())!.LostPerUnit), 6);

    /// <summary>
    /// The pump's 2 kWh on each of 10 days, over what the 100 feet under each of two covers need; without a log.
    /// </summary>
    [Fact]
    public void Power_OfAUnit_IsSpreadOverTheNeedOfAllSowings()
    {
        FarmBuilder farm = Farm()
            .Pool("power", "measured")
            .Pool("well", "water")
            .Load("pump", "power", "well", 1000m, 2m, "2025-05-01", "2025-05-10")
            .Limit("power", 10m, "kWh");
        Assert.Equal(20.0 / (100.0 * Whole * Et0 * (Unit(0.65) + Unit(0.8))), Of(farm)!.Power!.PerUnit, 6);
    }

    /// <summary>
    /// In meters: a bed 75 cm wide is 0.75 m2 a meter; a thousand liters are a unit. Days 29 to 35 as above, at 65%.
    /// </summary>
    [Fact]
    public void Need_InMeters_CountsCubicMeters()
    {
        PlanWater water = Of(Farm(metric: true))!;
        Assert.Equal((3.5 + (28.0 / 84.0)) * Et0 * 0.75 / 0.65 / 1000.0, water.Need[0][18], 9);
        Assert.Equal(0.49, water.Limit[18], 9);
    }

    /// <summary>
    /// Where sorrel stood in the shed alone, and only next year's chicory in a block, nothing is known of the season's water.
    /// </summary>
    [Fact]
    public void Water_WhereNothingOfTheSeasonLiesInABlock_IsNotKnown()
    {
        static bool IsWatered(string? planting) => planting is "North" or "Warm";
        FarmBuilder farm = Farm().Without<PlantingRow>(row => IsWatered(row.Planting)).Without<HarvestRow>(row => IsWatered(row.Planting));
        Assert.Null(Of(farm));
    }

    private static PlanWater? Of(FarmBuilder farm) => PlanByHandTests.ModelOf(farm).Water;

    /// <summary>Chicory of next year's crop stands in a block since July, and has no say in this one's.</summary>
    private static FarmBuilder Farm(bool metric = false)
    {
        FarmSettings settings = new() { UnpaidHours = UnpaidHours.None };
        FarmBuilder farm = new FarmBuilder(
            metric ? settings with { LengthUnit = LengthUnit.M, StandardBedWidthIn = 75m } : settings
        )
            .AsOf("2025-12-31")
            .Crop("Sorrel")
            .Crop("Chicory")
            .Channel("Market", ChannelKind.Market)
            .Spend("2025-05-02", 10m, "seed")
            .Limit("water", 70m, metric ? "liters a day" : "gallons a day");
        CropRow sorrel = farm.Tables.Crops[0];
        farm.Set(sorrel, CropRow.KcIniColumn, 0.5m);
        farm.Set(sorrel, CropRow.KcMidColumn, 1m);
        farm.Set(sorrel, CropRow.KcEndColumn, 1m);
        farm.Set(sorrel, CropRow.KyColumn, 1m);
        Block(farm, "North", 100m, 50m, metric ? 100m : 1.2m);
        Block(farm, "South", 300m, 70m, metric ? 50m : 0.6m);
        Block(farm, "Warm", 100m, 80m, metric ? 100m : 1.2m, "Tunnel");
        farm.Bed("Shed", structure: "Shed");
        foreach (string bed in new[] { "North", "Warm", "Shed" })
        {
            farm.Planting(bed, "Sorrel", bed, 100m, "2025-04-09", "2025-07-23")
                .Pick("2025-07-22", bed, 100m)
                .Sell("2025-07-23", "Sorrel", "Market", 100m, price: 10m);
        }

        farm.Planting("Chicory", "Chicory", "South", 50m, "2025-07-25", "2026-03-01", cropYear: 2026);
        for (DateOnly day = new(2025, 3, 26); day < new DateOnly(2025, 8, 20); day = day.AddDays(1))
        {
            farm.Add<WeatherRow>(new RowValues { ["date"] = day, ["et0_in"] = metric ? 6.35m : 0.25m, ["rain_in"] = 0m });
        }

        return farm;
    }

    private static void Block(FarmBuilder farm, string name, decimal length, decimal efficiency, decimal soil, string? structure = null)
    {
        farm.Add<BedRow>(new RowValues { ["bed"] = name, ["length_ft"] = length, ["block"] = name, ["structure"] = structure });
        farm.Add<BlockRow>(new RowValues { ["block"] = name, ["soil_water_in_ft"] = soil, ["efficiency_percent"] = efficiency });
    }
}
