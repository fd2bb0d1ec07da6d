namespace FarmEconomics.DemoFarm;

/// <summary>Nursery and bed work: sowing trays, making beds, planting, weeding, trellising.</summary>
internal static class BedWork
{
    public static IEnumerable<Chore> Chores(IReadOnlyList<Planting> plantings)
    {
        var random = FarmFacts.RandomFor(5);
        var quarters = new QuarterHours();
        foreach (var planting in plantings)
        {
            var crop = planting.Crop;
            if (planting.Sown is { } sown && planting.Trays is { } trays)
            {
                var hours = quarters.Write("sow " + crop.Name, trays * 7m);
                if (hours > 0m)
                {
                    yield return new Chore(Workday(sown), "Sow trays", hours, Hands.Owners, Crop: crop.Name);
                }
            }

            if (crop.Perennial)
            {
                foreach (var chore in Perennial(planting))
                {
                    yield return chore;
                }

                continue;
            }

            var all = crop.GrowMinutes * planting.Feet;
            var setting = quarters.Write("plant " + crop.Name, all * 0.4m);
            if (setting > 0m)
            {
                var task = planting.Method == "transplanted" ? "Transplant" : "Prepare and sow";
                yield return new Chore(Workday(planting.InBed), task, setting, Hands.Crew, Planting: planting.Name);
            }

            foreach (var chore in Tending(planting, all * 0.6m, random.Int(0, 3), quarters))
            {
                yield return chore;
            }
        }
    }

    /// <summary>Weeding and training in up to five rounds; about four in ten hours are written down without a crop.</summary>
    private static IEnumerable<Chore> Tending(Planting planting, decimal minutes, int shift, QuarterHours quarters)
    {
        var stay = Math.Max(8, planting.FirstPick.DayNumber - planting.InBed.DayNumber);
        if (planting.FirstPick > FarmFacts.AsOf)
        {
            stay = 50;
        }

        var trained = planting.Crop.GrowMinutes > 8m;
        var rounds = Math.Clamp(stay / 14, 1, trained ? 10 : 5);
        for (var round = 1; round <= rounds; round++)
        {
            // No weeding under snow: the rounds of what stands over winter fall into its first weeks and the spring.
            var day = planting.InBed.AddDays((stay * round / (rounds + 1)) + shift);
            day = Workday(day.Month is 12 or 1 or 2 ? new DateOnly(day.Month == 12 ? day.Year + 1 : day.Year, 4, 6 + round) : day);
            var byCrop = trained || planting.Crop.Group == "microgreens" || (planting.Name.GetHashCodeStable() + round) % 10 >= 4;
            var hours = quarters.Write(byCrop ? "tend " + planting.Crop.Name : "tend", minutes / rounds);
            if (hours > 0m)
            {
                var task = planting.Crop.Group == "microgreens" ? "Water trays" : trained && round > 2 ? "Trellis and prune" : "Weed";
                yield return byCrop
                    ? new Chore(day, task, hours, Hands.Crew, Crop: planting.Crop.Name)
                    : new Chore(day, "Weed", hours, Hands.Crew);
            }
        }
    }

    private static IEnumerable<Chore> Perennial(Planting planting)
    {
        foreach (var year in FarmFacts.Years)
        {
            foreach (var (month, day) in new[] { (4, 18), (7, 8), (10, 20) })
            {
                var hours = Math.Round(planting.Feet * planting.Crop.GrowMinutes / 60m / 3m * 4m, MidpointRounding.AwayFromZero) / 4m;
                yield return new Chore(Workday(new DateOnly(year, month, day)), "Weed", hours, Hands.Crew, Planting: planting.Name);
            }
        }
    }

    /// <summary>The day itself, or the Monday after a weekend.</summary>
    private static DateOnly Workday(DateOnly day) => day.DayOfWeek switch
    {
        DayOfWeek.Saturday => day.AddDays(2),
        DayOfWeek.Sunday => day.AddDays(1),
        _ => day,
    };

    private static int GetHashCodeStable(this string text) => text.Aggregate(11, (sum, letter) => ((sum * 37) + letter) % 9973);
}
