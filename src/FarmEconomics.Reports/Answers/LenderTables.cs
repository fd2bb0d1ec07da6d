using System.Globalization;
using FarmEconomics.Decisions.Losses;
using FarmEconomics.Decisions.Perennials;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Funding;
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
            .Column(grant.OwnMatch == grant.Match ? "Ours" : "Match", Look.Money)
            .Column("Total", Look.Money);
        foreach (ObjectClass? kind in Enum.GetValues<ObjectClass>().Select(kind => (ObjectClass?)kind).Append(null))
        {
            (decimal funder, decimal match) = grant.Of(kind);
            if (funder + match != 0m)
            {
                table.Row(
                    kind is { } named ? Words.Phrase.Sentence(Records.Schema.Words.Of(named).Replace('-', ' ')) : "Indirect charges",
                    funder,
                    match,
                    funder + match);
            }
        }

        return table.Total("Total", grant.Funder, grant.Match, grant.Total)
            .Note(grant.InKind > 0m
                ? $"In kind: {notation.InWords(grant.InKind, Look.WholeMoney)} of {(grant.OwnMatch == grant.Match ? "ours" : "the match")}."
                : null);
    }

    /// <summary>Cash at the end of each month, this year and next.</summary>
    internal ReportTable Cash()
    {
        ReportTable table = new ReportTable(
            $"Cash by month: {books.Period.Year} by the records, {books.Period.Year + 1} by the same pattern", notation).InOrder()
            .Column("Month");
        foreach (CashFlow flow in new[] { books.LastYear, books.NextYear })
        {
            string year = flow.Months[0].Year.ToString(CultureInfo.InvariantCulture);
            table.Column($"In {year}", Look.WholeMoney).Column($"Out {year}", Look.WholeMoney)
                .Column($"End of month {year}", Look.WholeMoney);
        }

        for (int i = 0; i < CashFlow.MonthCount; i++)
        {
            table.Row([
                books.LastYear.Months[i].ToString("MMM", CultureInfo.InvariantCulture),
                .. Month(books.LastYear, i),
                .. Month(books.NextYear, i)
            ]);
        }

        return table.Total(["Year", .. Year(books.LastYear), .. Year(books.NextYear)]);

        IEnumerable<ReportCell> Month(CashFlow flow, int i) => books.Tax.NetUnknown is { } why
            ? [ReportCell.Missing(why), ReportCell.Missing(why), ReportCell.Missing(why)]
            : [
                flow.In[i],
                flow.Out[i],
                flow.OpeningCash is null
                    ? ReportCell.Missing("no balance sheet says what cash there was at the beginning")
                    : flow.Closing[i]
            ];

        IEnumerable<ReportCell> Year(CashFlow flow) => books.Tax.NetUnknown is { } why
            ? [ReportCell.Missing(why), ReportCell.Missing(why), default]
            : [flow.In.Sum(), flow.Out.Sum(), default];
    }

    /// <summary>What cash of next year is made of.</summary>
    internal ReportTable CashLines()
    {
        ReportTable table = new ReportTable("What comes in and goes out in a year", notation).InOrder().Column("Line")
            .Column($"{books.Period.Year}", Look.WholeMoney).Column($"{books.Period.Year + 1}", Look.WholeMoney);
        if (books.Tax.NetUnknown is { } why)
        {
            return table.Note($"Not known: {why}.");
        }

        // What no row of the books tells of, loans and a project, is a line of one year only.
        IEnumerable<(CashFlowLine? Last, CashFlowLine? Next)> lines =
        [
            .. books.LastYear.Lines.Select(line => ((CashFlowLine?)line, Same(books.NextYear, line))),
            .. books.NextYear.Lines.Where(line => Same(books.LastYear, line) is null)
                .Select(line => ((CashFlowLine?)null, (CashFlowLine?)line)),
        ];
        foreach ((CashFlowLine? last, CashFlowLine? next) in lines.OrderByDescending(pair => (pair.Last ?? pair.Next)!.IsIn))
        {
            table.Row((last ?? next)!.Name, Signed(last), Signed(next));
        }

        return table;

        static CashFlowLine? Same(CashFlow flow, CashFlowLine line) =>
            line.Kind is { } kind ? flow.Lines.FirstOrDefault(other => other.Kind == kind) : null;

        static ReportCell Signed(CashFlowLine? line) => line is null ? default(ReportCell) : line.IsIn ? line.Total : -line.Total;
    }

    /// <summary>The operating line of credit; null where none is needed.</summary>
    internal ReportTable? Line() => books.Line is not { Drawn: > 0m } line
        ? null
        : new ReportTable("Operating line of credit next year", notation)
            .InOrder()
            .Of<(int Index, CreditLineMonth Month)>()
            .Column("Month", one => books.NextYear.Months[one.Index].ToString("MMM", CultureInfo.InvariantCulture))
            .Column("In less out", Look.WholeMoney, one => one.Month.Net)
            .Column("Interest", Look.Money, one => one.Month.Interest)
            .Column("Drawn", Look.WholeMoney, one => one.Month.Drawn)
            .Column("Paid back", Look.WholeMoney, one => one.Month.Repaid)
            .Column("Cash after it", Look.WholeMoney, one => one.Month.Closing)
            .Column("Owed", Look.WholeMoney, one => one.Month.Owed)
            .Rows(line.Months.Index());

    /// <summary>The measures by group, without the inputs.</summary>
    internal ReportTable Measures()
    {
        ReportTable table = new ReportTable($"Financial measures of {books.Period.Year}", notation).InOrder()
            .Column("Measure").Wrapping().Column("Value").Column("How it is worked out").Wrapping();
        foreach (IGrouping<string, Measure> group in books.Measures.GroupBy(measure => measure.Group))
        {
            table.Group(Words.Phrase.Sentence(group.Key));
            foreach (Measure measure in group)
            {
                table.Row(measure.Name, Value(measure), measure.Formula);
            }
        }

        return table;
    }

    private ReportCell Value(Measure measure) => measure.Value.Value is not { } value
        ? ReportCell.Missing(measure.Value.Reason!)
        : measure.Unit switch
        {
            MeasureUnit.Percent => notation.Number(value, Look.Percent),
            MeasureUnit.Currency => notation.InWords(value, Look.WholeMoney),
            _ => notation.Text($"{value:#,##0.00}"),
        };

    /// <summary>Every loan by year: paid, of which interest, and what is owed.</summary>
    internal ReportTable? Loans()
    {
        List<LoanSchedule> loans = [.. books.NewLoan is { } asked ? books.Loans.Append(asked) : books.Loans];
        if (loans.Count == 0)
        {
            return null;
        }

        ReportTable table = new ReportTable("Loans by year", notation).InOrder().Column("Year").Column("Interest", Look.Money)
            .Column("Principal", Look.Money).Column("Paid", Look.Money).Column("Owed at the end", Look.Money);
        foreach (LoanSchedule loan in loans.Where(loan => loan.Payments[^1].Date >= books.Period.Start))
        {
            LoanTerms terms = loan.Terms;
            table.Group(
                Words.Phrase.Sentence(terms.Name),
                notation.Text($"{notation.InWords(terms.Principal, Look.WholeMoney)} at {terms.AnnualRate * 100m:0.##}%, "
                    + $"{terms.Payments} payments to {loan.Payments[^1].Date:MMMM yyyy}"));
            foreach (IGrouping<int, LoanPayment> year in loan.Payments.GroupBy(payment => payment.Date.Year)
                .Where(year => year.Key >= books.Period.Year))
            {
                table.Row(
                    year.Key.ToString(CultureInfo.InvariantCulture),
                    year.Sum(payment => payment.Interest),
                    year.Sum(payment => payment.Principal),
                    year.Sum(payment => payment.Payment),
                    year.Last().Owed);
            }
        }

        return table;
    }

    /// <summary>Tax depreciation of the year, asset by asset.</summary>
    internal ReportTable Depreciation()
    {
        int year = books.Period.Year;
        return new ReportTable($"Tax depreciation of {year}, and what its class would be", notation)
            .Note("Classes are for a tax preparer to confirm: IRS Publications 946 and 225.")
            .Of<AssetDepreciation>()
            .Column("Asset", asset => asset.Asset.Asset.Trim()).Wrapping()
            .Column("Basis", Look.WholeMoney, asset => asset.Basis)
            .Column("Class used", Look.Count, asset => Given(asset.RecoveryYears), "years")
            .Column("Suggested", Look.Count, asset => TaxSheet.Suggested(asset.Asset), "years")
            .Column($"{year}", Look.Money, asset => Given(asset.In(year)))
            .Column($"{year + 1}", Look.Money, asset => Given(asset.In(year + 1)))
            .Rows(books.Tax.Depreciation.Where(asset => asset.Asset.Retired is not { } retired || retired.Year >= year));

        static ReportCell Given(decimal? of) => of is { } known ? known : ReportCell.Missing("no depreciation class given");
    }

    /// <summary>One line a crop, last season and next.</summary>
    internal ReportTable Crops()
    {
        return new ReportTable($"What each crop earned in {books.Period.Year}, and would by the factors assumed", notation)
            .Of<CropWriteUp>()
            .Column("Crop", crop => crop.Budget.Name)
            .Column(length.Label("Bed-feet"), Look.Quantity, crop => crop.Budget.Sums.BedFeet.Value)
            .Column("Brought in", Look.WholeMoney, crop => Last(crop, WriteUpItem.Output, crop.Budget.Known.Value))
            .Column("Gross margin", Look.WholeMoney, crop => Last(crop, WriteUpItem.GrossMargin, crop.Budget.Known.NoGrossMargin))
            .Column("Net return", Look.WholeMoney, crop => Last(crop, WriteUpItem.NetReturn, crop.Budget.Known.NoFullNetReturn))
            .Column("Next: brought in", Look.WholeMoney, crop => Next(crop, WriteUpItem.Output, crop.Budget.Known.Value))
            .Column("Next: net return", Look.WholeMoney, crop => Next(crop, WriteUpItem.NetReturn, crop.Budget.Known.NoFullNetReturn))
            .Rows(books.Crops);

        static ReportCell Last(CropWriteUp crop, WriteUpItem item, string? why) =>
            why is null ? crop.Lines.First(line => line.Item == item).Last : ReportCell.Missing(why);

        static ReportCell Next(CropWriteUp crop, WriteUpItem item, string? why) =>
            why is null ? crop.Lines.First(line => line.Item == item).Next : ReportCell.Missing(why);
    }

    /// <summary>Perennials; null without any.</summary>
    internal ReportTable? Stands()
    {
        if (Stand.Of(books.Review, books.Period.Year) is not { Count: > 0 } stands)
        {
            return null;
        }

        string per = length.Label("a bed-foot");
        return new ReportTable("Perennials with their establishment as an asset", notation)
            .Note("Brings: after labor, mean of its bearing years; what establishing it cost is spent either way.")
            .Of<Stand>()
            .Column("Planting", stand => stand.Planting.Name).Wrapping()
            .Column("Establishment", Look.WholeMoney, stand => stand.EstablishmentCost)
            .Column("Its part a year", Look.Money, stand => stand.AnnualPart)
            .Column("Net return with it", Look.WholeMoney, stand => stand.NetOf(stand.Years[^1]))
            .Column($"Brings a year, {per}", Look.Rate, stand => stand.RemainingPerBedFoot)
            .Column($"Other beds, {per}", Look.Rate, stand => stand.InsteadPerBedFoot)
            .Column("Stay or go", stand => stand.ShouldStay switch
            {
                true => "stay",
                false => "go",
                _ => ReportCell.Missing("its bearing years aren't given, or none is left"),
            })
            .Rows(stands);
    }

    /// <summary>Projects ranked; null without any.</summary>
    internal ReportTable? Projects()
    {
        return ProjectChoice.All(books.Season) is not { Count: > 0 } projects
            ? null
            : new ReportTable("Which project first? Without a grant", notation)
                .InOrder()
                .Note("Most left a year first, then the smallest part it must save.")
                .Of<ProjectChoice>()
                .Column("Project", project => project.Project).Wrapping()
                .Column("Costs", Look.WholeMoney, project => project.Cost)
                .Column("Must save a year", Look.WholeMoney, project => project.YearlyCost)
                .Column("Of hours and losses on record", Look.Percent, project => project.PartNeeded)
                .Column("Saves", Look.WholeMoney, project => project.Saving)
                .Column("Left a year", Look.WholeMoney, project => project.GainAYear)
                .Column("Pays from", PaysFrom).Wrapping()
                .Rows(projects);

        ReportCell PaysFrom(ProjectChoice project) => project.BreakEvenUse.Value is { } use
            ? notation.Text($"{use:#,##0} {(project.UseOf == TaskPer.BedFoot ? length.Label("bed-feet") : "crates")} a year")
            : ReportCell.Missing(project.BreakEvenUse.Reason!);
    }

    /// <summary>Tools of earlier years; null without any.</summary>
    internal ReportTable? Tools() => ToolLookBack.All(books.Season) is not { Count: > 0 } tools
        ? null
        : new ReportTable("What earlier tools changed: minutes of their task before and after", notation)
            .Of<ToolLookBack>()
            .Column("Tool", tool => tool.Asset.Asset.Trim()).Wrapping()
            .Column("Minutes per", tool => tool.Per == TaskPer.Crate ? "crate" : length.Label("bed-foot"))
            .Column("Before", Look.Rate, tool => tool.Before, "")
            .Column("After", Look.Rate, tool => tool.After, "")
            .Column("Hours saved", Look.Hours, tool => tool.HoursSaved)
            .Column("Costs a year", Look.WholeMoney, tool => tool.YearlyCost)
            .Column("An hour saved cost", Look.Rate, tool => tool.CostOfAnHour)
            .Rows(tools);

    /// <summary>What the grower changed of what is assumed.</summary>
    internal ReportTable Changed()
    {
        IReadOnlyList<Assumption> shipped =
            (FundingAssumptions.None with { Project = FundingAssumptions.None.Project.For(books.Season.Records, null) }).All(notation);
        return new ReportTable("What you assumed beside the records", notation)
            .InOrder()
            .Note("All other assumptions stand as shipped; the workbook lists every one.")
            .Of<Assumption>()
            .Column("Assumption", assumption => assumption.Title).Wrapping()
            .Column("Value", assumption => assumption.Value ?? "")
            .Column("Unit", assumption => assumption.Unit.Replace("currency", notation.Currency, StringComparison.Ordinal))
            .Column("What it means", assumption => assumption.Meaning).Wrapping()
            .Rows(books.Assumptions.All(notation).Where((one, i) => one.Value != shipped[i].Value
                || one.Name is "coverage_ratio" or "project_life_years" or "replacement_factor"));
    }
}
