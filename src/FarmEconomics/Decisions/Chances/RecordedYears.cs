using FarmEconomics.Budgets;
using FarmEconomics.Records;

namespace FarmEconomics.Decisions.Chances;

/// <summary>A crop year recorded in part: no season to judge chance by.</summary>
/// <param name="CropYear">The crop year.</param>
/// <param name="Reason">Why it counts as recorded in part.</param>
public sealed record YearInPart(int CropYear, string Reason);

/// <summary>
/// Which crop years are recorded whole. One is not when the records begin over two weeks after the usual first harvest of the year, or end
/// over two weeks before the usual last one, or when it has under half of the
/// usual rows of harvests and sales. Usual = the median of all years. The two weeks and the half are our own, without a source.
/// </summary>
internal static class RecordedYears
{
    private const int DaysAllowed = 14;

    internal static (List<int> Whole, List<YearInPart> InPart) Of(FarmReview review, int last)
    {
        FarmRecords records = review.Records;
        FarmSettings settings = records.Settings;
        List<int> years = [.. review.CropYears.Where(year => year <= last)];
        ILookup<int, DateOnly> harvests = records.Harvests.ToLookup(row => settings.WindowOf(row.Date), row => row.Date);
        Dictionary<int, int> rows = records.Harvests.Select(row => row.Date).Concat(records.Sales.Select(row => row.Date))
            .GroupBy(settings.WindowOf).ToDictionary(year => year.Key, year => year.Count());
        List<int> picked = years.FindAll(year => harvests[year].Any());
        if (picked.Count == 0)
        {
            return ([], years.ConvertAll(year => new YearInPart(year, "no harvest is on record")));
        }

        double first = Median(picked.Select(year => DayOf(harvests[year].Min(), year)));
        double end = Median(picked.Select(year => DayOf(harvests[year].Max(), year)));
        double usual = Median(picked.Select(year => (double)rows[year]));
        DateOnly begins = records.Harvests.Select(row => row.Date).Concat(records.Sales.Select(row => row.Date))
            .Concat(records.Labor.Select(row => row.Date)).Min();
        List<(int Year, string? Why)> told = years.ConvertAll(year => (year, Why(year)));
        return (
            [.. told.Where(year => year.Why is null).Select(year => year.Year)],
            [.. told.Where(year => year.Why is not null).Select(year => new YearInPart(year.Year, year.Why!))]
        );

        double DayOf(DateOnly day, int year) => day.DayNumber - settings.StartOf(year).DayNumber;

        string? Why(int year) => !harvests[year].Any() ? "no harvest is on record"
            : settings.WindowOf(begins) == year && DayOf(begins, year) > first + DaysAllowed
                ? $"the records begin on {begins:yyyy-MM-dd}"
            : settings.WindowOf(records.AsOf) == year && DayOf(records.AsOf, year) < end - DaysAllowed
                ? $"the records end on {records.AsOf:yyyy-MM-dd}"
            : rows[year] < usual / 2.0 ? "it has under half of the usual rows of harvests and sales"
            : null;
    }

    private static double Median(IEnumerable<double> values)
    {
        List<double> sorted = [.. values.Order()];
        int middle = sorted.Count / 2;
        return sorted.Count % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2.0;
    }
}
