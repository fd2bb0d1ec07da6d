using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Decisions.Changes;

/// <summary>What a crop takes in one week.</summary>
/// <param name="Monday">The first day of the week.</param>
/// <param name="BedFootWeeks">Bed-foot-weeks held in it.</param>
/// <param name="Hours">Hours that come and go with it; fixed ones, such as overhead, and those of trips that stay are left out.</param>
/// <param name="HiredHours">Those of them that hired people worked.</param>
/// <param name="OwnHours">Those of them that owners worked.</param>
public sealed record WeeklyUse(DateOnly Monday, decimal BedFootWeeks, decimal Hours, decimal HiredHours = 0m, decimal OwnHours = 0m)
{
    /// <summary>The Monday of a day's week.</summary>
    /// <param name="day">The day.</param>
    /// <returns>The Monday.</returns>
    public static DateOnly MondayOf(DateOnly day) => day.AddDays(-(((int)day.DayOfWeek + 6) % 7));

    /// <summary>A crop's use week by week; hours filled in from standards carry no day and are left out.</summary>
    /// <param name="costs">The season's costs.</param>
    /// <param name="budget">The budget of a crop.</param>
    /// <returns>The weeks in order, empty ones left out.</returns>
    public static IReadOnlyList<WeeklyUse> Of(SeasonCosts costs, EnterpriseBudget budget)
    {
        ArgumentNullException.ThrowIfNull(costs);
        ArgumentNullException.ThrowIfNull(budget);
        return costs.WeeksOf(budget, withTrips: false);
    }

    /// <summary>The same, worked out; with the trips of channels that end when the crop isn't grown, or without.</summary>
    internal static IReadOnlyList<WeeklyUse> Find(SeasonCosts costs, EnterpriseBudget budget, bool withTrips)
    {
        SeasonReview season = costs.Season;
        Dictionary<DateOnly, Sums> weeks = [];
        foreach (Enterprise enterprise in budget.Enterprises)
        {
            AddBeds(season, enterprise, weeks);
            foreach (Charge charge in costs.DirectCharges(enterprise))
            {
                AddHours(season, charge, charge.VariesWith is CostDriver.Fixed or CostDriver.Trips ? 0m : 1m, weeks);
            }
        }

        HashSet<Enterprise> own = [.. budget.Enterprises];
        HashSet<Crop> gone = budget.Crop is { } crop ? [crop] : [];
        int[] columns = [.. Enumerable.Range(0, season.Network.Enterprises.Count).Where(i => own.Contains(season.Network.Enterprises[i]))];
        foreach (PoolResult pool in season.Pools.Where(pool => !pool.Pool.IsOverhead && pool.Hours > 0m))
        {
            decimal share = columns.Sum(column => season.Network.Running.Shares[pool.Pool.Index, column]);
            decimal trips = withTrips ? costs.Avoidable.Trips.PartFreed(pool.Pool, gone) : 0m;
            foreach (Charge charge in share > 0m || trips > 0m ? pool.Rows : [])
            {
                CostDriver driver = PoolSharing.DriverOf(charge, pool.Pool);
                AddHours(season, charge, driver == CostDriver.Fixed ? 0m : driver == CostDriver.Trips ? trips : share, weeks);
            }
        }

        return [.. Together(weeks).OrderBy(week => week.Monday)];
    }

    /// <summary>
    /// All hours of the farm week by week, overhead included, as logged: those of the year before as well, when garlic was set.
    /// </summary>
    internal static Dictionary<DateOnly, WeeklyUse> OfFarm(SeasonReview season)
    {
        Dictionary<DateOnly, Sums> weeks = [];
        foreach (LaborRow row in season.Records.Labor)
        {
            Add(season, row, row.Hours, weeks);
        }

        return Together(weeks).ToDictionary(week => week.Monday);
    }

    private static void AddBeds(SeasonReview season, Enterprise enterprise, Dictionary<DateOnly, Sums> weeks)
    {
        foreach (BedStay bed in enterprise.Stays)
        {
            (DateOnly from, DateOnly to) = Stay(season, enterprise, bed);
            decimal aDay = bed.BedFeet / 7m;
            for (DateOnly day = from; day < to; day = day.AddDays(1))
            {
                At(weeks, day).BedFootWeeks += aDay;
            }
        }
    }

    /// <summary>The days a planting holds a bed; a perennial's inside the crop year.</summary>
    internal static (DateOnly From, DateOnly To) Stay(SeasonReview season, Enterprise enterprise, BedStay bed)
    {
        DateOnly to = bed.Out > bed.In ? bed.Out : bed.In.AddDays(1);
        if (!enterprise.Crop.Perennial)
        {
            return (bed.In, to);
        }

        DateOnly start = season.Settings.StartOf(enterprise.CropYear);
        DateOnly end = season.Settings.EndOf(enterprise.CropYear);
        return (bed.In > start ? bed.In : start, to < end ? to : end);
    }

    private static void AddHours(SeasonReview season, Charge charge, decimal share, Dictionary<DateOnly, Sums> weeks)
    {
        if (charge.Hours > 0m && share > 0m && charge.Origin is LaborRow row)
        {
            Add(season, row, charge.Hours * share, weeks);
        }
    }

    private static void Add(SeasonReview season, LaborRow row, decimal hours, Dictionary<DateOnly, Sums> weeks)
    {
        Sums week = At(weeks, row.Date);
        WorkerKind kind = season.Records.WorkerOn(row.Worker, row.Date).Kind;
        week.Hours += hours;
        week.HiredHours += kind == WorkerKind.Hired ? hours : 0m;
        week.OwnHours += kind == WorkerKind.Owner ? hours : 0m;
    }

    private static Sums At(Dictionary<DateOnly, Sums> weeks, DateOnly day)
    {
        DateOnly monday = MondayOf(day);
        return weeks.TryGetValue(monday, out Sums? week) ? week : weeks[monday] = new Sums();
    }

    private static IEnumerable<WeeklyUse> Together(Dictionary<DateOnly, Sums> weeks) =>
        weeks.Select(week =>
            new WeeklyUse(week.Key, week.Value.BedFootWeeks, week.Value.Hours, week.Value.HiredHours, week.Value.OwnHours)
        );

    /// <summary>A week's sums while they grow: day by day and row by row.</summary>
    private sealed class Sums
    {
        internal decimal BedFootWeeks { get; set; }

        internal decimal Hours { get; set; }

        internal decimal HiredHours { get; set; }

        internal decimal OwnHours { get; set; }
    }
}
