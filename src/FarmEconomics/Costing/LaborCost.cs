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
    // Payroll taxes and the like add an eighth or so to a wage, and few logs hold every hour: what lies outside is worth a look (our own
    // bounds).
    private const decimal LeastOfWage = 0.75m;
    private const decimal MostOfWage = 1.5m;

    private readonly FarmTrace trace;
    private readonly FarmRecords records;
    private readonly ChargeList charges;
    private readonly List<Problem> problems;
    private readonly LaborTable table;

    // By row of labor.
    private readonly Money?[] amounts;
    private readonly Money[] burdens;
    private readonly bool[] imputedHired;

    internal LaborCost(FarmTrace trace, BooksRouter books, ChargeList charges, List<Problem> problems)
    {
        this.trace = trace;
        records = trace.Records;
        this.charges = charges;
        this.problems = problems;
        table = trace.LaborTable;
        (amounts, burdens, imputedHired) = (new Money?[table.Uses.Length], new Money[table.Uses.Length], new bool[table.Uses.Length]);
        PayHired(books);
        ImputeOwners();
        charges.AddLabor(FollowHours(), imputedHired);
    }

    /// <summary>True when some owner hours have no value.</summary>
    internal HashSet<int> YearsWithoutOwnerWage { get; } = [];

    /// <summary>Years in which some hired hours have no cost.</summary>
    internal HashSet<int> YearsWithoutHiredWage { get; } = [];

    /// <summary>What hours cost; null while not available (no wage known).</summary>
    internal Money? AmountOf(LaborUse use) => amounts[use.Place];

    /// <summary>Their part of what the books paid on top of wages, where the wages themselves are worked out from hours.</summary>
    internal Money BurdenOf(LaborUse use) => burdens[use.Place];

    internal bool IsImputed(LaborUse use) => imputedHired[use.Place];

    private void PayHired(BooksRouter books)
    {
        ILookup<int, LaborUse> byYear = trace.Labor.Where(use => use.Kind == WorkerKind.Hired).ToLookup(use => use.Window);
        foreach (IGrouping<int, HiredBill> money in books.HiredMoney.GroupBy(item => item.Year))
        {
            List<LaborUse> hired = byYear[money.Key].ToList();
            if (hired.Sum(use => use.Hours) > 0m)
            {
                ShareMoney(money.Key, Money.Sum(money.Select(item => item.Amount)), hired, books.YearsWithWages.Contains(money.Key));
                continue;
            }

            foreach (HiredBill bill in money)
            {
                Pool unlogged = records.Pool(DefaultPools.UnloggedLabor);
                charges.Add(new Charge(bill.Row, bill.Year, CostStream.HiredLabor, bill.Amount) { Pool = unlogged });
            }
        }

        foreach (IGrouping<int, LaborUse> year in byYear)
        {
            if (books.YearsWithWages.Contains(year.Key))
            {
                CountAtNoCost(year.Key, year.Where(use => amounts[use.Place] is null).ToList());
            }
            else
            {
                PayWages(year.Key, year, books.YearsWithBurden.TryGetValue(year.Key, out ExpenseRow burden) ? burden : null);
            }
        }
    }

    /// <summary>What the books paid for a year's hired hours, by hours: wages with what comes on top of them, or that alone.</summary>
    private void ShareMoney(int year, Money total, List<LaborUse> hired, bool wages)
    {
        Money[] parts = LargestRemainder.Split(total, hired.ConvertAll(use => use.Hours));
        for (int i = 0; i < parts.Length; i++)
        {
            if (wages)
            {
                amounts[hired[i].Place] = parts[i];
            }
            else
            {
                burdens[hired[i].Place] = parts[i];
            }
        }

        if (wages)
        {
            CompareWithWages(year, total, hired);
        }
    }

    /// <summary>Hours of a year in which each row of the wages names something else.</summary>
    private void CountAtNoCost(int year, IEnumerable<LaborUse> unpaid)
    {
        bool told = false;
        foreach (LaborUse use in unpaid)
        {
            amounts[use.Place] = Money.Zero;
            if (use.Hours > 0m && !told)
            {
                problems.Add(CostingProblems.HoursWithoutMoney(use.Origin.Source, year));
                told = true;
            }
        }
    }

    /// <summary>
    /// Wage times hours. The setting for what comes on top of wages stands in for rows of the books; where those are there, it isn't added.
    /// </summary>
    private void PayWages(int year, IEnumerable<LaborUse> hired, ExpenseRow? burden)
    {
        decimal percent = burden is null ? records.Settings.PayrollBurdenPercent : 0m;
        bool paid = false;
        foreach (LaborUse use in hired)
        {
            if (use.Logged is { } row && records.WorkerOn(row.Worker, row.Date).Wage is { } wage)
            {
                amounts[use.Place] = Money.Rounded(use.Hours * wage * (1m + (percent / 100m)));
                imputedHired[use.Place] = true;
                paid |= amounts[use.Place] != Money.Zero;
                continue;
            }

            if (CostNothing(use))
            {
                continue;
            }

            YearsWithoutHiredWage.Add(year);
            if (use.Logged is { } unpaid)
            {
                problems.Add(TracingProblems.NoHiredWage(unpaid));
            }
        }

        if (paid && burden is { } booked && records.Settings.PayrollBurdenPercent > 0m)
        {
            problems.Add(CostingProblems.BurdenInBooks(booked, year, records.Settings));
        }
    }

    /// <summary>The books and the log belong together: an hour should cost about what the workers' wages say.</summary>
    private void CompareWithWages(int year, Money total, List<LaborUse> hired)
    {
        decimal hours = 0m;
        decimal wages = 0m;
        foreach (LaborUse use in hired)
        {
            if (use.Logged is { } row && records.WorkerOn(row.Worker, row.Date).Wage is { } wage)
            {
                hours += use.Hours;
                wages += use.Hours * wage;
            }
        }

        if (wages <= 0m)
        {
            return;
        }

        decimal cost = total.Amount / hired.Sum(use => use.Hours);
        decimal mean = wages / hours;
        if (cost < mean * LeastOfWage || cost > mean * MostOfWage)
        {
            problems.Add(CostingProblems.HourFarFromWages(hired[0].Origin.Source, year, cost, mean, records.Settings.Notation));
        }
    }

    private void ImputeOwners()
    {
        bool told = false;
        if (records.Settings.UnpaidHours == UnpaidHours.None
            && Array.Find(table.Uses, use => use is { Kind: WorkerKind.Owner, Hours: > 0m, IsAdded: false }) is { Hours: > 0m } after)
        {
            problems.Add(CostingProblems.UnpaidHoursAfterAll(records.Labor[after.Row], after.Window));
        }

        foreach (LaborUse use in trace.Labor.Where(use => use.Kind == WorkerKind.Owner))
        {
            LaborRow? logged = use.Logged;
            decimal? wage = (logged is { } row ? records.WorkerOn(row.Worker, row.Date).Wage : null) ?? records.Settings.OwnerWage;
            if (wage is { } value)
            {
                amounts[use.Place] = Money.Rounded(use.Hours * value);
                continue;
            }

            if (CostNothing(use))
            {
                continue;
            }

            YearsWithoutOwnerWage.Add(use.Window);
            if (!told && logged is { } unpaid)
            {
                problems.Add(CostingProblems.NoOwnerWage(unpaid));
                told = true;
            }
        }
    }

    /// <summary>No hours cost nothing at any wage.</summary>
    private bool CostNothing(LaborUse use)
    {
        if (use.Hours != 0m)
        {
            return false;
        }

        amounts[use.Place] = Money.Zero;
        return true;
    }

    /// <summary>
    /// The charges of all rows. Each row's have their place before its money is split: one a part, and another where there is a burden.
    /// </summary>
    private LaborCharge[] FollowHours()
    {
        int[] starts = new int[table.Uses.Length + 1];
        for (int use = 0; use < table.Uses.Length; use++)
        {
            starts[use + 1] = starts[use] + ((table.First[use + 1] - table.First[use]) * (burdens[use] == Money.Zero ? 1 : 2));
        }

        LaborCharge[] all = new LaborCharge[starts[^1]];
        RowRanges.Map(table.Uses.Length, (from, to) => Follow(from, to, all, starts));
        return all;
    }

    /// <returns>The place after the last charge.</returns>
    private int Follow(int from, int to, LaborCharge[] charges, int[] starts)
    {
        for (int use = from; use < to; use++)
        {
            int at = starts[use];
            (int first, int end) = (table.First[use], table.First[use + 1]);

            // A row of no hours has no money either: there is nothing to follow.
            Money[]? parts = PartsOf(amounts[use] ?? Money.Zero, first, end);
            for (int share = first; share < end; share++)
            {
                charges[at++] = new LaborCharge(share, parts?[share - first] ?? Money.Zero, IsBurden: false);
            }

            // Beside wages worked out from hours: money of the books, so it is told apart.
            Money[]? over = PartsOf(burdens[use], first, end);
            for (int share = first; over is not null && share < end; share++)
            {
                charges[at++] = new LaborCharge(share, over[share - first], IsBurden: true);
            }
        }

        return starts[to];
    }

    /// <summary>Money of a row by the weights its hours went by; null for no money.</summary>
    private Money[]? PartsOf(Money money, int first, int end)
    {
        if (money == Money.Zero || end - first == 1)
        {
            return money == Money.Zero ? null : [money];
        }

        decimal[] weights = new decimal[end - first];
        for (int i = 0; i < weights.Length; i++)
        {
            weights[i] = table.Shares[first + i].Weight;
        }

        return LargestRemainder.Split(money, weights);
    }
}

/// <summary>What labor varies with, by stage.</summary>
public static class StageBehavior
{
    /// <summary>
    /// Nursery and growing hours vary with length, harvest and pack with quantity, overhead with nothing. Selling hours of a crop vary with
    /// its quantity; those of a channel, or of nothing by name, are trips.
    /// </summary>
    /// <param name="stage">The stage.</param>
    /// <param name="namesCrop">True for hours that stand on a planting, false for those of a pool.</param>
    /// <returns>What their cost varies with.</returns>
    public static CostDriver Of(Stage stage, bool namesCrop) => stage switch
    {
        Stage.Nursery or Stage.Grow => CostDriver.Length,
        Stage.Harvest or Stage.Pack => CostDriver.Quantity,
        Stage.Sell => namesCrop ? CostDriver.Quantity : CostDriver.Trips,
        _ => CostDriver.Fixed,
    };
}
