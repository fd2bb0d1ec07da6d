using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// What goods without a price of their own are worth: the newest list price of the channel whose prices count, else of no channel,
/// else the average realised price there that year, else over all priced sales of the crop.
/// </summary>
internal sealed class ListPrices
{
    private readonly FarmRecords records;

    // By crop; inside, by channel, with prices of no channel last. Each crop is worked by itself.
    private readonly List<(DateOnly From, (decimal Amount, decimal Quantity) Price)>?[][] lists;
    private readonly Dictionary<(int Channel, int Window), (long Cents, Int128 Quantity)>[] realised;
    private readonly (long Cents, Int128 Quantity)[] realisedAnywhere;
    private readonly int[] sources;

    internal ListPrices(FarmRecords records)
    {
        this.records = records;
        NoChannel = records.Channels.Count;
        lists = [.. records.Crops.Select(_ => new List<(DateOnly, (decimal, decimal))>?[NoChannel + 1])];
        realised = [.. records.Crops.Select(_ => new Dictionary<(int, int), (long, Int128)>())];
        realisedAnywhere = new (long, Int128)[records.Crops.Count];
        sources = [.. records.Channels.Select(channel => (string.IsNullOrWhiteSpace(channel.Row.ValuesFrom) ? channel : records.Channel(channel.Row.ValuesFrom)).Index)];
        foreach (PriceRow row in records.Tables.Prices)
        {
            if (row.Reference == true)
            {
                continue;
            }

            Crop crop = records.Crop(row.Crop);
            int channel = string.IsNullOrWhiteSpace(row.Channel) ? NoChannel : records.Channel(row.Channel).Index;
            (lists[crop.Index][channel] ??= []).Add((row.From ?? DateOnly.MinValue, (row.Price, crop.ToBase(1m, row.Unit))));
        }
    }

    private int NoChannel { get; }

    /// <summary>Adds a priced sale to the averages.</summary>
    internal void Realise(int crop, DispositionTable table, int place)
    {
        long quantity = table.Quantity[place];
        if (quantity <= 0)
        {
            return;
        }

        (int, int) key = (table.Channel[place], records.Settings.WindowOf(DateOnly.FromDayNumber(table.Day[place])));
        ref (long Cents, Int128 Quantity) sum = ref System.Runtime.InteropServices.CollectionsMarshal.GetValueRefOrAddDefault(realised[crop], key, out _);
        sum.Cents += table.Amount[place];
        sum.Quantity += quantity;
        realisedAnywhere[crop].Cents += table.Amount[place];
        realisedAnywhere[crop].Quantity += quantity;
    }

    /// <summary>List price per unit of the crop for goods leaving a channel on a day; null when nothing tells.</summary>
    internal decimal? PerUnit(Crop crop, Channel channel, DateOnly day) => Find(crop.Index, channel.Index, day) is { } price ? price.Amount / price.Quantity : null;

    /// <summary>The farm's own list price on a day, the channel's or else of no channel; null without a row of it.</summary>
    internal decimal? Listed(Crop crop, Channel channel, DateOnly day) =>
        (Newest(crop.Index, channel.Index, day) ?? Newest(crop.Index, NoChannel, day)) is { } price ? price.Amount / price.Quantity : null;

    /// <summary>Whether a list price values goods leaving a channel on a day, rather than an average of what was sold.</summary>
    internal bool IsListed(Crop crop, Channel channel, DateOnly day) => FromList(crop.Index, channel.Index, day) is not null;

    private (decimal Amount, decimal Quantity)? FromList(int crop, int channel, DateOnly day) => Newest(crop, sources[channel], day) ?? Newest(crop, NoChannel, day);

    private (decimal Amount, decimal Quantity)? Find(int crop, int channel, DateOnly day) =>
        FromList(crop, channel, day)
        ?? Average(realised[crop].GetValueOrDefault((sources[channel], records.Settings.WindowOf(day))))
        ?? Average(realisedAnywhere[crop]);

    /// <summary>List price for stock on hand, which has no channel yet: so much money for so many units.</summary>
    internal (decimal Amount, decimal Quantity)? PerUnitOnHand(Crop crop, DateOnly day) =>
        Newest(crop.Index, NoChannel, day)
        ?? records.Channels.Where(channel => channel.IsPriced).Select(channel => Newest(crop.Index, channel.Index, day)).FirstOrDefault(price => price is not null)
        ?? Average(realisedAnywhere[crop.Index]);

    /// <summary>The value of a disposition in cents; null when nothing tells.</summary>
    internal long? Value(int crop, DispositionTable table, int place) =>
        Find(crop, table.Channel[place], DateOnly.FromDayNumber(table.Day[place])) is { } price
            ? ExactUnits.Cents(ExactUnits.Value(table.Quantity[place]) * price.Amount / price.Quantity) // multiplied first, so that half a cent stays one
            : null;

    private (decimal Amount, decimal Quantity)? Newest(int crop, int channel, DateOnly day)
    {
        if (lists[crop][channel] is not { } list)
        {
            return null;
        }

        (DateOnly From, (decimal Amount, decimal Quantity) Price)? best = null;
        foreach ((DateOnly From, (decimal Amount, decimal Quantity) Price) price in list)
        {
            if (price.From <= day && (best is null || price.From >= best.Value.From))
            {
                best = price;
            }
        }

        return best?.Price;
    }

    private static (decimal Amount, decimal Quantity)? Average((long Cents, Int128 Quantity) sum) =>
        sum.Quantity > 0 ? (ExactUnits.Money(sum.Cents).Amount, ExactUnits.Value(sum.Quantity)) : null;
}
