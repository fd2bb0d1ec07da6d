using FarmEconomics.Budgets;
using FarmEconomics.Records;
using FarmEconomics.Tracing;
using FarmEconomics.Units;

namespace FarmEconomics.Pricing;

/// <summary>
/// One channel of a crop year beside the others: what came in, what the produce and the channel cost, what an hour behind both earned, and
/// what was picked for it and never sold. Money in the farm's currency.
/// </summary>
/// <param name="Channel">The channel.</param>
/// <param name="Sales">Sale amounts, or share income.</param>
/// <param name="Fees">The channel's fees.</param>
/// <param name="Goods">Cost of what was sold there, the channel's own left out (<see cref="CropCost.CostOfSold"/>).</param>
/// <param name="ChannelCost">What the channel's own pool charged.</param>
/// <param name="Known">What the season's records can't tell.</param>
public sealed record ChannelComparison(Channel Channel, Money Sales, Money Fees, CostBlock Goods, CostBlock ChannelCost, Availability Known)
{
    /// <summary>Produce thrown out, at the price its crop brought on average; see <see cref="Of"/>.</summary>
    public decimal ThrownOut { get; private set; }

    /// <summary>Produce given away, likewise.</summary>
    public decimal GivenAway { get; private set; }

    /// <summary>Produce that no row tells of again: on hand or lost at the closing date, likewise.</summary>
    public decimal Unsold { get; private set; }

    /// <summary>Hours behind what was sold there: growing, picking, packing and selling.</summary>
    public decimal Hours => Goods.Hours + ChannelCost.Hours;

    /// <summary>All cost: fees, produce and channel.</summary>
    public Result Cost => Missing is { } reason ? Result.NotAvailable(reason) : Result.Known(Fees.Amount + Goods.Full + ChannelCost.Full);

    /// <summary>Sales less all cost.</summary>
    public Result NetReturn => Cost.Map(cost => Sales.Amount - cost);

    /// <summary>(Sales less all cost but labor) per hour.</summary>
    public Result ReturnPerHour => (Known.NoGrossMargin ?? Known.Hours ?? Known.Ownership ?? Known.Establishment) is { } reason
        ? Result.NotAvailable(reason)
        : Result.Of((Sales - Fees).Amount - Goods.Other - ChannelCost.Other, Hours, "no labor hours");

    private string? Missing => Known.NoFullNetReturn;

    /// <summary>
    /// Compares the channels things are sold through. No record says which channel a loss came from, so it is laid on the channels that
    /// drew on the same harvest, by quantity; a harvest nothing was sold of is left to <see cref="LossWithoutChannel"/>, a crop nothing was
    /// sold of all year to <see cref="LossesWithoutPrice"/>.
    /// </summary>
    /// <param name="book">The season's prices.</param>
    /// <returns>One per channel that sold something, in the order of the channels table.</returns>
    public static IReadOnlyList<ChannelComparison> Of(PriceBook book)
    {
        ArgumentNullException.ThrowIfNull(book);
        List<ChannelComparison> all =
        [
            .. book.Review.Records.Channels.Select(channel => Through(book, channel)).OfType<ChannelComparison>(),
        ];

        Dictionary<Channel, ChannelComparison> byChannel = all.ToDictionary(item => item.Channel);
        foreach (Lot lot in book.Season.Lots)
        {
            LayLosses(book, lot, byChannel);
        }

        return all;
    }

    /// <summary>A channel before losses are laid on it; null where nothing was sold through it.</summary>
    private static ChannelComparison? Through(PriceBook book, Channel channel)
    {
        CostBlock goods = new();
        CostBlock own = new();
        Money sales = Money.Zero;
        Money fees = Money.Zero;
        List<Availability> known = [];
        foreach (CropCost cost in book.Costs)
        {
            if (cost.Channels.FirstOrDefault(one => one.Channel == channel && one.IsSold) is { } sold)
            {
                if (sold.SoldQuantity > 0m)
                {
                    goods.Add(cost.CostOfSold, sold.SoldQuantity / cost.Budget.Sums.Sold);
                    own.Add(sold.ChannelCost);
                }

                sales += sold.Amount;
                fees += sold.Fees;
                known.Add(cost.Budget.Known);
            }
        }

        Availability all = book.Season.Known with
        {
            Value = known.Find(crop => crop.Value is not null)?.Value,
            Establishment = known.Find(crop => crop.Establishment is not null)?.Establishment,
        };
        return known.Count > 0 ? new ChannelComparison(channel, sales, fees, goods, own, all) : null;
    }

    /// <summary>The value of produce thrown out, given away or never sold of harvests that no channel drew on.</summary>
    /// <param name="book">The season's prices.</param>
    /// <returns>At the price its crop brought on average.</returns>
    public static decimal LossWithoutChannel(PriceBook book)
    {
        ArgumentNullException.ThrowIfNull(book);
        return book
            .Season.Lots.Where(lot => !lot.Draws.Any(draw => draw.Disposition.IsSold))
            .Sum(lot => (PriceOf(book, lot) ?? 0m) * Lost(lot));
    }

    /// <summary>
    /// Crops of which something was thrown out, given away or never sold and nothing sold: without a price no loss of theirs is in any
    /// figure here.
    /// </summary>
    /// <param name="book">The season's prices.</param>
    /// <returns>The crops, in the order of the crops table.</returns>
    public static IReadOnlyList<Crop> LossesWithoutPrice(PriceBook book)
    {
        ArgumentNullException.ThrowIfNull(book);
        return
        [
            .. book
                .Season.Lots.Where(lot => Lost(lot) > 0m && PriceOf(book, lot) is null)
                .Select(lot => lot.Enterprise.Crop)
                .Distinct()
                .OrderBy(crop => crop.Index),
        ];
    }

    private static void LayLosses(PriceBook book, Lot lot, Dictionary<Channel, ChannelComparison> channels)
    {
        decimal sold = lot.Draws.Where(draw => draw.Disposition.IsSold).Sum(draw => draw.Quantity);
        if (sold <= 0m)
        {
            return;
        }

        if (PriceOf(book, lot) is not { } price)
        {
            return;
        }

        foreach (
            IGrouping<Channel, DispositionPart> draws in lot
                .Draws.Where(draw => draw.Disposition.IsSold)
                .GroupBy(draw => draw.Disposition.Channel)
        )
        {
            if (channels.TryGetValue(draws.Key, out ChannelComparison? channel))
            {
                decimal weight = price * draws.Sum(draw => draw.Quantity) / sold;
                channel.ThrownOut += weight * Drawn(lot, ChannelKind.Waste);
                channel.GivenAway += weight * Drawn(lot, ChannelKind.Donation);
                channel.Unsold += weight * lot.Remaining;
            }
        }
    }

    private static decimal? PriceOf(PriceBook book, Lot lot) => book.CostOf(lot.Enterprise.Crop)?.Budget.AveragePrice.Value;

    private static decimal Lost(Lot lot) => lot.Remaining + Drawn(lot, ChannelKind.Waste) + Drawn(lot, ChannelKind.Donation);

    private static decimal Drawn(Lot lot, ChannelKind kind) =>
        lot.Draws.Where(draw => draw.Disposition.Channel.Kind == kind).Sum(draw => draw.Quantity);
}
