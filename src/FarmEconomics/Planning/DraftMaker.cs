using FarmEconomics.Records;

namespace FarmEconomics.Planning;

/// <summary>
/// Lays a plan's lengths into beds and its quantities into weeks. What comes first is laid first, into the bed it fits best, in several
/// where it must: so it always fits where the lengths fit week by week. Where rotation is limited, a family goes into beds free of it; if
/// some then finds none, other orders are tried, and the one that leaves least beside them is kept.
/// </summary>
public sealed class DraftMaker
{
    // Less than this of a bed isn't worth a row.
    private const double LeastFeet = 0.25;
    private readonly FarmRecords records;
    private readonly PlanModel model;
    private readonly DateOnly start;
    private readonly Dictionary<string, double[]> free = new(StringComparer.OrdinalIgnoreCase);
    private readonly Dictionary<string, int> numbers = [];
    private readonly Dictionary<PlanSowing, string> names = new(ReferenceEqualityComparer.Instance);

    /// <summary>Length of a free bed that a family may still take this year: it stands there but once.</summary>
    private readonly Dictionary<(PlanRotation Rotation, string Bed), double> fresh = [];
    private double misplaced;
    private bool keepsRarest;

    private DraftMaker(FarmRecords records, PlanModel model)
    {
        (this.records, this.model) = (records, model);
        start = records.Settings.StartOf(model.CropYear);
        foreach (BedRow bed in records.Tables.Beds)
        {
            free[bed.Bed.Trim()] = [.. Enumerable.Range(0, PlanModel.Weeks).Select(week =>
                bed.IsThere(Day(week)) ? (double)bed.LengthFt : 0.0)];
        }

        foreach (TakenBed taken in model.Taken)
        {
            foreach (int week in Enumerable.Range(0, PlanModel.Weeks).Where(week => BedsTaken.IsIn(model, taken, week)))
            {
                Take(taken.Bed, week, week + 1, taken.BedFeet / Width(taken.Bed));
            }
        }
    }

    /// <summary>Makes the rows of a plan.</summary>
    /// <param name="records">The farm's records.</param>
    /// <param name="model">The model.</param>
    /// <param name="feet">Bed-feet of each sowing, in the model's order.</param>
    /// <param name="quantities">What they pick and sell.</param>
    /// <returns>The plan.</returns>
    public static PlanDraft Of(FarmRecords records, PlanModel model, IReadOnlyList<double> feet, PlanQuantities quantities)
    {
        ArgumentNullException.ThrowIfNull(records);
        ArgumentNullException.ThrowIfNull(model);
        ArgumentNullException.ThrowIfNull(feet);
        ArgumentNullException.ThrowIfNull(quantities);
        DraftMaker maker = new(records, model);
        List<DraftPlanting> plantings = maker.LayAll(feet, quantities, LayOrder.ByWeek);
        foreach (
            LayOrder order in (LayOrder[])[LayOrder.KeepsRarest, LayOrder.ScarcestFirst, LayOrder.ScarcestFirst | LayOrder.KeepsRarest]
        )
        {
            if (maker.misplaced > 0.0 && model.Rotation.Count > 0)
            {
                DraftMaker other = new(records, model);
                List<DraftPlanting> again = other.LayAll(feet, quantities, order);
                (maker, plantings) = other.misplaced < maker.misplaced ? (other, again) : (maker, plantings);
            }
        }

        return new PlanDraft(model.CropYear, plantings, maker.Sales(quantities));
    }

    /// <summary>In which order sowings are laid, and into which of the beds that have room.</summary>
    [Flags]
    private enum LayOrder
    {
        /// <summary>What comes first, into the bed with least room: always fits where the lengths fit week by week.</summary>
        ByWeek = 0,

        /// <summary>Families that need most of the length free of them first.</summary>
        ScarcestFirst = 1,

        /// <summary>Into beds free of few families, which are of no use to others.</summary>
        KeepsRarest = 2,
    }

    private List<DraftPlanting> LayAll(IReadOnlyList<double> feet, PlanQuantities quantities, LayOrder order)
    {
        double[] picked = PartPicked(feet, quantities);
        keepsRarest = order.HasFlag(LayOrder.KeepsRarest);
        Dictionary<PlanRotation, double> needs = model.Rotation.ToDictionary(
            one => one,
            one =>
                Enumerable.Range(0, feet.Count).Where(i => one.Holds(model, model.Sowings[i])).Sum(i => feet[i])
                / Math.Max(1.0, one.Feet)
        );
        double Scarce(int i) => order.HasFlag(LayOrder.ScarcestFirst) ? model.Sowings[i].Standing.Count > 0 ? double.PositiveInfinity
            : RotationOf(model.Sowings[i]) is { } rotation ? needs[rotation] : 0.0 : 0.0;
        int[] inOrder = [.. Enumerable.Range(0, feet.Count).Where(i => feet[i] > LeastFeet)
            .OrderBy(i => model.Sowings[i].Week).ThenByDescending(i => model.Sowings[i].WeeksInBed)];
        foreach (int i in inOrder.Where(i => model.Sowings[i].Standing.Count == 0))
        {
            names[model.Sowings[i]] = NameOf(model.Crops[model.Sowings[i].Crop].Name);
        }

        return [.. inOrder.OrderByDescending(Scarce).SelectMany(i => Lay(model.Sowings[i], feet[i], picked[model.Sowings[i].Crop]))];
    }

    private PlanRotation? RotationOf(PlanSowing sowing) => model.Rotation.FirstOrDefault(one => one.Holds(model, sowing));

    private DateOnly Day(int week) => start.AddDays(7 * week);

    /// <summary>The part of what is ripe that the plan picks, by crop.</summary>
    private double[] PartPicked(IReadOnlyList<double> feet, PlanQuantities quantities)
    {
        double[] ripe = new double[model.Crops.Count];
        double[] picked = new double[model.Crops.Count];
        for (int i = 0; i < feet.Count; i++)
        {
            ripe[model.Sowings[i].Crop] += feet[i] * model.Sowings[i].Yield.Sum();
        }

        foreach (((int crop, int _), double units) in quantities.Picked)
        {
            picked[crop] += units;
        }

        return [.. ripe.Select((units, crop) => units > 0.0 ? Math.Min(1.0, picked[crop] / units) : 0.0)];
    }

    private IEnumerable<DraftPlanting> Lay(PlanSowing sowing, double feet, double part)
    {
        PlanCrop crop = model.Crops[sowing.Crop];
        double units = (sowing.Yield.Sum() * part) + sowing.LaterUnits;
        double hours = sowing.Hours.Sum() + sowing.HoursBeside + (units * crop.HandlingHours);
        double cost = sowing.Cost + sowing.CostBefore + (units * (crop.PickedCost + crop.SoldCost));
        int year = sowing.Later is null ? model.CropYear : model.CropYear + 1;
        double trays = Math.Max(sowing.TraysAFoot, sowing.Trays.Max());
        DateOnly free = Day(sowing.Week + sowing.WeeksInBed);
        foreach ((string planting, string bed, double length, DateOnly day, DateOnly? leaves) in Beds(sowing, feet))
        {
            double bedFeet = length * Width(bed);
            yield return new DraftPlanting(
                year,
                planting,
                crop.Name,
                bed,
                Round(length, 2),
                day,
                leaves ?? free
            )
            {
                Sown = sowing.NurseryWeeks > 0 ? day.AddDays(-7 * sowing.NurseryWeeks) : null,
                Trays = Round(bedFeet * trays, 2),
                Yield = Round(bedFeet * units, 3),
                Hours = sowing.HoursKnown ? Round(bedFeet * hours, 3) : null,
                Cost = sowing.CostKnown ? Round(bedFeet * cost, 2) : null,
            };
        }
    }

    private IEnumerable<(string Planting, string Bed, double Length, DateOnly In, DateOnly? Out)> Beds(PlanSowing sowing, double feet)
    {
        int from = Math.Max(0, sowing.Week);
        int to = Math.Min(PlanModel.Weeks, sowing.Week + sowing.WeeksInBed);
        foreach (StandingBed bed in sowing.Standing)
        {
            Take(bed.Bed, from, to, bed.BedFeet / Width(bed.Bed));
            yield return (bed.Planting, bed.Bed, bed.BedFeet / Width(bed.Bed), bed.In, bed.Out);
        }

        double left = sowing.Standing.Count > 0 ? 0.0 : feet;
        PlanRotation? rotation = RotationOf(sowing);
        while (left > LeastFeet)
        {
            List<(string Bed, double Room)> beds = RoomUnder(sowing.Cover, from, Math.Max(from + 1, to));
            if (beds.Count == 0)
            {
                yield break;
            }

            List<(string Bed, double Room)> clean = rotation is null ? [] : Clean(rotation, beds);
            bool fits = rotation is null || clean.Count > 0;
            (string chosen, double room) = BestFit(clean.Count > 0 ? clean : beds, left);

            // Nothing is lost: what fits nowhere, as a season's plantings may not when they come and go in the middle of a week, is laid
            // where most room is left, and the outlook tells that bed.
            double taken = room > LeastFeet ? Math.Min(room, left) : left;
            misplaced += fits && room > LeastFeet ? 0.0 : taken;
            Take(chosen, from, to, taken / Width(chosen));
            if (rotation is not null)
            {
                fresh[(rotation, chosen)] = Fresh(rotation, chosen) - taken;
            }

            left -= taken;
            yield return (names[sowing], chosen, taken / Width(chosen), Day(sowing.Week), null);
        }
    }

    /// <summary>Beds of a cover with the room they have over all of some weeks, at the standard width.</summary>
    private List<(string Bed, double Room)> RoomUnder(int cover, int from, int to) =>
        [
            .. records
                .Tables.Beds.Where(bed =>
                    string.Equals(PlanFacts.CoverOf(bed), model.Covers[cover].Name, StringComparison.OrdinalIgnoreCase)
                )
                .Select(bed => (Bed: bed.Bed.Trim(), Room: free[bed.Bed.Trim()][from..to].Min() * Width(bed.Bed))),
        ];

    /// <summary>Those of the beds that a family may still stand in, with the room it has there.</summary>
    private List<(string Bed, double Room)> Clean(PlanRotation rotation, List<(string Bed, double Room)> beds) =>
        [
            .. beds
                .Select(bed => (bed.Bed, Room: Math.Min(bed.Room, Fresh(rotation, bed.Bed))))
                .Where(bed => bed.Room > LeastFeet),
        ];

    private (string Bed, double Room) BestFit(List<(string Bed, double Room)> beds, double left) =>
        !beds.Exists(bed => bed.Room >= left)
            ? beds.MaxBy(bed => bed.Room)
            : beds.Where(bed => bed.Room >= left)
                .MinBy(bed => (keepsRarest ? model.Rotation.Count(one => one.Beds.Contains(bed.Bed)) : 0, bed.Room));

    private double Fresh(PlanRotation rotation, string bed) => fresh.TryGetValue((rotation, bed), out double left) ? left
        : rotation.Beds.Contains(bed) && RowOf(bed) is { } row ? (double)row.LengthFt * Width(bed)
        : 0.0;

    private void Take(string bed, int from, int to, double length)
    {
        for (int week = from; week < to && free.ContainsKey(bed); week++)
        {
            free[bed][week] -= length;
        }
    }

    private BedRow? RowOf(string bed) =>
        records.Tables.Beds.Find(row => string.Equals(row.Bed.Trim(), bed, StringComparison.OrdinalIgnoreCase));

    private double Width(string bed) => (double)((RowOf(bed)?.WidthIn
        ?? records.Settings.StandardBedWidthIn) / records.Settings.StandardBedWidthIn);

    private string NameOf(string crop)
    {
        string name;
        do
        {
            numbers[crop] = numbers.GetValueOrDefault(crop) + 1;
            name = FormattableString.Invariant($"{crop} {model.CropYear}-{numbers[crop]}");
        }
        while (records.FindPlanting(name) is not null);
        return name;
    }

    /// <summary>Sales and boxes week by week; a box is worth its list value.</summary>
    private List<DraftSale> Sales(PlanQuantities quantities)
    {
        Channel? box = records.Channels.FirstOrDefault(channel => channel.Kind == ChannelKind.Share);
        IEnumerable<DraftSale> boxed = quantities.Boxed.Select(one => new DraftSale(
            model.CropYear,
            model.Crops[one.Key.Crop].Name,
            box!.Name,
            Round(one.Value, 3),
            Round(model.Crops[one.Key.Crop].BoxValue[one.Key.Week], 4),
            Day(one.Key.Week)
        ));
        return
        [
            .. quantities
                .Sales.Select(one => new DraftSale(
                    model.CropYear,
                    model.Crops[one.Crop].Name,
                    one.Channel,
                    Round(one.Units, 3),
                    Round(one.Price, 4),
                    Day(one.Week)
                ))
                .Concat(boxed)
                .Where(sale => sale.Quantity > 0m)
                .OrderBy(sale => sale.Crop, StringComparer.Ordinal)
                .ThenBy(sale => sale.Channel, StringComparer.Ordinal)
                .ThenBy(sale => sale.From),
        ];
    }

    private static decimal Round(double value, int decimals) => decimal.Round((decimal)value, decimals, MidpointRounding.AwayFromZero);
}
