using FarmEconomics.Records;

namespace FarmEconomics.Tracing;

/// <summary>What a lot is to something sold or used on a day, in the order lots are drawn on.</summary>
internal enum LotAge
{
    /// <summary>Picked by then and keeping.</summary>
    Young,

    /// <summary>Older than the crop keeps, by a few days.</summary>
    Old,

    /// <summary>Picked a few days later: the row was noted early.</summary>
    Coming,

    /// <summary>Too old or too far ahead to be drawn on.</summary>
    OutOfReach,
}

/// <summary>One crop's lots with what is coming, what is young, what is old and what is gone.</summary>
internal sealed class LotDrawing
{
    private readonly LotTable lots;
    private readonly PartColumns parts;
    private readonly TracingLimits limits;
    private readonly int end;
    private readonly int start;
    private Dictionary<int, PlantingLots>? byPlanting;
    private int arrived;
    private int young;
    private int old;

    /// <param name="lots">The lots.</param>
    /// <param name="crop">The crop's index.</param>
    /// <param name="parts">Takes what is drawn, in order.</param>
    internal LotDrawing(LotTable lots, int crop, PartColumns parts)
    {
        this.lots = lots;
        this.parts = parts;
        limits = lots.Records.Settings.Limits;
        start = arrived = young = old = lots.Layout.Starts[crop];
        end = lots.Layout.Starts[crop + 1];
    }

    /// <summary>Lets in what was picked up to a day and sets aside what has grown too old by then.</summary>
    internal void Advance(int day)
    {
        while (arrived < end && lots.Day[arrived] <= day)
        {
            arrived++;
        }

        while (young < arrived && (lots.Remaining[young] == 0 || day > lots.KeptUntil[young]))
        {
            young++;
        }

        // Lots stop keeping in the order they were picked: what is out of reach once stays so.
        while (old < young && IsGone(old, day))
        {
            old++;
        }
    }

    /// <summary>
    /// Young lots, then old ones, then what was picked a few days later, which covers what no lot at hand could: the row was noted
    /// early.
    /// </summary>
    /// <param name="day">The day.</param>
    /// <param name="left">What is still to be drawn.</param>
    /// <returns>What no lot could give.</returns>
    internal long Draw(int day, long left)
    {
        for (int lot = young; lot < arrived && left > 0; lot++)
        {
            left = Take(lot, left);
        }

        for (int lot = old; lot < young && left > 0; lot++)
        {
            left = Take(lot, left);
        }

        for (int lot = arrived; lot < end && left > 0 && AgeOn(lot, day) == LotAge.Coming; lot++)
        {
            left = Take(lot, left);
        }

        return left;
    }

    /// <summary>
    /// The planting's young lots first, then its old ones, then those to come: the grower said where the goods came from.
    /// </summary>
    internal long DrawPlanting(Planting planting, int day, long left)
    {
        byPlanting ??= Enumerable.Range(start, end - start).GroupBy(lot => lots.Enterprises[lots.Enterprise[lot]].Planting.Index)
            .ToDictionary(group => group.Key, group => new PlantingLots([.. group]));
        if (!byPlanting.TryGetValue(planting.Index, out PlantingLots? own))
        {
            return left;
        }

        // What is empty or out of reach at the front stays so; the others are a planting's picks of a few days or weeks.
        while (own.First < own.Lots.Length && IsGone(own.Lots[own.First], day))
        {
            own.First++;
        }

        int last = day + limits.DaysNotedEarly;
        foreach (LotAge age in (ReadOnlySpan<LotAge>)[LotAge.Young, LotAge.Old, LotAge.Coming])
        {
            for (int i = own.First; i < own.Lots.Length && lots.Day[own.Lots[i]] <= last && left > 0; i++)
            {
                left = AgeOn(own.Lots[i], day) == age ? Take(own.Lots[i], left) : left;
            }
        }

        return left;
    }

    private bool IsGone(int lot, int day) => lots.Remaining[lot] == 0 || day - lots.KeptUntil[lot] > limits.DaysBeyondKeeping;

    /// <summary>Whether what left on a day can have come from a lot.</summary>
    private LotAge AgeOn(int lot, int day)
    {
        if (day < lots.Day[lot])
        {
            return lots.Day[lot] - day <= limits.DaysNotedEarly ? LotAge.Coming : LotAge.OutOfReach;
        }

        return day <= lots.KeptUntil[lot] ? LotAge.Young
            : day - lots.KeptUntil[lot] <= limits.DaysBeyondKeeping ? LotAge.Old : LotAge.OutOfReach;
    }

    private long Take(int lot, long wanted)
    {
        long taken = Math.Min(wanted, lots.Remaining[lot]);
        if (taken > 0)
        {
            lots.Remaining[lot] -= taken;
            parts.Add(lot, taken);
        }

        return wanted - taken;
    }

    private sealed class PlantingLots(int[] lots)
    {
        internal int[] Lots { get; } = lots;

        internal int First { get; set; }
    }
}
