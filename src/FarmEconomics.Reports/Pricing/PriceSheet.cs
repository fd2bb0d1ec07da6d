using FarmEconomics.Pricing;
using FarmEconomics.Records;
using FarmEconomics.Reports.Blocks;
using FarmEconomics.Reports.Tables;
using FarmEconomics.Units;

namespace FarmEconomics.Reports.Pricing;

/// <summary>
/// A price sheet to print, one channel each, on Letter or A4: one column of crops, two where one doesn't hold them, and another sheet
/// beyond those. For the grower's own hand, since it shows what the crop cost.
/// </summary>
public static class PriceSheet
{
    /// <summary>Lines that fit a printed sheet, Letter or A4.</summary>
    internal const int Lines = 42;

    // Units of a crop that don't fit one line of the last column.
    private const int UnitsInALine = 34;

    /// <summary>The title of a sheet.</summary>
    public static string Title(PriceBook book, Channel channel) => $"{channel.Name}: prices after {book.Season.CropYear}";

    /// <summary>The channels that get a sheet: those with prices, and the shares.</summary>
    public static IReadOnlyList<Channel> Channels(PriceBook book) => book.Review.Records.Channels
        .Where(channel => channel.IsSold && book.Costs.Any(cost => cost.Through(channel) is not null)).ToList();

    /// <summary>The body of a sheet, to be put into the frame of a page. Text from the records is encoded.</summary>
    public static string Body(PriceBook book, Channel channel)
    {
        List<CropPrice> prices = [.. book.In(channel)];
        bool brief = IsBrief(prices, book.Season.Notation);
        HtmlWriter html = new();
        html.Add($"<div class=\"sheet\">\n<h1>{Title(book, channel)}</h1>\n<p class=\"cap\">{Explained(book, prices, brief)}</p>\n");
        if (!brief)
        {
            html.Add(Table(book, prices, brief: false));
        }
        else
        {
            foreach (CropPrice[] sheet in prices.Chunk(2 * Lines))
            {
                int half = (sheet.Length + 1) / 2;
                html.Add($"<div class=\"halves\">\n{Table(book, sheet.Take(half), brief: true)}"
                    + $"{Table(book, sheet.Skip(half), brief: true)}</div>\n");
            }
        }

        html.Add(
            prices.Exists(price => price.Yields.Failed)
                ? Html.Of($"<p class=\"cap\">* Its yield failed by its own record: the price is for a normal yield.</p>\n")
                : Html.Empty
        );
        return html.Add($"</div>").ToHtml().Text;
    }

    /// <summary>The body of a share's sheet: what it must cost and what its boxes held.</summary>
    public static string Body(PriceBook book, SharePricing shares, ShareTerms terms)
    {
        ArgumentNullException.ThrowIfNull(shares);
        TableBlock Whole(SheetBlock key, ReportTable table) => new(key, null, table) { Rows = 0 };
        return Html.Of($"<div class=\"sheet dense\">\n<h1>{Title(book, shares.Contents.Channel)}</h1>\n"
            + $"{BlockHtml.Of(Whole(SheetBlock.Price, ShareTables.Price(book, shares, terms)))}"
            + $"{BlockHtml.Of(Whole(SheetBlock.Weeks, ShareTables.Weeks(book, shares)))}</div>").Text;
    }

    private static bool IsBrief(List<CropPrice> prices, Notation notation) =>
        prices.Sum(price => 1 + (Others(price, notation).Length / UnitsInALine)) > Lines;

    private static string Explained(PriceBook book, List<CropPrice> prices, bool brief)
    {
        Notation notation = book.Season.Notation;
        return $"From costs and sales of {book.Season.CropYear}. At least: "
            + $"pays every cost and what you want ({book.Rules.TargetInWords}), "
            + $"rounded up to {notation.InWords(book.Rules.Terms.Step, Look.Rate)}. Keep: what you have covers that. "
            + $"Break-even pays full cost and no more"
            + (brief ? "." : "; below the short run each unit sold loses money at once.")
            + (
                prices.Exists(price => price.FeePercent > 0m)
                    ? notation.Text($" The fee of {prices[0].FeePercent:0.##}% is in each price.")
                    : ""
            );
    }

    private static Html Table(PriceBook book, IEnumerable<CropPrice> prices, bool brief)
    {
        HtmlWriter html = new();
        html.Add($"<table>\n<thead><tr><th scope=\"col\">Crop</th><th scope=\"col\">Unit</th><th scope=\"col\" class=\"n\">Price</th>"
            + $"<th scope=\"col\" class=\"n\">Break-even</th>");
        html.Add(brief
            ? Html.Empty
            : Html.Of($"<th scope=\"col\" class=\"n\">Short run</th><th scope=\"col\" class=\"n\">Sold for</th>"
                + $"<th scope=\"col\">In other units</th>"))
            .Add($"</tr></thead>\n<tbody>\n");
        foreach (CropPrice price in prices)
        {
            Row(html, price, book.Season.Notation, brief);
        }

        return html.Add($"</tbody>\n</table>\n").ToHtml();
    }

    private static void Row(HtmlWriter html, CropPrice price, Notation notation, bool brief)
    {
        PriceSet set = price.AtNormalYield ?? price.Prices;
        string unit = price.SellingUnit;
        decimal size = price.BaseUnits(unit);
        PriceAdvice advice = price.Advice(unit);
        html.Add($"<tr><th scope=\"row\" class=\"l\">{price.Crop.Name}{(price.AtNormalYield is null ? "" : "*")}</th>"
            + $"<td class=\"l\">{unit}</td><td class=\"n\" title=\"{advice.Price.Reason}\">"
            + $"<strong>{(advice.Kind == AdviceKind.Unknown ? "" : PriceWords.Of(advice, notation))}</strong></td>");
        Number(set.For(size).FullCost);
        if (!brief)
        {
            Number(set.For(size).Floor);
            Number(PriceTables.Times(price.Realized, size));
            html.Add($"<td class=\"w\">{Others(price, notation)}</td>");
        }

        html.Add($"</tr>\n");

        void Number(Result rate) =>
            html.Add($"<td class=\"n\" title=\"{rate.Reason}\">{(rate.Value is { } value ? notation.Number(value, Look.Rate) : "")}</td>");
    }

    private static string Others(CropPrice price, Notation notation) =>
        string.Join(
            ", ",
            price
                .Units.Where(other => !string.Equals(other, price.SellingUnit, StringComparison.OrdinalIgnoreCase))
                .Select(other => price.Advice(other) is { Price.Value: { } asked } ? $"{other} {notation.Number(asked, Look.Rate)}" : "")
                .Where(other => other.Length > 0)
        );
}

/// <summary>The tables of a share's sheet.</summary>
public enum SheetBlock
{
    /// <summary>What a share must cost.</summary>
    Price,

    /// <summary>Week by week.</summary>
    Weeks,
}
