using Bogus;

namespace FarmEconomics.DemoFarm;

/// <summary>Who is on the farm that day and how many hours each still has.</summary>
internal sealed class Roster
{
    private readonly Randomizer random;
    private readonly Dictionary<string, decimal> free = [];

    public Roster(DateOnly day, Randomizer random)
    {
        this.random = random;
        var weekday = day.DayOfWeek is not (DayOfWeek.Saturday or DayOfWeek.Sunday);
        var summer = day.DayOfYear is >= 121 and <= 288;
        free[FarmFacts.OwnerOne] = weekday ? (summer ? 9m : 8m) : 9m;
        free[FarmFacts.OwnerTwo] = weekday ? (summer ? 9m : 8m) : 6m;
        if (day.DayOfYear is >= 121 and <= 288 && day.DayOfWeek is DayOfWeek.Tuesday or DayOfWeek.Thursday)
        {
            free[FarmFacts.Lead] = 4m;
        }

        if (day.DayOfYear is >= 152 and <= 272 && day.DayOfWeek is DayOfWeek.Monday or DayOfWeek.Friday)
        {
            free[FarmFacts.CrewTwo] = 4m;
        }

        if (day.DayOfYear is >= 172 and <= 258 && day.DayOfWeek is DayOfWeek.Tuesday or DayOfWeek.Friday)
        {
            free[FarmFacts.CrewThree] = 4m;
        }

        if (day.DayOfWeek == DayOfWeek.Saturday && day.DayOfYear is >= 150 and <= 265)
        {
            free[FarmFacts.MarketHelper] = 6m;
        }
    }

    /// <summary>Hours still free among all who are there.</summary>
    public decimal Free => free.Values.Sum(hours => Math.Max(0m, hours));

    /// <summary>Shares a chore out in rows of at most five hours, quarter hours throughout.</summary>
    public IEnumerable<LaborBook.Entry> Share(Chore chore)
    {
        var left = chore.Hours;
        while (left > 0m)
        {
            var worker = Worker(chore);
            var part = Math.Min(left, 5m);
            if (free.TryGetValue(worker, out var hours))
            {
                if (hours > 0m)
                {
                    part = Math.Min(part, hours);
                }

                free[worker] = hours - part;
            }

            left -= part;
            yield return new LaborBook.Entry(chore, worker, part);
        }
    }

    private string Worker(Chore chore)
    {
        var owner = random.Int(0, 99) < 49 ? FarmFacts.OwnerOne : FarmFacts.OwnerTwo;
        var hired = new[] { FarmFacts.Lead, FarmFacts.CrewTwo, FarmFacts.CrewThree }.Where(w => free.GetValueOrDefault(w) > 0m).ToArray();
        return chore.Who switch
        {
            Hands.Volunteer => FarmFacts.Volunteer,
            Hands.StallHelper when free.GetValueOrDefault(FarmFacts.MarketHelper) > 0m => FarmFacts.MarketHelper,
            Hands.Crew when hired.Length > 0 && random.Int(0, 99) < 82 => hired[random.Int(0, hired.Length - 1)],
            _ => free[owner] > 0m
                ? owner
                : free.Where(f => f.Key is FarmFacts.OwnerOne or FarmFacts.OwnerTwo).OrderByDescending(f => f.Value).First().Key,
        };
    }
}
