using Bogus;

namespace FarmEconomics.DemoFarm;

/// <summary>Work no crop owns: the boiler, snow, irrigation, the seedling house, mending, the office.</summary>
internal static class FarmWork
{
    public static IEnumerable<Chore> Chores()
    {
        var random = FarmFacts.RandomFor(6);
        for (var day = FarmFacts.FirstDay; day <= FarmFacts.AsOf; day = day.AddDays(1))
        {
            foreach (var chore in Rounds(day).Concat(Upkeep(day, random)).Concat(InTheBeds(day)))
            {
                yield return chore;
            }
        }
    }

    private static IEnumerable<Chore> Rounds(DateOnly day)
    {
        var weekday = day.DayOfWeek;
        // The hopper is filled and the ash drawn every few days the boiler burns; the hours are written down once a week.
        if (weekday == DayOfWeek.Sunday && day.Month is 1 or 2 or 3 or 4 or 5 or 10 or 11 or 12)
        {
            var hours = day.Month is 5 or 10 ? 0.5m : day.Month is 2 or 3 or 4 ? 1.5m : 1m;
            yield return new Chore(day, "Fill the hopper", hours, Hands.Owners, Pool: Pools.Boiler);
        }

        if (weekday is DayOfWeek.Monday or DayOfWeek.Wednesday or DayOfWeek.Saturday && day.Month is >= 2 and <= 6)
        {
            yield return new Chore(day, "Water seedlings", day.Month is 3 or 4 or 5 ? 1.5m : 0.75m, Hands.Owners);
        }

        if (weekday is DayOfWeek.Wednesday or DayOfWeek.Sunday && day.Month is >= 5 and <= 9)
        {
            var hours = day is { Year: 2025, Month: 8 } ? 3.5m : 2.5m;
            yield return new Chore(day, "Move sprinklers", hours, Hands.Owners, Pool: Pools.Water);
        }
    }

    private static IEnumerable<Chore> Upkeep(DateOnly day, Randomizer random)
    {
        if (day.Month is 1 or 2 or 12 && random.Int(0, 99) < 7)
        {
            var tunnel = random.Int(0, 2) switch { 0 => Pools.TunnelOne, 1 => Pools.TunnelTwo, _ => Pools.WarmHouse };
            yield return new Chore(day, "Clear snow", random.Int(2, 5) / 2m, Hands.Owners, Pool: tunnel);
        }

        if (day.DayOfWeek == DayOfWeek.Wednesday)
        {
            var hours = day.Month is 3 or 4 or 10 or 11 ? 6m : 4m;
            yield return new Chore(day, "Mend and maintain", hours, Hands.Owners, Pool: Mended(day.Month));
        }

        if (day.DayOfWeek is DayOfWeek.Monday or DayOfWeek.Sunday)
        {
            yield return new Chore(day, "Office", day.Month is 1 or 2 or 12 ? 6m : 3.75m, Hands.Owners);
        }
    }

    private static IEnumerable<Chore> InTheBeds(DateOnly day)
    {
        var weekday = day.DayOfWeek;
        // Early bed work in the houses is written down by the afternoon, not by the crop.
        if (weekday == DayOfWeek.Friday && day.Month == 2 && day.Day > 7)
        {
            yield return new Chore(day, "Prepare and sow", 1.5m, Hands.Owners);
        }

        if (day.Month == 10 && day.Day is >= 22 and <= 26 && weekday is not (DayOfWeek.Saturday or DayOfWeek.Sunday))
        {
            yield return new Chore(day, "Put beds to rest", 4m, Hands.Crew);
        }

        if (weekday == DayOfWeek.Wednesday && day.Month is >= 6 and <= 9 && day.Day > 14)
        {
            yield return new Chore(day, "Weed", 2m, Hands.Volunteer);
        }
    }

    private static string Mended(int month) => (month % 6) switch
    {
        0 => Pools.Water,
        1 => Pools.Panels,
        2 => Pools.Boiler,
        3 => Pools.SeedlingHouse,
        4 => Pools.TunnelOne,
        _ => Pools.PackShed,
    };
}
