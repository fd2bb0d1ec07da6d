using System.Globalization;
using FarmEconomics.Decisions.Losses;
using FarmEconomics.Decisions.Perennials;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Answers;

/// <summary>
/// The write-up's longer tables as a page has room for: at most seven columns, whole money. The workbook holds them in full.
/// </summary>
internal sealed class LenderTables(FundingWriteUp books)
{
    private readonly Notation notation = books.Season.Notation;
    private readonly LengthUnit length = books.Season.Settings.LengthUnit;

    /// <summary>The project by object class, the lines that hold anything; null without a project.</summary>
    internal ReportTable? Budget()
    {
        if (books.Grant is not { } grant)
        {
            return null;
        }

        ReportTable table = new ReportTable(
            "By object class of the federal form SF-424A; what every amount is for stands in appendix G",
            notation
        )
            .InOrder()
            .Column("Line")
            .Column("Funder", Look.Money)
            .Column("Ours", Look.Money)
            .Column("Total", Look.Money);
        foreach (ObjectClass? kind in Enum.GetValues<ObjectClass>().Select(kind => (ObjectClass?)kind).Append(null))
        {
            (decimal funder, decimal match) = grant.Of(kind);
            if (funder + match != 0m)
            {
                table.Row(kind is { } named ? Words.Phrase.Sentence(Records.Schema.Words.Of(named).Replace('-', ' ')) : "Indirect charges", funder, match, funder + match);
            }
        }

        return table.Total("Total", grant.Funder, grant.Match, grant.Total)
            .Note(grant.InKind > 0m ? $"In kind: {notation.InWords(grant.InKind, Look.WholeMoney)} of ours." : null);
    }

    /// <summary>Cash at the end of each month, this year and next.</summary>
    internal ReportTable Cash()
    {
        ReportTable table = new ReportTable($"Cash by month: {books.Period.Year} by the records, {books.Period.Year + 1} by the same pattern", notation).InOrder().Column("Month");
        foreach (CashFlow flow in new[] { books.LastYear, books.NextYear })
        {
            string year = flow.Months[0].Year.ToString(CultureInfo.InvariantCulture);
            table.Column($"In {year}", Look.WholeMoney).Column($"Out {year}", Look.WholeMoney).Column($"End of month {year}", Look.WholeMoney);
        }

        for (int i = 0; i < CashFlow.MonthCount; i++)
        {
            table.Row([books.LastYear.Months[i].ToString("MMM", CultureInfo.InvariantCulture), .. Month(books.LastYear, i), .. Month(books.NextYear, i)]);
        }

        return table.Total(["Year", .. Year(books.LastYear), .. Year(books.NextYear)]);

        IEnumerable<ReportCell> Month(CashFlow flow, int i) => books.Tax.NetUnknown is { } why ? [ReportCell.Missing(why), ReportCell.Missing(why), ReportCell.Missing(why)]
            : [flow.In[i], flow.Out[i], flow.OpeningCash is null ? ReportCell.Missing("no balance sheet says what cash there was at the beginning") : flow.Closing[i]];

        IEnumerable<ReportCell> Year(CashFlow flow) => books.Tax.NetUnknown is { } why ? [ReportCell.Missing(why), ReportCell.Missing(why), default] : [flow.In.Sum(), flow.Out.Sum(), default];
    }

    /// <summary>What cash of next year is made of.</summary>
    internal ReportTable CashLines()
    {
        ReportTable table = new ReportTable("What comes in and goes out in a year", notation).InOrder().Column("Line").Column($"{books.Period.Year}", Look.WholeMoney).Column($"{books.Period.Year + 1}", Look.WholeMoney);
        if (books.Tax.NetUnknown is { } why)
        {
            return table.Note($"Not known: {why}.");
        }

        foreach (string name in books.LastYear.Lines.Concat(books.NextYear.Lines).OrderByDescending(line => line.IsIn).Select(line => line.Name).Distinct())
        {
            table.Row(name, Of(books.LastYear, name), Of(books.NextYear, name));
        }

        return table;

        static ReportCell Of(CashFlow flow, string name) => flow.Lines.FirstOrDefault(line => line.Name == name) is { } line ? (line.IsIn ? line.Total : -line.Total) : default(ReportCell);
    }

    /// <summary>The operating line of credit; null where none is needed.</summary>
    internal ReportTable? Line()
    {
        if (books.Line is not { Drawn: > 0m } line)
        {
            return null;
        }

        ReportTable table = new ReportTable("Operating line of credit next year", notation).InOrder().Column("Month").Column("In less out", Look.WholeMoney).Column("Interest", Look.Money)
            .Column("Drawn", Look.WholeMoney).Column("Paid back", Look.WholeMoney).Column("Cash after it", Look.WholeMoney).Column("Owed", Look.WholeMoney);
        foreach ((int i, CreditLineMonth month) in line.Months.Index())
        {
            table.Row(books.NextYear.Months[i].ToString("MMM", CultureInfo.InvariantCulture), month.Net, month.Interest, month.Drawn, month.Repaid, month.Closing, month.Owed);
        }

        return table;
    }

    /// <summary>The measures by group, without the inputs.</summary>
    internal ReportTable Measures()
    {
        ReportTable table = new ReportTable($"Financial measures of {books.Period.Year}", notation).InOrder().Column("Measure").Wrapping().Column("Value").Column("How it is worked out").Wrapping();
        foreach (IGrouping<string, Measure> group in books.Measures.GroupBy(measure => measure.Group))
        {
            table.Group(Words.Phrase.Sentence(group.Key));
            foreach (Measure measure in group)
            {
                table.Row(measure.Name, measure.Value.Value is not { } value ? ReportCell.Missing(measure.Value.Reason!) : measure.Unit switch
                {
                    MeasureUnit.Percent => notation.Number(value, Look.Percent),
                    MeasureUnit.Currency => notation.InWords(value, Look.WholeMoney),
                    _ => notation.Text($"{value:#,##0.00}"),
                }, measure.Formula);
            }
        }

        return table;
    }

    /// <summary>Every loan by year: paid, of which interest, and what is owed.</summary>
    internal ReportTable? Loans()
    {
        List<LoanSchedule> loans = [.. books.NewLoan is { } asked ? books.Loans.Append(asked) : books.Loans];
        if (loans.Count == 0)
        {
            return null;
        }

        ReportTable table = new ReportTable("Loans by year", notation).InOrder().Column("Year").Column("Interest", Look.Money).Column("Principal", Look.Money).Column("Paid", Look.Money).Column("Owed at the end", Look.Money);
        foreach (LoanSchedule loan in loans.Where(loan => loan.Payments[^1].Date >= books.Period.Start))
        {
            LoanTerms terms = loan.Terms;
            table.Group(Words.Phrase.Sentence(terms.Name), notation.Text($"{notation.InWords(terms.Principal, Look.WholeMoney)} at {terms.AnnualRate * 100m:0.##}%, {terms.Payments} payments to {loan.Payments[^1].Date:MMMM yyyy}"));
            foreach (IGrouping<int, LoanPayment> year in loan.Payments.GroupBy(payment => payment.Date.Year).Where(year => year.Key >= books.Period.Year))
            {
                table.Row(year.Key.ToString(CultureInfo.InvariantCulture), year.Sum(payment => payment.Interest), year.Sum(payment => payment.Principal), year.Sum(payment => payment.Payment), year.Last().Owed);
            }
        }

        return table;
    }

    /// <summary>Tax depreciation of the year, asset by asset.</summary>
    internal ReportTable Depreciation()
    {
        int year = books.Period.Year;
        ReportTable table = new ReportTable($"Tax depreciation of {year}, and what its class would be", notation).Column("Asset").Wrapping().Column("Basis", Look.WholeMoney).Column("Class used", Look.Count, "years").Column("Suggested", Look.Count, "years")
            .Column($"{year}", Look.Money).Column($"{year + 1}", Look.Money);
        foreach (AssetDepreciation asset in books.Tax.Depreciation.Where(asset => asset.Asset.Retired is not { } retired || retired.Year >= year))
        {
            ReportCell Of(int one) => asset.In(one) is { } amount ? amount : ReportCell.Missing("no depreciation class given");
            table.Row(asset.Asset.Asset.Trim(), asset.Basis, asset.RecoveryYears is { } used ? used : ReportCell.Missing("no depreciation class given"),
                asset.Asset.TaxKind is { } kind && DepreciationClasses.Suggested(kind) is { } years ? years : ReportCell.Missing("tax_kind isn't given in assets"), Of(year), Of(year + 1));
        }

        return table.Note("Classes are for a tax preparer to confirm: IRS Publications 946 and 225.");
    }

    /// <summary>One line a crop, last season and next.</summary>
    internal ReportTable Crops()
    {
        ReportTable table = new ReportTable($"What each crop earned in {books.Period.Year}, and would by the factors assumed", notation).Column("Crop").Column(length.Label("Bed-feet"), Look.Quantity).Column("Brought in", Look.WholeMoney)
            .Column("Gross margin", Look.WholeMoney).Column("Net return", Look.WholeMoney).Column("Next: brought in", Look.WholeMoney).Column("Next: net return", Look.WholeMoney);
        foreach (CropWriteUp crop in books.Crops)
        {
            ReportCell Of(WriteUpItem item, bool next, string? why) => why is not null ? ReportCell.Missing(why) : crop.Lines.First(line => line.Item == item) is var line && next ? line.Next : line.Last;
            Budgets.Availability known = crop.Budget.Known;
            table.Row(crop.Budget.Name, crop.Budget.Sums.BedFeet.Value, Of(WriteUpItem.Output, false, known.Value), Of(WriteUpItem.GrossMargin, false, known.NoGrossMargin), Of(WriteUpItem.NetReturn, false, known.NoFullNetReturn),
                Of(WriteUpItem.Output, true, known.Value), Of(WriteUpItem.NetReturn, true, known.NoFullNetReturn));
        }

        return table;
    }

    /// <summary>Perennials; null without any.</summary>
    internal ReportTable? Stands()
    {
        if (Stand.Of(books.Review, books.Period.Year) is not { Count: > 0 } stands)
        {
            return null;
        }

        string per = length.Label("a bed-foot");
        ReportTable table = new ReportTable("Perennials with their establishment as an asset", notation).Column("Planting").Wrapping().Column("Establishment", Look.WholeMoney).Column("Its part a year", Look.Money)
            .Column("Net return with it", Look.WholeMoney).Column($"Brings a year, {per}", Look.Rate).Column($"Other beds, {per}", Look.Rate).Column("Stay or go");
        foreach (Stand stand in stands)
        {
            table.Row(stand.Planting.Name, stand.EstablishmentCost, stand.AnnualPart, stand.NetOf(stand.Years[^1]), stand.RemainingPerBedFoot, stand.InsteadPerBedFoot,
                stand.ShouldStay switch { true => "stay", false => "go", _ => ReportCell.Missing("its bearing years aren't given, or none is left") });
        }

        return table.Note("Brings: after labor, mean of its bearing years; what establishing it cost is spent either way.");
    }

    /// <summary>Projects ranked; null without any.</summary>
    internal ReportTable? Projects()
    {
        if (ProjectChoice.All(books.Season) is not { Count: > 0 } projects)
        {
            return null;
        }

        ReportTable table = new ReportTable("Which project first? Without a grant", notation).InOrder().Column("Project").Wrapping().Column("Costs", Look.WholeMoney).Column("Must save a year", Look.WholeMoney)
            .Column("Of hours and losses on record", Look.Percent).Column("Saves", Look.WholeMoney).Column("Left a year", Look.WholeMoney).Column("Pays from").Wrapping();
        foreach (ProjectChoice project in projects)
        {
            string unit = project.UseOf == TaskPer.BedFoot ? length.Label("bed-feet") : "crates";
            table.Row(project.Project, project.Cost, project.YearlyCost, project.PartNeeded, project.Saving, project.GainAYear,
                project.BreakEvenUse.Value is { } use ? notation.Text($"{use:#,##0} {unit} a year") : ReportCell.Missing(project.BreakEvenUse.Reason!));
        }

        return table.Note("Most left a year first, then the smallest part it must save.");
    }

    /// <summary>Tools of earlier years; null without any.</summary>
    internal ReportTable? Tools()
    {
        if (ToolLookBack.All(books.Season) is not { Count: > 0 } tools)
        {
            return null;
        }

        ReportTable table = new ReportTable("What earlier tools changed: minutes of their task before and after", notation).Column("Tool").Wrapping().Column("Minutes per").Column("Before", Look.Rate, "").Column("After", Look.Rate, "")
            .Column("Hours saved", Look.Hours).Column("Costs a year", Look.WholeMoney).Column("An hour saved cost", Look.Rate);
        foreach (ToolLookBack tool in tools)
        {
            table.Row(tool.Asset.Asset.Trim(), tool.Per == TaskPer.Crate ? "crate" : length.Label("bed-foot"), tool.Before, tool.After, tool.HoursSaved, tool.YearlyCost, tool.CostOfAnHour);
        }

        return table;
    }

    /// <summary>What the grower changed of what is assumed.</summary>
    internal ReportTable Changed()
    {
        IReadOnlyList<Assumption> shipped = FundingAssumptions.None.All(notation);
        ReportTable table = new ReportTable("What you assumed beside the records", notation).InOrder().Column("Assumption").Wrapping().Column("Value").Column("Unit").Column("What it means").Wrapping();
        foreach ((int i, Assumption assumption) in books.Assumptions.All(notation).Index())
        {
            if (assumption.Value != shipped[i].Value || assumption.Name is "coverage_ratio" or "project_life_years" or "replacement_factor")
            {
                table.Row(assumption.Title, assumption.Value ?? "", assumption.Unit.Replace("currency", notation.Currency, StringComparison.Ordinal), assumption.Meaning);
            }
        }

        return table.Note("All other assumptions stand as shipped; the workbook lists every one.");
    }
}
