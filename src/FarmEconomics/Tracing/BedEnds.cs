using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>
/// How long plantings without out_of_bed may have stood, before harvests that name only a crop are split over them: up to the last harvest
/// that names the planting; without one, until another planting needed its bed-feet, or its crop's longest stay was over; else up to the
/// closing date. Without that bound an old planting would take a part of every later year's harvests.
/// </summary>
internal static class BedEnds
{
    internal static void Assume(FarmRecords records, IReadOnlyList<BedStay> stays, CropTimes times)
    {
        HashSet<BedStay> open = [];
        foreach (BedStay stay in stays)
        {
            if (stay.Row.OutOfBed is { } written)
            {
                stay.Out = written;
            }
            else if (stay.Planting.Crop.Perennial)
            {
                stay.Out = records.AsOf.AddDays(1);
            }
            else if (times.LastNamed(stay.Planting) is { } last && last >= stay.In)
            {
                stay.Out = last.AddDays(1);
            }
            else
            {
                // It may lie after the closing date: no harvest does.
                stay.Out = stay.In.AddDays(times.LongestStay(stay.Planting.Crop));
                if (times.LastNamed(stay.Planting) is null)
                {
                    open.Add(stay);
                }
            }
        }

        CloseWhereNeeded(stays, open);
    }

    private static void CloseWhereNeeded(IReadOnlyList<BedStay> stays, HashSet<BedStay> open)
    {
        foreach (IGrouping<Bed, BedStay> bed in stays.GroupBy(stay => stay.Bed))
        {
            List<BedStay> standing = [];
            foreach (BedStay next in bed.OrderBy(stay => stay.In))
            {
                standing.RemoveAll(stay => stay.Out <= next.In);
                while (
                    standing.Sum(stay => stay.Row.BedFeet) + next.Row.BedFeet > bed.Key.Row.LengthFt
                    && standing.Find(open.Contains) is { } oldest
                    && oldest.In < next.In
                )
                {
                    oldest.Out = next.In;
                    standing.Remove(oldest);
                }

                standing.Add(next);
            }
        }
    }
}
