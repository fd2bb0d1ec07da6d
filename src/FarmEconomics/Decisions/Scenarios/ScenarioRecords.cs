using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Records.Reading;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// Applies changes to a copy of the records. A change holds for all years in the records, so that goods carried from one season into the
/// next are treated alike on both sides. New values count before percents and wide changes before narrow ones, so that the order written
/// makes no difference.
/// </summary>
internal static class ScenarioRecords
{
    internal static RecordsCopy Apply(FarmReview review, IReadOnlyList<ScenarioChange> changes)
    {
        RecordsCopy copy = new(review.Records);
        List<Crop> left =
        [
            .. changes.Where(change => change.Subject == ScenarioSubject.Without).Select(change => review.Records.Crop(change.Name!)),
        ];
        if (left.Count > 0)
        {
            // It stands alone (ScenarioText): other changes would be of rows that are no longer there.
            CropRemoval.Apply(review, copy, left);
            return copy;
        }

        WorkChanges work = new(review, copy);
        foreach (ScenarioChange change in changes.OrderBy(change => change.Step.IsPercent).ThenBy(change => change.Narrowness))
        {
            Apply(copy, work, change);
        }

        PriceChanges.AddLists(copy, changes);
        work.Finish();
        return copy;
    }

    private static void Apply(RecordsCopy copy, WorkChanges work, ScenarioChange change)
    {
        switch (change.Subject)
        {
            case ScenarioSubject.Setting:
                Set(copy, change);
                break;
            case ScenarioSubject.Price:
                PriceChanges.Apply(copy, change);
                break;
            case ScenarioSubject.Yield:
                YieldChanges.Apply(copy, change);
                break;
            case ScenarioSubject.Wage:
                work.Wage(change);
                break;
            case ScenarioSubject.Hours:
                work.Hours(change);
                break;
            case ScenarioSubject.Expenses:
                BooksChanges.Expenses(copy, change);
                break;
            case ScenarioSubject.Income:
                BooksChanges.Income(copy, change);
                break;
            default:
                BooksChanges.Fee(copy, change);
                break;
        }
    }

    private static void Set(RecordsCopy copy, ScenarioChange change) => copy.Settings = change.Step.IsPercent
        ? copy.Settings with { OwnerWage = copy.Settings.OwnerWage * change.Step.Factor }
        : FarmSettingsReader.Apply(copy.Settings, change.Name!, change.ValueText, out _);
}
