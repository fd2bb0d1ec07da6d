using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// Splits harvests over plantings, works out when beds were freed, and makes the enterprises: which planting counts in which crop year.
/// </summary>
internal sealed class PlantingCalendar
{
    private readonly FarmRecords records;
    private readonly List<Problem> problems;
    private readonly Dictionary<(Planting Planting, int CropYear), Enterprise> byKey = [];
    private readonly Dictionary<(int Crop, int CropYear), List<Enterprise>> byCropAndYear = [];
    private readonly List<List<Enterprise>> byPlanting;
    private readonly CropTimes times;
    private readonly int[] cropYears;

    internal PlantingCalendar(FarmRecords records, List<Problem> problems)
    {
        this.records = records;
        this.problems = problems;
        BedsByCrop = records.Crops.ConvertAll(_ => new List<BedPlanting>());
        foreach (Planting planting in records.Plantings)
        {
            BedsByCrop[planting.Crop.Index].AddRange(planting.BedList);
        }

        times = new CropTimes(records);
        BedStays.Assume(records, times);
        Picks = SplitHarvests();
        (DateOnly First, DateOnly Last)?[] spans = HarvestSpans();
        CloseBeds(spans);
        byPlanting = records.Plantings.ConvertAll(_ => new List<Enterprise>(1));
        cropYears = records.Plantings.Select(planting => CropYearOf(planting, spans[planting.Index])).ToArray();
        MakeEnterprises();
    }

    /// <summary>Enterprises by first row in the file, then crop year.</summary>
    internal List<Enterprise> Enterprises { get; } = [];

    /// <summary>The beds of each crop's plantings, by crop index, planting by planting.</summary>
    internal List<List<BedPlanting>> BedsByCrop { get; }

    /// <summary>Harvest rows split over plantings, in file order.</summary>
    internal List<Pick> Picks { get; }

    /// <summary>The enterprise a date of a planting belongs to.</summary>
    internal Enterprise EnterpriseOf(Planting planting, DateOnly date) =>
        planting.Crop.Perennial
            ? PerennialOf(planting, records.Settings.WindowOf(date))
            : byKey[(planting, cropYears[planting.Index])];

    /// <summary>A crop's enterprises of a crop year, in their order.</summary>
    internal IReadOnlyList<Enterprise> Of(Crop crop, int cropYear) =>
        byCropAndYear.TryGetValue((crop.Index, cropYear), out List<Enterprise>? enterprises) ? enterprises : [];

    /// <summary>The enterprise of a planting in a crop year, if it has one.</summary>
    internal Enterprise? Find(Planting planting, int cropYear) => byKey.GetValueOrDefault((planting, cropYear));

    /// <summary>For a perennial, the enterprise of the nearest crop year it has one in.</summary>
    private Enterprise PerennialOf(Planting planting, int window)
    {
        if (byKey.TryGetValue((planting, window), out Enterprise? found))
        {
            return found;
        }

        return byPlanting[planting.Index].OrderBy(enterprise => Math.Abs(enterprise.CropYear - window)).ThenBy(enterprise => enterprise.CropYear).First();
    }

    private List<Pick> SplitHarvests()
    {
        List<Pick> picks = new(records.Harvests.Count);
        CropHarvests cropHarvests = new(records.Settings, times, BedsByCrop, problems);
        foreach (HarvestRow row in records.Harvests)
        {
            if (!string.IsNullOrWhiteSpace(row.Planting))
            {
                Planting planting = records.FindPlanting(row.Planting)
                    ?? throw new RecordsException(TracingProblems.HarvestBeforePlanting(row));
                picks.Add(new Pick(row, planting, planting.Crop.ToBase(row.Quantity, row.Unit), planting.Crop.ToBase(row.Culled ?? 0m, row.Unit)));
                continue;
            }

            Crop crop = records.Crop(row.Crop!);
            SplitOverBeds(row, crop, cropHarvests.BedsOf(row, crop), picks);
        }

        return cropHarvests.Errors.Count > 0 ? throw new RecordsException(cropHarvests.Errors) : picks;
    }

    private static void SplitOverBeds(HarvestRow row, Crop crop, List<BedPlanting> beds, List<Pick> picks)
    {
        decimal quantity = crop.ToBase(row.Quantity, row.Unit);
        decimal culled = crop.ToBase(row.Culled ?? 0m, row.Unit);
        if (quantity == 0m && culled == 0m)
        {
            return;
        }

        if (beds.Count <= 1)
        {
            picks.AddRange(beds.Select(bed => new Pick(row, bed.Planting, quantity, culled)));
            return;
        }

        List<Planting> plantings = beds.Select(bed => bed.Planting).Distinct().ToList();
        decimal[] feet = plantings.Select(planting => beds.Where(bed => bed.Planting == planting).Sum(bed => bed.BedFeet)).ToArray();
        decimal[] quantities = LargestRemainder.SplitExactly(quantity, feet);
        decimal[] culls = LargestRemainder.SplitExactly(culled, feet);
        for (int i = 0; i < plantings.Count; i++)
        {
            if (quantities[i] != 0m || culls[i] != 0m)
            {
                picks.Add(new Pick(row, plantings[i], quantities[i], culls[i]));
            }
        }
    }

    /// <summary>First and last harvest of each planting, in one pass.</summary>
    private (DateOnly First, DateOnly Last)?[] HarvestSpans()
    {
        (DateOnly First, DateOnly Last)?[] spans = new (DateOnly, DateOnly)?[records.Plantings.Count];
        foreach (Pick pick in Picks)
        {
            DateOnly day = pick.Row.Date;
            (DateOnly First, DateOnly Last) known = spans[pick.Planting.Index] ?? (day, day);
            spans[pick.Planting.Index] = (day < known.First ? day : known.First, Later(day, known.Last));
        }

        return spans;
    }

    private void CloseBeds((DateOnly First, DateOnly Last)?[] spans)
    {
        foreach (Planting planting in records.Plantings)
        {
            // What was picked before it came into a bed (volunteers, say) tells nothing of its end.
            DateOnly? lastPick = spans[planting.Index] is { } span && span.Last >= planting.BedList.Min(bed => bed.In) ? span.Last : null;
            DateOnly? cut = null;
            foreach (BedPlanting bed in planting.BedList)
            {
                if (bed.Row.OutOfBed is not null)
                {
                    continue;
                }

                // A perennial without out_of_bed still stands there: its last harvest frees nothing.
                DateOnly end = planting.Crop.Perennial ? records.AsOf : lastPick?.AddDays(1) ?? bed.In.AddDays(times.LongestStay(planting.Crop));
                bed.Out = Later(lastPick is null && end > records.AsOf ? records.AsOf : end, bed.In);
                cut = !planting.Crop.Perennial && lastPick is null && end < records.AsOf ? end : cut;
            }

            if (cut is { } day)
            {
                problems.Add(TracingProblems.NoEnd(planting, day, times.LongestStay(planting.Crop)));
            }
        }
    }

    private static DateOnly Later(DateOnly a, DateOnly b) => a > b ? a : b;

    private int CropYearOf(Planting planting, (DateOnly First, DateOnly Last)? span)
    {
        if (planting.BedList.Select(bed => bed.Row.CropYear).FirstOrDefault(year => year is not null) is { } given)
        {
            return given;
        }

        DateOnly date = span?.First
            ?? planting.BedList.Max(bed => bed.Row.OutOfBed)
            ?? planting.BedList.Min(bed => bed.In);
        return records.Settings.WindowOf(date);
    }

    private void MakeEnterprises()
    {
        ILookup<Planting, int> pickYears = Picks.ToLookup(pick => pick.Planting, pick => records.Settings.WindowOf(pick.Row.Date));
        foreach (Planting planting in records.Plantings)
        {
            if (!planting.Crop.Perennial)
            {
                Add(planting, cropYears[planting.Index], DateOnly.MinValue, DateOnly.MaxValue);
                continue;
            }

            DateOnly lastDay = planting.BedList.Max(bed => bed.Out.DayNumber > bed.In.DayNumber ? bed.Out.AddDays(-1) : bed.In);
            int first = records.Settings.WindowOf(planting.BedList.Min(bed => bed.In));
            int last = records.Settings.WindowOf(lastDay < records.AsOf ? lastDay : records.AsOf);
            foreach (int year in Enumerable.Range(first, Math.Max(1, last - first + 1)).Concat(pickYears[planting]).Distinct().Order())
            {
                Add(planting, year, records.Settings.StartOf(year), records.Settings.EndOf(year));
            }
        }
    }

    private void Add(Planting planting, int cropYear, DateOnly from, DateOnly to)
    {
        bool annual = !planting.Crop.Perennial;
        Enterprise enterprise = new(Enterprises.Count, planting, cropYear);
        decimal[] days = planting.BedList.Select(bed => bed.BedFeet * (annual ? bed.Days : bed.DaysWithin(from, to))).ToArray();
        enterprise.BedFeet = new BedFeet(planting.BedList.Sum(bed => bed.BedFeet));
        enterprise.BedFootDaysByRow = days;
        enterprise.BedFootDays = new BedFootDays(days.Sum());
        foreach (BedPlanting bed in planting.BedList)
        {
            // A perennial's seedlings count in the crop year it was set out in.
            if (annual || (bed.In >= from && bed.In < to))
            {
                enterprise.Trays += bed.Row.Trays ?? 0m;
                enterprise.TrayDays += bed.Row.Sown is { } sown ? (bed.Row.Trays ?? 0m) * Math.Max(0, bed.In.DayNumber - sown.DayNumber) : 0m;
            }
        }

        Enterprises.Add(enterprise);
        byPlanting[planting.Index].Add(enterprise);
        byKey[(planting, cropYear)] = enterprise;
        if (!byCropAndYear.TryGetValue((planting.Crop.Index, cropYear), out List<Enterprise>? ofYear))
        {
            byCropAndYear[(planting.Crop.Index, cropYear)] = ofYear = [];
        }

        ofYear.Add(enterprise);
    }
}

/// <summary>A harvest row's part that belongs to one planting.</summary>
internal readonly record struct Pick(HarvestRow Row, Planting Planting, decimal Quantity, decimal Culled);
