namespace FarmEconomics.Tests.DemoFarm;

/// <summary>Power, pumped water and heat from the demo farm's loads and use tables.</summary>
internal static class DemoFarmEnergy
{
    /// <summary>The panels of the invented farm: 2.5 kW, which its pool's capacity of 2,450 kWh rests on.</summary>
    public const decimal PanelKilowatts = 2.5m;

    private const string Panels = "field panels";

    private static readonly IReadOnlyList<Dictionary<string, string>> Loads = PlainCsv.Demo("loads");

    public static decimal PanelKwhOfMonth(int year, int month)
    {
        var (first, last) = (new DateOnly(year, month, 1), new DateOnly(year, month, DateTime.DaysInMonth(year, month)));
        return Loads.Where(l => l["pool"] == Panels).Sum(l => Kwh(l, first, last));
    }

    public static decimal Kwh(int year, string loadStarts) =>
        Loads.Where(l => l["load"].StartsWith(loadStarts, StringComparison.Ordinal)).Sum(l => Kwh(l, new(year, 1, 1), new(year, 12, 31)));

    /// <summary>What the utility's bills of a year came to for each kilowatt-hour drawn from the grid.</summary>
    public static decimal GridPrice(DemoRecords farm, int year) =>
        farm.Expenses.Where(e => e["category"] == "electricity" && DemoRecords.InYear(e, year)).Sum(e => e.Number("amount"))
        / Loads.Where(l => l["pool"] == "grid power").Sum(l => Kwh(l, new(year, 1, 1), new(year, 12, 31)));

    /// <summary>Inches over the bed tops, three feet wide: 1.18 kWh lifts 1,000 gallons 150 feet at 40 percent; an inch on a square foot is 0.6234 gallons.</summary>
    public static decimal IrrigationInches(int year, decimal bedFeet) =>
        Kwh(year, "Field pump, irrigation") / 1.177m * 1000m / (bedFeet * 3m * 0.6234m);

    /// <summary>Tons of pellets burned: a bag holds 40 pounds.</summary>
    public static decimal PelletTons(int year) =>
        PlainCsv.Demo("use").Where(u => u["pool"] == "pellet boiler" && u.Number("crop_year") == year).Sum(u => u.Number("quantity")) * 40m / 2000m;

    private static decimal Kwh(Dictionary<string, string> load, DateOnly first, DateOnly last)
    {
        var from = load.Date("from")!.Value > first ? load.Date("from")!.Value : first;
        var to = load.Date("to")!.Value < last ? load.Date("to")!.Value : last;
        return from > to ? 0m : load.Number("watts") * load.Number("hours_per_day") * (to.DayNumber - from.DayNumber + 1) / 1000m;
    }
}
