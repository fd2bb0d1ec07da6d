namespace FarmEconomics.Records.Checks;

/// <summary>
/// Warns when the hours of one worker on one day add up to more than 16; once per worker and day. Hours of several days count as the same
/// on each.
/// </summary>
internal static class LongDays
{
    private const decimal MostHours = 16m;
    private const int LongestPeriod = 366;

    public static RecordCheck Check { get; } = new TableCheck("labor: at most 16 hours a day", Run);

    private static void Run(CheckContext context)
    {
        var workers = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        var days = new Dictionary<(int Worker, DateOnly Date), decimal>();
        foreach (LaborRow row in context.Tables.Labor)
        {
            if (row.Hours <= 0m)
            {
                continue;
            }

            string name = row.Worker.Trim();
            if (!workers.TryGetValue(name, out int worker))
            {
                workers.Add(name, worker = workers.Count);
            }

            Add(context, days, row, worker);
        }
    }

    private static void Add(CheckContext context, Dictionary<(int Worker, DateOnly Date), decimal> days, LaborRow row, int worker)
    {
        DateOnly last = row.Through is { } through && through > row.Date && through <= row.Date.AddDays(LongestPeriod) ? through : row.Date;
        decimal hours = row.Hours / (last.DayNumber - row.Date.DayNumber + 1);
        for (DateOnly day = row.Date; day <= last; day = day.AddDays(1))
        {
            decimal before = days.GetValueOrDefault((worker, day));
            days[(worker, day)] = before + hours;
            if (before <= MostHours && before + hours > MostHours)
            {
                context.Report(
                    ProblemCodes.LongDay,
                    row,
                    "hours",
                    context.Notation.Text($"With this row {row.Worker.Trim()} worked {before + hours:0.##} hours on {day:yyyy-MM-dd}."),
                    context.Notation.Text($"{row.Hours}")
                );
                return;
            }
        }
    }
}
