namespace FarmEconomics.DemoFarm;

/// <summary>Who works and what they are paid, and the wages the books show for it.</summary>
internal static class Payroll
{
    private static readonly (string Worker, string Kind, (DateOnly? From, decimal? Wage)[] Wages)[] Workers =
    [
        (FarmFacts.OwnerOne, "owner", [(null, null)]),
        (FarmFacts.OwnerTwo, "owner", [(null, 17m)]),
        (FarmFacts.Lead, "hired", [(null, 17.5m), (new(2024, 1, 1), 18.25m), (new(2025, 1, 1), 19m)]),
        (FarmFacts.CrewTwo, "hired", [(null, 16m), (new(2024, 1, 1), 16.75m), (new(2025, 1, 1), 17.5m)]),
        (FarmFacts.CrewThree, "hired", [(null, 15.5m), (new(2024, 1, 1), 16.25m), (new(2025, 1, 1), 17m)]),
        (FarmFacts.MarketHelper, "hired", [(null, 15m), (new(2024, 1, 1), 15.5m), (new(2025, 1, 1), 16.25m)]),
        (FarmFacts.Volunteer, "volunteer", [(null, null)]),
    ];

    public static CsvTable Table()
    {
        var t = new CsvTable("worker", "kind", "wage", "from");
        foreach (var (worker, kind, wages) in Workers)
        {
            foreach (var (from, wage) in wages)
            {
                t.Add(worker, kind, wage, from);
            }
        }

        return t;
    }

    public static bool Hired(string worker) => Workers.Any(w => w.Worker == worker && w.Kind == "hired");

    public static decimal Wage(string worker, DateOnly day) =>
        Workers.Single(w => w.Worker == worker).Wages.Last(w => w.From is not { } from || from <= day).Wage ?? 0m;

    /// <summary>
    /// Wages once a month by worker, the employer's taxes with them, a little extra in October for a season seen through.
    /// </summary>
    public static IEnumerable<BookLine> Of(int year, IReadOnlyList<LaborBook.Entry> log)
    {
        foreach (
            var month in log.Where(e => e.Chore.Date.Year == year && Hired(e.Worker)).GroupBy(e => e.Chore.Date.Month).OrderBy(g => g.Key)
        )
        {
            var paid = new DateOnly(year, month.Key, DateTime.DaysInMonth(year, month.Key));
            var sum = 0m;
            foreach (var worker in month.GroupBy(e => e.Worker).OrderBy(g => g.Key, StringComparer.Ordinal))
            {
                var wage =
                    Cent(worker.Sum(e => e.Hours) * Wage(worker.Key, paid)) + (month.Key == 10 && worker.Key == FarmFacts.Lead ? 150m : 0m);
                sum += wage;
                yield return new BookLine(paid, wage, "wages", worker.Key);
            }

            // 7.65 percent for social security and Medicare, and what accident insurance takes.
            yield return new BookLine(paid, Cent(sum * 0.0765m) + Cent(sum * 0.021m), "payroll taxes", "Revenue office");
        }
    }

    private static decimal Cent(decimal amount) => Math.Round(amount, 2, MidpointRounding.AwayFromZero);
}
