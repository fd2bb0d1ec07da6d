using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// Lots in, leavings out, first in first out. A leaving never draws on a lot picked later; a lot older than the crop keeps is passed
/// over while a younger one can fill the row.
/// </summary>
internal sealed class LotLedger
{
    private readonly FarmRecords records;
    private readonly PlantingCalendar calendar;
    private readonly List<Problem> problems;

    internal LotLedger(FarmRecords records, PlantingCalendar calendar, List<Problem> problems)
    {
        this.records = records;
        this.calendar = calendar;
        this.problems = problems;
        Lots = MakeLots();
        Leavings = MakeLeavings();
        Draw();
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
            lots.Add(new Lot(pick.Row, enterprise, pick.Quantity, pick.Culled));
            enterprise.Harvested += pick.Quantity;
            enterprise.Culled += pick.Culled;
        }

        // OrderBy is stable: file order within a day.
        return lots.OrderBy(lot => lot.Date).ToList();
    }

    private List<Leaving> MakeLeavings()
    {
        List<Leaving> leavings = new(records.Sales.Count);
        foreach (SaleRow row in records.Sales)
        {
            Crop crop = records.Crop(row.Crop);
            leavings.Add(new Leaving(row, crop, records.Channel(row.Channel), crop.ToBase(row.Quantity, row.Unit), records.Settings.WindowOf(row.Date)));
        }

        return leavings.OrderBy(leaving => leaving.Row.Date).ToList();
    }

    private void Draw()
    {
        CropStore[] stores = new CropStore[records.Crops.Count];
        for (int i = 0; i < stores.Length; i++)
        {
            stores[i] = new CropStore();
        }

        foreach (Lot lot in Lots)
        {
            stores[lot.Enterprise.Crop.Index].Lots.Add(lot);
        }

        foreach (Leaving leaving in Leavings)
        {
            decimal left = leaving.Quantity;
            CropStore store = stores[leaving.Crop.Index];
            store.Advance(leaving.Row.Date);
            if (!string.IsNullOrWhiteSpace(leaving.Row.Planting) && records.FindPlanting(leaving.Row.Planting) is { } planting)
            {
                left = store.DrawPlanting(leaving, planting, left);
            }

            left = store.DrawYoung(leaving, left);
            left = store.DrawOld(leaving, left);
            foreach (LeavingPart part in leaving.PartList)
            {
                if (part.Lot!.IsTooOldOn(leaving.Row.Date))
                {
                    problems.Add(TracingProblems.HeldTooLong(part));
                }
            }

            if (left > 0m)
            {
                problems.Add(TracingProblems.SoldMoreThanPicked(leaving, left));
                Spread(leaving, left);
            }
            else if (leaving.PartList.Count == 0)
            {
                // Money without goods (a credit): it stays with the crop's plantings of the year.
                Spread(leaving, 0m);
            }
        }
    }

    private void Spread(Leaving leaving, decimal quantity)
    {
        // Unmatched goods stay with the crop and year they left in.
        List<Enterprise> enterprises = calendar.Enterprises
            .Where(enterprise => enterprise.Crop == leaving.Crop && enterprise.CropYear == leaving.Window).ToList();
        decimal[] weights = enterprises.Select(enterprise => enterprise.Harvested).ToArray();
        if (weights.Sum() <= 0m)
        {
            weights = enterprises.Select(enterprise => enterprise.BedFeet.Value).ToArray();
        }

        if (weights.Sum() <= 0m)
        {
            leaving.PartList.Add(new LeavingPart(leaving, null, null, quantity));
            return;
        }

        decimal[] parts = LargestRemainder.SplitExactly(quantity, weights);
        for (int i = 0; i < enterprises.Count; i++)
        {
            if (parts[i] > 0m || (quantity == 0m && weights[i] > 0m))
            {
                leaving.PartList.Add(new LeavingPart(leaving, null, enterprises[i], parts[i]));
                enterprises[i].Unmatched += parts[i];
            }
        }
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
            foreach (LeavingPart part in leaving.PartList)
            {
                if (part.Enterprise is null)
                {
                    continue;
                }

                if (leaving.Channel.IsSold)
                {
                    part.Enterprise.Sold += part.Quantity;
                }
                else
                {
                    part.Enterprise.OtherUse += part.Quantity;
                }
            }
        }

        foreach (Crop crop in records.Crops.Where(crop => crop.Row.StorageDays is null))
        {
            if (Lots.Any(lot => lot.Enterprise.Crop == crop && lot.Remaining > 0m))
            {
                problems.Add(TracingProblems.NoStorageDays(crop));
            }
        }
    }

    /// <summary>One crop's lots with what is young, what is old and what is gone.</summary>
    private sealed class CropStore
    {
        private readonly List<Lot> old = [];
        private int arrived;
        private int young;
        private int oldStart;

        internal List<Lot> Lots { get; } = [];

        /// <summary>Lets in what was picked up to a day and sets aside what has grown too old by then.</summary>
        internal void Advance(DateOnly day)
        {
            while (arrived < Lots.Count && Lots[arrived].Date <= day)
            {
                arrived++;
            }

            while (young < arrived && (Lots[young].Remaining == 0m || Lots[young].IsTooOldOn(day)))
            {
                if (Lots[young].Remaining > 0m)
                {
                    old.Add(Lots[young]);
                }

                young++;
            }
        }

        internal decimal DrawYoung(Leaving leaving, decimal left)
        {
            for (int i = young; i < arrived && left > 0m; i++)
            {
                left = Take(leaving, Lots[i], left);
            }

            return left;
        }

        internal decimal DrawOld(Leaving leaving, decimal left)
        {
            for (int i = oldStart; i < old.Count && left > 0m; i++)
            {
                left = Take(leaving, old[i], left);
                if (i == oldStart && old[i].Remaining == 0m)
                {
                    oldStart++;
                }
            }

            return left;
        }

        /// <summary>The planting's young lots first, then its old ones: the grower said where the goods came from.</summary>
        internal decimal DrawPlanting(Leaving leaving, Planting planting, decimal left)
        {
            for (int i = young; i < arrived && left > 0m; i++)
            {
                left = Lots[i].Enterprise.Planting == planting ? Take(leaving, Lots[i], left) : left;
            }

            for (int i = oldStart; i < old.Count && left > 0m; i++)
            {
                left = old[i].Enterprise.Planting == planting ? Take(leaving, old[i], left) : left;
            }

            return left;
        }

        private static decimal Take(Leaving leaving, Lot lot, decimal wanted)
        {
            decimal taken = Math.Min(wanted, lot.Remaining);
            if (taken > 0m)
            {
                lot.Remaining -= taken;
                LeavingPart part = new(leaving, lot, lot.Enterprise, taken);
                lot.DrawList.Add(part);
                leaving.PartList.Add(part);
            }

            return wanted - taken;
        }
    }
}
