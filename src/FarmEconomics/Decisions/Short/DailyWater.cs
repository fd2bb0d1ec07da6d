using FarmEconomics.Records;
using FarmEconomics.Water;

namespace FarmEconomics.Decisions.Short;

/// <summary>
/// Water by day against its row of limits: what the daily list would have put on within the limit, so that a day which wanted more is full;
/// the crops that got water on those days, by what fell on their beds.
/// </summary>
internal static class DailyWater
{
    internal static IEnumerable<ThingUse> Find(
        WaterAndPower supply, SeasonDays days, WrittenLimits limits, decimal shortAt, List<NotChecked> notChecked)
    {
        if (!limits.PoolsOf(ScarceKind.Water).Any())
        {
            yield break;
        }

        if (supply.Water is not { } water)
        {
            notChecked.Add(new NotChecked("water", supply.Farm.WhyUnknown!));
            yield break;
        }

        List<ScarceSpan> spans = [];
        for (int i = 0; i < days.Days; i++)
        {
            DateOnly day = days.First.AddDays(i);
            if (limits.On(ScarceKind.Water, null, day) is { } limit && water.PutAtLimit(day) is { } liters)
            {
                spans.Add(new ScarceSpan(day, (decimal)(liters / supply.LitersPerUnit), limit, LimitSource.Limits));
            }
        }

        yield return new ThingUse(new ScarceThing(ScarceKind.Water, "water", spans, shortAt), set => Use(supply, days, set));
    }

    private static IEnumerable<EnterpriseUse> Use(WaterAndPower supply, SeasonDays days, DaySet set)
    {
        DateOnly[] shorts = [.. Enumerable.Range(0, days.Days).Select(days.First.AddDays).Where(set.Has)];
        ILookup<Planting, SowingWater> sowings = supply.Farm.Sowings.Where(sowing => sowing.Span.CropYear == supply.Season.CropYear)
            .ToLookup(sowing => sowing.Planting);
        foreach (Tracing.Enterprise enterprise in supply.Season.Plantings.Select(planting => planting.Enterprises[0]))
        {
            double liters = sowings[enterprise.Planting].Sum(sowing => shorts.Sum(day => supply.Water!.PutAtLimit(sowing, day)));
            if (liters > 0)
            {
                yield return new EnterpriseUse(enterprise, (decimal)(liters / supply.LitersPerUnit));
            }
        }
    }
}
