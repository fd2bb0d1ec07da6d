namespace FarmEconomics.Records.Checks;

/// <summary>Warns when the hours of one worker on one day add up to more than 16; once per worker and day.</summary>
internal static class LongDays
{
    private const decimal MostHours = 16m;

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

            decimal before = days.GetValueOrDefault((worker, row.Date));
            days[(worker, row.Date)] = before + row.Hours;
            if (before <= MostHours && before + row.Hours > MostHours)
            {
                context.Report(ProblemCodes.LongDay, row, "hours", context.Notation.Text($"With this row {name} worked {before + row.Hours} hours on {row.Date:yyyy-MM-dd}."), context.Notation.Text($"{row.Hours}"));
            }
        }
    }
}
