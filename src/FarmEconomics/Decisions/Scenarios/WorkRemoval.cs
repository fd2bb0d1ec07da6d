using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Tracing;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// Takes work out of the log. Hours whose money comes from a wage are lowered so that the rest costs to the cent what is left; where the
/// books pay, the money comes off the wages that name nothing. Control totals move along, so that nothing is filled up in place of what
/// goes.
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
        SpreadOverdrawn();
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
            ExpenseRow row = review.Records.Expenses.First(row =>
                review.Records.Category(row.Category).IsLabor() && BooksChanges.NamesNothing(row) && review.Charges.HomeYearOf(row) == year
            );
            RowValues credit = copy.Like(row);
            credit["amount"] = -money;
            credit["farm_percent"] = null;
            credit["crop_year"] = year;
            copy.Add<ExpenseRow>(credit);
        }
    }

    /// <summary>
    /// A pool that carries cost of others may give back more than its own rows hold: the rest comes off other hours of the same year and
    /// kind, row by row, so that no row falls below 0.
    /// </summary>
    private void SpreadOverdrawn()
    {
        foreach (
            IGrouping<(int Window, WorkerKind Kind), LaborUse> group in review
                .Trace.Labor.Where(use => use.Origin is LaborRow && MoneyByWage(use) > 0m)
                .GroupBy(use => (use.Window, use.Kind))
        )
        {
            decimal over = 0m;
            foreach (LaborUse use in group.Where(use => off.TryGetValue(use.Origin, out var taken) && taken.Money > MoneyByWage(use)))
            {
                over += off[use.Origin].Money - MoneyByWage(use);
                off[use.Origin] = off[use.Origin] with { Money = MoneyByWage(use) };
            }

            foreach (LaborUse use in group)
            {
                (decimal money, decimal hours) = off.GetValueOrDefault(use.Origin);
                decimal more = Math.Min(over, MoneyByWage(use) - money);
                if (more > 0m)
                {
                    off[use.Origin] = (money + more, hours);
                    over -= more;
                }
            }

            if (over > 0m)
            {
                // Drivers are split charge by charge, so that cents of them may add up to more than the rows hold.
                copy.Add<ExpenseRow>(CropRemoval.Bill(review.Records.AsOf, group.Key.Window, -over));
            }
        }
    }

    /// <summary>Hours left: by money where a wage makes it of hours, else by hours.</summary>
    private decimal Left(LaborUse use)
    {
        (decimal money, decimal hours) = off[use.Origin];
        return MoneyByWage(use) is > 0m and var all ? use.Hours * (all - money) / all : Math.Max(0m, use.Hours - hours);
    }

    /// <summary>What hours cost where a wage makes it of them; 0 where the books pay.</summary>
    private decimal MoneyByWage(LaborUse use) =>
        use.Kind == WorkerKind.Owner || review.Charges.IsImputed(use) ? review.Charges.AmountOf(use)?.Amount ?? 0m : 0m;
}
