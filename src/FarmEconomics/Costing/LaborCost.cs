using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Costing;

/// <summary>
/// Turns hours into money: hired hours carry what the books paid in their year (wage times hours where the books are silent), owner
/// hours the owner wage, volunteer hours nothing. Each row's money follows its hours.
/// </summary>
internal sealed class LaborCost
{
    private readonly FarmTrace trace;
    private readonly FarmRecords records;
    private readonly List<Charge> charges;
    private readonly List<Problem> problems;
    private readonly HashSet<LaborUse> imputedHired = [];

    internal LaborCost(FarmTrace trace, BooksRouter books, List<Charge> charges, List<Problem> problems)
    {
        this.trace = trace;
        records = trace.Records;
        this.charges = charges;
        this.problems = problems;
        PayHired(books);
        ImputeOwners();
        foreach (LaborUse use in trace.Labor)
        {
            Follow(use);
        }
    }

    /// <summary>True when some owner hours have no value.</summary>
    internal HashSet<int> YearsWithoutOwnerWage { get; } = [];

    /// <summary>Years in which some hired hours have no cost.</summary>
    internal HashSet<int> YearsWithoutHiredWage { get; } = [];

    internal bool IsImputed(LaborUse use) => imputedHired.Contains(use);

    private void PayHired(BooksRouter books)
    {
        foreach (IGrouping<int, (ExpenseRow Row, int Year, Money Amount)> money in books.HiredMoney.GroupBy(item => item.Year))
        {
            List<LaborUse> hired = trace.Labor.Where(use => use.Kind == WorkerKind.Hired && use.Window == money.Key).ToList();
            if (hired.Sum(use => use.Hours) <= 0m)
            {
                foreach ((ExpenseRow row, int year, Money amount) in money)
                {
                    charges.Add(new Charge(row, year, CostStream.HiredLabor, amount) { Pool = records.Pool(DefaultPools.UnloggedLabor) });
                }

                continue;
            }

            Money[] parts = LargestRemainder.Split(Money.Sum(money.Select(item => item.Amount)), hired.ConvertAll(use => use.Hours));
            for (int i = 0; i < parts.Length; i++)
            {
                hired[i].Amount = parts[i];
            }
        }

        HashSet<int> free = [];
        foreach (LaborUse use in trace.Labor.Where(use => use.Kind == WorkerKind.Hired && use.Amount is null))
        {
            if (books.YearsWithLaborInBooks.Contains(use.Window))
            {
                use.Amount = Money.Zero;
                if (use.Hours > 0m && free.Add(use.Window))
                {
                    problems.Add(CostingProblems.HoursWithoutMoney(use.Origin.Source, use.Window));
                }
            }
            else if (use.Origin is LaborRow row && records.WorkerOn(row.Worker, row.Date).Wage is { } wage)
            {
                use.Amount = Money.Rounded(use.Hours * wage * (1m + (records.Settings.PayrollBurdenPercent / 100m)));
                imputedHired.Add(use);
            }
            else
            {
                YearsWithoutHiredWage.Add(use.Window);
                if (use.Origin is LaborRow unpaid)
                {
                    problems.Add(TracingProblems.NoHiredWage(unpaid));
                }
            }
        }
    }

    private void ImputeOwners()
    {
        bool told = false;
        foreach (LaborUse use in trace.Labor.Where(use => use.Kind == WorkerKind.Owner))
        {
            LaborRow? row = use.Origin as LaborRow;
            decimal? wage = (row is null ? null : records.WorkerOn(row.Worker, row.Date).Wage) ?? records.Settings.OwnerWage;
            if (wage is { } value)
            {
                use.Amount = Money.Rounded(use.Hours * value);
                continue;
            }

            YearsWithoutOwnerWage.Add(use.Window);
            if (!told && row is not null)
            {
                problems.Add(CostingProblems.NoOwnerWage(row));
                told = true;
            }
        }
    }

    private void Follow(LaborUse use)
    {
        // A row of no hours has no money either: there is nothing to follow.
        if (use.Amount is { } amount && amount != Money.Zero)
        {
            Money[] parts = LargestRemainder.Split(amount, use.PartList.ConvertAll(part => part.Hours));
            for (int i = 0; i < parts.Length; i++)
            {
                use.PartList[i].Amount = parts[i];
            }
        }

        foreach (LaborPart part in use.PartList)
        {
            charges.Add(new Charge(use.Origin, use.Window, use.Kind == WorkerKind.Owner ? CostStream.OwnerLabor : CostStream.HiredLabor, part.Amount)
            {
                Enterprise = part.Enterprise,
                Pool = part.Pool,
                Outside = part.Enterprise is null && part.Pool is null ? Outside.NotAssigned : null,
                Line = StatementLine.Labor,
                Stage = use.Stage,
                VariesWith = StageBehavior.Of(use.Stage),
                Hours = part.Hours,
                Estimated = part.Estimated,
                Imputed = use.Kind == WorkerKind.Owner || imputedHired.Contains(use),
            });
        }
    }
}

/// <summary>What labor varies with, by stage.</summary>
public static class StageBehavior
{
    /// <summary>Nursery and growing hours vary with area, harvest and pack with quantity, selling with sales, overhead with nothing.</summary>
    /// <param name="stage">The stage.</param>
    /// <returns>What its cost varies with.</returns>
    public static VariesWith Of(Stage stage) => stage switch
    {
        Stage.Nursery or Stage.Grow => VariesWith.Area,
        Stage.Harvest or Stage.Pack => VariesWith.Quantity,
        Stage.Sell => VariesWith.Sales,
        _ => VariesWith.Nothing,
    };
}
