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
        decimal most = 0m;
        HashSet<int> inBed = [];
        List<int> involved = [];
        decimal room = bed.LengthFt * (1m + Tolerance);
        (DateOnly Day, int Planting)? over = null;
        foreach ((DateOnly day, bool starts, int planting) in events)
        {
            held += starts ? plantings[planting].BedFeet : -plantings[planting].BedFeet;
            _ = starts ? inBed.Add(planting) : inBed.Remove(planting);
            if (held > room)
            {
                if (over is null)
                {
                    over = (day, planting);
                    involved = [.. inBed];
                }
                else if (starts)
                {
                    involved.Add(planting);
                }

                most = Math.Max(most, held);
            }
            else if (over is { } stretch)
            {
                Report(context, bed, plantings, stretch.Day, stretch.Planting, most, involved);
                over = null;
                most = 0m;
            }
        }
    }

    private static DateOnly FreeFrom(CheckContext context, PlantingRow row)
    {
        DateOnly free = row.OutOfBed ?? context.Planting(row.Planting)?.LastHarvest?.AddDays(1) ?? row.InBed.AddDays(1);
        return free > row.InBed ? free : row.InBed.AddDays(1);
    }

    private static void Report(
        CheckContext context,
        BedRow bed,
        List<PlantingRow> plantings,
        DateOnly day,
        int first,
        decimal most,
        List<int> involved
    )
    {
        string[] all = [.. involved.Order().Select(i => plantings[i].Planting).Distinct(StringComparer.OrdinalIgnoreCase)];
        string names = string.Join(", ", all.Take(MostNamed)) + (all.Length > MostNamed ? $" and {all.Length - MostNamed} more" : "");
        string unit = context.Settings.LengthUnit.Short();
        context.Report(
            ProblemCodes.BedOverfull,
            plantings[first],
            "bed_feet",
            context.Notation.Text(
                $"Bed {bed.Bed} is {bed.LengthFt} {unit} long, but from {day:yyyy-MM-dd} on up to {most} {unit} are planted: {names}."
            ),
            context.Notation.Text($"{plantings[first].BedFeet}")
        );
    }
}
