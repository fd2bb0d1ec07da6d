using FarmEconomics.Records;
using FarmEconomics.Water;

namespace FarmEconomics.Decisions.Short;

/// <summary>
/// Water and sprinklers by day against their rows of limits: what the daily list would have put on within them, so that a day which wanted
/// more is full; the crops that got water on those days, by what fell on their beds.
/// </summary>
internal sealed class DailyWater(WaterAndPower supply, SeasonDays days, WrittenLimits limits, decimal shortAt)
{
    internal IEnumerable<ResourceUse> Find(List<NotChecked> notChecked)
    {
        bool water = limits.PoolsOf(ScarceKind.Water).Any();
        bool sprinklers = limits.Sprinklers.IsThere;
        if (limits.Sprinklers.NotChecked is { } half)
        {
            notChecked.Add(half);
            sprinklers = false;
        }

        if (supply.Water is null)
        {
            string[] names = [.. water ? ["water"] : Array.Empty<string>(), .. sprinklers ? ["sprinklers"] : Array.Empty<string>()];
            notChecked.AddRange(names.Select(name => new NotChecked(name, supply.WhyNoWater!)));
            yield break;
        }

        if (water && !Enumerable.Range(0, days.Days).Any(day => limits.On(ScarceKind.Water, null, days.First.AddDays(day)) > 0m))
        {
            notChecked.Add(new NotChecked("water", "its limit is 0"));
        }
        else if (water)
        {
            yield return Of(ScarceKind.Water, "water", day => limits.On(ScarceKind.Water, null, day),
                day => supply.Water.PutAtLimit(day) / supply.LitersPerUnit, _ => 1 / supply.LitersPerUnit);
        }

        if (sprinklers && !supply.Farm.Blocks.Any(block => block.SprinklerLiters is not null))
        {
            notChecked.Add(new NotChecked("sprinklers", "blocks.csv doesn't say what a sprinkler gives"));
        }
        else if (sprinklers)
        {
            yield return Of(ScarceKind.Sprinklers, "sprinklers", limits.Sprinklers.On, supply.Water.SprinklerHoursAtLimit,
                block => 1 / block.SprinklerLiters ?? 0);
        }
    }

    private ResourceUse Of(
        ScarceKind kind,
        string name,
        Func<DateOnly, decimal?> limitOn,
        Func<DateOnly, double?> used,
        Func<WaterBlock, double> perLiter
    )
    {
        List<ScarceSpan> spans = [];
        for (int i = 0; i < days.Days; i++)
        {
            DateOnly day = days.First.AddDays(i);
            if (limitOn(day) is > 0m and { } limit && used(day) is { } amount) // of nothing there, no part is in use
            {
                spans.Add(new ScarceSpan(day, (decimal)amount, limit, LimitSource.Limits));
            }
        }

        return new ResourceUse(new ScarceResource(kind, name, spans, shortAt), set => Use(set, perLiter));
    }

    private IEnumerable<EnterpriseUse> Use(DaySet set, Func<WaterBlock, double> perLiter)
    {
        DateOnly[] shorts = [.. Enumerable.Range(0, days.Days).Select(days.First.AddDays).Where(set.Has)];
        ILookup<Planting, SowingWater> sowings = supply.Farm.Sowings.Where(sowing => sowing.Span.CropYear == supply.Season.CropYear)
            .ToLookup(sowing => sowing.Planting);
        foreach (Tracing.Enterprise enterprise in supply.Season.Plantings.Select(planting => planting.Enterprises[0]))
        {
            double used = sowings[enterprise.Planting].Sum(sowing =>
                perLiter(sowing.Block) is > 0 and double per ? shorts.Sum(day => supply.Water!.PutAtLimit(sowing, day)) * per : 0);
            if (used > 0)
            {
                yield return new EnterpriseUse(enterprise, (decimal)used);
            }
        }
    }
}
