namespace FarmEconomics.DemoFarm;

/// <summary>Work no crop owns: stoking, snow, irrigation, the seedling house, mending, the office.</summary>
internal static class FarmWork
{
    public static IEnumerable<Chore> Chores()
    {
        var random = FarmFacts.RandomFor(6);
        for (var day = FarmFacts.FirstDay; day <= FarmFacts.AsOf; day = day.AddDays(1))
        {
            var weekday = day.DayOfWeek;
            // The boiler is stoked every day it burns; the hours are written down once a week.
            if (weekday == DayOfWeek.Sunday && day.Month is 1 or 2 or 3 or 4 or 5 or 10 or 11 or 12)
            {
                yield return new Chore(day, "Stoke the boiler", day.Month is 5 or 10 ? 1m : day.Month is 2 or 3 or 4 ? 2.5m : 1.5m, Hands.Owners, Pool: Pools.Boiler);
            }

            if (weekday == DayOfWeek.Wednesday && day.Month is >= 2 and <= 6)
            {
                yield return new Chore(day, "Water seedlings", day.Month is 3 or 4 or 5 ? 2m : 1m, Hands.Owners);
            }

            if (weekday == DayOfWeek.Monday && day.Month is >= 5 and <= 9)
            {
                yield return new Chore(day, "Move sprinklers", day is { Year: 2025, Month: 8 } ? 2.5m : 1.5m, Hands.Crew, Pool: Pools.Water);
            }

            if (day.Month is 1 or 2 or 12 && random.Int(0, 99) < 7)
            {
                var tunnel = random.Int(0, 2) switch { 0 => Pools.TunnelOne, 1 => Pools.TunnelTwo, _ => Pools.WarmHouse };
                yield return new Chore(day, "Clear snow", random.Int(2, 5) / 2m, Hands.Owners, Pool: tunnel);
            }

            if (weekday == DayOfWeek.Thursday && day.Day <= 7)
            {
                yield return new Chore(day, "Mend and maintain", day.Month is >= 3 and <= 11 ? 2.5m : 1m, Hands.Owners, Pool: Mended(day.Month));
            }

            if (weekday == DayOfWeek.Monday)
            {
                yield return new Chore(day, "Office", day.Month is 1 or 2 or 12 ? 2.5m : 1.5m, Hands.Owners);
            }

            if (day.Month == 11 && day.Day is 8 or 9)
            {
                yield return new Chore(day, "Cut firewood", 6m, Hands.Owners, Pool: Pools.Boiler);
            }

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
    }

    private static string Mended(int month) => (month % 6) switch
    {
        0 => Pools.Water,
        1 => Pools.Solar,
        2 => Pools.Boiler,
        3 => Pools.SeedlingHouse,
        4 => Pools.TunnelOne,
        _ => Pools.PackShed,
    };
}
