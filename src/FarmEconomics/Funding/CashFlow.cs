using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>A line of the cash flow.</summary>
/// <param name="Name">What it is.</param>
/// <param name="IsIn">True for money that comes in.</param>
/// <param name="Months">Twelve amounts, above 0, in whole cents.</param>
/// <param name="Kind">The kind of cash it sums up; null for loans and a project, which no row of the books tells of.</param>
public sealed record CashFlowLine(string Name, bool IsIn, IReadOnlyList<decimal> Months, CashKind? Kind = null)
{
    /// <summary>The year's amount.</summary>
    public decimal Total => Months.Sum();
}

/// <summary>
/// Twelve months of cash: opening + in - out = closing, and the closing is the next month's opening. In currency, whole cents.
/// </summary>
public sealed class CashFlow
{
    /// <summary>Months in a year.</summary>
    public const int MonthCount = 12;

    private CashFlow(string title, IReadOnlyList<DateOnly> months, decimal? opening, IReadOnlyList<CashFlowLine> lines)
    {
        Title = title;
        Months = months;
        OpeningCash = opening;
        Lines = lines;
    }

    /// <summary>What it is of.</summary>
    public string Title { get; }

    /// <summary>First day of each month.</summary>
    public IReadOnlyList<DateOnly> Months { get; }

    /// <summary>Cash at the beginning; null: no balance sheet says, and balances start from 0.</summary>
    public decimal? OpeningCash { get; }

    /// <summary>The lines, those that come in first.</summary>
    public IReadOnlyList<CashFlowLine> Lines { get; }

    /// <summary>What came in, month by month.</summary>
    public IReadOnlyList<decimal> In => Sum(isIn: true);

    /// <summary>What went out, month by month.</summary>
    public IReadOnlyList<decimal> Out => Sum(isIn: false);

    /// <summary>Cash at the end of each month.</summary>
    public IReadOnlyList<decimal> Closing
    {
        get
        {
            decimal[] closing = new decimal[MonthCount];
            decimal cash = OpeningCash ?? 0m;
            IReadOnlyList<decimal> moneyIn = In, moneyOut = Out;
            for (int i = 0; i < MonthCount; i++)
            {
                closing[i] = cash += moneyIn[i] - moneyOut[i];
            }

            return closing;
        }
    }

    /// <summary>The lowest cash at the end of a month.</summary>
    public decimal LowPoint => Closing.Min();

    /// <summary>The month of the low point, from 0; the first of several.</summary>
    public int LowMonth => Closing.ToList().IndexOf(LowPoint);

    /// <summary>The year's cash of some kinds.</summary>
    internal decimal Sum(params IReadOnlyList<CashKind> kinds) =>
        Lines.Where(line => line.Kind is { } kind && kinds.Contains(kind)).Sum(line => line.Total);

    /// <summary>What must be borrowed for the season so that cash never falls below a minimum.</summary>
    /// <param name="minimum">The minimum, in currency.</param>
    /// <returns>At least 0; not available without opening cash.</returns>
    public Result OperatingLoan(decimal minimum) => OpeningCash is null
        ? Result.NotAvailable("no balance sheet says what cash there was at the beginning")
        : Result.Known(Math.Max(0m, minimum - LowPoint));

    /// <summary>The cash of a year as the records have it.</summary>
    /// <param name="book">The cash book.</param>
    /// <param name="opening">The balance sheet at the beginning, or null.</param>
    /// <returns>The cash flow.</returns>
    public static CashFlow Of(CashBook book, BalanceSheet? opening)
    {
        ArgumentNullException.ThrowIfNull(book);
        List<CashFlowLine> lines = [];
        foreach ((CashKind kind, string name, bool isIn) in Kinds)
        {
            decimal[] months = new decimal[MonthCount];
            foreach (CashEntry entry in book.Entries.Where(entry => entry.Kind == kind))
            {
                months[book.Period.MonthOf(entry.Date)] += isIn ? entry.Amount : -entry.Amount;
            }

            lines.Add(new CashFlowLine(name, isIn, months, kind));
        }

        decimal[] loans = new decimal[MonthCount];
        foreach (LoanTerms loan in book.Records.Tables.Loans.Select(LoanTerms.Of).Where(loan => book.Period.Holds(loan.PaidOut)))
        {
            loans[book.Period.MonthOf(loan.PaidOut)] += Money.Rounded(loan.Principal).Amount;
        }

        lines.Insert(lines.FindIndex(line => !line.IsIn), new CashFlowLine("Loans paid out", IsIn: true, loans));
        return new CashFlow($"Cash of {book.Period.Year}, month by month", book.Period.Months, opening?.Cash, Drop(lines));
    }

    /// <summary>
    /// The next year by last year's own monthly pattern: every month's sales, shares and channels' fees x area x yield x price, running
    /// costs x area x the cost factor, wages x area x the wage factor; other income, household and tax as they were; invoices unpaid now
    /// come in, as many x area x yield x price are unpaid at the end; purchases only those of the project;
    /// loans by their schedules, or, without a loans table, interest and principal as the books had them.
    /// </summary>
    /// <param name="book">Last year's cash book.</param>
    /// <param name="opening">Cash at its beginning, last year's closing; null: unknown.</param>
    /// <param name="assumptions">The factors.</param>
    /// <param name="project">What the farm pays for the first year of the project and what the funder gives for it, or null. A grant that
    /// comes after the twelve months isn't in them.</param>
    /// <param name="newLoan">A loan asked for, or null.</param>
    /// <returns>The projection.</returns>
    public static CashFlow Next(
        CashBook book,
        decimal? opening,
        FundingAssumptions assumptions,
        (decimal Cash, decimal Grant)? project,
        LoanSchedule? newLoan
    )
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(assumptions);
        FiscalYear next = FiscalYear.Of(book.Records.Settings, book.Period.Year + 1);
        List<CashFlowLine> lines = ByPattern(book, assumptions.NextSeason);
        if (project is { } asked)
        {
            if (GrantDay(next, assumptions.Project) is var day && next.Holds(day))
            {
                lines.Add(Single("Grant", isIn: true, next.MonthOf(day), asked.Grant));
            }

            lines.Add(
                Single("Project, what is paid in cash", isIn: false, next.MonthOf(FirstDayOf(next, assumptions.Project.Month)), asked.Cash)
            );
        }

        AddLoans(lines, next, book, newLoan);
        return new CashFlow(
            $"Cash of {next.Year} by last year's pattern",
            next.Months,
            opening,
            Drop(lines.OrderByDescending(line => line.IsIn).ToList())
        );
    }

    /// <summary>Last year's lines times next year's factors; purchases left out, and loan payments where a schedule has them.</summary>
    private static List<CashFlowLine> ByPattern(CashBook book, NextSeasonAssumptions factors)
    {
        decimal sales = factors.Area * factors.Yield * factors.Price;
        decimal cost = factors.Area * factors.Cost;
        List<CashFlowLine> lines = [];
        bool scheduled = LoanSchedule.SaysWhatIsDue(book.Records);
        foreach (CashFlowLine line in Of(book, null).Lines.Where(line =>
            line.Kind is not (null or CashKind.Invoices or CashKind.Capital or CashKind.AssetSales)
            && !(scheduled && line.Kind is CashKind.Principal or CashKind.Interest or CashKind.OperatingInterest)))
        {
            decimal factor = line.Kind switch
            {
                CashKind.ProduceSales or CashKind.ShareIncome or CashKind.SellingFees => sales,
                CashKind.Operating => cost,
                CashKind.Labor => factors.Area * factors.Wage,
                _ => 1m,
            };
            lines.Add(line with { Months = [.. line.Months.Select(amount => Money.Rounded(amount * factor).Amount)] });
        }

        // What is unpaid now comes in, and at the end as much of the sales is unpaid again.
        decimal unpaid = BalanceSheet.At(book.Records, book.Period.End.AddDays(-1))?.UnpaidInvoices ?? 0m;
        decimal[] invoices = new decimal[MonthCount];
        (invoices[0], invoices[^1]) = (unpaid, -Money.Rounded(unpaid * sales).Amount);
        lines.Add(new CashFlowLine(NameOf(CashKind.Invoices), IsIn: true, invoices, CashKind.Invoices));
        return lines;
    }

    private static readonly (CashKind Kind, string Name, bool IsIn)[] Kinds =
    [
        (CashKind.ProduceSales, "Sales of produce", true),
        (CashKind.Invoices, "Invoices of the year before, less those unpaid at the end", true),
        (CashKind.ShareIncome, "Share payments", true),
        (CashKind.OtherIncome, "Other farm income", true),
        (CashKind.AssetSales, "Equipment and buildings sold", true),
        (CashKind.SellingFees, "Fees of channels", false),
        (CashKind.Operating, "Running costs", false),
        (CashKind.Labor, "Wages and payroll", false),
        (CashKind.Interest, "Interest on loans for assets", false),
        (CashKind.OperatingInterest, "Interest on operating loans", false),
        (CashKind.Principal, "Loan principal", false),
        (CashKind.Capital, "Purchases of equipment and buildings", false),
        (CashKind.HouseholdPart, "Household, its part of shared bills", false),
        (CashKind.Drawings, "Household drawings", false),
        (CashKind.IncomeTax, "Income and self-employment tax", false),
    ];

    private static string NameOf(CashKind kind) => Kinds.First(one => one.Kind == kind).Name;

    private static void AddLoans(List<CashFlowLine> lines, FiscalYear next, CashBook book, LoanSchedule? newLoan)
    {
        foreach (
            LoanSchedule schedule in book
                .Records.Tables.Loans.Select(row => LoanSchedule.Of(LoanTerms.Of(row)))
                .Concat(newLoan is null ? [] : [newLoan])
        )
        {
            decimal[] payments = new decimal[MonthCount];
            foreach (LoanPayment payment in schedule.Between(next.Start, next.End))
            {
                payments[next.MonthOf(payment.Date)] += payment.Payment;
            }

            lines.Add(new CashFlowLine($"Payments on {schedule.Terms.Name}", IsIn: false, payments));
            if (next.Holds(schedule.Terms.PaidOut))
            {
                lines.Add(
                    Single($"Loan: {schedule.Terms.Name}", isIn: true, next.MonthOf(schedule.Terms.PaidOut), schedule.Terms.Principal)
                );
            }
        }
    }

    /// <summary>The first day of a calendar month within a year that may start in another.</summary>
    internal static DateOnly FirstDayOf(FiscalYear year, int month)
    {
        DateOnly day = new(year.Start.Year, month, 1);
        return day < year.Start ? day.AddYears(1) : day;
    }

    /// <summary>The first day of the month the funder's money comes in: not before the project is paid, so maybe after the year.</summary>
    internal static DateOnly GrantDay(FiscalYear year, ProjectAssumptions project)
    {
        DateOnly paid = FirstDayOf(year, project.Month), comes = FirstDayOf(year, project.GrantMonth ?? project.Month);
        return comes < paid ? comes.AddYears(1) : comes;
    }

    private static CashFlowLine Single(string name, bool isIn, int month, decimal amount)
    {
        decimal[] months = new decimal[MonthCount];
        months[month] = amount;
        return new CashFlowLine(name, isIn, months);
    }

    private static List<CashFlowLine> Drop(List<CashFlowLine> lines) => lines.FindAll(line => line.Months.Any(amount => amount != 0m));

    private decimal[] Sum(bool isIn)
    {
        decimal[] sum = new decimal[MonthCount];
        foreach (CashFlowLine line in Lines.Where(line => line.IsIn == isIn))
        {
            for (int i = 0; i < MonthCount; i++)
            {
                sum[i] += line.Months[i];
            }
        }

        return sum;
    }
}
