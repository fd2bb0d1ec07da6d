using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>One crop's lots with what is coming, what is young, what is old and what is gone.</summary>
/// <param name="parts">Takes what is drawn, in order.</param>
/// <param name="limits">How old a lot may be drawn on, and how far ahead.</param>
internal sealed class CropStore(List<LeavingPart> parts, TracingLimits limits)
{
    private readonly List<Lot> old = [];
    private Dictionary<Planting, PlantingLots>? byPlanting;
    private int arrived;
    private int young;
    private int oldStart;

    /// <summary>All lots of the crop, by date.</summary>
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

        // Lots stop keeping in the order they were picked: what is out of reach once stays so.
        while (oldStart < old.Count && (old[oldStart].Remaining == 0m || old[oldStart].AgeOn(day, limits) == LotAge.OutOfReach))
        {
            oldStart++;
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

    /// <summary>What was picked a few days later covers what no lot at hand could: the row was noted early.</summary>
    internal decimal DrawComing(Leaving leaving, decimal left)
    {
        for (int i = arrived; i < Lots.Count && left > 0m && Lots[i].AgeOn(leaving.Row.Date, limits) == LotAge.Coming; i++)
        {
            left = Take(leaving, Lots[i], left);
        }

        return left;
    }

    /// <summary>The planting's young lots first, then its old ones, then those to come: the grower said where the goods came from.</summary>
    internal decimal DrawPlanting(Leaving leaving, Planting planting, decimal left)
    {
        byPlanting ??= Lots.GroupBy(lot => lot.Enterprise.Planting).ToDictionary(group => group.Key, group => new PlantingLots([.. group]));
        if (!byPlanting.TryGetValue(planting, out PlantingLots? own))
        {
            return left;
        }

        // What is empty or out of reach at the front stays so; the others are a planting's picks of a few days or weeks.
        DateOnly day = leaving.Row.Date;
        own.SkipGone(day, limits);
        DateOnly last = day.AddDays(limits.DaysNotedEarly);
        foreach (LotAge age in (ReadOnlySpan<LotAge>)[LotAge.Young, LotAge.Old, LotAge.Coming])
        {
            for (int i = own.First; i < own.Lots.Length && own.Lots[i].Date <= last && left > 0m; i++)
            {
                left = own.Lots[i].AgeOn(day, limits) == age ? Take(leaving, own.Lots[i], left) : left;
            }
        }

        return left;
    }

    private decimal Take(Leaving leaving, Lot lot, decimal wanted)
    {
        decimal taken = Math.Min(wanted, lot.Remaining);
        if (taken > 0m)
        {
            lot.Remaining -= taken;
            LeavingPart part = new(leaving, lot, lot.Enterprise, taken);
            lot.AddDraw(part);
            parts.Add(part);
        }

        return wanted - taken;
    }

    private sealed class PlantingLots(Lot[] lots)
    {
        internal Lot[] Lots { get; } = lots;

        internal int First { get; private set; }

        internal void SkipGone(DateOnly day, TracingLimits limits)
        {
            while (First < Lots.Length && (Lots[First].Remaining == 0m || (Lots[First].Date <= day && Lots[First].AgeOn(day, limits) == LotAge.OutOfReach)))
            {
                First++;
            }
        }
    }
}
