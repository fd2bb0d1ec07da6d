using System.Net;
using System.Text;
using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Pricing;

/// <summary>A price sheet to print: one channel on one page. For the grower's own hand, since it shows what the crop cost.</summary>
public static class PriceSheet
{
    /// <summary>Rows that fit one printed page in one column, and in two.</summary>
    internal const int OneColumn = 44;

    /// <summary>The title of a sheet.</summary>
    public static string Title(PriceBook book, Channel channel) => $"{channel.Name}: prices after {book.Season.CropYear}";

    /// <summary>The channels that get a sheet: those with prices, and the shares.</summary>
    public static IReadOnlyList<Channel> Channels(PriceBook book) => book.Review.Records.Channels
        .Where(channel => channel.IsSold && book.Costs.Any(cost => cost.Through(channel) is not null)).ToList();

    /// <summary>The body of a sheet, to be put into the frame of a page. Text from the records is encoded.</summary>
    public static string Body(PriceBook book, Channel channel)
    {
        Notation notation = book.Season.Notation;
        List<CropPrice> prices = book.In(channel).ToList();
        StringBuilder html = new();
        html.Append($"<div class=\"sheet\">\n<h1>{Encode(Title(book, channel))}</h1>\n");
        html.Append($"<p>{Encode(book.Season.Settings.FarmName)}, costs and sales of {book.Season.CropYear}. At least = the target ({Encode(book.Rules.TargetInWords)}), rounded up to {notation.InWords(book.Rules.Terms.Step, Look.Rate)}; keep = the price you have covers that. "
            + "Full cost must be met in the long run; below the floor each unit sold loses money at once."
            + (prices.Any(price => price.FeePercent > 0m) ? notation.Text($" The fee of {prices[0].FeePercent:0.##} % is in all three.") : "") + "</p>\n");
        if (prices.Count > OneColumn)
        {
            // Two halves side by side leave no room for more than what is asked at the stall.
            int half = (prices.Count + 1) / 2;
            html.Append("<div class=\"halves\">\n").Append(Table(book, prices.Take(half), brief: true)).Append(Table(book, prices.Skip(half), brief: true)).Append("</div>\n");
        }
        else
        {
            html.Append(Table(book, prices, brief: false));
        }

        if (prices.Any(price => price.Yields.Failed))
        {
            html.Append("<p>* The yield failed by the crop's own record: prices are at a normal yield.</p>\n");
        }

        return html.Append("</div>").ToString();
    }

    /// <summary>The body of a share's sheet: what it must cost and what its boxes held.</summary>
    public static string Body(PriceBook book, SharePricing shares, ShareTerms terms)
    {
        StringBuilder html = new();
        html.Append($"<div class=\"sheet dense\">\n<h1>{Encode(Title(book, shares.Contents.Channel))}</h1>\n").Append(ShareTables.Price(book, shares, terms).ToHtml());
        return html.Append(ShareTables.Weeks(book, shares).ToHtml()).Append("</div>").ToString();
    }

    private static string Table(PriceBook book, IEnumerable<CropPrice> prices, bool brief)
    {
        Notation notation = book.Season.Notation;
        StringBuilder html = new("<table>\n<thead><tr><th scope=\"col\">Crop</th><th scope=\"col\">Unit</th><th scope=\"col\" class=\"num\">Price</th><th scope=\"col\" class=\"num\">Full cost</th>");
        html.Append(brief ? "" : "<th scope=\"col\" class=\"num\">Floor</th><th scope=\"col\" class=\"num\">Brought</th><th scope=\"col\">In other units</th>").Append("</tr></thead>\n<tbody>\n");
        foreach (CropPrice price in prices)
        {
            PriceSet set = price.AtNormalYield ?? price.Prices;
            string unit = price.SellingUnit;
            decimal size = price.BaseUnits(unit);
            html.Append($"<tr><th scope=\"row\">{Encode(price.Crop.Name)}{(price.AtNormalYield is null ? "" : "*")}</th><td>{Encode(unit)}</td>");
            PriceAdvice advice = price.Advice(unit);
            html.Append($"<td class=\"num\"{(advice.Price.Reason is { } why ? $" title=\"{Encode(why)}\"" : "")}><strong>{Encode(PriceWords.Of(advice, notation))}</strong></td>");
            Number(set.For(size).FullCost);
            if (!brief)
            {
                Number(set.For(size).Floor);
                Number(PriceTables.Times(price.Realised, size));
                IEnumerable<string> others = price.Units.Where(other => !string.Equals(other, unit, StringComparison.OrdinalIgnoreCase))
                    .Select(other => price.Advice(other) is { Price.Value: { } asked } ? $"{other} {notation.Number(asked, Look.Rate)}" : "").Where(other => other.Length > 0);
                html.Append($"<td>{Encode(string.Join(", ", others))}</td>");
            }

            html.Append("</tr>\n");
        }

        return html.Append("</tbody>\n</table>\n").ToString();

        void Number(Rate rate) =>
            html.Append($"<td class=\"num\"{(rate.Reason is { } why ? $" title=\"{Encode(why)}\"" : "")}>").Append(Show(rate, notation)).Append("</td>");
    }

    private static string Show(Rate rate, Notation notation) => rate.Value is { } value ? notation.Number(value, Look.Rate) : $"not available: {Encode(rate.Reason ?? "")}";

    private static string Encode(string text) => WebUtility.HtmlEncode(text);
}
