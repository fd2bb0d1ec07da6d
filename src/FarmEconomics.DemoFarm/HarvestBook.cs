using Bogus;

namespace FarmEconomics.DemoFarm;

/// <summary>What was picked, planting by planting: what is sold fresh on Tuesdays and Fridays, what is stored on the days before.</summary>
internal static class HarvestBook
{
    /// <summary>A pick. <paramref name="NamesPlanting"/> is false where the grower wrote down only the crop.</summary>
    public sealed record Pick(DateOnly Date, Planting Planting, decimal Quantity, decimal Culled, bool NamesPlanting);

    public static IReadOnlyList<Pick> PickAll(IReadOnlyList<Planting> plantings)
    {
        var random = FarmFacts.RandomFor(2);
        var picks = new List<Pick>();
        foreach (var planting in plantings)
        {
            if (planting.Crop.Perennial)
            {
                foreach (var year in FarmFacts.Years)
                {
                    var until = planting.Crop.Name == "Asparagus" ? new DateOnly(year, 6, 20) : new DateOnly(year, 7, 1);
                    Season(picks, planting, year, new DateOnly(year, 5, 9), until, random);
                }
            }
            else if (planting.FirstPick <= FarmFacts.AsOf)
            {
                Season(picks, planting, planting.CropYear, planting.FirstPick, planting.LastPick, random);
            }
        }

        // Two rows that say the same look like one entered twice: the second names its planting after all.
        var nameless = new HashSet<(DateOnly, CropSpec, decimal)>();
        picks =
        [
            .. picks.Select(p =>
                p.NamesPlanting || nameless.Add((p.Date, p.Planting.Crop, p.Quantity)) ? p : p with { NamesPlanting = true }
            ),
        ];
        return
        [
            .. picks
                .OrderBy(p => p.Date)
                .ThenBy(p => p.Planting.Crop.Name, StringComparer.Ordinal)
                .ThenBy(p => p.Planting.Name, StringComparer.Ordinal),
        ];
    }

    private static void Season(List<Pick> picks, Planting planting, int year, DateOnly first, DateOnly last, Randomizer random)
    {
        var crop = planting.Crop;
        var days = Days(crop, first, last).ToList();
        // The beds of microgreens are counted per foot of shelf, the others per bed-foot.
        var total = crop.Yield * planting.Feet * SeasonWeather.Factor(year, crop) * (0.9m + (random.Int(0, 200) / 1000m));
        var weights = days.Select((_, i) => Weight(crop, i, days.Count, random)).ToList();
        var sum = weights.Sum();
        var carried = 0m;
        for (var i = 0; i < days.Count; i++)
        {
            var exact = (total * weights[i] / sum) + carried;
            var quantity = Math.Floor(exact / crop.Step) * crop.Step;
            carried = exact - quantity;
            if (quantity <= 0m)
            {
                continue;
            }

            var culls = Math.Floor(quantity * SeasonWeather.Culls(year, crop) * random.Int(0, 20) / 10m / crop.Step) * crop.Step;
            picks.Add(
                new Pick(
                    days[i],
                    planting,
                    quantity,
                    culls,
                    NamesPlanting: random.Int(0, 99) >= 12 || !PlannedGaps.PickedByCrop(planting.Crop)
                )
            );
        }
    }

    /// <summary>Tuesdays and Fridays of the stretch, Mondays and Thursdays for what keeps; the last day when it holds none.</summary>
    private static IEnumerable<DateOnly> Days(CropSpec crop, DateOnly first, DateOnly last)
    {
        var any = false;
        for (var day = first; day <= last; day = day.AddDays(1))
        {
            if (
                crop.Keeps
                    ? day.DayOfWeek is DayOfWeek.Monday or DayOfWeek.Thursday
                    : day.DayOfWeek is DayOfWeek.Tuesday or DayOfWeek.Friday
            )
            {
                any = true;
                yield return day;
            }
        }

        if (!any)
        {
            yield return last;
        }
    }

    /// <summary>Fruit comes in a hump, cut-and-come crops evenly, what is dug comes at once.</summary>
    private static decimal Weight(CropSpec crop, int index, int count, Randomizer random)
    {
        var noise = 0.8m + (random.Int(0, 400) / 1000m);
        if (crop.Group == "fruiting" && count > 4)
        {
            var at = (index + 1m) / (count + 1m);
            return noise * ((4m * at * (1m - at)) + 0.15m);
        }

        return noise;
    }
}
