using FarmEconomics.Records;

namespace FarmEconomics.Water;

/// <summary>A week of a season's water, in liters and money.</summary>
/// <param name="Monday">The Monday; the first week begins with the season, the last ends with it.</param>
/// <param name="Needed">Liters it would have taken to lose no yield, whatever it was worth.</param>
/// <param name="Limit">Liters there were by the limit; null: no limit is written.</param>
/// <param name="Put">Liters put on as logged; null without a log.</param>
/// <param name="DaysShort">Days on which the limit kept back water that would have saved something.</param>
/// <param name="LostAtLimit">
/// Money lost at the limit even when watered by the list every day; null without a limit, or where no sowing's worth is known.
/// </param>
/// <param name="LostAsWatered">Money lost as logged; null without a log, or where no sowing's worth is known.</param>
public sealed record WaterWeek(
    DateOnly Monday, double Needed, double? Limit, double? Put, int DaysShort, double? LostAtLimit, double? LostAsWatered);

/// <summary>What a crop drank in a season.</summary>
/// <param name="Crop">The crop.</param>
/// <param name="Needed">Liters of watering its sowings would have taken to lose no yield, whatever it was worth.</param>
/// <param name="LostAtLimit">Money it lost at the limit; null without one, or where its worth isn't known.</param>
/// <param name="LostAsWatered">Money it lost as logged; null without a log, or where its worth isn't known.</param>
public sealed record CropWaterUse(Crop Crop, double Needed, double? LostAtLimit, double? LostAsWatered)
{
    /// <summary>How far it is known what its yield is worth beyond the work of picking and selling it.</summary>
    public YieldWorth Worth { get; init; }
}

/// <summary>Whether more yield of a crop brings more than what goes with it.</summary>
public enum YieldWorth
{
    /// <summary>It brings more: what drought takes of it is money lost.</summary>
    Pays,

    /// <summary>Picking and selling it takes all that it brings: drought costs nothing.</summary>
    PaysNothing,

    /// <summary>Nothing of it was picked.</summary>
    NotPicked,

    /// <summary>The season's records can't tell.</summary>
    Unknown,
}

/// <summary>
/// A season's water: what it would have taken, what the limit allowed, what was put on, and what was lost. The harvest counts as it was, so
/// that a season which was dry reads a little low. Money is of what each sowing was still to bring, less what goes with it.
/// </summary>
public sealed class WaterSeason
{
    // A yield as large as the money of a small bed, so that the thresholds of a run hold for it too.
    private const double WholeYield = 1000;

    private const double MostOfIt = 0.5;

    private readonly List<SeasonSowing> sowings;
    private readonly Func<DateOnly, WaterLimit> limit;
    private readonly SeasonRun enough;
    private readonly SeasonRun? held;
    private readonly List<WaterBalance> balances = [];

    private WaterSeason(FarmWater farm, int cropYear, Func<DateOnly, WaterLimit> limit, Func<SowingWater, DateOnly, double?> worth,
        Func<SowingWater, DateOnly, double?> leftToPick)
    {
        (Farm, CropYear, this.limit) = (farm, cropYear, limit);
        SowingWater[] own = [.. farm.Sowings.Where(sowing => sowing.Span.CropYear == cropYear)];
        sowings = [.. own.Select(sowing => new SeasonSowing(sowing, worth))];
        (First, Days) = SpanOf(farm, cropYear);

        // What beds need is no question of money: a crop that doesn't pay for its picking is as thirsty.
        enough = SeasonRun.Of([.. own.Select(sowing => new SeasonSowing(sowing, (one, day) => leftToPick(one, day) * WholeYield))], First,
            Days, _ => default);
        DateOnly after = First.AddDays(Days);
        WeatherEndsBeforePicking = Days > 0 && after < farm.Records.Settings.EndOf(cropYear)
            && Array.Exists(own, sowing => !sowing.Covered && sowing.Span.Holds(after) && leftToPick(sowing, after) > MostOfIt)
            ? after.AddDays(-1) : null;
        HasLimit = Enumerable.Range(0, Days).Any(day => limit(First.AddDays(day)).IsThere);
        held = HasLimit ? SeasonRun.Of(sowings, First, Days, limit) : null;
        if (farm.Log.IsThere)
        {
            balances.AddRange(sowings.Select(sowing => WaterBalance.Of(sowing.Water, farm.Log, First.AddDays(Days))));
        }

        Weeks = [.. WeeksOf()];
        Crops = [.. CropsOf()];
    }

    /// <summary>The farm's water.</summary>
    public FarmWater Farm { get; }

    /// <summary>The crop year.</summary>
    public int CropYear { get; }

    /// <summary>The first day looked at.</summary>
    public DateOnly First { get; }

    /// <summary>How many days are.</summary>
    public int Days { get; }

    /// <summary>True when a limit is written for a day of the season.</summary>
    public bool HasLimit { get; }

    /// <summary>True when watering is logged.</summary>
    public bool HasLog => balances.Count > 0;

    /// <summary>The weeks in which something grew, in order.</summary>
    public IReadOnlyList<WaterWeek> Weeks { get; }

    /// <summary>The crops, in the order of the crops table.</summary>
    public IReadOnlyList<CropWaterUse> Crops { get; }

    /// <summary>Every sowing's balance as watered; empty without a log.</summary>
    public IReadOnlyList<WaterBalance> Balances => balances;

    /// <summary>
    /// The last day of the weather table, where most of a sowing under the sky was still to be picked after it: nothing is told of those
    /// days.
    /// </summary>
    public DateOnly? WeatherEndsBeforePicking { get; }

    /// <summary>Days of the season on which something stood in a block and the weather isn't known.</summary>
    public int DaysWithoutWeather => Enumerable.Range(0, Days).Select(First.AddDays).Count(day => !Farm.Weather.On(day).IsKnown
        && sowings.Exists(sowing => sowing.Water.Span.Holds(day)));

    /// <summary>Days on which the limit kept back water that would have saved something.</summary>
    public int DaysShort => Weeks.Sum(week => week.DaysShort);

    /// <summary>Those days, in order.</summary>
    internal IEnumerable<DateOnly> ShortDays =>
        held is null ? [] : Enumerable.Range(0, Days).Where(day => held.ShortByDay[day]).Select(day => First.AddDays(day));

    /// <summary>Liters it would have taken to lose nothing.</summary>
    public double Needed => enough.GivenByDay.Sum();

    /// <summary>Money lost at the limit; null without one, or where no sowing's worth is known.</summary>
    public double? LostAtLimit => WorthIsKnown ? held?.TotalLost : null;

    /// <summary>Money lost as watered, on the days told; null without a log, or where no sowing's worth is known.</summary>
    public double? LostAsWatered => HasLog && WorthIsKnown ? Weeks.Sum(week => week.LostAsWatered) : null;

    /// <summary>True unless something grows and the worth of none of it is known; sums then hold that of the others.</summary>
    public bool WorthIsKnown => sowings.Count == 0 || sowings.Exists(sowing => sowing.Worth != YieldWorth.Unknown);

    /// <summary>Follows a season's water.</summary>
    /// <param name="farm">The farm's water.</param>
    /// <param name="cropYear">The crop year.</param>
    /// <param name="limit">What there is to water with on a day.</param>
    /// <param name="stillToCome">The money a sowing is still to bring from a day on, less what goes with it; null where it isn't
    /// known.</param>
    /// <param name="leftToPick">The part of its yield still to be picked; null: as long as it is to bring money.</param>
    /// <returns>The season.</returns>
    public static WaterSeason Of(FarmWater farm, int cropYear, Func<DateOnly, WaterLimit> limit, Func<SowingWater, DateOnly,
        double?> stillToCome, Func<SowingWater, DateOnly, double?>? leftToPick = null)
    {
        ArgumentNullException.ThrowIfNull(farm);
        ArgumentNullException.ThrowIfNull(limit);
        ArgumentNullException.ThrowIfNull(stillToCome);
        return new WaterSeason(farm, cropYear, limit, stillToCome, leftToPick ?? stillToCome);
    }

    /// <summary>The day that lost most: at the limit, else as watered; null where none lost anything.</summary>
    public DateOnly? WorstDay
    {
        get
        {
            double[] lost = held is { TotalLost: > 0 } ? held.LostByDay : HasLog ? LoggedLosses() : [];
            int at = lost.Length == 0 ? -1 : Array.IndexOf(lost, lost.Max());
            return at >= 0 && lost[at] > 0 ? First.AddDays(at) : null;
        }
    }

    /// <summary>Liters the daily list would have put on within the limit; null without a limit, or on a day that isn't looked at.</summary>
    /// <param name="day">The day.</param>
    /// <returns>Liters.</returns>
    public double? PutAtLimit(DateOnly day) =>
        day >= First && day < First.AddDays(Days) ? held?.GivenByDay[day.DayNumber - First.DayNumber] : null;

    /// <summary>Liters of it that fell on a sowing's part of its bed.</summary>
    /// <param name="sowing">The sowing.</param>
    /// <param name="day">The day.</param>
    /// <returns>Liters; 0 where there are none.</returns>
    public double PutAtLimit(SowingWater sowing, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(sowing);
        return sowing.IsKnown(day) && PutAtLimit(day) is not null && held!.DepthByDay.TryGetValue(sowing.Block, out double[]? depth)
            ? depth[day.DayNumber - First.DayNumber] * sowing.AreaM2 / sowing.Block.Efficiency : 0;
    }

    /// <summary>Sprinkler-hours the daily list would have taken within the limit; null without a limit, or on a day that isn't looked
    /// at.</summary>
    /// <param name="day">The day.</param>
    /// <returns>Sprinklers times hours.</returns>
    public double? SprinklerHoursAtLimit(DateOnly day) => PutAtLimit(day) is null ? null
        : held!.DepthByDay.Where(block => block.Key.SprinklerLiters is not null)
            .Sum(block => block.Value[day.DayNumber - First.DayNumber] * block.Key.LitersPerMm / block.Key.SprinklerLiters!.Value);

    /// <summary>Money lost with so many liters a day more than the limit, or less; null without a limit.</summary>
    /// <param name="more">Liters a day, below 0 for less.</param>
    /// <returns>Money.</returns>
    public double? LostWith(double more) =>
        LostWith(day => limit(day) is { Liters: { } liters } there ? there with { Liters = Math.Max(0, liters + more) } : limit(day));

    /// <summary>Money lost with other limits; null where the season has none.</summary>
    /// <param name="other">What there would be on a day.</param>
    /// <returns>Money.</returns>
    public double? LostWith(Func<DateOnly, WaterLimit> other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return HasLimit ? SeasonRun.Of(sowings, First, Days, other).TotalLost : null;
    }

    private static (DateOnly First, int Days) SpanOf(FarmWater farm, int cropYear)
    {
        FarmSettings settings = farm.Records.Settings;
        if (farm.Weather.First is not { } begins || farm.WhyUnknown is not null)
        {
            return (settings.StartOf(cropYear), 0);
        }

        // Garlic of this crop year stands since the autumn before: its days before the year's first are looked at by its own balance alone.
        DateOnly first = begins > settings.StartOf(cropYear) ? begins : settings.StartOf(cropYear);
        DateOnly end = farm.Weather.Last!.Value.AddDays(1) < settings.EndOf(cropYear) ? farm.Weather.Last.Value.AddDays(1)
            : settings.EndOf(cropYear);
        return (first, Math.Max(0, end.DayNumber - first.DayNumber));
    }

    private IEnumerable<WaterWeek> WeeksOf()
    {
        double[] logged = LoggedLosses();
        foreach (IGrouping<DateOnly, int> week in Enumerable.Range(0, Days).GroupBy(day => WaterLog.MondayOf(First.AddDays(day))))
        {
            if (!week.Any(day => sowings.Exists(sowing => sowing.Water.Span.Holds(First.AddDays(day)))))
            {
                continue;
            }

            double?[] limits = [.. week.Select(day => limit(First.AddDays(day)).Liters)];
            yield return new WaterWeek(week.Key, week.Sum(day => enough.GivenByDay[day]),
                Array.TrueForAll(limits, one => one is not null) ? limits.Sum() : null,
                HasLog ? week.Sum(day => Farm.Log.Liters(First.AddDays(day))) : null,
                held is null ? 0 : week.Count(day => held.ShortByDay[day]),
                held is null || !WorthIsKnown ? null : week.Sum(day => held.LostByDay[day]),
                HasLog && WorthIsKnown ? week.Sum(day => logged[day]) : null);
        }
    }

    private double[] LoggedLosses()
    {
        double[] lost = new double[Days];
        for (int i = 0; i < balances.Count; i++)
        {
            foreach ((DateOnly day, _, double money) in LossesOf(i))
            {
                lost[day.DayNumber - First.DayNumber] += money;
            }
        }

        return lost;
    }

    private IEnumerable<(DateOnly Day, double Part, double Money)> LossesOf(int place)
    {
        WaterBalance balance = balances[place];
        double[] parts = balance.Sowing.Loss.None();
        for (int i = 0; i < balance.Days.Count; i++)
        {
            DateOnly day = balance.Sowing.Span.From.AddDays(i);
            double lost = balance.Sowing.Loss.On(i, balance.Missed(i), parts);
            if (day >= First && lost > 0)
            {
                yield return (day, lost, lost * sowings[place].StillToCome(day));
            }
        }
    }

    /// <summary>Every block's days as watered in which something stood, block by block; none without a log.</summary>
    /// <returns>The days.</returns>
    public IEnumerable<BlockDay> BlockDays()
    {
        Dictionary<(WaterBlock Block, DateOnly Day), DaySum> sums = [];
        for (int i = 0; i < balances.Count; i++)
        {
            Dictionary<DateOnly, (double Part, double Money)> lost = LossesOf(i).ToDictionary(one => one.Day, one => (one.Part, one.Money));
            for (int day = 0; day < balances[i].Days.Count; day++)
            {
                DateOnly date = balances[i].Sowing.Span.From.AddDays(day);
                if (date >= First)
                {
                    (WaterBlock, DateOnly) key = (balances[i].Sowing.Block, date);
                    (sums.TryGetValue(key, out DaySum? sum) ? sum : sums[key] = new DaySum()).Add(
                        balances[i],
                        day,
                        lost.GetValueOrDefault(date)
                    );
                }
            }
        }

        return sums.OrderBy(one => one.Key.Block.Index).ThenBy(one => one.Key.Day).Select(one => one.Value.Of(one.Key.Block, one.Key.Day));
    }

    private IEnumerable<CropWaterUse> CropsOf()
    {
        IEnumerable<IGrouping<Crop, int>> byCrop = Enumerable.Range(0, sowings.Count).GroupBy(i => sowings[i].Water.Planting.Crop)
            .OrderBy(crop => crop.Key.Index);
        foreach (IGrouping<Crop, int> crop in byCrop)
        {
            YieldWorth worth = crop.Max(i => sowings[i].Worth) == YieldWorth.Unknown ? YieldWorth.Unknown
                : crop.Min(i => sowings[i].Worth);
            bool known = worth != YieldWorth.Unknown;
            yield return new CropWaterUse(crop.Key, crop.Sum(i =>
                enough.GivenMm[i] * sowings[i].Water.AreaM2 / sowings[i].Water.Block.Efficiency),
                held is null || !known ? null : crop.Sum(i => held.Lost[i]),
                HasLog && known ? crop.Sum(i => LossesOf(i).Sum(loss => loss.Money)) : null)
            {
                Worth = worth,
            };
        }
    }

    /// <summary>A block's day while it is added up.</summary>
    private sealed class DaySum
    {
        private int told;
        private int notTold;
        private double area;
        private (double Rain, double Watering, double Used, double Stored, double Drained, double Needed, double Part, double Money) sum;

        internal void Add(WaterBalance balance, int index, (double Part, double Money) lost)
        {
            if (!balance.IsTold(index))
            {
                notTold++;
                return;
            }

            RootZoneDay day = balance.Days[index];
            double size = balance.Sowing.AreaM2;
            told++;
            area += size;
            sum = (
                sum.Rain + (day.Rain * size),
                sum.Watering + (day.Water * size),
                sum.Used + (day.Used * size),
                sum.Stored + ((day.Before - day.After) * size),
                sum.Drained + (day.Drained * size),
                sum.Needed + (balance.Sowing.Need(balance.Sowing.Span.From.AddDays(index)) * size),
                sum.Part + (lost.Part * size),
                sum.Money + lost.Money
            );
        }

        internal BlockDay Of(WaterBlock block, DateOnly day) => new(block, day, told, notTold)
        {
            Rain = sum.Rain,
            Watering = sum.Watering,
            Used = sum.Used,
            Stored = sum.Stored,
            Drained = sum.Drained,
            Needed = sum.Needed,
            YieldLost = area > 0 ? sum.Part / area : null,
            MoneyLost = sum.Money,
        };
    }
}
