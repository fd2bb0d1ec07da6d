using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Display;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Reports.Words;

namespace FarmEconomics.Reports.Pricing;

/// <summary>Prices in sentences.</summary>
public static class PriceSentences
{
    /// <summary>The channel of that name, or, for an empty name, the market, stand or wholesale channel with the most sales.</summary>
    public static Channel ChannelOf(PriceBook book, string name = "")
    {
        List<Channel> sold = book.Prices.Select(price => price.Channel).Distinct().ToList();
        return string.IsNullOrWhiteSpace(name)
            ? sold.MaxBy(channel => book.In(channel).Sum(price => price.Sold.Amount.Amount))
                ?? throw new ArgumentException(
                    $"Nothing of {book.Season.CropYear} was sold through a market, stand or wholesale channel: "
                        + $"there is no price to speak of.",
                    nameof(name))
            : sold.Find(channel => string.Equals(channel.Name, name.Trim(), StringComparison.OrdinalIgnoreCase))
                ?? throw new ArgumentException(
                    $"Nothing of {book.Season.CropYear} was sold for a price through {name}. Channels with prices: "
                        + $"{string.Join(", ", sold)}.",
                    nameof(name));
    }

    /// <summary>The share channel of that name, or, for an empty name, the first; null when there is none.</summary>
    public static Channel? ShareOf(PriceBook book, string name = "") =>
        book.Review.Records.Channels.FirstOrDefault(channel =>
            channel.Kind == ChannelKind.Share
            && (string.IsNullOrWhiteSpace(name) || string.Equals(channel.Name, name.Trim(), StringComparison.OrdinalIgnoreCase))
        );

    /// <summary>The share in two sentences.</summary>
    public static Prose Share(PriceBook book, SharePricing shares)
    {
        Notation notation = book.Season.Notation;
        ShareContents contents = shares.Contents;
        string name = Phrase.Bold(contents.Channel.Name);
        if (contents.Weeks.Count == 0)
        {
            return new Prose($"Nothing went out through {name} in {contents.CropYear}.");
        }

        string text = contents.NoListValue is { } why ? $"What the boxes of {name} were worth isn't known: {Prose.Text(why)}. "
            : $"Over {notation.Count(contents.Weeks.Count, "week")} the boxes of {name} were worth "
                + $"{notation.InWords(contents.ListValue.Amount, Look.WholeMoney)} at list price"
                + (contents.ValueOverPrice.Value is { } ratio
                    ? $", {Phrase.Percent(ratio)} of the {notation.InWords(contents.Income.Amount, Look.WholeMoney)} members paid. "
                    : ". ");
        text +=
            shares.CostPrice.Value is { } cost
                ? $"A full share must cost {notation.InWords(cost, Look.Rate)} to cover contents, packing and handing out; "
                    + $"members paid {Phrase.Of(shares.PricePaid, notation)}."
            : shares.IncomeToCover.Value is { } all
                ? $"All members together had to pay {notation.InWords(all, Look.WholeMoney)} to cover contents, packing and handing out. "
                    + $"What that is for one share is not available: {Prose.Text(shares.CostPrice.Reason)}."
                : $"What a share must cost is not available ({Prose.Text(shares.CostPrice.Reason)}).";
        return new Prose(text);
    }

    /// <summary>How sure the prices are.</summary>
    public static Prose HowSure(PriceBook book)
    {
        int failed = book.Prices.Where(price => price.Yields.Failed).Select(price => price.Crop).Distinct().Count();
        List<string> few = book
            .Prices.Where(price => price.Sold.Parts.Select(part => part.Disposition).Distinct().Count() < 5)
            .Select(price => $"{price.Crop.Name} through {price.Channel.Name}")
            .ToList();
        decimal estimated = book.Season.Farm.EstimatedShare.Value ?? 0m;
        return new Prose($"These prices are one season's cost over one season's units: a better or worse yield moves them. "
            + (failed == 0 ? "No crop failed by its own record. "
                : $"{Phrase.Sentence(book.Season.Notation.Count(failed, "crop"))} failed by {(failed == 1 ? "its" : "their")} own record; "
                    + $"the price at a normal yield is given as well. ")
            + (estimated > 0m ? $"{Phrase.Percent(estimated)} of the hours rest on time standards, not on logs. " : "")
            + (few.Count == 0 ? "Every price rests on five sales or more. "
                : $"{Phrase.Sentence(book.Season.Notation.Count(few.Count, "price rests", "prices rest"))} on fewer than five sales "
                    + $"({(few.Count == 1 ? "" : "for example ")}{Prose.Text(few[0])}). ")
            + $"What a market takes at a higher price, "
            + $"no record tells.");
    }

    /// <summary>
    /// Fails when the prices don't rise from floor to target, or the split of a crop's cost loses a cent; else says that it holds.
    /// </summary>
    public static Prose RequireProof(PriceBook book)
    {
        foreach (CropCost cost in book.Costs)
        {
            decimal parts = cost.Production.Full + cost.Channels.Sum(channel => channel.ChannelCost.Full + channel.Fees.Amount);
            if (decimal.Round(parts - cost.Budget.TotalCost.Amount, 4) != 0m)
            {
                throw new InvalidOperationException(
                    book.Season.Notation.Text(
                        $"{cost.Crop}: the parts of its cost come to {parts:0.00}, its budget to {cost.Budget.TotalCost}."
                    )
                );
            }
        }

        CropPrice? odd = book.Prices.FirstOrDefault(price => price.Prices.FullCost.Value > price.Prices.Target.Value);
        return odd is null
            ? new Prose(
                $"The cost of {book.Season.Notation.Count(book.Costs.Count, "crop")}, split by channel, "
                    + $"is that of the enterprise budgets to the cent, "
                    + $"and no target of {book.Season.Notation.Count(book.Prices.Count, "price")} lies under its full cost."
            )
            : throw new InvalidOperationException(
                book.Season.Notation.Text(
                    $"{odd.Crop} through {odd.Channel}: target {odd.Prices.Target} lies under full cost {odd.Prices.FullCost}."
                )
            );
    }
}
