using FarmEconomics.Budgets;
using FarmEconomics.Decisions.Avoidable;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Water;

namespace FarmEconomics.Decisions.Short;

/// <summary>
/// What a sowing is still to bring from a day on, less the cost that goes with it: what one more part of its yield adds to the farm, times
/// the part not yet picked. Of the season reviewed, where it is over, as it was; else the crop's mean of that season per bed-foot, picked
/// as long after planting as it was then.
/// </summary>
public sealed class SowingWorth
{
    private readonly SeasonReview season;
    private readonly bool over;
    private readonly Dictionary<(Planting Planting, int CropYear), SowingHarvest> own = [];
    private readonly Dictionary<Crop, CropHarvest?> crops = [];

    private SowingWorth(SeasonCosts costs)
    {
        season = costs.Season;
        over = season.Settings.IsOver(season.CropYear, season.Records.AsOf);
        ILookup<Enterprise, Lot> lots = season.Trace.Lots.ToLookup(lot => lot.Enterprise);
        foreach (EnterpriseBudget crop in season.Crops)
        {
            BoxesOfCrop boxes = costs.Avoidable.BoxesOf(crop);
            foreach (EnterpriseBudget planting in season.Plantings.Where(planting => planting.Crop == crop.Crop))
            {
                Enterprise enterprise = planting.Enterprises[0];
                own[(enterprise.Planting, enterprise.CropYear)] = new SowingHarvest(
                    enterprise,
                    FirstOf(enterprise.Planting, enterprise.CropYear, enterprise.Stays.Min(stay => stay.In)),
                    planting.Known.NoNetReturn is null
                        ? (double)(OfYield(costs.Model(planting)) + boxes.MoreThanPaid(enterprise))
                        : null,
                    [.. lots[enterprise]]
                );
            }
        }

        foreach (IGrouping<Crop, EnterpriseBudget> crop in season.Plantings.GroupBy(planting => planting.Crop!))
        {
            crops[crop.Key] = CropHarvest.Of([.. crop.Select(planting => own[(planting.Enterprises[0].Planting, planting.CropYear)])]);
        }
    }

    /// <summary>Prices the sowings by a season.</summary>
    /// <param name="costs">The season's costs.</param>
    /// <returns>What sowings are worth.</returns>
    public static SowingWorth Of(SeasonCosts costs)
    {
        ArgumentNullException.ThrowIfNull(costs);
        return new SowingWorth(costs);
    }

    /// <summary>Money a sowing is still to bring.</summary>
    /// <param name="sowing">The sowing.</param>
    /// <param name="day">From this day on.</param>
    /// <returns>Money, unrounded; null where the season's records can't tell.</returns>
    public double? StillToCome(SowingWater sowing, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(sowing);
        if (over && sowing.Span.CropYear == season.CropYear)
        {
            SowingHarvest? harvest = own.GetValueOrDefault((sowing.Planting, sowing.Span.CropYear));
            return harvest?.Worth * harvest?.PartOf(sowing.Stay) * harvest?.NotPicked(day);
        }

        DateOnly first = FirstOf(sowing.Planting, sowing.Span.CropYear, sowing.Span.From);
        return crops.GetValueOrDefault(sowing.Planting.Crop) is { } crop
            ? crop.WorthPerBedFoot * (double)sowing.Stay.BedFeet * crop.NotPicked(day.DayNumber - first.DayNumber)
            : null;
    }

    /// <summary>The part of a sowing's yield that is still to be picked, whatever it is worth.</summary>
    /// <param name="sowing">The sowing.</param>
    /// <param name="day">From this day on.</param>
    /// <returns>0 to 1; 0 where nothing of it is ever picked, null where the season's records can't tell.</returns>
    public double? LeftToPick(SowingWater sowing, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(sowing);
        return over && sowing.Span.CropYear == season.CropYear
            ? own.GetValueOrDefault((sowing.Planting, sowing.Span.CropYear))?.NotPicked(day)
            : crops.GetValueOrDefault(sowing.Planting.Crop)?.NotPicked(
                day.DayNumber - FirstOf(sowing.Planting, sowing.Span.CropYear, sowing.Span.From).DayNumber);
    }

    /// <summary>
    /// What the whole yield of a bed-foot of a crop added in the season, money; null where the season's records can't tell.
    /// </summary>
    internal double? PerBedFoot(Crop crop) => crops.GetValueOrDefault(crop)?.WorthPerBedFoot;

    /// <summary>
    /// The first day a stay's bed is free again: as written or traced where its season is over; else as long after planting as the crop
    /// stood in the season reviewed, on the median. A perennial stands until a row says that it was taken out.
    /// </summary>
    /// <param name="stay">The stay.</param>
    /// <returns>The day.</returns>
    public DateOnly EndOf(BedStay stay)
    {
        ArgumentNullException.ThrowIfNull(stay);
        DateOnly closing = season.Records.AsOf;
        bool open = stay.Row.OutOfBed is null && !stay.Planting.Crop.Perennial && stay.Out.AddDays(30) > closing;
        return open && crops.GetValueOrDefault(stay.Planting.Crop) is { } crop && stay.In.AddDays(crop.DaysInBed) is var expected
            && expected > stay.Out
            ? expected
            : stay.Planting.Crop.Perennial && stay.Row.OutOfBed is null ? DateOnly.MaxValue : stay.Out;
    }

    /// <summary>
    /// The day from which it is counted when it is picked: set, or for a perennial, set once for years, its crop year's first.
    /// </summary>
    private DateOnly FirstOf(Planting planting, int cropYear, DateOnly set) =>
        planting.Crop.Perennial ? season.Settings.StartOf(cropYear) : set;

    /// <summary>What the whole yield adds beyond what stays when nothing is picked, boxes at what members paid.</summary>
    private static decimal OfYield(SensitivityModel model) => model.Contribution(1m, 1m) - model.Contribution(1m, 0m);
}

/// <summary>What one planting gave, day by day.</summary>
internal sealed class SowingHarvest
{
    private readonly Enterprise enterprise;
    private readonly (DateOnly Day, double Quantity)[] picks;
    private readonly double picked;

    internal SowingHarvest(Enterprise enterprise, DateOnly first, double? worth, IReadOnlyList<Lot> lots)
    {
        this.enterprise = enterprise;
        First = first;
        Worth = worth;
        picks = [.. lots.Select(lot => (lot.Date, (double)lot.Quantity))];
        picked = picks.Sum(pick => pick.Quantity);
    }

    /// <summary>The day from which it is counted when it was picked.</summary>
    internal DateOnly First { get; }

    /// <summary>What its whole yield added; null where its budget isn't known.</summary>
    internal double? Worth { get; }

    internal Enterprise Enterprise => enterprise;

    internal IEnumerable<(DateOnly Day, double Quantity)> Picks => picks;

    /// <summary>The part of the planting that stands in a stay: by bed-foot-days.</summary>
    internal double PartOf(BedStay stay)
    {
        int at = Array.IndexOf([.. enterprise.Stays], stay);
        return at < 0 || enterprise.BedFootDays.Value <= 0m ? 0 : (double)(enterprise.BedFootDaysByRow[at] / enterprise.BedFootDays.Value);
    }

    /// <summary>The part of what was picked that was picked on the day or later.</summary>
    internal double NotPicked(DateOnly day) => picked <= 0 ? 0 : picks.Where(pick => pick.Day >= day).Sum(pick => pick.Quantity) / picked;
}

/// <summary>A crop's mean of a season: worth per bed-foot, days in bed, and how long after planting it was picked.</summary>
internal sealed class CropHarvest
{
    private readonly double[] pickedBefore;

    private CropHarvest(IReadOnlyList<SowingHarvest> sowings, double bedFeet)
    {
        WorthPerBedFoot = sowings.All(sowing => sowing.Worth is not null) ? sowings.Sum(sowing => sowing.Worth) / bedFeet : null;
        int[] days = [.. sowings.SelectMany(sowing => sowing.Enterprise.Stays).Select(stay => stay.Days).Order()];
        DaysInBed = days[days.Length / 2];
        (int Day, double Quantity)[] picks = [.. sowings.SelectMany(sowing => sowing.Picks
            .Select(pick => (pick.Day.DayNumber - sowing.First.DayNumber, pick.Quantity))).Where(pick => pick.Item1 >= 0)];
        double all = picks.Sum(pick => pick.Quantity);
        pickedBefore = new double[(picks.Length == 0 ? 0 : picks.Max(pick => pick.Day)) + 2];
        for (int day = 1; day < pickedBefore.Length; day++)
        {
            pickedBefore[day] = all > 0 ? picks.Where(pick => pick.Day < day).Sum(pick => pick.Quantity) / all : 1;
        }
    }

    internal double? WorthPerBedFoot { get; }

    internal int DaysInBed { get; }

    internal static CropHarvest? Of(IReadOnlyList<SowingHarvest> sowings)
    {
        double feet = (double)sowings.Sum(sowing => sowing.Enterprise.BedFeet.Value);
        return feet > 0 ? new CropHarvest(sowings, feet) : null;
    }

    internal double NotPicked(int day) => day < 0 ? 1 : 1 - pickedBefore[Math.Min(day, pickedBefore.Length - 1)];
}
