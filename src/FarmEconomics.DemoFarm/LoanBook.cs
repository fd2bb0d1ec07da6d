namespace FarmEconomics.DemoFarm;

/// <summary>The note, paid level four times a year, and the season loan drawn each spring and paid back in the fall.</summary>
internal static class LoanBook
{
    private const decimal Principal = 15000m;
    private const decimal AnnualPercent = 5.25m;
    private const int Years = 10;
    private const int PaymentsPerYear = 4;
    private static readonly DateOnly FirstPayment = new(2021, 12, 15);

    /// <summary>What the credit union lends for the season, drawn on the last day but one of March.</summary>
    public const decimal SeasonLoan = 9000m;

    private const decimal SeasonPercent = 7.5m;

    /// <summary>The day a season loan is drawn.</summary>
    public static DateOnly Drawn(int year) => new(year, 3, 30);

    private static DateOnly PaidBack(int year) => new(year, 9, 30);

    /// <summary>Half a year's interest on the season loan, to the cent.</summary>
    private static decimal SeasonInterest => Cent(SeasonLoan * SeasonPercent / 100m / 2m);

    public static CsvTable Table()
    {
        var t = new CsvTable("loan", "principal", "annual_percent", "years", "payments_per_year", "first_payment", "repayment", "asset");
        t.Add(Assets.Loan, CsvTable.Money(Principal), AnnualPercent, Years, PaymentsPerYear, FirstPayment, "level-payment", Assets.LoanFor);
        foreach (var year in FarmFacts.Years)
        {
            // One payment, half a year after the draw.
            t.Add($"Season loan {year}", CsvTable.Money(SeasonLoan), SeasonPercent, 0.5m, 2, PaidBack(year), "interest-only", null);
        }

        return t;
    }

    /// <summary>Date, interest, principal and what is owed after it, payment by payment.</summary>
    public static IEnumerable<(DateOnly Date, decimal Interest, decimal Principal, decimal Owed)> Schedule()
    {
        var rate = AnnualPercent / 100m / PaymentsPerYear;
        var count = Years * PaymentsPerYear;
        var growth = 1m;
        for (var i = 0; i < count; i++)
        {
            growth *= 1m + rate;
        }

        var payment = Cent(Principal * rate * growth / (growth - 1m));
        var owed = Principal;
        for (var i = 0; i < count; i++)
        {
            var interest = Cent(owed * rate);
            var back = i == count - 1 ? owed : payment - interest;
            owed -= back;
            yield return (FirstPayment.AddMonths(i * 12 / PaymentsPerYear), interest, back, owed);
        }
    }

    public static IEnumerable<BookLine> Of(int year) =>
        Schedule().Where(p => p.Date.Year == year && p.Date <= FarmFacts.AsOf).SelectMany(p => new[]
        {
            new BookLine(p.Date, p.Interest, "note interest", "Northmark Credit Union", Note: Assets.Loan),
            new BookLine(p.Date, p.Principal, "note principal", "Northmark Credit Union", Note: Assets.Loan),
        }).Concat(SeasonOf(year));

    private static IEnumerable<BookLine> SeasonOf(int year) => !FarmFacts.Years.Contains(year)
        ? []
        :
        [
            new BookLine(PaidBack(year), SeasonInterest, "season loan interest", "Northmark Credit Union", Note: $"Season loan {year}"),
            new BookLine(PaidBack(year), SeasonLoan, "season loan principal", "Northmark Credit Union", Note: $"Season loan {year}"),
        ];

    public static decimal OwedOn(DateOnly day) => Schedule().Last(p => p.Date <= day).Owed;

    private static decimal Cent(decimal amount) => Math.Round(amount, 2, MidpointRounding.AwayFromZero);
}
