using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>
/// How long plantings without out_of_bed may have stood, before harvests that name only a crop are split over them: up to the last harvest
/// that names the planting; without one, until another planting needed its bed-feet; else up to the closing date. Without that bound an old
/// planting would take a part of every later year's harvests.
/// </summary>
internal static class BedStays
{
    internal static void Assume(FarmRecords records)
    {
        Dictionary<string, DateOnly> lastNamed = new(StringComparer.OrdinalIgnoreCase);
        foreach (HarvestRow row in records.Harvests)
        {
            if (!string.IsNullOrWhiteSpace(row.Planting))
            {
                string name = row.Planting.Trim();
                lastNamed[name] = lastNamed.TryGetValue(name, out DateOnly known) && known > row.Date ? known : row.Date;
            }
        }

        List<BedPlanting> open = [];
        foreach (BedPlanting stay in records.Plantings.SelectMany(planting => planting.Beds))
        {
            bool annual = !stay.Planting.Crop.Perennial;
            stay.Out = stay.Row.OutOfBed
                ?? (annual && lastNamed.TryGetValue(stay.Planting.Name, out DateOnly last) && last >= stay.In ? last.AddDays(1) : records.AsOf.AddDays(1));
            if (annual && stay.Row.OutOfBed is null && !lastNamed.ContainsKey(stay.Planting.Name))
            {
                open.Add(stay);
            }
        }

        if (open.Count > 0)
        {
            CloseWhereNeeded(records, open.ToHashSet());
        }
    }

    private static void CloseWhereNeeded(FarmRecords records, HashSet<BedPlanting> open)
    {
        foreach (IGrouping<Bed, BedPlanting> bed in records.Plantings.SelectMany(planting => planting.Beds).GroupBy(stay => stay.Bed))
        {
            List<BedPlanting> standing = [];
            foreach (BedPlanting next in bed.OrderBy(stay => stay.In))
            {
                standing.RemoveAll(stay => stay.Out <= next.In);
                while (standing.Sum(stay => stay.Row.BedFeet) + next.Row.BedFeet > bed.Key.Row.LengthFt && standing.Find(open.Contains) is { } oldest && oldest.In < next.In)
                {
                    oldest.Out = next.In;
                    standing.Remove(oldest);
                }

                standing.Add(next);
            }
        }
    }
}
