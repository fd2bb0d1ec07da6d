using FarmEconomics.Records;

namespace FarmEconomics.Water;

/// <summary>
/// What was put on each block and bed by day, in mm at the roots, from the watering table. A calendar week between two rows of a block's
/// season that holds none is unknown, and so is one with a row whose amount can't be told. Under a roof, where no rain falls, so is all
/// time
/// before the block's first row of a crop year and after its last: what lives there was watered, and nobody wrote it down.
/// </summary>
public sealed class WaterLog
{
    private readonly Dictionary<(WaterBlock Block, DateOnly Day), double> ofBlock = [];
    private readonly Dictionary<(string Bed, DateOnly Day), double> ofBed = [];
    private readonly HashSet<(WaterBlock Block, DateOnly Monday)> unknown = [];
    private readonly Dictionary<DateOnly, double> liters = [];
    private readonly Dictionary<(WaterBlock Block, int CropYear), (DateOnly First, DateOnly Last)> told = [];
    private readonly FarmSettings settings;

    internal WaterLog(FarmRecords records, IReadOnlyList<WaterBlock> blocks)
    {
        Dictionary<string, WaterBlock> byName = blocks.ToDictionary(block => block.Name, StringComparer.OrdinalIgnoreCase);
        Dictionary<WaterBlock, SortedSet<DateOnly>> weeks = [];
        settings = records.Settings;
        double unit = records.Settings.LengthUnit == LengthUnit.M ? 1 : WaterMath.LitersPerGallon;
        foreach (WateringRow row in records.Tables.Watering)
        {
            BedRow? bed = row.Bed is { } named ? records.Tables.Beds.Find(one => Same(one.Bed, named)) : null;
            if (byName.GetValueOrDefault((row.Block ?? bed?.Block ?? "").Trim()) is { } block)
            {
                Add(row, block, bed, unit);
                (weeks.TryGetValue(block, out SortedSet<DateOnly>? mondays) ? mondays : weeks[block] = []).Add(MondayOf(row.Date));
            }
            else
            {
                NotLaid++;
            }
        }

        foreach ((WaterBlock block, SortedSet<DateOnly> mondays) in weeks)
        {
            MarkSilentWeeks(block, mondays);
        }
    }

    /// <summary>True when there is a row that tells of a block.</summary>
    public bool IsThere => ofBlock.Count + ofBed.Count > 0;

    /// <summary>Rows of beds that lie in no block of blocks.csv.</summary>
    public int NotLaid { get; }

    /// <summary>Weeks of blocks of which it isn't known what was put on, by block and Monday.</summary>
    public IEnumerable<(WaterBlock Block, DateOnly Monday)> Unknown => unknown.OrderBy(week => week.Block.Index)
        .ThenBy(week => week.Monday);

    /// <summary>True on a day of which it isn't known what was put on.</summary>
    /// <param name="sowing">A sowing.</param>
    /// <param name="day">The day.</param>
    /// <returns>Whether it is not known.</returns>
    public bool IsUnknown(SowingWater sowing, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(sowing);
        return unknown.Contains((sowing.Block, MondayOf(day)))
            || (sowing.Covered && !(told.TryGetValue((sowing.Block, settings.WindowOf(day)), out (DateOnly First, DateOnly Last) span)
                && day >= span.First && day <= span.Last));
    }

    /// <summary>Water that reached the roots of a sowing on a day, mm.</summary>
    /// <param name="sowing">The sowing.</param>
    /// <param name="day">The day.</param>
    /// <returns>mm.</returns>
    public double On(SowingWater sowing, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(sowing);
        return ofBlock.GetValueOrDefault((sowing.Block, day)) + ofBed.GetValueOrDefault((sowing.Stay.Bed.Name, day));
    }

    /// <summary>Liters put on the farm on a day, as written.</summary>
    /// <param name="day">The day.</param>
    /// <returns>Liters.</returns>
    public double Liters(DateOnly day) => liters.GetValueOrDefault(day);

    /// <summary>The Monday of a day's week.</summary>
    /// <param name="day">The day.</param>
    /// <returns>The Monday.</returns>
    public static DateOnly MondayOf(DateOnly day) => day.AddDays(-(((int)day.DayOfWeek + 6) % 7));

    private void Add(WateringRow row, WaterBlock block, BedRow? bed, double unit)
    {
        double? amount = row.Gallons is { } written ? (double)written * unit : (double?)row.SprinklerHours * block.SprinklerLiters;
        if (amount is not { } put)
        {
            unknown.Add((block, MondayOf(row.Date)));
            return;
        }

        liters[row.Date] = Liters(row.Date) + put;
        (WaterBlock, int) season = (block, settings.WindowOf(row.Date));
        (DateOnly first, DateOnly last) = told.TryGetValue(season, out (DateOnly First, DateOnly Last) span) ? span : (row.Date, row.Date);
        told[season] = (row.Date < first ? row.Date : first, row.Date > last ? row.Date : last);
        double area = bed is { } one ? WaterBlock.BedArea(one, one.LengthFt, settings) : block.AreaM2;
        double depth = put * block.Efficiency / area;
        if (bed is { } named)
        {
            (string, DateOnly) key = (named.Bed.Trim(), row.Date);
            ofBed[key] = ofBed.GetValueOrDefault(key) + depth;
        }
        else
        {
            ofBlock[(block, row.Date)] = ofBlock.GetValueOrDefault((block, row.Date)) + depth;
        }
    }

    // Between the first and the last row of one crop year only: nobody waters in winter.
    private void MarkSilentWeeks(WaterBlock block, SortedSet<DateOnly> mondays)
    {
        DateOnly? before = null;
        foreach (DateOnly monday in mondays)
        {
            for (DateOnly? week = before?.AddDays(7); week < monday
                && settings.WindowOf(before!.Value) == settings.WindowOf(monday); week = week.Value.AddDays(7))
            {
                unknown.Add((block, week.Value));
            }

            before = monday;
        }
    }

    private static bool Same(string one, string other) => one.Trim().Equals(other.Trim(), StringComparison.OrdinalIgnoreCase);
}
