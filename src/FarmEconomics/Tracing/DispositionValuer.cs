using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// Puts money on every disposition (its amount, its part of the share income, its fee, its list value) and splits each over the lots drawn.
/// </summary>
internal sealed class DispositionValuer
{
    private readonly FarmRecords records;
    private readonly LotLedger ledger;
    private readonly DispositionTable table;
    private readonly List<Problem> told;
    private readonly TellDisposition pricedAtList;
    private readonly TellDisposition noListValue;

    internal DispositionValuer(FarmRecords records, LotLedger ledger, List<Problem> told)
    {
        this.records = records;
        this.ledger = ledger;
        this.told = told;
        table = ledger.Dispositions;
        pricedAtList = (disposition, value) =>
            TracingProblems.PricedAtList(new Disposition(ledger.Parts, disposition), records.Settings.Notation, ExactUnits.Money(value));
        noListValue = (disposition, _) => TracingProblems.NoListValue(new Disposition(ledger.Parts, disposition));
        Prices = new ListPrices(records);
        int crops = records.Crops.Count;
        CropProblems problems = new(crops);
        RowRanges.ByCrop(crops, table.Count, crop => Value(crop, problems));
        told.AddRange(problems.Tell(table));
        SplitShareIncome();
        problems = new(crops);
        Results = new ChannelSums(ledger);
        TellDisposition unassigned = (disposition, _) => TracingProblems.UnassignedDisposition(new Disposition(ledger.Parts, disposition));
        RowRanges.ByCrop(crops, ledger.Parts.Count, crop => new PartMoney(ledger, Results).Split(crop, problems, unassigned));
        told.AddRange(problems.Tell(table));
        Results.SetEnterprises();
    }

    internal ListPrices Prices { get; }

    /// <summary>What went through each channel, enterprise by enterprise.</summary>
    internal ChannelSums Results { get; }

    /// <summary>Money not tied to a crop, by the crop year it belongs to.</summary>
    internal List<OtherIncome> OtherIncome { get; } = [];

    /// <summary>Share income split over produce, by channel and crop-year window.</summary>
    internal Dictionary<(Channel Channel, int Window), Money> ShareIncome { get; } = [];

    private void Value(int crop, CropProblems problems)
    {
        (int first, int end) = (table.Layout.Starts[crop], table.Layout.Starts[crop + 1]);
        Prices.Realize(crop, table);
        for (int i = first; i < end; i++)
        {
            long own = table.Amount[i];
            switch (table.Kind(i))
            {
                case ChannelKind.Market or ChannelKind.Stand or ChannelKind.Wholesale:
                    table.ListValue[i] = table.Amount[i] = table.HasOwnValue(i) ? own : PricedAtList(crop, i, problems);
                    break;
                case ChannelKind.Share or ChannelKind.Household:
                    table.Amount[i] = 0;
                    table.ListValue[i] = table.HasOwnValue(i) ? own : AtList(crop, i, problems);
                    break;
                case ChannelKind.Other:
                    break;
                default:
                    table.Amount[i] = 0;
                    break;
            }
        }
    }

    private long PricedAtList(int crop, int place, CropProblems problems)
    {
        long value = AtList(crop, place, problems);
        if ((table.Marks[place] & DispositionMarks.ValueIncomplete) == 0)
        {
            problems.Add(crop, place, pricedAtList, value);
        }

        return value;
    }

    private long AtList(int crop, int place, CropProblems problems)
    {
        if (Prices.Value(crop, table, place) is { } value)
        {
            return value;
        }

        table.Marks[place] |= DispositionMarks.ValueIncomplete;
        problems.Add(crop, place, noListValue);
        return 0;
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
                OtherIncome.Add(new OtherIncome(channel, window, new Money(row.Amount)));
            }
        }

        List<((Channel Channel, int Window) Key, decimal Amount)> shares = [.. income.Select(item => (item.Key, item.Value))];
        bool[] split = new bool[shares.Count];
        RowRanges.Run(shares.Count, i => split[i] = SplitOverShares(shares[i].Key.Channel, shares[i].Key.Window, shares[i].Amount));
        for (int i = 0; i < split.Length; i++)
        {
            (Channel channel, int window) = shares[i].Key;
            Money amount = new(shares[i].Amount);
            if (split[i])
            {
                ShareIncome[(channel, window)] = amount;
                continue;
            }

            told.Add(TracingProblems.ShareIncomeWithoutShares(channel, window, amount.Amount, records.Settings.Notation));
            OtherIncome.Add(new OtherIncome(channel, window, amount));
        }
    }

    /// <returns>False when no produce of any value went out through the channel in that crop year.</returns>
    private bool SplitOverShares(Channel channel, int window, decimal amount)
    {
        (int from, int to) = (records.Settings.StartOf(window).DayNumber, records.Settings.EndOf(window).DayNumber);
        int count = 0;
        foreach (int place in table.PlacesOfDays(from, to))
        {
            count += table.Channel[place] == channel.Index ? 1 : 0;
        }

        (int[] places, long[] values, long[] parts) = (new int[count], new long[count], new long[count]);
        count = 0;
        foreach (int place in table.PlacesOfDays(from, to))
        {
            if (table.Channel[place] == channel.Index)
            {
                // A credit among the shares lowers nobody's part below 0.
                (places[count], values[count++]) = (place, Math.Max(0, table.ListValue[place]));
            }
        }

        if (!values.AsSpan().ContainsAnyExcept(0))
        {
            return false;
        }

        LargestRemainder.Split(ExactUnits.Cents(amount), values, parts);
        for (int i = 0; i < parts.Length; i++)
        {
            table.Amount[places[i]] = parts[i];
        }

        return true;
    }
}

/// <summary>Money not tied to a crop.</summary>
/// <param name="Channel">The channel it came through.</param>
/// <param name="CropYear">The crop year it belongs to.</param>
/// <param name="Amount">The money.</param>
public sealed record OtherIncome(Channel Channel, int CropYear, Money Amount);
