using System.Text;
using FarmEconomics.Budgets;
using FarmEconomics.Files.Workbooks;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Decisions;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Funding;

/// <summary>A whole write-up: sentences, tables for a page, and the workbook with live formulas.</summary>
public static class WriteUpReport
{
    /// <summary>The cautions a write-up carries.</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "These figures rest on the grower's own records and on the assumptions shown with them; they are as right as those are.",
        "They are not tax, legal, lending or food-safety advice. "
            + "Tax lines and depreciation classes are labels for the grower's tax preparer and need the current official forms; "
        + "a funder's notice and a lender's terms go before anything here; local codes and licensed practice come first.",
    ];

    /// <summary>
    /// Makes the write-up of a notebook: the season just ended when no year is named, the first project of the funding table when none is.
    /// </summary>
    /// <param name="review">The farm.</param>
    /// <param name="year">The crop year; 0: the season just ended.</param>
    /// <param name="project">The project; empty: the first, or none when there is no funding table.</param>
    /// <param name="assumptions">Assumptions as <c>name=value; name=value</c>.</param>
    /// <param name="classes">Depreciation classes as <c>asset=years; asset=years</c>.</param>
    /// <exception cref="ArgumentException">No such project, or an assumption that can't be.</exception>
    public static FundingWriteUp Make(FarmReview review, int year = 0, string project = "", string assumptions = "", string classes = "")
    {
        ArgumentNullException.ThrowIfNull(review);
        string? chosen = string.IsNullOrWhiteSpace(project)
            ? review.Records.Tables.Funding.Select(row => row.Project).FirstOrDefault()
            : project;
        return FundingWriteUp.Of(
            review,
            year == 0 ? review.LatestCropYear : year,
            chosen,
            FundingAssumptions.Parse(assumptions, classes, review.Records.Settings.Notation)
        );
    }

    /// <summary>A sheet's table, or the reason there is none.</summary>
    /// <param name="sheet">The sheet, or null.</param>
    /// <param name="whyNot">Said when it is null.</param>
    public static IHtmlDisplay Show(FundingSheet? sheet, string whyNot) => sheet is null ? new Prose(Prose.Text(whyNot)) : sheet.Table;

    /// <summary>Says that all checks hold.</summary>
    /// <exception cref="InvalidOperationException">One doesn't; a fault of the program.</exception>
    public static string RequireChecks(FundingWriteUp writeUp)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        IReadOnlyList<FundingCheck> checks = writeUp.Checks;
        return checks.FirstOrDefault(check => check.Difference != 0m) is { } broken
            ? throw new InvalidOperationException(
                writeUp.Season.Notation.Text(
                    $"These figures don't agree, so don't trust them: {broken.Name}: {broken.Left} against {broken.Right}."
                )
            )
            : $"All {checks.Count} checks of {writeUp.Period.Year} hold: statement, bridge, cash flow, balance sheet, "
                + $"loans and budgets agree to the cent.";
    }

    /// <summary>The answer in a few sentences.</summary>
    public static Prose Answer(FundingWriteUp writeUp)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        StringBuilder text = new(TookInAndPaid(writeUp));
        if (writeUp.Accrual is { } income)
        {
            text.Append($"Net farm income with accrual adjustments and depreciation was {InMoney(writeUp, income.NetFarmIncome)}, "
                + $"before the owners' unpaid labor. ");
        }

        text.Append(LowestCash(writeUp));
        if (writeUp.Grant is { } grant)
        {
            text.Append($"{Prose.Text(grant.Project)} costs {InMoney(writeUp, grant.Total)}: "
                + $"{InMoney(writeUp, grant.Funder)} is asked of the funder, {InMoney(writeUp, grant.OwnMatch)} is the farm's own, "
                + (grant.OwnMatch == grant.Match ? "" : $"{InMoney(writeUp, grant.Match - grant.OwnMatch)} comes from others; ")
                + $"{InMoney(writeUp, grant.InKind)} of it in kind. ");
            text.Append(MustSave(writeUp.Investment!, writeUp.Season.Notation));
            text.Append(writeUp.Investment is { WithGrant: { } with, WithoutGrant: { } without }
                ? $"Its net present value is {InMoney(writeUp, with.NetPresentValue)} with the grant and "
                    + $"{InMoney(writeUp, without.NetPresentValue)} without. "
                : $"Whether it pays can't be told: {writeUp.Investment!.Missing}. ");
        }

        foreach (DebtCoverage row in writeUp.Coverage.Where(row => row.Coverage.IsAvailable && row.SalesMayFall.IsAvailable))
        {
            text.Append(Covered(row, writeUp.Season.Notation));
        }

        return new Prose(text.ToString().Trim());
    }

    private static string InMoney(FundingWriteUp writeUp, decimal amount) => writeUp.Season.Notation.InWords(amount, Look.WholeMoney);

    private static string TookInAndPaid(FundingWriteUp writeUp)
    {
        TaxStatement tax = writeUp.Tax;
        string tookIn = $"took in {InMoney(writeUp, tax.GrossIncome)}", paid = $"paid {InMoney(writeUp, tax.CashExpenses)} to run";
        return $"In {writeUp.Period.Year} the farm "
            + (tax.IncomeUnknown, tax.ExpensesUnknown) switch
            {
                (null, null) => $"{tookIn} and {paid}: {InMoney(writeUp, tax.NetBeforeDepreciation)} before depreciation. ",
                (null, { } noBooks) => $"{tookIn}; what it paid to run is not known ({noBooks}). ",
                ({ } noIncome, null) => $"{paid}; what it took in is not known ({noIncome}). ",
                ({ } noIncome, { } noBooks) =>
                    $"has no whole books: what it took in and paid to run is not known ({noIncome}, {noBooks}). ",
            };
    }

    private static string LowestCash(FundingWriteUp writeUp)
    {
        CashFlow next = writeUp.NextYear;
        if (next.OpeningCash is null || writeUp.Tax.NetUnknown is not null)
        {
            return "";
        }

        decimal loan = next.OperatingLoan(writeUp.Assumptions.Debt.MinimumCash).Value ?? 0m;
        string line = writeUp.Line is null ? "" : DebtSheets.Sentence(writeUp) + " ";
        return $"Next year's cash is lowest at the end of {Looks.Month(next.Months[next.LowMonth])}, at {InMoney(writeUp, next.LowPoint)}"
            + (
                loan == 0m ? ": no operating loan is needed. "
                : next.Closing[^1] >= writeUp.Assumptions.Debt.MinimumCash
                    ? $": an operating loan of {InMoney(writeUp, loan)} would bridge it. {line}"
                : $": {InMoney(writeUp, loan)} is missing, and an operating loan of that couldn't be paid back within the year. {line}"
            );
    }

    private static string Covered(DebtCoverage row, Notation notation) => row.SalesMayFall.Value > 0m
        ? notation.Text($"{row.Name}: repayment capacity covers payments {row.Coverage.Value:0.0} times; sales may fall by "
            + $"{notation.Number(row.SalesMayFall.Value.Value, Look.Percent)} before it drops under {row.Wanted:0.##}. ")
        : row.Coverage.Value <= 0m
            ? notation.Text($"{row.Name}: nothing is left to repay with; payments must be covered {row.Wanted:0.##} times. ")
        : notation.Text($"{row.Name}: repayment capacity covers payments {row.Coverage.Value:0.0} times, "
            + $"under the {row.Wanted:0.##} that must be kept. ");

    internal static string MustSave(Investment investment, Notation notation)
    {
        (SavingNeeded with, SavingNeeded without) = (investment.NeededWithGrant, investment.NeededWithoutGrant);
        if (with.Yearly.Value is not { } yearly || without.Yearly.Value is not { } alone)
        {
            return "";
        }

        string hours = with.Hours.Value is { } least && without.Hours.Value is { } most
            ? notation.Text($": {least:#,##0} or {most:#,##0} hours of work")
            : "";
        return $"To pay, it must save {notation.InWords(yearly, Look.WholeMoney)} a year with the grant, "
            + $"{notation.InWords(alone, Look.WholeMoney)} without{hours}. ";
    }

    /// <summary>What fell due on loans in the year and isn't in the books; empty where all of it is.</summary>
    internal static string LoansUnpaid(FundingWriteUp writeUp)
    {
        if (writeUp.Behind is not { } loans)
        {
            return "";
        }

        Notation notation = writeUp.Season.Notation;
        return $"By the loans table {notation.InWords(loans.Due, Look.Money)} fell due in {writeUp.Period.Year}; the books paid "
            + $"{notation.InWords(loans.Paid, Look.Money)}, {notation.InWords(loans.Due - loans.Paid, Look.Money)} less. "
            + "Where that is still to be paid, next year's cash doesn't hold it.";
    }

    /// <summary>What happens to cash where the funder's money comes late; empty without a project or opening cash.</summary>
    internal static string GrantLate(FundingWriteUp writeUp)
    {
        if (writeUp.Grant?.Form is not { Federal: > 0m } grant
            || writeUp.NextYear.OpeningCash is null
            || writeUp.Tax.NetUnknown is not null)
        {
            return "";
        }

        CashFlow before = writeUp.NextYearBeforeGrant;
        Notation notation = writeUp.Season.Notation;
        return $"The grant is counted in "
            + $"{Looks.Month(writeUp.GrantComes!.Value)}; "
            + (
                FiscalYear.Of(writeUp.Season.Settings, writeUp.Period.Year + 1).Holds(writeUp.GrantComes.Value)
                    ? ""
                    : "that is after the twelve months shown; "
            )
            + $"as long as its {notation.InWords(grant.Federal, Look.WholeMoney)} haven't come, "
            + $"cash is lowest at {BlockNumber.Of(before.LowPoint, Look.WholeMoney, notation)}.";
    }

    /// <summary>What weakens the write-up, a sentence each.</summary>
    public static Prose HowSure(FundingWriteUp writeUp)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        List<string> points = [.. Unknowns(writeUp)];
        points.AddRange(TaxSheet.RetiredEarly(writeUp).Select(Prose.Text));
        points.AddRange(TaxSheet.LeftOut(writeUp));
        int missing = writeUp.Measures.Count(measure => !measure.Value.IsAvailable);
        points.Add(missing == 0
            ? "Every measure could be worked out."
            : $"{missing} of {writeUp.Measures.Count} measures are not available; each says which input is missing.");
        points.Add("The next year is last year's pattern times the factors assumed, no forecast.");
        return new Prose(string.Join('\n', points.Select(point => "- " + point)));
    }

    private static IEnumerable<string> Unknowns(FundingWriteUp writeUp)
    {
        Notation notation = writeUp.Season.Notation;
        if (writeUp.Tax.NetUnknown is { } unknown)
        {
            yield return $"{Phrase.Sentence(Prose.Text(unknown))}: net income, cash flow and the measures that rest on them are "
                + $"not available. What isn't written down is not 0.";
        }

        // Where the books hold no whole year, what they explain of the cash says nothing.
        if (writeUp.Tax.NetUnknown is null || writeUp.SheetsUnknown is not null)
        {
            yield return CashExplained(writeUp);
        }

        if (LoansUnpaid(writeUp) is { Length: > 0 } unpaid)
        {
            yield return unpaid;
        }

        if (writeUp.Tax.WithoutClass.Count > 0)
        {
            yield return $"{notation.Count(writeUp.Tax.WithoutClass.Count, "asset has", "assets have")} no depreciation class; "
                + $"line 14 {Line14(writeUp.Tax)}.";
        }

        if (writeUp.Tax.Expenses.Where(line => line.Line is null).Sum(line => line.Amount ?? 0m) is > 0m and var unlabeled)
        {
            yield return $"{notation.InWords(unlabeled, Look.Money)} of expenses carry no line of the form.";
        }

        if (GrantLate(writeUp) is { Length: > 0 } late)
        {
            yield return late;
        }
    }

    /// <summary>What line 14 of Schedule F holds while some assets have no class of tax depreciation.</summary>
    internal static string Line14(TaxStatement tax) => tax.DepreciationOfGivenClasses == 0m ? "is blank" : "holds only the others";

    private static string CashExplained(FundingWriteUp writeUp)
    {
        if (writeUp is not { SheetsUnknown: null, Opening: { } opening, Closing: { } closing })
        {
            return $"There are not two whole balance sheets within a month of both ends of the year ({writeUp.SheetsUnknown}), "
                + $"so income is cash only and several measures are not available.";
        }

        decimal gap = OwnerEquity.CashNotInTheRecords(writeUp.Cash, opening, closing);
        return gap == 0m ? "The cash counted on the balance sheets is what the records explain, to the cent."
            : $"The records don't explain {writeUp.Season.Notation.InWords(Math.Abs(gap), Look.Money)} of cash that "
                + $"{(gap > 0m ? "came in" : "left")} in the year; a lender will ask.";
    }

    /// <summary>All sheets in the order they are shown.</summary>
    public static IReadOnlyList<FundingSheet> Sheets(FundingWriteUp writeUp)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        Notation notation = writeUp.Season.Notation;
        IEnumerable<LoanSchedule> loans = writeUp.NewLoan is { } asked ? writeUp.Loans.Append(asked) : writeUp.Loans;
        FundingSheet?[] sheets =
        [
            ProjectSheets.Assumptions(writeUp),
            StatementSheets.Tax(writeUp),
            StatementSheets.Bridge(writeUp),
            StatementSheets.Enterprise(writeUp),
            StatementSheets.Depreciation(writeUp),
            TaxSheet.Classes(writeUp),
            TaxSheet.Taxes(writeUp),
            MoneySheets.Income(writeUp),
            MoneySheets.Cash(writeUp, next: false),
            MoneySheets.Cash(writeUp, next: true),
            DebtSheets.Line(writeUp),
            MoneySheets.Balance(writeUp),
            MoneySheets.Equity(writeUp),
            MoneySheets.Measures(writeUp),
            MoneySheets.Coverage(writeUp),
            DebtSheets.Replacement(writeUp),
            .. loans.Select((loan, i) => MoneySheets.Loan(loan, notation, i + 1)),
            ProjectSheets.Grant(writeUp),
            ProjectSheets.Narrative(writeUp),
            GrantFormSheet.Of(writeUp),
            DebtSheets.Needed(writeUp),
            ProjectSheets.Savings(writeUp),
            ProjectSheets.Investment(writeUp),
            ProjectSheets.Swings(writeUp),
            ChoiceSheets.Projects(writeUp),
            ChoiceSheets.Tools(writeUp),
            ProjectSheets.CropOverview(writeUp),
            ProjectSheets.Crops(writeUp),
            Perennials(writeUp),
            ProjectSheets.Checks(writeUp),
        ];
        return [.. sheets.OfType<FundingSheet>()];
    }

    private static FundingSheet? Perennials(FundingWriteUp writeUp) =>
        StandTables.Stands(writeUp.Review, writeUp.Period.Year) is { } stands
            ? new FundingSheet("Perennials", stands) { Landscape = true }
            : null;

    /// <summary>The workbook: one sheet per table, totals live.</summary>
    public static Workbook Workbook(FundingWriteUp writeUp)
    {
        Workbook workbook = new();
        WorkbookSheet first = workbook.Sheet("Read first");
        first.Widths = [110];
        first.Row(WorkbookCell.Text($"{writeUp.Season.Settings.FarmName}: write-up for {writeUp.Period.Year}", WorkbookStyle.Title));
        foreach (
            string line in Answer(writeUp)
                .ToPlainText()
                .Split('\n')
                .Concat(HowSure(writeUp).ToPlainText().Split('\n'))
                .Concat(Cautions)
                .Where(line => line.Trim().Length > 0)
        )
        {
            first.Row(WorkbookCell.Text(line.Trim(), WorkbookStyle.LongText));
        }

        foreach (FundingSheet sheet in Sheets(writeUp))
        {
            sheet.WriteTo(workbook);
        }

        return workbook;
    }
}
