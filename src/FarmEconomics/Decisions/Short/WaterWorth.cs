using FarmEconomics.Units;
using FarmEconomics.Water;

namespace FarmEconomics.Decisions.Short;

/// <summary>A step by which a limit of the season's water is moved to tell what it is worth.</summary>
public enum WaterStep
{
    /// <summary>Water: 100 gallons a day, 400 liters on a farm in meters.</summary>
    Water,

    /// <summary>One more set of sprinklers, as many as there are, for the same hours and out of the same water.</summary>
    Sprinklers,

    /// <summary>The sprinklers run an hour a day longer, out of the same water.</summary>
    Hour,

    /// <summary>The sprinklers run an hour a day longer, and the pump gives the water for it.</summary>
    PumpHour,
}

/// <summary>What a step more of a limit would have saved over the season.</summary>
/// <param name="Step">The step.</param>
/// <param name="Amount">How much it is: gallons or liters a day, sprinklers, hours a day.</param>
/// <param name="Saved">Money not lost with so much more.</param>
/// <param name="LostByLess">Money more lost with as much less; not available where nothing would be left.</param>
public sealed record WaterWorth(WaterStep Step, decimal Amount, Result Saved, Result LostByLess);

/// <summary>Moves the limits of a season's water one after the other and waters it again.</summary>
internal static class WaterWorths
{
    internal static IEnumerable<WaterWorth> Of(WaterAndPower supply, SprinklerLimit sprinklers)
    {
        if (supply.Water is not { HasLimit: true } water)
        {
            yield break;
        }

        DateOnly[] days = [.. Enumerable.Range(0, water.Days).Select(water.First.AddDays)];
        bool limited = Array.Exists(days, day => supply.LimitOn(day).Liters is not null);
        if (limited)
        {
            yield return Moved(supply, WaterStep.Water, supply.LimitStep, (limit, _, times) =>
                limit with
                {
                    Liters = Math.Max(0, limit.Liters + (times * supply.LimitStep * supply.LitersPerUnit) ?? 0),
                }
            );
        }

        foreach (WaterWorth worth in OfSprinklers(supply, sprinklers, days, limited))
        {
            yield return worth;
        }
    }

    private static IEnumerable<WaterWorth> OfSprinklers(WaterAndPower supply, SprinklerLimit sprinklers, DateOnly[] days, bool limited)
    {
        double[] gives =
        [
            .. supply.Farm.Blocks.Where(block => block.SprinklerLiters is not null).Select(block => block.SprinklerLiters!.Value),
        ];
        decimal set = days.Select(sprinklers.AtOnce).Max() ?? 0m;
        if (gives.Length == 0 || set == 0m || days.All(day => sprinklers.HoursOn(day) is null))
        {
            yield break;
        }

        double mean = gives.Average();
        double AtOnce(DateOnly day) => (double)(sprinklers.AtOnce(day) ?? 0m);
        yield return Moved(supply, WaterStep.Sprinklers, set, (limit, _, times) =>
            limit with
            {
                SprinklerHours = limit.SprinklerHours * (1 + times),
            }
        ) with
        {
            LostByLess = Result.NotAvailable("no sprinkler would be left"),
        };
        WaterLimit Longer(WaterLimit limit, DateOnly day, int times) =>
            limit with { SprinklerHours = Math.Max(0, limit.SprinklerHours + (times * AtOnce(day)) ?? 0) };
        yield return Moved(supply, WaterStep.Hour, 1m, Longer);
        if (limited)
        {
            yield return Moved(supply, WaterStep.PumpHour, 1m, (limit, day, times) => Longer(limit, day, times) with
            {
                Liters = limit.Liters is { } liters ? Math.Max(0, liters + (times * AtOnce(day) * mean)) : null,
            });
        }
    }

    // A day without a limit stays without one.
    private static WaterWorth Moved(WaterAndPower supply, WaterStep step, decimal amount, Func<WaterLimit, DateOnly, int, WaterLimit> moved)
    {
        decimal With(int times) => (decimal)supply.Water!.LostWith(day =>
        {
            WaterLimit now = supply.LimitOn(day), other = moved(now, day, times);
            return new WaterLimit(now.Liters is null ? null : other.Liters, now.SprinklerHours is null ? null : other.SprinklerHours);
        })!.Value;
        if (supply.Water!.LostAtLimit is not { } atLimit)
        {
            Result unknown = Result.NotAvailable(supply.WhyNoWorth!);
            return new WaterWorth(step, amount, unknown, unknown);
        }

        decimal lost = (decimal)atLimit;
        return new WaterWorth(step, amount, Result.Known(lost - With(1)), Result.Known(With(-1) - lost));
    }
}
