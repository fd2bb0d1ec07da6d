using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions.Changes;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.RecordsCheck;

/// <summary>
/// Gaps that are no errors but weaken the answer: hours not logged by crop, weeks sold without a harvest, produce without a price.
/// </summary>
public static class RecordGaps
{
    /// <summary>Hours of each crop by where they come from, the weakest first.</summary>
    public static ReportTable HoursByCrop(SeasonReview season)
    {
        string? reason = season.Known.Hours;
        List<(EnterpriseBudget Crop, decimal Logged, decimal Pooled)> crops = season
            .Crops.Select(crop => (Crop: crop, Logged: Logged(season, crop)))
            .Select(row => (row.Crop, row.Logged, row.Crop.LaborHours.Value - row.Logged - row.Crop.Sums.EstimatedHours))
            .ToList();
        ReportTable table = new ReportTable($"Each crop's hours of {season.CropYear}, least logged first", season.Notation)
            .Opens()
            .Of<(EnterpriseBudget Crop, decimal Logged, decimal Pooled)>()
            .Column("Crop", row => row.Crop.Name)
            .Column("Labor hours", Look.Hours, row => ReportCell.Known(row.Crop.LaborHours.Value, reason), part: FigurePart.Labor)
            .Column("logged to it", Look.Hours, row => ReportCell.Known(row.Logged, reason))
            .Column("divided", Look.Hours, row => ReportCell.Known(row.Pooled, reason))
            .Column("estimated", Look.Hours, row => ReportCell.Known(row.Crop.Sums.EstimatedHours, reason))
            .Column("Logged", Look.Percent, row => reason is null
                ? Result.Of(row.Logged, row.Crop.LaborHours.Value, "no hours reached this crop")
                : Result.NotAvailable(reason))
            .Rows(crops.OrderBy(row => row.Crop.LaborHours.Value > 0m ? row.Logged / row.Crop.LaborHours.Value : -1m));
        decimal logged = crops.Sum(row => row.Logged);
        return reason is not null ? table : table.Total(
            "All crops",
            season.Farm.LaborHours,
            logged,
            crops.Sum(row => row.Pooled),
            season.Farm.Sums.EstimatedHours,
            Result.Of(logged, season.Farm.LaborHours.Value, "no hours"));
    }

    /// <summary>Crops with no hour logged to them or to a planting of them.</summary>
    public static IReadOnlyList<string> CropsWithoutLoggedHours(SeasonReview season) =>
        season.Known.Hours is not null ? [] : season.Crops.Where(crop => Logged(season, crop) == 0m).Select(crop => crop.Name).ToList();

    /// <summary>
    /// Weeks in which more of a crop left than had been picked: a harvest row is missing, or a sale stands in the wrong unit.
    /// </summary>
    public static ReportTable SoldWithoutHarvest(SeasonReview season)
    {
        ReportTable table = new ReportTable($"Sold or used in {season.CropYear} without a harvest", season.Notation)
            .Column("Crop")
            .Column("Week of", Look.Date)
            .Column("Quantity", Look.Quantity)
            .Column("Unit")
            .Column("Money in it", Look.Money)
            .Column("First row");
        foreach (
            IGrouping<(Crop Crop, DateOnly Week), DispositionPart> week in Unmatched(season)
                .GroupBy(part => (part.Disposition.Crop, WeeklyUse.MondayOf(part.Disposition.Row.Date)))
                .OrderBy(week => week.Key.Item2)
                .ThenBy(week => week.Key.Crop.Index)
        )
        {
            table.Row(
                week.Key.Crop.Name,
                week.Key.Week,
                week.Sum(part => part.Quantity),
                week.Key.Crop.Unit,
                Money.Sum(week.Select(part => part.Amount)),
                week.First().Disposition.Row.Source.ToString()
            );
        }

        return table.Rows.Count == 0 ? table.Note("None: every sale is matched with a harvest.") : table;
    }

    internal static IEnumerable<DispositionPart> Unmatched(SeasonReview season) =>
        season.DispositionParts.Where(part => part.Lot is null && part.Quantity > 0m);

    internal static decimal Logged(SeasonReview season, EnterpriseBudget crop) =>
        crop
            .Enterprises.SelectMany(season.DirectCharges)
            .Where(charge => !charge.Estimated && charge.Origin is LaborRow)
            .Sum((Charge charge) => charge.Hours);
}
