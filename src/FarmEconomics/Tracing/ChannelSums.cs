using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>What of one planting went through one channel: sums of parts, in cents and in units of 10^-8.</summary>
internal struct ChannelSum
{
    internal long Amount;
    internal long Fee;
    internal long ListValue;
    internal Int128 Quantity;
    internal Int128 Sold;
    internal bool ValueIncomplete;
}

/// <summary>
/// All parts added up by enterprise and channel, once, while they are split; and by crop-year window what no planting could take.
/// </summary>
internal sealed class ChannelSums
{
    private readonly LotLedger ledger;
    private readonly DispositionTable table;
    private readonly int channels;
    private readonly ChannelSum[] sums;
    private readonly List<int>[] unassigned;
    private readonly Int128[] unmatched;
    private readonly Int128[] pricedQuantity;
    private readonly long[] pricedAmount;

    internal ChannelSums(LotLedger ledger)
    {
        this.ledger = ledger;
        table = ledger.Dispositions;
        channels = table.Records.Channels.Count;
        unassigned = [.. table.Records.Crops.Select(_ => new List<int>())];
        int enterprises = ledger.Lots.Enterprises.Count;
        sums = new ChannelSum[enterprises * channels];
        (unmatched, pricedQuantity, pricedAmount) = (new Int128[enterprises], new Int128[enterprises], new long[enterprises]);
    }

    /// <summary>What of an enterprise went through a channel.</summary>
    internal ref readonly ChannelSum Of(Enterprise enterprise, Channel channel) => ref sums[(enterprise.Index * channels) + channel.Index];

    /// <summary>The parts dated in a crop-year window that no planting could take.</summary>
    internal IEnumerable<int> UnassignedIn(int window) => unassigned.SelectMany(parts => parts)
        .Where(part => table.Records.Settings.WindowOf(DateOnly.FromDayNumber(table.Day[ledger.Parts.Disposition[part]])) == window);

    /// <summary>Adds a part.</summary>
    /// <returns>False when no planting could take it.</returns>
    internal bool Add(int crop, int disposition, int part, PartCents money)
    {
        int enterprise = ledger.Parts.EnterpriseOf(part);
        if (enterprise < 0)
        {
            unassigned[crop].Add(part);
            return false;
        }

        long quantity = ledger.Parts.Quantity[part];
        ref ChannelSum sum = ref sums[(enterprise * channels) + table.Channel[disposition]];
        sum.Amount += money.Amount;
        sum.Fee += money.Fee;
        sum.ListValue += money.ListValue;
        sum.Quantity += quantity;
        sum.Sold += table.IsSold(disposition) ? quantity : 0;
        sum.ValueIncomplete |= (table.Marks[disposition] & DispositionMarks.ValueIncomplete) != 0;
        if (ledger.Parts.Source[part] < 0)
        {
            unmatched[enterprise] += quantity;
        }
        else if (
            table.HasOwnValue(disposition) && table.Kind(disposition) is ChannelKind.Market or ChannelKind.Stand or ChannelKind.Wholesale
        )
        {
            pricedQuantity[enterprise] += quantity;
            pricedAmount[enterprise] += money.Amount;
        }

        return true;
    }

    /// <summary>Tells the enterprises what became of their produce.</summary>
    internal void SetEnterprises()
    {
        LotTable lots = ledger.Lots;
        Int128[] unsold = new Int128[lots.Enterprises.Count];
        Int128[] onHand = new Int128[unsold.Length];
        int closing = table.Records.AsOf.DayNumber;
        for (int lot = 0; lot < lots.Row.Length; lot++)
        {
            unsold[lots.Enterprise[lot]] += lots.Remaining[lot];
            onHand[lots.Enterprise[lot]] += closing <= lots.KeptUntil[lot] ? lots.Remaining[lot] : 0;
        }

        foreach (Enterprise enterprise in lots.Enterprises)
        {
            int index = enterprise.Index;
            ChannelSum all = Total(enterprise);
            enterprise.Sold = ExactUnits.Value(all.Sold);
            enterprise.OtherUse = ExactUnits.Value(all.Quantity - all.Sold);
            enterprise.SalesValue = ExactUnits.Money(all.Amount);
            enterprise.ValueIncomplete = all.ValueIncomplete;
            enterprise.Unmatched = ExactUnits.Value(unmatched[index]);
            enterprise.Unsold = ExactUnits.Value(unsold[index]);
            enterprise.OnHand = ExactUnits.Value(onHand[index]);
            enterprise.PricedQuantity = ExactUnits.Value(pricedQuantity[index]);
            enterprise.PricedAmount = ExactUnits.Money(pricedAmount[index]);
        }
    }

    private ChannelSum Total(Enterprise enterprise)
    {
        ChannelSum all = default;
        foreach (ref readonly ChannelSum sum in sums.AsSpan(enterprise.Index * channels, channels))
        {
            all.Amount += sum.Amount;
            all.Quantity += sum.Quantity;
            all.Sold += sum.Sold;
            all.ValueIncomplete |= sum.ValueIncomplete;
        }

        return all;
    }
}
