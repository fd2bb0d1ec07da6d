using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>Which rows count in a season: a sale by the lots it drew on, work by its day, the books by their crop year.</summary>
internal sealed class SeasonRows
{
    private readonly FarmReview review;
    private readonly int year;
    private readonly HashSet<SaleRow> sold;
    private readonly HashSet<HarvestRow> picked;

    internal SeasonRows(FarmReview review, int year)
    {
        this.review = review;
        this.year = year;
        sold = [.. review.Trace.PartsOfYear(year).Select(part => part.Disposition.Row)];
        picked = [.. review.Trace.LotsOfYear(year).Select(lot => lot.Row)];
    }

    internal bool IsOfSeason(IRecordRow row)
    {
        FarmSettings settings = review.Records.Settings;
        return row switch
        {
            SaleRow sale => sold.Contains(sale),
            HarvestRow harvest => picked.Contains(harvest),
            PlantingRow planting => review
                .Season(year)
                .Plantings.Any(budget => string.Equals(budget.Name, planting.Planting.Trim(), StringComparison.OrdinalIgnoreCase)),
            UseRow use => (use.CropYear ?? year) == year,
            LaborRow labor => labor.Date <= review.Records.AsOf && settings.WindowOf(labor.Date) == year,
            ExpenseRow expense => expense.Date <= review.Records.AsOf && review.Charges.HomeYearOf(expense) == year,
            IncomeRow income => income.Date <= review.Records.AsOf && (income.CropYear ?? settings.WindowOf(income.Date)) == year,
            TotalRow total => StandardHours.WindowOf(review.Records, total) == year,
            LoadRow load => load.From < settings.EndOf(year) && load.To >= settings.StartOf(year),
            PriceRow { From: { } from } => from < settings.EndOf(year),
            WorkerRow { From: { } from } => from < settings.EndOf(year),
            _ => true,
        };
    }

    internal List<TouchedRows> Count(IEnumerable<IRecordRow> touched) =>
        touched
            .GroupBy(row => row.Home.Schema.Name)
            .Select(group => new TouchedRows(group.Key, group.Count(IsOfSeason)))
            .OrderBy(rows => rows.Table, StringComparer.Ordinal)
            .ToList();
}
