using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tracing;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// Takes work out of the log. Hours whose money comes from a wage are lowered so that the rest costs to the cent what is left; where the books pay, the money comes off the wages that name nothing. Control totals
/// move along, so that nothing is filled up in place of what goes.
/// </summary>
internal sealed class WorkRemoval(FarmReview review, RecordsCopy copy)
{
    private readonly Dictionary<IRecordRow, (decimal Money, decimal Hours)> off = [];
    private readonly Dictionary<int, decimal> wages = [];

    internal void Take(Charge charge, decimal money, decimal hours)
    {
        // Money below 0 is a refund of what the books paid, never a wage of hours.
        bool byWage = charge.Imputed && money >= 0m;
        (decimal before, decimal worked) = off.GetValueOrDefault(charge.Origin);
        off[charge.Origin] = (before + (byWage ? money : 0m), worked + (money >= 0m ? hours : 0m));
        if (!byWage)
        {
            wages[charge.HomeYear] = wages.GetValueOrDefault(charge.HomeYear) + money;
        }
    }

    internal void Finish()
    {
        Dictionary<(int Window, Stage Stage), decimal> moved = [];
        foreach (LaborUse use in review.Trace.Labor.Where(use => off.ContainsKey(use.Origin)))
        {
            decimal left = Left(use);
            if (use.Origin is LaborRow row)
            {
                copy.Set(row, LaborRow.HoursColumn, left);
            }

            if (use.Origin is not LaborStandardRow)
            {
                moved[(use.Window, use.Stage)] = moved.GetValueOrDefault((use.Window, use.Stage)) + left - use.Hours;
            }
        }

        foreach (((int window, Stage stage), decimal change) in moved)
        {
            if (StandardHours.ControlTotals(review.Records, window, stage) is [var total, ..])
            {
                copy.Set(total, TotalRow.AmountColumn, copy.Value(total, TotalRow.AmountColumn) + change);
            }
        }

        foreach ((int year, decimal money) in wages.Where(year => year.Value != 0m))
        {
            ExpenseRow row = review.Records.Expenses.First(row => review.Records.Category(row.Category).IsLabor() && BooksChanges.NamesNothing(row) && review.Charges.HomeYearOf(row) == year);
            RowValues credit = copy.Like(row);
            credit["amount"] = -money;
            credit["farm_percent"] = null;
            credit["crop_year"] = year;
            copy.Add<ExpenseRow>(credit);
        }
    }

    /// <summary>Hours left: by money where a wage makes it of hours, else by hours.</summary>
    private decimal Left(LaborUse use)
    {
        (decimal money, decimal hours) = off[use.Origin];
        bool byWage = use.Kind == WorkerKind.Owner || review.Charges.IsImputed(use);
        return byWage && review.Charges.AmountOf(use) is { Amount: > 0m } all ? use.Hours * (all.Amount - money) / all.Amount : Math.Max(0m, use.Hours - hours);
    }
}
