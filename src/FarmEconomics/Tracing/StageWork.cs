using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>Which enterprises of a crop were at a stage of work on a day, and with what weight.</summary>
internal sealed class StageWork
{
    private const int DaysAround = 3;

    // Nobody adds to a list that was given out.
    private static readonly List<(Enterprise Enterprise, decimal Weight)> None = [];

    private readonly PlantingCalendar calendar;
    private readonly LotLedger ledger;
    // By day, crop and whether it is of sales: one number, since every row of labor asks for several days.
    private readonly Dictionary<long, List<(Enterprise Enterprise, decimal Weight)>> days = [];
    private readonly List<(int Enterprise, long Quantity)> found = [];
    private readonly ILookup<Crop, Enterprise> byCrop;

    internal StageWork(PlantingCalendar calendar, LotLedger ledger)
        : this(calendar, ledger, calendar.Enterprises.ToLookup(enterprise => enterprise.Crop))
    {
    }

    private StageWork(PlantingCalendar calendar, LotLedger ledger, ILookup<Crop, Enterprise> byCrop)
    {
        this.calendar = calendar;
        this.ledger = ledger;
        this.byCrop = byCrop;
    }

    /// <summary>The same for another thread: what one has looked up isn't shared.</summary>
    internal StageWork Another() => new(calendar, ledger, byCrop);

    /// <summary>The enterprises at that stage on that day with their weights; empty when none was.</summary>
    internal List<(Enterprise Enterprise, decimal Weight)> At(Crop crop, Stage stage, DateOnly day) => stage switch
    {
        Stage.Nursery => Standing(crop, day, bed => bed.IsInNursery(day), byTrays: true),
        Stage.Grow => Standing(crop, day, bed => bed.IsInBed(day), byTrays: false),
        Stage.Harvest or Stage.Pack => Nearest(sold: false, crop, day),
        Stage.Sell => Nearest(sold: true, crop, day),
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

    private List<(Enterprise Enterprise, decimal Weight)> Nearest(bool sold, Crop crop, DateOnly day)
    {
        List<(Enterprise Enterprise, decimal Weight)> list = OnDay(sold, crop.Index, day.DayNumber);
        int known = HasWeight(list) ? 0 : DaysKnown(sold, crop.Index, day.DayNumber);
        for (int distance = 1; known != 0 && distance <= DaysAround && !HasWeight(list); distance++)
        {
            // The earlier day first: on a tie it counts.
            list = OnKnownDay(-distance);
            list = HasWeight(list) ? list : OnKnownDay(distance);
        }

        return HasWeight(list) ? list : [];

        List<(Enterprise Enterprise, decimal Weight)> OnKnownDay(int distance) =>
            (known & (1 << (distance + DaysAround))) == 0 ? None : OnDay(sold, crop.Index, day.DayNumber + distance);
    }

    private static bool HasWeight(List<(Enterprise Enterprise, decimal Weight)> list) => list.Exists(item => item.Weight > 0m);

    /// <summary>A bit for each day around one on which anything of a crop was picked, or sold, the earliest first.</summary>
    private int DaysKnown(bool sold, int crop, int day)
    {
        (CropLayout layout, int[] dayOf) =
            sold ? (ledger.Dispositions.Layout, ledger.Dispositions.Day) : (ledger.Lots.Layout, ledger.Lots.Day);
        int known = 0;
        int first = day - DaysAround;
        for (int i = layout.FirstFrom(crop, dayOf, first); i < layout.Starts[crop + 1] && dayOf[i] <= day + DaysAround; i++)
        {
            known |= 1 << (dayOf[i] - first);
        }

        return known;
    }

    /// <summary>
    /// What of a crop was picked, or sold, on a day, by enterprise in their order: a row's cents follow its hours, ties to the planting
    /// that stands earlier in the file.
    /// </summary>
    private List<(Enterprise Enterprise, decimal Weight)> OnDay(bool sold, int crop, int day)
    {
        long key = ((long)day << 32) | ((long)crop << 1) | (sold ? 1L : 0L);
        if (days.TryGetValue(key, out List<(Enterprise Enterprise, decimal Weight)>? known))
        {
            return known;
        }

        found.Clear();
        if (sold)
        {
            FindSold(crop, day);
        }
        else
        {
            FindPicked(crop, day);
        }

        found.Sort((a, b) => a.Enterprise.CompareTo(b.Enterprise));
        List<(Enterprise Enterprise, decimal Weight)> list = found.Count == 0 ? None : [];
        for (int i = 0; i < found.Count;)
        {
            int enterprise = found[i].Enterprise;
            Int128 quantity = 0;
            for (; i < found.Count && found[i].Enterprise == enterprise; i++)
            {
                quantity += found[i].Quantity;
            }

            list.Add((calendar.Enterprises[enterprise], ExactUnits.Value(quantity)));
        }

        return days[key] = list;
    }

    private void FindPicked(int crop, int day)
    {
        LotTable lots = ledger.Lots;
        for (int lot = lots.Layout.FirstFrom(crop, lots.Day, day); lot < lots.Layout.Starts[crop + 1] && lots.Day[lot] == day; lot++)
        {
            found.Add((lots.Enterprise[lot], lots.Quantity[lot]));
        }
    }

    private void FindSold(int crop, int day)
    {
        DispositionTable table = ledger.Dispositions;
        PartTable parts = ledger.Parts;
        for (int i = table.Layout.FirstFrom(crop, table.Day, day); i < table.Layout.Starts[crop + 1] && table.Day[i] == day; i++)
        {
            for (int part = parts.First[i]; table.IsSold(i) && part < parts.First[i + 1]; part++)
            {
                if (parts.EnterpriseOf(part) is >= 0 and int enterprise)
                {
                    found.Add((enterprise, parts.Quantity[part]));
                }
            }
        }
    }

    private List<(Enterprise Enterprise, decimal Weight)> Standing(Crop crop, DateOnly day, Predicate<BedStay> stands, bool byTrays)
    {
        List<BedStay> beds = calendar.BedsByCrop[crop.Index].FindAll(stands);
        bool trays = byTrays && beds.TrueForAll(bed => bed.Row.Trays is not null);
        List<(Enterprise Enterprise, decimal Weight)> weights = [];
        foreach (IGrouping<Planting, BedStay> rows in beds.GroupBy(bed => bed.Planting))
        {
            // Seedlings belong to the crop year they were raised for, not to the day they were watered on.
            Enterprise enterprise = byTrays
                ? calendar.EnterpriseOf(rows.Key, rows.Min(bed => bed.In))
                : calendar.EnterpriseOf(rows.Key, day);
            weights.Add((enterprise, rows.Sum(bed => trays ? bed.Row.Trays!.Value : bed.BedFeet)));
        }

        // No trays at all says nothing about the seedlings: the year's plantings then share the hours.
        return weights.Exists(item => item.Weight > 0m) ? weights : [];
    }
}
