using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Costing;

/// <summary>
/// Takes every line of the books where it belongs: a planting, a crop's plantings, a pool, the household, or out of the budget.
/// </summary>
internal sealed class BooksRouter
{
    private readonly FarmTrace trace;
    private readonly FarmRecords records;
    private readonly ChargeList charges;
    private readonly List<Problem> problems;

    internal BooksRouter(FarmTrace trace, ChargeList charges, List<Problem> problems)
    {
        this.trace = trace;
        records = trace.Records;
        this.charges = charges;
        this.problems = problems;
        YearsWithWages = BookYears.WithWages(records, trace.Calendar);
        foreach (ExpenseRow row in records.Expenses)
        {
            Route(row);
        }
    }

    /// <summary>Hired money that names nothing, row by row, to be spread over hired hours.</summary>
    internal List<HiredBill> HiredMoney { get; } = [];

    /// <summary>Crop years whose books hold wages: hired hours then cost what the books say.</summary>
    internal HashSet<int> YearsWithWages { get; }

    /// <summary>Crop years whose books hold what is paid on top of wages, each with its first row.</summary>
    internal Dictionary<int, ExpenseRow> YearsWithBurden { get; } = [];

    /// <summary>The crop year a row of the books belongs to.</summary>
    internal int HomeYear(ExpenseRow row) => BookYears.HomeYear(records, trace.Calendar, row);

    private void Route(ExpenseRow row)
    {
        CategoryRow category = records.Category(row.Category);
        int year = HomeYear(row);
        if (!category.EntersBudgets())
        {
            charges.Add(new Charge(row, year, CostStream.Cash, new Money(row.Amount)) { Unallocated = Unallocated.Excluded });
            return;
        }

        Money farm = new(row.FarmPart);
        CostStream stream = category.IsLabor() ? CostStream.HiredLabor : CostStream.Cash;
        if (farm.Amount != row.Amount)
        {
            charges.Add(new Charge(row, year, stream, new Money(row.Amount) - farm) { Unallocated = Unallocated.Household });
        }

        if (category.IsBurden())
        {
            YearsWithBurden.TryAdd(year, row);
        }

        Place(row, category, year, farm, stream);
    }

    private void Place(ExpenseRow row, CategoryRow category, int year, Money farm, CostStream stream)
    {
        Charge charge = new(row, year, stream, farm)
        {
            Line = stream == CostStream.HiredLabor ? StatementLine.Labor : category.StatementLine ?? StatementLine.Materials,
            VariesWith = category.VariesWith ?? CostDriver.Length,
            CategoryDriver = category.VariesWith,
        };
        if (!string.IsNullOrWhiteSpace(row.Planting))
        {
            PutOnPlanting(row.Source, row.Planting, charge);
        }
        else if (!string.IsNullOrWhiteSpace(row.Crop))
        {
            SplitOverCrop(row, charge, records.Crop(row.Crop));
        }
        else if (!string.IsNullOrWhiteSpace(row.Channel))
        {
            charges.Add(charge with { Pool = records.PoolOf(records.Channel(row.Channel)) });
        }
        else if (!string.IsNullOrWhiteSpace(row.Pool))
        {
            charges.Add(charge with { Pool = records.Pool(row.Pool) });
        }
        else if (stream == CostStream.HiredLabor)
        {
            HiredMoney.Add(new HiredBill(row, year, farm));
        }
        else
        {
            string pool = string.IsNullOrWhiteSpace(category.Pool) ? DefaultPools.GeneralOverhead : category.Pool;
            charges.Add(charge with { Pool = records.Pool(pool) });
        }
    }

    private void PutOnPlanting(SourceLine source, string name, Charge charge)
    {
        if (records.FindPlanting(name) is { } planting)
        {
            charges.Add(charge with { Enterprise = trace.Calendar.EnterpriseOf(planting, records.Settings.StartOf(charge.HomeYear)) });
        }
        else
        {
            problems.Add(TracingProblems.PlantingAfterClose(source, name, charge.Amount.Amount));
            charges.Add(charge with { Unallocated = Unallocated.NotAssigned });
        }
    }

    private void SplitOverCrop(ExpenseRow row, Charge charge, Crop crop)
    {
        if (trace.Work.YearWithPlanting(crop, charge.HomeYear) is not { } year)
        {
            problems.Add(TracingProblems.NoCropYear(row.Source, "crop", crop, charge.HomeYear, charge.Amount.Amount));
            charges.Add(charge with { Unallocated = Unallocated.NotAssigned });
            return;
        }

        if (year != charge.HomeYear)
        {
            problems.Add(TracingProblems.LaterCropYear(row.Source, "crop", crop, charge.HomeYear, year));
        }

        IReadOnlyList<Enterprise> enterprises = trace.Calendar.Of(crop, year);
        decimal[] weights = enterprises.Select(enterprise => charge.VariesWith switch
        {
            CostDriver.Quantity => enterprise.Harvested,
            CostDriver.Units => Math.Max(0m, enterprise.SalesValue.Amount),
            _ => enterprise.BedFeet.Value,
        }).ToArray();
        if (weights.Sum() <= 0m)
        {
            weights = enterprises.Select(enterprise => enterprise.BedFeet.Value).ToArray();
        }

        Money[] parts = LargestRemainder.Split(charge.Amount, weights);
        for (int i = 0; i < parts.Length; i++)
        {
            if (parts[i] != Money.Zero)
            {
                charges.Add(charge with { Enterprise = enterprises[i], Amount = parts[i] });
            }
        }
    }
}

/// <summary>What the books paid for hired work in a year.</summary>
/// <remarks>A class: lists of it are compiled ahead of time, which those of a tuple are not.</remarks>
internal sealed record HiredBill(ExpenseRow Row, int Year, Money Amount);
