using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// Puts money on every leaving (its amount, its part of the share income, its fee, its list value) and splits each over the lots drawn.
/// </summary>
internal sealed class LeavingValuer
{
    private readonly FarmRecords records;
    private readonly LotLedger ledger;
    private readonly List<Problem> problems;

    internal LeavingValuer(FarmRecords records, LotLedger ledger, List<Problem> problems)
    {
        this.records = records;
        this.ledger = ledger;
        this.problems = problems;
        Prices = new ListPrices(records);
        ValuePricedSales();
        ValueTheRest();
        SplitShareIncome();
        foreach (Leaving leaving in ledger.Leavings)
        {
            Finish(leaving);
        }
    }

    /// <summary>The list prices.</summary>
    internal ListPrices Prices { get; }

    /// <summary>Money not tied to a crop, by the crop year it belongs to.</summary>
    internal List<OtherIncome> OtherIncome { get; } = [];

    /// <summary>Share income split over produce, by channel and crop-year window.</summary>
    internal Dictionary<(Channel Channel, int Window), Money> ShareIncome { get; } = [];

    private static Money? OwnAmount(SaleRow row) =>
        row.Amount is { } amount ? new Money(amount)
        : row.UnitPrice is { } price ? Money.Rounded(row.Quantity * price)
        : null;

    private void ValuePricedSales()
    {
        foreach (Leaving leaving in ledger.Leavings)
        {
            if ((leaving.Channel.IsPriced || leaving.Channel.Kind == ChannelKind.Other) && OwnAmount(leaving.Row) is { } own)
            {
                leaving.Amount = own;
                if (leaving.Channel.IsPriced)
                {
                    Prices.Realise(leaving);
                }
            }
        }
    }

    private void ValueTheRest()
    {
        foreach (Leaving leaving in ledger.Leavings)
        {
            Money? own = OwnAmount(leaving.Row);
            switch (leaving.Channel.Kind)
            {
                case ChannelKind.Share:
                case ChannelKind.Household:
                    leaving.ListValue = own ?? ListValueOf(leaving);
                    break;
                case ChannelKind.Market or ChannelKind.Stand or ChannelKind.Wholesale when own is null:
                    leaving.Amount = ListValueOf(leaving);
                    if (!leaving.ValueIncomplete)
                    {
                        problems.Add(TracingProblems.PricedAtList(leaving, records.Settings.Notation));
                    }

                    break;
                default:
                    break;
            }

            if (leaving.Channel.IsPriced)
            {
                leaving.ListValue = leaving.Amount;
            }
        }
    }

    private Money ListValueOf(Leaving leaving)
    {
        if (Prices.Value(leaving) is { } value)
        {
            return value;
        }

        leaving.ValueIncomplete = true;
        problems.Add(TracingProblems.NoListValue(leaving));
        return Money.Zero;
    }

    private void SplitShareIncome()
    {
        Dictionary<(Channel Channel, int Window), decimal> income = [];
        foreach (IncomeRow row in records.Income)
        {
            Channel channel = records.Channel(row.Channel);
            int window = row.CropYear ?? records.Settings.WindowOf(row.Date);
            if (channel.Kind == ChannelKind.Share)
            {
                income[(channel, window)] = income.GetValueOrDefault((channel, window)) + row.Amount;
            }
            else
            {
                OtherIncome.Add(new OtherIncome(channel, window, new Money(row.Amount), row));
            }
        }

        ILookup<(Channel, int), Leaving> delivered = ledger.Leavings
            .Where(leaving => leaving.Channel.Kind == ChannelKind.Share).ToLookup(leaving => (leaving.Channel, leaving.Window));
        foreach (((Channel channel, int window), decimal amount) in income)
        {
            List<Leaving> leavings = delivered[(channel, window)].ToList();
            // A credit among the shares lowers nobody's part below 0.
            decimal[] values = leavings.Select(leaving => Math.Max(0m, leaving.ListValue.Amount)).ToArray();
            if (values.Sum() <= 0m)
            {
                problems.Add(TracingProblems.ShareIncomeWithoutShares(channel, window, amount, records.Settings.Notation));
                OtherIncome.Add(new OtherIncome(channel, window, new Money(amount), null));
                continue;
            }

            ShareIncome[(channel, window)] = new Money(amount);
            Money[] parts = LargestRemainder.Split(new Money(amount), values);
            for (int i = 0; i < parts.Length; i++)
            {
                leavings[i].Amount = parts[i];
            }
        }
    }

    private void Finish(Leaving leaving)
    {
        if (leaving.Channel.IsSold || leaving.Channel.Kind == ChannelKind.Other)
        {
            leaving.Fee = Money.Rounded(leaving.Amount.Amount * (leaving.Channel.Row.FeePercent ?? 0m) / 100m);
        }

        SplitOverParts(leaving);
        foreach (LeavingPart part in leaving.OwnParts)
        {
            if (part.Enterprise is not { } enterprise)
            {
                problems.Add(TracingProblems.UnassignedLeaving(leaving));
                continue;
            }

            enterprise.SalesValue += part.Amount;
            enterprise.ValueIncomplete |= leaving.ValueIncomplete;
            if (leaving.Channel.IsPriced && part.Lot is not null && OwnAmount(leaving.Row) is not null)
            {
                enterprise.PricedQuantity += part.Quantity;
                enterprise.PricedAmount += part.Amount;
            }
        }
    }

    private void SplitOverParts(Leaving leaving)
    {
        ArraySegment<LeavingPart> parts = leaving.OwnParts;
        if (parts.Count == 1)
        {
            return;
        }

        // The unmatched part is one last share of the row; that share is then spread over the year's plantings.
        int lots = 0;
        decimal unmatched = 0m;
        foreach (LeavingPart part in parts)
        {
            lots += part.Lot is null ? 0 : 1;
            unmatched += part.Lot is null ? part.Quantity : 0m;
        }

        decimal[] spread = new decimal[parts.Count - lots];
        for (int i = 0; i < spread.Length; i++)
        {
            LeavingPart part = parts[lots + i];
            spread[i] = part.Enterprise is { } enterprise ? ledger.SpreadWeight(leaving, enterprise) : 1m;
        }

        decimal[] weights = new decimal[spread.Length > 0 ? lots + 1 : lots];
        for (int i = 0; i < lots; i++)
        {
            weights[i] = parts[i].Quantity;
        }

        if (spread.Length > 0)
        {
            weights[lots] = leaving.Quantity == 0m ? 1m : unmatched;
        }

        LeavingPart.PartMoney[] own = new LeavingPart.PartMoney[parts.Count];
        for (int i = 0; i < own.Length; i++)
        {
            own[i] = parts[i].OwnMoney();
        }

        Assign(leaving.Amount, (part, money) => part.Amount = money);
        Assign(leaving.Fee, (part, money) => part.Fee = money);
        if (leaving.ListValue != leaving.Amount)
        {
            Assign(leaving.ListValue, (part, money) => part.ListValue = money);
            return;
        }

        foreach (LeavingPart.PartMoney part in own)
        {
            part.ListValue = part.Amount;
        }

        void Assign(Money total, Action<LeavingPart.PartMoney, Money> set)
        {
            if (total == Money.Zero)
            {
                return;
            }

            Money[] shares = LargestRemainder.Split(total, weights);
            for (int i = 0; i < lots; i++)
            {
                set(own[i], shares[i]);
            }

            if (spread.Length > 0)
            {
                Money[] rest = LargestRemainder.Split(shares[^1], spread);
                for (int i = 0; i < rest.Length; i++)
                {
                    set(own[lots + i], rest[i]);
                }
            }
        }
    }
}

/// <summary>Money not tied to a crop.</summary>
/// <param name="Channel">The channel it came through.</param>
/// <param name="CropYear">The crop year it belongs to.</param>
/// <param name="Amount">The money.</param>
/// <param name="Row">The income row; null for a share total that met no produce.</param>
public sealed record OtherIncome(Channel Channel, int CropYear, Money Amount, IncomeRow? Row);
