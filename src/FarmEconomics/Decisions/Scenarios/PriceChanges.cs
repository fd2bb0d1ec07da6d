using FarmEconomics.Records;
using FarmEconomics.Records.Storage;

namespace FarmEconomics.Decisions.Scenarios;

/// <summary>
/// A change of prices: the money of sales rows that carry any, and the list prices that value the goods that carry none. A price is per
/// unit of the crop; a row in another unit gets the price of that unit. Quantities stay, and so does what members of a share pay.
/// </summary>
internal static class PriceChanges
{
    internal static void Apply(RecordsCopy copy, ScenarioChange change)
    {
        FarmRecords records = copy.Original;
        Crop? crop = change.Scope == ScenarioScope.Crop ? records.Crop(change.Name!) : null;
        Channel? channel = change.Channel is null ? null : records.Channel(change.Channel);
        foreach (SaleRow row in records.Tables.Sales)
        {
            Channel through = records.Channel(row.Channel);
            if ((crop is null || records.Crop(row.Crop) == crop) && (channel is null || through == channel))
            {
                Sale(copy, row, through, records.Crop(row.Crop), change.Step);
            }
        }

        foreach (PriceRow row in records.Tables.Prices)
        {
            Channel? of = string.IsNullOrWhiteSpace(row.Channel) ? null : records.Channel(row.Channel);
            if (row.Reference != true && (crop is null || records.Crop(row.Crop) == crop) && (channel is null || of == channel))
            {
                copy.Set(row, PriceRow.PriceColumn, change.Step.IsPercent
                    ? copy.Value(row, PriceRow.PriceColumn) * change.Step.Factor
                    : change.Step.Number * records.Crop(row.Crop).ToBase(1m, row.Unit));
            }
        }
    }

    /// <summary>
    /// Goods of a channel that carry no price follow the list of all channels where the channel has none of its own yet. A rise at that
    /// channel is meant for them as well: the channel gets a list of its own, as much above that one, up to the day its own begins.
    /// </summary>
    internal static void AddLists(RecordsCopy copy, IReadOnlyList<ScenarioChange> changes)
    {
        FarmRecords records = copy.Original;
        foreach (IGrouping<Channel, ScenarioChange> at in changes
            .Where(change => change is { Subject: ScenarioSubject.Price, Channel: not null })
            .GroupBy(change => records.Channel(change.Channel!)).Where(at => string.IsNullOrWhiteSpace(at.Key.Row.ValuesFrom)))
        {
            foreach (IGrouping<Crop, PriceRow> list in OwnPrices(records, null).GroupBy(row => records.Crop(row.Crop)))
            {
                List<ScenarioStep> steps = [.. at.Where(change => IsOf(change, list.Key)).Select(change => change.Step)];
                if (steps.Count > 0 && steps.TrueForAll(step => step.IsPercent))
                {
                    AddList(copy, at.Key, list, steps.Aggregate(1m, (factor, step) => factor * step.Factor));
                }
            }
        }

        bool IsOf(ScenarioChange change, Crop crop) => change.Scope != ScenarioScope.Crop || records.Crop(change.Name!) == crop;
    }

    private static void AddList(RecordsCopy copy, Channel channel, IGrouping<Crop, PriceRow> list, decimal factor)
    {
        DateOnly own = OwnPrices(copy.Original, channel).Where(row => copy.Original.Crop(row.Crop) == list.Key)
            .Select(row => row.From ?? DateOnly.MinValue).Append(DateOnly.MaxValue).Min();
        foreach (PriceRow row in list.Where(row => (row.From ?? DateOnly.MinValue) < own))
        {
            // The list row counts as touched: what it values moves.
            copy.Set(row, PriceRow.PriceColumn, copy.Value(row, PriceRow.PriceColumn));
            RowValues added = copy.Like(row);
            added[PriceRow.ChannelColumn.Schema.Name] = channel.Name;
            added[PriceRow.PriceColumn.Schema.Name] = copy.Value(row, PriceRow.PriceColumn) * factor;
            copy.Add<PriceRow>(added);
        }
    }

    /// <summary>List prices of one channel, or, for null, of all channels.</summary>
    private static IEnumerable<PriceRow> OwnPrices(FarmRecords records, Channel? channel) => records.Tables.Prices.Where(row =>
        row.Reference != true && (string.IsNullOrWhiteSpace(row.Channel) ? null : records.Channel(row.Channel)) == channel);

    /// <summary>True for a row that carries money, or a value, of its own.</summary>
    internal static bool HasMoney(SaleRow row) => row.Amount is not null || row.UnitPrice is not null;

    private static void Sale(RecordsCopy copy, SaleRow row, Channel through, Crop crop, ScenarioStep step)
    {
        if (through.Kind is ChannelKind.Donation or ChannelKind.Waste)
        {
            return;
        }

        if (step.IsPercent)
        {
            if (copy.Value(row, SaleRow.AmountColumn) is not null || copy.Value(row, SaleRow.UnitPriceColumn) is not null)
            {
                copy.Scale(row, SaleRow.AmountColumn, step.Factor);
                copy.Scale(row, SaleRow.UnitPriceColumn, step.Factor);
            }

            return;
        }

        // A credit has no price, and goods of a share or the household's take their list price.
        if (row.Amount < 0m || row.Quantity <= 0m || (!HasMoney(row) && !through.IsPriced))
        {
            return;
        }

        copy.Set(row, SaleRow.UnitPriceColumn, step.Number * crop.ToBase(1m, row.Unit));
        copy.Set(row, SaleRow.AmountColumn, null);
    }
}
