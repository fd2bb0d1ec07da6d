using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Funding;
using FarmEconomics.Reports.Plots;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Answers;

/// <summary>The one page a loan officer reads, in sentences and figures.</summary>
internal sealed class LenderWords(FundingWriteUp books)
{
    private const decimal SquareFeetPerAcre = 43_560m;
    private const decimal SquareMetersPerHectare = 10_000m;
    private readonly Notation notation = books.Season.Notation;

    private DebtCoverage Now => books.Coverage[^1];

    /// <summary>What is asked for, else what the farm earned.</summary>
    internal string Headline =>
        (books.Grant, books.NewLoan) switch
        {
            ({ } grant, { } loan) =>
                $"{grant.Project} for {Money(grant.Total)}: {Money(grant.Funder)} asked as a grant, "
                    + $"{Money(loan.Terms.Principal)} as a loan",
            ({ } grant, null) => $"{grant.Project} for {Money(grant.Total)}: {Money(grant.Funder)} asked, {Money(grant.OwnMatch)} our own"
                + (grant.OwnMatch == grant.Match ? "" : $", {Money(grant.Match - grant.OwnMatch)} from others"),
            (null, { } loan) => $"A loan of {Money(loan.Terms.Principal)} is asked for",
            _ => books.Accrual is { } income ? $"In {books.Period.Year} the farm had {Net(income.NetFarmIncome)}"
            : books.Tax.NetUnknown is null
                ? books.Tax.NetBeforeDepreciation >= 0m
                    ? $"In {books.Period.Year} the farm had {Money(books.Tax.NetBeforeDepreciation)} left before depreciation"
                    : $"In {books.Period.Year} the farm took in {BlockNumber.Size(books.Tax.NetBeforeDepreciation, notation)} less than "
                        + $"it paid out, before depreciation"
            : $"What the farm earned in {books.Period.Year} isn't known",
        };

    /// <summary>Two sentences on the farm.</summary>
    internal Prose Why => new(string.Join(' ', new[] { Farm(), Debt() }.Where(sentence => sentence.Length > 0)));

    /// <summary>How sure that is, in a line.</summary>
    internal string HowSure
    {
        get
        {
            string next = $"{books.Period.Year + 1} repeats {books.Period.Year} month by month; it is not a forecast.";
            return books.Tax.NetUnknown is { } unknown
                ? $"How sure: {unknown}."
                : $"How sure: the totals agree with the records to the cent; {next}";
        }
    }

    /// <summary>At most four figures.</summary>
    internal FiguresBlock Figures => new(LenderBlock.Figures, [Income(), Coverage(), DebtToAssets(), SalesMayFall()]);

    /// <summary>The sentence over the chart of cash.</summary>
    internal string CashHeading => books.NextYear.OpeningCash is null || books.Tax.NetUnknown is not null ? "Cash by month"
        : books.NextYear.LowPoint >= books.Assumptions.Debt.MinimumCash
            ? $"Cash is lowest in {Month(books.NextYear)}, and still {Money(books.NextYear.LowPoint)}"
            : $"Cash is lowest in {Month(books.NextYear)}: {Money(books.NextYear.LowPoint)}";

    /// <summary>What the line of credit, and the time the grant comes, do to cash.</summary>
    internal Prose CashWords =>
        new(
            string.Join(
                ' ',
                new[] { books.Line is { Drawn: 0m } ? "" : DebtSheets.Sentence(books), WriteUpReport.GrantLate(books) }.Where(sentence =>
                    sentence.Length > 0
                )
            )
        );

    /// <summary>What the project must save, and whether it does; null without a project.</summary>
    internal ProseBlock? Project
    {
        get
        {
            if (books.Investment is not { } investment)
            {
                return null;
            }

            string text = WriteUpReport.MustSave(investment, notation);
            text += investment is { WithGrant: { } with, WithoutGrant: { } without }
                ? $"By what is assumed it saves {Money(investment.YearlySaving.Value!.Value)} a year: "
                    + $"worth {Money(with.NetPresentValue)} today over its life with the grant, {Money(without.NetPresentValue)} without."
                : "";
            return text.Length == 0
                ? null
                : new ProseBlock(
                    LenderBlock.MustSave,
                    investment.NeededWithGrant.Yearly.Value is { } yearly
                        ? $"With the grant the project costs the farm {Money(yearly)} a year"
                        : "What the project must save",
                    new Prose(text.Trim())
                );
        }
    }

    private IEnumerable<string> GrantMonth() => WriteUpReport.GrantLate(books).Length == 0 ? []
        : [$"**The grant.** It is counted in {Looks.Month(books.GrantComes!.Value)}; for another month, give its number as grant_month."];

    /// <summary>What to look after before it is sent.</summary>
    internal Prose BeforeSending
    {
        get
        {
            List<string> points = [];
            if (books.Investment is { Missing: { } missing })
            {
                points.Add($"**What it saves.** {Prose.Text(Phrase.Sentence(missing))}.");
            }

            if (books.SheetsUnknown is { } sheets)
            {
                points.Add($"**Balance sheets.** {Prose.Text(Phrase.Sentence(sheets))}.");
            }
            else if (
                books is { Opening: { } opening, Closing: { } closing, Tax.NetUnknown: null }
                && OwnerEquity.CashNotInTheRecords(books.Cash, opening, closing) is var gap and not 0m
            )
            {
                points.Add($"**Cash.** {BlockNumber.Of(Math.Abs(gap), Look.Money, notation)} that {(gap > 0m ? "came in" : "left")} in "
                    + $"{books.Period.Year} has no record; a lender will ask.");
            }

            if (WriteUpReport.LoansUnpaid(books) is { Length: > 0 } unpaid)
            {
                points.Add($"**Loans.** {Prose.Text(unpaid)}");
            }

            points.AddRange(GrantMonth());
            points.AddRange(WithoutClass());
            if (books.Grant is { } grant)
            {
                points.AddRange(
                    GrantFormSheet.Thresholds(grant, notation).Select(text => $"**Equipment or supplies.** {Prose.Text(text)}")
                );
            }

            points.AddRange(TaxSheet.RetiredEarly(books).Select(text => $"**Retired early.** {Prose.Text(text)}"));
            points.AddRange(TaxSheet.LeftOut(books).Select(text => $"**Left out.** {text}"));
            return new Prose(string.Join('\n', points.Select(point => "- " + point)));
        }
    }

    private IEnumerable<string> WithoutClass()
    {
        if (books.Tax.WithoutClass.Count is > 0 and var without)
        {
            yield return $"**Depreciation classes.** {notation.Count(without, "asset has", "assets have")} none, "
                + $"so Schedule F line 14 {WriteUpReport.Line14(books.Tax)}; ask your tax preparer.";
        }
    }

    private string Money(decimal amount) => BlockNumber.Of(amount, Look.WholeMoney, notation);

    private string Net(decimal income) =>
        $"a net farm {(income < 0m ? "loss" : "income")} of {BlockNumber.Size(income, notation)}";

    private static string Month(CashFlow flow) => Looks.Month(flow.Months[flow.LowMonth]);

    private string Farm()
    {
        FarmSettings settings = books.Season.Settings;
        decimal width = settings.StandardBedWidthIn;
        decimal area = settings.LengthUnit == LengthUnit.M
            ? BedMap.BedsOf(books.Season).Sum(bed => bed.LengthFt * (bed.WidthIn ?? width) / 100m) / SquareMetersPerHectare
            : BedMap.BedsOf(books.Season).Sum(bed => bed.LengthFt * (bed.WidthIn ?? width) / 12m) / SquareFeetPerAcre;
        string size = notation.Text($"{area:0.##} {(settings.LengthUnit == LengthUnit.M ? "hectares" : "acres")} of beds");
        string grows = $"{Prose.Text(settings.FarmName)} grows {notation.Count(books.Season.Crops.Count, "crop")} on {size}";
        return books.Tax.IncomeUnknown is not null ? $"{grows}."
            : books.Accrual is { } income
            ? $"{grows}; in {books.Period.Year} it took in {Money(books.Tax.GrossIncome)} and had "
                + $"{Net(income.NetFarmIncome)} before the owners' pay."
            : $"{grows}; in {books.Period.Year} it took in {Money(books.Tax.GrossIncome)}.";
    }

    // Under 1 it is no "times over": what there is doesn't reach, or there is nothing.
    private string Debt()
    {
        string loan = books.NewLoan is { Terms.IsTermDebt: true } ? ", the loan asked for included"
            : books.Coverage.Count > 1 ? $" in {books.Period.Year + 1}"
            : "";
        return Now.Coverage.Value switch
        {
            null => "",
            <= 0m => $"After household bills nothing is left to pay what falls due on debt{loan}.",
            < 1m and var part => $"After household bills it can pay {Phrase.Percent(decimal.Floor(part * 100m) / 100m)} of "
                + $"what falls due on debt{loan}.",
            { } times => notation.Text($"After household bills it can pay what falls due on debt {times:0.0} times over{loan}."),
        };
    }

    private KeyFigure Income() =>
        books.Accrual is { } income
            ? new(
                "net-farm-income",
                Money(income.NetFarmIncome),
                income.NetFarmIncome,
                $"net farm income {books.Period.Year}, accrual, after {Money(income.Depreciation)} of depreciation"
            )
        : books.Tax.NetUnknown is { } unknown ? new("net-farm-income", "", null, $"net income isn't known: {unknown}")
        : new(
            "net-cash",
            Money(books.Tax.NetBeforeDepreciation),
            books.Tax.NetBeforeDepreciation,
            $"cash income less cash expenses {books.Period.Year}, before depreciation"
        );

    private KeyFigure Coverage() =>
        Now.Coverage.Value is { } times
            ? new(
                "coverage",
                BlockNumber.Typeset(notation.Text($"{times:0.0}\u00d7")),
                times,
                notation.Text($"repayment capacity over debt payments, after household bills; {Now.Wanted:0.##} must be kept")
            )
            : new("coverage", "", null, $"coverage isn't known: {WhyNot(Now.Coverage)}");

    private KeyFigure DebtToAssets() =>
        books.Closing is { AssetsAtValue: > 0m } sheet
            ? new(
                "debt-to-assets",
                BlockNumber.Percent(sheet.Liabilities / sheet.AssetsAtValue, notation),
                sheet.Liabilities / sheet.AssetsAtValue,
                $"debt to assets; equity {Money(sheet.EquityAtValue)} at the grower's values"
            )
            : new("debt-to-assets", "", null, "debt to assets isn't known: no balance sheet at the end of the year");

    // The one thing to write down first; appendix E tells everything that is missing.
    private string WhyNot(Units.Result figure) => books.Tax.NetUnknown ?? books.SheetsUnknown ?? figure.Reason!;

    private KeyFigure SalesMayFall() =>
        Now.SalesMayFall.Value is { } part
            ? new(
                "sales-may-fall",
                BlockNumber.Percent(Math.Abs(part), notation),
                part,
                part < 0m
                    ? notation.Text($"more in sales is what coverage of {Now.Wanted:0.##} would take")
                    : notation.Text($"sales can fall this far before coverage drops under {Now.Wanted:0.##}")
            )
            : new("sales-may-fall", "", null, $"how far sales may fall isn't known: {WhyNot(Now.SalesMayFall)}");
}
