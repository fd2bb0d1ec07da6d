using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Decisions.Changes;

/// <summary>What a crop takes in one week.</summary>
/// <param name="Monday">The first day of the week.</param>
/// <param name="BedFootWeeks">Bed-foot-weeks held in it.</param>
/// <param name="Hours">Hours that come and go with it; those that vary with nothing, such as overhead, are left out.</param>
public sealed record WeeklyUse(DateOnly Monday, decimal BedFootWeeks, decimal Hours)
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
        SeasonReview season = costs.Season;
        SortedDictionary<DateOnly, (decimal Beds, decimal Hours)> weeks = [];
        foreach (Enterprise enterprise in budget.Enterprises)
        {
            AddBeds(season, enterprise, weeks);
            foreach (Charge charge in costs.DirectCharges(enterprise))
            {
                AddHours(charge, 1m, weeks, charge.VariesWith);
            }
        }

        HashSet<Enterprise> own = [.. budget.Enterprises];
        int[] columns = [.. Enumerable.Range(0, season.Network.Enterprises.Count).Where(i => own.Contains(season.Network.Enterprises[i]))];
        foreach (PoolResult pool in season.Pools.Where(pool => !pool.Pool.IsOverhead && pool.Hours > 0m))
        {
            decimal share = columns.Sum(column => season.Network.Running.Shares[pool.Pool.Index, column]);
            foreach (Charge charge in share > 0m ? pool.Rows : [])
            {
                AddHours(charge, share, weeks, pool.Pool.VariesWith);
            }
        }

        return weeks.Select(week => new WeeklyUse(week.Key, week.Value.Beds, week.Value.Hours)).ToList();
    }

    /// <summary>All hours of the farm week by week, overhead included, as logged.</summary>
    internal static Dictionary<DateOnly, decimal> OfFarm(SeasonReview season)
    {
        Dictionary<DateOnly, decimal> weeks = [];
        foreach (LaborRow row in season.Records.Labor)
        {
            if (season.Settings.WindowOf(row.Date) == season.CropYear)
            {
                weeks[MondayOf(row.Date)] = weeks.GetValueOrDefault(MondayOf(row.Date)) + row.Hours;
            }
        }

        return weeks;
    }

    private static void AddBeds(SeasonReview season, Enterprise enterprise, SortedDictionary<DateOnly, (decimal Beds, decimal Hours)> weeks)
    {
        foreach (BedStay bed in enterprise.Stays)
        {
            (DateOnly from, DateOnly to) = Stay(season, enterprise, bed);
            for (DateOnly day = from; day < to; day = day.AddDays(1))
            {
                (decimal beds, decimal hours) = weeks.GetValueOrDefault(MondayOf(day));
                weeks[MondayOf(day)] = (beds + (bed.BedFeet / 7m), hours);
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

    private static void AddHours(Charge charge, decimal share, SortedDictionary<DateOnly, (decimal Beds, decimal Hours)> weeks, VariesWith otherwise)
    {
        VariesWith behavior = charge.Stage is { } stage ? StageBehavior.Of(stage) : otherwise;
        if (charge.Hours > 0m && behavior != VariesWith.Nothing && charge.Origin is LaborRow row)
        {
            (decimal beds, decimal hours) = weeks.GetValueOrDefault(MondayOf(row.Date));
            weeks[MondayOf(row.Date)] = (beds, hours + (charge.Hours * share));
        }
    }
}
