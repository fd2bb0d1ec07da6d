using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Pricing;

/// <summary>
/// What would have changed over the season if part of a crop had gone through another channel at the price it brings there. Each figure is
/// new less old.
/// </summary>
public sealed class ChannelMove
{
    private ChannelMove(PriceBook book, CropCost cost, (Channel From, Channel To) channels, decimal percent, decimal priceFactor)
    {
        (Channel from, Channel to) = channels;
        decimal quantity = (cost.Through(from)?.Quantity ?? 0m) * percent / 100m;
        Crop = cost.Crop;
        From = from;
        To = to;
        Quantity = quantity;
        PriceFrom = Price(book, cost, from);
        PriceTo = Price(book, cost, to).Map(price => price * priceFactor);
        Sales = PriceFrom.Combine(PriceTo, (old, now) => quantity * (now - old));
        Fees = PriceFrom.Combine(PriceTo, (old, now) => quantity * ((now * Fee(to)) - (old * Fee(from))));
        ShortRun = Sales.Combine(Fees, (sales, fees) => sales - fees);
        string? unlike = book.Rules.FloorMissing
            ?? book.Rules.Known.Hours
            ?? (book.OwnCostIsKnown(from) && book.OwnCostIsKnown(to) ? null : book.Rules.Known.Ownership)
            ?? (cost.Through(to) is null ? $"no {cost.Crop.Name} went through {to.Name}, so its hours and cost there aren't known" : null);
        UnitCost old = OwnCost(cost, from);
        UnitCost now = OwnCost(cost, to);
        ChannelCost = unlike is null ? Result.Known(quantity * (now.Full - old.Full)) : Result.NotAvailable(unlike);
        Hours = unlike is null ? Result.Known(quantity * (now.Hours - old.Hours)) : Result.NotAvailable(unlike);
        LongRun = ShortRun.Combine(ChannelCost, (gain, more) => gain - more);
    }

    /// <summary>The crop.</summary>
    public Crop Crop { get; }

    /// <summary>Where it went.</summary>
    public Channel From { get; }

    /// <summary>Where it would have gone.</summary>
    public Channel To { get; }

    /// <summary>How much, in the crop's unit.</summary>
    public decimal Quantity { get; }

    /// <summary>What a unit brought.</summary>
    public Result PriceFrom { get; }

    /// <summary>What a unit would have brought: the season's price there (else the list price) times the price factor.</summary>
    public Result PriceTo { get; }

    /// <summary>Change in sales.</summary>
    public Result Sales { get; }

    /// <summary>Change in fees.</summary>
    public Result Fees { get; }

    /// <summary>Change in sales less fees: what is gained while the stand, driving and hours there stay as they are.</summary>
    public Result ShortRun { get; }

    /// <summary>Change in the channels' own cost, if that followed the goods.</summary>
    public Result ChannelCost { get; }

    /// <summary>Change in the channels' own hours, if those followed the goods.</summary>
    public Result Hours { get; }

    /// <summary>What is gained if the channels' cost and time follow the goods.</summary>
    public Result LongRun { get; }

    /// <summary>Works out a move.</summary>
    /// <param name="book">The season's prices.</param>
    /// <param name="crop">The crop.</param>
    /// <param name="from">A market, stand or wholesale channel the crop went through.</param>
    /// <param name="to">Another such channel.</param>
    /// <param name="percent">How much of what went through <paramref name="from"/> moves, above 0 to 100.</param>
    /// <param name="priceFactor">Times the price in <paramref name="to"/>, above 0: under 1 where more goods there mean a lower
    /// price.</param>
    /// <returns>The change; figures that can't be told say why.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is out of its range.</exception>
    /// <exception cref="ArgumentException">The channels are the same.</exception>
    public static ChannelMove Of(PriceBook book, Crop crop, Channel from, Channel to, decimal percent, decimal priceFactor = 1m)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(crop);
        PriceTerms.Require(percent is > 0m and <= 100m, nameof(percent), "What moves is above 0 and at most 100 percent.");
        PriceTerms.Require(priceFactor > 0m, nameof(priceFactor), "The price factor is above 0.");
        if (from == to)
        {
            throw new ArgumentException("A crop moves from one channel to another.", nameof(to));
        }

        CropCost cost = book.CostOf(crop)
            ?? throw new ArgumentException($"{crop.Name} has no planting in {book.Season.CropYear}.", nameof(crop));
        return new ChannelMove(book, cost, (from, to), percent, priceFactor);
    }

    private static Result Price(PriceBook book, CropCost cost, Channel channel) => channel.Kind == ChannelKind.Share
        ? Result.NotAvailable($"members of {channel.Name} have paid for the season: more or less in their boxes changes no money until the "
            + "share's price does")
        : book.PriceIn(cost.Crop, channel);

    private static decimal Fee(Channel channel) => (channel.Row.FeePercent ?? 0m) / 100m;

    private static UnitCost OwnCost(CropCost cost, Channel channel) =>
        cost.Through(channel) is { } sold ? sold.ChannelCost.PerUnit(sold.Quantity) : default;
}
