namespace FarmEconomics.Tests.DemoFarm;

/// <summary>What the demo farm's records say about each item of Published/demo-farm-plausibility.csv: one or more values, all of which must lie in its band.</summary>
internal static class DemoFarmMeasures
{
    private static readonly DemoRecords Farm = new();

    public static IEnumerable<decimal> Of(string item)
    {
        var (kind, name) = item.Split(": ") is [var k, var n] ? (k, n) : (item, "");
        return kind switch
        {
            // A blight or a drought is part of farming: the middle one of three seasons has to be plausible.
            "yield" => [Median(DemoRecords.Years.Select(y => Farm.Harvests.Where(h => h["crop"] == name && DemoRecords.InYear(h, y)).Sum(h => h.Number("quantity")) / Farm.Feet(name, y)))],
            "price" => DemoRecords.Years.Select(y => AveragePrice(name, y, "market")),
            "maturity" => [Median(DaysToFirstPick(name))],
            "wholesale part of the market price" => [100m * Weighted()],
            "hours per acre" => DemoRecords.Years.Select(y => Hours(y) / Farm.Acres),
            "gross sales per acre" => DemoRecords.Years.Select(y => DemoFarmMoney.Gross(Farm, y) / Farm.Acres),
            "hired wage 2025" => [DemoFarmMoney.AverageWage(Farm, 2025)],
            "share price a week" => DemoRecords.Years.Select(y => MostPaid(y) / BoxWeeks(y)),
            "share weeks" => DemoRecords.Years.Select(y => (decimal)BoxWeeks(y)),
            "value in the box over its price" => DemoRecords.Years.Select(y => 100m * DemoFarmMoney.BoxValue(Farm, y) / DemoFarmMoney.ShareIncome(Farm, y)),
            "crops per bed a year" => DemoRecords.Years.Select(y => Annuals(y).Sum(p => p.Number("bed_feet")) / InSoil().Sum(b => b.Number("length_ft"))),
            "crops per bed a year, busiest beds" => DemoRecords.Years.Select(Busiest),
            "cash cost over sales" => DemoRecords.Years.Select(y => 100m * DemoFarmMoney.CashCost(Farm, y) / DemoFarmMoney.Gross(Farm, y)),
            "net return of the farm over sales" => DemoRecords.Years.Select(y => 100m * DemoFarmMoney.Net(Farm, y) / DemoFarmMoney.Gross(Farm, y)),
            "harvest and packing over all hours" => DemoRecords.Years.Select(y => 100m * Hours(y, "harvest", "pack") / Hours(y)),
            "sun" => DemoRecords.Years.Select(y => DemoFarmEnergy.PanelKwhOfMonth(y, int.Parse(name["month ".Length..])) / DemoFarmEnergy.PanelKilowatts),
            "cold room power" => DemoRecords.Years.Select(y => DemoFarmEnergy.Kwh(y, "Cold room")),
            "irrigation" => DemoRecords.Years.Select(y => DemoFarmEnergy.IrrigationInches(y, InSoil().Sum(b => b.Number("length_ft")))),
            "pellets" => DemoRecords.Years.Select(DemoFarmEnergy.PelletTons),
            "electricity" => DemoRecords.Years.Select(y => DemoFarmEnergy.GridPrice(Farm, y)),
            "hours of each owner" => DemoRecords.Years.SelectMany(OwnerHours),
            "self-employment tax over profit" => DemoRecords.Years.Select(y => 100m * DemoFarmMoney.SelfEmploymentTax(Farm, y) / DemoFarmMoney.Profit(Farm, y)),
            "market days lost a year" => DemoRecords.Years.Select(y => (decimal)MarketDaysLost(y)),
            "members" => DemoRecords.Years.Select(y => Math.Round(DemoFarmMoney.ShareIncome(Farm, y) / MostPaid(y))),
            "season loan over yearly running costs" => DemoRecords.Years.Select(y => 100m * DemoFarmMoney.SeasonLoan(y) / DemoFarmMoney.CashCost(Farm, y)),
            _ => throw new ArgumentException($"nothing measures '{item}'", nameof(item)),
        };
    }

    private static decimal AveragePrice(string crop, int year, string kind)
    {
        var rows = Farm.Sales.Where(s => s["crop"] == crop && DemoRecords.InYear(s, year) && Farm.ChannelKind[s["channel"]] == kind).ToList();
        return rows.Sum(DemoRecords.Money) / rows.Sum(Farm.Quantity);
    }

    /// <summary>Wholesale money over what the same goods fetch at market, crop by crop.</summary>
    private static decimal Weighted()
    {
        var rows = Farm.Sales.Where(s => DemoRecords.InYear(s, 2025) && Farm.ChannelKind[s["channel"]] == "wholesale").ToList();
        return rows.Sum(DemoRecords.Money) / rows.GroupBy(s => s["crop"]).Sum(g => g.Sum(Farm.Quantity) * AveragePrice(g.Key, 2025, "market"));
    }

    /// <summary>Days from sowing, or from setting out where the published figure counts so; what stands over winter is left out.</summary>
    private static IEnumerable<decimal> DaysToFirstPick(string crop)
    {
        var fromTransplant = crop is "Cabbage" or "Onions" or "Peppers" or "Tomatoes" or "Eggplant";
        foreach (var planting in Farm.Plantings.Where(p => p["crop"] == crop).DistinctBy(p => p["planting"]))
        {
            var start = (fromTransplant ? null : planting.Date("sown")) ?? planting.Date("in_bed")!.Value;
            if (Farm.FirstPick.TryGetValue(planting["planting"], out var first) && first.Year == start.Year)
            {
                yield return first.DayNumber - start.DayNumber;
            }
        }
    }

    private static decimal Hours(int year, params string[] stages) =>
        Farm.Labor.Where(l => DemoRecords.InYear(l, year) && (stages.Length == 0 || stages.Contains(Farm.Stage[l["task"]]))).Sum(l => l.Number("hours"));

    private static IEnumerable<decimal> OwnerHours(int year) =>
        from worker in PlainCsv.Demo("workers").Where(w => w["kind"] == "owner").Select(w => w["worker"]).Distinct()
        select Farm.Labor.Where(l => l["worker"] == worker && DemoRecords.InYear(l, year)).Sum(l => l.Number("hours"));

    /// <summary>Days of either market's weekly season without a sale there: Saturdays from May to October, Thursdays from June to the middle of September.</summary>
    private static int MarketDaysLost(int year)
    {
        var held = Farm.Sales.Where(s => DemoRecords.InYear(s, year)).Select(s => (s["channel"], s.Date("date")!.Value)).ToHashSet();
        return Enumerable.Range(0, 365).Select(day => new DateOnly(year, 1, 1).AddDays(day)).Count(day =>
            (day is { DayOfWeek: DayOfWeek.Saturday, Month: >= 5 and <= 10 } && !held.Contains(("Saturday Market", day)))
            || (day is { DayOfWeek: DayOfWeek.Thursday, DayOfYear: >= 152 and <= 258 } && !held.Contains(("Depot Market", day))));
    }

    private static decimal MostPaid(int year) => Farm.Income.Where(i => i["channel"] == "Harvest Share" && DemoFarmMoney.YearOf(i) == year).Max(i => i.Number("amount"));

    private static int BoxWeeks(int year) => Farm.Sales.Where(s => s["channel"] == "Harvest Share" && DemoRecords.InYear(s, year)).Select(s => s["date"]).Distinct().Count();

    private static IEnumerable<Dictionary<string, string>> InSoil() => Farm.Beds.Where(b => !b["bed"].StartsWith("Shelf", StringComparison.Ordinal));

    private static IEnumerable<Dictionary<string, string>> Annuals(int year) =>
        Farm.Plantings.Where(p => Farm.CropYear(p) == year && !p["bed"].StartsWith("Shelf", StringComparison.Ordinal));

    /// <summary>Crops in the busiest twentieth of the beds, on average, a planting counting by the part of the bed it takes.</summary>
    private static decimal Busiest(int year)
    {
        var lengths = Farm.Beds.ToDictionary(b => b["bed"], b => b.Number("length_ft"));
        var turns = Annuals(year).GroupBy(p => p["bed"]).Select(g => g.Sum(p => p.Number("bed_feet")) / lengths[g.Key]).OrderDescending().ToList();
        return turns.Take(InSoil().Count() / 20).Average();
    }

    private static decimal Median(IEnumerable<decimal> values)
    {
        var sorted = values.Order().ToList();
        return sorted.Count % 2 == 1 ? sorted[sorted.Count / 2] : (sorted[(sorted.Count / 2) - 1] + sorted[sorted.Count / 2]) / 2m;
    }
}
