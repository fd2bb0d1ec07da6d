using FarmEconomics.Budgets;
using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>Which rows count in a season: a sale by the lots it drew on, work by its day, the books by their crop year.</summary>
internal sealed class SeasonRows
{
    private static readonly Dictionary<Type, string> Tables = new()
    {
        [typeof(SaleRow)] = "sales",
        [typeof(PlantingRow)] = "plantings",
        [typeof(UseRow)] = "use",
        [typeof(LoadRow)] = "loads",
        [typeof(PriceRow)] = "prices",
        [typeof(HarvestRow)] = "harvests",
        [typeof(LaborRow)] = "labor",
        [typeof(WorkerRow)] = "workers",
        [typeof(LaborStandardRow)] = "labor_standards",
        [typeof(TotalRow)] = "totals",
        [typeof(ExpenseRow)] = "expenses",
        [typeof(IncomeRow)] = "income",
        [typeof(ChannelRow)] = "channels",
    };

    private readonly FarmReview review;
    private readonly int year;
    private readonly HashSet<RecordRow> produce = new(ReferenceEqualityComparer.Instance);

    internal SeasonRows(FarmReview review, int year)
    {
        this.review = review;
        this.year = year;
        produce.UnionWith(review.Trace.PartsByYear[year].Select(part => part.Leaving.Row));
        produce.UnionWith(review.Trace.LotsByYear[year].Select(lot => lot.Row));
    }

    internal bool IsOfSeason(RecordRow row)
    {
        FarmSettings settings = review.Records.Settings;
        return row switch
        {
            SaleRow or HarvestRow => produce.Contains(row),
            PlantingRow planting => review.Season(year).Plantings.Any(budget => string.Equals(budget.Name, planting.Planting.Trim(), StringComparison.OrdinalIgnoreCase)),
            UseRow use => (use.CropYear ?? year) == year,
            LaborRow labor => labor.Date <= review.Records.AsOf && settings.WindowOf(labor.Date) == year,
            ExpenseRow expense => expense.Date <= review.Records.AsOf && review.Charges.HomeYearOf(expense) == year,
            IncomeRow income => income.Date <= review.Records.AsOf && (income.CropYear ?? settings.WindowOf(income.Date)) == year,
            TotalRow total => total.From is { } from && settings.WindowOf(from) == year,
            PriceRow { From: { } from } => from < settings.EndOf(year),
            WorkerRow { From: { } from } => from < settings.EndOf(year),
            _ => true,
        };
    }

    internal List<TouchedRows> Count(IEnumerable<RecordRow> touched) => touched.GroupBy(row => Tables[row.GetType()])
        .Select(group => new TouchedRows(group.Key, group.Count(IsOfSeason), group.Count())).OrderBy(rows => rows.Table, StringComparer.Ordinal).ToList();
}
