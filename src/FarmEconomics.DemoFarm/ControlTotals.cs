namespace FarmEconomics.DemoFarm;

/// <summary>Totals from outside the tables that they must meet: the payslips, the register, the meters, the bank.</summary>
internal static class ControlTotals
{
    public static CsvTable Table(
        IReadOnlyList<LaborBook.Entry> log,
        IReadOnlyList<SalesBook.Sale> sales,
        IReadOnlyList<BookLine> books,
        IReadOnlyDictionary<int, decimal> kwh,
        IReadOnlyList<(string Task, string Stage)> tasks)
    {
        var t = new CsvTable("table", "measure", "amount", "from", "to", "tolerance");
        var grow = tasks.Where(x => x.Stage == "grow").Select(x => x.Task).ToHashSet();
        foreach (var year in FarmFacts.Years)
        {
            var (from, to) = (new DateOnly(year, 1, 1), new DateOnly(year, 12, 31));
            t.Add("labor", "hours", log.Where(e => e.Chore.Date.Year == year).Sum(e => e.Hours), from, to, 0.5m);
            t.Add("sales", "amount", CsvTable.Money(sales.Where(s => s.Date.Year == year).Sum(s => s.Money ?? 0m)), from, to, 5m);
            t.Add("expenses", "amount", CsvTable.Money(books.Where(b => b.Date.Year == year).Sum(b => b.Amount)), from, to, 0.05m);
            t.Add("income", "amount", CsvTable.Money(Incomes.All().Where(l => l.Date.Year == year).Sum(l => l.Amount)), from, to, null);
            // The utility's meter and the panels' own read to ten kilowatt-hours; their standby is in it.
            t.Add("loads", "kWh", Math.Round(kwh[year] / 10m, MidpointRounding.AwayFromZero) * 10m, from, to, 50m);
        }

        // What the bed work of 2025 took by the payslips and the owners' diary: more than the logs show.
        var logged = log.Where(e => e.Chore.Date.Year == 2025 && grow.Contains(e.Chore.Task)).Sum(e => e.Hours);
        t.Add("labor", "hours:grow", logged + PlannedGaps.UnloggedGrowHours, new DateOnly(2025, 1, 1), new DateOnly(2025, 12, 31), 20m);
        return t;
    }
}
