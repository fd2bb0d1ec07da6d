using FarmEconomics.Planning;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Water;
using Xunit;

namespace FarmEconomics.Tests.Planning;

/// <summary>
/// Water and power of the year planned, as if the season's weather came again (docs/methods.md, section 20): the chives of <see
/// cref="TriageByHandTests"/>, 100 feet that take 6.35 mm each day of July 2 to September 30, the whole weeks 26 to 38 of the year with
/// weather. A mm on a foot of bed is 0.762 x 0.3048 m2 over 50% = 0.46452 liters, of which 3,785.41 are a unit of water.
/// </summary>
public class WaterOfAPlanTests
{
    private const double Unit = 0.762 * 0.3048 / 0.5 / 3785.411784;

    private static readonly bool[] Known = [.. Enumerable.Range(0, PlanModel.Weeks).Select(week => week is >= 26 and <= 38)];

    /// <summary>70 gallons a day are 0.49 units a week; without weather a week isn't limited.</summary>
    [Fact]
    public void Water_IsTheWeeksLimitWhereItsNeedIsKnown()
    {
        PlanWater water = Of(Farm().Limit("water", 70m, "gallons a day"))!;
        Assert.Equal(Known.Select(known => known ? 0.49 : double.PositiveInfinity), water.Limit.Select(limit => Math.Round(limit, 9)));
        Assert.Null(water.Power);

        // Until August 31 alone: the week of August 27 to September 2 (34) isn't limited as a whole.
        PlanWater until = Of(Farm().Limit("water", 70m, "gallons a day", to: "2026-08-31"))!;
        Assert.Equal((0.49, double.PositiveInfinity), (Math.Round(until.Limit[33], 9), until.Limit[34]));
        Assert.Null(Of(Farm()));
    }

    /// <summary>
    /// 44.45 mm a week; the soil's 30 mm give 9 without stress. The year takes 364 x 6.35 mm; the crop sold for 1,000 from 100 feet, 10 a
    /// foot, all of it lost with all of that (Ky 1).
    /// </summary>
    [Fact]
    public void Need_IsWhatTheCropTakesUp()
    {
        PlanWater water = Of(Farm().Limit("water", 70m, "gallons a day"))!;
        IReadOnlyList<double> need = Assert.Single(water.Need);
        Assert.All(Enumerable.Range(0, PlanModel.Weeks), week => Assert.Equal(Known[week] ? 44.45 * Unit : 0.0, need[week], 12));
        Assert.Equal(9.0 * Unit, Assert.Single(water.Soil), 12);
        Assert.Equal(10.0 / (364 * 6.35 * Unit), Assert.Single(water.LostPerUnit), 6);
    }

    /// <summary>
    /// A perennial's curve runs over the 364 days of the year's weeks, whenever it came in: Kc 0.5 for 20 of 75 parts, over the next 30 it
    /// rises to 1. Week 26 holds days 183 to 189, 186 on the mean.
    /// </summary>
    [Fact]
    public void Need_OfAPerennial_FollowsItsCurveOverTheYear()
    {
        FarmBuilder farm = Farm().Limit("water", 70m, "gallons a day");
        farm.Set(farm.Tables.Crops[0], CropRow.KcIniColumn, 0.5m);
        double kc = 0.5 + (0.5 * (186.0 - (364.0 * 20.0 / 75.0)) / (364.0 * 30.0 / 75.0));
        Assert.Equal(7.0 * 6.35 * kc * Unit, Of(farm)!.Need[0][26], 9);
    }

    /// <summary>Rain of 20 mm on July 5 leaves 24.45 of the week's 44.45 mm to give; under a roof it doesn't reach the bed.</summary>
    [Theory]
    [InlineData(null, 24.45)]
    [InlineData("Tunnel", 44.45)]
    public void Rain_LessensTheNeedOfItsWeek(string? structure, double mm)
    {
        FarmBuilder farm = Farm().Limit("water", 70m, "gallons a day");
        farm.Set(farm.Tables.Beds[0], BedRow.StructureColumn, structure);
        farm.Set(farm.Tables.Weather[4], WeatherRow.RainInColumn, 20m / 25.4m);
        PlanWater water = Of(farm)!;
        Assert.Equal(mm * Unit, water.Need[0][26], 9);
        Assert.Equal(44.45 * Unit, water.Need[0][27], 9);
        farm.Set(farm.Tables.Weather[4], WeatherRow.RainInColumn, 60m / 25.4m);
        Assert.Equal(structure is null ? 0.0 : mm * Unit, Of(farm)!.Need[0][26], 9); // more than the week takes
    }

    /// <summary>A bed in no block: nothing is known of its need.</summary>
    [Fact]
    public void Need_OfABedInNoBlock_IsNotKnown()
    {
        FarmBuilder farm = Farm().Limit("water", 70m, "gallons a day").Bed("Dry", 80m, structure: "Shed").Crop("Mint", perennial: true);
        farm.Planting("M", "Mint", "Dry", 50m, "2025-05-01")
            .Pick("2025-08-01", "M", 10m)
            .Sell("2025-08-02", "Mint", "Market", 10m, price: 5m);
        PlanWater water = Of(farm)!;
        Assert.Equal([true, false], water.Need.Select(need => need.Sum() > 0.0));
        Assert.Equal((0.0, 0.0), (water.Soil[1], water.LostPerUnit[1]));
    }

    /// <summary>
    /// The pump takes 2 kWh on each of 91 days: 182, over what this year's length needs in 13 weeks, or over the 0.2 units put on by the
    /// log. A limit of 10 kWh a day leaves 63 a week beside the lights' one. The generator makes at most 2 kW all week, 0.50 a kWh.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Power_IsTheLimitLessOtherLoads(bool logged)
    {
        FarmBuilder farm = Powered(Farm()).Limit("power", 10m, "kWh");
        if (logged)
        {
            farm.Add<WateringRow>(new RowValues { ["date"] = new DateOnly(2025, 7, 12), ["block"] = "Block 0", ["gallons"] = 200m });
        }

        PlanPower power = Of(farm)!.Power!;
        Assert.Equal(182.0 / (logged ? 0.2 : 13 * 44.45 * Unit * 100.0), power.PerUnit, 6);
        Assert.Equal(Known.Select(known => known ? 63.0 : double.PositiveInfinity), power.There.Select(kwh => Math.Round(kwh, 9)));
        Assert.Equal((336.0, 0.5), (power.Generator, power.GeneratorCost));
        Assert.All(Of(farm)!.Limit, limit => Assert.Equal(double.PositiveInfinity, limit));
    }

    /// <summary>
    /// 4 kWh a day by the panels' yield, less the lights' one: 21 a week. A limit of 3 goes before: 14. Where lights take 5, none is left.
    /// Without loads for water, or without panels and limit, power isn't limited.
    /// </summary>
    [Fact]
    public void Power_IsWhatPanelsMakeLessOtherLoads()
    {
        FarmBuilder Panels(FarmBuilder farm) =>
            farm.With(settings =>
                settings with
                {
                    Supply = settings.Supply with
                    {
                        PanelKw = 2m,
                        PanelYield = new MonthFigures([.. Enumerable.Repeat(2m, 12)]),
                        BatteryKwh = 4m,
                    },
                }
            );
        double There(FarmBuilder farm) => Math.Round(Of(farm)!.Power!.There[30], 9);
        Assert.Equal(21.0, There(Panels(Powered(Farm()))));
        Assert.Equal(14.0, There(Panels(Powered(Farm())).Limit("power", 3m, "kWh")));
        Assert.Equal(0.0, There(Panels(Powered(Farm())).Load("heat", "power", "household", 200m, 20m, "2025-07-02", "2025-09-30")));
        Assert.Null(Of(Powered(Farm())));

        // Lights alone pump nothing. To September 22, the sixth day of week 37, the panels' days are known: 6 x 4 less 7 of the lights.
        Assert.Null(Of(Panels(Powered(Farm()).Without<LoadRow>(row => row.Load == "pump"))));
        PlanPower part = Of(Panels(Powered(Farm())).AsOf("2025-09-22"))!.Power!;
        Assert.Equal((21.0, 17.0, 0.0), (Math.Round(part.There[36], 9), Math.Round(part.There[37], 9), part.There[38]));
        Assert.Null(Of(Panels(Farm().Pool("power", "measured"))));
    }

    /// <summary>
    /// Logged are 200 and 100 gallons: 182 kWh over 0.3 units. Of 10 kWh a day lights and a heater take 1 each: 56 a week. Without weather
    /// nothing is known of the need, whatever is logged.
    /// </summary>
    [Fact]
    public void Power_OfSeveralDaysAndLoads_AddsThemUp()
    {
        FarmBuilder farm = Powered(Farm())
            .Limit("power", 10m, "kWh")
            .Load("heat", "power", "household", 50m, 20m, "2025-07-02", "2025-09-30")
            .Add<WateringRow>(new RowValues { ["date"] = new DateOnly(2025, 7, 12), ["block"] = "Block 0", ["gallons"] = 200m })
            .Add<WateringRow>(new RowValues { ["date"] = new DateOnly(2025, 7, 19), ["block"] = "Block 0", ["gallons"] = 100m });
        PlanPower power = Of(farm)!.Power!;
        Assert.Equal(182.0 / 0.3, power.PerUnit, 6);
        Assert.Equal(56.0, power.There[30], 9);
        Assert.Null(Of(farm.Without<WeatherRow>(_ => true)));
    }

    /// <summary>Where rain gives all the crop takes, nothing is pumped, and no kWh is one of a unit.</summary>
    [Fact]
    public void Power_WhereNothingIsPumped_IsNotLimited()
    {
        FarmBuilder farm = Powered(Farm()).Limit("power", 10m, "kWh");
        foreach (WeatherRow row in farm.Tables.Weather)
        {
            farm.Set(row, WeatherRow.RainInColumn, 1m);
        }

        Assert.Null(Of(farm));
    }

    private static PlanWater? Of(FarmBuilder farm) => PlanByHandTests.ModelOf(farm).Water;

    private static FarmBuilder Powered(FarmBuilder farm) =>
        farm.With(settings => settings with { Supply = settings.Supply with { GeneratorKw = 2m, GeneratorCostPerKwh = 0.5m } })
            .Pool("power", "measured")
            .Pool("well", "water")
            .Load("pump", "power", "well", 1000m, 2m, "2025-07-02", "2025-09-30")
            .Load("lights", "power", "household", 100m, 10m, "2025-07-02", "2025-09-30");

    private static FarmBuilder Farm() =>
        TriageByHandTests
            .Builder(1)
            .Channel("Market", ChannelKind.Market)
            .Spend("2025-05-02", 10m, "seed")
            .Pick("2025-08-01", "Chives 0", 100m)
            .Sell("2025-08-02", "Chives", "Market", 100m, price: 10m);
}
