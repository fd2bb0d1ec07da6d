using FarmEconomics.Costing;
using FarmEconomics.Funding;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Funding;

/// <summary>Taxes entered or estimated, and suggested depreciation classes.</summary>
public static class TaxSheet
{
    /// <summary>Self-employment and income tax.</summary>
    /// <param name="writeUp">The write-up.</param>
    public static FundingSheet Taxes(FundingWriteUp writeUp)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        TaxView taxes = writeUp.Taxes;
        ReportTable table = new ReportTable($"Taxes on the farm's income of {writeUp.Period.Year}", writeUp.Season.Notation)
            .InOrder()
            .Column("Tax")
            .Column("Amount", Look.Money)
            .Column("Entered or estimated")
            .Column("How")
            .Wrapping();
        FundingSheet sheet = new("Taxes", table);
        foreach (TaxAmount tax in new[] { taxes.SelfEmployment, taxes.Income })
        {
            table.Row(tax.Name, tax.Amount, tax.Source == TaxSource.Entered ? "entered" : "estimate", tax.How);
        }

        table.Total("Both", taxes.Total, "", "");
        if (taxes.Total.IsAvailable)
        {
            sheet.Live(2, 1, "{0,1}+{1,1}");
        }

        table.Note($"Estimates follow the forms of tax year {TaxView.FormYear}, for one owner without other earnings; "
            + $"they are no return, and a tax preparer decides. "
            + Paid(writeUp));
        return sheet;
    }

    private static string Paid(FundingWriteUp writeUp) => writeUp.Tax.ExpensesUnknown is { } why
        ? $"What the books paid of tax in {writeUp.Period.Year} isn't known: {why}."
        : $"The books paid {writeUp.Season.Notation.InWords(writeUp.Taxes.Paid, Look.Money)} of tax in {writeUp.Period.Year}, "
            + "whichever year it was for; repayment capacity counts that, unless both taxes are entered.";

    /// <summary>The depreciation class suggested for each asset; null without assets.</summary>
    /// <param name="writeUp">The write-up.</param>
    public static FundingSheet? Classes(FundingWriteUp writeUp)
    {
        ArgumentNullException.ThrowIfNull(writeUp);
        if (writeUp.Tax.Depreciation.Count == 0)
        {
            return null;
        }

        ReportTable table = new ReportTable("Depreciation classes, for a tax preparer to confirm", writeUp.Season.Notation)
            .Column("Asset")
            .Column("What it is for tax")
            .Column("Suggested", Look.Count, "years")
            .Column("Used here", Look.Count, "years");
        foreach (AssetDepreciation asset in writeUp.Tax.Depreciation)
        {
            table.Row(
                asset.Asset.Asset.Trim(),
                asset.Asset.TaxKind is { } kind ? FarmEconomics.Records.Schema.Words.Of(kind).Replace('-', ' ') : "",
                Suggested(asset.Asset),
                asset.RecoveryYears is { } used ? used : ReportCell.Missing("no depreciation class given")
            );
        }

        return new FundingSheet(
            "Depreciation classes",
            table.Note("Recovery periods of IRS Publications 946 (2025) and 225. Solar that came into service after 2024 is contested; "
                + "used equipment, cost recovery all at once (section 179, bonus) and the mid-quarter convention are for the preparer. "
                + "class_use=suggested counts what is suggested where no class is given."));
    }

    /// <summary>The class suggested for an asset, or why none is.</summary>
    /// <param name="asset">The asset.</param>
    internal static ReportCell Suggested(AssetRow asset) => asset.TaxKind is not { } kind
        ? ReportCell.Missing("tax_kind isn't given in assets")
        : DepreciationClasses.Suggested(kind) is { } years ? years : ReportCell.Missing("land carries no depreciation");

    /// <summary>Early retirements of the year as sentences.</summary>
    /// <param name="writeUp">The write-up.</param>
    internal static IEnumerable<string> RetiredEarly(FundingWriteUp writeUp)
    {
        Notation notation = writeUp.Season.Notation;
        foreach (EarlyRetirement asset in writeUp.RetiredEarly)
        {
            string what = notation.Text(
                $"{asset.Asset.Asset.Trim()} was retired after {asset.YearsServed:0.#} of {asset.Asset.LifeYears:0.#} years"
            );
            yield return asset.Loss.Value is { } loss ? $"{what}: a loss of {notation.InWords(loss, Look.WholeMoney)}, charged to no crop."
                : asset.Unrecovered.Value is { } open
                ? $"{what}: {notation.InWords(open, Look.WholeMoney)} of its cost was not recovered, "
                    + $"less what it fetched ({asset.Loss.Reason}); charged to no crop."
                : $"{what}; what of its cost was not recovered is not known ({asset.Unrecovered.Reason}).";
        }
    }

    /// <summary>What full cost leaves out, as sentences.</summary>
    /// <param name="writeUp">The write-up.</param>
    internal static IEnumerable<string> LeftOut(FundingWriteUp writeUp)
    {
        FarmSettings settings = writeUp.Season.Settings;
        if (settings.LandRent is null && settings.LandValue is null)
        {
            yield return "Full cost holds no charge for the farm's own land (land_value or land_rent among the settings).";
        }

        yield return "Full cost holds the owners' hours but no charge for management beyond them, "
            + "and interest on equipment and buildings but none on the money tied up in a season's inputs.";
    }
}
