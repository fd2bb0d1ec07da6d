namespace FarmEconomics.Records.Checks;

/// <summary>Checks of labor, workers, tasks, standards, rates, expenses and categories.</summary>
internal static class WorkChecks
{
    public static IEnumerable<RecordCheck> All { get; } =
    [
        new RowChecks<LaborRow>("labor", tables => tables.Labor,
            ("date is in a year of the records", (context, row) => context.InYears(row, "date", row.Date)),
            ("names are known", (context, row) =>
            {
                context.WorkerNames.Check(context, row, "worker", row.Worker);
                context.TaskNames.Check(context, row, "task", row.Task);
            }),
            ("at most one tag, and known", (context, row) => Tags(context, row, row.Crop, row.Planting, row.Channel, row.Pool))),
        new RowChecks<TaskRow>("tasks", tables => tables.Tasks,
            ("pool is known", (context, row) => context.PoolNames.Check(context, row, "pool", row.Pool))),
        new RowChecks<LaborStandardRow>("labor_standards", tables => tables.LaborStandards,
            ("crop is known", (context, row) => context.CropNames.Check(context, row, "crop", row.Crop))),
        new RowChecks<InputRateRow>("input_rates", tables => tables.InputRates,
            ("names are known", (context, row) =>
            {
                context.PoolNames.Check(context, row, "pool", row.Pool);
                context.CropNames.Check(context, row, "crop", row.Crop);
            })),
        new RowChecks<ExpenseRow>("expenses", tables => tables.Expenses,
            ("date is in a year of the records", (context, row) =>
            {
                context.InYears(row, "date", row.Date);
                context.InYears(row, "crop_year", row.CropYear);
            }),
            ("category is known", (context, row) => context.CategoryNames.Check(context, row, "category", row.Category)),
            ("at most one tag, and known", (context, row) => Tags(context, row, row.Crop, row.Planting, row.Channel, row.Pool))),
        new RowChecks<CategoryRow>("categories", tables => tables.Categories,
            ("pool is known", (context, row) => context.PoolNames.Check(context, row, "pool", row.Pool))),
    ];

    private static void Tags(CheckContext context, IRecordRow row, string? crop, string? planting, string? channel, string? pool)
    {
        string? first = null;
        Span<bool> given = [crop is not null, planting is not null, channel is not null, pool is not null];
        ReadOnlySpan<string> columns = ["crop", "planting", "channel", "pool"];
        for (int i = 0; i < given.Length; i++)
        {
            if (!given[i])
            {
                continue;
            }

            if (first is not null)
            {
                context.Report(ProblemCodes.TwoTags, row, columns[i], $"The row names a {first} and a {columns[i]}.", i switch { 1 => planting, 2 => channel, _ => pool });
                return;
            }

            first = columns[i];
        }

        context.CropNames.Check(context, row, "crop", crop);
        context.PlantingNames.Check(context, row, "planting", planting);
        context.ChannelNames.Check(context, row, "channel", channel);
        context.PoolNames.Check(context, row, "pool", pool);
    }
}
