using Bogus;

namespace FarmEconomics.DemoFarm;

/// <summary>Turns the crop plan into the plantings of three crop years, each with its bed and its dates.</summary>
internal static class PlantingBook
{
    public static IReadOnlyList<Planting> Plan()
    {
        var random = FarmFacts.RandomFor(1);
        var drafts = new List<(Planting Planting, string Place)>();
        Perennials(drafts);
        foreach (var year in FarmFacts.Years)
        {
            Annuals(drafts, year, random);
        }

        Overwintering(drafts);
        Trays(drafts, random);

        var beds = new BedBook();
        foreach (var (planting, place) in drafts.OrderBy(d => d.Planting.InBed).ThenByDescending(d => d.Planting.Feet))
        {
            beds.Place(planting, place, planting.InBed.Year);
        }

        var plantings = drafts.Select(d => d.Planting).OrderBy(p => p.InBed).ThenBy(p => p.Name, StringComparer.Ordinal).ToList();
        PlannedGaps.InPlantings(plantings);
        return plantings;
    }

    private static void Annuals(List<(Planting Planting, string Place)> drafts, int year, Randomizer random)
    {
        var numbers = new Dictionary<string, int>();
        foreach (var line in CropPlan.Lines)
        {
            for (var i = 0; i < line.Count; i++)
            {
                var number = numbers[line.Crop] = numbers.GetValueOrDefault(line.Crop) + 1;
                var delay = line.Place == "field" ? SeasonWeather.FieldDelay(year) + random.Int(0, 2) : 0;
                var inBed = new DateOnly(year - (line.YearBefore ? 1 : 0), line.InBed.Month, line.InBed.Day).AddDays(
                    (i * line.Every) + delay
                );
                drafts.Add((Draft(line, $"{line.Crop} {year}-{number:00}", year, inBed, random), line.Place));
            }
        }
    }

    private static Planting Draft(CropPlan.Line line, string name, int year, DateOnly inBed, Randomizer random)
    {
        var crop = CropList.Get(line.Crop);
        var first = inBed.AddDays(line.ToPick);
        // An autumn sowing grows slower with every week: the last field successions stand longer before the first cut.
        if (line.Place == "field" && inBed.Month >= 9)
        {
            first = first.AddDays(5);
        }

        var last = first.AddDays(line.Span);
        return new Planting
        {
            Name = name,
            Crop = crop,
            CropYear = year,
            InBed = inBed,
            Sown = line.Nursery > 0 ? inBed.AddDays(-line.Nursery) : null,
            FirstPick = first,
            LastPick = last,
            Feet = line.Feet,
            Trays = line.Nursery > 0 && crop.FeetPerTray > 0m ? Math.Ceiling(line.Feet / crop.FeetPerTray) : null,
            Method = line.Nursery > 0 ? "transplanted" : line.Crop is "Garlic" or "Potatoes" ? "set" : "sown",
            OutOfBed = last.AddDays(1 + random.Int(0, 3)),
            OutLeftBlank = random.Int(0, 99) < 12 && !PlannedGaps.PickedByCrop(crop),
        };
    }

    private static void Perennials(List<(Planting Planting, string Place)> drafts)
    {
        foreach (
            var (crop, since, feet) in new[] { ("Asparagus", new DateOnly(2019, 5, 6), 300m), ("Rhubarb", new DateOnly(2018, 5, 14), 100m) }
        )
        {
            var planting = new Planting
            {
                Name = $"{crop} bed",
                Crop = CropList.Get(crop),
                CropYear = since.Year,
                InBed = since,
                Sown = null,
                FirstPick = new DateOnly(2023, 5, 9),
                LastPick = new DateOnly(2025, 7, 1),
                Feet = feet,
                Method = "crowns",
                OutOfBed = FarmFacts.AsOf.AddDays(1),
                OutLeftBlank = true,
            };
            drafts.Add((planting, "field"));
        }
    }

    /// <summary>What is already in the ground for 2026 at the closing date: it names its crop year, for nothing is picked yet.</summary>
    private static void Overwintering(List<(Planting Planting, string Place)> drafts)
    {
        foreach (var line in CropPlan.Lines.Where(l => l.YearBefore))
        {
            var number = drafts.Count(d => d.Planting.Crop.Name == line.Crop && d.Planting.CropYear == 2026) + 1;
            var inBed = new DateOnly(2025, line.InBed.Month, line.InBed.Day);
            var planting = new Planting
            {
                Name = $"{line.Crop} 2026-{number:00}",
                Crop = CropList.Get(line.Crop),
                CropYear = 2026,
                InBed = inBed,
                Sown = null,
                FirstPick = new DateOnly(2026, 12, 31),
                LastPick = new DateOnly(2026, 12, 31),
                Feet = line.Feet,
                Method = line.Crop == "Garlic" ? "set" : "sown",
                OutOfBed = FarmFacts.AsOf.AddDays(1),
                OutLeftBlank = true,
                NamesCropYear = true,
            };
            drafts.Add((planting, line.Place));
        }
    }

    /// <summary>
    /// A few trays of each kind every week from March to the week before Christmas; three days in the dark of the seedling house first.
    /// </summary>
    private static void Trays(List<(Planting Planting, string Place)> drafts, Randomizer random)
    {
        foreach (var (crop, toPick) in new[] { ("Pea shoots", 11), ("Micro mix", 8) })
        {
            var numbers = new Dictionary<int, int>();
            for (var pick = new DateOnly(2023, 1, 17); pick <= FarmFacts.AsOf; pick = pick.AddDays(7))
            {
                if (pick.DayOfYear < 62 || pick.DayOfYear > 352)
                {
                    continue;
                }

                // Kitchen and shop want them on different days; the trays are cut twice in the week they are ready.
                var number = numbers[pick.Year] = numbers.GetValueOrDefault(pick.Year) + 1;
                var inBed = pick.AddDays(-toPick - random.Int(0, 1));
                var trays = pick.Month is >= 5 and <= 10 ? 6m : 5m;
                drafts.Add((
                    new Planting
                    {
                        Name = $"{crop} {pick.Year}-{number:00}",
                        Crop = CropList.Get(crop),
                        CropYear = pick.Year,
                        InBed = inBed,
                        Sown = inBed.AddDays(-3),
                        FirstPick = pick,
                        LastPick = pick.AddDays(3),
                        Feet = trays == 6m ? 5m : 4m,
                        Trays = trays,
                        Method = "trays",
                        OutOfBed = pick.AddDays(4),
                    },
                    Beds.Rack));
            }
        }
    }
}
