using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// Lots in, leavings out, first in first out. A lot older than the crop keeps is passed over while a younger one can fill the row, and out of
/// reach some days later; one picked a few days after the row's date covers what no other could. The rest is unmatched.
/// </summary>
internal sealed class LotLedger
{
    private readonly FarmRecords records;
    private readonly PlantingCalendar calendar;
    private readonly List<Problem> problems;
    private readonly Dictionary<(Crop Crop, int Window), (IReadOnlyList<Enterprise> Enterprises, decimal[] Weights)> spreads = [];
    private List<LeavingPart> parts;
    private int[] ends = [];

    internal LotLedger(FarmRecords records, PlantingCalendar calendar, List<Problem> problems)
    {
        this.records = records;
        this.calendar = calendar;
        this.problems = problems;
        Lots = MakeLots();
        Leavings = MakeLeavings();
        parts = new List<LeavingPart>(Leavings.Count);
        Draw();
        HandOutParts();
        Close();
    }

    /// <summary>All lots by date, then file order.</summary>
    internal List<Lot> Lots { get; }

    /// <summary>All leavings by date, then file order.</summary>
    internal List<Leaving> Leavings { get; }

    private List<Lot> MakeLots()
    {
        List<Lot> lots = new(calendar.Picks.Count);
        foreach (Pick pick in calendar.Picks)
        {
            Enterprise enterprise = calendar.EnterpriseOf(pick.Planting, pick.Row.Date);
            lots.Add(new Lot(pick.Row, enterprise, pick.Quantity, pick.Culled, KeptUntil(enterprise.Crop, pick.Row.Date)));
            enterprise.Harvested += pick.Quantity;
            enterprise.Culled += pick.Culled;
        }

        return DateOrder.Of(lots, lot => lot.Date);
    }

    private DateOnly KeptUntil(Crop crop, DateOnly picked) => crop.Row.StorageDays is { } days
        ? DateOnly.FromDayNumber((int)Math.Min(picked.DayNumber + decimal.Floor(days), DateOnly.MaxValue.DayNumber))
        : records.Settings.EndOf(records.Settings.WindowOf(picked)).AddDays(-1);

    private List<Leaving> MakeLeavings()
    {
        List<Leaving> leavings = new(records.Sales.Count);
        foreach (SaleRow row in records.Sales)
        {
            Crop crop = records.Crop(row.Crop);
            leavings.Add(new Leaving(row, crop, records.Channel(row.Channel), crop.ToBase(row.Quantity, row.Unit), records.Settings.WindowOf(row.Date)));
        }

        return DateOrder.Of(leavings, leaving => leaving.Row.Date);
    }

    private void Draw()
    {
        ends = new int[Leavings.Count];
        CropStore[] stores = new CropStore[records.Crops.Count];
        for (int i = 0; i < stores.Length; i++)
        {
            stores[i] = new CropStore(parts, records.Settings.Limits);
        }

        foreach (Lot lot in Lots)
        {
            stores[lot.Enterprise.Crop.Index].Lots.Add(lot);
        }

        for (int i = 0; i < ends.Length; i++)
        {
            Leaving leaving = Leavings[i];
            int first = parts.Count;
            decimal left = leaving.Quantity;
            CropStore store = stores[leaving.Crop.Index];
            store.Advance(leaving.Row.Date);
            if (!string.IsNullOrWhiteSpace(leaving.Row.Planting) && records.FindPlanting(leaving.Row.Planting) is { } planting)
            {
                left = store.DrawPlanting(leaving, planting, left);
            }

            left = store.DrawYoung(leaving, left);
            left = store.DrawOld(leaving, left);
            left = store.DrawComing(leaving, left);
            for (int k = first; k < parts.Count; k++)
            {
                LeavingPart part = parts[k];
                if (part.Lot!.IsTooOldOn(leaving.Row.Date))
                {
                    problems.Add(TracingProblems.HeldTooLong(part, records.Settings.Notation));
                }
                else if (part.Lot.Date > leaving.Row.Date)
                {
                    problems.Add(TracingProblems.NotedBeforeHarvest(part, records.Settings.Notation));
                }
            }

            if (left > 0m)
            {
                problems.Add(TracingProblems.SoldMoreThanPicked(leaving, left, records.Settings.Notation));
                Spread(leaving, left);
            }
            else if (parts.Count == first)
            {
                // Money without goods (a credit): it stays with the crop's plantings of the year.
                Spread(leaving, 0m);
            }

            ends[i] = parts.Count;
        }
    }

    private void HandOutParts()
    {
        LeavingPart[] all = [.. parts];
        for (int i = 0; i < ends.Length; i++)
        {
            int first = i == 0 ? 0 : ends[i - 1];
            Leavings[i].OwnParts = new ArraySegment<LeavingPart>(all, first, ends[i] - first);
        }

        parts = [];
        ends = [];
    }

    private void Spread(Leaving leaving, decimal quantity)
    {
        // Unmatched goods stay with the crop and year they left in.
        if (!spreads.TryGetValue((leaving.Crop, leaving.Window), out (IReadOnlyList<Enterprise> Enterprises, decimal[] Weights) spread))
        {
            spreads[(leaving.Crop, leaving.Window)] = spread = SpreadOf(leaving.Crop, leaving.Window);
        }

        if (spread.Weights.Length == 0)
        {
            parts.Add(new LeavingPart(leaving, null, null, quantity));
            return;
        }

        decimal[] quantities = LargestRemainder.SplitExactly(quantity, spread.Weights);
        for (int i = 0; i < quantities.Length; i++)
        {
            if (quantities[i] > 0m || (quantity == 0m && spread.Weights[i] > 0m))
            {
                parts.Add(new LeavingPart(leaving, null, spread.Enterprises[i], quantities[i]));
                spread.Enterprises[i].Unmatched += quantities[i];
            }
        }
    }

    /// <summary>What a planting counts where what met no lot is spread: money follows these weights, not the quantities split by them, which are rounded.</summary>
    internal decimal SpreadWeight(Leaving leaving, Enterprise enterprise)
    {
        (IReadOnlyList<Enterprise> enterprises, decimal[] weights) = spreads[(leaving.Crop, leaving.Window)];
        for (int i = 0; i < weights.Length; i++)
        {
            if (enterprises[i] == enterprise)
            {
                return weights[i];
            }
        }

        return 0m;
    }

    /// <summary>The crop's plantings of a year with their harvests as weights, else their bed-feet; no weights when they have neither.</summary>
    private (IReadOnlyList<Enterprise> Enterprises, decimal[] Weights) SpreadOf(Crop crop, int year)
    {
        IReadOnlyList<Enterprise> enterprises = calendar.Of(crop, year);
        decimal[] weights = enterprises.Select(enterprise => enterprise.Harvested).ToArray();
        if (weights.Sum() <= 0m)
        {
            weights = enterprises.Select(enterprise => enterprise.BedFeet.Value).ToArray();
        }

        return (enterprises, weights.Sum() <= 0m ? [] : weights);
    }

    private void Close()
    {
        foreach (Lot lot in Lots)
        {
            lot.Enterprise.Unsold += lot.Remaining;
            if (lot.Remaining > 0m && !lot.IsTooOldOn(records.AsOf))
            {
                lot.Enterprise.OnHand += lot.Remaining;
            }
        }

        foreach (Leaving leaving in Leavings)
        {
            foreach (LeavingPart part in leaving.OwnParts)
            {
                if (part.Enterprise is null)
                {
                    continue;
                }

                if (leaving.IsSold)
                {
                    part.Enterprise.Sold += part.Quantity;
                }
                else
                {
                    part.Enterprise.OtherUse += part.Quantity;
                }
            }
        }

        HashSet<Crop> left = Lots.Where(lot => lot.Remaining > 0m).Select(lot => lot.Enterprise.Crop).ToHashSet();
        problems.AddRange(records.Crops.Where(crop => crop.Row.StorageDays is null && left.Contains(crop)).Select(TracingProblems.NoStorageDays));
    }
}
