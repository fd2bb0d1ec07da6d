namespace FarmEconomics.DemoFarm;

/// <summary>Estimated taxes of the owners, a couple filing together without other income, worked out from the farm's own profit.</summary>
/// <remarks>
/// Self-employment tax is 15.3 percent of 92.35 percent of the profit (Schedule SE of Form 1040). Income tax is the lowest bracket's
/// 10 percent of what is left of the profit after half of that tax, the standard deduction and the deduction of a fifth for business
/// income (Form 1040-ES), from memory.
/// The figures are to look believable; they are no tax advice.
/// </remarks>
internal static class TaxBook
{
    private static readonly string[] Running = ["operating", "labor", "interest"];

    public static IEnumerable<BookLine> Of(IReadOnlyList<SalesBook.Sale> sales, IReadOnlyList<BookLine> books)
    {
        var classes = Categories.Classes();
        var lines = new List<BookLine>();
        foreach (var year in FarmFacts.Years)
        {
            var profit = sales.Where(s => s.Date.Year == year).Sum(s => (s.Money ?? 0m) - Papers.Fee(s))
                + Incomes.All().Where(l => l.Date.Year == year).Sum(l => l.Amount)
                - books.Where(b => b.Date.Year == year && Running.Contains(classes[b.Category]))
                    .Sum(b => b.Amount * (b.FarmPercent ?? 100m) / 100m)
                - Assets.All.Sum(a => a.Depreciation(year));
            var self = Math.Max(0m, profit) * 0.9235m * 0.153m;
            var taxable = Math.Max(0m, (profit - (self / 2m) - StandardDeduction(year)) * 0.8m);
            foreach (var day in Installments(year))
            {
                lines.Add(new(day, Ten(self / 4m), "self-employment tax", "Revenue office", Note: $"estimate for {year}"));
                lines.Add(new(day, Ten(taxable * 0.10m / 4m), "income tax", "Revenue office", Note: $"estimate for {year}"));
            }

            // The last installment of 2022 falls into the first January of the records; its books are missing, so it is taken as 2023's.
            if (year == FarmFacts.FirstDay.Year)
            {
                var first = new DateOnly(year, 1, 15);
                lines.Add(new(first, Ten(self / 4m), "self-employment tax", "Revenue office", Note: $"estimate for {year - 1}"));
                lines.Add(new(first, Ten(taxable * 0.10m / 4m), "income tax", "Revenue office", Note: $"estimate for {year - 1}"));
            }
        }

        return lines.Where(line => line.Amount > 0m);
    }

    /// <summary>April, June, September, and January of the year after.</summary>
    private static IEnumerable<DateOnly> Installments(int year) =>
        [new(year, 4, 15), new(year, 6, 15), new(year, 9, 15), new(year + 1, 1, 15)];

    private static decimal StandardDeduction(int year) => year switch { 2023 => 27700m, 2024 => 29200m, _ => 31500m };

    /// <summary>Estimates are paid in round sums.</summary>
    private static decimal Ten(decimal amount) => Math.Round(amount / 10m, MidpointRounding.AwayFromZero) * 10m;
}
