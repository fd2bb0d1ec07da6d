namespace FarmEconomics.Records.Checks;

/// <summary>
/// Checks of plans. Years aren't held against those of the records: a plan is for one to come. Beds taken twice and weeks short of hours
/// are told with the plan.
/// </summary>
internal static class PlanChecks
{
    public static IEnumerable<RecordCheck> OfPlan => [new RowChecks<PlanRow>(("dates make sense", Dates))];

    public static IEnumerable<RecordCheck> OfPlanSales =>
        [new RowChecks<PlanSaleRow>(("weeks are whole", Weeks))];

    private static void Dates(CheckContext context, PlanRow row)
    {
        bool fine = context.InOrder(ProblemCodes.OutBeforeIn, row, "out_of_bed", row.OutOfBed, "in_bed", row.InBed, sameDayFits: false);
        if (fine && row.Sown > row.InBed)
        {
            context.Report(
                ProblemCodes.SownAfterInBed,
                row,
                "sown",
                $"sown {row.Sown:yyyy-MM-dd} is after in_bed {row.InBed:yyyy-MM-dd}.",
                $"{row.Sown:yyyy-MM-dd}"
            );
        }
    }

    private static void Weeks(CheckContext context, PlanSaleRow row)
    {
        if (row.Weeks is { } weeks && weeks != decimal.Truncate(weeks))
        {
            context.Report(
                ProblemCodes.NumberOutOfRange,
                row,
                "weeks",
                context.Notation.Text($"{weeks} weeks: only whole weeks can be planned."),
                context.Notation.Text($"{weeks}")
            );
        }
    }
}
