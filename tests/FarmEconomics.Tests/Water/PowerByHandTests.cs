using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Water.Power;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>
/// Three days of electricity by hand, January 30 to February 1, the crop year's first. Wanted: 3 kWh a day, 1 by the house's lights and 2 by
/// a cold room. Made: 3 and 1 as logged, and 1 by the panels' yield of February (2 kW x 0.5). The battery may give 2 of its 4 kWh, the
/// generator half a kWh a day.
/// Day 1: all by the sun. Day 2: 1 by the sun, 2 by the battery, which is empty then. Day 3: 1 by the sun, 0.5 generated, 1.5 short.
/// </summary>
public class PowerByHandTests
{
    // Worked out for every test: a mutation tester sees only what happens while a test runs.
    private PowerSeason Power { get; } = Of(Farm());

    [Fact]
    public void Days_AreLoggedElseByYield()
    {
        Assert.Null(Power.WhyUnknown);
        Assert.Equal([3.0, 1.0, 1.0], Power.Days.Select(day => day.Made));
        Assert.Equal(2, Power.DaysLogged);
        Assert.Equal((1, 2.0), (Power.DaysShort, Math.Round(Power.Missing, 9)));
        Assert.Equal(24.0, Power.GeneratorHours!.Value, 1e-9); // half a kWh at a 48th of a kW
    }

    [Fact]
    public void Months_HoldTheirOwnDays()
    {
        (DateOnly, double, double, double, int, double, double) Row(PowerMonth month) =>
            (
                month.Month,
                Math.Round(month.Load, 9),
                Math.Round(month.Made, 9),
                Math.Round(month.Spilled, 9),
                month.DaysShort,
                Math.Round(month.Generated, 9),
                Math.Round(month.Short, 9)
            );

        Assert.Equal(
            [(new DateOnly(2025, 1, 1), 6.0, 4.0, 0.0, 0, 0.0, 0.0), (new DateOnly(2025, 2, 1), 3.0, 1.0, 0.0, 1, 0.5, 1.5)],
            Power.Months.Select(Row)
        );
    }

    /// <summary>
    /// A kWh more of battery, half of it usable, in January carries half a kWh into February; in February it comes too late. A kW more of
    /// panels makes half as much again of what was logged, or half a kWh by yield: in January 0.5 more is left, in February 0.5 more made.
    /// With a kW less in January 1.5 and 0.5 are made: the battery is down by 1.5 on the first day, 2 are missing on the second.
    /// </summary>
    [Fact]
    public void MoreAndLess_InAMonthAlone_SaveAndCost()
    {
        double[] Values(PowerMonth month) =>
            [
                .. new[]
                {
                    month.SavedByBattery,
                    month.CostOfLessBattery,
                    month.SavedByPanels!.Value,
                    month.CostOfLessPanels!.Value,
                }.Select(kwh => Math.Round(kwh, 9)),
            ];

        Assert.Equal([0.5, 0.5, 0.5, 2.0], Values(Power.Months[0]));
        Assert.Equal([0.0, 0.0, 0.5, 0.5], Values(Power.Months[1]));
        Assert.Equal(0.5, Power.SavedWith(1, 0)!.Value, 1e-9);
        Assert.Equal(1.0, Power.SavedWith(0, 1)!.Value, 1e-9);
        Assert.Equal(-0.5, Power.SavedWith(-1, 0)!.Value, 1e-9);
        Assert.Equal(0.0, Power.SavedWith(0, 0)!.Value, 1e-9);
    }

    /// <summary>A hundredth less of load every day is 0.09 kWh; on the first day the battery is full, so 0.06 less is missing: two thirds, at 1.50 a kWh.</summary>
    [Fact]
    public void KwhLess_IsWorthThePartThatWouldHaveBeenMissing()
    {
        Assert.Equal(2.0 / 3.0, Power.PartMissing!.Value, 1e-9);
        Assert.Equal(1.0, (double)Power.MarginalPerKwh.Value!.Value, 1e-9);
    }

    /// <summary>1.5 kWh short: the lights give way first with 1, the cold room with 0.5. A load of other days is in no list.</summary>
    [Fact]
    public void Loads_GiveWayByWhatTheyProtect() => Assert.Equal(
        [("lights", 3.0, 1.0, 1), ("compressor", 6.0, 0.5, 1)],
        Power.Shed.Select(shed => (shed.Load.Row.Load, Math.Round(shed.Wanted, 9), Math.Round(shed.Shed, 9), shed.Days)));

    [Fact]
    public void Loads_WithAnOrderWritten_GiveWayByIt()
    {
        FarmBuilder farm = Farm();
        farm.Set(farm.Tables.Loads[1], LoadRow.ShedOrderColumn, 0.5m);
        Assert.Equal(["compressor", "lights"], Of(farm).Shed.Select(shed => shed.Load.Row.Load));
    }

    [Theory]
    [InlineData("household", LoadPurpose.General)]
    [InlineData("barn", LoadPurpose.General)]
    [InlineData("wash", LoadPurpose.Work)]
    [InlineData("warm house", LoadPurpose.Growing)]
    [InlineData("tunnel", LoadPurpose.Growing)]
    [InlineData("heater", LoadPurpose.Growing)]
    [InlineData("Kale", LoadPurpose.Growing)]
    [InlineData("K1", LoadPurpose.Growing)]
    [InlineData("well", LoadPurpose.Water)]
    [InlineData("cold room", LoadPurpose.Store)]
    public void Load_ProtectsWhatItsUserIsFor(string user, LoadPurpose purpose)
    {
        FarmBuilder farm = Farm()
            .Pool("barn", "measured", StatementLine.Overhead)
            .Pool("wash", "quantity-crates")
            .Pool("warm house", "tray-days")
            .Pool("tunnel", "bed-foot-days")
            .Pool("heater", "measured")
            .Pool("well", "water")
            .Load("one more", "power", user, 10, 1, "2025-01-30", "2025-02-01");
        PowerLoad load = Of(farm).Loads.Single(one => one.Row.Load == "one more");

        Assert.Equal((purpose, (int)purpose + 1m), (load.Purpose, load.Order));
    }

    [Fact]
    public void Unknown_SaysWhy()
    {
        FarmBuilder two = Farm(logged: false).Pool("grid", "measured").Load("pump", "grid", "household", 10, 1, "2025-01-30", "2025-02-01");
        PowerSeason several = Of(two);
        Assert.StartsWith("loads draw on several pools", several.WhyUnknown, StringComparison.Ordinal);
        Assert.Empty(several.Days);
        Assert.Null(several.PartMissing);
        Assert.Null(several.SavedWith(1, 0));
        Assert.False(several.MarginalPerKwh.IsAvailable);
        Assert.StartsWith(
            "farm.csv doesn't say what the battery holds",
            Of(Supply(Farm(), supply => supply with { BatteryKwh = null })).WhyUnknown,
            StringComparison.Ordinal
        );
        Assert.StartsWith(
            "what the panels made is not known",
            Of(Supply(Farm(), supply => supply with { PanelYield = null })).WhyUnknown,
            StringComparison.Ordinal
        );
        Assert.Null(Of(Supply(Farm(), supply => supply with { GeneratorKw = null })).GeneratorHours);
        Assert.Null(Of(Supply(Farm(), supply => supply with { GeneratorKw = 0m })).GeneratorHours);
        Assert.False(Of(Supply(Farm(), supply => supply with { GeneratorCostPerKwh = null })).MarginalPerKwh.IsAvailable);
        Assert.Equal(0m, Of(Supply(Farm(), supply => supply with { BatteryKwh = 8m, GeneratorCostPerKwh = null })).MarginalPerKwh.Value);
    }

    /// <summary>Logged every day without the size of the panels: the balance is known, what a kW more would save isn't.</summary>
    [Fact]
    public void Panels_OfUnknownSize_TellNoSavingOfMore()
    {
        PowerSeason power = Of(Supply(Made(Farm(), "2025-02-01", 1m), supply => supply with { PanelKw = null, PanelYield = null }));

        Assert.Null(power.WhyUnknown);
        Assert.All(power.Months, month => Assert.True(month.SavedByPanels is null && month.CostOfLessPanels is null));
        Assert.Null(power.SavedWith(0, 1));
        Assert.Equal(0.5, power.SavedWith(1, 0)!.Value, 1e-9);
    }

    /// <summary>Of two pools with loads that of power_made.csv is looked at.</summary>
    [Fact]
    public void Pool_OfTheLog_IsTheOneWithPanels()
    {
        FarmBuilder farm = Farm().Pool("grid", "measured").Load("pump", "grid", "household", 5000, 24, "2025-01-30", "2025-02-01");
        PowerSeason power = Of(farm);

        Assert.Equal(("power", 2.0), (power.Pool, Math.Round(power.Missing, 9)));
    }

    /// <summary>The whole year where the closing date lies beyond it.</summary>
    [Fact]
    public void Season_ThatIsOver_HasAllItsDays() => Assert.Equal(365, Of(Farm().AsOf("2026-06-30")).Days.Count);

    private static PowerSeason Of(FarmBuilder farm) => PowerSeason.Of(farm.Link(), 2025);

    private static FarmBuilder Supply(FarmBuilder farm, Func<PowerSupply, PowerSupply> change) =>
        farm.With(settings => settings with { Supply = change(settings.Supply) });

    private static FarmBuilder Made(FarmBuilder farm, string day, decimal kwh) =>
        farm.Add<PowerMadeRow>(new RowValues { ["date"] = FarmBuilder.Day(day), ["pool"] = "power", ["kwh"] = kwh });

    private static FarmBuilder Farm(bool logged = true)
    {
        FarmBuilder farm = new FarmBuilder(new FarmSettings
        {
            CropYearStartDay = 30,
            Supply = new PowerSupply
            {
                PanelKw = 2m,
                PanelYield = new MonthFigures([9m, 0.5m, 9m, 9m, 9m, 9m, 9m, 9m, 9m, 9m, 9m, 9m]),
                BatteryKwh = 4m,
                GeneratorKw = 1m / 48m,
                GeneratorCostPerKwh = 1.50m,
            },
        }).AsOf("2025-02-01").Crop("Kale").Bed("A").Planting("K1", "Kale", "A", 50, "2025-01-30").Pool("power", "measured").Pool("cold room", "crate-days")
            .Load("lights", "power", "household", 50, 20, "2025-01-30", "2025-02-01").Load("compressor", "power", "cold room", 100, 20, "2025-01-30", "2025-02-01")
            .Load("later", "power", "household", 100, 20, "2025-03-01", "2025-03-05");
        return logged ? Made(Made(farm, "2025-01-30", 3m), "2025-01-31", 1m) : farm;
    }
}
