using FarmEconomics.Budgets;
using FarmEconomics.Costing;
using FarmEconomics.Decisions;
using FarmEconomics.Decisions.Short;
using FarmEconomics.Records;
using FarmEconomics.Tracing;

namespace FarmEconomics.Planning;

/// <summary>What plantings took of hours in the seasons looked at, and which hours come whatever is grown.</summary>
internal sealed class WorkFacts
{
    private const double MostFirstWeek = 20.0;
    private readonly List<SeasonCosts> seasons;
    private readonly HashSet<int> logged;
    private readonly FarmRecords records;
    private readonly Dictionary<Enterprise, PlantingHours> hours = [];
    private readonly Dictionary<(int Year, int Week), double> ownByWeek = [];
    private readonly Dictionary<(int Year, int Week), double> hiredByWeek = [];
    private readonly Dictionary<(int Year, int Week), double> growByWeek = [];
    private readonly double[] fixedHours = new double[PlanModel.Weeks];

    internal WorkFacts(List<SeasonCosts> seasons)
    {
        this.seasons = seasons;
        records = seasons[^1].Season.Records;
        logged = [.. seasons.Where(costs => costs.Season.Known.Hours is null).Select(costs => costs.Season.CropYear)];
        AddLogged();
        foreach (SeasonCosts costs in seasons.Where(IsLogged))
        {
            Add(costs);
        }

        FirstWeek = FindFirstWeek();
    }

    /// <summary>Growing hours of a bed-foot in its first week over those in each later one, at least 1.</summary>
    internal double FirstWeek { get; }

    // Hours of a planting, its own and those through pools.
    private PlantingHours Of(Enterprise enterprise) => hours.GetValueOrDefault(enterprise);

    /// <summary>
    /// Nursery and growing hours of a bed-foot, from plantings of seasons whose hours are known: those of others aren't 0. None where no
    /// season's are.
    /// </summary>
    internal PlantingHours PerFoot(IEnumerable<Enterprise> plantings)
    {
        List<Enterprise> known = [.. plantings.Where(one => logged.Contains(one.CropYear))];
        double feet = known.Sum(one => (double)one.BedFeet.Value);
        return feet > 0.0 ? new(known.Sum(one => Of(one).Nursery) / feet, known.Sum(one => Of(one).Grow) / feet, 0.0) : default;
    }

    /// <summary>True where some of the plantings stood in a season whose hours are known.</summary>
    internal bool Knows(IEnumerable<Enterprise> plantings) => plantings.Any(one => logged.Contains(one.CropYear));

    /// <summary>Hours to pick and pack a unit, likewise.</summary>
    internal double HandlingOf(IEnumerable<Enterprise> plantings)
    {
        List<Enterprise> known = [.. plantings.Where(one => logged.Contains(one.CropYear))];
        double picked = known.Sum(one => (double)one.Harvested);
        return picked > 0.0 ? known.Sum(one => Of(one).Handle) / picked : 0.0;
    }

    /// <summary>The hours there are, with the limits table where it says.</summary>
    internal PlanHours There(WrittenLimits limits, DateOnly start, double ownCost)
    {
        double[] own = new double[PlanModel.Weeks];
        double[] hired = new double[PlanModel.Weeks];
        double mostHired = hiredByWeek.Values.DefaultIfEmpty(0.0).Max();
        double[] usual = [UsualOwn(0), UsualOwn(1)];
        for (int week = 0; week < PlanModel.Weeks; week++)
        {
            DateOnly day = start.AddDays(7 * week);
            double? all = (double?)limits.On(ScarceKind.Hours, null, day);
            own[week] = (double?)limits.On(ScarceKind.OwnHours, null, day) ?? Math.Min(usual[week / 26], all ?? double.PositiveInfinity);
            hired[week] = (double?)limits.On(ScarceKind.HiredHours, null, day)
                ?? (all is { } most ? Math.Max(0.0, most - own[week]) : mostHired);
        }

        double? hiredCost = HiredCost();
        return new PlanHours(own, hired, fixedHours, ownCost, hiredCost ?? ownCost)
        {
            HiredCostKnown = hiredCost is not null || !Array.Exists(hired, hours => hours > 0.0),
        };
    }

    /// <summary>The week of a crop year, from 0; the last holds the days left over.</summary>
    internal static int WeekOf(FarmSettings settings, DateOnly day) =>
        Math.Min(PlanModel.Weeks - 1, (day.DayNumber - settings.StartOf(settings.WindowOf(day)).DayNumber) / 7);

    /// <summary>The 90th percentile of weekly own hours of a half of the crop year, by straight lines between sorted weeks.</summary>
    private double UsualOwn(int half)
    {
        double[] weeks = [.. ownByWeek.Where(week => week.Key.Week / 26 == half).Select(week => week.Value).Order()];
        if (weeks.Length == 0)
        {
            return 0.0;
        }

        double place = PlanSettings.OwnHoursPart * (weeks.Length - 1);
        int below = (int)place;
        return weeks[below] + ((place - below) * (weeks[Math.Min(below + 1, weeks.Length - 1)] - weeks[below]));
    }

    /// <summary>What an own hour was worth in the last season whose workers have a wage for some; null: none has.</summary>
    internal double? OwnWorth()
    {
        foreach (SeasonCosts costs in Enumerable.Reverse(seasons))
        {
            List<LaborUse> own =
            [
                .. costs.Season.Trace.LaborByWindow[costs.Season.CropYear]
                    .Where(use => use.Kind == WorkerKind.Owner && costs.Season.AmountOf(use) is not null),
            ];
            if (own.Sum(use => use.Hours) > 0m)
            {
                return (double)costs.Season.CostOfHour(own);
            }
        }

        return null;
    }

    /// <summary>What a hired hour cost in the last season that has some, else the workers' wage with the burden.</summary>
    private double? HiredCost()
    {
        foreach (SeasonCosts costs in Enumerable.Reverse(seasons))
        {
            List<LaborUse> hired =
            [
                .. costs.Season.Trace.LaborByWindow[costs.Season.CropYear].Where(use => use.Kind == WorkerKind.Hired),
            ];
            if (hired.Sum(use => costs.Season.AmountOf(use)?.Amount ?? 0m) > 0m)
            {
                return (double)costs.Season.CostOfHour(hired);
            }
        }

        decimal? wage = records
            .Tables.Workers.Where(row => row.Kind == WorkerKind.Hired)
            .Select(row => row.Wage)
            .LastOrDefault(wage => wage is not null);
        return (double?)(wage * (1m + (records.Settings.PayrollBurdenPercent / 100m)));
    }

    /// <summary>Own and hired hours of the seasons' weeks, whichever year's crops they were for: fall's garlic is next year's.</summary>
    private void AddLogged()
    {
        HashSet<int> years = [.. seasons.Select(costs => costs.Season.CropYear)];
        foreach (LaborRow row in records.Labor.Where(row => years.Contains(records.Settings.WindowOf(row.Date))))
        {
            (int, int) key = (records.Settings.WindowOf(row.Date), WeekOf(records.Settings, row.Date));
            WorkerKind kind = records.WorkerOn(row.Worker, row.Date).Kind;
            if (kind is WorkerKind.Owner or WorkerKind.Hired)
            {
                Dictionary<(int, int), double> byWeek = kind is WorkerKind.Owner ? ownByWeek : hiredByWeek;
                byWeek[key] = byWeek.GetValueOrDefault(key) + (double)row.Hours;
            }
        }
    }

    /// <summary>False for what comes whatever is grown, and for trips.</summary>
    private static bool IsOfPlantings(CostDriver driver) => driver is not (CostDriver.Fixed or CostDriver.Trips);

    private bool IsLogged(SeasonCosts costs) => logged.Contains(costs.Season.CropYear);

    private void Add(SeasonCosts costs)
    {
        SeasonReview season = costs.Season;
        foreach (Enterprise enterprise in season.Network.Enterprises)
        {
            foreach (Charge charge in costs.DirectCharges(enterprise).Where(charge => charge.Hours > 0m))
            {
                AddWeek(season, charge, charge.VariesWith);
                if (IsOfPlantings(charge.VariesWith))
                {
                    AddHours(enterprise, charge, (double)charge.Hours);
                }
            }
        }

        foreach (PoolResult pool in season.Pools)
        {
            foreach (Charge charge in pool.Rows.Where(charge => charge.Hours > 0m))
            {
                CostDriver driver = pool.Pool.IsOverhead ? CostDriver.Fixed : PoolSharing.DriverOf(charge, pool.Pool);
                AddWeek(season, charge, driver);
                for (int i = 0; IsOfPlantings(driver) && i < season.Network.Enterprises.Count; i++)
                {
                    double part = (double)(charge.Hours * season.Network.Running.Shares[pool.Pool.Index, i]);
                    AddHours(season.Network.Enterprises[i], charge, part);
                }
            }
        }
    }

    private void AddHours(Enterprise enterprise, Charge charge, double more)
    {
        PlantingHours had = hours.GetValueOrDefault(enterprise);
        hours[enterprise] = charge.Stage switch
        {
            Stage.Nursery => had with { Nursery = had.Nursery + more },
            Stage.Grow => had with { Grow = had.Grow + more },
            _ => had with { Handle = had.Handle + more },
        };
    }

    private void AddWeek(SeasonReview season, Charge charge, CostDriver driver)
    {
        if (charge.Origin is not LaborRow row)
        {
            return;
        }

        int week = WeekOf(season.Settings, row.Date);
        (int, int) key = (season.Settings.WindowOf(row.Date), week);
        if (charge.Stage is Stage.Grow && IsOfPlantings(driver))
        {
            growByWeek[key] = growByWeek.GetValueOrDefault(key) + (double)charge.Hours;
        }

        if (!IsOfPlantings(driver) && records.WorkerOn(row.Worker, row.Date).Kind != WorkerKind.Volunteer)
        {
            fixedHours[week] += (double)charge.Hours / logged.Count;
        }
    }

    /// <summary>
    /// Least squares of the growing hours of each week on the bed-feet that came in and those that stood: sowing and setting out take more
    /// than a week of weeding.
    /// </summary>
    private double FindFirstWeek()
    {
        Dictionary<(int, int), (double Came, double Stood)> feet = [];
        foreach (SeasonCosts costs in seasons.Where(IsLogged))
        {
            foreach (BedStay stay in costs.Season.Network.Enterprises.Where(one => !one.Crop.Perennial).SelectMany(one => one.Stays))
            {
                for (DateOnly day = stay.In; day < stay.Out; day = day.AddDays(7))
                {
                    (int, int) key = (costs.Season.Settings.WindowOf(day), WeekOf(costs.Season.Settings, day));
                    (double came, double stood) = feet.GetValueOrDefault(key);
                    feet[key] = (came + (day == stay.In ? (double)stay.BedFeet : 0.0), stood + (double)stay.BedFeet);
                }
            }
        }

        double cc = 0.0, cs = 0.0, ss = 0.0, ch = 0.0, sh = 0.0;
        foreach (((int, int) key, (double came, double stood)) in feet)
        {
            double worked = growByWeek.GetValueOrDefault(key);
            (cc, cs, ss) = (cc + (came * came), cs + (came * stood), ss + (stood * stood));
            (ch, sh) = (ch + (came * worked), sh + (stood * worked));
        }

        double det = (cc * ss) - (cs * cs);
        if (det <= 0.0)
        {
            return 1.0;
        }

        double first = ((ch * ss) - (sh * cs)) / det, each = ((sh * cc) - (ch * cs)) / det;
        return first <= 0.0 ? 1.0 : each <= 0.0 ? MostFirstWeek : Math.Min(MostFirstWeek, 1.0 + (first / each));
    }
}

/// <summary>Hours of a planting.</summary>
/// <param name="Nursery">Raising seedlings.</param>
/// <param name="Grow">Growing.</param>
/// <param name="Handle">Picking, packing and selling what names it.</param>
internal readonly record struct PlantingHours(double Nursery, double Grow, double Handle);
