using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>One crop's lots with what is young, what is old and what is gone.</summary>
/// <param name="parts">Takes what is drawn, in order.</param>
internal sealed class CropStore(List<LeavingPart> parts)
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
        byPlanting ??= Lots.GroupBy(lot => lot.Enterprise.Planting).ToDictionary(group => group.Key, group => new PlantingLots([.. group]));
        if (!byPlanting.TryGetValue(planting, out PlantingLots? own))
        {
            return left;
        }

        // What is drawn empty at the front stays so; the others are a planting's picks of a few days or weeks.
        own.SkipEmpty();
        DateOnly day = leaving.Row.Date;
        foreach (bool wantOld in (ReadOnlySpan<bool>)[false, true])
        {
            for (int i = own.First; i < own.Lots.Length && own.Lots[i].Date <= day && left > 0m; i++)
            {
                left = own.Lots[i].IsTooOldOn(day) == wantOld ? Take(leaving, own.Lots[i], left) : left;
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

        internal void SkipEmpty()
        {
            while (First < Lots.Length && Lots[First].Remaining == 0m)
            {
                First++;
            }
        }
    }
}
