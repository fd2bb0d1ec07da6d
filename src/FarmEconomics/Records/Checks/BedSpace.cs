namespace FarmEconomics.Records.Checks;

/// <summary>
/// Warns when the plantings in a bed take more feet than it is long, once per bed and stretch of days. A planting whose
/// out_of_bed is blank counts until its last harvest on record; with none that names it, on its first day only, so that nothing is
/// warned of on a guess.
/// </summary>
internal static class BedSpace
{
    // Lengths are paced and shares of a bed rounded (a third of 100 ft is 33.3334 ft): half a foot in a hundred is no fault.
    private const decimal Tolerance = 0.005m;
    private const int MostNamed = 12;

    public static RecordCheck Check { get; } = new TableCheck("beds: plantings fit", Run);

    private static void Run(CheckContext context)
    {
        ILookup<string, PlantingRow> byBed = context
            .Tables.Plantings.Where(row => row.BedFeet > 0m)
            .ToLookup(row => row.Bed.Trim(), StringComparer.OrdinalIgnoreCase);
        foreach (
            BedRow bed in context
                .Tables.Beds.Where(bed => bed.LengthFt > 0m)
                .DistinctBy(bed => bed.Bed.Trim(), StringComparer.OrdinalIgnoreCase)
        )
        {
            CheckBed(context, bed, [.. byBed[bed.Bed.Trim()]]);
        }
    }

    private static void CheckBed(CheckContext context, BedRow bed, List<PlantingRow> plantings)
    {
        // Each day something starts or ends, ends first: the day out of bed is free for the next planting.
        var events = new List<(DateOnly Day, bool Starts, int Planting)>();
        for (int i = 0; i < plantings.Count; i++)
        {
            events.Add((plantings[i].InBed, true, i));
            events.Add((FreeFrom(context, plantings[i]), false, i));
        }

        events.Sort();
        decimal held = 0m;
        HashSet<int> inBed = [];
        decimal room = bed.LengthFt * (1m + Tolerance);
        Overfull? over = null;
        foreach ((DateOnly day, bool starts, int planting) in events)
        {
            held += starts ? plantings[planting].BedFeet : -plantings[planting].BedFeet;
            _ = starts ? inBed.Add(planting) : inBed.Remove(planting);
            if (held > room)
            {
                over ??= new Overfull(day, plantings[planting], inBed);
                over.Most = Math.Max(over.Most, held);
                if (starts)
                {
                    over.Involved.Add(planting);
                }
            }
            else if (over is not null)
            {
                Report(context, bed, plantings, over);
                over = null;
            }
        }
    }

    private static DateOnly FreeFrom(CheckContext context, PlantingRow row)
    {
        DateOnly free = row.OutOfBed ?? context.Planting(row.Planting)?.LastHarvest?.AddDays(1) ?? row.InBed.AddDays(1);
        return free > row.InBed ? free : row.InBed.AddDays(1);
    }

    private static void Report(CheckContext context, BedRow bed, List<PlantingRow> plantings, Overfull over)
    {
        string[] all = [.. over.Involved.Order().Select(i => plantings[i].Planting).Distinct(StringComparer.OrdinalIgnoreCase)];
        string names = string.Join(", ", all.Take(MostNamed)) + (all.Length > MostNamed ? $" and {all.Length - MostNamed} more" : "");
        string unit = context.Settings.LengthUnit.Short();
        context.Report(
            ProblemCodes.BedOverfull,
            over.First,
            "bed_feet",
            context.Notation.Text(
                $"Bed {bed.Bed} is {bed.LengthFt} {unit} long, "
                    + $"but from {over.From:yyyy-MM-dd} on up to {over.Most} {unit} are planted: {names}."
            ),
            context.Notation.Text($"{over.First.BedFeet}")
        );
    }

    /// <summary>A stretch of days on which more is planted than the bed is long.</summary>
    private sealed class Overfull(DateOnly from, PlantingRow first, IEnumerable<int> inBed)
    {
        internal DateOnly From => from;

        internal PlantingRow First => first;

        internal decimal Most { get; set; }

        /// <summary>All plantings in the bed on any of the days.</summary>
        internal HashSet<int> Involved { get; } = [.. inBed];
    }
}
