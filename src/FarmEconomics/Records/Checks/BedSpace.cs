namespace FarmEconomics.Records.Checks;

/// <summary>
/// Warns when the plantings in a bed take more feet than it is long, once per bed and stretch of days. A planting whose
/// out_of_bed is blank counts until its last harvest on record; with none that names it, on its first day only, so that nothing is
/// warned of on a guess.
/// </summary>
internal static class BedSpace
{
    public static RecordCheck Check { get; } = new TableCheck("beds: plantings fit", Run);

    private static void Run(CheckContext context)
    {
        ILookup<string, PlantingRow> byBed = context.Tables.Plantings.Where(row => row.BedFeet > 0m).ToLookup(row => row.Bed.Trim(), StringComparer.OrdinalIgnoreCase);
        foreach (BedRow bed in context.Tables.Beds.Where(bed => bed.LengthFt > 0m).DistinctBy(bed => bed.Bed.Trim(), StringComparer.OrdinalIgnoreCase))
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
        bool[] inBed = new bool[plantings.Count];
        bool[] involved = new bool[plantings.Count];
        (DateOnly Day, int Planting)? over = null;
        foreach ((DateOnly day, bool starts, int planting) in events)
        {
            held += starts ? plantings[planting].BedFeet : -plantings[planting].BedFeet;
            inBed[planting] = starts;
            if (held > bed.LengthFt)
            {
                over ??= (day, planting);
                most = Math.Max(most, held);
                for (int i = 0; i < inBed.Length; i++)
                {
                    involved[i] |= inBed[i];
                }
            }
            else if (over is { } stretch)
            {
                Report(context, bed, plantings, stretch.Day, stretch.Planting, most, involved);
                over = null;
                most = 0m;
                Array.Clear(involved);
            }
        }
    }

    private static DateOnly FreeFrom(CheckContext context, PlantingRow row)
    {
        DateOnly free = row.OutOfBed ?? context.Planting(row.Planting)?.LastHarvest?.AddDays(1) ?? row.InBed.AddDays(1);
        return free > row.InBed ? free : row.InBed.AddDays(1);
    }

    private static void Report(CheckContext context, BedRow bed, List<PlantingRow> plantings, DateOnly day, int first, decimal most, bool[] involved)
    {
        string names = string.Join(", ", plantings.Where((_, i) => involved[i]).Select(row => row.Planting).Distinct(StringComparer.OrdinalIgnoreCase));
        string unit = context.Settings.LengthUnit.Short();
        context.Report(ProblemCodes.BedOverfull, plantings[first], "bed_feet",
            context.Notation.Text($"Bed {bed.Bed} is {bed.LengthFt} {unit} long, but from {day:yyyy-MM-dd} on up to {most} {unit} are planted: {names}."), context.Notation.Text($"{plantings[first].BedFeet}"));
    }
}
