using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Funding;

/// <summary>The line of credit by month, what equipment costs to replace, what a project must save, owning against hiring.</summary>
public static class DebtSheets
{
    /// <summary>The operating line of credit of next year, month by month, live.</summary>
    /// <param name="writeUp">The write-up.</param>
    public static FundingSheet Line(FundingWriteUp writeUp)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        Notation notation = writeUp.Season.Notation;
        IReadOnlyList<CreditLineMonth> months = writeUp.Line?.Months ?? [];
        ReportTable table = new ReportTable("Operating line of credit next year, month by month", notation)
            .InOrder()
            .Of<int>()
            .Column("Month", i => writeUp.NextYear.Months[i].ToString("MMM yyyy", System.Globalization.CultureInfo.InvariantCulture))
            .Column("Opening cash", Look.Money, i => months[i].Opening)
            .Column("In less out", Look.Money, i => months[i].Net)
            .Column("Interest", Look.Money, i => months[i].Interest)
            .Column("Drawn", Look.Money, i => months[i].Drawn)
            .Column("Paid back", Look.Money, i => months[i].Repaid)
            .Column("Closing cash", Look.Money, i => months[i].Closing)
            .Column("Owed on the line", Look.Money, i => months[i].Owed)
            .Rows(Enumerable.Range(0, months.Count));
        FundingSheet sheet = new("Line of credit", table) { Landscape = true };
        if (writeUp.Line is not { } line)
        {
            table.Note($"Not available: {writeUp.LineUnknown}.");
            return sheet;
        }

        MakeLive(sheet, line);
        decimal net = months.Sum(month => month.Net), repaid = months.Sum(month => month.Repaid);
        table.Total("Year", default, net, line.Interest, line.Drawn, repaid, default, default)
            .Note(Sentence(writeUp))
            .Note(notation.Text($"Drawn in steps of {notation.InWords(line.Terms.Step, Look.Money)} at the "
                + $"{(line.Terms.Draw == DrawTiming.Start ? "beginning" : "end")} of a month, "
                + $"paid back at its end with what is above the least cash, {notation.InWords(line.Terms.Minimum, Look.Money)}; "
                + $"interest is paid every month on what is drawn."));
        return sheet;
    }

    private static void MakeLive(FundingSheet sheet, CreditLine line)
    {
        for (int i = 0; i < line.Months.Count; i++)
        {
            if (i > 0)
            {
                sheet.Live(i, 1, $"{{{i - 1},6}}");
            }

            string owed = i > 0 ? $"{{{i - 1},7}}" : "0", onDraw = line.Terms.Draw == DrawTiming.Start ? $"+{{{i},4}}" : "";
            sheet.Live(i, 3, $"ROUND(({owed}{onDraw})*{Number(line.Terms.AnnualRate)}/12,2)")
                .Live(i, 6, $"{{{i},1}}+{{{i},2}}-{{{i},3}}+{{{i},4}}-{{{i},5}}")
                .Live(i, 7, $"{owed}+{{{i},4}}-{{{i},5}}");
        }

        sheet.LiveSums(line.Months.Count, (2, 5), (0, line.Months.Count - 1));
    }

    /// <summary>The sentence that says what the line comes to.</summary>
    /// <param name="writeUp">The write-up.</param>
    public static string Sentence(FundingWriteUp writeUp)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        Notation notation = writeUp.Season.Notation;
        if (writeUp.Line is not { } line)
        {
            return writeUp.NextYear.OperatingLoan(writeUp.Assumptions.Debt.MinimumCash).Value is { } needed and > 0m
                ? $"{notation.InWords(needed, Look.WholeMoney)} must be borrowed for the season; month by month that can't be told: "
                    + $"{writeUp.LineUnknown}."
                : $"A line of credit can't be told: {writeUp.LineUnknown}.";
        }

        if (line.Drawn == 0m)
        {
            return "No line of credit is needed.";
        }

        string over =
            writeUp.Assumptions.Debt.LineLimit is { } limit && line.Most > limit
                ? $", {notation.InWords(line.Most - limit, Look.WholeMoney)} over its limit"
                : "";
        string rate =
            writeUp.Assumptions.Debt.LinePercent is null && writeUp.SeasonLoan is { } loan
                ? notation.Text($" at {writeUp.LinePercent:0.##}%, as {loan.Name} cost")
                : "";
        return $"A line of credit of {notation.InWords(line.Most, Look.WholeMoney)} is needed{over}; "
            + $"it costs {notation.InWords(line.Interest, Look.WholeMoney)} of interest{rate}, "
            + (
                line.Owed == 0m
                    ? "and is paid back by the end of the year."
                    : $"and {notation.InWords(line.Owed, Look.WholeMoney)} is still owed at the end of the year."
            );
    }

    /// <summary>What replacing each asset costs a year, and up to which repairs it pays to keep it; null without assets.</summary>
    /// <param name="writeUp">The write-up.</param>
    public static FundingSheet? Replacement(FundingWriteUp writeUp)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        if (writeUp.Replacement is not { Count: > 0 } assets)
        {
            return null;
        }

        ReportTable table = new ReportTable("Keep or replace", writeUp.Season.Notation)
            .Column("Asset")
            .Column("Age, years", Look.Quantity)
            .Column("Life, years", Look.Quantity)
            .Column("A new one costs", Look.Money)
            .Column("Keep the old one while a year of it costs less than", Look.Money);
        foreach (ReplacementCost asset in assets)
        {
            table.Row(asset.Asset.Asset.Trim(), asset.AgeYears, asset.Asset.LifeYears, asset.NewCost, asset.EqualAnnualCost);
        }

        table.Note("What a new one costs a year, level: price less salvage over its life at the farm's cost of capital, with repairs, "
            + "insurance and tax in percent of cost. A year of the old one costs its repairs, what its resale value falls by, "
            + "and interest on what it would fetch; a breakdown at a bad time can turn the answer round. "
            + "A new one counts at replacement_value, else at what the old one cost, without a grant.");
        return new FundingSheet("Keep or replace", table) { Landscape = true };
    }

    /// <summary>What the project must save a year to pay, whatever it does save; null without a project.</summary>
    /// <param name="writeUp">The write-up.</param>
    public static FundingSheet? Needed(FundingWriteUp writeUp)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        if (writeUp.Investment is not { } investment)
        {
            return null;
        }

        ReportTable table = new ReportTable($"{writeUp.Grant!.Project}: what it must save a year", writeUp.Season.Notation)
            .InOrder()
            .Column("Case")
            .Column("Costs the farm now", Look.Money)
            .Column("Cost of capital", Look.Exact)
            .Column("Years", Look.Count)
            .Column("Must save a year", Look.Money)
            .Column("That is, in hours a year", Look.Hours);
        FundingSheet sheet = new("Must save", table);
        int years = investment.Years;
        string salvage = Number(investment.Salvage);
        Add("With the grant", investment.NeededWithGrant);
        Add("Without the grant", investment.NeededWithoutGrant);
        table.Note($"No saving is assumed: {CostText(investment, writeUp.Season.Notation)}. "
                + "Without the grant there are no indirect charges.")
            .Note(investment.OwnOrHire is { } own ? OwnOrHireText(own, writeUp) : null);
        return sheet;

        void Add(string name, SavingNeeded needed)
        {
            table.Row(name, needed.Outlay, investment.DiscountRate, years, needed.Yearly, needed.Hours);
            if (needed.Yearly.IsAvailable)
            {
                int at = table.Rows.Count - 1;
                sheet.LiveLast(4, investment.DiscountRate.Value == 0m
                    ? $"ROUND(({{{at},1}}-{salvage})/{years},2)"
                    : $"ROUND(-PMT({{{at},2}},{years},{{{at},1}},-{salvage}),2)");
            }
        }
    }

    private static string CostText(Investment investment, Notation notation) => investment.Salvage == 0m
        ? "its cost x the capital recovery factor over the years it serves"
        : $"its cost less the {notation.InWords(investment.Salvage, Look.Money)} it is worth at the end, x the capital recovery "
            + "factor over the years it serves, and the cost of capital of what it is worth at the end";

    /// <summary>Owning against hiring in a sentence or two.</summary>
    private static string OwnOrHireText(OwnOrHire own, FundingWriteUp writeUp)
    {
        Notation notation = writeUp.Season.Notation;
        if (own.BreakEvenUse.Value is not { } use)
        {
            return $"Own or hire: {own.BreakEvenUse.Reason}, so owning never pays.";
        }

        string text = notation.Text($"Own or hire: owning costs less from {use:#,##0.#} units of use a year.");
        return writeUp.Assumptions.Project.UseAYear is { } a
            ? text
                + $" At {notation.Text($"{a:#,##0.#}")} units owning costs {notation.InWords(own.CostOfOwning(a), Look.WholeMoney)} and "
                + $"hiring {notation.InWords(own.CostOfHiring(a), Look.WholeMoney)} a year."
            : text;
    }

    private static string Number(decimal value) => value.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
