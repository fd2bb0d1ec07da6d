using FarmEconomics.Budgets;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Funding;

/// <summary>Crops in write-up form, the grant budget with its narrative, the investment, assumptions and checks.</summary>
public static class ProjectSheets
{
    private static readonly (ObjectClass? Class, string Line, string Name)[] Classes =
    [
        (ObjectClass.Personnel, "6a", "Personnel"), (ObjectClass.FringeBenefits, "6b", "Fringe Benefits"),
        (ObjectClass.Travel, "6c", "Travel"), (ObjectClass.Equipment, "6d", "Equipment"),
        (ObjectClass.Supplies, "6e", "Supplies"), (ObjectClass.Contractual, "6f", "Contractual"),
        (ObjectClass.Construction, "6g", "Construction"), (ObjectClass.Other, "6h", "Other"),
    ];

    /// <summary>Every crop: what it earned last season and would next, with the lines under it; one crop, or all.</summary>
    public static FundingSheet Crops(FundingWriteUp writeUp, string? crop = null)
    {
        IReadOnlyList<CropWriteUp> crops = [.. writeUp.Crops.Where(one => crop is null
            || one.Budget.Name.Equals(crop.Trim(), StringComparison.OrdinalIgnoreCase))];
        LengthUnit length = writeUp.Season.Settings.LengthUnit;
        ReportTable table = new ReportTable(
            $"Enterprise budgets, crop year {writeUp.Period.Year} and the next by the factors assumed", writeUp.Season.Notation)
            .InOrder()
            .Column("Crop").Column("Line")
            .Column("Last season", Look.Money).Column(length.Label("Per 100 bed-feet"), Look.Rate).Column("Per bed", Look.Rate)
            .Column(length.Label("Per acre"), Look.Rate)
            .Column("Next season", Look.Money).Column(length.Label("Next, per 100 bed-feet"), Look.Rate).Column("Next, per bed", Look.Rate)
            .Column(length.Label("Next, per acre"), Look.Rate);
        FundingSheet sheet = new("Crops", table) { Landscape = true };
        foreach (CropWriteUp one in crops)
        {
            int first = table.Rows.Count;
            foreach (WriteUpLine line in one.Lines)
            {
                string? why = WhyNot(one.Budget, line.Item);
                table.Row([
                    one.Budget.Name, line.Name,
                    ReportCell.Known(line.Last, why), .. Per(next: false), ReportCell.Known(line.Next, why), .. Per(next: true)]);
                foreach (int column in new[] { 2, 6 }.Where(_ => why is null && line.IsTotal))
                {
                    sheet.LiveLast(column, TotalOf(line.Item, first, column));
                }

                IEnumerable<ReportCell> Per(bool next) => new[] { 100m, one.BedLength, one.BedFeetPerAcre }
                    .Select(feet => why is null ? one.Per(line, feet, next) : ReportCell.Missing(why));
            }
        }

        table.Note(crops.Count > 0 ? Lengths(writeUp, crops[0]) : null);
        return Noted(
            sheet,
            "Next season: output x area x yield x price; costs by what each varies with, labor x the wage factor, "
                + "others x the cost factor.");
    }

    private static string Lengths(FundingWriteUp writeUp, CropWriteUp any)
    {
        (Notation notation, FarmSettings settings) = (writeUp.Season.Notation, writeUp.Season.Settings);
        string width = settings.LengthUnit.WidthShort();
        string path = notation.Number(writeUp.Assumptions.NextSeason.PathWidthIn(settings.LengthUnit), Look.Exact);
        return notation.Text($"Per bed: {notation.Number(any.BedLength, Look.Quantity)} bed-feet, the length most beds have. "
            + $"Per acre: {notation.Number(any.BedFeetPerAcre, Look.Quantity)} bed-feet, "
            + $"beds of {notation.Number(settings.StandardBedWidthIn, Look.Quantity)} {width} with paths of {path} {width}. "
            + $"An acre of beds planted several times a year holds several such acres.");
    }

    /// <summary>The crops' main lines side by side, one row a crop.</summary>
    public static FundingSheet CropOverview(FundingWriteUp writeUp)
    {
        string net = "Net return";
        ReportTable table = new ReportTable(
            $"What each crop earned in {writeUp.Period.Year}, and would next season", writeUp.Season.Notation)
            .Column("Crop").Column(writeUp.Season.Settings.LengthUnit.Label("Bed-feet"), Look.Quantity)
            .Column("Output", Look.Money).Column("Gross margin", Look.Money).Column(net, Look.Money)
            .Column(writeUp.Season.Settings.LengthUnit.Label("Next: bed-feet"), Look.Quantity).Column("Next: output", Look.Money)
            .Column("Next: gross margin", Look.Money).Column($"Next: {net.ToLowerInvariant()}", Look.Money);
        foreach (CropWriteUp one in writeUp.Crops)
        {
            WriteUpLine Line(WriteUpItem item) => one.Lines.First(line => line.Item == item);
            ReportCell Last(WriteUpItem item) => ReportCell.Known(Line(item).Last, WhyNot(one.Budget, item));
            ReportCell Next(WriteUpItem item) => ReportCell.Known(Line(item).Next, WhyNot(one.Budget, item));
            table.Row(
                one.Budget.Name, one.Budget.Sums.BedFeet.Value, Last(WriteUpItem.Output), Last(WriteUpItem.GrossMargin),
                Last(WriteUpItem.NetReturn),
                one.NextBedFeet, Next(WriteUpItem.Output), Next(WriteUpItem.GrossMargin), Next(WriteUpItem.NetReturn));
        }

        FundingSheet sheet = new("Crop overview", table) { Landscape = true };
        if (table.Rows.Count > 0)
        {
            int last = table.Rows.Count - 1;
            ReportCell Sum(int i) => table.Rows.All(row => row[i].Number is not null)
                ? table.Rows.Sum(row => row[i].Number!.Value)
                : table.Rows.First(row => row[i].Number is null)[i];
            table.Total(["All crops", .. Enumerable.Range(1, 8).Select(Sum)]);
            foreach (int i in Enumerable.Range(1, 8).Where(i => Sum(i).Number is not null))
            {
                sheet.Live(last + 1, i, $"SUM({{0,{i}}}:{{{last},{i}}})");
            }
        }

        return sheet;
    }

    /// <summary>The grant budget by object class; null without a project.</summary>
    public static FundingSheet? Grant(FundingWriteUp writeUp)
    {
        if (writeUp.Grant is not { } grant)
        {
            return null;
        }

        ReportTable table = new ReportTable($"{grant.Project}: budget by object class", writeUp.Season.Notation).InOrder()
            .Column("SF-424A line").Column("Object class")
            .Column("Funder", Look.Money).Column("Match", Look.Money).Column("Total", Look.Money);
        FundingSheet sheet = new("Grant budget", table);
        foreach ((ObjectClass? kind, string line, string name) in Classes)
        {
            Add(line, name, grant.Of(kind));
            Matched();
        }

        (decimal Funder, decimal Match) indirect = grant.Of(null);
        Add("6i", "Total Direct Charges", (grant.Funder - indirect.Funder, grant.Match - indirect.Match));
        sheet.LiveLast(2, "SUM({0,2}:{7,2})").LiveLast(3, "SUM({0,3}:{7,3})");
        Add("6j", "Indirect Charges", indirect);
        Matched();
        Add("6k", "TOTALS", (grant.Funder, grant.Match));
        sheet.LiveLast(2, "{8,2}+{9,2}").LiveLast(3, "{8,3}+{9,3}");
        GrantNotes(table, grant);
        return sheet;

        void Add(string line, string name, (decimal Funder, decimal Match) amounts)
        {
            table.Row(line, name, amounts.Funder, amounts.Match, amounts.Funder + amounts.Match);
            int at = table.Rows.Count - 1;
            sheet.LiveLast(4, $"{{{at},2}}+{{{at},3}}");
        }

        void Matched() => SumNarrative(sheet, grant.Lines.Count - 1);
    }

    /// <summary>Makes the last row live: the narrative's rows of its object class.</summary>
    private static void SumNarrative(FundingSheet sheet, int last)
    {
        int at = sheet.Table.Rows.Count - 1;
        foreach (int column in new[] { 2, 3 })
        {
            sheet.LiveLast(column, $"SUMIF({{Grant narrative!0,0}}:{{Grant narrative!{last},0}},{{{at},1}},"
                + $"{{Grant narrative!0,{column + 1}}}:{{Grant narrative!{last},{column + 1}}})");
        }
    }

    private static void GrantNotes(ReportTable table, GrantBudget grant)
    {
        Notation notation = table.Notation;
        table.Note(grant.MatchNeeded.Value is { } needed
            ? notation.Text($"Match asked for: {grant.MatchPercent:0.##}% of {(grant.MatchOfAward ? "the award" : "the whole project")}, "
                + $"{notation.InWords(needed, Look.Money)}; shown here: {notation.InWords(grant.Match, Look.Money)}, "
                + $"{(grant.Match >= needed ? "enough" : "too little")}.")
            : $"Match asked for: {Looks.NotAvailable}, {grant.MatchNeeded.Reason}.")
            .Note($"In kind: {notation.InWords(grant.InKind, Look.Money)} of the match. "
                + $"To be paid in money: {notation.InWords(grant.CashCost, Look.Money)}.")
            .Note(grant.IndirectNeedsNegotiatedRate ? "The indirect rate is above 15%: it needs a negotiated rate." : null)
            .Note("Object classes of SF-424A (OMB 4040-0006), Section B; program income (line 7) isn't part of it. "
                + "What the program allows, the funder's notice says.");
    }

    /// <summary>The rows behind every amount of the grant budget; null without a project.</summary>
    public static FundingSheet? Narrative(FundingWriteUp writeUp)
    {
        if (writeUp.Grant is not { } grant)
        {
            return null;
        }

        ReportTable table = new ReportTable($"{grant.Project}: what every amount is for", writeUp.Season.Notation).Column("Object class")
            .Column("Item").Wrapping().Column("How it comes about").Wrapping()
            .Column("Funder", Look.Money).Column("Match", Look.Money).Column("In kind").Column("Row");
        foreach (GrantLine line in grant.Lines)
        {
            table.Row(
                Classes.FirstOrDefault(kind => kind.Class == line.Class).Name ?? "Indirect Charges", line.Item, line.WorkedOut, line.Funder,
                line.Match, line.InKind ? "yes" : "", line.Source?.ToString() ?? "assumptions");
        }

        table.Total("Total", "", "", grant.Funder, grant.Match, "", "");
        int last = table.Rows.Count - 1;
        return new FundingSheet("Grant narrative", table) { Landscape = true }.Live(last + 1, 3, $"SUM({{0,3}}:{{{last},3}})")
            .Live(last + 1, 4, $"SUM({{0,4}}:{{{last},4}})");
    }

    /// <summary>What a year of the project saves; null without a project.</summary>
    public static FundingSheet? Savings(FundingWriteUp writeUp)
    {
        if (writeUp.Investment is not { } investment)
        {
            return null;
        }

        ReportTable table = new ReportTable($"{writeUp.Grant!.Project}: what it gains and costs a year", writeUp.Season.Notation).InOrder()
            .Column("Line").Column("Quantity", Look.Exact).Column("Unit").Column("Value of one", Look.Exact).Column("A year", Look.Money)
            .Column("From").Wrapping();
        FundingSheet sheet = new("Yearly saving", table);
        foreach (YearlySaving line in investment.Savings)
        {
            bool known = line.Quantity is not null && line.Each is not null && line.Amount.IsAvailable;
            table.Row(
                line.Name,
                line.Quantity is { } quantity ? quantity : default(ReportCell),
                line.Unit,
                known ? line.Each!.Value : default(ReportCell),
                line.Amount,
                line.From);
        }

        table.Total("Yearly saving", default, "", default, investment.YearlySaving, "");
        if (investment.YearlySaving.IsAvailable)
        {
            sheet.Live(table.Rows.Count, 4, $"SUM({{0,4}}:{{{table.Rows.Count - 1},4}})");
        }

        return sheet;
    }

    /// <summary>The investment with and without the grant; null without a project or a saving.</summary>
    public static FundingSheet? Investment(FundingWriteUp writeUp)
    {
        if (writeUp.Investment is not { WithGrant: { } with, WithoutGrant: { } without })
        {
            return null;
        }

        ReportTable table = new ReportTable($"{writeUp.Grant!.Project}: does it pay?", writeUp.Season.Notation).InOrder()
            .Column("Figure").Wrapping().Column("With the grant", Look.Exact).Column("Without", Look.Exact);
        FundingSheet sheet = new("Investment", table);
        for (int year = 0; year <= with.Years; year++)
        {
            table.Row(year == 0 ? "Outlay now" : $"End of year {year}", with.Amounts[year], without.Amounts[year]);
        }

        int last = with.Years, rate = last + 1, npv = last + 2;
        table.Row("Cost of capital, a fraction", with.Rate, without.Rate)
            .Row("Net present value", with.NetPresentValue, without.NetPresentValue);
        LiveBoth(sheet, column => $"NPV({{{rate},{column}}},{{1,{column}}}:{{{last},{column}}})+{{0,{column}}}");
        RatesOfReturn(sheet, with, without);
        table.Row("Payback, years", with.Payback, without.Payback)
            .Row("Discounted payback, years", with.DiscountedPayback, without.DiscountedPayback)
            .Row("Equal annual value", with.EqualAnnualValue, without.EqualAnnualValue);
        LiveBoth(sheet, column => $"-PMT({{{rate},{column}}},{last},{{{npv},{column}}})");
        table.Note("Yearly amounts at the end of each year, before tax. Work given in kind counts at its value. "
            + "Every rate of return is given where there are several.");
        return sheet;
    }

    private static void RatesOfReturn(FundingSheet sheet, CapitalBudget with, CapitalBudget without)
    {
        int most = Math.Max(with.RatesOfReturn.Count, without.RatesOfReturn.Count);
        for (int i = 0; i < Math.Max(1, most); i++)
        {
            string name = most > 1 ? $"Internal rate of return, root {i + 1}" : "Internal rate of return, a fraction";
            sheet.Table.Row(name, At(with, i), At(without, i));
        }

        if (most == 1)
        {
            LiveBoth(sheet, column => $"IRR({{0,{column}}}:{{{with.Years},{column}}},{Guess(column)})");
        }

        string Guess(int column) =>
            (sheet.Table.Rows[^1][column].Number ?? 0.1m).ToString("0.####", System.Globalization.CultureInfo.InvariantCulture);

        static ReportCell At(CapitalBudget budget, int i) => i < budget.RatesOfReturn.Count
            ? budget.RatesOfReturn[i]
            : ReportCell.Missing("no rate makes the present value 0");
    }

    /// <summary>Makes the last row live, with the grant and without, where there is a number.</summary>
    private static void LiveBoth(FundingSheet sheet, Func<int, string> formula)
    {
        foreach (int column in new[] { 1, 2 }.Where(column => sheet.Table.Rows[^1][column].Number is not null))
        {
            sheet.LiveLast(column, formula(column));
        }
    }

    /// <summary>What the investment hangs on; null without a project or a saving.</summary>
    public static FundingSheet? Swings(FundingWriteUp writeUp)
    {
        if (writeUp.Investment is not { HangsOn: { Count: > 0 } swings })
        {
            return null;
        }

        ReportTable table = new ReportTable(
            $"{writeUp.Grant!.Project}: net present value when one input is a tenth lower or higher", writeUp.Season.Notation)
            .Column("Input").Column("A tenth lower", Look.Money).Column("A tenth higher", Look.Money).Column("Apart by", Look.Money);
        FundingSheet sheet = new("Hangs on", table);
        foreach (InvestmentSwing swing in swings)
        {
            // To the cent, so that the difference is that of the figures shown.
            (decimal lower, decimal higher) = (Money.Rounded(swing.Lower).Amount, Money.Rounded(swing.Higher).Amount);
            table.Row(swing.Input, lower, higher, Math.Abs(higher - lower));
            int at = table.Rows.Count - 1;
            sheet.LiveLast(3, $"ABS({{{at},2}}-{{{at},1}})");
        }

        table.Note("With the grant. Widest first.");
        return sheet;
    }

    /// <summary>Everything assumed beside the records.</summary>
    public static FundingSheet Assumptions(FundingWriteUp writeUp)
    {
        ReportTable table = new ReportTable("What the write-up assumes beside the records", writeUp.Season.Notation).Column("Assumption")
            .Column("Value").Column("Unit").Column("What it means").Column("Set as");
        foreach (Assumption assumption in writeUp.Assumptions.All(writeUp.Season.Notation))
        {
            table.Row(assumption.Title, assumption.Value ?? "not given", assumption.Unit, assumption.Meaning, assumption.Name);
        }

        foreach ((string asset, int years) in writeUp.Assumptions.Classes)
        {
            table.Row(
                $"Depreciation class of {asset}",
                years.ToString(System.Globalization.CultureInfo.InvariantCulture),
                "years",
                "MACRS recovery period, your input",
                "class");
        }

        return new FundingSheet("Assumptions", table) { Landscape = true };
    }

    /// <summary>What the statements must agree on.</summary>
    public static FundingSheet Checks(FundingWriteUp writeUp)
    {
        ReportTable table = new ReportTable("What must agree, to the cent", writeUp.Season.Notation).Column("Check")
            .Column("Left", Look.Money).Column("Right", Look.Money).Column("Difference", Look.Money);
        FundingSheet sheet = new("Checks", table);
        foreach (FundingCheck check in writeUp.Checks)
        {
            table.Row(check.Name, check.Left, check.Right, check.Difference);
            int at = table.Rows.Count - 1;
            sheet.LiveLast(3, $"{{{at},1}}-{{{at},2}}");
        }

        return sheet;
    }

    private static FundingSheet Noted(FundingSheet sheet, string note)
    {
        sheet.Table.Note(note);
        return sheet;
    }

    private static string? WhyNot(EnterpriseBudget crop, WriteUpItem item) => crop.Line(item switch
    {
        WriteUpItem.Sales => BudgetLine.Sales,
        WriteUpItem.HouseholdUse => BudgetLine.HouseholdUse,
        WriteUpItem.ClosingStock => BudgetLine.ClosingStock,
        WriteUpItem.Output => BudgetLine.Output,
        WriteUpItem.Materials => BudgetLine.Materials,
        WriteUpItem.Selling => BudgetLine.Selling,
        WriteUpItem.GrossMargin => BudgetLine.GrossMargin,
        WriteUpItem.Labor => BudgetLine.Labor,
        WriteUpItem.MarginAfterLabor => BudgetLine.MarginAfterLabor,
        WriteUpItem.Infrastructure => BudgetLine.Infrastructure,
        WriteUpItem.Overhead => BudgetLine.Overhead,
        WriteUpItem.Establishment => BudgetLine.Establishment,
        _ => BudgetLine.NetReturn,
    }).Missing;

    private static string TotalOf(WriteUpItem item, int first, int column) => item switch
    {
        WriteUpItem.Output => $"SUM({{{first},{column}}}:{{{first + 2},{column}}})",
        WriteUpItem.GrossMargin => $"{{{first + 3},{column}}}-{{{first + 4},{column}}}-{{{first + 5},{column}}}",
        WriteUpItem.MarginAfterLabor => $"{{{first + 6},{column}}}-{{{first + 7},{column}}}",
        _ => $"{{{first + 8},{column}}}-{{{first + 9},{column}}}-{{{first + 10},{column}}}-{{{first + 11},{column}}}",
    };
}
