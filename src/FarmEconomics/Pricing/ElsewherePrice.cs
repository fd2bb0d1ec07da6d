using FarmEconomics.Records;
using FarmEconomics.Units;

namespace FarmEconomics.Pricing;

/// <summary>
/// The prices of a crop in a channel it wasn't sold through that season, from what the channel cost the crops that were: the channel's own
/// cost and hours follow the price as they did theirs, in proportion
/// to sales. Marked as such wherever it is shown.
/// </summary>
/// <param name="Crop">The crop.</param>
/// <param name="Channel">The channel.</param>
/// <param name="Unit">The unit it is priced in: the one it is mostly sold in elsewhere.</param>
/// <param name="Prices">Floor, full cost and target, per unit of the crop.</param>
/// <param name="ListPrice">The farm's list price there, per unit of the crop; not available where there is none.</param>
/// <param name="Advice">What to ask, per <paramref name="Unit"/>.</param>
public sealed record ElsewherePrice(Crop Crop, Channel Channel, string Unit, PriceSet Prices, Result ListPrice, PriceAdvice Advice)
{
    internal static ElsewherePrice? Of(PriceBook book, CropCost cost, Channel channel)
    {
        List<CropChannel> others = [.. book.Costs.Where(other => other.Budget.Known.Value is null)
            .Select(other => other.Through(channel)).OfType<CropChannel>()];
        decimal sales = others.Sum(other => other.Amount.Amount);
        if (sales <= 0m || cost.PerUnit() is not { } unit || cost.Budget.Known.Value is not null)
        {
            return null;
        }

        UnitCost perMoney = new(
            others.Sum(other => other.ChannelCost.Other) / sales, others.Sum(other => other.ChannelCost.Labor) / sales,
            others.Sum(other => other.ChannelCost.Hours) / sales);
        YieldHistory yields = YieldHistory.Of(book.Review, cost.Crop, book.Season.CropYear, book.Rules.Terms.FailedYieldPercent);
        decimal fee = channel.Row.FeePercent ?? 0m;
        PriceRules rules = book.Rules.For(cost.Budget);
        PriceSet prices = rules.PriceElsewhere(unit, perMoney, fee, book.FloorCost(cost));
        PriceSet advised = yields.Failed
            ? rules.PriceElsewhere(cost.PerUnit(yields.NormalFactor)!.Value, perMoney, fee, book.FloorCost(cost, yields.NormalFactor))
            : prices;
        string selling = book.Prices.FirstOrDefault(price => price.Crop == cost.Crop)?.SellingUnit ?? cost.Crop.Unit;
        decimal size = cost.Crop.ToBase(1m, selling);
        Result list = book.ListPriceOf(cost.Crop, channel);
        PriceAdvice advice = PriceAdvice.Of(
            advised.For(size),
            list.Map(price => price * size),
            book.MostEver(cost.Crop).Map(price => price * size),
            book.Rules.Terms,
            yields.Failed
        );
        return new ElsewherePrice(cost.Crop, channel, selling, prices, list, advice);
    }
}
