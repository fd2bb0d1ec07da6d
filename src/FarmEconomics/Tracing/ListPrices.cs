using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Tracing;

/// <summary>
/// What goods without a price of their own are worth: the newest list price of the channel whose prices count, else of no channel,
/// else the average realized price there that year, else over all priced sales of the crop.
/// </summary>
internal sealed class ListPrices
{
    private readonly FarmRecords records;

    // By crop; inside, by channel, with prices of no channel last. Each crop is worked by itself.
    private readonly List<(DateOnly From, (decimal Amount, decimal Quantity) Price)>?[][] lists;
    private readonly Dictionary<int, Realized[]>[] realized;
    private readonly Realized[] realizedAnywhere;
    private readonly int[] sources;

    internal ListPrices(FarmRecords records)
    {
        this.records = records;
        NoChannel = records.Channels.Count;
        lists = [.. records.Crops.Select(_ => new List<(DateOnly, (decimal, decimal))>?[NoChannel + 1])];
        realized = [.. records.Crops.Select(_ => new Dictionary<int, Realized[]>())];
        realizedAnywhere = new Realized[records.Crops.Count];
        sources =
        [
            .. records.Channels.Select(channel =>
                (string.IsNullOrWhiteSpace(channel.Row.ValuesFrom) ? channel : records.Channel(channel.Row.ValuesFrom)).Index
            ),
        ];
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

    /// <summary>Adds the priced sales of a crop to the averages; they lie by date.</summary>
    internal void Realize(int crop, DispositionTable table)
    {
        Realized[] sums = [];
        int until = int.MinValue;
        for (int i = table.Layout.Starts[crop]; i < table.Layout.Starts[crop + 1]; i++)
        {
            if (
                !table.HasOwnValue(i)
                || table.Kind(i) is not (ChannelKind.Market or ChannelKind.Stand or ChannelKind.Wholesale)
                || table.Quantity[i] <= 0
            )
            {
                continue;
            }

            if (table.Day[i] >= until)
            {
                int window = records.Settings.WindowOf(DateOnly.FromDayNumber(table.Day[i]));
                until = records.Settings.EndOf(window).DayNumber;
                realized[crop][window] = sums = new Realized[NoChannel];
            }

            sums[table.Channel[i]].Add(table.Amount[i], table.Quantity[i]);
        }

        foreach (Realized sum in realized[crop].Values.SelectMany(window => window))
        {
            realizedAnywhere[crop].Add(sum);
        }
    }

    /// <summary>
    /// The list price as an amount for a quantity: a value is rounded once, as the quotient it is; null where none is known.
    /// </summary>
    internal (decimal Amount, decimal Quantity)? Of(Crop crop, Channel channel, DateOnly day) =>
        Find(crop.Index, channel.Index, day) is { } price ? (price.Amount, price.Quantity) : null;

    /// <summary>List price per unit of the crop for goods leaving a channel on a day; null when nothing tells.</summary>
    internal decimal? PerUnit(Crop crop, Channel channel, DateOnly day) =>
        Find(crop.Index, channel.Index, day) is { } price ? price.Amount / price.Quantity : null;

    /// <summary>The farm's own list price on a day, the channel's or else of no channel; null without a row of it.</summary>
    internal decimal? Listed(Crop crop, Channel channel, DateOnly day) =>
        (Newest(crop.Index, channel.Index, day) ?? Newest(crop.Index, NoChannel, day)) is { } price ? price.Amount / price.Quantity : null;

    /// <summary>Whether a list price values goods leaving a channel on a day, rather than an average of what was sold.</summary>
    internal bool IsListed(Crop crop, Channel channel, DateOnly day) => FromList(crop.Index, channel.Index, day) is not null;

    private (decimal Amount, decimal Quantity)? FromList(int crop, int channel, DateOnly day) =>
        Newest(crop, sources[channel], day) ?? Newest(crop, NoChannel, day);

    private (decimal Amount, decimal Quantity)? Find(int crop, int channel, DateOnly day) =>
        FromList(crop, channel, day)
        ?? (realized[crop].TryGetValue(records.Settings.WindowOf(day), out Realized[]? sums) ? sums[sources[channel]].Average : null)
        ?? realizedAnywhere[crop].Average;

    /// <summary>List price for stock on hand, which has no channel yet: so much money for so many units.</summary>
    internal (decimal Amount, decimal Quantity)? PerUnitOnHand(Crop crop, DateOnly day) =>
        Newest(crop.Index, NoChannel, day)
        ?? records
            .Channels.Where(channel => channel.IsPriced)
            .Select(channel => Newest(crop.Index, channel.Index, day))
            .FirstOrDefault(price => price is not null)
        ?? realizedAnywhere[crop.Index].Average;

    /// <summary>The value of a disposition in cents; null when nothing tells.</summary>
    internal long? Value(int crop, DispositionTable table, int place) =>
        Find(crop, table.Channel[place], DateOnly.FromDayNumber(table.Day[place])) is { } price
            ? Worth(ExactUnits.Value(table.Quantity[place]), price)
            : null;

    // Multiplied first, so that half a cent stays one; nearly every price is of one unit.
    private static long Worth(decimal quantity, (decimal Amount, decimal Quantity) price) =>
        ExactUnits.Cents(price.Quantity == 1m ? quantity * price.Amount : quantity * price.Amount / price.Quantity);

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

    /// <summary>What priced sales brought, and how much was sold, in units of 10^-8.</summary>
    private struct Realized
    {
        private long cents;
        private Int128 quantity;

        internal readonly (decimal Amount, decimal Quantity)? Average =>
            quantity > 0 ? (ExactUnits.Money(cents).Amount, ExactUnits.Value(quantity)) : null;

        internal void Add(long amount, long units) => (cents, quantity) = (cents + amount, quantity + units);

        internal void Add(Realized other) => (cents, quantity) = (cents + other.cents, quantity + other.quantity);
    }
}
