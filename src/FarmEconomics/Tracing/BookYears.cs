using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>Which crop year a row of the books belongs to, and which years pay wages.</summary>
internal static class BookYears
{
    /// <summary>A row naming a planting belongs to the planting's crop year, else to its own, else to its date's.</summary>
    internal static int HomeYear(FarmRecords records, PlantingCalendar calendar, ExpenseRow row)
    {
        if (!string.IsNullOrWhiteSpace(row.Planting) && records.FindPlanting(row.Planting) is { } planting)
        {
            DateOnly day = row.CropYear is { } year ? records.Settings.StartOf(year) : row.Date;
            return calendar.EnterpriseOf(planting, day).CropYear;
        }

        return row.CropYear ?? records.Settings.WindowOf(row.Date);
    }

    /// <summary>The crop years whose books hold wages; what is paid on top of wages is none.</summary>
    internal static HashSet<int> WithWages(FarmRecords records, PlantingCalendar calendar) => records.Expenses
        .Where(row => records.Category(row.Category) is var category && category.IsLabor() && !category.IsBurden())
        .Select(row => HomeYear(records, calendar, row)).ToHashSet();
}
