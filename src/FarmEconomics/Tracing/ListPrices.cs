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
    private readonly Dictionary<(int Crop, int Channel), List<(DateOnly From, (decimal Amount, decimal Quantity) Price)>> lists = [];
    private readonly Dictionary<(int Crop, int Channel, int Window), (decimal Amount, decimal Quantity)> realised = [];
    private readonly Dictionary<int, (decimal Amount, decimal Quantity)> realisedAnywhere = [];

    private const int NoChannel = -1;

    internal ListPrices(FarmRecords records)
    {
        this.records = records;
        foreach (PriceRow row in records.Tables.Prices)
        {
            if (row.Reference == true)
            {
                continue;
            }

            Crop crop = records.Crop(row.Crop);
            int channel = string.IsNullOrWhiteSpace(row.Channel) ? NoChannel : records.Channel(row.Channel).Index;
            if (!lists.TryGetValue((crop.Index, channel), out List<(DateOnly, (decimal, decimal))>? list))
            {
                lists[(crop.Index, channel)] = list = [];
            }

            list.Add((row.From ?? DateOnly.MinValue, (row.Price, crop.ToBase(1m, row.Unit))));
        }
    }

    /// <summary>Adds a priced sale to the averages.</summary>
    internal void Realise(Leaving leaving)
    {
        if (leaving.Quantity <= 0m)
        {
            return;
        }

        (int, int, int) key = (leaving.Crop.Index, leaving.Channel.Index, leaving.Window);
        (decimal amount, decimal quantity) = realised.GetValueOrDefault(key);
        realised[key] = (amount + leaving.Amount.Amount, quantity + leaving.Quantity);
        (amount, quantity) = realisedAnywhere.GetValueOrDefault(leaving.Crop.Index);
        realisedAnywhere[leaving.Crop.Index] = (amount + leaving.Amount.Amount, quantity + leaving.Quantity);
    }

    /// <summary>List price per unit of the crop for goods leaving a channel on a day; null when nothing tells.</summary>
    internal decimal? PerUnit(Crop crop, Channel channel, DateOnly day) => Find(crop, channel, day) is { } price ? price.Amount / price.Quantity : null;

    /// <summary>The farm's own list price on a day, the channel's or else of no channel; null without a row of it.</summary>
    internal decimal? Listed(Crop crop, Channel channel, DateOnly day) =>
        (Newest(crop.Index, channel.Index, day) ?? Newest(crop.Index, NoChannel, day)) is { } price ? price.Amount / price.Quantity : null;

    private (decimal Amount, decimal Quantity)? Find(Crop crop, Channel channel, DateOnly day)
    {
        Channel source = string.IsNullOrWhiteSpace(channel.Row.ValuesFrom) ? channel : records.Channel(channel.Row.ValuesFrom);
        return Newest(crop.Index, source.Index, day)
            ?? Newest(crop.Index, NoChannel, day)
            ?? Average(realised, (crop.Index, source.Index, records.Settings.WindowOf(day)))
            ?? Average(realisedAnywhere, crop.Index);
    }

    /// <summary>List price for stock on hand, which has no channel yet: so much money for so many units.</summary>
    internal (decimal Amount, decimal Quantity)? PerUnitOnHand(Crop crop, DateOnly day) =>
        Newest(crop.Index, NoChannel, day)
        ?? records.Channels.Where(channel => channel.IsPriced).Select(channel => Newest(crop.Index, channel.Index, day)).FirstOrDefault(price => price is not null)
        ?? Average(realisedAnywhere, crop.Index);

    /// <summary>The value of a quantity, to the cent; null when nothing tells.</summary>
    internal Money? Value(Leaving leaving) =>
        Find(leaving.Crop, leaving.Channel, leaving.Row.Date) is { } price
            ? Money.Rounded(leaving.Quantity * price.Amount / price.Quantity) // multiplied first, so that half a cent stays one
            : null;

    private (decimal Amount, decimal Quantity)? Newest(int crop, int channel, DateOnly day)
    {
        if (!lists.TryGetValue((crop, channel), out List<(DateOnly From, (decimal Amount, decimal Quantity) Price)>? list))
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

    private static (decimal Amount, decimal Quantity)? Average<TKey>(Dictionary<TKey, (decimal Amount, decimal Quantity)> sums, TKey key)
        where TKey : notnull =>
        sums.TryGetValue(key, out (decimal Amount, decimal Quantity) sum) ? sum : null;
}
