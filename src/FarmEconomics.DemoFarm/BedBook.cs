namespace FarmEconomics.DemoFarm;

/// <summary>Keeps who stands in which bed, so that a bed never holds more feet than it has.</summary>
internal sealed class BedBook
{
    private readonly Dictionary<string, List<(DateOnly From, DateOnly To, decimal Feet)>> held = Beds.All.ToDictionary(
        b => b.Name, _ => new List<(DateOnly, DateOnly, decimal)>());

    /// <summary>Finds room for a planting, in as few beds as it can, and writes the places down.</summary>
    public void Place(Planting planting, string place, int year)
    {
        var left = planting.Feet;
        var beds = Candidates(planting, place, year).ToList();
        // One bed that takes it whole if there is one; else what there is, but no crumbs under fifteen feet.
        foreach (var bed in beds.Where(b => Room(b, planting.InBed, planting.OutOfBed) >= left).Take(1).Concat(beds))
        {
            var room = left > 0m ? Room(bed, planting.InBed, planting.OutOfBed) : 0m;
            if (room < Math.Min(left, 15m) || left == 0m)
            {
                continue;
            }

            var feet = Math.Min(room, left);
            held[bed.Name].Add((planting.InBed, planting.OutOfBed, feet));
            planting.Places.Add((bed, feet));
            left -= feet;
        }

        if (left > 0m)
        {
            throw new InvalidOperationException(
                $"no room for {planting.Name} in {place}, {left} feet left, "
                    + $"from {planting.InBed:yyyy-MM-dd} to {planting.OutOfBed:yyyy-MM-dd}");
        }
    }

    /// <summary>Feet free in a bed on every day of a stretch.</summary>
    private decimal Room(Bed bed, DateOnly from, DateOnly to)
    {
        var stays = held[bed.Name].Where(s => s.From < to && from < s.To).ToList();
        var worst = 0m;
        foreach (var day in stays.Select(s => s.From < from ? from : s.From).Append(from))
        {
            worst = Math.Max(worst, stays.Where(s => s.From <= day && day < s.To).Sum(s => s.Feet));
        }

        return bed.Length - worst;
    }

    /// <summary>
    /// Beds in the order they are tried: quick crops close to the shed, the rest around the rotation, one block a year on.
    /// </summary>
    private IEnumerable<Bed> Candidates(Planting planting, string place, int year)
    {
        if (place != "field")
        {
            return Beds.All.Where(b => b.Structure == place);
        }

        var quick = planting.OutOfBed.DayNumber - planting.InBed.DayNumber <= 75 && planting.Feet <= 120m;
        var shift = planting.Crop.Perennial ? 5 : quick ? 0 : 1 + (Math.Abs(Hash(planting.Crop.Family)) + year) % 5;
        var blocks = Enumerable.Range(0, Beds.Blocks.Length).Select(i => Beds.Blocks[(i + shift) % Beds.Blocks.Length]);
        // A quick crop goes where a bed has just come free, so that a few beds near the shed carry crop after crop.
        return blocks
            .Chunk(3)
            .SelectMany(near =>
                Beds.All.Where(b => near.Contains(b.Block)).OrderBy(b => quick ? Idle(b, planting.InBed) : Array.IndexOf(near, b.Block))
            );
    }

    /// <summary>Days since something was last cleared from a bed that season; a year where nothing was.</summary>
    private int Idle(Bed bed, DateOnly day) =>
        held[bed.Name]
            .Where(s => s.To <= day && s.To.Year == day.Year)
            .Select(s => day.DayNumber - s.To.DayNumber)
            .DefaultIfEmpty(366)
            .Min();

    /// <summary>A hash that is the same on every machine and every run.</summary>
    private static int Hash(string text) => text.Aggregate(7, (sum, letter) => ((sum * 31) + letter) % 10_007);
}
