using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Funding;

/// <summary>Cash flow, balance sheet, income, equity, measures and loans.</summary>
public static class MoneySheets
{
    private const string NoSheet = "no balance sheet within a month";
    private const int Months = CashFlow.MonthCount;
    private const string NextNote = "Last year's own months x the factors assumed; loans by their schedules; purchases only those of the "
        + "project. Paid ahead for the year after falls in the months it fell in last year.";

    private const string InvoicesNote = "Sales stand in the month they left. Invoices unpaid when the year began are taken as paid in its "
        + "first month; those unpaid at its end come off the last.";

    /// <summary>Twelve months of cash.</summary>
    public static FundingSheet Cash(FundingWriteUp writeUp, bool next, bool whole = false)
    {
        CashFlow flow = next ? writeUp.NextYear : writeUp.LastYear;
        Look look = whole ? Look.WholeMoney : Look.Money;
        ReportTable table = new ReportTable(flow.Title, writeUp.Season.Notation).InOrder().Column("Line");
        foreach (DateOnly month in flow.Months)
        {
            table.Column(month.ToString("MMM", System.Globalization.CultureInfo.InvariantCulture), look, "");
        }

        table.Column("Year", look);
        FundingSheet sheet = new(next ? "Cash next year" : "Cash last year", table) { Landscape = true };
        if (writeUp.Tax.NetUnknown is { } unknown)
        {
            table.Note($"Not available: {unknown}.");
            return sheet;
        }

        decimal opening = flow.OpeningCash ?? 0m;
        IReadOnlyList<decimal> closing = flow.Closing;
        string known = flow.OpeningCash is null ? "Opening (unknown, taken as 0)" : "Opening";
        CashRow(sheet, known, [opening, .. closing.Take(Months - 1)], opening);
        int inRow = CashLines(sheet, flow, isIn: true), outRow = CashLines(sheet, flow, isIn: false), closingRow = outRow + 1;
        CashRow(sheet, "Closing", closing, closing[^1]);
        for (int i = 1; i <= Months; i++)
        {
            sheet.Live(closingRow, i, $"{{0,{i}}}+{{{inRow},{i}}}-{{{outRow},{i}}}");
            if (i > 1)
            {
                sheet.Live(0, i, $"{{{closingRow},{i - 1}}}");
            }
        }

        sheet.Live(0, Months + 1, "{0,1}").Live(closingRow, Months + 1, $"{{{closingRow},{Months}}}");
        table.Note(next ? NextNote : "By the dates of the rows. Fees of channels are worked out from the sales.")
            .Note(flow.Lines.Any(line => line.Kind == CashKind.Invoices) ? InvoicesNote : null);
        return sheet;
    }

    /// <summary>What comes in, or goes out, line by line with its sum; gives the row of the sum.</summary>
    private static int CashLines(FundingSheet sheet, CashFlow flow, bool isIn)
    {
        int first = sheet.Table.Rows.Count;
        foreach (CashFlowLine line in flow.Lines.Where(line => line.IsIn == isIn))
        {
            CashRow(sheet, (isIn ? "+ " : "- ") + line.Name, line.Months, line.Total);
            int at = sheet.Table.Rows.Count - 1;
            sheet.LiveLast(Months + 1, $"SUM({{{at},1}}:{{{at},{Months}}})");
        }

        int sum = sheet.Table.Rows.Count;
        IReadOnlyList<decimal> months = isIn ? flow.In : flow.Out;
        CashRow(sheet, isIn ? "In" : "Out", months, months.Sum());
        for (int i = 1; i <= Months + 1; i++)
        {
            sheet.LiveLast(i, sum == first ? "0" : $"SUM({{{first},{i}}}:{{{sum - 1},{i}}})");
        }

        return sum;
    }

    private static void CashRow(FundingSheet sheet, string name, IEnumerable<decimal> months, decimal year) =>
        sheet.Table.Row([name, .. months.Select(amount => (ReportCell)amount), year]);

    /// <summary>A balance sheet at both ends of the year; null when there is none at all.</summary>
    public static FundingSheet? Balance(FundingWriteUp writeUp)
    {
        if ((writeUp.Closing ?? writeUp.Opening) is null)
        {
            return null;
        }

        string opening = DayOf(writeUp.Opening), closing = DayOf(writeUp.Closing);
        ReportTable table = new ReportTable("Balance sheet", writeUp.Season.Notation).InOrder()
            .Column("Item").Wrapping().Column("Class").Wrapping()
            .Column($"At cost, {opening}", Look.Money).Column($"At the grower's value, {opening}", Look.Money)
            .Column($"At cost, {closing}", Look.Money).Column($"At the grower's value, {closing}", Look.Money);
        FundingSheet sheet = new("Balance sheet", table) { Landscape = true };
        int assets = BalanceItems(sheet, writeUp, assets: true), liabilities = BalanceItems(sheet, writeUp, assets: false);
        table.Sum(["Equity", "", .. EachSheet(writeUp, one => one.EquityAtCost, one => one.EquityAtValue)]);
        LiveWhereKnown(sheet, i => $"{{{assets},{i}}}-{{{liabilities},{i}}}");
        table.Note("Two columns a day: at cost, the assets table's cost less straight-line depreciation takes the place of the "
            + "longer-term items it holds; at the grower's values, the balances table as it is. "
            + "The difference in equity is valuation equity.")
            .Note(writeUp.Closing?.LoansNote)
            .Note(OtherDays(writeUp))
            .Note(new[] { writeUp.Opening, writeUp.Closing }.Any(one => one is { IsValuedAtCost: true })
                ? "Where the balances list no equipment or buildings, what the assets table holds at cost stands in for their value."
                : null);
        return sheet;

        static string DayOf(BalanceSheet? sheet) => sheet is null ? "no sheet" : Looks.LongDay(sheet.Date);
    }

    private static string? OtherDays(FundingWriteUp writeUp)
    {
        List<string> days = [.. new[] { writeUp.Opening, writeUp.Closing }.OfType<BalanceSheet>()
            .SelectMany(sheet => sheet.OtherDays).Distinct().Select(Looks.LongDay)];
        return days.Count == 0 ? null
            : $"A balance sheet is the rows of one day: those of {string.Join(" and ", days)} are not in it.";
    }

    /// <summary>The items of one side with their sum; gives the row of the sum.</summary>
    private static int BalanceItems(FundingSheet sheet, FundingWriteUp writeUp, bool assets)
    {
        IEnumerable<(string Item, BalanceClass Class, bool Booked)> items = new[] { writeUp.Closing, writeUp.Opening }
            .OfType<BalanceSheet>()
            .SelectMany(one => one.Lines)
            .Where(line => line.Class <= BalanceClass.LongTermAsset == assets)
            .Select(line => (line.Item, line.Class, line.Kind == BalanceKind.BookedAsset))
            .Distinct()
            .OrderBy(item => item.Class)
            .ThenBy(item => item.Item3);
        List<int> parts = [.. items.GroupBy(item => item.Class).Select(group => BalanceGroup(sheet, writeUp, group))];
        int sum = sheet.Table.Rows.Count;
        sheet.Table.Sum(assets
            ? ["Total assets", "", .. EachSheet(writeUp, one => one.AssetsAtCost, one => one.AssetsAtValue)]
            : ["Total liabilities", "", .. EachSheet(writeUp, one => one.Liabilities, one => one.Liabilities)]);
        LiveWhereKnown(sheet, i => parts.Count == 0 ? "0" : $"SUM({string.Join(',', parts.Select(row => $"{{{row},{i}}}"))})");
        return sum;
    }

    /// <summary>The items of one class, with their sum where they are several; gives the row that stands for the class.</summary>
    private static int BalanceGroup(
        FundingSheet sheet, FundingWriteUp writeUp, IGrouping<BalanceClass, (string Item, BalanceClass Class, bool Booked)> group)
    {
        int first = sheet.Table.Rows.Count;
        foreach ((string item, _, bool booked) in group)
        {
            sheet.Table.Row([
                item,
                booked ? "assets table, cost less depreciation" : NameOf(group.Key),
                .. Amounts(
                    writeUp,
                    line => line.Item == item && line.Class == group.Key && (line.Kind == BalanceKind.BookedAsset) == booked),
            ]);
        }

        int last = sheet.Table.Rows.Count - 1;
        if (last == first)
        {
            return first;
        }

        sheet.Table.Sum([$"Total {Several(NameOf(group.Key))}", "", .. Amounts(writeUp, line => line.Class == group.Key)]);
        LiveWhereKnown(sheet, i => $"SUM({{{first},{i}}}:{{{last},{i}}})");
        return last + 1;
    }

    // As the balances table names it, "long-term asset".
    private static string NameOf(BalanceClass of)
    {
        string name = FarmEconomics.Records.Schema.Words.Of(of);
        int between = name.LastIndexOf('-');
        return $"{name[..between]} {name[(between + 1)..]}";
    }

    private static string Several(string name) => name.EndsWith('y') ? $"{name[..^1]}ies" : $"{name}s";

    private static IEnumerable<ReportCell> Amounts(FundingWriteUp writeUp, Func<BalanceLine, bool> which)
    {
        return EachSheet(
            writeUp,
            one => Sum(one.Lines.Where(which).Select(line => line.AtCost)),
            one => Sum(one.Lines.Where(which).Select(line => line.AtValue)));

        // What stands in the other column only leaves this one empty.
        static ReportCell Sum(IEnumerable<decimal?> amounts) =>
            amounts.OfType<decimal>().ToList() is { Count: > 0 } known ? known.Sum() : default(ReportCell);
    }

    private static IEnumerable<ReportCell> EachSheet(
        FundingWriteUp writeUp, Func<BalanceSheet, ReportCell> cost, Func<BalanceSheet, ReportCell> value) =>
        new[] { writeUp.Opening, writeUp.Closing }.SelectMany(one =>
            one is null ? [ReportCell.Missing(NoSheet), ReportCell.Missing(NoSheet)] : new[] { cost(one), value(one) });

    private static void LiveWhereKnown(FundingSheet sheet, Func<int, string> formula)
    {
        for (int i = 2; i < 6; i++)
        {
            if (sheet.Table.Rows[^1][i].Number is not null)
            {
                sheet.LiveLast(i, formula(i));
            }
        }
    }

    /// <summary>Net farm income, accrual; null without both balance sheets.</summary>
    public static FundingSheet? Income(FundingWriteUp writeUp)
    {
        if (writeUp.Accrual is not { } income)
        {
            return null;
        }

        ReportTable table = new ReportTable($"Net farm income of {writeUp.Period.Year}, with accrual adjustments", writeUp.Season.Notation)
            .InOrder()
            .Column("Line")
            .Column("Amount", Look.Money);
        FundingSheet sheet = new("Income", table);
        table
            .Row("Cash income", income.CashIncome)
            .Row("+ change in produce and invoices on hand", income.InventoryChange)
            .Row("+ change in money customers paid ahead (more: below 0)", income.PaidAheadChange)
            .Row("Gross revenue", income.GrossRevenue);
        sheet.LiveLast(1, "SUM({0,1}:{2,1})");
        table
            .Row("Operating expense and fees, cash", income.OperatingExpense)
            .Row("- change in inputs on hand", income.SuppliesChange)
            .Row("- change in bills unpaid (more: below 0)", income.PayablesChange)
            .Row("Operating expense", income.AccruedOperatingExpense);
        sheet.LiveLast(1, "{4,1}-{5,1}-{6,1}");
        table
            .Row("Depreciation, straight line", income.Depreciation)
            .Row("Interest, operating loans included", income.Interest)
            .Row("Net farm income from operations", income.NetFarmIncome);
        sheet.LiveLast(1, "{3,1}-{7,1}-{8,1}-{9,1}");
        table.Row("Unpaid labor at its assumed value", writeUp.Inputs.UnpaidLabor);
        if (writeUp.Inputs.UnpaidLabor.Value is { } unpaid)
        {
            table.Row("Net farm income less unpaid labor", income.NetFarmIncome - unpaid);
            sheet.LiveLast(1, "{10,1}-{11,1}");
        }

        table.Note("Changes are between the two balance sheets; which item is which says the column kind of the balances. "
            + "This depreciation is not tax depreciation.");
        return sheet;
    }

    /// <summary>Statement of owner equity; null without both balance sheets.</summary>
    public static FundingSheet? Equity(FundingWriteUp writeUp)
    {
        if (writeUp.Equity is not { } equity)
        {
            return null;
        }

        ReportTable table = new ReportTable($"Owner equity in {writeUp.Period.Year}, at cost", writeUp.Season.Notation)
            .InOrder()
            .Column("Step")
            .Column("Amount", Look.Money);
        FundingSheet sheet = new("Owner equity", table);
        table.Row($"Equity at {Looks.LongDay(writeUp.Opening!.Date)}", equity.Opening);
        foreach (BridgeStep step in equity.Steps)
        {
            table.Row(step.Name, step.Amount);
        }

        table.Total($"Equity at {Looks.LongDay(writeUp.Closing!.Date)}", equity.Closing);
        sheet.Live(table.Rows.Count, 1, $"SUM({{0,1}}:{{{table.Rows.Count - 1},1}})");
        return sheet;
    }

    /// <summary>The measures with formula and inputs.</summary>
    public static FundingSheet Measures(FundingWriteUp writeUp)
    {
        Notation notation = writeUp.Season.Notation;
        ReportTable table = new ReportTable($"Financial measures of {writeUp.Period.Year}", notation)
            .Note("Measures of the Farm Financial Standards Council. Assets at the grower's values. Income is accrual; "
                + "off-farm income is what the assumptions say.")
            .Of<Measure>()
            .Column("Group", measure => measure.Group)
            .Column("Measure", measure => measure.Name)
            .Column("Value", measure => Shown(measure))
            .Column("Formula", measure => measure.Formula)
            .Column("Inputs", measure => string.Join("; ", measure.Inputs.Select(input => $"{input.Name} {Input(input.Value)}")))
            .Rows(writeUp.Measures);
        return new FundingSheet("Measures", table) { Landscape = true };

        ReportCell Shown(Measure measure) => measure.Value.Value is not { } known
            ? ReportCell.Missing(measure.Value.Reason!)
            : measure.Unit switch
            {
                MeasureUnit.Percent => notation.Number(known, Look.Percent),
                MeasureUnit.Currency => notation.InWords(known, Look.Money),
                _ => notation.Text($"{known:#,##0.00}"),
            };

        string Input(Units.Result input) => input.Value is { } amount ? notation.InWords(amount, Look.Money) : Looks.NotAvailable;
    }

    /// <summary>Term-debt coverage and how far sales may fall.</summary>
    public static FundingSheet Coverage(FundingWriteUp writeUp)
    {
        ReportTable table = new ReportTable("Term-debt coverage, now and with the loan asked for", writeUp.Season.Notation)
            .Column("Debt")
            .Column("Repayment capacity", Look.Money)
            .Column("Principal and interest a year", Look.Money)
            .Column("Coverage", Look.Exact)
            .Column("Must be kept", Look.Exact)
            .Column("Sales may fall by", Look.Percent);
        FundingSheet sheet = new("Coverage", table);
        foreach (DebtCoverage row in writeUp.Coverage)
        {
            table.Row(row.Name, row.Capacity, row.Service, row.Coverage, row.Wanted, row.SalesMayFall);
            if (row.Coverage.IsAvailable)
            {
                int at = table.Rows.Count - 1;
                sheet.LiveLast(3, $"{{{at},1}}/{{{at},2}}");
            }
        }

        table.Note("Capacity falls with sales less the channels' fees; all other costs stay. What a project saves isn't counted. "
            + "Below 0: coverage is under the ratio already.");
        return sheet;
    }

    /// <summary>A loan's schedule with live formulas.</summary>
    public static FundingSheet Loan(LoanSchedule loan, Notation notation, int number)
    {
        LoanTerms terms = loan.Terms;
        string how = FarmEconomics.Records.Schema.Words.Of(terms.Repayment);
        ReportTable table = new ReportTable($"{terms.Name}: {terms.Payments} payments, {how}", notation)
            .Column("Payment", Look.Count).Column("Date", Look.Date).Column("Interest", Look.Money).Column("Principal", Look.Money)
            .Column("Paid", Look.Money).Column("Owed after it", Look.Money).Column("Interest a period", Look.Exact, "")
            .Column("Repeated amount", Look.Money);
        FundingSheet sheet = new($"Loan {number}", table);
        table.Row(0, terms.PaidOut, default, default, default, terms.Principal, terms.PeriodRate, loan.LevelPayment);
        sheet.Live(0, 7, terms.Repayment switch
        {
            Repayment.LevelPayment => $"ROUND(PMT({{0,6}},{terms.Payments},-{{0,5}}),2)",
            Repayment.LevelPrincipal => $"ROUND({{0,5}}/{terms.Payments},2)",
            _ => "ROUND({0,5}*{0,6},2)",
        });
        foreach (LoanPayment payment in loan.Payments)
        {
            table.Row(payment.Number, payment.Date, payment.Interest, payment.Principal, payment.Payment, payment.Owed, default, default);
            MakePaymentLive(sheet, terms, isLast: payment.Number == terms.Payments);
        }

        table.Total("", "", loan.TotalInterest, terms.Principal, loan.TotalInterest + terms.Principal, default, default, default);
        sheet.LiveSums(table.Rows.Count, (2, 4), (1, table.Rows.Count - 1));
        table.Note("Every payment is in whole cents; the last takes the rest.");
        return sheet;
    }

    private static void MakePaymentLive(FundingSheet sheet, LoanTerms terms, bool isLast)
    {
        int at = sheet.Table.Rows.Count - 1;
        string before = $"{{{at - 1},5}}";
        string principal = isLast ? before : terms.Repayment switch
        {
            Repayment.LevelPayment => $"MIN({before},{{0,7}}-{{{at},2}})",
            Repayment.LevelPrincipal => $"MIN({before},{{0,7}})",
            _ => "0",
        };
        sheet.LiveLast(2, $"ROUND({before}*{{0,6}},2)").LiveLast(3, principal)
            .LiveLast(4, $"{{{at},2}}+{{{at},3}}").LiveLast(5, $"ROUND({before}-{{{at},3}},2)");
    }
}
