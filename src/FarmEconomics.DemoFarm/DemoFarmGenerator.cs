namespace FarmEconomics.DemoFarm;

/// <summary>Makes the invented farm's records: the same bytes on every run, whatever the clock, the machine or the culture.</summary>
public static class DemoFarmGenerator
{
    /// <summary>All tables, by file name, as the text that is written.</summary>
    public static IReadOnlyDictionary<string, string> Generate()
    {
        IReadOnlyList<Planting> plantings = PlantingBook.Plan();
        var picks = HarvestBook.PickAll(plantings);
        var sales = SalesBook.Sell(picks);
        var log = LaborBook.Log(plantings, picks, sales);
        var books = Books(plantings, picks, sales, log);
        plantings = [.. plantings, Berries.Planting];
        picks = [.. picks.Concat(Berries.Picks).OrderBy(pick => pick.Date)];
        sales = [.. sales.Concat(Berries.Sales).OrderBy(sale => sale.Date)];
        log = [.. log.Concat(Berries.Log).OrderBy(entry => entry.Chore.Date)];
        return Tables(new(plantings, picks, sales, log, books)).ToDictionary(t => t.Key, t => t.Value.ToString());
    }

    private static List<(string Task, string Stage)> Tasks() => Papers
        .Tasks()
        .ToString()
        .Split('\n')
        .Skip(1)
        .Where(l => l.Length > 0)
        .Select(l => l.Split(','))
        .Select(f => (f[0], f[1]))
        .ToList();

    private static Dictionary<string, CsvTable> Tables(Written written)
    {
        var (plantings, picks, sales, log, books) = written;
        var loads = Loads.Table(out var kwh);
        return new Dictionary<string, CsvTable>
        {
            ["farm.csv"] = Papers.Farm(),
            ["crops.csv"] = Writing.Crops(),
            ["units.csv"] = Writing.Units(),
            ["beds.csv"] = Writing.BedsTable(),
            ["plantings.csv"] = Writing.Plantings(plantings),
            ["harvests.csv"] = Writing.Harvests(picks),
            ["sales.csv"] = Writing.Sales(sales),
            ["channels.csv"] = Papers.Channels(),
            ["prices.csv"] = PriceList.Table(),
            ["income.csv"] = Writing.Income(),
            ["labor.csv"] = Writing.Labor(log),
            ["workers.csv"] = Payroll.Table(),
            ["tasks.csv"] = Papers.Tasks(),
            ["labor_standards.csv"] = Papers.Standards(),
            ["input_rates.csv"] = Papers.InputRates(),
            ["expenses.csv"] = Writing.Expenses(books),
            ["categories.csv"] = Categories.Table(),
            ["pools.csv"] = Pools.Table(),
            ["use.csv"] = Pools.Use(),
            ["loads.csv"] = loads,
            ["assets.csv"] = Assets.Table(),
            ["loans.csv"] = LoanBook.Table(),
            ["balances.csv"] = Papers.Balances(new CashWalk(sales, books)),
            ["limits.csv"] = Papers.Limits(),
            ["funding.csv"] = Papers.Funding(),
            ["weather.csv"] = DryWeather.Table(),
            ["watering.csv"] = WateringBook.Table(),
            ["blocks.csv"] = WateringBook.Blocks(),
            ["power_made.csv"] = SolarLogger.Table(),
            ["plan.csv"] = PlanBook.Plantings(plantings),
            ["plan_sales.csv"] = PlanBook.Sales(plantings, sales),
            ["totals.csv"] = ControlTotals.Table(log, sales, books, kwh, Tasks()),
        };
    }

    private sealed record Written(
        IReadOnlyList<Planting> Plantings,
        IReadOnlyList<HarvestBook.Pick> Picks,
        IReadOnlyList<SalesBook.Sale> Sales,
        IReadOnlyList<LaborBook.Entry> Log,
        IReadOnlyList<BookLine> Books);

    private static List<BookLine> Books(
        IReadOnlyList<Planting> plantings,
        IReadOnlyList<HarvestBook.Pick> picks,
        IReadOnlyList<SalesBook.Sale> sales,
        IReadOnlyList<LaborBook.Entry> log
    )
    {
        var random = FarmFacts.RandomFor(7);
        // The garlic that was in the ground when the records begin was paid for the October before.
        var books = new List<BookLine>
        {
            new(
                new(2022, 10, 4),
                112.40m,
                "seed",
                "Skarrow Tubers",
                Crop: "Garlic",
                CropYear: 2023,
                Note: "new stock beside our own cloves"
            ),
        };
        foreach (var year in new[] { 2023, 2024, 2025, 2026 })
        {
            books.AddRange(Purchases.Of(year, plantings, picks, random));
            books.AddRange(RunningBills.Of(year, random));
            books.AddRange(Payroll.Of(year, log));
            books.AddRange(LoanBook.Of(year));
        }

        books.AddRange(Berries.Books);
        books.AddRange(TaxBook.Of(sales, books));
        return [.. books.OrderBy(b => b.Date).ThenBy(b => b.Category, StringComparer.Ordinal)];
    }
}
