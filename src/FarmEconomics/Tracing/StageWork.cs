using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>Which enterprises of a crop were at a stage of work on a day, and with what weight.</summary>
internal sealed class StageWork
{
    private const int DaysAround = 3;

    private readonly PlantingCalendar calendar;
    private readonly FarmSettings settings;
    private readonly Dictionary<(int Crop, DateOnly Day), List<(Enterprise Enterprise, decimal Quantity)>> picked = [];
    private readonly Dictionary<(int Crop, DateOnly Day), List<(Enterprise Enterprise, decimal Quantity)>> sold = [];
    private readonly ILookup<Crop, Enterprise> byCrop;

    internal StageWork(FarmSettings settings, PlantingCalendar calendar, LotLedger ledger)
    {
        this.settings = settings;
        this.calendar = calendar;
        byCrop = calendar.Enterprises.ToLookup(enterprise => enterprise.Crop);
        foreach (Lot lot in ledger.Lots)
        {
            Add(picked, (lot.Enterprise.Crop.Index, lot.Date), lot.Enterprise, lot.Quantity);
        }

        foreach (Leaving leaving in ledger.Leavings)
        {
            if (leaving.IsSold)
            {
                foreach (LeavingPart part in leaving.OwnParts)
                {
                    if (part.Enterprise is { } enterprise)
                    {
                        Add(sold, (leaving.Crop.Index, leaving.Row.Date), enterprise, part.Quantity);
                    }
                }
            }
        }

        // A row's cents follow its hours, ties to the planting that stands earlier in the file, not to the one picked or sold first that day.
        foreach (List<(Enterprise Enterprise, decimal Quantity)> day in picked.Values.Concat(sold.Values))
        {
            day.Sort((a, b) => a.Enterprise.Index.CompareTo(b.Enterprise.Index));
        }
    }

    /// <summary>The enterprises at that stage on that day with their weights; empty when none was.</summary>
    internal List<(Enterprise Enterprise, decimal Weight)> At(Crop crop, Stage stage, DateOnly day) => stage switch
    {
        Stage.Nursery => Standing(crop, day, bed => bed.IsInNursery(day), byTrays: true),
        Stage.Grow => Standing(crop, day, bed => bed.IsInBed(day), byTrays: false),
        Stage.Harvest or Stage.Pack => Nearest(picked, crop, day),
        Stage.Sell => Nearest(sold, crop, day),
        _ => [],
    };

    /// <summary>The crop's enterprises of a crop year by bed-foot-weeks (by bed-feet when none has time in bed).</summary>
    internal List<(Enterprise Enterprise, decimal Weight)> OfYear(Crop crop, int cropYear)
    {
        IReadOnlyList<Enterprise> enterprises = calendar.Of(crop, cropYear);
        bool anyTime = enterprises.Any(enterprise => enterprise.BedFootDays.Value > 0m);
        return enterprises.Select(enterprise => (enterprise, anyTime ? enterprise.BedFootDays.Value : enterprise.BedFeet.Value)).ToList();
    }

    /// <summary>The first crop year from one on in which the crop has an enterprise; null when there is none.</summary>
    internal int? YearWithPlanting(Crop crop, int cropYear)
    {
        int? best = null;
        foreach (Enterprise enterprise in byCrop[crop])
        {
            if (enterprise.CropYear >= cropYear && (best is null || enterprise.CropYear < best))
            {
                best = enterprise.CropYear;
            }
        }

        return best;
    }

    private static void Add(
        Dictionary<(int, DateOnly), List<(Enterprise, decimal)>> into, (int, DateOnly) key, Enterprise enterprise, decimal quantity)
    {
        if (!into.TryGetValue(key, out List<(Enterprise, decimal)>? list))
        {
            into[key] = list = [];
        }

        // First in, first out: what comes next is nearly always of the planting that came last.
        int at = list.Count - 1;
        while (at >= 0 && list[at].Item1 != enterprise)
        {
            at--;
        }

        if (at < 0)
        {
            list.Add((enterprise, quantity));
        }
        else
        {
            list[at] = (enterprise, list[at].Item2 + quantity);
        }
    }

    private static List<(Enterprise Enterprise, decimal Weight)> Nearest(
        Dictionary<(int, DateOnly), List<(Enterprise, decimal)>> days, Crop crop, DateOnly day)
    {
        for (int distance = 0; distance <= DaysAround; distance++)
        {
            // The earlier day first: on a tie it counts.
            foreach (DateOnly candidate in distance == 0 ? [day] : new[] { day.AddDays(-distance), day.AddDays(distance) })
            {
                if (days.TryGetValue((crop.Index, candidate), out List<(Enterprise, decimal Quantity)>? list) && list.Exists(item => item.Quantity > 0m))
                {
                    return list;
                }
            }
        }

        return [];
    }

    private List<(Enterprise Enterprise, decimal Weight)> Standing(Crop crop, DateOnly day, Predicate<BedPlanting> stands, bool byTrays)
    {
        List<BedPlanting> beds = calendar.BedsByCrop[crop.Index].FindAll(stands);
        bool trays = byTrays && beds.TrueForAll(bed => bed.Row.Trays is not null);
        List<(Enterprise Enterprise, decimal Weight)> weights = [];
        foreach (IGrouping<Planting, BedPlanting> rows in beds.GroupBy(bed => bed.Planting))
        {
            // Seedlings belong to the crop year they were raised for, not to the day they were watered on.
            Enterprise enterprise = byTrays ? calendar.EnterpriseOf(rows.Key, rows.Min(bed => bed.In)) : calendar.EnterpriseOf(rows.Key, day);
            weights.Add((enterprise, rows.Sum(bed => trays ? bed.Row.Trays!.Value : bed.BedFeet)));
        }

        // No trays at all says nothing about the seedlings: the year's plantings then share the hours.
        return weights.Exists(item => item.Weight > 0m) ? weights : [];
    }
}
