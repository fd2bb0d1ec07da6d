namespace FarmEconomics.Water;

/// <summary>
/// A season watered day by day by the rule of the daily list, with a limit a day or without one: a block is watered once it would lose
/// something within the week, those first that save most per liter; every block may be watered in part.
/// </summary>
internal sealed class SeasonRun
{
    private const int LookAhead = 1 + WaterTriage.DaysAfter;
    private const int Steps = 4;
    private const double LeastLoss = 1e-6;

    // Half a unit of the currency: a day on which less than that was kept back is not short.
    private const double LeastKeptBack = 0.5;

    private readonly IReadOnlyList<SeasonSowing> sowings;
    private readonly double[] depletion;
    private readonly double[][] lostParts;
    private readonly DateOnly first;

    private SeasonRun(IReadOnlyList<SeasonSowing> sowings, DateOnly first, int days)
    {
        this.sowings = sowings;
        this.first = first;
        depletion = new double[sowings.Count];
        lostParts = [.. sowings.Select(sowing => sowing.Water.Loss.None())];
        Lost = new double[sowings.Count];
        LostByDay = new double[days];
        GivenByDay = new double[days];
        ShortByDay = new bool[days];
        GivenMm = new double[sowings.Count];
    }

    /// <summary>Money lost by each sowing.</summary>
    internal double[] Lost { get; }

    /// <summary>Money lost by day.</summary>
    internal double[] LostByDay { get; }

    /// <summary>Liters put on by day.</summary>
    internal double[] GivenByDay { get; }

    /// <summary>Days on which the limit kept back water that would have saved something.</summary>
    internal bool[] ShortByDay { get; }

    /// <summary>Depth that reached the roots of each block that was watered at all, by day, mm.</summary>
    internal Dictionary<WaterBlock, double[]> DepthByDay { get; } = [];

    /// <summary>Watering that reached each sowing's roots, mm.</summary>
    internal double[] GivenMm { get; }

    internal double TotalLost => Lost.Sum();

    /// <summary>Waters a season.</summary>
    /// <param name="sowings">Its sowings, by block.</param>
    /// <param name="first">The first day.</param>
    /// <param name="days">How many days.</param>
    /// <param name="limit">What there is on a day.</param>
    /// <returns>The season.</returns>
    internal static SeasonRun Of(IReadOnlyList<SeasonSowing> sowings, DateOnly first, int days, Func<DateOnly, WaterLimit> limit)
    {
        SeasonRun run = new(sowings, first, days);
        List<int>[] blocks = [.. Enumerable.Range(0, sowings.Count).GroupBy(i => sowings[i].Water.Block).OrderBy(group => group.Key.Index)
            .Select(group => group.ToList())];
        for (int day = 0; day < days; day++)
        {
            run.Water(blocks, day, limit(first.AddDays(day)));
        }

        return run;
    }

    private void Water(List<int>[] blocks, int day, WaterLimit limit)
    {
        List<(BlockOutlook Outlook, GainCurve Curve)> thirsty = Thirsty(blocks, first.AddDays(day));
        double[] given = Share(thirsty, limit);
        GivenByDay[day] = given.Sum();
        ShortByDay[day] = thirsty.Select((one, i) => one.Curve.All - one.Curve.Gain(given[i])).Sum() > LeastKeptBack;
        for (int i = 0; i < thirsty.Count; i++)
        {
            WaterBlock block = thirsty[i].Outlook.Block;
            (DepthByDay.TryGetValue(block, out double[]? depth) ? depth
                : DepthByDay[block] = new double[LostByDay.Length])[day] = given[i] / thirsty[i].Outlook.PerMm;
        }

        for (int i = 0; i < sowings.Count; i++)
        {
            Grow(i, day, DepthByDay.TryGetValue(sowings[i].Water.Block, out double[]? depth) ? depth[day] : 0);
        }
    }

    /// <summary>The blocks that would lose something within the week, in their order.</summary>
    private List<(BlockOutlook Outlook, GainCurve Curve)> Thirsty(List<int>[] blocks, DateOnly date)
    {
        List<(BlockOutlook Outlook, GainCurve Curve)> thirsty = [];
        foreach (List<int> block in blocks)
        {
            List<SowingOutlook> standing = [];
            foreach (int i in block)
            {
                if (sowings[i].Water.IsKnown(date) && sowings[i].StillToCome(date) is > 0 and double stake)
                {
                    standing.Add(new SowingOutlook(sowings[i].Water, date, LookAhead, depletion[i], stake));
                }
            }

            if (standing.Count > 0)
            {
                WaterBlock place = standing[0].Sowing.Block;
                BlockOutlook outlook = new(place, standing, 1, place.LitersPerMm);
                if (outlook.Unwatered > LeastLoss && outlook.Curve(Steps) is { All: > LeastLoss } curve)
                {
                    thirsty.Add((outlook, curve));
                }
            }
        }

        return thirsty;
    }

    private static double[] Share(List<(BlockOutlook Outlook, GainCurve Curve)> thirsty, WaterLimit limit)
    {
        double most = thirsty.Sum(one => one.Curve.Most);
        double[]? takes = limit.SprinklerHours is null ? null : [.. thirsty.Select(one => 1 / one.Outlook.Block.SprinklerLiters ?? 0)];
        return GainCurve.Share([.. thirsty.Select(one => one.Curve)], Math.Min(limit.Liters ?? most, most),
            (takes, limit.SprinklerHours ?? double.PositiveInfinity));
    }

    private void Grow(int i, int day, double water)
    {
        DateOnly date = first.AddDays(day);
        SowingWater sowing = sowings[i].Water;
        if (!sowing.IsKnown(date))
        {
            depletion[i] = 0;
            return;
        }

        RootZoneDay result = sowing.Next(date, depletion[i], water);
        depletion[i] = result.After;
        GivenMm[i] += water;
        double part = sowing.Loss.On(date.DayNumber - sowing.Span.From.DayNumber, sowing.Need(date) - result.Used, lostParts[i]);
        Lost[i] += part * sowings[i].StillToCome(date);
        LostByDay[day] += part * sowings[i].StillToCome(date);
    }
}

/// <summary>A sowing of a season with the money it was still to bring on each day.</summary>
internal sealed class SeasonSowing
{
    private readonly double[] stillToCome;

    internal SeasonSowing(SowingWater water, Func<SowingWater, DateOnly, double?> worth)
    {
        Water = water;
        stillToCome = new double[water.Span.End.DayNumber - water.Span.From.DayNumber];
        double most = 0;
        bool unknown = false;
        for (int i = 0; i < stillToCome.Length; i++)
        {
            double? money = worth(water, water.Span.From.AddDays(i));
            unknown |= money is null;
            most = Math.Abs(money ?? 0) > Math.Abs(most) ? money!.Value : most;
            stillToCome[i] = Math.Max(0, money ?? 0);
        }

        Worth = most switch
        {
            _ when unknown => YieldWorth.Unknown,
            > 0 => YieldWorth.Pays,
            < 0 => YieldWorth.PaysNothing,
            _ => YieldWorth.NotPicked,
        };
    }

    /// <summary>Whether its yield brings more than what goes with it.</summary>
    internal YieldWorth Worth { get; }

    internal SowingWater Water { get; }

    internal double StillToCome(DateOnly day) => Water.Span.Holds(day) ? stillToCome[day.DayNumber - Water.Span.From.DayNumber] : 0;
}
