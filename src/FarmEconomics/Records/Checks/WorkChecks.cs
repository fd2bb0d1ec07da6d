namespace FarmEconomics.Records.Checks;

/// <summary>Checks of labor and expenses.</summary>
internal static class WorkChecks
{
    public static IEnumerable<RecordCheck> All { get; } =
    [
        new RowChecks<LaborRow>(
            ("date is in a year of the records", (context, row) => context.Years.Holds(row.Date.Year), (context, row) => context.InYears(row, "date", row.Date))),
        new RowChecks<ExpenseRow>(("date is in a year of the records", (context, row) =>
        {
            context.InYears(row, "date", row.Date);
            context.InYears(row, "crop_year", row.CropYear);
        })),
    ];
}
