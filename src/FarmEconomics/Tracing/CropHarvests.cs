using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>
/// Which plantings a harvest that names only its crop came from: those in a bed long enough to be picked; else the one that left its bed
/// last before, in the same crop year; else those that stand, young as they are; else the one that left last in an earlier crop year, not
/// too long ago; else the next to come that crop year.
/// </summary>
internal sealed class CropHarvests(FarmSettings settings, CropTimes times, IReadOnlyList<List<BedStay>> bedsByCrop, List<Problem> problems)
{
    /// <summary>Harvests no planting can have given; empty when each found one.</summary>
    internal List<Problem> Errors { get; } = [];

    /// <summary>The rows of the plantings it came from; empty, with an error, when there is none.</summary>
    internal List<BedStay> BedsOf(HarvestRow row, Crop crop)
    {
        List<BedStay> standing = bedsByCrop[crop.Index].FindAll(bed => bed.CanBePicked(row.Date));
        int least = times.LeastDays(crop);
        List<BedStay> ready = standing.FindAll(bed => row.Date.DayNumber - bed.In.DayNumber >= least);
        return ready.Count > 0 ? ready : WhenNoneIsReady(row, crop, standing);
    }

    private List<BedStay> WhenNoneIsReady(HarvestRow row, Crop crop, List<BedStay> standing)
    {
        List<BedStay> beds = bedsByCrop[crop.Index];
        if (!beds.Exists(bed => bed.In <= row.Date))
        {
            Errors.Add(TracingProblems.HarvestWithoutPlanting(row, crop));
            return [];
        }

        BedStay? last = beds.Where(bed => bed.Out <= row.Date).MaxBy(bed => bed.Out);
        BedStay? left = last is not null && row.Date.DayNumber - last.Out.DayNumber <= times.LongestStay(crop) ? last : null;
        int window = settings.WindowOf(row.Date);
        if (standing.Count > 0)
        {
            // While something stands, a closed season doesn't move.
            left = left is not null && settings.WindowOf(left.Out) == window ? left : null;
            problems.Add(TracingProblems.HarvestSoonAfterBed(row, crop, standing, times.LeastDays(crop), left));
            return left is null ? standing : [left];
        }

        if (left is not null)
        {
            problems.Add(TracingProblems.HarvestAfterBed(row, crop, left.Planting));
            return [left];
        }

        if (beds.Where(bed => bed.In > row.Date && settings.WindowOf(bed.In) == window).MinBy(bed => bed.In) is { } next)
        {
            problems.Add(TracingProblems.HarvestBeforeBed(row, crop, next));
            return [next];
        }

        Errors.Add(TracingProblems.HarvestLongAfterBed(row, crop, last!, times.LongestStay(crop)));
        return [];
    }
}
