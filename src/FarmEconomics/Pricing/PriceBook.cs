using FarmEconomics.Budgets;
using FarmEconomics.Decisions;
using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Pricing;

/// <summary>A crop that no price could be worked out for, with the reason.</summary>
/// <param name="Crop">The crop.</param>
/// <param name="Channel">The channel, or null for any.</param>
/// <param name="Reason">Why.</param>
public sealed record CropWithoutPrice(Crop Crop, Channel? Channel, string Reason);

/// <summary>The prices of a crop year: every crop in every channel with a price of its own that it was sold through.</summary>
public sealed class PriceBook
{
    private readonly Dictionary<Crop, CropCost> byCrop;
    private readonly SeasonCosts costs;
    private readonly List<CropPrice> prices = [];
    private readonly List<CropWithoutPrice> without = [];
    private Dictionary<Crop, decimal>? mostSold;

    /// <summary>What a unit must bring, before fees, for the farm to net what it nets without the crop.</summary>
    internal Result FloorCost(CropCost cost, decimal yieldFactor = 1m) => costs.Model(cost.Budget).FloorCost(yieldFactor);

    private PriceBook(FarmReview review, int cropYear, PriceTerms terms)
    {
        Review = review;
        Season = review.Season(cropYear);
        costs = SeasonCosts.Of(Season);
        Rules = new PriceRules(Season, terms);
        Costs = CropCost.Of(review, cropYear);
        byCrop = Costs.ToDictionary(cost => cost.Crop);
        foreach (CropCost cost in Costs)
        {
            if (WithoutAny(cost) is { } why)
            {
                without.Add(new CropWithoutPrice(cost.Crop, null, why));
            }
            else
            {
                AddPrices(cost, YieldHistory.Of(review, cost.Crop, cropYear, terms.FailedYieldPercent));
            }
        }
    }

    private string? WithoutAny(CropCost cost) => cost.PerUnit() is null
        ? $"nothing of the {Season.CropYear} crop was sold: no unit to spread the cost over"
        : cost.Budget.Known.Value;

    private void AddPrices(CropCost cost, YieldHistory yields)
    {
        foreach (Channel channel in Review.Records.Channels.Where(channel => channel.IsPriced))
        {
            if (cost.Through(channel) is { } sold)
            {
                prices.Add(new CropPrice(cost, sold, Rules.For(cost.Budget), yields, costs.Model(cost.Budget))
                { ListPrice = ListPriceOf(cost.Crop, channel), References = ReferencesOf(cost.Crop), MostEver = MostEver(cost.Crop) });
            }
            else
            {
                without.Add(
                    new CropWithoutPrice(
                        cost.Crop,
                        channel,
                        $"none of the {Season.CropYear} crop was sold through {channel.Name}: its part of that channel's cost isn't known"
                    )
                );
            }
        }
    }

    /// <summary>The farm.</summary>
    public FarmReview Review { get; }

    /// <summary>The season.</summary>
    public SeasonReview Season { get; }

    /// <summary>What makes a price of a cost.</summary>
    public PriceRules Rules { get; }

    /// <summary>The cost of every crop.</summary>
    public IReadOnlyList<CropCost> Costs { get; }

    /// <summary>The prices, by crop and channel in the order of their tables.</summary>
    public IReadOnlyList<CropPrice> Prices => prices;

    /// <summary>What has no price, each with its reason.</summary>
    public IReadOnlyList<CropWithoutPrice> WithoutPrice => without;

    /// <summary>Works out the prices of a crop year.</summary>
    /// <param name="review">The farm.</param>
    /// <param name="cropYear">The crop year.</param>
    /// <param name="terms">What the grower wants; null: the defaults.</param>
    /// <returns>The prices.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A term is out of its range.</exception>
    public static PriceBook Of(FarmReview review, int cropYear, PriceTerms? terms = null)
    {
        ArgumentNullException.ThrowIfNull(review);
        return new PriceBook(review, cropYear, terms ?? new PriceTerms());
    }

    /// <summary>A crop's cost; null when it has no planting in the year.</summary>
    /// <param name="crop">The crop.</param>
    /// <returns>The cost.</returns>
    public CropCost? CostOf(Crop crop) => byCrop.GetValueOrDefault(crop);

    /// <summary>False where a tent or the like stands in a channel's pool and no interest rate tells what it costs a year.</summary>
    internal bool OwnCostIsKnown(Channel channel) => Season.Pools.First(pool => pool.Pool.Channel == channel).OwnershipKnown;

    /// <summary>The prices in one channel.</summary>
    /// <param name="channel">The channel.</param>
    /// <returns>Its prices, by crop.</returns>
    public IEnumerable<CropPrice> In(Channel channel) => Prices.Where(price => price.Channel == channel);

    /// <summary>
    /// What a unit of a crop brings in a channel: what it brought there in the season, else the farm's newest list price for the channel.
    /// </summary>
    /// <param name="crop">The crop.</param>
    /// <param name="channel">A market, stand or wholesale channel.</param>
    /// <returns>Price per unit of the crop, or why there is none.</returns>
    public Result PriceIn(Crop crop, Channel channel)
    {
        ArgumentNullException.ThrowIfNull(channel);
        return !channel.IsPriced ? Result.NotAvailable($"{channel.Name} has no prices of its own")
            : Prices.FirstOrDefault(price => price.Crop == crop && price.Channel == channel) is { } price ? price.Realized
            : ListPriceOf(crop, channel);
    }

    /// <summary>
    /// The farm's newest list price for a channel by the end of the crop year: the channel's own, else that of the channel its values come
    /// from, else one for all channels.
    /// </summary>
    /// <param name="crop">The crop.</param>
    /// <param name="channel">The channel.</param>
    /// <returns>Price per unit of the crop, or why there is none.</returns>
    public Result ListPriceOf(Crop crop, Channel channel)
    {
        ArgumentNullException.ThrowIfNull(crop);
        ArgumentNullException.ThrowIfNull(channel);
        DateOnly last = Review.Records.Settings.EndOf(Season.CropYear).AddDays(-1);
        PriceRow? newest = Newest(crop, channel.Name, last)
            ?? (string.IsNullOrWhiteSpace(channel.Row.ValuesFrom) ? null : Newest(crop, channel.Row.ValuesFrom.Trim(), last))
            ?? Newest(crop, null, last);
        return newest is { } list
            ? Result.Known(list.Price / crop.ToBase(1m, list.Unit))
            : Result.NotAvailable($"no list price of {crop.Name} for {channel.Name}");
    }

    /// <summary>
    /// The prices of crops in a channel they weren't sold through that season, from what the channel cost the others; in the order of the
    /// crops table.
    /// </summary>
    /// <param name="channel">A market, stand or wholesale channel.</param>
    /// <returns>The prices; none for a channel nothing was sold through, and none for a crop without a cost per unit.</returns>
    public IReadOnlyList<ElsewherePrice> Elsewhere(Channel channel)
    {
        ArgumentNullException.ThrowIfNull(channel);
        return channel.IsPriced
            ?
            [
                .. Costs
                    .Where(cost => cost.Through(channel) is null)
                    .Select(cost => ElsewherePrice.Of(this, cost, channel))
                    .OfType<ElsewherePrice>(),
            ]
            : [];
    }

    /// <summary>
    /// The most a unit of a crop brought on the mean of any season and priced channel up to this one, or is listed at by its end, the
    /// farm's own price or somebody else's.
    /// </summary>
    /// <param name="crop">The crop.</param>
    /// <returns>Price per unit of the crop, or why nothing tells.</returns>
    public Result MostEver(Crop crop)
    {
        mostSold ??= Review.Trace.Dispositions.Where(sale => sale.Channel.IsPriced && sale.Window <= Season.CropYear)
            .GroupBy(sale => (sale.Crop, sale.Channel, sale.Window)).Where(sales => sales.Sum(sale => sale.Quantity) > 0m)
            .Select(sales => (sales.Key.Crop, Price: sales.Sum(sale => sale.Amount.Amount) / sales.Sum(sale => sale.Quantity)))
            .GroupBy(sales => sales.Crop).ToDictionary(sales => sales.Key, sales => sales.Max(sale => sale.Price));
        DateOnly last = Review.Records.Settings.EndOf(Season.CropYear).AddDays(-1);
        List<decimal> seen =
        [
            .. Review
                .Records.Tables.Prices.Where(row => Review.Records.FindCrop(row.Crop) == crop && (row.From ?? DateOnly.MinValue) <= last)
                .Select(row => row.Price / crop.ToBase(1m, row.Unit)),
        ];
        if (mostSold.TryGetValue(crop, out decimal sold))
        {
            seen.Add(sold);
        }

        return seen.Count > 0 ? Result.Known(seen.Max()) : Result.NotAvailable($"no price of {crop.Name} is on record");
    }

    private PriceRow? Newest(Crop crop, string? channel, DateOnly day) => Review.Records.Tables.Prices
        .Where(row => row.Reference != true
            && Review.Records.FindCrop(row.Crop) == crop
            && string.Equals(row.Channel?.Trim() is { Length: > 0 } name ? name : null, channel, StringComparison.OrdinalIgnoreCase)
            && (row.From ?? DateOnly.MinValue) <= day)
        .Select(row => (PriceRow?)row)
        .MaxBy(row => (row!.Value.From ?? DateOnly.MinValue, row.Value.Source.Line));

    private List<ReferencePrice> ReferencesOf(Crop crop) => Review.Records.Tables.Prices
        .Where(row => row.Reference == true && Review.Records.FindCrop(row.Crop) == crop)
        .Select(row => new ReferencePrice(row, row.Price / crop.ToBase(1m, row.Unit)))
        .ToList();
}
