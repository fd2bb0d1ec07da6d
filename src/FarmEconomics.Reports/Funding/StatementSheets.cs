using FarmEconomics.Budgets;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Funding;

/// <summary>The statement by tax line, the enterprise statement and the bridge between them, and tax depreciation.</summary>
public static class StatementSheets
{
    /// <summary>The whole farm by Schedule F line.</summary>
    public static FundingSheet Tax(FundingWriteUp writeUp)
    {
        TaxStatement tax = writeUp.Tax;
        string title = $"The whole farm in {writeUp.Period.Year} by Schedule F line, cash basis";
        ReportTable table = new ReportTable(title, writeUp.Season.Notation).InOrder()
            .Column("Line").Column("What").Column("Amount", Look.Money);
        FundingSheet sheet = new("Schedule F", table);
        ReportCell Income(decimal amount) => ReportCell.Known(amount, tax.IncomeUnknown);
        table
            .Row("Part I", "Sales of produce raised, share payments included", Income(tax.Sales))
            .Row("Part I", "Other farm income", Income(tax.OtherIncome))
            .Row("9", "Gross income", Income(tax.GrossIncome));
        if (tax.IncomeUnknown is null)
        {
            sheet.LiveLast(2, "SUM({0,2}:{1,2})");
        }

        foreach (TaxStatementLine line in tax.Expenses)
        {
            table.Row(
                line.Line?.Number ?? "none",
                line.Label,
                line.Amount is { } amount ? ((ReportCell)amount).Marked(line.Reason) : ReportCell.Missing(line.Reason!)
            );
        }

        Totals(sheet, tax);
        table.Note(tax.Book.Sum(CashKind.Invoices) is var late and not 0m && tax.IncomeUnknown is null
            ? writeUp.Season.Notation.Text($"Sales as they left the farm and share payments come to "
                + $"{tax.Sales - late:#,##0.00}; invoices of the year before that were paid, less those unpaid at the end, "
                + $"to {late:#,##0.00}.")
            : null);
        return tax.NetUnknown is not null ? Noted(sheet, "What is not on file is not known: it is no 0.")
            : writeUp.Period.IsCalendarYear ? sheet
            : Noted(sheet, $"The year runs from {Looks.Day(writeUp.Period.Start)}; a tax year usually is a calendar year.");
    }

    private static void Totals(FundingSheet sheet, TaxStatement tax)
    {
        ReportTable table = sheet.Table;
        int last = table.Rows.Count - 1;
        decimal total = tax.Expenses.Sum(line => line.Amount ?? 0m);
        string? leavesOut = tax.WithoutClass.Count == 0 ? null : tax.NetProfit.Reason;
        if (tax.NetUnknown is { } unknown)
        {
            table
                .Row("33", "Total expenses", ReportCell.Known(total, tax.ExpensesUnknown))
                .Row("34", "Net farm profit or loss", ReportCell.Missing(unknown));
            return;
        }

        table.Row("33", leavesOut is null ? "Total expenses" : "Total expenses, depreciation only of assets with a class", total);
        sheet.LiveLast(2, tax.Expenses.Count == 0 ? "0" : $"SUM({{3,2}}:{{{last},2}})");
        table.Row(
            "34",
            leavesOut is null ? "Net farm profit or loss" : "Net before the depreciation left out",
            ((ReportCell)(tax.GrossIncome - total)).Marked(leavesOut)
        );
        sheet.LiveLast(2, $"{{2,2}}-{{{last + 1},2}}");
        table
            .Note(
                $"Lines as the form of tax year {TaxLines.FormYear} numbers them: "
                    + $"labels for a tax preparer, who uses the form of the year. Channels' fees stand among other expenses."
            )
            .Note(
                "Equipment and buildings bought or sold, loan principal, income tax, drawings and the household's part of bills "
                    + "are not in it. "
                    + "Accrual adjustments stand apart, in the table of income."
            );
    }

    /// <summary>From the cash statement to the enterprise statement.</summary>
    public static FundingSheet Bridge(FundingWriteUp writeUp)
    {
        ReportTable table = new ReportTable("From the statement by tax line to the enterprise statement", writeUp.Season.Notation)
            .InOrder()
            .Column("Step")
            .Column("Amount", Look.Money);
        FundingSheet sheet = new("Bridge", table);
        if (writeUp.Tax.NetUnknown is { } unknown)
        {
            return Noted(sheet, $"Not available: {unknown}.");
        }

        table.Row("Gross income less cash expenses, before depreciation", writeUp.Bridge.NetFarmCash);
        IEnumerable<string> cash = writeUp.Tax.Expenses
            .Select((line, i) => line.Line == TaxLines.Depreciation ? "0" : $"{{Schedule F!{3 + i},2}}")
            .DefaultIfEmpty("0");
        sheet.LiveLast(1, $"{{Schedule F!2,2}}-({string.Join("+", cash)})");
        foreach (BridgeStep step in writeUp.Bridge.Steps)
        {
            table.Row(step.Name, step.Amount);
        }

        table.Total($"Net return of the farm in the enterprise statement ({writeUp.Bridge.NetReturnLabel})", writeUp.Bridge.NetReturn);
        sheet.Live(table.Rows.Count, 1, $"SUM({{0,1}}:{{{table.Rows.Count - 1},1}})");
        table.Note("Every step is worked out from the rows; nothing is a remainder.");
        return sheet;
    }

    /// <summary>The enterprise statement, as the review has it.</summary>
    public static FundingSheet Enterprise(FundingWriteUp writeUp)
    {
        ReportTable table = new ReportTable($"The whole farm in crop year {writeUp.Period.Year}, crops first", writeUp.Season.Notation)
            .InOrder()
            .Column("Line")
            .Column("Amount", Look.Money);
        FundingSheet sheet = new("Enterprise statement", table);
        IReadOnlyList<FarmStatementLine> lines = FarmStatement.Of(writeUp.Season);
        string[] formulas = [.. lines.Select(FormulaOf)];
        foreach (FarmStatementLine line in lines)
        {
            table.Row(Words.Phrase.Sentence(line.Name), line.Amount is { } amount ? amount : ReportCell.Missing(line.Reason!));
            if (formulas[table.Rows.Count - 1].Length > 0 && lines.All(other => other.Amount is not null))
            {
                sheet.LiveLast(1, formulas[table.Rows.Count - 1]);
            }
        }

        return sheet;

        string FormulaOf(FarmStatementLine line) => line.Item == FarmStatementItem.NetReturnOfFarm
            ? $"{At(BudgetLine.NetReturn)}+{Below(FarmStatementItem.OtherIncome)}+{Below(FarmStatementItem.UnassignedSales)}-"
                + $"{Below(FarmStatementItem.UnusedCapacity)}-{Below(FarmStatementItem.UnassignedCost)}"
            : line.Line is { } total && total.IsTotal() ? string.Concat(Parts(total).Select(SignedAt)).TrimStart('+') : "";

        // Labor is no line of the statement: hired and owner labor stand in its place.
        IEnumerable<BudgetLine> Parts(BudgetLine total) =>
            BudgetLines.All.Where(part => part.Parent() == total).SelectMany(part => part == BudgetLine.Labor ? Parts(part) : [part]);

        string SignedAt(BudgetLine part) => (part.Sign() < 0 || part.Parent() == BudgetLine.Labor ? "-" : "+") + At(part);

        string At(BudgetLine item) => Cell(line => line.Line == item);

        string Below(FarmStatementItem item) => Cell(line => line.Item == item);

        string Cell(Predicate<FarmStatementLine> wanted) => $"{{{lines.ToList().FindIndex(wanted)},1}}";
    }

    /// <summary>Tax depreciation by the classes given.</summary>
    public static FundingSheet Depreciation(FundingWriteUp writeUp)
    {
        int year = writeUp.Period.Year;
        int[] years = [.. Enumerable.Range(year, 6)];
        const string NoClass = "no depreciation class given";
        TableOf<AssetDepreciation> columns =
            new ReportTable($"Tax depreciation (MACRS, half-year convention), {year} and after", writeUp.Season.Notation)
            .Of<AssetDepreciation>()
            .Column("Asset", asset => asset.Asset.Asset.Trim())
            .Column("In service", Look.Date, asset => asset.Asset.InService)
            .Column("Basis", Look.Money, asset => asset.Basis)
            .Column("Class", Look.Count, asset => asset.RecoveryYears is { } used ? used : ReportCell.Missing(NoClass), "years")
            .Column("Before", Look.Money, asset => Amount(asset, () => asset.Amounts.Take(Math.Max(0, year - asset.FirstYear)).Sum()));
        foreach (int one in years)
        {
            string heading = one.ToString(System.Globalization.CultureInfo.InvariantCulture);
            columns.Column(heading, Look.Money, asset => Amount(asset, () => asset.In(one) ?? 0m));
        }

        ReportTable table = columns
            .Column("Later", Look.Money, asset => Amount(asset, () => asset.Amounts.Skip(Math.Max(0, year + 6 - asset.FirstYear)).Sum()))
            .Rows(writeUp.Tax.Depreciation.Where(asset => asset.Asset.Retired is not { } retired || retired.Year >= year));
        FundingSheet sheet = new("Tax depreciation", table) { Landscape = true };
        if (table.Rows.Count > 0)
        {
            IEnumerable<ReportCell> sums = Enumerable.Range(4, 8).Select(i => (ReportCell)table.Rows.Sum(row => row[i].Number ?? 0m));
            table.Total(["All with a class", "", "", "", .. sums]);
            sheet.LiveSums(table.Rows.Count, (4, 11), (0, table.Rows.Count - 1));
        }

        table.Note(RecoveryNote).Note(SolarNote);
        return sheet;

        static ReportCell Amount(AssetDepreciation asset, Func<decimal> of) =>
            asset.RecoveryYears is null ? ReportCell.Missing(NoClass) : of();
    }

    private const string RecoveryNote = "Percentages: IRS Publication 946, Table A-1. Basis: (cost - grant) x the farm's part. "
        + "The class is yours to give, and a tax preparer's to confirm: so are the mid-quarter convention, "
        + "bonus depreciation and section 179.";

    private const string SolarNote = "Solar: five years where construction began before 2025; "
        + "for later works the class is disputed since Public Law 119-21 (2025). Classes often met: "
        + "tools and machinery 5 new or 7 used, single-purpose structures such as greenhouses 10, farm buildings 20, "
        + "land improvements 15, light trucks 5.";

    private static FundingSheet Noted(FundingSheet sheet, string note)
    {
        sheet.Table.Note(note);
        return sheet;
    }
}
