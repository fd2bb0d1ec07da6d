using FarmEconomics.Funding;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Frame;
using FarmEconomics.Reports.Funding;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Answers;

/// <summary>The blocks of the lender's page.</summary>
public enum LenderBlock
{
    /// <summary>The finding.</summary>
    Headline,

    /// <summary>Everything else, by part.</summary>
    Details,
}

/// <summary>What may be asked of it.</summary>
public sealed record LenderParameters : ReportParameters
{
    /// <summary>The project.</summary>
    [Field("Project", "one of funding.csv; empty = the first one", Choice = "project")]
    public string Project { get; init; } = "";

    /// <summary>Assumptions beside the records.</summary>
    [Field("Assumptions beside the records", "\"hours_saved=60; losses_saved_percent=50; new_loan=5000; new_loan_percent=6; new_loan_years=5\"", Unit = "name=value")]
    public string Assumptions { get; init; } = "";

    /// <summary>Tax depreciation classes.</summary>
    [Field("Tax depreciation classes", "yours to give: \"Truck=5; Solar panels and mounts=5\"", Unit = "name=years")]
    public string Classes { get; init; } = "";
}

/// <summary>The budget for a lender or a funder.</summary>
public sealed class LenderReport : Report<LenderParameters>
{
    /// <inheritdoc/>
    public override ReportId Id => ReportId.Lender;

    /// <inheritdoc/>
    public override string? Tab => "Lender";

    /// <inheritdoc/>
    public override bool StandsAlone => true;

    /// <inheritdoc/>
    public override IReadOnlyList<Block> Make(ReviewedFarm farm, LenderParameters parameters, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(parameters);
        FundingWriteUp books = WriteUpReport.Make(farm.Review, farm.Season.CropYear, parameters.Project, parameters.Assumptions, parameters.Classes);
        return
        [
            new HeadlineBlock(LenderBlock.Headline, $"{farm.Settings.FarmName}: the farm's books for {books.Period.Year}", WriteUpReport.Answer(books), null),
            .. Carried.Of(LenderBlock.Details, "cash-figure", CashPlot.Of(books)),
            Carried.Fold(LenderBlock.Details, "cash", "Cash, month by month", ("words", CashPlot.Sentence(books)), ("last", MoneySheets.Cash(books, next: false, whole: true).Table), ("next", MoneySheets.Cash(books, next: true, whole: true).Table)),
            Carried.Fold(LenderBlock.Details, "tax", "The farm by tax line", ("tax", StatementSheets.Tax(books).Table), ("bridge", StatementSheets.Bridge(books).Table), ("enterprise", StatementSheets.Enterprise(books).Table), ("depreciation", StatementSheets.Depreciation(books).Table)),
            Carried.Fold(LenderBlock.Details, "balance", "What is owned and owed",
                ("balance", Show(MoneySheets.Balance(books), "There is no balance sheet within a month of either end of the year: enter one in balances.csv.")),
                ("income", Show(MoneySheets.Income(books), "Accrual adjustments need balance sheets at both ends of the year.")), ("equity", Show(MoneySheets.Equity(books), "The statement of equity needs balance sheets at both ends of the year."))),
            Carried.Fold(LenderBlock.Details, "measures", "Measures and debt", ("measures", MoneySheets.Measures(books).Table), ("coverage", MoneySheets.Coverage(books).Table)),
            Carried.Fold(LenderBlock.Details, "project", "The project", ("grant", Show(ProjectSheets.Grant(books), "There is no funding.csv, so no project to ask money for.")), ("narrative", Show(ProjectSheets.Narrative(books), "No project.")),
                ("savings", Show(ProjectSheets.Savings(books), "No project.")), ("investment", Show(ProjectSheets.Investment(books), "To see whether it pays, enter what it will save a year in hours, losses and power.")), ("swings", Show(ProjectSheets.Swings(books), ""))),
            Carried.Fold(LenderBlock.Details, "crops", "The crops, last season and next", ("overview", ProjectSheets.CropOverview(books).Table), ("largest", ProjectSheets.Crops(books, books.Crops.OrderByDescending(crop => crop.Budget.Output.Amount).FirstOrDefault()?.Budget.Name).Table)),
            Carried.Fold(LenderBlock.Details, "rests-on", "What it rests on", ("sure", WriteUpReport.HowSure(books)), ("assumptions", ProjectSheets.Assumptions(books).Table), ("checks", WriteUpReport.RequireChecks(books)), ("cautions", new Prose(string.Join("\n\n", WriteUpReport.Cautions)))),
        ];
    }

    /// <inheritdoc/>
    public override (string Question, Prose Answer)? InALine(ReviewedFarm farm)
    {
        ArgumentNullException.ThrowIfNull(farm);
        FundingWriteUp books = farm.WriteUp;
        return books.NextYear.OpeningCash is null || books.Tax.NetUnknown is not null ? null
            : ("Will cash last?", new Prose($"{(books.NextYear.LowPoint >= 0m ? "Yes. " : "Not all year. ")}The low point is the end of {books.NextYear.Months[books.NextYear.LowMonth].ToString("MMMM yyyy", System.Globalization.CultureInfo.InvariantCulture)}, {BlockNumber.Of(books.NextYear.LowPoint, Look.WholeMoney, farm.Notation)}, should next year repeat this one."));
    }

    private static object Show(FundingSheet? sheet, string whyNot) => sheet is null ? whyNot : sheet.Table;
}
