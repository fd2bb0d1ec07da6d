using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Perennials;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;

namespace FarmEconomics.Reports.Decisions;

/// <summary>Perennials: what establishing them took, what each year brings with its part of that, and whether to keep them.</summary>
public static class StandTables
{
    /// <summary>One row a stand; null where the farm has no perennial that year.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="cropYear">The crop year.</param>
    public static ReportTable? Stands(FarmReview review, int cropYear)
    {
        ArgumentNullException.ThrowIfNull(review);
        if (Stand.Of(review, cropYear) is not { Count: > 0 } stands)
        {
            return null;
        }

        FarmSettings settings = review.Records.Settings;
        string per = settings.LengthUnit.Label("a bed-foot");
        ReportTable table = new ReportTable($"Perennials in {cropYear}", settings.Notation).Of<Stand>()
            .Column("Planting", stand => stand.Planting.Name)
            .Column("Crop", stand => stand.Planting.Crop.Name)
            .Column("Establishment", Look.Money, stand => stand.EstablishmentCost)
            .Column("Bears, years", Look.Quantity, stand => stand.BearingYears)
            .Column("Borne so far", Look.Count, stand => stand.Borne)
            .Column("Its part a year", Look.Money, stand => stand.AnnualPart)
            .Column($"Net return {cropYear}, with that part", Look.Money, stand => stand.NetOf(stand.Years[^1]))
            .Column($"Brings a year, {per}", Look.Rate, stand => stand.RemainingPerBedFoot)
            .Column($"Other beds bring, {per}", Look.Rate, stand => stand.InsteadPerBedFoot)
            .Column("Stay or go", stand => Verdict(stand))
            .Rows(stands);
        return table.Note("Establishment: full cost of the years before the first bearing season, with interest; "
            + "its part = that x the capital recovery factor over the bearing years. "
                + "Where the crop's bearing_years is given, the season's budgets carry it the same way, as a line of their own.")
            .Note("Stay or go: what it brings a year after labor (the mean of its bearing years) against the beds of the same cover "
                + "without perennials in the year reviewed. What establishing it cost is spent either way.");
    }

    private static string Verdict(Stand stand) => stand.ShouldStay switch
    {
        true => "stay",
        false => "go",
        _ when stand.Remaining.Value == 0m => "past its bearing years: plant again only if a new stand pays",
        _ => Looks.NotAvailable,
    };
}
