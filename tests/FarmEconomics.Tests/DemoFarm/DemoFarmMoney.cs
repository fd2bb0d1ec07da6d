namespace FarmEconomics.Tests.DemoFarm;

/// <summary>The farm's money by year, reckoned straight from the text: a rough check that knows nothing of the engine.</summary>
internal static class DemoFarmMoney
{
    private const string Share = "Harvest Share";

    public static int YearOf(Dictionary<string, string> row) => row["crop_year"].Length > 0 ? (int)row.Number("crop_year") : row.Date("date")!.Value.Year;

    public static decimal ShareIncome(DemoRecords farm, int year) => farm.Income.Where(i => i["channel"] == Share && YearOf(i) == year).Sum(i => i.Number("amount"));

    /// <summary>Produce sold, shares included.</summary>
    public static decimal Gross(DemoRecords farm, int year) =>
        farm.Sales.Where(s => DemoRecords.InYear(s, year) && farm.ChannelKind[s["channel"]] is "market" or "stand" or "wholesale").Sum(DemoRecords.Money)
        + ShareIncome(farm, year);

    /// <summary>What the boxes held, at the stall's average price of the year.</summary>
    public static decimal BoxValue(DemoRecords farm, int year)
    {
        var market = farm.Sales.Where(s => DemoRecords.InYear(s, year) && s["channel"] == "Saturday Market").GroupBy(s => s["crop"])
            .ToDictionary(g => g.Key, g => g.Sum(DemoRecords.Money) / g.Sum(farm.Quantity));
        return farm.Sales.Where(s => DemoRecords.InYear(s, year) && s["channel"] == Share).Sum(s => farm.Quantity(s) * market[s["crop"]]);
    }

    /// <summary>Operating and labor rows, the household's part taken out, and the market's fee.</summary>
    public static decimal CashCost(DemoRecords farm, int year)
    {
        var classes = PlainCsv.Demo("categories").ToDictionary(c => c["category"], c => c["class"]);
        var fee = PlainCsv.Demo("channels").Single(c => c["channel"] == "Saturday Market").Number("fee_percent") / 100m;
        return farm.Expenses.Where(e => YearOf(e) == year && classes[e["category"]] is "operating" or "labor")
                .Sum(e => e.Number("amount") * (e["farm_percent"].Length > 0 ? e.Number("farm_percent") / 100m : 1m))
            + (fee * farm.Sales.Where(s => DemoRecords.InYear(s, year) && s["channel"] == "Saturday Market").Sum(DemoRecords.Money));
    }

    /// <summary>After the owners' hours at their wage and the yearly cost of what lasts: straight line and five percent on the mean, all of it the farm's.</summary>
    public static decimal Net(DemoRecords farm, int year)
    {
        var wages = PlainCsv.Demo("workers").Where(w => w["kind"] == "owner").ToDictionary(w => w["worker"], w => w["wage"].Length > 0 ? w.Number("wage") : 20m);
        var owners = farm.Labor.Where(l => DemoRecords.InYear(l, year) && wages.ContainsKey(l["worker"])).Sum(l => l.Number("hours") * wages[l["worker"]]);
        var lasting = PlainCsv.Demo("assets")
            .Where(a => a.Date("in_service")!.Value.Year <= year && (a.Date("retired") is not { } gone || gone.Year > year))
            .Sum(a => (((a.Number("cost") - a.Number("grant") - a.Number("salvage")) / a.Number("life_years")) + (0.05m * (a.Number("cost") - a.Number("grant") + a.Number("salvage")) / 2m))
                * (a["farm_percent"].Length > 0 ? a.Number("farm_percent") / 100m : 1m));
        return Gross(farm, year) - CashCost(farm, year) - owners - lasting;
    }

    /// <summary>Wages paid over hours hired, from the log and the wage table.</summary>
    public static decimal AverageWage(DemoRecords farm, int year)
    {
        var hired = PlainCsv.Demo("workers").Where(w => w["kind"] == "hired").ToList();
        decimal Wage(string worker, DateOnly day) => hired.Last(w => w["worker"] == worker && (w.Date("from") is not { } from || from <= day)).Number("wage");
        var rows = farm.Labor.Where(l => DemoRecords.InYear(l, year) && hired.Any(w => w["worker"] == l["worker"])).ToList();
        return rows.Sum(l => l.Number("hours") * Wage(l["worker"], l.Date("date")!.Value)) / rows.Sum(l => l.Number("hours"));
    }
}
