using FarmEconomics.Records;

namespace FarmEconomics.Planning;

/// <summary>
/// Lays a plan's lengths into beds and its quantities into weeks. What comes first is laid first, into the bed it fits best, in several
/// where it must: so it always fits where the lengths fit week by week.
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

    private DraftMaker(FarmRecords records, PlanModel model)
    {
        (this.records, this.model) = (records, model);
        start = records.Settings.StartOf(model.CropYear);
        foreach (BedRow bed in records.Tables.Beds)
        {
            free[bed.Bed.Trim()] = [.. Enumerable.Range(0, PlanModel.Weeks).Select(week =>
                (bed.From ?? DateOnly.MinValue) <= Day(week) && (bed.To ?? DateOnly.MaxValue) >= Day(week) ? (double)bed.LengthFt : 0.0)];
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
        double[] picked = maker.PartPicked(feet, quantities);
        List<DraftPlanting> plantings = [.. Enumerable.Range(0, feet.Count).Where(i => feet[i] > LeastFeet)
            .OrderBy(i => model.Sowings[i].Week).ThenByDescending(i => model.Sowings[i].WeeksInBed)
            .SelectMany(i => maker.Lay(model.Sowings[i], feet[i], picked[model.Sowings[i].Crop]))];
        return new PlanDraft(model.CropYear, plantings, maker.Sales(quantities));
    }

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
        double units = sowing.Later is null ? sowing.Yield.Sum() * part : sowing.LaterUnits;
        double hours = sowing.Hours.Sum() + (units * crop.HandlingHours);
        double cost = sowing.Cost + (units * (crop.PickedCost + crop.SoldCost));
        int year = sowing.Later is null ? model.CropYear : model.CropYear + 1;
        double trays = sowing.Trays.Max();
        DateOnly free = Day(sowing.Week + sowing.WeeksInBed);
        foreach ((string planting, string bed, double length, DateOnly day) in Beds(sowing, feet))
        {
            double bedFeet = length * Width(bed);
            yield return new DraftPlanting(year, planting, crop.Name, bed, Round(length, 2), day, sowing.Standing.Count > 0 && sowing.WeeksInBed > PlanModel.Weeks ? Day(PlanModel.Weeks) : free)
            {
                Sown = trays > 0.0 ? day.AddDays(-7 * sowing.NurseryWeeks) : null,
                Trays = Round(bedFeet * trays, 2),
                Yield = Round(bedFeet * units, 3),
                Hours = Round(bedFeet * hours, 3),
                Cost = Round(bedFeet * cost, 2),
            };
        }
    }

    private IEnumerable<(string Planting, string Bed, double Length, DateOnly In)> Beds(PlanSowing sowing, double feet)
    {
        int from = Math.Max(0, sowing.Week);
        int to = Math.Min(PlanModel.Weeks, sowing.Week + sowing.WeeksInBed);
        foreach (StandingBed bed in sowing.Standing)
        {
            Take(bed.Bed, from, to, bed.BedFeet / Width(bed.Bed));
            yield return (bed.Planting, bed.Bed, bed.BedFeet / Width(bed.Bed), bed.In);
        }

        double left = sowing.Standing.Count > 0 ? 0.0 : feet;
        string name = left > 0.0 ? NameOf(model.Crops[sowing.Crop].Name) : "";
        string cover = model.Covers[sowing.Cover].Name;
        while (left > LeastFeet)
        {
            List<(string Bed, double Room)> beds = [.. records.Tables.Beds.Where(bed => string.Equals(PlanFacts.CoverOf(bed), cover, StringComparison.OrdinalIgnoreCase))
                .Select(bed => (Bed: bed.Bed.Trim(), Room: free[bed.Bed.Trim()][from..Math.Max(from + 1, to)].Min() * Width(bed.Bed)))];
            if (beds.Count == 0)
            {
                yield break;
            }

            (string chosen, double room) = beds.Exists(bed => bed.Room >= left) ? beds.Where(bed => bed.Room >= left).MinBy(bed => bed.Room) : beds.MaxBy(bed => bed.Room);

            // Nothing is lost: what fits nowhere, as a season's plantings may not when they come and go in the middle of a week, is laid
            // where most room is left, and the outlook tells that bed.
            double taken = room > LeastFeet ? Math.Min(room, left) : left;
            Take(chosen, from, to, taken / Width(chosen));
            left -= taken;
            yield return (name, chosen, taken / Width(chosen), Day(sowing.Week));
        }
    }

    private void Take(string bed, int from, int to, double length)
    {
        for (int week = from; week < to && free.ContainsKey(bed); week++)
        {
            free[bed][week] -= length;
        }
    }

    private double Width(string bed) => (double)((records.Tables.Beds.Find(row => string.Equals(row.Bed.Trim(), bed, StringComparison.OrdinalIgnoreCase))?.WidthIn
        ?? records.Settings.StandardBedWidthIn) / records.Settings.StandardBedWidthIn);

    private string NameOf(string crop)
    {
        numbers[crop] = numbers.GetValueOrDefault(crop) + 1;
        return FormattableString.Invariant($"{crop} {model.CropYear}-{numbers[crop]}");
    }

    /// <summary>Sales and boxes week by week; a box is worth its list value.</summary>
    private List<DraftSale> Sales(PlanQuantities quantities)
    {
        Channel? box = records.Channels.FirstOrDefault(channel => channel.Kind == ChannelKind.Share);
        IEnumerable<DraftSale> boxed = box is null ? [] : quantities.Boxed.Select(one => new DraftSale(
            model.CropYear, model.Crops[one.Key.Crop].Name, box.Name, Round(one.Value, 3), Round(model.Crops[one.Key.Crop].BoxValue[one.Key.Week], 4), Day(one.Key.Week)));
        return [.. quantities.Sales.Select(one => new DraftSale(
                model.CropYear, model.Crops[one.Crop].Name, one.Channel, Round(one.Units, 3), Round(one.Price, 4), Day(one.Week)))
            .Concat(boxed).Where(sale => sale.Quantity > 0m)
            .OrderBy(sale => sale.Crop, StringComparer.Ordinal).ThenBy(sale => sale.Channel, StringComparer.Ordinal).ThenBy(sale => sale.From)];
    }

    private static decimal Round(double value, int decimals) => decimal.Round((decimal)value, decimals, MidpointRounding.AwayFromZero);
}
