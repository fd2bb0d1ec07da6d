using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Planning;

/// <summary>
/// What a crop did under one cover: from which week to which it was sown, how long it stood, when and how it gave, and how much at what
/// week. Weeks to the first picking, picking weeks and weeks in bed are medians; the yield of a week leans on plantings near it as far
/// as there are some, so that single lucky plantings aren't picked.
/// </summary>
internal sealed class SowingFacts
{
    private readonly FarmSettings settings;
    private readonly List<Seen> seen;
    private readonly double mean;

    internal SowingFacts(FarmSettings settings, IReadOnlyList<Enterprise> plantings, ILookup<Enterprise, Lot> lots)
    {
        this.settings = settings;
        seen = [.. plantings.Select(planting => new Seen(settings, planting, [.. lots[planting]]))];
        mean = seen.GroupBy(one => one.Year).Average(year => year.Sum(one => one.Units) / year.Sum(one => one.Feet));
        List<Seen> picked = seen.FindAll(one => one.ByOffset.Count > 0);
        Weeks = WeeksOf([.. seen.Select(one => one.In).Distinct().Order()]);
        First = Median(picked.Select(one => one.FirstOffset));
        int pickingWeeks = Math.Max(1, Median(picked.Select(one => one.LastOffset - one.FirstOffset + 1)));
        WeeksInBed = Math.Max(Median(seen.Select(one => one.Weeks)), First + pickingWeeks);
        NurseryWeeks = Median(seen.Select(one => one.NurseryWeeks));
        Pattern = PatternOf(picked, pickingWeeks);
        Trays = seen.Sum(one => one.Trays) / seen.Sum(one => one.Feet);
    }

    /// <summary>
    /// The weeks in which it may be sown: from the earliest to the latest in bed of any season; below 0 where it came in before its crop
    /// year began. In a longer gap, from spring to fall or through the winter, nothing tells that it grows: there only near a planting.
    /// </summary>
    internal IReadOnlyList<int> Weeks { get; }

    /// <summary>Weeks from bed to first picking.</summary>
    internal int First { get; }

    internal int WeeksInBed { get; }

    internal int NurseryWeeks { get; }

    /// <summary>Trays a bed-foot.</summary>
    internal double Trays { get; }

    /// <summary>Parts of the harvest by week from the first picking; they sum to 1.</summary>
    internal double[] Pattern { get; }

    /// <summary>
    /// Units of a bed-foot sown in a week: the mean, and b = n / (n + 4) of what the n plantings near the week gave beyond it.
    /// </summary>
    internal double YieldAt(int week)
    {
        List<Seen> near = seen.FindAll(one => IsNear(one, week));
        double b = near.Count / (near.Count + PlanSettings.MeanCounts);
        return near.Count == 0 ? mean : Math.Max(0.0, mean + (b * ((near.Sum(one => one.Units) / near.Sum(one => one.Feet)) - mean)));
    }

    private static int[] WeeksOf(int[] told)
    {
        bool IsTold(int week)
        {
            int before = Array.FindLast(told, one => one <= week), after = Array.Find(told, one => one >= week);
            return after - before <= PlanSettings.GapWeeks || Math.Min(week - before, after - week) <= PlanSettings.NearWeeks;
        }

        return [.. Enumerable.Range(told[0], told[^1] - told[0] + 1).Where(IsTold)];
    }

    private static bool IsNear(Seen one, int week) => Math.Abs(one.In - week) <= PlanSettings.NearWeeks;

    /// <summary>The week a planting came into its bed; below 0 before its crop year began.</summary>
    internal int InOf(Enterprise planting) => InOf(settings, planting);

    private static int InOf(FarmSettings settings, Enterprise planting) =>
        (int)Math.Floor((planting.Stays.Min(stay => stay.In).DayNumber - settings.StartOf(planting.CropYear).DayNumber) / 7.0);

    private static double[] PatternOf(List<Seen> picked, int weeks)
    {
        double[] parts = new double[weeks];
        foreach (Seen one in picked)
        {
            foreach ((int offset, double units) in one.ByOffset)
            {
                parts[Math.Min(weeks - 1, offset - one.FirstOffset)] += units;
            }
        }

        double all = parts.Sum();
        return all > 0.0 ? [.. parts.Select(part => part / all)] : [1.0];
    }

    private static int Median(IEnumerable<int> values)
    {
        List<decimal> all = [.. values.Select(value => (decimal)value)];
        return all.Count == 0 ? 0 : (int)Math.Round(Numbers.Median(all), MidpointRounding.AwayFromZero);
    }

    /// <summary>A planting as it was.</summary>
    private sealed class Seen
    {
        internal Seen(FarmSettings settings, Enterprise planting, List<Lot> lots)
        {
            DateOnly first = planting.Stays.Min(stay => stay.In);
            Year = planting.CropYear;
            In = InOf(settings, planting);
            Weeks = Math.Max(1, (planting.Stays.Max(stay => stay.Out).DayNumber - first.DayNumber + 6) / 7);
            DateOnly? sown = planting.Stays.Where(stay => stay.Row.Sown is not null).Select(stay => stay.Row.Sown).Min();
            NurseryWeeks = sown is { } day ? Math.Max(0, (first.DayNumber - day.DayNumber + 6) / 7) : 0;
            Feet = (double)planting.BedFeet.Value;
            Units = (double)planting.Harvested;
            Trays = (double)planting.Trays;
            foreach (Lot lot in lots.Where(lot => lot.Quantity > 0m))
            {
                int offset = Math.Max(0, (lot.Date.DayNumber - first.DayNumber) / 7);
                ByOffset[offset] = ByOffset.GetValueOrDefault(offset) + (double)lot.Quantity;
            }
        }

        internal int Year { get; }

        internal int In { get; }

        internal int Weeks { get; }

        internal int NurseryWeeks { get; }

        internal double Feet { get; }

        internal double Units { get; }

        internal double Trays { get; }

        internal SortedDictionary<int, double> ByOffset { get; } = [];

        internal int FirstOffset => ByOffset.Keys.First();

        internal int LastOffset => ByOffset.Keys.Last();
    }
}
