using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
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
/// Everything a lender or a funder asks for, from one season's records and the assumptions: statement, bridge, cash flow, balance sheet, measures, loans, crops, project.
/// What the records can't give is null or not available with its reason.
/// </summary>
public sealed class FundingWriteUp
{
    private FundingWriteUp(FarmReview review, SeasonReview season, FundingAssumptions assumptions, string? project)
    {
        Season = season;
        Assumptions = assumptions;
        FarmRecords records = review.Records;
        Period = FiscalYear.Of(records.Settings, season.CropYear);
        Cash = CashBook.Of(review, Period);
        Tax = TaxStatement.Of(Cash, assumptions.Classes);
        Bridge = StatementBridge.Of(review, season, Cash);
        Opening = BalanceSheet.At(records, Period.Start.AddDays(-1), assumptions);
        Closing = BalanceSheet.At(records, Period.End.AddDays(-1), assumptions);
        bool bothEnds = Opening is not null && Closing is not null && Tax.NetUnknown is null;
        Accrual = bothEnds ? AccrualStatement.Of(Cash, Opening!, Closing!) : null;
        Equity = bothEnds ? OwnerEquity.Of(Cash, Opening!, Closing!) : null;
        Loans = [.. records.Tables.Loans.Select(row => LoanSchedule.Of(LoanTerms.Of(row)))];
        Grant = project is null ? null : GrantBudget.Of(records, project, assumptions);
        Investment = Grant is null ? null : Investment.Of(season, Grant, assumptions);
        NewLoan = LoanAskedFor(records);
        LastYear = CashFlow.Of(Cash, Opening);
        NextYear = CashFlow.Next(Cash, Closing?.CostOf(BalanceKind.Cash), assumptions, Grant is null ? null : (Grant.CashCost, Grant.Funder), NewLoan);
        Inputs = InputsOf(review);
        Measures = FinancialMeasures.Of(Inputs);
        Coverage = CoverageOf();
        Crops = CropWriteUp.Of(season, assumptions);
    }

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

    /// <summary>From that statement to the enterprise statement.</summary>
    public StatementBridge Bridge { get; }

    /// <summary>The balance sheet at the beginning; null: none within a month.</summary>
    public BalanceSheet? Opening { get; }

    /// <summary>The balance sheet at the end; null: none within a month.</summary>
    public BalanceSheet? Closing { get; }

    /// <summary>The accrual statement; null without both balance sheets, and in a year without income or expenses on file.</summary>
    public AccrualStatement? Accrual { get; }

    /// <summary>The statement of owner equity; null without both balance sheets, and in a year without income or expenses on file.</summary>
    public OwnerEquity? Equity { get; }

    /// <summary>The loans' schedules.</summary>
    public IReadOnlyList<LoanSchedule> Loans { get; }

    /// <summary>The loan asked for; null: none.</summary>
    public LoanSchedule? NewLoan { get; }

    /// <summary>The year's cash, month by month.</summary>
    public CashFlow LastYear { get; }

    /// <summary>Next year's cash by last year's pattern.</summary>
    public CashFlow NextYear { get; }

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
                new("cash statement + bridge = net return of the enterprise statement", Bridge.NetFarmCash + Bridge.Steps.Sum(step => step.Amount), EnterpriseNet()),
                new("cash flow, receipts of the farm = gross income of the statement by tax line", LastYear.Sum(CashKind.ProduceSales, CashKind.ShareIncome, CashKind.OtherIncome), Tax.GrossIncome),
                new("cash flow, farm costs and interest = expenses of the statement by tax line without depreciation",
                    LastYear.Sum(CashKind.SellingFees, CashKind.Operating, CashKind.Labor, CashKind.Interest), Tax.CashExpenses),
                new("cash statement: gross income - cash expenses = net farm cash", Tax.NetBeforeDepreciation, Cash.NetFarmCash),
                new("cash flow: opening + in - out = closing", (LastYear.OpeningCash ?? 0m) + LastYear.In.Sum() - LastYear.Out.Sum(), LastYear.Closing[^1]),
            ];
            if (Opening is not null && Closing is not null && Equity is not null && Accrual is not null)
            {
                checks.Add(new("cash flow, closing + cash no row tells of = cash of the balance sheet", LastYear.Closing[^1] + OwnerEquity.CashNotInTheRecords(Cash, Opening, Closing), Closing.CostOf(BalanceKind.Cash)));
                checks.Add(new("opening equity + steps = closing equity of the balance sheet", Equity.Opening + Equity.Steps.Sum(step => step.Amount), Closing.EquityAtCost));
                checks.Add(new("accrual statement: net farm cash + adjustments - depreciation = net farm income",
                    Cash.NetFarmCash + Accrual.InventoryChange + Accrual.PaidAheadChange + Accrual.SuppliesChange + Accrual.PayablesChange - Accrual.Depreciation, Accrual.NetFarmIncome));
            }

            if (Grant is not null)
            {
                checks.Add(new("grant budget: rows of the funding table and what assumptions add = funder + match",
                    Season.Records.Tables.Funding.Where(row => row.Project.Trim().Equals(Grant.Project, StringComparison.OrdinalIgnoreCase)).Sum(row => row.Amount) + Grant.Lines.Where(line => line.Source is null).Sum(line => line.Total), Grant.Total));
            }

            checks.AddRange(Loans.Select(loan => new FundingCheck($"principal of {loan.Terms.Name} paid back = borrowed", loan.Payments.Sum(payment => payment.Principal), loan.Terms.Principal)));
            checks.AddRange(Crops.Select(crop => new FundingCheck($"write-up of {crop.Budget.Name}: net return = enterprise budget", crop.Lines[^1].Last, crop.Budget.NetReturn.Amount)));
            return checks;
        }
    }

    /// <summary>Makes a write-up.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="year">The crop year.</param>
    /// <param name="project">The project of the funding table; null: none.</param>
    /// <param name="assumptions">What is assumed.</param>
    /// <returns>The write-up.</returns>
    /// <exception cref="ArgumentException">No such project, or an assumption that can't be.</exception>
    public static FundingWriteUp Of(FarmReview review, int year, string? project, FundingAssumptions assumptions)
    {
        ArgumentNullException.ThrowIfNull(review);
        ArgumentNullException.ThrowIfNull(assumptions);
        return new FundingWriteUp(review, review.Season(year), assumptions, string.IsNullOrWhiteSpace(project) ? null : project);
    }

    private decimal EnterpriseNet() => FarmStatement.Of(Season).First(line => line.Item == FarmStatementItem.NetReturnOfFarm).Amount ?? Bridge.NetReturn;

    private LoanSchedule? LoanAskedFor(FarmRecords records)
    {
        if (Assumptions.Number("new_loan") is not { } amount || amount <= 0m)
        {
            return null;
        }

        decimal percent = Assumptions.Number("new_loan_percent") ?? throw new ArgumentException("new_loan needs new_loan_percent.");
        decimal years = Assumptions.Number("new_loan_years") ?? throw new ArgumentException("new_loan needs new_loan_years.");
        int payments = (int)Assumptions.Number("new_loan_payments")!.Value;
        _ = Words.TryParse(Assumptions.TextOf("new_loan_repayment")!, out Repayment repayment);
        DateOnly paidOut = CashFlow.FirstDayOf(FiscalYear.Of(records.Settings, Period.Year + 1), (int)Assumptions.Number("project_month")!.Value);
        LoanTerms terms = new("the loan asked for", Money.Rounded(amount).Amount, percent / 100m, (int)(years * payments), payments, paidOut, repayment);
        return LoanSchedule.Of(terms with { FirstPayment = terms.DayOf(1) });
    }

    private MeasureInputs InputsOf(FarmReview review)
    {
        string noClosing = $"no balance sheet within a month before {Period.End:yyyy-MM-dd}";
        string noBoth = Closing is null ? noClosing : $"no balance sheet within a month before {Period.Start:yyyy-MM-dd}";
        Rate Sheet(Func<BalanceSheet, decimal> of) => Closing is null ? Rate.NotAvailable(noClosing) : Rate.Known(of(Closing));
        Rate Mean(Func<BalanceSheet, decimal> of) => Opening is null || Closing is null ? Rate.NotAvailable(noBoth) : Rate.Known((of(Opening) + of(Closing)) / 2m);
        Rate Income(Func<AccrualStatement, decimal> of) => Accrual is null ? Rate.NotAvailable(Tax.NetUnknown ?? noBoth) : Rate.Known(of(Accrual));
        decimal unpaid = review.Charges.Charges.Where(charge => charge.HomeYear == Period.Year && charge.Stream == CostStream.OwnerLabor).Sum(charge => charge.Amount.Amount);
        List<LoanPayment> due = Loans.Where(loan => loan.Terms.IsTermDebt).SelectMany(loan => loan.Between(Period.Start, Period.End)).ToList();
        bool scheduled = LoanSchedule.SaysWhatIsDue(Season.Records);
        Rate FromBooks(CashKind kind) => Tax.ExpensesUnknown is { } noBooks ? Rate.NotAvailable(noBooks) : Rate.Known(-Cash.Sum(kind));
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
            UnpaidLabor = Season.Known.Hours is { } noHours ? Rate.NotAvailable(noHours) : Season.Known.OwnerLabor is { } why ? Rate.NotAvailable(why) : Rate.Known(unpaid),
            OffFarmIncome = Rate.Known(Assumptions.Number("off_farm_income") ?? 0m),
            IncomeTax = FromBooks(CashKind.IncomeTax),
            FamilyLiving = FromBooks(CashKind.Drawings),
            TermInterest = scheduled ? Rate.Known(due.Sum(payment => payment.Interest)) : FromBooks(CashKind.Interest),
            TermPrincipal = scheduled ? Rate.Known(due.Sum(payment => payment.Principal)) : FromBooks(CashKind.Principal),
        };
    }

    private List<DebtCoverage> CoverageOf()
    {
        Rate capacity = FinancialMeasures.RepaymentCapacity(Inputs).Value;
        decimal wanted = Assumptions.Number("coverage_ratio")!.Value;
        decimal fees = -Cash.Sum(CashKind.SellingFees);
        decimal service = (Inputs.TermInterest.Value ?? 0m) + (Inputs.TermPrincipal.Value ?? 0m);
        List<DebtCoverage> rows = [new("Debt as it is", capacity, service, Tax.Sales, fees, wanted)];
        if (NewLoan is { } loan)
        {
            // The first full year of payments; the capacity before interest is the same, and what the project saves isn't counted.
            List<LoanPayment> year = loan.Between(loan.Terms.PaidOut, loan.Terms.PaidOut.AddYears(1).AddDays(1)).ToList();
            rows.Add(new DebtCoverage("With the loan asked for, its first year", capacity, service + year.Sum(payment => payment.Payment), Tax.Sales, fees, wanted));
        }

        return rows;
    }
}
