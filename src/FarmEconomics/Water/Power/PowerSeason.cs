using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Water.Power;

/// <summary>A month of electricity.</summary>
/// <param name="Month">Its first day; of the first and last month only the days of the season count.</param>
/// <param name="Load">kWh wanted.</param>
/// <param name="Made">kWh the panels made.</param>
/// <param name="Spilled">kWh made and of no use.</param>
/// <param name="DaysShort">Days on which sun and battery fell short.</param>
/// <param name="Generated">kWh a generator made for them.</param>
/// <param name="Short">kWh that were not there at all.</param>
public sealed record PowerMonth(DateOnly Month, double Load, double Made, double Spilled, int DaysShort, double Generated, double Short)
{
    /// <summary>kWh less missing with one kWh more of battery, in that month alone.</summary>
    public double SavedByBattery { get; init; }

    /// <summary>kWh more missing with one kWh less of it.</summary>
    public double CostOfLessBattery { get; init; }

    /// <summary>kWh less missing with one kW more of panels, in that month alone; null: what a kW makes isn't known.</summary>
    public double? SavedByPanels { get; init; }

    /// <summary>kWh more missing with one kW less of them; null: what a kW makes isn't known.</summary>
    public double? CostOfLessPanels { get; init; }
}

/// <summary>What a load had to give up.</summary>
/// <param name="Load">The load.</param>
/// <param name="Wanted">kWh it wanted in the season.</param>
/// <param name="Shed">kWh it went without, if loads gave way in their order.</param>
/// <param name="Days">Days on which it did.</param>
public sealed record ShedLoad(PowerLoad Load, double Wanted, double Shed, int Days);

/// <summary>A season's electricity: loads, panels and battery day by day, and what more of them would be worth.</summary>
public sealed class PowerSeason
{
    private const double Whole = 1;
    private const double Trial = 0.01;
    private const double LeastShort = 1e-6;
    private const int HoursPerDay = 24;

    private readonly double[] loads;
    private readonly double[] made;
    private readonly double?[] perKw;
    private readonly PowerSupply supply;
    private readonly Battery battery;

    private PowerSeason(FarmRecords records, int cropYear)
    {
        supply = records.Settings.Supply;
        Loads = LoadsOf(records);
        First = records.Settings.StartOf(cropYear);
        DateOnly until = records.AsOf.AddDays(1) < records.Settings.EndOf(cropYear) ? records.AsOf.AddDays(1)
            : records.Settings.EndOf(cropYear);
        int days = Math.Max(0, until.DayNumber - First.DayNumber);
        (loads, made, perKw) = (new double[days], new double[days], new double?[days]);
        IsWritten = records.Tables.PowerMade.Count > 0 || supply != new PowerSupply();
        WhyUnknown = Fill(records);
        battery = new Battery((double)((supply.BatteryKwh ?? 0m) * supply.BatteryUsablePercent / 100m),
            (double)supply.BatteryEfficiencyPercent / 100, (double)(supply.GeneratorKw ?? 0m) * HoursPerDay);
        Days = WhyUnknown is null ? BatteryBalance.Run(loads, made, _ => battery) : [];
        Months = [.. MonthsOf()];
        Shed = [.. ShedOf()];
    }

    /// <summary>
    /// The pool whose loads are looked at: the one of power_made.csv, else the only one with loads; null where there is none.
    /// </summary>
    public string? Pool { get; private set; }

    /// <summary>The first day.</summary>
    public DateOnly First { get; }

    /// <summary>The days; none where the balance isn't known.</summary>
    public IReadOnlyList<PowerDay> Days { get; }

    /// <summary>Why there is no balance; null where there is one.</summary>
    public string? WhyUnknown { get; }

    /// <summary>True when anything of panels, battery or generator is written; a farm on the grid has loads alone.</summary>
    public bool IsWritten { get; }

    /// <summary>Days whose output comes from the logger's table; the others from the panels' monthly yield.</summary>
    public int DaysLogged { get; private set; }

    /// <summary>The months.</summary>
    public IReadOnlyList<PowerMonth> Months { get; }

    /// <summary>The loads of the pool, in the order they give way.</summary>
    public IReadOnlyList<PowerLoad> Loads { get; }

    /// <summary>What each load had to give up, in that order; loads that gave up nothing are in it.</summary>
    public IReadOnlyList<ShedLoad> Shed { get; }

    /// <summary>Days on which sun and battery fell short.</summary>
    public int DaysShort => Days.Count(day => day.Missing > LeastShort);

    /// <summary>kWh that sun and battery didn't cover.</summary>
    public double Missing => Days.Sum(day => day.Missing);

    /// <summary>Hours the generator ran by the logger's table; null where no day of the season says any.</summary>
    public double? GeneratorHoursLogged { get; private set; }

    /// <summary>Hours of the generator that takes; null without one.</summary>
    public double? GeneratorHours => supply.GeneratorKw is > 0m ? Days.Sum(day => day.Generated) / (double)supply.GeneratorKw : null;

    /// <summary>
    /// What a kWh less of load is worth, every day the same part less: the part of it that would have been missing, times what the
    /// generator costs; nothing where sun and battery always do. Not available without a balance, or without the cost of a kWh.
    /// </summary>
    public Result MarginalPerKwh
    {
        get
        {
            if (WhyUnknown is { } why)
            {
                return Result.NotAvailable(why);
            }

            return PartMissing is not { } part ? Result.NotAvailable("no loads")
                : Missing <= LeastShort ? Result.Known(0m)
                : supply.GeneratorCostPerKwh is { } cost ? Result.Known((decimal)part * cost)
                : Result.NotAvailable("farm.csv doesn't say what a kWh that is missing costs (generator_cost_per_kwh)");
        }
    }

    /// <summary>
    /// The part of a kWh less of load, every day the same part less, that would have been missing, 0 to 1: the shadow price of the loads in
    /// kWh. Null without a balance or without loads.
    /// </summary>
    public double? PartMissing
    {
        get
        {
            double less = WhyUnknown is null ? loads.Sum() * Trial : 0;
            return less > 0 ? (Missing - MissingWith([.. loads.Select(load => load * (1 - Trial))], made, _ => battery)) / less : null;
        }
    }

    /// <summary>Follows a season's electricity.</summary>
    /// <param name="records">The records.</param>
    /// <param name="cropYear">The crop year.</param>
    /// <returns>The season.</returns>
    public static PowerSeason Of(FarmRecords records, int cropYear)
    {
        ArgumentNullException.ThrowIfNull(records);
        return new PowerSeason(records, cropYear);
    }

    /// <summary>kWh less missing over the season with more of battery and panels all through it; below 0 for less of them.</summary>
    /// <param name="batteryKwh">kWh of battery more, of which the usable part counts.</param>
    /// <param name="panelKw">kW of panels more.</param>
    /// <returns>kWh; null where what a kW makes isn't known.</returns>
    public double? SavedWith(double batteryKwh, double panelKw)
    {
        if (WhyUnknown is not null || (panelKw != 0 && Array.Exists(perKw, one => one is null)))
        {
            return null;
        }

        return Missing - MissingWith(loads, Panels(panelKw, _ => true), _ => Sized(batteryKwh));
    }

    private List<PowerLoad> LoadsOf(FarmRecords records)
    {
        string[] pools = [.. records.Tables.Loads.Select(load => load.Pool.Trim()).Distinct(StringComparer.OrdinalIgnoreCase)];
        Pool = records.Tables.PowerMade.Find(row => pools.Contains(row.Pool.Trim(), StringComparer.OrdinalIgnoreCase))?.Pool.Trim()
            ?? (pools.Length == 1 ? pools[0] : null);
        return [.. records.Tables.Loads.FindAll(load => IsOfPool(load.Pool)).ConvertAll(row => PowerLoad.Of(row, records))
            .OrderBy(load => load.Order)];
    }

    private bool IsOfPool(string pool) => string.Equals(pool.Trim(), Pool, StringComparison.OrdinalIgnoreCase);

    private string? Fill(FarmRecords records)
    {
        Dictionary<DateOnly, double> logged = [];
        foreach (PowerMadeRow row in records.Tables.PowerMade.FindAll(row => IsOfPool(row.Pool)))
        {
            logged[row.Date] = (double)row.Kwh;
            if (row.GeneratorHours is { } hours && row.Date >= First && row.Date < First.AddDays(loads.Length))
            {
                GeneratorHoursLogged = (GeneratorHoursLogged ?? 0) + (double)hours;
            }
        }

        bool unknown = false;
        for (int i = 0; i < loads.Length; i++)
        {
            DateOnly day = First.AddDays(i);
            loads[i] = Loads.Sum(load => load.On(day));
            double? month = (double?)supply.PanelYield?[day.Month];
            double? told = logged.TryGetValue(day, out double kwh) ? kwh : null;
            DaysLogged += told is null ? 0 : 1;
            perKw[i] = told is { } one && supply.PanelKw is > 0m ? one / (double)supply.PanelKw : month;
            double? output = told ?? month * (double?)supply.PanelKw;
            unknown |= output is null;
            made[i] = output ?? 0;
        }

        return records.Tables.Loads.Count == 0 ? "there is no loads table"
            : Pool is null ? "loads draw on several pools, and no row of power_made.csv says which of them the panels feed"
            : supply.BatteryKwh is null ? "farm.csv doesn't say what the battery holds (battery_kwh)"
            : unknown
                ? "what the panels made is not known: power_made.csv has no row for some days, and farm.csv no panel_kw and panel_yield"
            : null;
    }

    private IEnumerable<PowerMonth> MonthsOf()
    {
        foreach (IGrouping<DateOnly, int> month in Enumerable.Range(0, Days.Count).GroupBy(i => MonthOf(First.AddDays(i))))
        {
            bool Holds(int i) => MonthOf(First.AddDays(i)) == month.Key;
            bool known = month.All(i => perKw[i] is not null);
            double WithBattery(double kwh) => MissingWith(loads, made, i => Holds(i) ? Sized(kwh) : battery);
            double WithPanels(double kw) => MissingWith(loads, Panels(kw, Holds), _ => battery);
            yield return new PowerMonth(month.Key, month.Sum(i => Days[i].Load), month.Sum(i => Days[i].Made), month.Sum(i =>
                Days[i].Spilled),
                month.Count(i => Days[i].Missing > LeastShort), month.Sum(i => Days[i].Generated), month.Sum(i => Days[i].Short))
            {
                SavedByBattery = Missing - WithBattery(Whole),
                CostOfLessBattery = WithBattery(-Whole) - Missing,
                SavedByPanels = known ? Missing - WithPanels(Whole) : null,
                CostOfLessPanels = known ? WithPanels(-Whole) - Missing : null,
            };
        }
    }

    private IEnumerable<ShedLoad> ShedOf()
    {
        double[] shed = new double[Loads.Count];
        int[] days = new int[Loads.Count];
        double[] wanted = new double[Loads.Count];
        for (int day = 0; day < Days.Count; day++)
        {
            double missing = Days[day].Short;
            for (int i = 0; i < Loads.Count; i++)
            {
                double load = Loads[i].On(First.AddDays(day));
                double gives = Math.Min(load, missing);
                wanted[i] += load;
                shed[i] += gives;
                days[i] += gives > LeastShort ? 1 : 0;
                missing -= gives;
            }
        }

        return Loads.Select((load, i) => new ShedLoad(load, wanted[i], shed[i], days[i])).Where(load => load.Wanted > 0);
    }

    private static DateOnly MonthOf(DateOnly day) => new(day.Year, day.Month, 1);

    private Battery Sized(double more) =>
        battery with { UsableKwh = Math.Max(0, battery.UsableKwh + (more * (double)supply.BatteryUsablePercent / 100)) };

    private double[] Panels(double more, Func<int, bool> on) =>
        [.. made.Select((kwh, i) => on(i) ? Math.Max(0, kwh + (more * (perKw[i] ?? 0))) : kwh)];

    private static double MissingWith(double[] loads, double[] made, Func<int, Battery> battery) =>
        BatteryBalance.Run(loads, made, battery).Sum(day => day.Missing);
}
