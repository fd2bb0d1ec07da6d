using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// Lots in, dispositions out, first in first out. A lot older than the crop keeps is passed over while a younger one can fill the row,
/// and out of
/// reach some days later; one picked a few days after the row's date covers what no other could. The rest is unmatched. Crop by crop,
/// side by side.
/// </summary>
internal sealed class LotLedger
{
    private readonly FarmRecords records;
    private readonly PlantingCalendar calendar;
    private readonly CropProblems problems;
    private readonly TellDisposition heldTooLong;
    private readonly TellDisposition notedBeforeHarvest;
    private readonly TellDisposition soldMoreThanPicked;
    private readonly Dictionary<int, SpreadOver>[] spreads;

    internal LotLedger(FarmRecords records, PlantingCalendar calendar, List<Problem> told)
    {
        this.records = records;
        this.calendar = calendar;
        int crops = records.Crops.Count;
        problems = new CropProblems(crops);
        Notation notation = records.Settings.Notation;
        heldTooLong = (disposition, part) => TracingProblems.HeldTooLong(PartAt(disposition, part), notation);
        notedBeforeHarvest = (disposition, part) => TracingProblems.NotedBeforeHarvest(PartAt(disposition, part), notation);
        soldMoreThanPicked = (disposition, left) =>
        {
            Disposition sold = new(Parts!, disposition);
            bool grown = calendar.Of(sold.Crop, sold.Window).Count > 0;
            return TracingProblems.SoldMoreThanPicked(sold, ExactUnits.Value(left), grown, notation);
        };
        spreads = [.. records.Crops.Select(_ => new Dictionary<int, SpreadOver>())];
        Lots = new LotTable(records, calendar);
        Dispositions = new DispositionTable(records);
        SumPicks();
        DrawnParts drawn = new(Dispositions, Lots);
        RowRanges.ByCrop(crops, Dispositions.Count, crop => Draw(crop, drawn.Crops[crop], drawn.Ends));
        Parts = new PartTable(Lots, drawn);
        Lots.Parts = Parts;
        told.AddRange(problems.Tell(Dispositions));
        told.AddRange(records.Crops.Where(crop => crop.Row.StorageDays is null && IsLeftOf(crop)).Select(TracingProblems.NoStorageDays));
    }

    internal LotTable Lots { get; }

    internal DispositionTable Dispositions { get; }

    internal PartTable Parts { get; }

    /// <summary>
    /// What a planting counts where what met no lot is spread: money follows these weights, not the quantities split by them, which are
    /// rounded.
    /// </summary>
    internal decimal SpreadWeight(int crop, int window, int enterprise)
    {
        SpreadOver spread = spreads[crop][window];
        return spread.Weights[Array.FindIndex(spread.Enterprises, one => one.Index == enterprise)];
    }

    private bool IsLeftOf(Crop crop) =>
        Lots.Remaining.AsSpan(Lots.Layout.Starts[crop.Index]..Lots.Layout.Starts[crop.Index + 1]).ContainsAnyExcept(0);

    private void SumPicks()
    {
        Int128[] harvested = new Int128[calendar.Enterprises.Count];
        Int128[] culled = new Int128[harvested.Length];
        for (int lot = 0; lot < Lots.Row.Length; lot++)
        {
            harvested[Lots.Enterprise[lot]] += Lots.Quantity[lot];
            culled[Lots.Enterprise[lot]] += Lots.Culled[lot];
            calendar.Enterprises[Lots.Enterprise[lot]].IsPicked = true;
        }

        foreach (Enterprise enterprise in calendar.Enterprises)
        {
            enterprise.Harvested = ExactUnits.Value(harvested[enterprise.Index]);
            enterprise.Culled = ExactUnits.Value(culled[enterprise.Index]);
        }
    }

    private void Draw(int crop, PartColumns parts, int[] ends)
    {
        LotDrawing drawing = new(Lots, crop, parts);
        for (int i = Dispositions.Layout.Starts[crop]; i < Dispositions.Layout.Starts[crop + 1]; i++)
        {
            int day = Dispositions.Day[i];
            int before = parts.Count;
            long left = Dispositions.Quantity[i];
            drawing.Advance(day);
            if (
                (Dispositions.Marks[i] & DispositionMarks.NamesPlanting) != 0
                && records.FindPlanting(records.Sales[Dispositions.Row[i]].Planting!) is { } planting
            )
            {
                left = drawing.DrawPlanting(planting, day, left);
            }

            left = drawing.Draw(day, left);
            Check(crop, i, parts, before);
            if (left > 0)
            {
                problems.Add(crop, i, soldMoreThanPicked, left);
            }

            // Money without goods (a credit) stays with the crop's plantings of the year, as goods do that met no lot.
            if (left > 0 || parts.Count == before)
            {
                Spread(crop, i, left, parts);
            }

            ends[i + 1] = parts.Count;
        }
    }

    private void Check(int crop, int disposition, PartColumns parts, int before)
    {
        int day = Dispositions.Day[disposition];
        for (int k = before; k < parts.Count; k++)
        {
            int lot = parts.SourceAt(k);
            if (day > Lots.KeptUntil[lot])
            {
                problems.Add(crop, disposition, heldTooLong, k - before);
            }
            else if (Lots.Day[lot] > day)
            {
                problems.Add(crop, disposition, notedBeforeHarvest, k - before);
            }
        }
    }

    private DispositionPart PartAt(int disposition, long part) => new(Parts, Parts.First[disposition] + (int)part);

    private void Spread(int crop, int disposition, long quantity, PartColumns parts)
    {
        // Unmatched goods stay with the crop and year they were sold or used in.
        int window = records.Settings.WindowOf(DateOnly.FromDayNumber(Dispositions.Day[disposition]));
        if (!spreads[crop].TryGetValue(window, out SpreadOver? spread))
        {
            spreads[crop][window] = spread = SpreadOf(records.Crops[crop], window);
        }

        if (spread.Weights.Length == 0)
        {
            parts.Add(PartTable.NotAssigned, quantity);
            return;
        }

        decimal[] quantities = LargestRemainder.SplitExactly(ExactUnits.Value(quantity), spread.Weights);
        for (int i = 0; i < quantities.Length; i++)
        {
            if (quantities[i] > 0m || (quantity == 0 && spread.Weights[i] > 0m))
            {
                parts.Add(PartTable.Spread(spread.Enterprises[i].Index), ExactUnits.Of(quantities[i]));
            }
        }
    }

    /// <summary>
    /// The crop's plantings of a year with their harvests as weights, else their bed-feet; no weights when they have neither.
    /// </summary>
    private SpreadOver SpreadOf(Crop crop, int year)
    {
        Enterprise[] enterprises = [.. calendar.Of(crop, year)];
        decimal[] weights = Array.ConvertAll(enterprises, enterprise => enterprise.Harvested);
        if (weights.Sum() <= 0m)
        {
            weights = Array.ConvertAll(enterprises, enterprise => enterprise.BedFeet.Value);
        }

        return new SpreadOver(enterprises, weights.Sum() <= 0m ? [] : weights);
    }

    private sealed record SpreadOver(Enterprise[] Enterprises, decimal[] Weights);
}
