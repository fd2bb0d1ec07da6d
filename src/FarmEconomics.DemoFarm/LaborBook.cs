namespace FarmEconomics.DemoFarm;

/// <summary>Work that has to be done on a day, before anybody is found for it.</summary>
/// <param name="Date">The day.</param>
/// <param name="Task">The task.</param>
/// <param name="Hours">Hours in all.</param>
/// <param name="Crop">The crop it names, if one.</param>
/// <param name="Planting">The planting it names, if one.</param>
/// <param name="Channel">The channel it names, if one.</param>
/// <param name="Pool">The pool it names, if one.</param>
/// <param name="Who">Who may do it.</param>
internal sealed record Chore(
    DateOnly Date,
    string Task,
    decimal Hours,
    Hands Who,
    string? Crop = null,
    string? Planting = null,
    string? Channel = null,
    string? Pool = null
);

/// <summary>Who a chore is for.</summary>
internal enum Hands
{
    /// <summary>The crew first, owners when the crew is busy or away.</summary>
    Crew,

    /// <summary>The owners.</summary>
    Owners,

    /// <summary>The helper at the stall, where there is one that day.</summary>
    StallHelper,

    /// <summary>The volunteer.</summary>
    Volunteer,
}

/// <summary>
/// The farm's work, made from the same plantings, picks and sales the other tables show, then shared among the hands there are.
/// </summary>
internal static class LaborBook
{
    /// <summary>A row of labor.</summary>
    public sealed record Entry(Chore Chore, string Worker, decimal Hours);

    public static IReadOnlyList<Entry> Log(
        IReadOnlyList<Planting> plantings, IReadOnlyList<HarvestBook.Pick> picks, IReadOnlyList<SalesBook.Sale> sales)
    {
        var chores = BedWork.Chores(plantings)
            .Concat(PickingWork.Chores(picks))
            .Concat(SellingWork.Chores(sales))
            .Concat(FarmWork.Chores())
            .SelectMany(Spread)
            .Where(c => c.Date >= FarmFacts.FirstDay && c.Date <= FarmFacts.AsOf)
            .GroupBy(c => c with { Hours = 0m })
            .Select(g => g.Key with { Hours = g.Sum(c => c.Hours) });
        var random = FarmFacts.RandomFor(4);
        var log = new List<Entry>();
        var byDay = chores.ToLookup(c => c.Date);
        var waiting = new List<Chore>();
        for (var day = FarmFacts.FirstDay; day <= FarmFacts.AsOf; day = day.AddDays(1))
        {
            var roster = new Roster(day, random);
            // What was put off comes first, then what can't wait; bed work waits for the next weekday when the hands are all taken.
            var today = waiting.Concat(byDay[day]).OrderBy(c => CanWait(c) ? 1 : 0).ToList();
            waiting.Clear();
            foreach (var chore in today)
            {
                var isFull = roster.Free < chore.Hours || day.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday;
                if (CanWait(chore) && day < FarmFacts.AsOf && isFull)
                {
                    waiting.Add(chore with { Date = day.AddDays(1) });
                }
                else
                {
                    log.AddRange(roster.Share(chore with { Date = day }));
                }
            }
        }

        // What one person did twice that day under the same heading is one row.
        return [.. log.GroupBy(e => (e.Chore with { Hours = 0m, Who = Hands.Owners }, e.Worker))
            .Select(g => new Entry(g.First().Chore, g.Key.Worker, g.Sum(e => e.Hours)))];
    }

    /// <summary>Bed work waits for hands, and so does bringing in and washing what keeps.</summary>
    private static bool CanWait(Chore chore) =>
        (chore.Who != Hands.Volunteer && chore.Task is "Weed" or "Prepare and sow" or "Transplant" or "Trellis and prune" or "Sow trays")
        || (chore.Task is "Harvest" or "Wash and pack" && chore.Crop is { } crop && CropList.Get(crop).Keeps);

    /// <summary>A big bed job takes the crew more than one day: six hours a day, on the workdays that follow.</summary>
    private static IEnumerable<Chore> Spread(Chore chore)
    {
        var (day, left) = (chore.Date, chore.Hours);
        while (left > 0m)
        {
            var part = chore.Channel != null || chore.Task is "Harvest" or "Wash and pack" ? left : Math.Min(left, 6m);
            yield return chore with { Date = day, Hours = part };
            left -= part;
            day = day.AddDays(day.DayOfWeek == DayOfWeek.Friday ? 3 : 1);
        }
    }
}
