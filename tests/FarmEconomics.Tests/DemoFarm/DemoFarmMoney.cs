namespace FarmEconomics.Tests.DemoFarm;

/// <summary>The farm's money by year, worked out straight from the text: a rough check that knows nothing of the engine.</summary>
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

    private static readonly Dictionary<string, string> Classes = PlainCsv.Demo("categories").ToDictionary(c => c["category"], c => c["class"]);

    private static readonly Dictionary<string, decimal> Fees = PlainCsv.Demo("channels").ToDictionary(c => c["channel"], c => c.Number("fee_percent") / 100m);

    /// <summary>Operating and labor rows, the household's part taken out, and what channels keep.</summary>
    public static decimal CashCost(DemoRecords farm, int year) =>
        farm.Expenses.Where(e => YearOf(e) == year && Classes[e["category"]] is "operating" or "labor").Sum(FarmPart)
        + farm.Sales.Where(s => DemoRecords.InYear(s, year)).Sum(Fee);

    private static decimal FarmPart(Dictionary<string, string> row) => row.Number("amount") * (row["farm_percent"].Length > 0 ? row.Number("farm_percent") / 100m : 1m);

    private static decimal Fee(Dictionary<string, string> sale) => Math.Round(DemoRecords.Money(sale) * Fees[sale["channel"]], 2, MidpointRounding.AwayFromZero);

    /// <summary>Profit as the year's tax return would have it, roughly: money in less running costs, interest and straight-line depreciation.</summary>
    public static decimal Profit(DemoRecords farm, int year) =>
        farm.Sales.Where(s => DemoRecords.InYear(s, year)).Sum(s => DemoRecords.Money(s) - Fee(s))
        + farm.Income.Where(i => DemoRecords.InYear(i, year)).Sum(i => i.Number("amount"))
        - farm.Expenses.Where(e => DemoRecords.InYear(e, year) && Classes[e["category"]] is "operating" or "labor" or "interest").Sum(FarmPart)
        - PlainCsv.Demo("assets")
            .Where(a => a.Date("in_service")!.Value.Year <= year && (a.Date("retired") is not { } gone || gone.Year > year))
            .Sum(a => (a.Number("cost") - a.Number("grant") - a.Number("salvage")) / a.Number("life_years") * (a["farm_percent"].Length > 0 ? a.Number("farm_percent") / 100m : 1m));

    /// <summary>The four estimates paid for a year, the last in January of the next.</summary>
    public static decimal SelfEmploymentTax(DemoRecords farm, int year) =>
        farm.Expenses.Where(e => e["category"] == "self-employment tax" && e["note"] == $"estimate for {year}").Sum(e => e.Number("amount"));

    public static decimal SeasonLoan(int year) => PlainCsv.Demo("loans").Where(l => l["loan"] == $"Season loan {year}").Sum(l => l.Number("principal"));

    /// <summary>The account's movements by day: sales less fees, other income, loans drawn half a year before they are paid back, and everything paid.</summary>
    public static SortedDictionary<DateOnly, decimal> CashMoves(DemoRecords farm)
    {
        var moves = new SortedDictionary<DateOnly, decimal>();
        void Move(DateOnly day, decimal amount) => moves[day] = moves.GetValueOrDefault(day) + amount;
        foreach (var sale in farm.Sales)
        {
            Move(sale.Date("date")!.Value, DemoRecords.Money(sale) - Fee(sale));
        }

        foreach (var income in farm.Income)
        {
            Move(income.Date("date")!.Value, income.Number("amount"));
        }

        foreach (var expense in farm.Expenses)
        {
            Move(expense.Date("date")!.Value, -expense.Number("amount"));
        }

        foreach (var loan in PlainCsv.Demo("loans").Where(l => l["loan"].StartsWith("Season", StringComparison.Ordinal)))
        {
            Move(loan.Date("first_payment")!.Value.AddMonths(-6), loan.Number("principal"));
        }

        return moves;
    }

    /// <summary>After the owners' hours at their wage and the yearly cost of what lasts: straight line and five percent on the mean, all of it the farm's.</summary>
    public static decimal Net(DemoRecords farm, int year)
    {
        var ownerWage = PlainCsv.Demo("farm").Single(s => s["setting"] == "owner_wage").Number("value");
        var wages = PlainCsv.Demo("workers").Where(w => w["kind"] == "owner").ToDictionary(w => w["worker"], w => w["wage"].Length > 0 ? w.Number("wage") : ownerWage);
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
