using System.Text.Json;
using FarmEconomics.Records;
using FarmEconomics.Tests.Building;
using FarmEconomics.Tests.Support;
using FarmEconomics.Water;
using FarmEconomics.Water.Power;
using Xunit;

namespace FarmEconomics.Tests.Published;

/// <summary>Published figures of pumps, drip lines, shared water, panels and batteries.</summary>
public class WaterAndPowerMathTests
{
    [Fact]
    public void SharedWater_ThreeCommunities_TotalAsPublishedByTheProgramAndByRanking()
    {
        JsonElement fixture = Fixture.Load("Water/shared-water");
        JsonElement given = fixture.GetProperty("inputs");
        double[] land = Doubles(given, "land_acres");
        double[] water = Doubles(given, "water_acre_feet");
        double[] quota = Doubles(given, "quota_acres");
        double[] per = Doubles(given, "water_acre_feet_per_acre");
        double[] net = Doubles(given, "net_per_acre");
        double published = fixture.GetProperty("published").Double("total_net");

        SmallProgram program = SmallProgram.Maximize([.. Enumerable.Range(0, 9).Select(i => net[i % 3])],
            [.. Limits(land, water, quota, per)]);
        double[] given3 = GainCurve.Share([.. per.Select((each, crop) => new GainCurve([(quota[crop] * each, quota[crop] * net[crop])]))],
            water.Sum());
        double ranked = per.Select((each, crop) => given3[crop] / each * net[crop]).Sum();

        Assert.Equal(published, program.Value, 0.01);
        Assert.Equal(published, ranked, 0.01);
        Assert.Equal(1000, given3[1], 1e-9);
    }

    [Fact]
    public void Pump_MeasuredBeforeRebuilding_KilowattHoursAnAcreFoot()
    {
        JsonElement test = Fixture.Load("Water/pump-test").List("cases").First();
        JsonElement given = test.GetProperty("inputs");
        double efficiency = WaterMath.PumpEfficiency(given.Double("gpm"), given.Double("total_lift_ft"), given.Double("kw_into_motor"));
        double kwh = WaterMath.KwhPer1000Gallons(given.Double("total_lift_ft"), efficiency) * WaterMath.GallonsPerAcreFoot / 1000;
        Assert.Equal(test.GetProperty("computed").Double("wire_to_water_efficiency"), efficiency, 0.0006);
        Assert.Equal(test.GetProperty("published").Double("kwh_per_acre_foot"), kwh, test.Double("tolerance_kwh_per_acre_foot"));
    }

    [Fact]
    public void Loads_KilowattHoursOfAppliances_AsPublished()
    {
        JsonElement fixture = Fixture.Load("Water/appliance-energy");
        DateOnly first = FarmBuilder.Day("2025-01-01");
        foreach (JsonElement row in fixture.List("yearly"))
        {
            Close.To(row.Number("kwh"), Used(row, first.AddDays((int)row.Number("days") - 1)), fixture.Number("tolerance_kwh"));
        }

        Assert.All(fixture.List("daily"), row => Assert.Equal(row.Number("wh"), 1000m * Used(row, first)));

        decimal Used(JsonElement row, DateOnly last) => new FarmBuilder().Pool("power", "measured")
            .Load(row.Text("load"), "power", "household", row.Number("watts"), row.Number("hours_per_day"), "2025-01-01",
                $"{last:yyyy-MM-dd}")
            .Tables.Loads[0].KilowattHours(first, FarmBuilder.Day("2025-12-31"));
    }

    [Fact]
    public void Drip_HoursForAnInch_AsPublished()
    {
        JsonElement fixture = Fixture.Load("Water/drip-hours");
        Assert.All(fixture.List("rows"), row => Assert.Equal(row[2].GetDouble(),
            WaterMath.DripHours(1, fixture.Double("wetted_width_in"), row[1].GetDouble()), fixture.Double("tolerance_hours")));
    }

    [Fact]
    public void GrossWater_FloridaTable_AsPublished()
    {
        JsonElement fixture = Fixture.Load("Water/irrigation-interval");
        Assert.All(fixture.List("rows"), row => Assert.Equal(row[2].GetDouble(),
            WaterMath.Liters(row[0].GetDouble() * row[1].GetDouble(), 1, fixture.Double("efficiency")), fixture.Double("tolerance_in")));
    }

    [Fact]
    public void Panels_UnitValues_AsPublished()
    {
        JsonElement[] cases = [.. Fixture.Load("Water/panel-units").List("cases")];
        JsonElement direct = cases[0].GetProperty("inputs");
        Assert.Equal(cases[0].Double("published"),
            PanelOutput.Direct(direct.Double("irradiance"), direct.Double("cell_C"), direct.Double("rated"), direct.Double("gamma")), 1e-9);
        Assert.Equal(cases[1].Double("published"), PanelOutput.Losses(cases[1].GetProperty("inputs").EnumerateObject()
            .Select(loss => loss.Value.GetDouble())), 1e-9);
        JsonElement inverter = cases[2].GetProperty("inputs");
        double[] expected = Doubles(cases[2], "published");
        Assert.Equal(expected.Length, Doubles(inverter, "pdc").Length);
        Assert.All(Doubles(inverter, "pdc").Zip(expected), pair =>
            Assert.Equal(pair.Second, PanelOutput.Alternating(pair.First, inverter.Double("pdc0"), inverter.Double("nominal")), 1e-6));
    }

    /// <summary>The sources are web pages: plausibility, no evidence.</summary>
    [Fact]
    public void BatterySize_WebExamples_SameArithmetic()
    {
        JsonElement[] cases = [.. Fixture.Load("Water/battery-size").List("cases")];
        Assert.Equal(6500, BatterySize.Capacity(1000, 2.5, 0.5, 1.3), 1e-9);
        Assert.Equal(cases[1].GetProperty("published").Double("amp_hours"), BatterySize.Capacity(1000, 2.5, 0.5) / 12, 0.01);
        Assert.Equal(cases[2].GetProperty("published").Double("capacity_wh"), BatterySize.Capacity(300, 2, 0.8), 1e-9);
    }

    [Fact]
    public void BatteryBalance_SevenCloudyDays_AsWorkedByHandAndByTheLinearProgram()
    {
        JsonElement week = Fixture.Load("Water/battery-week").List("cases").First();
        JsonElement given = week.GetProperty("inputs");
        JsonElement answer = week.GetProperty("computed");
        double[] load = Doubles(given, "load_kwh");
        double[] made = Doubles(given, "panel_kwh");
        Battery battery = new(given.Double("battery_kwh") * given.Double("depth_of_discharge"), given.Double("charge_efficiency"));
        PowerDay[] days = BatteryBalance.Run(load, made, _ => battery);
        foreach (JsonElement row in answer.List("rows"))
        {
            double[] of = [.. row.EnumerateArray().Select(cell => cell.GetDouble())];
            PowerDay day = days[(int)of[0] - 1];
            double[] actual = [day.Direct, day.FromBattery, day.Stored, day.Spilled, day.Short, day.Held];
            Assert.All(of[3..].Zip(actual), pair => Assert.Equal(pair.First, pair.Second, 1e-9));
        }

        double Short(double size, double panels) =>
            BatteryBalance.Run(load, [.. made.Select(kwh => kwh * panels)], _ => battery with { UsableKwh = size }).Sum(day => day.Short);
        Assert.Equal(answer.GetProperty("one_more_kwh_of_battery").Double("short_kwh"), Short(10.5, 1), 1e-9);
        Assert.Equal(answer.GetProperty("one_more_kw_of_panel").Double("short_kwh"), Short(10, 4 / 3.0), 1e-4);
        Assert.Equal(load.Sum() - answer.Double("short_kwh"), BatteryProgram.MostServed(load, made, battery).Value, 1e-7);
    }

    private static double[] Doubles(JsonElement element, string name) => [.. element.List(name).Select(cell => cell.GetDouble())];

    // Columns: community by community, crop by crop.
    private static IEnumerable<(double[] Row, double Limit)> Limits(double[] land, double[] water, double[] quota, double[] per)
    {
        double[] Row(Func<int, int, double> cell) => [.. Enumerable.Range(0, 9).Select(i => cell(i / 3, i % 3))];
        for (int i = 0; i < 3; i++)
        {
            int at = i;
            yield return (Row((place, _) => place == at ? 1 : 0), land[at]);
            yield return (Row((place, crop) => place == at ? per[crop] : 0), water[at]);
            yield return (Row((_, crop) => crop == at ? 1 : 0), quota[at]);
            int next = (at + 1) % 3;
            yield return (Row((place, _) => place == at ? 1 / land[at] : place == next ? -1 / land[next] : 0), 0);
        }
    }
}
