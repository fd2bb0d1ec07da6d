using FarmEconomics.Records;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Tracing;

/// <summary>
/// What a crop's own plantings tell of time: how long after it came into its bed one is picked at the earliest, and how long one without an
/// end can have stood. Only harvests that name their planting count, because the others are placed by the answer. Worked out once for all
/// crops.
/// </summary>
internal sealed class CropTimes
{
    private readonly TracingLimits limits;
    private readonly (int First, int Last)?[] named;
    private readonly int[] plantingOfHarvest;
    private readonly int[] leastDays;
    private readonly int[] longestStay;

    internal CropTimes(FarmRecords records)
    {
        limits = records.Settings.Limits;
        plantingOfHarvest = new int[records.Harvests.Count];
        TextCells names = HarvestRow.PlantingColumn.Cells(records.Harvests.Table);
        for (int i = 0; i < plantingOfHarvest.Length; i++)
        {
            plantingOfHarvest[i] = records.PlantingAt(names[records.Harvests.IndexOf(i)]);
        }

        named = NamedHarvests(records);
        List<int>[] waits = [.. records.Crops.Select(_ => new List<int>())];
        List<int>[] stays = [.. records.Crops.Select(_ => new List<int>())];
        foreach (Planting planting in records.Plantings)
        {
            if (!planting.Crop.Perennial)
            {
                Add(planting, waits[planting.Crop.Index], stays[planting.Crop.Index]);
            }
        }

        leastDays = [.. records.Crops.Select(crop => crop.Perennial ? 0 : LeastOf(waits[crop.Index]))];
        longestStay = Array.ConvertAll(stays, LongestOf);
    }

    /// <summary>Days a planting must have stood in its bed before a harvest that names only the crop can be of it.</summary>
    internal int LeastDays(Crop crop) => leastDays[crop.Index];

    /// <summary>
    /// Days a planting without an end stands at most, and days after it left its bed for which a harvest may still be of it.
    /// </summary>
    internal int LongestStay(Crop crop) => longestStay[crop.Index];

    /// <summary>The last harvest that names the planting; null: none does.</summary>
    internal DateOnly? LastNamed(Planting planting) =>
        named[planting.Index] is { } span ? DateOnly.FromDayNumber(span.Last) : null;

    /// <summary>The planting a harvest row names; -1: it names none, or none that is known.</summary>
    internal int PlantingNamed(int harvest) => plantingOfHarvest[harvest];

    /// <summary>The days of the first and the last harvest that names each planting.</summary>
    private (int First, int Last)?[] NamedHarvests(FarmRecords records)
    {
        (int First, int Last)?[] spans = new (int, int)?[records.Plantings.Count];
        DayCells days = HarvestRow.DateColumn.Cells(records.Harvests.Table);
        for (int i = 0; i < plantingOfHarvest.Length; i++)
        {
            if (plantingOfHarvest[i] is >= 0 and int planting)
            {
                int day = days.DayNumber(records.Harvests.IndexOf(i));
                (int First, int Last) known = spans[planting] ?? (day, day);
                spans[planting] = (Math.Min(day, known.First), Math.Max(day, known.Last));
            }
        }

        return spans;
    }

    private void Add(Planting planting, List<int> waits, List<int> stays)
    {
        (int First, int Last)? span = named[planting.Index];
        if (span is { } picked)
        {
            waits.Add(Math.Max(0, picked.First - planting.BedList.Min(bed => bed.In).DayNumber));
        }

        foreach (BedPlanting bed in planting.BedList)
        {
            if ((bed.Row.OutOfBed?.DayNumber ?? span?.Last + 1) is { } end && end > bed.In.DayNumber)
            {
                stays.Add(end - bed.In.DayNumber);
            }
        }
    }

    private int LeastOf(List<int> waits) =>
        waits.Count == 0 ? limits.LeastDaysWithoutHistory : (int)Percentile(waits, limits.LeastDaysPercentile);

    private int LongestOf(List<int> stays)
    {
        if (stays.Count == 0)
        {
            return limits.BoundWithoutHistory;
        }

        // Some sowings of a crop stand through the winter: twice the usual stay would be too short for them.
        decimal longest = Math.Max(limits.TimesMedianStay * Percentile(stays, 50m), Percentile(stays, limits.LongestStayPercentile));
        return (int)Math.Max(limits.ShortestBound, longest);
    }

    /// <summary>By straight lines between sorted values (definition 7 of Hyndman and Fan).</summary>
    private static decimal Percentile(List<int> days, decimal percent)
    {
        days.Sort();
        decimal place = (days.Count - 1) * percent / 100m;
        int below = (int)place;
        int next = Math.Min(below + 1, days.Count - 1);
        return days[below] + ((place - below) * (days[next] - days[below]));
    }
}
