using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>Splits the money of one crop's dispositions over their parts, to the cent, and adds it up by planting and channel.</summary>
internal sealed class PartMoney(LotLedger ledger, ChannelSums results)
{
    private readonly DispositionTable table = ledger.Dispositions;
    private readonly PartTable parts = ledger.Parts;
    private long[] cents = [];
    private int used;
    private long[] weights = [];
    private long[] shares = [];

    internal void Split(int crop, CropProblems problems, TellDisposition unassigned)
    {
        cents = new long[3 * SplitParts(crop)];
        for (int i = table.Layout.Starts[crop]; i < table.Layout.Starts[crop + 1]; i++)
        {
            (int first, int end) = (parts.First[i], parts.First[i + 1]);
            if (end - first > 1)
            {
                SplitOverParts(crop, i, first, end);
            }

            long fee = table.Fee(i);
            bool single = end - first == 1;
            for (int part = first; part < end; part++)
            {
                int at = parts.Money[part] - 1;
                PartCents own = single ? new(table.Amount[i], fee, table.ListValue[i]) : new(cents[at], cents[at + 1], cents[at + 2]);
                if (!results.Add(crop, i, part, own))
                {
                    problems.Add(crop, i, unassigned);
                }
            }
        }

        parts.Cents[crop] = cents;
    }

    /// <summary>How many parts don't have all of their disposition's money.</summary>
    private int SplitParts(int crop)
    {
        int count = 0;
        for (int i = table.Layout.Starts[crop]; i < table.Layout.Starts[crop + 1]; i++)
        {
            count += parts.First[i + 1] - parts.First[i] is > 1 and int several ? several : 0;
        }

        return count;
    }

    private void SplitOverParts(int crop, int disposition, int first, int end)
    {
        // The unmatched part is one last share of the row; that share is then spread over the year's plantings.
        (int lots, long unmatched) = DrawnOn(first, end);
        int shared = lots + 1;
        Array.Resize(ref weights, Math.Max(weights.Length, shared));
        Array.Resize(ref shares, weights.Length);
        parts.Quantity.AsSpan(first, lots).CopyTo(weights);
        weights[lots] = table.Quantity[disposition] == 0 ? 1 : unmatched;
        decimal[] over = SpreadWeights(crop, disposition, first + lots, end);
        int start = used;
        for (int part = first; part < end; part++, used += 3)
        {
            parts.Money[part] = used + 1;
        }

        Assign(table.Amount[disposition], start, shared, lots, over);
        Assign(table.Fee(disposition), start + 1, shared, lots, over);
        if (table.ListValue[disposition] != table.Amount[disposition])
        {
            Assign(table.ListValue[disposition], start + 2, shared, lots, over);
            return;
        }

        for (int at = start; at < used; at += 3)
        {
            cents[at + 2] = cents[at];
        }
    }

    /// <summary>How many of the parts came from lots, and the quantity of those that came from none.</summary>
    private (int Lots, long Unmatched) DrawnOn(int first, int end)
    {
        int lots = 0;
        long unmatched = 0;
        for (int part = first; part < end; part++)
        {
            (lots, unmatched) = parts.Source[part] >= 0 ? (lots + 1, unmatched) : (lots, unmatched + parts.Quantity[part]);
        }

        return (lots, unmatched);
    }

    private decimal[] SpreadWeights(int crop, int disposition, int from, int end)
    {
        decimal[] over = new decimal[end - from];
        for (int i = 0; i < over.Length; i++)
        {
            over[i] = parts.EnterpriseOf(from + i) is >= 0 and int enterprise
                ? ledger.SpreadWeight(crop, table.Records.Settings.WindowOf(DateOnly.FromDayNumber(table.Day[disposition])), enterprise)
                : 1m;
        }

        return over;
    }

    private void Assign(long total, int start, int shared, int lots, decimal[] over)
    {
        if (total == 0)
        {
            return;
        }

        LargestRemainder.Split(total, weights.AsSpan(0, shared), shares.AsSpan(0, shared));
        for (int i = 0; i < lots; i++)
        {
            cents[start + (3 * i)] = shares[i];
        }

        if (over.Length > 0)
        {
            Money[] rest = LargestRemainder.Split(ExactUnits.Money(shares[lots]), over);
            for (int i = 0; i < rest.Length; i++)
            {
                cents[start + (3 * (lots + i))] = ExactUnits.Cents(rest[i].Amount);
            }
        }
    }
}

/// <summary>A part's money in cents.</summary>
internal readonly record struct PartCents(long Amount, long Fee, long ListValue);
