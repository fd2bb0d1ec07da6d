using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Funding;

/// <summary>Two figures that must be the same.</summary>
/// <param name="Name">What they are.</param>
/// <param name="Left">The one.</param>
/// <param name="Right">The other.</param>
public sealed record FundingCheck(string Name, decimal Left, decimal Right)
{
    /// <summary>Left less right; 0.</summary>
    public decimal Difference => Left - Right;
}

/// <summary>
/// Everything a lender or a funder asks for, from one season's records and the assumptions: statement, bridge, cash flow, balance sheet,
/// measures, loans, crops, project. What the records can't give is null or not available with its reason.
/// </summary>
public sealed class FundingWriteUp
{
    private FundingWriteUp(FarmReview review, SeasonReview season, FundingAssumptions assumptions, string? project, IMarginalPower? power)
    {
        Review = review;
        Season = season;
        FarmRecords records = review.Records;
        Grant = project is null ? null : GrantBudget.Of(records, project, assumptions);
        Investment = Grant is null ? null : Investment.Of(season, Grant, assumptions, power);
        Assumptions = assumptions with { Project = Investment?.Project ?? assumptions.Project.For(records, project) };
        Period = FiscalYear.Of(records.Settings, season.CropYear);
        Cash = CashBook.Of(review, Period);
        Tax = TaxStatement.Of(Cash, DepreciationClasses.Of(records, assumptions));
        Taxes = TaxView.Of(Tax, assumptions.Tax, records.Settings);
        Bridge = StatementBridge.Of(review, season, Cash);
        Opening = BalanceSheet.At(records, Period.Start.AddDays(-1));
        Closing = BalanceSheet.At(records, Period.End.AddDays(-1));
        bool bothEnds = SheetsUnknown is null && Tax.NetUnknown is null;
        Accrual = bothEnds ? AccrualStatement.Of(Cash, Opening!, Closing!) : null;
        Equity = bothEnds ? OwnerEquity.Of(Cash, Opening!, Closing!) : null;
        Loans = [.. records.Tables.Loans.Select(row => LoanSchedule.Of(LoanTerms.Of(row)))];
        NewLoan = LoanAskedFor(records);
        LastYear = CashFlow.Of(Cash, Opening);
        NextYear = Next(Grant?.Form.Federal ?? 0m);
        Line = LineOf(NextYear);
        Inputs = InputsOf(review);
        Measures = FinancialMeasures.Of(Inputs);
        Coverage = CoverageOf();
        Crops = CropWriteUp.Of(season, assumptions);
    }

    /// <summary>The farm over all its years.</summary>
    public FarmReview Review { get; }

    /// <summary>The season.</summary>
    public SeasonReview Season { get; }

    /// <summary>What is assumed beside the records.</summary>
    public FundingAssumptions Assumptions { get; }

    /// <summary>The months it is of.</summary>
    public FiscalYear Period { get; }

    /// <summary>Receipts and payments by date.</summary>
    public CashBook Cash { get; }

    /// <summary>The statement by Schedule F line.</summary>
    public TaxStatement Tax { get; }

    /// <summary>Self-employment and income tax, entered or estimated.</summary>
    public TaxView Taxes { get; }

    /// <summary>Assets retired before their life was over in the year.</summary>
    public IReadOnlyList<EarlyRetirement> RetiredEarly => EarlyRetirement.Of(Season.Records, Season.CropYear);

    /// <summary>From that statement to the enterprise statement.</summary>
    public StatementBridge Bridge { get; }

    /// <summary>The balance sheet at the beginning; null: none within a month.</summary>
    public BalanceSheet? Opening { get; }

    /// <summary>The balance sheet at the end; null: none within a month.</summary>
    public BalanceSheet? Closing { get; }

    /// <summary>Why what is owned and owed at both ends of the year isn't known; null where it is.</summary>
    public string? SheetsUnknown => Closing is null ? NoSheet(Period.End) : Opening is null ? NoSheet(Period.Start)
        : Closing.Cash is null || Opening.Cash is null ? $"no item of {(Closing.Cash is null ? Closing.Date : Opening.Date):yyyy-MM-dd} is "
            + "said to be cash (column kind of balances)"
        : null;

    /// <summary>The accrual statement; null without both balance sheets, and in a year without income or expenses on file.</summary>
    public AccrualStatement? Accrual { get; }

    /// <summary>
    /// The statement of owner equity; null without both balance sheets, and in a year without income or expenses on file.
    /// </summary>
    public OwnerEquity? Equity { get; }

    /// <summary>The loans' schedules.</summary>
    public IReadOnlyList<LoanSchedule> Loans { get; }

    /// <summary>
    /// Principal and interest of the year on all loans, season loans included: what fell due by the schedules, and what the books paid of
    /// it; null where at least that was paid, but for less than the smallest payment, as a lender's days may count, and without books.
    /// </summary>
    internal (decimal Due, decimal Paid)? Behind
    {
        get
        {
            List<decimal> due =
                [.. Loans.SelectMany(loan => loan.Between(Period.Start, Period.End)).Select(payment => payment.Payment)];
            decimal paid = Cash.PaidOnLoans;
            return Tax.ExpensesUnknown is null && due.Count > 0 && due.Sum() - paid >= due.Min() ? (due.Sum(), paid) : null;
        }
    }

    /// <summary>The loan asked for; null: none.</summary>
    public LoanSchedule? NewLoan { get; }

    /// <summary>The year's cash, month by month.</summary>
    public CashFlow LastYear { get; }

    /// <summary>Next year's cash by last year's pattern.</summary>
    public CashFlow NextYear { get; }

    /// <summary>The same where the funder's money hasn't come by the end of the year; without a project the same year.</summary>
    public CashFlow NextYearBeforeGrant => Next(0m);

    /// <summary>The first day of the month the funder's money comes in; null: no project.</summary>
    public DateOnly? GrantComes =>
        Grant is null ? null : CashFlow.GrantDay(FiscalYear.Of(Season.Settings, Period.Year + 1), Assumptions.Project);

    /// <summary>The operating line of credit of next year; null: see <see cref="LineUnknown"/>.</summary>
    public CreditLine? Line { get; }

    /// <summary>Why the line of credit can't be told; null where it can.</summary>
    public string? LineUnknown =>
        Line is not null
            ? null
            : Tax.NetUnknown
                ?? (
                    NextYear.OpeningCash is null
                        ? NoOpeningCash
                        : "the interest on one isn't given (line_percent), and no season loan on record tells it"
                );

    /// <summary>
    /// Interest on the line of credit, percent a year: as assumed, else that of the last season loan on record; null: neither.
    /// </summary>
    public decimal? LinePercent => Assumptions.Debt.LinePercent ?? SeasonLoan?.AnnualRate * 100m;

    /// <summary>The last loan on record that was paid back within a year, up to the year reviewed; null: there is none.</summary>
    public LoanTerms? SeasonLoan =>
        Season
            .Records.Tables.Loans.Select(LoanTerms.Of)
            .Where(loan => !loan.IsTermDebt && loan.PaidOut < Period.End)
            .OrderBy(loan => loan.PaidOut)
            .LastOrDefault();

    /// <summary>Every asset: what a new one costs a year, and up to which repairs it pays to keep the old one.</summary>
    public IReadOnlyList<ReplacementCost> Replacement => ReplacementCost.All(Season, Period.End.AddDays(-1));

    /// <summary>What the measures rest on.</summary>
    public MeasureInputs Inputs { get; }

    /// <summary>The measures.</summary>
    public IReadOnlyList<Measure> Measures { get; }

    /// <summary>Term-debt coverage now, and with the loan asked for.</summary>
    public IReadOnlyList<DebtCoverage> Coverage { get; }

    /// <summary>Every crop in write-up form.</summary>
    public IReadOnlyList<CropWriteUp> Crops { get; }

    /// <summary>The project's budget; null: no project.</summary>
    public GrantBudget? Grant { get; }

    /// <summary>The investment behind it; null: no project.</summary>
    public Investment? Investment { get; }

    /// <summary>What the statements must agree on, to the cent.</summary>
    public IReadOnlyList<FundingCheck> Checks
    {
        get
        {
            List<FundingCheck> checks =
            [
                new("cash statement + bridge = net return of the enterprise statement",
                    Bridge.NetFarmCash + Bridge.Steps.Sum(step => step.Amount), EnterpriseNet()),
                new("cash flow, receipts of the farm = gross income of the statement by tax line",
                    LastYear.Sum(CashKind.ProduceSales, CashKind.Invoices, CashKind.ShareIncome, CashKind.OtherIncome), Tax.GrossIncome),
                new("cash flow, farm costs and interest = expenses of the statement by tax line without depreciation",
                    LastYear.Sum(CashKind.SellingFees, CashKind.Operating, CashKind.Labor, CashKind.Interest, CashKind.OperatingInterest),
                    Tax.CashExpenses),
                new("cash statement: gross income - cash expenses = net farm cash", Tax.NetBeforeDepreciation, Cash.NetFarmCash),
                new("cash flow: opening + in - out = closing",
                    (LastYear.OpeningCash ?? 0m) + LastYear.In.Sum() - LastYear.Out.Sum(), LastYear.Closing[^1]),
                .. SheetChecks(),
            ];

            if (Line is { } line)
            {
                checks.Add(new("line of credit: drawn - paid back = owed at the end",
                    line.Drawn - line.Months.Sum(month => month.Repaid), line.Owed));
                checks.Add(new("line of credit: closing cash = closing of the cash flow + owed - interest",
                    line.Months[^1].Closing, NextYear.Closing[^1] + line.Owed - line.Interest));
            }

            if (Grant is not null)
            {
                decimal rows = Season.Records.Tables.Funding
                    .Where(row => row.Project.Trim().Equals(Grant.Project, StringComparison.OrdinalIgnoreCase)).Sum(row => row.Amount);
                checks.Add(new("grant budget: rows of the funding table and what assumptions add = funder + match",
                    rows + Grant.Lines.Where(line => line.Source is null).Sum(line => line.Total), Grant.Total));
                checks.AddRange(Grant.Form.Checks);
            }

            checks.AddRange(Loans.Select(loan => new FundingCheck($"principal of {loan.Terms.Name} paid back = borrowed",
                loan.Payments.Sum(payment => payment.Principal), loan.Terms.Principal)));
            checks.AddRange(Crops.Select(crop => new FundingCheck($"write-up of {crop.Budget.Name}: net return = enterprise budget",
                crop.Lines[^1].Last, crop.Budget.NetReturn.Amount)));
            return checks;
        }
    }

    private IEnumerable<FundingCheck> SheetChecks()
    {
        if (Opening is null || Closing is null || Equity is null || Accrual is null)
        {
            return [];
        }

        decimal adjustments = Accrual.InventoryChange + Accrual.PaidAheadChange + Accrual.SuppliesChange + Accrual.PayablesChange;
        return
        [
            new("cash flow, closing + cash no row tells of = cash of the balance sheet",
                LastYear.Closing[^1] + OwnerEquity.CashNotInTheRecords(Cash, Opening, Closing), Closing.CostOf(BalanceKind.Cash)),
            new("opening equity + steps = closing equity of the balance sheet",
                Equity.Opening + Equity.Steps.Sum(step => step.Amount), Closing.EquityAtCost),
            new("accrual statement: net farm cash + adjustments - depreciation = net farm income",
                Cash.NetFarmCash + adjustments - Accrual.Depreciation, Accrual.NetFarmIncome),
        ];
    }

    /// <summary>Makes a write-up.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="year">The crop year.</param>
    /// <param name="project">The project of the funding table; null: none.</param>
    /// <param name="assumptions">What is assumed.</param>
    /// <param name="power">Tells what a kWh more costs; null: by days of shortage, else by a year's use.</param>
    /// <returns>The write-up.</returns>
    /// <exception cref="ArgumentException">No such project, or an assumption that can't be.</exception>
    public static FundingWriteUp Of(
        FarmReview review,
        int year,
        string? project,
        FundingAssumptions assumptions,
        IMarginalPower? power = null
    )
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(assumptions);
        project = string.IsNullOrWhiteSpace(project) ? null : project;
        assumptions.Validate(review.Records.Settings.Notation);
        assumptions.RequireProject(project);
        return new FundingWriteUp(review, review.Season(year), assumptions, project, power);
    }

    private const string NoOpeningCash = "no balance sheet says what cash there was at the beginning";

    private static string NoSheet(DateOnly before) => $"no balance sheet within a month before {before:yyyy-MM-dd}";

    private CashFlow Next(decimal grant) =>
        CashFlow.Next(Cash, Closing?.Cash, Assumptions, Grant is null ? null : (Grant.Form.PaidByFarm, grant), NewLoan);

    private CreditLine? LineOf(CashFlow next)
    {
        DebtAssumptions debt = Assumptions.Debt;
        bool needed = next.LowPoint < debt.MinimumCash;
        return Tax.NetUnknown is not null || next.OpeningCash is not { } cash || (needed && LinePercent is null) ? null : CreditLine.Of(
            [.. next.In.Zip(next.Out, (moneyIn, moneyOut) => moneyIn - moneyOut)], cash, 0m,
            new CreditLineTerms((LinePercent ?? 0m) / 100m, debt.MinimumCash, debt.LineStep, debt.LineDraw));
    }

    private decimal EnterpriseNet() =>
        FarmStatement.Of(Season).First(line => line.Item == FarmStatementItem.NetReturnOfFarm).Amount ?? Bridge.NetReturn;

    private LoanSchedule? LoanAskedFor(FarmRecords records)
    {
        if (Assumptions.NewLoan.Amount is not { } amount || amount <= 0m)
        {
            return null;
        }

        decimal percent = Assumptions.NewLoan.Percent ?? throw new ArgumentException("new_loan needs new_loan_percent, its interest.");
        decimal years = Assumptions.NewLoan.Years ?? throw new ArgumentException("new_loan needs new_loan_years, how long it runs.");
        int payments = Assumptions.NewLoan.PaymentsPerYear;
        DateOnly paidOut = CashFlow.FirstDayOf(FiscalYear.Of(records.Settings, Period.Year + 1), Assumptions.Project.Month);
        decimal principal = Money.Rounded(amount).Amount;
        LoanTerms terms = new("the loan asked for", principal, percent / 100m, (int)(years * payments), payments, paidOut,
            Assumptions.NewLoan.Repayment);
        return LoanSchedule.Of(terms with { FirstPayment = terms.DayOf(1) });
    }

    private Result UnpaidLabor(FarmReview review) => (Season.Known.Hours ?? Season.Known.OwnerLabor) is { } why
        ? Result.NotAvailable(why)
        : Result.Known(review.Charges.Charges.Where(charge => charge.HomeYear == Period.Year && charge.Stream == CostStream.OwnerLabor)
            .Sum(charge => charge.Amount.Amount));

    private Result FromBooks(params IReadOnlyList<CashKind> kinds) => Tax.ExpensesUnknown is { } noBooks
        ? Result.NotAvailable(noBooks)
        : Result.Known(-Cash.Sum(kinds));

    private MeasureInputs InputsOf(FarmReview review)
    {
        string noClosing = NoSheet(Period.End);
        string noBoth = Closing is null ? noClosing : NoSheet(Period.Start);
        Result Sheet(Func<BalanceSheet, decimal> of) => Closing is null ? Result.NotAvailable(noClosing) : Result.Known(of(Closing));
        Result Mean(Func<BalanceSheet, decimal> of) => Opening is null || Closing is null
            ? Result.NotAvailable(noBoth)
            : Result.Known((of(Opening) + of(Closing)) / 2m);
        Result Income(Func<AccrualStatement, decimal> of) => Accrual is null
            ? Result.NotAvailable(Tax.NetUnknown ?? SheetsUnknown ?? noBoth)
            : Result.Known(of(Accrual));
        Result paid = Tax.ExpensesUnknown is { } noBooks ? Result.NotAvailable(noBooks) : Result.Known(Cash.InterestPaid);
        (Result interest, Result principal) = DueOnTermDebt(Period) ?? (paid, FromBooks(CashKind.Principal));
        return new MeasureInputs
        {
            CurrentAssets = Sheet(sheet => sheet.ValueOf(BalanceClass.CurrentAsset)),
            CurrentLiabilities = Sheet(sheet => sheet.ValueOf(BalanceClass.CurrentLiability)),
            TotalAssets = Sheet(sheet => sheet.AssetsAtValue),
            TotalLiabilities = Sheet(sheet => sheet.Liabilities),
            AverageAssets = Mean(sheet => sheet.AssetsAtValue),
            AverageEquity = Mean(sheet => sheet.EquityAtValue),
            GrossRevenue = Income(income => income.GrossRevenue),
            OperatingExpense = Income(income => income.AccruedOperatingExpense),
            Depreciation = Income(income => income.Depreciation),
            Interest = Income(income => income.Interest),
            NetFarmIncome = Income(income => income.NetFarmIncome),
            UnpaidLabor = UnpaidLabor(review),
            OffFarmIncome = Result.Known(Assumptions.Debt.OffFarmIncome),
            IncomeTax = Assumptions.Tax is { SelfEmploymentTax: not null, IncomeTax: not null }
                ? Taxes.Total
                : FromBooks(CashKind.IncomeTax),
            FamilyLiving = FromBooks(CashKind.Drawings, CashKind.HouseholdPart),
            TermInterest = interest,
            TermInterestPaid = paid.Combine(interest, Math.Min),
            ReplacementAllowance = Opening is null || Closing is null ? Result.NotAvailable(noBoth)
                : Result.Known(ReplacementCost.Allowance(Season.Records, Opening.Date, Closing.Date, Assumptions.Debt.ReplacementFactor)),
            TermPrincipal = principal,
        };
    }

    /// <summary>Interest and principal of a year by the schedules; null where no loans table says what is due.</summary>
    private (Result Interest, Result Principal)? DueOnTermDebt(FiscalYear year)
    {
        if (!LoanSchedule.SaysWhatIsDue(Season.Records))
        {
            return null;
        }

        List<LoanPayment> due =
            [.. Loans.Where(loan => loan.Terms.IsTermDebt).SelectMany(loan => loan.Between(year.Start, year.End))];
        return (Result.Known(due.Sum(payment => payment.Interest)), Result.Known(due.Sum(payment => payment.Principal)));
    }

    private List<DebtCoverage> CoverageOf()
    {
        Result capacity = FinancialMeasures.RepaymentCapacity(Inputs).Value;
        decimal wanted = Assumptions.Debt.CoverageRatio;
        decimal fees = -Cash.Sum(CashKind.SellingFees);
        decimal sales = Cash.Sum(CashKind.ProduceSales, CashKind.ShareIncome);
        Result service = Inputs.TermInterest.Combine(Inputs.TermPrincipal, (interest, principal) => interest + principal);
        Result next = DueOnTermDebt(FiscalYear.Of(Season.Settings, Period.Year + 1)) is { } dueNext
            ? dueNext.Interest.Combine(dueNext.Principal, (interest, principal) => interest + principal)
            : service;
        List<DebtCoverage> rows = [new("Debt as it is", capacity, service, sales, fees, wanted)];

        // A loan drawn within the year had only some of its payments in it.
        if (next.Value > service.Value)
        {
            rows.Add(new DebtCoverage($"Debt as it is, what falls due in {Period.Year + 1}", capacity, next, sales, fees, wanted));
        }

        if (NewLoan is { Terms.IsTermDebt: true } loan)
        {
            // The first full year of payments; the capacity before interest is the same, and what the project saves isn't counted.
            decimal year = loan.Between(loan.Terms.PaidOut, loan.Terms.PaidOut.AddYears(1).AddDays(1)).Sum(payment => payment.Payment);
            Result due = next.Map(other => other + year);
            rows.Add(new DebtCoverage("With the loan asked for, its first year", capacity, due, sales, fees, wanted));
        }

        return rows;
    }
}
