using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tests.Building;
using FarmEconomics.Water.Power;
using Xunit;

namespace FarmEconomics.Tests.Water;

/// <summary>The first days of January with a load of 3 kWh a day and what panels made of it as logged, by hand.</summary>
public class PowerEdgesByHandTests
{
    private static readonly PowerSupply NoBattery = new() { BatteryKwh = 0m, GeneratorCostPerKwh = 1.50m };

    private static PowerSeason Of(FarmBuilder farm) => PowerSeason.Of(farm.Link(), 2025);

    /// <summary>As many days as were logged, of a load of 3 kWh each.</summary>
    private static FarmBuilder Farm(PowerSupply supply, params decimal[] made)
    {
        FarmBuilder farm = Bare(supply, made.Length).Load("pump", "power", "household", 150, 20, "2025-01-01", "2025-12-31");
        return Logged(farm, "power", made);
    }

    private static FarmBuilder Bare(PowerSupply supply, int days) => new FarmBuilder(new FarmSettings { Supply = supply })
        .AsOf(new DateOnly(2025, 1, days).ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture))
        .Crop("Kale").Bed("A").Planting("K1", "Kale", "A", 50, "2025-01-01").Pool("power", "measured");

    private static FarmBuilder Logged(FarmBuilder farm, string pool, params decimal[] made)
    {
        for (int day = 0; day < made.Length; day++)
        {
            farm.Add<PowerMadeRow>(new RowValues { ["date"] = new DateOnly(2025, 1, 1 + day), ["pool"] = pool, ["kwh"] = made[day] });
        }

        return farm;
    }

    /// <summary>
    /// Half of 4 kWh may be drawn: on the first day 2 are, and the battery is empty. Of the 2 kWh beyond the load of the second, half is
    /// stored, 1, and half lost; on the third it serves the 1 kWh that isn't made.
    /// </summary>
    [Fact]
    public void Charging_StoresThePartThatFarmCsvSays()
    {
        PowerSeason power = Of(Farm(new PowerSupply { BatteryKwh = 4m, BatteryEfficiencyPercent = 50m }, 1m, 5m, 2m));
        Assert.Equal([(0.0, 0.0, 0.0), (1.0, 1.0, 1.0), (0.0, 0.0, 0.0)],
            power.Days.Select(day => (Math.Round(day.Stored, 9), Math.Round(day.ChargeLoss, 9), Math.Round(day.Held, 9))));
        Assert.Equal([0.0, 0.0, 0.0], power.Days.Select(day => Math.Round(day.Missing, 9)));
    }

    /// <summary>
    /// Without a battery 2 and 1 kWh are missing, 2 and 1 spilled. The generator makes half a kWh a day at a 48th of a kW, so it runs 24
    /// hours on both days, and 1.5 and 0.5 are short.
    /// </summary>
    [Fact]
    public void Month_IsTheSumOfItsDays()
    {
        PowerSeason power = Of(Farm(NoBattery with { GeneratorKw = 1m / 48m }, 1m, 2m, 5m, 4m));
        PowerMonth month = Assert.Single(power.Months);
        Assert.Equal((12.0, 12.0, 3.0), (Math.Round(month.Load, 9), Math.Round(month.Made, 9), Math.Round(month.Spilled, 9)));
        Assert.Equal((2, 1.0, 2.0), (month.DaysShort, Math.Round(month.Generated, 9), Math.Round(month.Short, 9)));
        Assert.Equal(48.0, power.GeneratorHours!.Value, 1e-9);
        Assert.Equal(3.0, power.Missing, 1e-9);
    }

    /// <summary>
    /// A millionth of a kWh is what rounding leaves and not short: such a day doesn't count, and a kWh less is worth nothing. Two are.
    /// </summary>
    [Theory]
    [InlineData(0.001, 0, 0.0)]
    [InlineData(0.002, 1, 1.50)]
    public void Millionth_IsNotShort(double watts, int daysShort, double worth)
    {
        FarmBuilder farm = Bare(NoBattery, 2).Load("clock", "power", "household", (decimal)watts, 1, "2025-01-01", "2025-01-01");
        PowerSeason power = Of(Logged(farm, "power", 0m, 0m));
        Assert.Equal(watts / 1000, power.Missing, 1e-12);
        Assert.Equal((daysShort, daysShort), (power.DaysShort, power.Months[0].DaysShort));
        Assert.Equal(daysShort, Assert.Single(power.Shed).Days);
        Assert.Equal(worth, (double)power.MarginalPerKwh.Value!.Value, 1e-6);
    }

    [Fact]
    public void Balance_ThatIsUnknown_TellsNoPartMissing()
    {
        PowerSeason power = Of(Farm(new PowerSupply(), 1m, 5m));
        Assert.StartsWith("farm.csv doesn't say what the battery holds", power.WhyUnknown, StringComparison.Ordinal);
        Assert.Null(power.PartMissing);
        Assert.False(power.MarginalPerKwh.IsAvailable);
    }

    /// <summary>No row of the log and no size of the panels: the output is unknown on every day, on one as on two.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Output_UnknownOnAnyNumberOfDays_IsUnknown(int days)
    {
        FarmBuilder farm = Bare(NoBattery, days).Load("pump", "power", "household", 150, 20, "2025-01-01", "2025-12-31");
        PowerSeason power = Of(farm);
        Assert.StartsWith("what the panels made is not known", power.WhyUnknown, StringComparison.Ordinal);
        Assert.Empty(power.Days);
    }

    /// <summary>The pool is called as power_made.csv writes it.</summary>
    [Fact]
    public void Pool_IsCalledAsTheLogCallsIt()
    {
        FarmBuilder farm = Bare(NoBattery, 2).Load("pump", "power", "household", 150, 20, "2025-01-01", "2025-12-31");
        PowerSeason power = Of(Logged(farm, " Power ", 1m, 2m));
        Assert.Equal(("Power", 2, 3.0), (power.Pool, power.DaysLogged, Math.Round(power.Missing, 9)));
    }

    /// <summary>
    /// Panels of 0 kW, with a log all the same: what a kW makes is the month's yield, half a kWh. A kW more saves half a kWh on each of two
    /// days, of the 2 and 1 missing.
    /// </summary>
    [Fact]
    public void Panels_OfNoKilowatt_WouldMakeTheMonthsYield()
    {
        PowerSupply supply = NoBattery with { PanelKw = 0m, PanelYield = new MonthFigures([.. Enumerable.Repeat(0.5m, 12)]) };
        PowerSeason power = Of(Farm(supply, 1m, 2m));
        Assert.Equal(1.0, power.SavedWith(0, 1)!.Value, 1e-9);
        Assert.Equal(1.0, power.Months[0].SavedByPanels!.Value, 1e-9);
    }

    /// <summary>
    /// Anything of panels, battery or generator is written by a row of the log as by a setting; loads alone are a farm on the grid.
    /// </summary>
    [Fact]
    public void Power_IsWrittenByTheLogOrBySettings()
    {
        FarmBuilder Pump(PowerSupply supply) => Bare(supply, 2).Load("pump", "power", "household", 150, 20, "2025-01-01", "2025-12-31");
        Assert.False(Of(Pump(new PowerSupply())).IsWritten);
        Assert.True(Of(Pump(NoBattery)).IsWritten);
        Assert.True(Of(Logged(Pump(new PowerSupply()), "power", 1m, 2m)).IsWritten);
    }

    /// <summary>
    /// The log's hours of a generator from January 1, the season's first day, to the 4th, its last: 2, none, 3 and 4. Those of the day
    /// before and the day after are another season's.
    /// </summary>
    [Fact]
    public void GeneratorHours_AreThoseOfTheSeasonsDays()
    {
        FarmBuilder farm = Bare(NoBattery, 4).Load("pump", "power", "household", 150, 20, "2025-01-01", "2025-12-31");
        foreach ((DateOnly day, decimal? hours) in (ReadOnlySpan<(DateOnly, decimal?)>)
            [(new(2024, 12, 31), 50m), (new(2025, 1, 1), 2m), (new(2025, 1, 2), null), (new(2025, 1, 3), 3m), (new(2025, 1, 4), 4m),
                (new(2025, 1, 5), 60m)])
        {
            farm.Add<PowerMadeRow>(new RowValues { ["date"] = day, ["pool"] = "power", ["kwh"] = 1m, ["generator_hours"] = hours });
        }

        Assert.Equal(9.0, Of(farm).GeneratorHoursLogged);
        Assert.Null(Of(Farm(NoBattery, 1m, 2m)).GeneratorHoursLogged);
    }

    [Fact]
    public void Balance_OfNothing_IsNone()
    {
        Assert.Throws<ArgumentNullException>(() => BatteryBalance.Run([], null!, _ => new Battery(1, 1)));
        Assert.Throws<ArgumentNullException>(() => BatteryBalance.Run([], [], null!));
    }
}
