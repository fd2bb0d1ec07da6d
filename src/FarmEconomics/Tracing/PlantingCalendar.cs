using FarmEconomics.Records;
using FarmEconomics.Records.Storage;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// Splits harvests over plantings, works out when beds were freed, and makes the enterprises: which planting counts in which crop year.
/// </summary>
internal sealed class PlantingCalendar
{
    // A crop never picked before that came in within the last quarter of a crop year; ours, no source. It asks, and moves no figure.
    private const int FallDays = 92;
    private readonly FarmRecords records;
    private readonly List<Problem> problems;
    private readonly Dictionary<(int Crop, int CropYear), List<Enterprise>> byCropAndYear = [];
    private readonly List<List<Enterprise>> byPlanting;
    private readonly List<List<BedStay>> stays = [];
    private readonly CropTimes times;
    private readonly int[] cropYears;
    private readonly UnitNames units;
    private Picks picks;

    internal PlantingCalendar(FarmRecords records, List<Problem> problems)
    {
        this.records = records;
        this.problems = problems;
        BedsByCrop = records.Crops.ConvertAll(_ => new List<BedStay>());
        foreach (Planting planting in records.Plantings)
        {
            stays.Add(planting.BedList.ConvertAll(bed => new BedStay(bed)));
            BedsByCrop[planting.Crop.Index].AddRange(stays[^1]);
        }

        times = new CropTimes(records);
        BedEnds.Assume(records, Stays, times);
        units = new UnitNames(records, records.Harvests.Table);
        picks = SplitHarvests();
        (DateOnly First, DateOnly Last)?[] spans = HarvestSpans();
        CloseBeds(spans);
        byPlanting = records.Plantings.ConvertAll(_ => new List<Enterprise>(1));
        cropYears = records.Plantings.Select(planting => CropYearOf(planting, spans[planting.Index])).ToArray();
        WarnOfNextYears(spans);
        MakeEnterprises();
    }

    /// <summary>Enterprises by first row in the file, then crop year.</summary>
    internal List<Enterprise> Enterprises { get; } = [];

    /// <summary>All stays in beds, planting by planting.</summary>
    internal IReadOnlyList<BedStay> Stays => [.. stays.SelectMany(planting => planting)];

    /// <summary>The beds of each crop's plantings, by crop index, planting by planting.</summary>
    internal List<List<BedStay>> BedsByCrop { get; }

    /// <summary>Harvest rows split over plantings, in file order: given once, since the lots then hold what they say.</summary>
    internal Picks TakePicks()
    {
        (Picks taken, picks) = (picks, new Picks(0));
        return taken;
    }

    /// <summary>
    /// The enterprise a date of a planting belongs to: its only one, or a perennial's of the nearest crop year it has one in, the earlier
    /// of two as near.
    /// </summary>
    internal Enterprise EnterpriseOf(Planting planting, DateOnly date)
    {
        int window = records.Settings.WindowOf(date);
        List<Enterprise> years = byPlanting[planting.Index];
        Enterprise nearest = years[0];
        foreach (Enterprise year in years)
        {
            nearest = Math.Abs(year.CropYear - window) < Math.Abs(nearest.CropYear - window) ? year : nearest;
        }

        return nearest;
    }

    /// <summary>A crop's enterprises of a crop year, in their order.</summary>
    internal IReadOnlyList<Enterprise> Of(Crop crop, int cropYear) =>
        byCropAndYear.TryGetValue((crop.Index, cropYear), out List<Enterprise>? enterprises) ? enterprises : [];

    /// <summary>The enterprises of a planting, oldest first.</summary>
    internal IReadOnlyList<Enterprise> YearsOf(Planting planting) =>
        [.. byPlanting[planting.Index].OrderBy(enterprise => enterprise.CropYear)];

    private Picks SplitHarvests()
    {
        Picks split = new(records.Harvests.Count);
        CropHarvests cropHarvests = new(records.Settings, times, BedsByCrop, problems);
        DayCells days = HarvestRow.DateColumn.Cells(records.Harvests.Table);
        for (int i = 0; i < records.Harvests.Count; i++)
        {
            if (times.PlantingNamed(i) is >= 0 and int named)
            {
                Planting planting = records.Plantings[named];
                (long quantity, long culled) = InUnits(planting.Crop, i);
                split.Add(i, planting, days.DayNumber(records.Harvests.IndexOf(i)), quantity, culled);
                continue;
            }

            HarvestRow row = records.Harvests[i];
            if (!string.IsNullOrWhiteSpace(row.Planting))
            {
                throw new RecordsException(TracingProblems.HarvestBeforePlanting(row));
            }
            else
            {
                Crop crop = records.Crop(row.Crop!);
                SplitOverBeds(i, crop, cropHarvests.BedsOf(row, crop), split);
            }
        }

        return cropHarvests.Errors.Count > 0 ? throw new RecordsException(cropHarvests.Errors) : split;
    }

    private (long Quantity, long Culled) InUnits(Crop crop, int harvest)
    {
        (RecordTable table, int row) = (records.Harvests.Table, records.Harvests.IndexOf(harvest));
        int unit = HarvestRow.UnitColumn.Cells(table)[row];
        return (
            units.Quantity(crop.Index, unit, HarvestRow.QuantityColumn.Cells(table), row),
            units.Quantity(crop.Index, unit, HarvestRow.CulledColumn.Cells(table), row)
        );
    }

    private void SplitOverBeds(int row, Crop crop, List<BedStay> beds, Picks split)
    {
        DateOnly day = records.Harvests[row].Date;
        (long quantity, long culled) = InUnits(crop, row);
        if (quantity == 0 && culled == 0)
        {
            return;
        }

        if (beds.Count <= 1)
        {
            beds.ForEach(bed => split.Add(row, bed.Planting, day.DayNumber, quantity, culled));
            return;
        }

        List<Planting> plantings = beds.Select(bed => bed.Planting).Distinct().ToList();
        decimal[] feet = plantings.Select(planting => beds.Where(bed => bed.Planting == planting).Sum(bed => bed.BedFeet)).ToArray();
        decimal[] quantities = LargestRemainder.SplitExactly(ExactUnits.Value(quantity), feet);
        decimal[] culls = LargestRemainder.SplitExactly(ExactUnits.Value(culled), feet);
        for (int i = 0; i < plantings.Count; i++)
        {
            if (quantities[i] != 0m || culls[i] != 0m)
            {
                split.Add(row, plantings[i], day.DayNumber, ExactUnits.Of(quantities[i]), ExactUnits.Of(culls[i]));
            }
        }
    }

    /// <summary>First and last harvest of each planting, in one pass.</summary>
    private (DateOnly First, DateOnly Last)?[] HarvestSpans()
    {
        (DateOnly First, DateOnly Last)?[] spans = new (DateOnly, DateOnly)?[records.Plantings.Count];
        for (int i = 0; i < picks.Count; i++)
        {
            DateOnly day = DateOnly.FromDayNumber(picks.Day[i]);
            (DateOnly First, DateOnly Last) known = spans[picks.Planting[i]] ?? (day, day);
            spans[picks.Planting[i]] = (Earlier(day, known.First), Later(day, known.Last));
        }

        return spans;
    }

    private void CloseBeds((DateOnly First, DateOnly Last)?[] spans)
    {
        foreach (Planting planting in records.Plantings)
        {
            // What was picked before it came into a bed (volunteers, say) tells nothing of its end.
            DateOnly? lastPick =
                spans[planting.Index] is { } span && span.Last >= stays[planting.Index].Min(bed => bed.In) ? span.Last : null;
            DateOnly? cut = null;
            foreach (BedStay bed in stays[planting.Index])
            {
                if (bed.Row.OutOfBed is not null)
                {
                    continue;
                }

                if (planting.Crop.Perennial)
                {
                    // It still stands there: neither its last harvest nor the last row of the season, whatever that is of, frees its bed.
                    bed.Out = Later(records.CostsUntil.AddDays(1), bed.In);
                    continue;
                }

                DateOnly end = lastPick?.AddDays(1) ?? bed.In.AddDays(times.LongestStay(planting.Crop));
                bed.Out = Later(lastPick is null ? Earlier(end, records.AsOf) : end, bed.In);
                cut = lastPick is null && end < records.AsOf ? end : cut;
            }

            if (cut is { } day)
            {
                problems.Add(TracingProblems.NoEnd(planting, day, times.LongestStay(planting.Crop)));
            }
        }
    }

    private static DateOnly Earlier(DateOnly a, DateOnly b) => DateOnly.FromDayNumber(Math.Min(a.DayNumber, b.DayNumber));

    private static DateOnly Later(DateOnly a, DateOnly b) => DateOnly.FromDayNumber(Math.Max(a.DayNumber, b.DayNumber));

    private int CropYearOf(Planting planting, (DateOnly First, DateOnly Last)? span)
    {
        if (stays[planting.Index].Select(bed => bed.Row.CropYear).FirstOrDefault(year => year is not null) is { } given)
        {
            return given;
        }

        DateOnly date = span?.First
            ?? stays[planting.Index].Max(bed => bed.Row.OutOfBed)
            ?? stays[planting.Index].Min(bed => bed.In);
        return records.Settings.WindowOf(date);
    }

    /// <summary>
    /// Warns of what stands unpicked at the closing date, without a crop year of its own, and by the crop's usual days to its first picking
    /// will be picked in a later one: garlic set in October.
    /// </summary>
    private void WarnOfNextYears((DateOnly First, DateOnly Last)?[] spans)
    {
        ILookup<Crop, decimal> waits = records.Plantings.Where(planting => spans[planting.Index] is not null)
            .Select(planting => (planting.Crop,
                Days: spans[planting.Index]!.Value.First.DayNumber - stays[planting.Index].Min(bed => bed.In).DayNumber))
            .Where(one => one.Days >= 0).ToLookup(one => one.Crop, one => (decimal)one.Days);
        foreach (Planting planting in records.Plantings.Where(one => !one.Crop.Perennial && spans[one.Index] is null))
        {
            List<BedStay> beds = stays[planting.Index];
            if (beds.Exists(bed => bed.Row.CropYear is not null || bed.Row.OutOfBed is not null || bed.Out < records.AsOf))
            {
                continue;
            }

            int days = waits.Contains(planting.Crop) ? (int)Numbers.Median(waits[planting.Crop]) : FallDays;
            int picked = records.Settings.WindowOf(beds.Min(bed => bed.In).AddDays(days));
            if (picked > cropYears[planting.Index])
            {
                problems.Add(TracingProblems.LooksLikeNextYears(planting, cropYears[planting.Index], picked));
            }
        }
    }

    private void MakeEnterprises()
    {
        ILookup<int, int> pickYears = Enumerable.Range(0, picks.Count).Where(i => records.Plantings[picks.Planting[i]].Crop.Perennial)
            .ToLookup(i => picks.Planting[i], i => records.Settings.WindowOf(DateOnly.FromDayNumber(picks.Day[i])));
        foreach (Planting planting in records.Plantings)
        {
            if (!planting.Crop.Perennial)
            {
                Add(planting, cropYears[planting.Index], DateOnly.MinValue, DateOnly.MaxValue);
                continue;
            }

            DateOnly lastDay = stays[planting.Index].Max(bed => bed.Out.DayNumber > bed.In.DayNumber ? bed.Out.AddDays(-1) : bed.In);
            int first = records.Settings.WindowOf(stays[planting.Index].Min(bed => bed.In));
            int last = records.Settings.WindowOf(Earlier(lastDay, records.AsOf));
            foreach (
                int year in Enumerable.Range(first, Math.Max(1, last - first + 1)).Concat(pickYears[planting.Index]).Distinct().Order()
            )
            {
                Add(planting, year, records.Settings.StartOf(year), records.Settings.EndOf(year));
            }
        }
    }

    private void Add(Planting planting, int cropYear, DateOnly from, DateOnly to)
    {
        bool annual = !planting.Crop.Perennial;
        Enterprise enterprise = new(Enterprises.Count, planting, cropYear, stays[planting.Index]);
        decimal[] days = stays[planting.Index].Select(bed => bed.BedFeet * (annual ? bed.Days : bed.DaysWithin(from, to))).ToArray();
        enterprise.BedFeet = new BedFeet(stays[planting.Index].Sum(bed => bed.BedFeet));
        enterprise.BedFootDaysByRow = days;
        enterprise.BedFootDays = new BedFootDays(days.Sum());
        foreach (BedStay bed in stays[planting.Index])
        {
            // A perennial's seedlings count in the crop year it was set out in.
            if (annual || (bed.In >= from && bed.In < to))
            {
                enterprise.Trays += bed.Row.Trays ?? 0m;
                enterprise.TrayDays += bed.Row.Sown is { } sown
                    ? (bed.Row.Trays ?? 0m) * Math.Max(0, bed.In.DayNumber - sown.DayNumber)
                    : 0m;
            }
        }

        Enterprises.Add(enterprise);
        byPlanting[planting.Index].Add(enterprise);
        if (!byCropAndYear.TryGetValue((planting.Crop.Index, cropYear), out List<Enterprise>? ofYear))
        {
            byCropAndYear[(planting.Crop.Index, cropYear)] = ofYear = [];
        }

        ofYear.Add(enterprise);
    }
}

/// <summary>
/// Harvest rows split over plantings, in file order, in columns: row, planting, day, and quantities in units of 10^-8 of the crop's unit.
/// </summary>
internal sealed class Picks(int room)
{
    internal int Count => Row.Count;

    internal List<int> Row { get; } = new(room);

    internal List<int> Planting { get; } = new(room);

    internal List<int> Day { get; } = new(room);

    internal List<long> Quantity { get; } = new(room);

    internal List<long> Culled { get; } = new(room);

    internal void Add(int row, Planting planting, int day, long quantity, long culled)
    {
        Row.Add(row);
        Planting.Add(planting.Index);
        Day.Add(day);
        Quantity.Add(quantity);
        Culled.Add(culled);
    }
}
