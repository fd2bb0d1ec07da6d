using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Records.Schema;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// Changes of hours and of what an hour costs. Hired work costs what the books say, all of it together; so fewer hired hours mean less
/// money in the books, at the same cost per hired hour, and a new wage means the books scaled to it.
/// </summary>
internal sealed class WorkChanges(FarmReview review, RecordsCopy copy)
{
    private readonly FarmRecords records = review.Records;
    private readonly Dictionary<Stage, decimal> stageFactors = [];
    private bool hoursChanged;

    internal void Hours(ScenarioChange change)
    {
        hoursChanged = true;
        Crop? crop = change.Scope == ScenarioScope.Crop ? records.Crop(change.Name!) : null;
        Stage? stage = change.Scope == ScenarioScope.Stage && Words.TryParse(change.Name!, out Stage word) ? word : null;
        foreach (LaborRow row in records.Tables.Labor)
        {
            if ((crop is null || CropOf(row) == crop) && (stage is null || records.Task(row.Task).Stage == stage))
            {
                copy.Scale(row, LaborRow.HoursColumn, change.Step.Factor);
            }
        }

        if (crop is not null)
        {
            return;
        }

        foreach (Stage changed in Enum.GetValues<Stage>().Where(other => stage is null || other == stage))
        {
            stageFactors[changed] = stageFactors.GetValueOrDefault(changed, 1m) * change.Step.Factor;
        }

        foreach (LaborStandardRow row in records.Tables.LaborStandards.Where(row => stage is null || row.Stage == stage))
        {
            copy.Scale(row, LaborStandardRow.MinutesColumn, change.Step.Factor);
        }
    }

    internal void Wage(ScenarioChange change)
    {
        switch (change.Scope)
        {
            case ScenarioScope.Hired:
                Workers(row => row.Kind == WorkerKind.Hired, change.Step);
                PayHired(change.Step);
                break;
            case ScenarioScope.Owner:
                copy.Settings = copy.Settings with
                {
                    OwnerWage = change.Step.IsPercent ? copy.Settings.OwnerWage * change.Step.Factor : change.Step.Number,
                };
                Workers(row => row.Kind == WorkerKind.Owner && copy.Value(row, WorkerRow.WageColumn) is not null, change.Step);
                break;
            default:
                Workers(row => string.Equals(row.Worker.Trim(), change.Name, StringComparison.OrdinalIgnoreCase), change.Step);
                break;
        }
    }

    /// <summary>After all changes: control totals keep what the log lacks, and the books pay the hours that are left.</summary>
    internal void Finish()
    {
        if (!hoursChanged)
        {
            return;
        }

        foreach (
            IGrouping<(int Window, Stage Stage), LaborUse> group in review
                .Trace.Labor.Where(use => !use.Added)
                .GroupBy(use => (use.Window, use.Stage))
        )
        {
            Control(group.Key.Window, group.Key.Stage, group.ToList());
        }

        foreach (Stage stage in stageFactors.Keys)
        {
            foreach (
                int window in review.Charges.Years.Where(year =>
                    !review.Trace.Labor.Any(use => !use.Added && use.Window == year && use.Stage == stage)
                )
            )
            {
                Control(window, stage, []);
            }
        }

        foreach (IGrouping<int, LaborUse> hired in review.Trace.Labor.Where(use => use.Kind == WorkerKind.Hired).GroupBy(use => use.Window))
        {
            decimal before = hired.Sum(use => use.Hours);
            decimal after = hired.Sum(HoursNow);
            if (before > 0m && after != before)
            {
                Scale(hired.Key, after / before);
            }
        }
    }

    private decimal HoursNow(LaborUse use) =>
        use.Origin is LaborRow row
            ? copy.Value(row, LaborRow.HoursColumn)!.Value
            : use.Hours * stageFactors.GetValueOrDefault(use.Stage, 1m);

    /// <summary>
    /// A control total of a stage fills up what the log lacks. It moves with the log, so that what is filled up stays as it was; or changes
    /// as the stage does.
    /// </summary>
    private void Control(int window, Stage stage, List<LaborUse> logged)
    {
        List<TotalRow> totals = StandardHours.ControlTotals(records, window, stage);
        if (totals.Count > 0)
        {
            decimal total = totals.Sum(row => row.Amount);
            decimal lacking = (total - logged.Sum(use => use.Hours)) * stageFactors.GetValueOrDefault(stage, 1m);
            copy.Set(
                totals[0],
                TotalRow.AmountColumn,
                copy.Value(totals[0], TotalRow.AmountColumn) + (logged.Sum(HoursNow) + lacking - total)
            );
        }
    }

    private void Workers(Predicate<WorkerRow> meant, ScenarioStep step)
    {
        foreach (WorkerRow row in records.Tables.Workers.FindAll(meant))
        {
            decimal? wage = copy.Value(row, WorkerRow.WageColumn) ?? (row.Kind == WorkerKind.Owner ? copy.Settings.OwnerWage : null);
            copy.Set(row, WorkerRow.WageColumn, step.IsPercent ? wage * step.Factor : step.Number);
        }
    }

    private void PayHired(ScenarioStep step)
    {
        if (step.IsPercent)
        {
            foreach (ExpenseRow row in records.Tables.Expenses.Where(IsLabor))
            {
                copy.Scale(row, ExpenseRow.AmountColumn, step.Factor);
            }

            return;
        }

        foreach (
            IGrouping<int, LaborUse> hired in review
                .Trace.Labor.Where(use => use.Kind == WorkerKind.Hired && review.Charges.YearsWithWages.Contains(use.Window))
                .GroupBy(use => use.Window)
        )
        {
            decimal hours = hired.Sum(use => use.Hours);
            decimal paid = records
                .Expenses.Where(row => IsSpread(row, hired.Key))
                .Sum(row => Money.Rounded(row.Amount * (row.FarmPercent ?? 100m) / 100m).Amount);
            if (hours > 0m && paid > 0m)
            {
                Scale(hired.Key, step.Number * hours / paid);
            }
        }
    }

    private void Scale(int window, decimal factor)
    {
        foreach (ExpenseRow row in records.Expenses.Where(row => IsSpread(row, window)))
        {
            copy.Scale(row, ExpenseRow.AmountColumn, factor);
        }
    }

    private bool IsLabor(ExpenseRow row) => records.Category(row.Category).IsLabor();

    /// <summary>True for money of hired work that is spread over the hired hours of a window.</summary>
    private bool IsSpread(ExpenseRow row, int window) =>
        IsLabor(row) && BooksChanges.NamesNothing(row) && review.Charges.HomeYearOf(row) == window;

    private Crop? CropOf(LaborRow row) =>
        !string.IsNullOrWhiteSpace(row.Crop) ? records.Crop(row.Crop)
        : string.IsNullOrWhiteSpace(row.Planting) ? null : records.FindPlanting(row.Planting)?.Crop;
}
