namespace FarmEconomics.Records.Checks;

/// <summary>Checks of labor, workers and expenses.</summary>
internal static class WorkChecks
{
    public static IEnumerable<RecordCheck> OfWorkers =>
        [NamesOnce.Of<WorkerRow>("worker", row => row.From is { } from ? $"{row.Worker.Trim()} from {from:yyyy-MM-dd}"
            : row.Worker.Trim()), NamesAlike.Of(WorkerRow.Schema)];

    public static IEnumerable<RecordCheck> OfLabor =>
        [
            new RowChecks<LaborRow>(
                (
                    "date is in a year of the records",
                    (context, row) => context.Years.Holds(row.Date),
                    (context, row) => context.InYears(row, "date", row.Date)
                ),
                (
                    "through is not before date",
                    (_, row) => row.Through is not { } through || through >= row.Date,
                    (context, row) =>
                        context.InOrder(ProblemCodes.EndBeforeStart, row, "through", row.Through, "date", row.Date, sameDayFits: true)
                )
            ),
            LongDays.Check,
        ];

    public static IEnumerable<RecordCheck> OfExpenses =>
    [
        new RowChecks<ExpenseRow>(("date is in a year of the records", (context, row) =>
        {
            context.InYears(row, "date", row.Date);
            context.InYears(row, "crop_year", row.CropYear);
        })),
    ];
}
